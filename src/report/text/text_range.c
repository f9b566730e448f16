/* SPDX-License-Identifier: MIT */
/* Rates moved: for each what it changes for the client and of the cost, with bars, what moves most
 * first; then the rates that have no range. */
#include "trial/range.h"

#include "base/text.h"
#include "report/text/print.h"
#include "report/words/moves.h"
#include "report/words/show.h"

#include <math.h>
#include <string.h>

#define WIDEST_BAR 60
#define MOST_MOVES 10 /* of those without a range: the others are counted */

/* A table of lines that are all laid out alike. */
struct sheet_of_bars {
    struct page *page;
    const struct ranges *ranges;
    struct pool pool;
    size_t amount; /* columns of each amount */
    size_t half;   /* columns of a bar on either side of its middle */
    int64_t most;  /* money of the longest bar; 1 or more */
};

/* `+559.80`; `-` where the job could not be estimated so, nothing where the rate is not moved. */
static const char *amount_of(struct sheet_of_bars *s, const struct range_end *end, int64_t money) {
    if (end->text == NULL || !end->has) {
        return end->text == NULL ? "" : "-";
    }
    return pool_words(&s->pool, "%s", show_more(money, s->ranges->money_decimals).text);
}

/* Draws an end into a line of 2 x half + 1 columns. */
static void draw(const struct sheet_of_bars *s, const struct range_end *end, char mark,
                 char *line) {
    const int64_t money = end->has ? end->more.client : 0;
    const int64_t size = money < 0 ? -money : money;
    size_t cells = (size_t)((size * (int64_t)s->half + s->most / 2) / s->most);
    cells = cells == 0 && size > 0 ? 1 : cells;
    memset(line + s->half + (money < 0 ? 0 - cells : 1), mark, cells);
}

/* The longer of two ends on one side goes below the shorter. */
static const char *bar_of(struct sheet_of_bars *s, const struct range_row *row) {
    char line[WIDEST_BAR + 2];
    const size_t width = 2 * s->half + 1;
    const int64_t low = row->low.has ? row->low.more.client : 0;
    const int64_t high = row->high.has ? row->high.more.client : 0;
    const bool low_first = (low < 0 ? -low : low) > (high < 0 ? -high : high);
    memset(line, ' ', width);
    line[s->half] = '|';
    line[width] = '\0';
    draw(s, low_first ? &row->low : &row->high, low_first ? '-' : '=', line);
    draw(s, low_first ? &row->high : &row->low, low_first ? '=' : '-', line);
    return pool_words(&s->pool, "%s", line);
}

static void say_amounts(struct sheet_of_bars *s, const struct range_row *row) {
    const int width = (int)s->amount;
    say(s->page, "  %*s %*s %s %*s %*s", width, amount_of(s, &row->low, row->low.more.client),
        width, amount_of(s, &row->high, row->high.more.client), bar_of(s, row), width,
        amount_of(s, &row->low, row->low.more.direct), width,
        amount_of(s, &row->high, row->high.more.direct));
}

static void say_why(struct sheet_of_bars *s, const struct range_end *end) {
    if (end->why != NULL) {
        say_wrapped(s->page, "  ", 4, "at %s: %s", end->text, end->why);
    }
}

/* `price = 4.10 per bf (3.80 per bf to 4.60 per bf): what two yards ask`. */
static const char *words_of(struct sheet_of_bars *s, const struct range_row *row) {
    struct pool *const pool = &s->pool;
    if (s->ranges->way == RANGE_SET) {
        return row->likely == NULL
                   ? pool_words(pool, "%s = %s", row->key, row->high.text)
                   : pool_words(pool, "%s = %s, not %s", row->key, row->high.text, row->likely);
    }
    const char *const all = pool_words(pool, "%s = %s%s (%s to %s)", row->key, row->lead,
                                       row->likely, row->low.text, row->high.text);
    return s->ranges->way == RANGE_PERCENT
               ? all
               : pool_words(pool, "%s: %s", all,
                            row->reason == NULL ? "no reason is given" : row->reason);
}

static void say_row(struct sheet_of_bars *s, const struct range_row *row) {
    say_wrapped(s->page, pool_words(&s->pool, "[%s]", row->section), 4, " %s", words_of(s, row));
    say_amounts(s, row);
    say_why(s, &row->low);
    say_why(s, &row->high);
}

/* --- the table --- */

static void measure_end(struct sheet_of_bars *s, const struct range_end *end) {
    const int64_t money = end->has ? end->more.client : 0;
    const size_t columns[] = {text_columns(amount_of(s, end, end->more.client)),
                              text_columns(amount_of(s, end, end->more.direct))};
    s->most = money > s->most ? money : (-money > s->most ? -money : s->most);
    for (size_t i = 0; i < 2; i++) {
        s->amount = columns[i] > s->amount ? columns[i] : s->amount;
    }
}

/* How wide all is; the bars take what is left of a line. */
static void measure(struct sheet_of_bars *s) {
    const struct ranges *const r = s->ranges;
    s->amount = strlen("at high");
    s->most = 1;
    for (size_t i = 0; i < r->count; i++) {
        measure_end(s, &r->rows[i].low);
        measure_end(s, &r->rows[i].high);
    }
    measure_end(s, &r->together);
    const size_t taken = 2 + 4 * (s->amount + 1);
    const size_t left = taken + 11 < GRID_WIDTH ? GRID_WIDTH - taken : 11;
    s->half = (left > WIDEST_BAR ? WIDEST_BAR : left - 1) / 2;
}

static void say_head(struct sheet_of_bars *s) {
    const int width = (int)s->amount;
    const int bar = (int)(2 * s->half + 1);
    const bool set = s->ranges->way == RANGE_SET;
    say(s->page, "  %-*s %-*s %*s", 2 * width + 1, "client pays", bar, "", 2 * width + 1,
        "direct cost");
    if (!set) {
        say(s->page, "  %*s %*s %-*s %*s %*s", width, "at low", width, "at high", bar,
            "---- low, ==== high", width, "at low", width, "at high");
    }
}

/* Of all numbers of the rates only those that move the price by a thousandth are shown. */
static bool is_small(const struct ranges *r, const struct range_row *row) {
    const int64_t price = r->job.client < 0 ? -r->job.client : r->job.client;
    return r->way == RANGE_PERCENT && row->low.has && row->high.has && row->swing * 1000 < price;
}

/* The rows that move something; the others are named at the end. */
static void say_rows(struct sheet_of_bars *s) {
    const struct ranges *const r = s->ranges;
    size_t small = 0;
    for (size_t i = 0; i < r->count; i++) {
        if (range_row_idle(&r->rows[i])) {
            continue;
        }
        if (is_small(r, &r->rows[i])) {
            small++;
        } else {
            say_row(s, &r->rows[i]);
        }
    }
    if (small > 0) {
        say_wrapped(s->page, "", 2,
                    "and %zu more, each of which moves the price by less than a thousandth of it; "
                    "--json lists all",
                    small);
    }
    if (r->together.text != NULL) {
        const struct range_row all = {.high = r->together};
        say(s->page, "%s", r->together.text);
        say_amounts(s, &all);
        say_why(s, &r->together);
    }
}

static size_t count_idle(const struct ranges *r) {
    size_t count = 0;
    for (size_t i = 0; i < r->count; i++) {
        count += range_row_idle(&r->rows[i]) ? 1 : 0;
    }
    return count;
}

/* `[coating topcoat] sizes, 1 qt at 27.00`, or all of a change that was set. */
static const char *idle_name(struct sheet_of_bars *s, const struct range_row *row) {
    return row->lead[0] == '\0' ? pool_words(&s->pool, "[%s] %s", row->section, row->key)
                                : pool_words(&s->pool, "[%s] %s, %s%s", row->section, row->key,
                                             row->lead, row->likely);
}

static void say_idle(struct sheet_of_bars *s) {
    const struct ranges *const r = s->ranges;
    const char *names = "";
    bool first = true;
    for (size_t i = 0; i < r->count; i++) {
        const struct range_row *const row = &r->rows[i];
        if (!range_row_idle(row)) {
            continue;
        }
        if (first) {
            say(s->page, "%s", "");
            first = false;
        }
        if (r->way == RANGE_SET) {
            const bool same = row->likely != NULL && text_same(row->likely, row->high.text);
            say_wrapped(s->page, pool_words(&s->pool, "[%s]", row->section), 4, " %s = %s %s",
                        row->key, row->high.text,
                        same ? "is what the rates say" : "has no effect on this job");
        } else {
            names = pool_words(&s->pool, "%s%s%s", names, names[0] == '\0' ? "" : ", ",
                               idle_name(s, row));
        }
    }
    if (names[0] != '\0') {
        say_wrapped(s->page, "", 0, "Without any effect on this job: %s.", names);
    }
}

/* --- what has no range --- */

static void say_without(struct page *page, const struct estimate *e) {
    static const struct grid_column columns[] = {{"a tenth more adds", GRID_RIGHT, false},
                                                 {"rate without a range", GRID_LEFT, true}};
    struct grid grid;
    grid_init(&grid, columns, 2, 2);
    const struct moves moves = moves_without_range(e, &grid.pool);
    size_t shown = 0;
    for (; shown < moves.count && shown < MOST_MOVES; shown++) {
        const struct move *const m = &moves.list[shown];
        grid_put(&grid, "%s", show_more((int64_t)llround(m->adds * 100), 2).text);
        grid_put(&grid, "%s %s", m->setting->section, m->setting->key);
    }
    say(page, "%s", "");
    if (moves.count == 0) {
        say(page, "Every rate that moves this job has a range.");
    } else {
        say_wrapped(
            page, "", 0,
            "%s that this job takes %s no range. Those that move the price most, by a slope "
            "that leaves roundings and choices as they are:",
            show_count(moves.count, "rate").text, moves.count == 1 ? "has" : "have");
        grid_print(&grid, page);
    }
    if (shown < moves.count) {
        say_wrapped(page, "  ", 2, "and %zu more, each less; --json lists all",
                    moves.count - shown);
    }
    page->failed = page->failed || pool_failed(&grid.pool);
    grid_clear(&grid);
}

static void say_opening(struct page *page, const struct ranges *r) {
    say(page, "%s", "");
    if (r->way == RANGE_SET) {
        say_wrapped(page, "", 0, "Each of these changes by itself, the job estimated anew:");
    } else if (r->way == RANGE_PERCENT) {
        say_wrapped(
            page, "", 0,
            "Every number that the job takes from the rates, but counts and the sizes of doors "
            "and of what is bought, moved by itself %s down and up, the job estimated anew "
            "each time. This tells what the job hangs on. It is no analysis of what is "
            "uncertain: how far a rate may lie off differs from rate to rate, and only a range "
            "with a reason tells it.",
            r->percent);
    } else if (r->count > 0) {
        say_wrapped(page, "", 0,
                    "Each rate that has a range moved by itself to its low and its high, the job "
                    "estimated anew each time; what moves the price most stands first.");
    } else {
        say_wrapped(page, "", 0,
                    "No rate has a range. Write what a number may be at the least and the most "
                    "behind it, and why into the comment: 'price = 4.10 per bf (3.80 to 4.60)  ; "
                    "what two yards ask'.");
    }
}

void range_print(struct page *page, const struct estimate *e, const struct ranges *r) {
    struct sheet_of_bars s = {.page = page, .ranges = r};
    pool_init(&s.pool);
    head_print(page, "Rates moved", e);
    say_opening(page, r);
    say_wrapped(page, "", 0, "As it stands, the client pays %s; direct cost is %s.",
                show_number(r->job.client, r->money_decimals).text,
                show_number(r->job.direct, r->money_decimals).text);
    measure(&s);
    if (count_idle(r) < r->count) {
        say(page, "%s", "");
        say_head(&s);
        say_rows(&s);
    }
    say_idle(&s);
    if (r->way == RANGE_ENDS) {
        say_without(page, e);
    }
    page->failed = page->failed || pool_failed(&s.pool);
    pool_clear(&s.pool);
}
