/* SPDX-License-Identifier: MIT */
/* The estimates of a job side by side: up to four a table, the first in each. */
#include "base/text.h"
#include "report/text/print.h"
#include "report/words/compared.h"
#include "report/words/show.h"

#include <string.h>

#define MOST_BESIDE  3 /* further tables hold so many more */
#define WIDEST_TITLE 12

/* The estimates of one table: the first, then `count` others. */
struct spread {
    const struct estimate *estimates[MOST_BESIDE + 1];
    size_t count;
};

static void put_lines(struct grid *grid, const struct spread *s, const struct compared *all,
                      bool behind) {
    for (size_t i = 0; i < all->count; i++) {
        const struct compared_line *const line = &all->lines[i];
        if (line->behind != behind) {
            continue;
        }
        if (line->total) {
            grid_rule(grid);
        }
        grid_put(grid, "%s", line->label);
        for (size_t n = 0; n <= s->count; n++) {
            const struct estimate *const e = s->estimates[n];
            const fig f = line->figures[n];
            grid_put(grid, "%s%s", line->less && !fig_none(f) ? "-" : "", show_amount(e, f).text);
        }
    }
}

static void put_difference(struct grid *grid, const struct spread *s) {
    grid_put(grid, "difference to the first");
    grid_put(grid, "%s", "");
    for (size_t i = 1; i <= s->count; i++) {
        grid_put(grid, "%s", show_difference(s->estimates[0], s->estimates[i]).money.text);
    }
    grid_put(grid, "in percent");
    grid_put(grid, "%s", "");
    for (size_t i = 1; i <= s->count; i++) {
        grid_put(grid, "%s", show_difference(s->estimates[0], s->estimates[i]).percent.text);
    }
}

/* Names that the heads of columns have no room for are told in full above them. */
static void tell_cut(struct page *page, const struct spread *s, const struct grid_column *columns) {
    for (size_t i = 0; i <= s->count; i++) {
        const char *const name = estimate_name(s->estimates[i]);
        const char *const title = text_or_empty(columns[i + 1].title);
        if (strcmp(title, name) != 0) {
            say_wrapped(page, "", 2, "%s: %s", title, name);
        }
    }
}

static void print_spread(struct page *page, const struct spread *s) {
    struct grid_column columns[MOST_BESIDE + 2] = {{"", GRID_LEFT, true}};
    struct pool titles;
    struct grid grid;
    pool_init(&titles);
    for (size_t i = 0; i <= s->count; i++) {
        columns[i + 1] = (struct grid_column){
            .title = grid_cut(&titles, estimate_name(s->estimates[i]), WIDEST_TITLE),
            .align = GRID_RIGHT};
    }
    grid_init(&grid, columns, s->count + 2, 0);
    const struct compared all = compared_make(&grid.pool, s->estimates, s->count + 1, false);
    put_lines(&grid, s, &all, false);
    if (s->count > 0) {
        put_difference(&grid, s);
    }
    grid_heading(&grid, "%s", "");
    put_lines(&grid, s, &all, true);
    say(page, "%s", "");
    tell_cut(page, s, columns);
    grid_print(&grid, page);
    grid_clear(&grid);
    page->failed = page->failed || pool_failed(&titles);
    pool_clear(&titles);
}

void compare_print(struct page *page, const struct estimate *estimates, size_t count) {
    head_print(page, "Side by side", &estimates[0]);
    size_t from = 1;
    do {
        const size_t left = count - from;
        struct spread s = {.estimates = {&estimates[0]},
                           .count = left > MOST_BESIDE ? MOST_BESIDE : left};
        for (size_t i = 0; i < s.count; i++) {
            s.estimates[i + 1] = &estimates[from + i];
        }
        print_spread(page, &s);
        from += MOST_BESIDE;
    } while (from < count);
    if (count == 1) {
        say(page, "%s", "");
        say_wrapped(page, "", 0,
                    "The job names no other way to make it; an [option NAME] of the "
                    "job file would stand beside this.");
    }
}
