/* SPDX-License-Identifier: MIT */
/* A sheet with a title, headings, the row that shows how, and rows with checks; and a sheet with
 * the choices, which checks point at: one in a cell holds no more than 255 letters. */
#include "report/list/list_book.h"

#include "report/xlsx/book_proof.h"

#include <assert.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>
#include <xlsxwriter.h>

enum { TITLE_ROW, NOTE_ROW, HEAD_ROW, EXAMPLE_ROW, FIRST_ROW };
#define LAST_ROW ((lxw_row_t)(FIRST_ROW + LIST_BOOK_ROWS - 1))
#define CHOICES  "Choices"

/* How a column stands: words, words clear of a number in the column before, numbers. */
enum stands { STANDS_LEFT, STANDS_CLEAR, STANDS_COUNTED, STANDS_MEASURED, STANDS_COUNT };

struct looks {
    lxw_format *head, *cell, *example;
};

/* What is written, and how it looks. */
struct list_book {
    const struct list_draft *list;
    lxw_workbook *workbook;
    lxw_worksheet *doors, *choices;
    lxw_format *title, *note;
    struct looks looks[STANDS_COUNT];
};

static lxw_format *new_format(const struct list_book *b, double size, bool bold) {
    lxw_format *const format = workbook_add_format(b->workbook);
    format_set_font_name(format, "Arial");
    format_set_font_size(format, size);
    if (bold) {
        format_set_bold(format);
    }
    return format;
}

static lxw_format *new_head(const struct list_book *b) {
    lxw_format *const head = new_format(b, 11, true);
    format_set_bg_color(head, 0xE7E6E6);
    format_set_bottom(head, LXW_BORDER_THIN);
    return head;
}

static void make_looks(struct list_book *b) {
    /* inches as fractions to two digits, so that 1/2 is typed as a fraction and not as a day */
    const char *const shown = b->list->unit == LENGTH_MM ? "General" : "# ?/\?\?";
    lxw_format *const first = STAILQ_FIRST(b->workbook->formats);
    format_set_font_name(first, "Arial");
    format_set_font_size(first, 11);
    b->title = new_format(b, 14, true);
    b->note = new_format(b, 10, false);
    format_set_font_color(b->note, 0x595959);
    for (int i = 0; i < STANDS_COUNT; i++) {
        struct looks *const looks = &b->looks[i];
        looks->head = new_head(b);
        looks->cell = new_format(b, 11, false);
        looks->example = new_format(b, 11, false);
        format_set_italic(looks->example);
        format_set_font_color(looks->example, 0x7F7F7F);
    }
    format_set_align(b->looks[STANDS_COUNTED].head, LXW_ALIGN_RIGHT);
    format_set_align(b->looks[STANDS_MEASURED].head, LXW_ALIGN_RIGHT);
    format_set_num_format(b->looks[STANDS_COUNTED].cell, "0");
    format_set_num_format(b->looks[STANDS_MEASURED].cell, shown);
    format_set_num_format(b->looks[STANDS_MEASURED].example, shown);
    format_set_indent(b->looks[STANDS_CLEAR].head, 1);
    format_set_indent(b->looks[STANDS_CLEAR].cell, 1);
    format_set_indent(b->looks[STANDS_CLEAR].example, 1);
}

static double in_unit(const struct list_book *b, int64_t nm) {
    return (double)nm / (double)(b->list->unit == LENGTH_MM ? NM_PER_MM : NM_PER_INCH);
}

/* What a cell of the column takes: said when it is chosen, and again when it is refused. */
static bool put_check(const struct list_book *b, lxw_col_t at,
                      const struct list_draft_column *column) {
    const bool metric = b->list->unit == LENGTH_MM;
    char source[64];
    char help[256] = ""; /* as long as the file format has it */
    char message[128] = "Choose one of the list; the sheet " CHOICES " has all.";
    lxw_data_validation check = {.validate = LXW_VALIDATION_TYPE_ANY,
                                 .ignore_blank = LXW_VALIDATION_ON,
                                 .input_message = help};
    assert(strlen(column->help) < sizeof help);
    (void)snprintf(help, sizeof help, "%s", column->help);
    if (column->kind == LIST_CHOICE) {
        (void)snprintf(source, sizeof source, "=" CHOICES "!$%c$2:$%c$%zu", 'A' + at, 'A' + at,
                       column->choice_count + 1);
        check.validate = LXW_VALIDATION_TYPE_LIST_FORMULA;
        check.value_formula = source;
    } else if (column->kind == LIST_SIZE) {
        check.validate = LXW_VALIDATION_TYPE_DECIMAL;
        check.minimum_number = in_unit(b, column->low);
        check.maximum_number = in_unit(b, column->high);
        (void)snprintf(message, sizeof message, "A size from %g to %g %s, as %s.",
                       check.minimum_number, check.maximum_number, metric ? "mm" : "in",
                       metric ? "395" : "15 1/4");
    } else if (column->kind == LIST_COUNT) {
        check.validate = LXW_VALIDATION_TYPE_INTEGER;
        check.minimum_number = (double)column->low;
        check.maximum_number = (double)column->high;
        (void)snprintf(message, sizeof message, "A whole number from %g to %g.",
                       check.minimum_number, check.maximum_number);
    }
    if (column->kind == LIST_SIZE || column->kind == LIST_COUNT) {
        check.criteria = LXW_VALIDATION_CRITERIA_BETWEEN;
    }
    if (column->kind != LIST_WORDS) {
        check.error_title = "Not possible here";
        check.error_message = message;
    }
    return worksheet_data_validation_range(b->doors, FIRST_ROW, at, LAST_ROW, at, &check) ==
           LXW_NO_ERROR;
}

static bool is_number(const struct list_draft_column *column) {
    return column->kind == LIST_SIZE || column->kind == LIST_COUNT;
}

static const struct looks *looks_of(const struct list_book *b, lxw_col_t at) {
    const struct list_draft_column *const column = &b->list->columns[at];
    if (is_number(column)) {
        return &b->looks[column->kind == LIST_SIZE ? STANDS_MEASURED : STANDS_COUNTED];
    }
    return &b->looks[at > 0 && is_number(column - 1) ? STANDS_CLEAR : STANDS_LEFT];
}

static void put_example(const struct list_book *b, lxw_col_t at,
                        const struct list_draft_column *column) {
    lxw_format *const look = looks_of(b, at)->example;
    if (is_number(column)) {
        (void)worksheet_write_number(b->doors, EXAMPLE_ROW, at, strtod(column->example, NULL),
                                     look);
    } else if (column->example[0] != '\0') {
        (void)worksheet_write_string(b->doors, EXAMPLE_ROW, at, column->example, look);
    }
}

/* A column of the sheet of choices; those without are hidden, so that a choice has the letter of
 * its column. */
static void put_choices(const struct list_book *b, lxw_col_t at,
                        const struct list_draft_column *column) {
    const struct looks *const looks = &b->looks[STANDS_LEFT];
    lxw_row_col_options options = {.hidden = column->kind != LIST_CHOICE};
    (void)worksheet_set_column_opt(b->choices, at, at, 18, looks->cell, &options);
    if (column->kind == LIST_CHOICE) {
        (void)worksheet_write_string(b->choices, 0, at, column->name, looks->head);
    }
    for (size_t i = 0; i < column->choice_count; i++) {
        (void)worksheet_write_string(b->choices, (lxw_row_t)(i + 1), at, column->choices[i],
                                     looks->cell);
    }
}

static bool put_column(const struct list_book *b, lxw_col_t at,
                       const struct list_draft_column *column) {
    static const double widths[] = {
        [LIST_WORDS] = 14, [LIST_SIZE] = 11, [LIST_COUNT] = 8, [LIST_CHOICE] = 16};
    const struct looks *const looks = looks_of(b, at);
    const bool last = (size_t)at + 1 == b->list->count;
    (void)worksheet_set_column(b->doors, at, at, last ? 32 : widths[column->kind], looks->cell);
    (void)worksheet_write_string(b->doors, HEAD_ROW, at, column->name, looks->head);
    put_example(b, at, column);
    put_choices(b, at, column);
    return put_check(b, at, column);
}

static bool put_all(struct list_book *b) {
    make_looks(b);
    b->doors = workbook_add_worksheet(b->workbook, "Doors");
    b->choices = workbook_add_worksheet(b->workbook, CHOICES);
    bool put = true;
    for (size_t i = 0; i < b->list->count; i++) {
        put = put_column(b, (lxw_col_t)i, &b->list->columns[i]) && put;
    }
    (void)worksheet_write_string(b->doors, TITLE_ROW, 0,
                                 b->list->unit == LENGTH_MM
                                     ? "Doors to make, sizes in millimeters"
                                     : "Doors to make, sizes in inches: 15 1/4, or 15.25",
                                 b->title);
    (void)worksheet_write_string(b->doors, NOTE_ROW, 0,
                                 "A row for each opening or door. The gray row shows how and is "
                                 "not read; every row has an id of its own.",
                                 b->note);
    worksheet_freeze_panes(b->doors, FIRST_ROW, 1);
    lxw_worksheet *const sheets[] = {b->doors, b->choices};
    for (size_t i = 0; i < 2; i++) {
        worksheet_set_landscape(sheets[i]);
        worksheet_set_paper(sheets[i], b->list->unit == LENGTH_MM ? 9 : 1); /* A4, letter */
        worksheet_fit_to_pages(sheets[i], 1, 0);
    }
    (void)worksheet_repeat_rows(b->doors, HEAD_ROW, HEAD_ROW);
    (void)worksheet_set_selection(b->doors, FIRST_ROW, 0, FIRST_ROW, 0);
    return put;
}

bool list_book_write(const struct list_draft *list, struct date date, const char *path) {
    struct list_book b = {.list = list, .workbook = workbook_new(path)};
    struct tm day = {
        .tm_year = date.year - 1900, .tm_mon = date.month - 1, .tm_mday = date.day, .tm_hour = 12};
    lxw_doc_properties properties = {.title = "Doors to make", .created = timegm(&day)};
    if (b.workbook == NULL) {
        return false;
    }
    (void)workbook_set_properties(b.workbook, &properties);
    const bool put = put_all(&b);
    const size_t cells = book_proof_cells(b.workbook);
    return workbook_close(b.workbook) == LXW_NO_ERROR && put && book_proof(path, cells, NULL);
}
