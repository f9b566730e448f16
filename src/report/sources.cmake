# SPDX-License-Identifier: MIT
target_sources(doorcost_core PRIVATE
    report/book.c
    report/book_look.c
    report/book_write.c
    report/difference.c
    report/formula.c
    report/output.c
    report/paper.c
    report/sheet_checks.c
    report/sheet_compare.c
    report/sheet_costs.c
    report/sheet_doors.c
    report/sheet_finish.c
    report/sheet_hardware.c
    report/sheet_labor.c
    report/sheet_materials.c
    report/sheet_parts.c
    report/sheet_quote.c
    report/sheet_rates.c
    report/workbook.c
)
