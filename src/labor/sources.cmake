# SPDX-License-Identifier: MIT
target_sources(doorcost_core PRIVATE
    labor/labor.c
    labor/plans.c
    labor/question.c
    labor/run.c
    labor/setup.c
    labor/sums.c
)
