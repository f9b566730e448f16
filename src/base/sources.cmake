# SPDX-License-Identifier: MIT
target_sources(doorcost_core PRIVATE
    base/date.c
    base/length.c
    base/pool.c
    base/problem.c
    base/problem_print.c
    base/text.c
)
