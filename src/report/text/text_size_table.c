/* SPDX-License-Identifier: MIT */
/* Prices by size: one more door beside a flat price by area, then by how many are ordered. */
#include "report/text/print.h"
#include "report/words/show.h"
#include "report/words/size_words.h"

/* Counts that stand side by side on a line. */
#define ABREAST 5

struct printing {
    struct page *page;
    const struct estimate *e;
    const struct size_table *table;
    struct pool *pool;
};

static const char *money(const struct printing *p, struct pool *pool, int64_t amount) {
    return pool_words(pool, "%s", show_number(amount, p->table->money_decimals).text);
}

static void put_size(const struct printing *p, struct grid *grid, const struct size_line *line) {
    grid_put(grid, "%s",
             show_size(line->row.width.amount, line->row.height.amount, p->e->job->unit).text);
}

/* --- one more, beside the flat price --- */

static void put_flat(const struct printing *p, struct grid *grid, const struct size_line *line) {
    const struct size_price *const one = line->reason == NULL ? &line->prices[SIZE_ADDED][0] : NULL;
    put_size(p, grid, line);
    if (one == NULL || !one->has) {
        grid_put(grid, "-");
        grid_end_row(grid);
        return;
    }
    const int64_t count = p->table->counts[0];
    grid_put(grid, "%s", show_number((line->area * count + 50) / 100, 2).text);
    grid_put(grid, "%s", money(p, &grid->pool, one->outcome.direct));
    grid_put(grid, "%s", money(p, &grid->pool, one->outcome.before_tax));
    grid_put(grid, "%s", money(p, &grid->pool, one->per_area));
    grid_put(grid, "%s", money(p, &grid->pool, one->flat));
    grid_put(grid, "%s", flat_does_name(one->flat_does));
}

static void print_flat(const struct printing *p, const struct size_style *style) {
    const char *const area = size_area_name(p->e);
    char per[24];
    (void)snprintf(per, sizeof per, "a %s", area);
    const struct grid_column columns[] = {
        {"size", GRID_LEFT, true},    {area, GRID_RIGHT, false}, {"direct", GRID_RIGHT, false},
        {"price", GRID_RIGHT, false}, {per, GRID_RIGHT, false},  {"by area", GRID_RIGHT, false},
        {"which", GRID_LEFT, false},
    };
    struct grid grid;
    const int64_t count = p->table->counts[0];
    say(p->page, "%s", "");
    say_wrapped(p->page, "", 0, "%s: %s more, added to this job", style->name,
                count == 1
                    ? "one opening or door"
                    : pool_words(p->pool, "%s openings or doors", show_number(count, 0).text));
    grid_init(&grid, columns, sizeof columns / sizeof *columns, 2);
    for (size_t l = 0; l < style->line_count; l++) {
        put_flat(p, &grid, &style->lines[l]);
    }
    grid_print(&grid, p->page);
    grid_clear(&grid);
}

/* --- by how many --- */

static void put_each(const struct printing *p, struct grid *grid, const struct size_line *line,
                     enum size_way way, size_t from, size_t to) {
    put_size(p, grid, line);
    for (size_t c = from; c < to; c++) {
        const bool has = line->reason == NULL && line->prices[way][c].has;
        if (has) {
            const struct size_price *const price = &line->prices[way][c];
            grid_put(grid, "%s%s", flat_does_mark(price->flat_does),
                     show_number(price->each, p->table->money_decimals).text);
        } else {
            grid_put(grid, "-");
        }
    }
}

static void print_each(const struct printing *p, const struct size_style *style, enum size_way way,
                       size_t from, size_t to) {
    struct grid_column columns[1 + ABREAST] = {{"size", GRID_LEFT, true}};
    struct grid grid;
    grid_init(&grid, columns, 1 + to - from, 2);
    for (size_t c = from; c < to; c++) {
        const char *const head =
            pool_words(&grid.pool, "of %s", show_number(p->table->counts[c], 0).text);
        columns[1 + c - from] = (struct grid_column){head, GRID_RIGHT, false};
    }
    say(p->page, "%s", "");
    say_wrapped(p->page, "", 0, "%s: price of each, %s", style->name, size_way_name(way));
    for (size_t l = 0; l < style->line_count; l++) {
        put_each(p, &grid, &style->lines[l], way, from, to);
    }
    grid_print(&grid, p->page);
    grid_clear(&grid);
}

static void print_reasons(const struct printing *p, const struct size_style *style) {
    bool said = false;
    for (size_t l = 0; l < style->line_count; l++) {
        const struct size_line *const line = &style->lines[l];
        if (line->reason != NULL && !said) {
            say(p->page, "%s", "");
            say(p->page, "Cannot be made:");
            said = true;
        }
        if (line->reason != NULL) {
            const struct shown size =
                show_size(line->row.width.amount, line->row.height.amount, p->e->job->unit);
            say_wrapped(p->page, "  -", 4, "%s: %s", size.text, line->reason);
        }
    }
}

static void print_style(const struct printing *p, const struct size_style *style) {
    const size_t count = p->table->count_count;
    print_flat(p, style);
    for (int way = 0; way < SIZE_WAY_COUNT; way++) {
        for (size_t from = 0; from < count; from += ABREAST) {
            print_each(p, style, (enum size_way)way, from,
                       from + ABREAST < count ? from + ABREAST : count);
        }
    }
    say(p->page, "%s", "");
    say_wrapped(p->page, "", 0, "%s", size_flat_words(p->e, p->table, style, p->pool));
    print_reasons(p, style);
}

void size_table_print(struct page *page, const struct estimate *e, const struct size_table *table) {
    struct pool pool;
    pool_init(&pool);
    const struct printing p = {.page = page, .e = e, .table = table, .pool = &pool};
    head_print(page, "Prices by size", e);
    for (size_t s = 0; s < table->style_count; s++) {
        print_style(&p, &table->styles[s]);
    }
    say(page, "%s", "");
    say_wrapped(page, "", 0, "%s", SIZE_TERMS_WORDS);
    say_wrapped(page, "", 0, "%s", SIZE_WAYS_WORDS);
    page->failed = page->failed || pool_failed(&pool);
    pool_clear(&pool);
}
