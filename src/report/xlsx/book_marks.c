/* SPDX-License-Identifier: MIT */
#include "report/xlsx/book_objects.h"

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

void book_put_link(const struct book *book, const struct book_link *link, lxw_worksheet *sheet) {
    char target[64];
    (void)snprintf(target, sizeof target, "internal:%s!A1", book->sheets[link->to].name);
    worksheet_write_url(sheet, link->row, link->column, target, NULL);
}

/* What may be typed into an input; a warning, as a shop may have its reason. The library wants its
 * texts writable, and copies them. */
static void put_input(lxw_worksheet *sheet, const struct cell *cell) {
    char own[LXW_MAX_CELL_NAME_LENGTH];
    char formula[160];
    char title[] = "Is this meant?";
    char percent[] = "A percent: 5 means 5 %, and 0.05 a twentieth of one percent.";
    char number[] = "A number of the unit beside it, 0 or more.";
    lxw_rowcol_to_cell(own, cell->row, cell->column);
    const bool in_percent = cell->unit == UNIT_PERCENT;
    (void)snprintf(formula, sizeof formula,
                   in_percent ? "=AND(ISNUMBER(%s),OR(%s=0,AND(%s>=1,%s<=1000)))"
                              : "=AND(ISNUMBER(%s),%s>=0)",
                   own, own, own, own);
    lxw_data_validation rule = {.validate = LXW_VALIDATION_TYPE_CUSTOM_FORMULA,
                                .value_formula = formula,
                                .error_type = LXW_VALIDATION_ERROR_TYPE_WARNING,
                                .input_message = in_percent ? percent : number,
                                .error_title = title,
                                .error_message = in_percent ? percent : number};
    worksheet_data_validation_cell(sheet, cell->row, cell->column, &rule);
}

/* What stands out of what checks say: the color of its ground and of its letters; on gray paper
 * white on dark, and bold on light. */
static const struct mark {
    const char *words;
    lxw_color_t ground, ink;
} marks[] = {
    {"again", 0xA61C1C, 0xFFFFFF},
    {"changed", 0xFFC83D, 0x000000},
};
#define MARKS (sizeof marks / sizeof *marks)

void book_put_marks(const struct book *book, lxw_workbook *workbook, lxw_worksheet *const *sheets) {
    lxw_format *formats[MARKS];
    for (size_t m = 0; m < MARKS; m++) {
        formats[m] = workbook_add_format(workbook);
        if (formats[m] == NULL) {
            return;
        }
        format_set_bold(formats[m]);
        format_set_bg_color(formats[m], marks[m].ground);
        format_set_font_color(formats[m], marks[m].ink);
    }
    for (size_t i = 0; i < book->cell_count; i++) {
        const struct cell *const cell = book_cell(book, i);
        if (cell->look == LOOK_INPUT) {
            put_input(sheets[cell->sheet], cell);
        }
        for (size_t m = 0; cell->kind == CELL_CHECK && m < MARKS; m++) {
            char words[16];
            (void)snprintf(words, sizeof words, "%s", marks[m].words);
            lxw_conditional_format mark = {.type = LXW_CONDITIONAL_TYPE_TEXT,
                                           .criteria = LXW_CONDITIONAL_CRITERIA_TEXT_CONTAINING,
                                           .value_string = words,
                                           .format = formats[m],
                                           .stop_if_true = 1};
            worksheet_conditional_format_cell(sheets[cell->sheet], cell->row, cell->column, &mark);
        }
    }
}
