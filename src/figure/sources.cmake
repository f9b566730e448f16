# SPDX-License-Identifier: MIT
target_sources(doorcost_core PRIVATE
    figure/measures.c
    figure/operation.c
    figure/tape.c
    figure/unit.c
)
