/* SPDX-License-Identifier: MIT */
#include "rows.h"

#include "base/pool.h"

#include <csv.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

struct reading {
    struct rows *rows;
    size_t cell_count, room, column, lines;
};

static void on_cell(void *text, size_t size, void *data) {
    struct reading *const r = data;
    char *const copy = malloc(size + 1);
    assert_non_null(copy);
    memcpy(copy, text, size);
    copy[size] = '\0';
    bool failed = false;
    r->rows->cells =
        array_grow(r->rows->cells, &r->room, r->cell_count + 1, sizeof(char *), &failed);
    assert_false(failed);
    r->rows->cells[r->cell_count++] = copy;
    r->column++;
}

static void on_line(int end, void *data) {
    struct reading *const r = data;
    (void)end;
    if (r->lines == 0) {
        r->rows->columns = r->column;
    }
    assert_int_equal(r->column, r->rows->columns);
    r->column = 0;
    r->lines++;
}

void rows_read(struct rows *rows, const char *file) {
    char path[512];
    char text[4096];
    struct csv_parser parser;
    struct reading reading = {.rows = rows};
    *rows = (struct rows){.file = file};
    (void)snprintf(path, sizeof path, DOORCOST_SOURCE "/tests/outside/%s", file);
    FILE *const in = fopen(path, "rb");
    assert_non_null(in);
    assert_int_equal(csv_init(&parser, CSV_STRICT | CSV_STRICT_FINI | CSV_APPEND_NULL), 0);
    for (size_t size = 0; (size = fread(text, 1, sizeof text, in)) > 0;) {
        assert_int_equal(csv_parse(&parser, text, size, on_cell, on_line, &reading), size);
    }
    assert_int_equal(csv_fini(&parser, on_cell, on_line, &reading), 0);
    csv_free(&parser);
    (void)fclose(in);
    assert_true(reading.lines > 1);
    rows->count = reading.lines - 1;
}

void rows_done(struct rows *rows) {
    const int wrong = rows->wrong;
    const size_t checked = rows->checked;
    print_message("%s: %zu rows checked, %zu not\n", rows->file, checked, rows->passed_over);
    assert_int_equal(checked + rows->passed_over, rows->count);
    for (size_t i = 0; i < (rows->count + 1) * rows->columns; i++) {
        free(rows->cells[i]);
    }
    free((void *)rows->cells);
    *rows = (struct rows){0};
    assert_int_equal(wrong, 0);
    assert_true(checked > 0);
}

const char *rows_cell(const struct rows *rows, size_t row, const char *column) {
    for (size_t c = 0; c < rows->columns; c++) {
        if (strcmp(rows->cells[c], column) == 0) {
            return rows->cells[(row + 1) * rows->columns + c];
        }
    }
    fail_msg("%s has no column '%s'", rows->file, column);
    return "";
}

int64_t rows_number(const struct rows *rows, size_t row, const char *column) {
    const char *text = rows_cell(rows, row, column);
    const bool minus = *text == '-';
    int64_t value = 0;
    int decimals = -1;
    for (text += minus ? 1 : 0; *text != '\0'; text++) {
        if (*text == '.' && decimals < 0) {
            decimals = 0;
            continue;
        }
        if (*text < '0' || *text > '9' || decimals == 9) {
            fail_msg("%s: %s of %s is no number", rows->file, column, rows_cell(rows, row, "id"));
        }
        value = 10 * value + (*text - '0');
        decimals += decimals >= 0 ? 1 : 0;
    }
    for (decimals = decimals < 0 ? 0 : decimals; decimals < 9; decimals++) {
        value *= 10;
    }
    return minus ? -value : value;
}

bool rows_check_is(const struct rows *rows, size_t row, const char *check) {
    return strcmp(rows_cell(rows, row, "check"), check) == 0;
}

void rows_expect(struct rows *rows, size_t row, int64_t value) {
    const int64_t expected = rows_number(rows, row, "expected");
    rows->checked++;
    if (rows_cell(rows, row, "expected")[0] == '\0' ||
        llabs(value - expected) > rows_number(rows, row, "tolerance")) {
        print_error("%s %s: %lld.%09lld, published %s (%s), within %s; source: %s\n", rows->file,
                    rows_cell(rows, row, "id"), (long long)(value / ROWS_ONE),
                    llabs(value % ROWS_ONE), rows_cell(rows, row, "expected"),
                    rows_cell(rows, row, "published"), rows_cell(rows, row, "tolerance"),
                    rows_cell(rows, row, "source"));
        rows->wrong++;
    }
}

void rows_pass_over(struct rows *rows, size_t row) {
    if (!rows_check_is(rows, row, "not checked") || rows_cell(rows, row, "note")[0] == '\0') {
        print_error("%s %s: no check is known for '%s'\n", rows->file, rows_cell(rows, row, "id"),
                    rows_cell(rows, row, "check"));
        rows->wrong++;
    }
    rows->passed_over++;
}
