/* SPDX-License-Identifier: MIT */
/* Rows made here, bought in, their finish sent out; and what is chosen within the hours. */
#include "price/ways.h"

#include "report/text/print.h"
#include "report/words/show.h"
#include "report/words/way_words.h"

#include <string.h>

static const char *money(struct grid *grid, const struct ways *ways, int64_t amount) {
    return pool_words(&grid->pool, "%s", show_number(amount, ways->money_decimals).text);
}

/* --- the ways of a row --- */

/* In what this way is the least of its row: `to buy, direct`. */
static const char *least_in(struct grid *grid, const struct ways_row *row, size_t way) {
    const struct outcome *const o = &row->ways[way].row;
    bool bought = true;
    bool hours = true;
    bool direct = true;
    for (size_t w = 0; w < row->count; w++) {
        bought = bought && o->bought <= row->ways[w].row.bought;
        hours = hours && o->bench <= row->ways[w].row.bench;
        direct = direct && o->direct <= row->ways[w].row.direct;
    }
    return pool_words(&grid->pool, "%s%s%s%s%s", bought ? "to buy" : "",
                      bought && (hours || direct) ? ", " : "", hours ? "hours" : "",
                      hours && direct ? ", " : "", direct ? "direct" : "");
}

static void print_rows(struct page *page, const struct ways *ways) {
    static const struct grid_column columns[] = {
        {"row", GRID_LEFT, true},     {"way", GRID_LEFT, false},     {"to buy", GRID_RIGHT, false},
        {"hours", GRID_RIGHT, false}, {"direct", GRID_RIGHT, false}, {"least", GRID_LEFT, false},
    };
    struct grid grid;
    grid_init(&grid, columns, sizeof columns / sizeof *columns, 2);
    for (size_t i = 0; i < ways->row_count; i++) {
        const struct ways_row *const row = &ways->rows[i];
        for (size_t w = 0; w < row->count; w++) {
            const struct outcome *const o = &row->ways[w].row;
            grid_put(&grid, "%s", w == 0 ? row->row->id.s : "");
            grid_put(&grid, "%s", way_words(row, w));
            grid_put(&grid, "%s", money(&grid, ways, o->bought));
            grid_put(&grid, "%s", show_number(o->bench, 2).text);
            grid_put(&grid, "%s", money(&grid, ways, o->direct));
            grid_put(&grid, "%s", least_in(&grid, row, w));
        }
    }
    grid_print(&grid, page);
    grid_clear(&grid);
}

/* --- the whole job --- */

static const struct grid_column job_columns[] = {
    {"the whole job", GRID_LEFT, true}, {"changed", GRID_RIGHT, false},
    {"to buy", GRID_RIGHT, false},      {"hours", GRID_RIGHT, false},
    {"direct", GRID_RIGHT, false},      {"client pays", GRID_RIGHT, false},
};

static void put_job(struct grid *grid, const struct ways *ways, const char *what, size_t changed,
                    const struct outcome *o) {
    grid_put(grid, "%s", what);
    grid_put(grid, "%zu", changed);
    grid_put(grid, "%s", money(grid, ways, o->bought));
    grid_put(grid, "%s", show_number(o->bench, 2).text);
    grid_put(grid, "%s", money(grid, ways, o->direct));
    grid_put(grid, "%s", money(grid, ways, o->client));
}

/* What a choice comes to, under what its single changes add up to. */
static void put_choice(struct grid *grid, const struct ways *ways, const char *what,
                       const struct ways_choice *choice) {
    put_job(grid, ways, pool_words(&grid->pool, "%s, added up", what), choice->changed,
            &choice->sum);
    if (choice->made) {
        put_job(grid, ways, "  estimated whole", choice->changed, &choice->real);
    } else {
        grid_put(grid, "  could not be estimated");
        grid_end_row(grid);
    }
}

static void print_job(struct page *page, const struct ways *ways) {
    struct grid grid;
    grid_init(&grid, job_columns, sizeof job_columns / sizeof *job_columns, 2);
    put_job(&grid, ways, "as listed", 0, &ways->job);
    for (int a = 0; a < WAYS_ALL_COUNT; a++) {
        if (ways_choice_new(ways, a)) {
            put_choice(&grid, ways, ways_all_words((enum ways_all)a), &ways->all[a]);
        }
    }
    grid_print(&grid, page);
    grid_clear(&grid);
}

/* --- within the hours --- */

/* `bought in: G01, G02`. */
static void print_picked(struct page *page, const struct ways *ways,
                         const struct ways_choice *choice) {
    struct pool pool;
    pool_init(&pool);
    for (int kind = WAY_BOUGHT; kind < WAY_KINDS; kind++) {
        const char *ids = "";
        for (size_t i = 0; i < ways->row_count; i++) {
            const struct ways_row *const row = &ways->rows[i];
            if ((int)row->ways[choice->picked[i]].kind == kind) {
                ids = pool_words(&pool, "%s%s%s", ids, ids[0] == '\0' ? "" : ", ", row->row->id.s);
            }
        }
        if (ids[0] != '\0') {
            say_wrapped(page, "  ", 4, "%s: %s", way_kind_words((enum way_kind)kind), ids);
        }
    }
    say_wrapped(page, "  ", 4, "%s",
                choice->changed == 0 ? "every row as listed" : "all other rows as listed");
    page->failed = page->failed || pool_failed(&pool);
    pool_clear(&pool);
}

static bool is_best_of_sums(const struct ways *ways) {
    return memcmp(ways->within.best.picked, ways->within.by_sums.picked,
                  ways->row_count * sizeof *ways->within.best.picked) == 0;
}

/* How sure it is that nothing costs less. */
static void say_how_sure(struct page *page, const struct ways *ways) {
    const struct ways_within *const within = &ways->within;
    const char *const sums = is_best_of_sums(ways)
                                 ? "Single changes, added up, advise the same."
                                 : "The best of the sums is what single changes, added up, advise; "
                                   "they miss what rows share.";
    if (within->all) {
        say_wrapped(page, "", 0, "Exact: all %zu choices that there are were estimated whole. %s",
                    within->tried, sums);
    } else {
        say_wrapped(page, "", 0,
                    "The best of %zu whole estimates: no other way of any one row betters it; "
                    "several rows changed at once may. %s",
                    within->tried, sums);
    }
}

static void print_within(struct page *page, const struct ways *ways) {
    const struct ways_within *const within = &ways->within;
    const struct shown limit = show_number(within->limit, 2);
    struct grid grid;
    say(page, "%s", "");
    if (within->within) {
        say_wrapped(page, "", 0,
                    "Within %s hours at the bench the least is spent with:", limit.text);
    } else {
        say_wrapped(page, "", 0,
                    "No choice %skeeps the job within %s hours at the bench. The fewest are %s, "
                    "with:",
                    within->all ? "" : "that was tried ", limit.text,
                    show_number(within->best.real.bench, 2).text);
    }
    print_picked(page, ways, &within->best);
    grid_init(&grid, job_columns, sizeof job_columns / sizeof *job_columns, 2);
    put_choice(&grid, ways, "this choice", &within->best);
    if (!is_best_of_sums(ways)) {
        put_choice(&grid, ways, "best of the sums", &within->by_sums);
    }
    grid_print(&grid, page);
    grid_clear(&grid);
    say_how_sure(page, ways);
}

static void print_ways(struct page *page, const struct ways *ways) {
    say_wrapped(page, "", 0, "What the job takes more with the row made so than without the row:");
    print_rows(page, ways);
}

/* Where no row can change, hours are kept or not. */
static void say_no_way(struct page *page, const struct ways *ways) {
    const struct ways_within *const within = &ways->within;
    say_wrapped(page, "", 0, "The job takes %s hours at the bench as listed%s%s.",
                show_number(ways->job.bench, 2).text,
                within->limit < 0 ? ""
                : within->within  ? ", within "
                                  : ", more than ",
                within->limit < 0 ? "" : show_number(within->limit, 2).text);
}

void ways_print(struct page *page, const struct estimate *e, const struct ways *ways) {
    head_print(page, "Made here, bought in, sent out", e);
    say(page, "%s", "");
    if (ways->row_count > 0) {
        print_ways(page, ways);
    }
    if (ways->other_rows > 0) {
        say_wrapped(page, "", 0,
                    "%zu %s one way alone: 'bought as' of a [door] and 'put out as' of a [finish] "
                    "in the rates give others.",
                    ways->other_rows, ways->other_rows == 1 ? "row has" : "rows have");
    }
    if (ways->row_count == 0) {
        say_no_way(page, ways);
        return;
    }
    say(page, "%s", "");
    print_job(page, ways);
    if (ways->within.limit >= 0) {
        print_within(page, ways);
    }
    say(page, "%s", "");
    say_wrapped(page, "", 0,
                "Each line but those added up is a whole estimate of the job. To buy: money spent, "
                "in whole sheets, boards and cans, and on others' work. Hours: at the bench. "
                "Direct: materials, labor and what is bought in. Not priced: quality, delivery "
                "time, and who answers for a bought door. A bought door is finished as the row "
                "says.");
}
