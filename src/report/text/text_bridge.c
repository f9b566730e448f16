/* SPDX-License-Identifier: MIT */
/* Why the price moved from one job to another, step by step. */
#include "bridge/bridge.h"

#include "report/text/print.h"
#include "report/words/show.h"

/* Of a step; JSON has all. */
#define MOST_CHANGES 40

static const struct grid_column columns[] = {
    {"", GRID_LEFT, true},         {"before tax", GRID_RIGHT, false},
    {"tax", GRID_RIGHT, false},    {"client pays", GRID_RIGHT, false},
    {"direct", GRID_RIGHT, false}, {"hours", GRID_RIGHT, false},
};
#define COLUMNS (sizeof columns / sizeof *columns)

static void put_outcome(struct grid *grid, const struct bridge *b, const struct outcome *o,
                        bool difference) {
    const int64_t amounts[] = {o->before_tax, o->tax, o->client, o->direct, o->hours};
    for (size_t i = 0; i < sizeof amounts / sizeof *amounts; i++) {
        const uint8_t decimals = i == 4 ? 2 : b->money_decimals;
        grid_put(grid, "%s", (difference ? show_more : show_number)(amounts[i], decimals).text);
    }
}

/* `Rows changed, Rows added` where these could not be told apart. */
static const char *step_name(struct pool *pool, const struct bridge_step *step) {
    const char *all = "";
    for (size_t g = 0; g < BRIDGE_GROUP_COUNT; g++) {
        if ((step->groups & 1u << g) != 0) {
            all = pool_words(pool, "%s%s%s", all, all[0] == '\0' ? "" : "; ",
                             bridge_group_name((enum bridge_group)g));
        }
    }
    return all;
}

static void print_steps(struct page *page, const struct bridge *b) {
    struct grid grid;
    grid_init(&grid, columns, COLUMNS, 0);
    grid_put(&grid, "before");
    put_outcome(&grid, b, &b->older, false);
    for (size_t i = 0; i < b->step_count; i++) {
        if (!outcome_none(b->steps[i].adds)) {
            grid_put(&grid, "%s", step_name(&grid.pool, &b->steps[i]));
            put_outcome(&grid, b, &b->steps[i].adds, true);
        }
    }
    grid_rule(&grid);
    grid_put(&grid, "now");
    put_outcome(&grid, b, &b->newer, false);
    const struct outcome all = outcome_minus(b->newer, b->older);
    grid_put(&grid, "difference");
    put_outcome(&grid, b, &all, true);
    grid_print(&grid, page);
    grid_clear(&grid);
}

static const char *or_none(const char *text) {
    return text == NULL ? "none" : text;
}

static void say_change(struct page *page, struct pool *pool, const struct bridge_change *c) {
    const char *const side = c->older == NULL ? " new:" : " off:";
    const char *const mark = !c->row ? "" : (c->what != NULL ? ":" : side);
    const char *const first = pool_words(pool, "  %s%s ", c->where, mark);
    if (c->what != NULL) {
        say_wrapped(page, first, 6, "%s%s %s, now %s", c->what, c->row ? "" : ":",
                    or_none(c->older), or_none(c->newer));
    } else if (c->row) {
        say_wrapped(page, first, 6, "%s", c->older == NULL ? c->newer : c->older);
    } else {
        say_wrapped(page, first, 6, "%s", c->older == NULL ? "is new" : "is gone");
    }
}

static void say_changes(struct page *page, struct pool *pool, const struct bridge_step *step) {
    for (size_t i = 0; i < step->change_count && i < MOST_CHANGES; i++) {
        say_change(page, pool, &step->changes[i]);
    }
    if (step->change_count > MOST_CHANGES) {
        say(page, "  and %zu more; --json has all", step->change_count - MOST_CHANGES);
    }
    if (step->change_count == 0) {
        say_wrapped(page, "  ", 2, "the order of rows or sections, nothing else");
    }
}

/* none: the steps that change nothing of what is shown. */
static bool say_steps(struct page *page, const struct bridge *b, bool none) {
    struct pool pool;
    bool any = false;
    pool_init(&pool);
    for (size_t i = 0; i < b->step_count; i++) {
        const struct bridge_step *const step = &b->steps[i];
        if (outcome_none(step->adds) != none) {
            continue;
        }
        if (none && !any) {
            say(page, "%s", "");
            say(page, "Without effect on the price");
        } else if (!none) {
            say(page, "%s", "");
            say_wrapped(page, "", 0, "%s", step_name(&pool, step));
        }
        any = true;
        if (step->why != NULL) {
            say_wrapped(page, "  ", 2, "one step, as between them the job cannot be estimated: %s",
                        step->why);
        }
        say_changes(page, &pool, step);
    }
    page->failed = page->failed || pool_failed(&pool);
    pool_clear(&pool);
    return any;
}

void bridge_print(struct page *page, const struct estimate *newer, const struct bridge *b) {
    head_print(page, "Why the price moved", newer);
    say(page, "%s", "");
    say_wrapped(page, "before: ", 8, "%s", b->older_path);
    say_wrapped(page, "now:    ", 8, "%s", b->newer_path);
    say(page, "%s", "");
    if (b->step_count == 0) {
        say_wrapped(page, "", 0,
                    "Nothing has changed between the two: the client pays %s, as before.",
                    show_number(b->newer.client, b->money_decimals).text);
        return;
    }
    say_wrapped(page, "", 0,
                "Each step takes what it names from the newer job, behind the steps above it, and "
                "estimates the whole job anew.");
    say(page, "%s", "");
    print_steps(page, b);
    if (b->newer.client != b->newer.before_tax + b->newer.tax ||
        b->older.client != b->older.before_tax + b->older.tax) {
        say(page, "What the client pays has the card fee, too.");
    }
    (void)say_steps(page, b, false);
    (void)say_steps(page, b, true);
}
