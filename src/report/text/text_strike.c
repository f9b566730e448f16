/* SPDX-License-Identifier: MIT */
/* What each row of the list really saves and costs, and sizes that might be one. */
#include "price/strike.h"

#include "report/text/print.h"
#include "report/words/show.h"

static const struct grid_column columns[] = {
    {"row", GRID_LEFT, true},           {"listed", GRID_RIGHT, false},
    {"client pays", GRID_RIGHT, false}, {"direct", GRID_RIGHT, false},
    {"left over", GRID_RIGHT, false},   {"to buy", GRID_RIGHT, false},
    {"hours", GRID_RIGHT, false},
};
#define COLUMNS (sizeof columns / sizeof *columns)

static void put_outcome(struct grid *grid, const struct strike *s, const struct outcome *o) {
    const int64_t money[] = {o->client, o->direct, o->left, o->bought};
    for (size_t i = 0; i < sizeof money / sizeof *money; i++) {
        grid_put(grid, "%s", show_number(money[i], s->money_decimals).text);
    }
    grid_put(grid, "%s", show_number(o->hours, 2).text);
}

static void put_row(struct grid *grid, const struct strike *s, const struct strike_row *row,
                    bool more) {
    grid_put(grid, "%s", row->row->id.s);
    grid_put(grid, "%s", show_number(more ? row->listed_one : row->listed, s->money_decimals).text);
    if (more ? row->has_more : row->has_less) {
        put_outcome(grid, s, more ? &row->more : &row->less);
    } else {
        grid_put(grid, "-");
    }
    grid_end_row(grid);
}

static void print_rows(struct page *page, const struct strike *s, bool more) {
    struct grid grid;
    grid_init(&grid, columns, COLUMNS, 2);
    for (size_t i = 0; i < s->row_count; i++) {
        put_row(&grid, s, &s->rows[i], more);
    }
    if (!more && s->has_together) {
        int64_t listed = 0;
        for (size_t i = 0; i < s->row_count; i++) {
            listed += s->rows[i].listed;
        }
        grid_rule(&grid);
        grid_put(&grid, "all at once");
        grid_put(&grid, "%s", show_number(listed, s->money_decimals).text);
        put_outcome(&grid, s, &s->together);
    }
    grid_print(&grid, page);
    grid_clear(&grid);
}

/* `G03, G07: 1/8 higher, as G01`. */
static void put_size(struct grid *grid, const struct strike *s, const struct strike_size *size,
                     enum length_unit unit) {
    const bool more = size->to > size->from;
    const char *names = "";
    char text[32];
    for (size_t i = 0; i < size->row_count; i++) {
        names = pool_words(&grid->pool, "%s%s%s", names, i == 0 ? "" : ", ", size->rows[i]->id.s);
    }
    grid_put(
        grid, "%s: %s %s, as %s", names,
        length_show(more ? size->to - size->from : size->from - size->to, unit, text, sizeof text),
        size->width ? (more ? "wider" : "narrower") : (more ? "higher" : "lower"),
        size->other->id.s);
    put_outcome(grid, s, &size->less);
    grid_put(grid, "%s", show_number(size->less.setups, 0).text);
}

static void print_sizes(struct page *page, const struct strike *s, enum length_unit unit) {
    static const struct grid_column heads[] = {
        {"make", GRID_LEFT, true},      {"client pays", GRID_RIGHT, false},
        {"direct", GRID_RIGHT, false},  {"left over", GRID_RIGHT, false},
        {"to buy", GRID_RIGHT, false},  {"hours", GRID_RIGHT, false},
        {"set-ups", GRID_RIGHT, false},
    };
    struct grid grid;
    grid_init(&grid, heads, sizeof heads / sizeof *heads, 2);
    for (size_t i = 0; i < s->size_count; i++) {
        put_size(&grid, s, &s->sizes[i], unit);
    }
    say(page, "%s", "");
    say_wrapped(page, "", 0,
                "Leaves of nearly equal sizes made one size, and what falls away; whether the "
                "cabinets allow it is for you to say:");
    grid_print(&grid, page);
    grid_clear(&grid);
}

void strike_print(struct page *page, const struct estimate *e, const struct strike *s) {
    head_print(page, "Rows struck and added", e);
    say(page, "%s", "");
    say_wrapped(page, "", 0,
                "If a row is struck, this falls away (a job without it is estimated "
                "anew; less than nothing: it then costs more):");
    print_rows(page, s, false);
    say(page, "%s", "");
    say_wrapped(page, "", 0, "One more opening or door of a row adds:");
    print_rows(page, s, true);
    if (s->size_count > 0) {
        print_sizes(page, s, e->job->unit);
    }
    say(page, "%s", "");
    say_wrapped(page, "", 0,
                "Listed: its line of the quote, before discount and tax. Client pays: with all "
                "discounts, minimums and tax. Direct: materials, labor and what is bought in. Left "
                "over, before tax, for contingency, overhead and profit: overhead goes on whether "
                "the row is made or not. To buy: money spent, in whole sheets, boards and cans.");
}
