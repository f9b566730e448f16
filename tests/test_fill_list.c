/* SPDX-License-Identifier: MIT */
/* The workbook of doors to fill in, read back by a parser of XML: heads and the row that shows how,
 * what each cell may hold as the program's reader takes it, choices on a sheet of their own.
 * Elements and attributes of checks: ECMA-376, part 1, 18.3.1.32 (dataValidation). */
#include "support.h"

#include "draft/list_draft.h"
#include "markup_read.h"
#include "report/list/list_book.h"
#include "xlsx_read.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include <cmocka.h>

#define PATH "test-fill-list.xlsx"

struct filled {
    struct bench *bench;
    const struct list_draft *list;
    struct xlsx read;
    struct markup doors;
};

/* Row of the heads, from 0; -1: there are none. */
static long head_row(const struct filled *f) {
    for (size_t i = 0; i < f->read.count; i++) {
        const struct xlsx_cell *const cell = &f->read.cells[i];
        if (cell->sheet == 0 && cell->column == 0 && cell->value.kind == XLSX_TEXT &&
            strcmp(cell->value.text, "id") == 0) {
            return (long)cell->row;
        }
    }
    return -1;
}

static const struct xlsx_cell *cell_at(const struct xlsx *read, uint16_t sheet, long row,
                                       size_t column) {
    for (size_t i = 0; i < read->count; i++) {
        const struct xlsx_cell *const cell = &read->cells[i];
        if (cell->sheet == sheet && (long)cell->row == row && cell->column == column) {
            return cell;
        }
    }
    return NULL;
}

static bool is_text(const struct xlsx_cell *cell, const char *text) {
    return cell == NULL || cell->value.kind == XLSX_EMPTY
               ? text[0] == '\0'
               : cell->value.kind == XLSX_TEXT && strcmp(cell->value.text, text) == 0;
}

static void check_cells(struct filled *f) {
    const long head = head_row(f);
    assert_true(head >= 0);
    for (size_t c = 0; c < f->list->count; c++) {
        const struct list_draft_column *const column = &f->list->columns[c];
        const struct xlsx_cell *const example = cell_at(&f->read, 0, head + 1, c);
        const bool number = column->kind == LIST_SIZE || column->kind == LIST_COUNT;
        if (!is_text(cell_at(&f->read, 0, head, c), column->name)) {
            bench_wrong(f->bench, "the head of '%s' lacks", column->name);
        }
        if (number ? example == NULL || example->value.kind != XLSX_NUMBER ||
                         fabs(example->value.number - strtod(column->example, NULL)) > 1e-9
                   : !is_text(example, column->example)) {
            bench_wrong(f->bench, "the row that shows how lacks '%s'", column->example);
        }
        for (size_t i = 0; i < column->choice_count; i++) {
            if (!is_text(cell_at(&f->read, 1, (long)i + 1, c), column->choices[i])) {
                bench_wrong(f->bench, "'%s' is no choice of '%s'", column->choices[i],
                            column->name);
            }
        }
        if (column->choice_count > 0 &&
            cell_at(&f->read, 1, (long)column->choice_count + 1, c) != NULL) {
            bench_wrong(f->bench, "'%s' has more choices", column->name);
        }
    }
    if (cell_at(&f->read, 0, head, f->list->count) != NULL) {
        bench_wrong(f->bench, "there are more heads");
    }
}

/* --- checks --- */

static const char *inner(const struct filled *f, size_t of, const char *name) {
    for (size_t i = of + 1; i < f->doors.count && f->doors.elements[i].parent == of; i++) {
        if (strcmp(f->doors.elements[i].name, name) == 0) {
            return f->doors.elements[i].text;
        }
    }
    return "";
}

/* The check of a column, by its letter; its index among the elements, or SIZE_MAX. */
static size_t check_of(const struct filled *f, size_t column, long first, long last) {
    char range[64];
    (void)snprintf(range, sizeof range, "%c%ld:%c%ld", (char)('A' + column), first,
                   (char)('A' + column), last);
    for (size_t i = 0; i < f->doors.count; i++) {
        const char *const at = markup_value(&f->doors.elements[i], "sqref");
        if (strcmp(f->doors.elements[i].name, "dataValidation") == 0 && at != NULL &&
            strcmp(at, range) == 0) {
            return i;
        }
    }
    return SIZE_MAX;
}

static double in_unit(const struct filled *f, int64_t nm) {
    return (double)nm / (double)(f->list->unit == LENGTH_MM ? NM_PER_MM : NM_PER_INCH);
}

static void check_limits(struct filled *f, const struct list_draft_column *column, size_t at,
                         double low, double high, const char *type) {
    const struct markup_element *const e = &f->doors.elements[at];
    const char *const is = markup_value(e, "type");
    const char *const operates = markup_value(e, "operator"); /* absent: between */
    if (is == NULL || strcmp(is, type) != 0 ||
        (operates != NULL && strcmp(operates, "between") != 0) ||
        fabs(strtod(inner(f, at, "formula1"), NULL) - low) > 1e-9 ||
        fabs(strtod(inner(f, at, "formula2"), NULL) - high) > 1e-9) {
        bench_wrong(f->bench, "'%s' is checked as %s from %s to %s", column->name,
                    is == NULL ? "anything" : is, inner(f, at, "formula1"),
                    inner(f, at, "formula2"));
    }
    if (markup_value(e, "error") == NULL) {
        bench_wrong(f->bench, "'%s' does not tell what it takes", column->name);
    }
}

static void check_checks(struct filled *f) {
    const long first = head_row(f) + 3; /* counted from 1, behind the row that shows how */
    const long last = first + LIST_BOOK_ROWS - 1;
    size_t checks = 0;
    for (size_t c = 0; c < f->list->count; c++) {
        const struct list_draft_column *const column = &f->list->columns[c];
        const size_t at = check_of(f, c, first, last);
        char choices[60];
        if (column->kind == LIST_WORDS) {
            /* words are free, but for ids, each of which stands once */
            checks += at == SIZE_MAX ? 0 : 1;
            continue;
        }
        if (at == SIZE_MAX) {
            bench_wrong(f->bench, "'%s' is not checked", column->name);
            continue;
        }
        checks++;
        if (column->kind == LIST_SIZE) {
            check_limits(f, column, at, in_unit(f, column->low), in_unit(f, column->high),
                         "decimal");
        } else if (column->kind == LIST_COUNT) {
            check_limits(f, column, at, (double)column->low, (double)column->high, "whole");
        } else {
            (void)snprintf(choices, sizeof choices, "%s!$%c$2:$%c$%zu", f->read.names[1],
                           (char)('A' + c), (char)('A' + c), column->choice_count + 1);
            if (strcmp(inner(f, at, "formula1"), choices) != 0) {
                bench_wrong(f->bench, "'%s' chooses from %s, expected %s", column->name,
                            inner(f, at, "formula1"), choices);
            }
        }
    }
    if (markup_count(&f->doors, "dataValidation", NULL) != checks) {
        bench_wrong(f->bench, "there are more checks than columns");
    }
}

static int check_book(struct bench *bench, enum length_unit unit) {
    struct list_draft list;
    struct pool pool;
    struct filled f = {.bench = bench, .list = &list};
    pool_init(&pool);
    assert_true(list_draft_make(&list, &bench->rates, unit, &pool));
    assert_true(list_book_write(&list, (struct date){2026, 3, 2}, PATH));
    xlsx_read(&f.read, PATH);
    char *const part = xlsx_part(PATH, "xl/worksheets/sheet1.xml");
    assert_non_null(part);
    markup_read(&f.doors, part, strlen(part));
    assert_int_equal(unlink(PATH), 0);
    assert_int_equal(f.read.sheet_count, 2);
    check_cells(&f);
    check_checks(&f);
    free(part);
    markup_clear(&f.doors);
    xlsx_clear(&f.read);
    pool_clear(&pool);
    return bench_close(bench);
}

static void test_lists(void **state) {
    static const char *const jobs[] = {"samples/kitchen/kitchen.ini",
                                       "samples/metric/tea-kitchen.ini"};
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(jobs); i++) {
        for (int unit = LENGTH_INCH; unit <= LENGTH_MM; unit++) {
            struct bench bench;
            bench_open_job(&bench, jobs[i]);
            wrong += check_book(&bench, (enum length_unit)unit);
        }
    }
    assert_int_equal(wrong, 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_lists)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
