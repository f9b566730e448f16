# SPDX-License-Identifier: MIT
target_sources(doorcost_core PRIVATE
    figure/operation.c
    figure/tape.c
    figure/unit.c
)
