/* SPDX-License-Identifier: MIT */
/* What would have to be true for a wanted total, and what that would mean. */
#include "report/text/print.h"
#include "report/words/show.h"
#include "report/words/target_words.h"

struct printing {
    struct page *page;
    const struct estimate *e;
    const struct target *target;
    struct pool *pool;
};

static const char *money(const struct printing *p, int64_t amount) {
    return pool_words(p->pool, "%s", show_number(amount, p->target->money_decimals).text);
}

/* --- the table --- */

static const struct grid_column columns[] = {
    {"what", GRID_LEFT, true},        {"now", GRID_RIGHT, false},
    {"then", GRID_RIGHT, false},      {"client pays", GRID_RIGHT, false},
    {"left over", GRID_RIGHT, false}, {"profit left", GRID_RIGHT, false},
};

static void put_outcome(const struct printing *p, struct grid *grid, const struct outcome *o) {
    grid_put(grid, "%s", money(p, o->client));
    grid_put(grid, "%s", money(p, o->left));
    grid_put(grid, "%s", money(p, o->profit));
}

static void put_lever(const struct printing *p, struct grid *grid, enum lever lever) {
    const struct lever_answer *const a = &p->target->levers[lever];
    grid_put(grid, "%s", lever_name(lever, p->e));
    if (lever == LEVER_HOURS) {
        grid_put(grid, "%s", show_number(p->target->job.hours, 2).text);
        grid_put(grid, "%s", a->has ? show_number(a->outcome.hours, 2).text : "-");
    } else {
        grid_put(grid, "%s", show_number(a->now, LEVER_DECIMALS).text);
        grid_put(grid, "%s", a->has ? show_number(a->then, LEVER_DECIMALS).text : "-");
    }
    if (a->has) {
        put_outcome(p, grid, &a->outcome);
    }
    grid_end_row(grid);
}

static void print_answers(const struct printing *p, bool reach) {
    const struct target *const t = p->target;
    struct grid grid;
    grid_init(&grid, columns, sizeof columns / sizeof *columns, 2);
    if (reach) {
        grid_put(&grid, "the job as it stands");
        grid_put(&grid, "%s", "");
        grid_put(&grid, "%s", "");
        put_outcome(p, &grid, &t->job);
    }
    for (int lever = 0; lever < LEVER_COUNT; lever++) {
        if (t->levers[lever].reaches == reach) {
            put_lever(p, &grid, (enum lever)lever);
        }
    }
    if (t->rows.count > 0 && t->rows.reaches == reach) {
        grid_put(&grid, "without %s", target_rows(t, p->pool));
        grid_put(&grid, "%s", "");
        grid_put(&grid, "%s", "");
        put_outcome(p, &grid, &t->rows.outcome);
    }
    grid_print(&grid, p->page);
    grid_clear(&grid);
}

/* --- what it means --- */

static void warn(const struct printing *p, const char *what, const struct outcome *o) {
    if (o->left < 0) {
        say_wrapped(p->page, "  -", 4,
                    "%s: below direct cost; such a job costs the shop %s of its own money", what,
                    money(p, -o->left));
    } else if (o->profit < 0) {
        say_wrapped(p->page, "  -", 4,
                    "%s: pays the direct cost, and %s of overhead and contingency stay unpaid",
                    what, money(p, -o->profit));
    }
}

static void print_warnings(const struct printing *p) {
    const struct target *const t = p->target;
    warn(p, "as it stands", &t->job);
    for (int lever = 0; lever < LEVER_COUNT; lever++) {
        const struct lever_answer *const a = &t->levers[lever];
        if (a->has && a->reaches) {
            warn(p, lever_name((enum lever)lever, p->e), &a->outcome);
        }
    }
    if (t->rows.reaches) {
        warn(p, pool_words(p->pool, "without %s", target_rows(t, p->pool)), &t->rows.outcome);
    }
}

static bool some_fall_short(const struct target *t) {
    bool some = t->rows.count > 0 && !t->rows.reaches;
    for (int lever = 0; lever < LEVER_COUNT; lever++) {
        some = some || !t->levers[lever].reaches;
    }
    return some;
}

/* What else there is to say of rows; NULL: nothing. */
static const char *rows_words(const struct printing *p) {
    const struct target *const t = p->target;
    if (t->wanted == t->job.client) {
        return "The job comes to that as it stands.";
    }
    if (t->wanted > t->job.client) {
        return "Rows that are left out do not raise a total.";
    }
    if (t->rows.most_tried == 0) {
        return "The list has one row, or too many to try it without some.";
    }
    return t->rows.reaches ? NULL
                           : pool_words(p->pool, "Of all sets of up to %s none reaches it.",
                                        show_count(t->rows.most_tried, "row").text);
}

void target_print(struct page *page, const struct estimate *e, const struct target *target) {
    struct pool pool;
    pool_init(&pool);
    const struct printing p = {.page = page, .e = e, .target = target, .pool = &pool};
    head_print(page, "A wanted total", e);
    say(page, "%s", "");
    say_wrapped(page, "", 0,
                "For the client to pay %s, with tax, this would have to be true, each line alone "
                "and all else as it stands:",
                money(&p, target->wanted));
    print_answers(&p, true);
    if (some_fall_short(target)) {
        say(page, "%s", "");
        say(page, "These alone do not reach it; the nearest:");
        print_answers(&p, false);
    }
    say(page, "%s", "");
    if (rows_words(&p) != NULL) {
        say_wrapped(page, "", 0, "%s", rows_words(&p));
    }
    print_warnings(&p);
    say_wrapped(page, "", 0,
                "Each line is a whole estimate. Left over: price before tax less direct cost, for "
                "contingency, overhead and profit. Profit left: after these, of the doors and the "
                "charges that are worked for. Discount: in place of any that the job has. Hours: "
                "all work in as much more or less time.");
    say_wrapped(page, "", 0,
                "A number that is written down does not come true by that: hours have to be worked "
                "so at the bench, and what profit and discount give away is gone.");
    page->failed = page->failed || pool_failed(&pool);
    pool_clear(&pool);
}
