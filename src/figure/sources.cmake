# SPDX-License-Identifier: MIT
target_sources(doorcost_core PRIVATE
    figure/ask.c
    figure/given.c
    figure/make.c
    figure/measures.c
    figure/operation.c
    figure/tape.c
    figure/unit.c
)
