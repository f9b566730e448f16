/* SPDX-License-Identifier: MIT */
#include "report/book_objects.h"

#include <stdio.h>

void book_put_names(const struct book *book, lxw_workbook *workbook) {
    for (size_t i = 0; i < book->name_count; i++) {
        const struct book_name *const n = &book->names[i];
        char reference[96];
        char cell[LXW_MAX_CELL_NAME_LENGTH];
        lxw_rowcol_to_cell_abs(cell, n->row, n->column, 1, 1);
        (void)snprintf(reference, sizeof reference, "=%s!%s", book->sheets[n->sheet].name, cell);
        workbook_define_name(workbook, n->name, reference);
    }
}

/* `run again` is seen at once, on paper too. */
void book_put_marks(const struct book *book, lxw_workbook *workbook, lxw_worksheet *const *sheets) {
    lxw_format *const format = workbook_add_format(workbook);
    if (format == NULL) {
        return;
    }
    format_set_bold(format);
    format_set_bg_color(format, 0xC9C9C9);
    for (size_t i = 0; i < book->cell_count; i++) {
        const struct cell *const cell = &book->cells[i];
        if (cell->kind == CELL_CHECK) {
            char words[] = "again";
            lxw_conditional_format mark = {.type = LXW_CONDITIONAL_TYPE_TEXT,
                                           .criteria = LXW_CONDITIONAL_CRITERIA_TEXT_CONTAINING,
                                           .value_string = words,
                                           .format = format};
            worksheet_conditional_format_cell(sheets[cell->sheet], cell->row, cell->column, &mark);
        }
    }
}
