# SPDX-License-Identifier: MIT
target_sources(doorcost_core PRIVATE
    stock/banding.c
    stock/hardware.c
    stock/board_bound.c
    stock/board_check.c
    stock/board_chooser.c
    stock/board_coarse.c
    stock/board_columns.c
    stock/board_dive.c
    stock/board_layout.c
    stock/sheet_tally.c
    stock/board_plan.c
    stock/board_price.c
    stock/board_relax.c
    stock/board_repair.c
    stock/board_strips.c
    stock/lumber.c
    stock/lumber_plan.c
    stock/question.c
    stock/sheet.c
    stock/sheets_by_plan.c
    stock/tally.c
)
