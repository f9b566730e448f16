# SPDX-License-Identifier: MIT
target_sources(doorcost_core PRIVATE
    stock/banding.c
    stock/hardware.c
    stock/lumber.c
    stock/question.c
    stock/sheet.c
    stock/tally.c
)
