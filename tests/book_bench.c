/* SPDX-License-Identifier: MIT */
#include "book_bench.h"

#include "cmocka_all.h"
#include "report/xlsx/book_write.h"

#include <math.h>

void book_bench_write(struct book *book, const char *path) {
    char title[] = "Bench";
    const struct book_facts facts = {.title = title,
                                     .subject = title,
                                     .author = title,
                                     .footer = "foot",
                                     .letter = true,
                                     .year = 2026,
                                     .month = 3,
                                     .day = 2};
    book_assign_homes(book);
    assert_false(book_failed(book));
    assert_true(book_write(book, &facts, path));
}

void book_bench_read(struct book *book, const char *path, struct xlsx *read) {
    book_bench_write(book, path);
    xlsx_read(read, path);
}

struct xlsx_cell *book_bench_cell(const struct xlsx *read, const struct home *cell) {
    struct xlsx_cell *found = NULL;
    assert_non_null(cell);
    for (size_t i = 0; i < read->count; i++) {
        struct xlsx_cell *const at = &read->cells[i];
        if (at->sheet == cell->sheet && at->row == cell->row && at->column == cell->column) {
            assert_null(found); /* no cell stands in a file twice */
            found = at;
        }
    }
    assert_non_null(found);
    return found;
}

bool book_bench_same(double found, int64_t value, uint8_t decimals) {
    return fabs(found * pow(10, decimals) - (double)value) < 1e-3;
}
