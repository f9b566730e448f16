/* SPDX-License-Identifier: MIT */
/* What a job may come to, drawn from the ranges of its rates. */
#include "price/chance.h"

#include "report/text/print.h"
#include "report/words/chance_words.h"
#include "report/words/show.h"

#include <string.h>

static const char *percent_text(int32_t tenths, struct shown *shown) {
    *shown = show_number(tenths, 1);
    return shown->text;
}

static void put_cost_row(struct grid *grid, const char *words, int64_t direct, int64_t full,
                         uint8_t decimals) {
    grid_put(grid, "%s", words);
    grid_put(grid, "%s", show_number(direct, decimals).text);
    grid_put(grid, "%s", show_number(full, decimals).text);
}

static void print_costs(struct page *page, const struct chance *c, uint8_t decimals) {
    static const struct grid_column columns[] = {{"cost", GRID_LEFT, true},
                                                 {"direct", GRID_RIGHT, false},
                                                 {"with overhead", GRID_RIGHT, false}};
    struct grid grid;
    grid_init(&grid, columns, 3, 2);
    put_cost_row(&grid, "with the likely values", c->direct.figured, c->full.figured, decimals);
    put_cost_row(&grid, "least drawn", c->direct.least, c->full.least, decimals);
    for (int p = 0; p < CHANCE_POINTS; p++) {
        put_cost_row(&grid,
                     pool_words(&grid.pool, "at most, in %d %% of the draws",
                                chance_point_percent((enum chance_point)p)),
                     c->direct.points[p], c->full.points[p], decimals);
    }
    put_cost_row(&grid, "most drawn", c->direct.most, c->full.most, decimals);
    grid_print(&grid, page);
    grid_clear(&grid);
}

/* A bar a bin, the longest of so many marks. */
#define BAR_MARKS 44

static void print_bins(struct page *page, const struct chance *c, uint8_t decimals) {
    static const struct grid_column columns[] = {
        {"from", GRID_RIGHT, false}, {"draws", GRID_RIGHT, false}, {"", GRID_LEFT, false}};
    static const char marks[] = "############################################";
    size_t most = 1;
    struct grid grid;
    for (size_t i = 0; i < c->bin_count; i++) {
        most = c->bins[i] > most ? c->bins[i] : most;
    }
    grid_init(&grid, columns, 3, 2);
    for (size_t i = 0; i < c->bin_count; i++) {
        const int64_t from = c->bin_from + (int64_t)i * c->bin_step;
        grid_put(&grid, "%s", show_number(from, decimals).text);
        grid_put(&grid, "%zu", c->bins[i]);
        grid_put(&grid, "%.*s", (int)(c->bins[i] * BAR_MARKS / most), marks);
    }
    grid_print(&grid, page);
    grid_clear(&grid);
}

static void print_chances(struct page *page, const struct chance *c, uint8_t decimals) {
    struct grid grid;
    struct shown shown;
    static const struct grid_column columns[] = {{NULL, GRID_LEFT, true},
                                                 {NULL, GRID_RIGHT, false}};
    say_wrapped(page, "", 0,
                "Sold for %s before tax, with the charges that are worked for; profit wanted: %s. "
                "In so many of the draws",
                show_number(c->price, decimals).text, show_number(c->wanted, decimals).text);
    grid_init(&grid, columns, 2, 2);
    for (int i = 0; i < CHANCE_RISKS; i++) {
        grid_put(&grid, "%s", chance_risk_words((enum chance_risk)i));
        grid_put(&grid, "%s %%", percent_text(chance_risk((enum chance_risk)i, c), &shown));
    }
    grid_print(&grid, page);
    grid_clear(&grid);
}

/* Shares below this, in tenths of a percent, are told by their number. */
#define LEAST_SHARE 5

static void print_shares(struct page *page, const struct chance *c) {
    static const struct grid_column columns[] = {{"range", GRID_LEFT, true},
                                                 {"share", GRID_RIGHT, false}};
    struct grid grid;
    struct shown shown;
    size_t told = 0;
    grid_init(&grid, columns, 2, 2);
    for (; told < c->drawn && c->inputs[told].share >= LEAST_SHARE; told++) {
        grid_put(&grid, "%s", chance_input_words(&c->inputs[told], &grid.pool));
        grid_put(&grid, "%s %%", percent_text(c->inputs[told].share, &shown));
    }
    if (told > 0) {
        say(page, "%s", "");
        say_wrapped(page, "", 0, "What the cost with overhead goes with, %s:", CHANCE_SHARE_WORDS);
        grid_print(&grid, page);
    }
    if (told < c->drawn) {
        say(page, "  %s%s of less than 0.5 %%%s", told > 0 ? "and " : "",
            show_count(c->drawn - told, "range").text, c->drawn - told > 1 ? " each" : "");
    }
    grid_clear(&grid);
}

void chance_print(struct page *page, const struct estimate *e, const struct chance *c) {
    struct pool pool;
    const uint8_t decimals = e->tape.money_decimals;
    const char *const *notes;
    pool_init(&pool);
    say(page, "%s", "");
    say_wrapped(page, "", 0, "%s", chance_drawn_words(c, e->rates, &pool));
    if (c->drawn > 0) {
        print_costs(page, c, decimals);
        say(page, "%s", "");
        say_wrapped(page, "", 0,
                    "Cost with overhead, in steps of %s:", show_number(c->bin_step, decimals).text);
        print_bins(page, c, decimals);
        say(page, "%s", "");
        print_chances(page, c, decimals);
        say(page, "%s", "");
        say_wrapped(page, "", 0, "%s", chance_contingency_words(c, e, &pool));
        print_shares(page, c);
    }
    notes = chance_notes(c, &pool);
    for (size_t i = 0; notes != NULL && notes[i] != NULL; i++) {
        say(page, "%s", "");
        say_wrapped(page, "", 0, "%s", notes[i]);
    }
    page->failed = page->failed || pool_failed(&pool);
    pool_clear(&pool);
}
