/* SPDX-License-Identifier: MIT */
#include "size_bench.h"

#include "model/name.h"
#include "read/job/style_row.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdlib.h>

#include <cmocka.h>

void size_bench_make(struct size_table *table, const struct bench *bench, const int64_t *counts,
                     size_t count, struct pool *pool) {
    static const char *const names[SIZE_BENCH_STYLES] = {"plain", "slab"};
    static const length sizes[SIZE_BENCH_LINES][2] = {{15, 30}, {2, 30}, {22, 60}};
    struct problems problems;
    problems_init(&problems);
    *table =
        (struct size_table){.styles = pool_take(pool, SIZE_BENCH_STYLES, sizeof *table->styles),
                            .style_count = SIZE_BENCH_STYLES,
                            .counts = counts,
                            .count_count = count};
    assert_non_null(table->styles);
    for (size_t s = 0; s < SIZE_BENCH_STYLES && table->styles != NULL; s++) {
        struct size_style *const style = &table->styles[s];
        style->name = names[s];
        style->style = name_find(&bench->rates, NAME_STYLE, names[s]);
        style->make = style_make(&bench->rates, &bench->job, style->style);
        style->lines = pool_take(pool, SIZE_BENCH_LINES, sizeof *style->lines);
        style->line_count = SIZE_BENCH_LINES;
        assert_true(style->style >= 0 && style->lines != NULL);
        for (size_t l = 0; l < SIZE_BENCH_LINES && style->lines != NULL; l++) {
            style->lines[l].row =
                style_row(&style->make, sizes[l][0] * NM_PER_INCH, sizes[l][1] * NM_PER_INCH);
            if (!style_row_can_be_made(&bench->rates, &bench->job, &style->lines[l].row, -1,
                                       &problems)) {
                style->lines[l].reason = SIZE_BENCH_REASON;
            }
            /* a frame of 2 in has no room between its stiles; a slab of 2 in can be sawn */
            assert_true((style->lines[l].reason != NULL) == (s == 0 && l == 1));
        }
    }
    assert_true(size_table_make(table, &bench->estimate, (struct plan_request){0}, pool));
    problems_clear(&problems);
}
