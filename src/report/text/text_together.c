/* SPDX-License-Identifier: MIT */
/* Several jobs bought for or cut at once: what that saves, and what each job bears. */
#include "together/together.h"

#include "report/text/print.h"
#include "report/words/show.h"
#include "together/joined_job.h"

static const char *money(struct grid *grid, const struct together *t, int64_t amount) {
    return pool_words(&grid->pool, "%s", show_number(amount, t->money_decimals).text);
}

/* `A 12.50, B 25.00`; a job that takes nothing of it is left out. */
static const char *parts(struct grid *grid, const struct together *t,
                         const struct together_line *line) {
    const char *words = "";
    for (size_t i = 0; i < t->count; i++) {
        if (line->alone_of[i] != 0 || line->part_of[i] != 0) {
            words = pool_words(&grid->pool, "%s%s%s %s", words, words[0] == '\0' ? "" : ", ",
                               joined_letter(i), money(grid, t, line->part_of[i]));
        }
    }
    return words;
}

static void put_amounts(struct grid *grid, const struct together *t,
                        const struct together_line *line) {
    grid_put(grid, "%s", money(grid, t, line->alone));
    grid_put(grid, "%s", money(grid, t, line->together));
    grid_put(grid, "%s", money(grid, t, together_saves(line)));
}

static void put_line(struct grid *grid, const struct together *t,
                     const struct together_line *line) {
    grid_put(grid, "%s", line->name);
    put_amounts(grid, t, line);
    grid_heading(grid, "          %s", parts(grid, t, line));
}

static void print_lines(struct page *page, const struct together *t) {
    static const struct grid_column columns[] = {{"what", GRID_LEFT, true},
                                                 {"each alone", GRID_RIGHT, false},
                                                 {"together", GRID_RIGHT, false},
                                                 {"saves", GRID_RIGHT, false}};
    struct grid grid;
    grid_init(&grid, columns, sizeof columns / sizeof *columns, 2);
    for (size_t i = 0; i < t->line_count; i++) {
        if (t->lines[i].shared) {
            put_line(&grid, t, &t->lines[i]);
        }
    }
    if (t->unshared.alone != 0) {
        put_line(&grid, t, &t->unshared);
    }
    grid_rule(&grid);
    grid_put(&grid, "%s", t->estimate.rates->shop.currency.s);
    put_amounts(&grid, t, &t->all);
    grid_print(&grid, page);
    grid_clear(&grid);
}

static void print_jobs(struct page *page, const struct together *t) {
    static const struct grid_column columns[] = {{"job", GRID_LEFT, true},
                                                 {"alone", GRID_RIGHT, false},
                                                 {"its part", GRID_RIGHT, false},
                                                 {"saves", GRID_RIGHT, false}};
    struct grid grid;
    grid_init(&grid, columns, sizeof columns / sizeof *columns, 2);
    for (size_t i = 0; i < t->count; i++) {
        const int64_t alone = t->all.alone_of[i];
        const int64_t part = t->all.part_of[i];
        grid_put(&grid, "%s  %s", joined_letter(i), t->jobs[i].path);
        grid_put(&grid, "%s", money(&grid, t, alone));
        grid_put(&grid, "%s", money(&grid, t, part));
        grid_put(&grid, "%s", money(&grid, t, alone - part));
    }
    grid_rule(&grid);
    grid_put(&grid, "%s", t->estimate.rates->shop.currency.s);
    put_amounts(&grid, t, &t->all);
    grid_print(&grid, page);
    grid_clear(&grid);
}

void together_print(struct page *page, const struct together *t) {
    const bool cut = t->of == TOGETHER_CUT;
    if (t->line_count == 0) {
        return;
    }
    say(page, "%s", "");
    say(page,
        cut ? "What cutting together saves, as bought by plan" : "What buying together saves");
    print_lines(page, t);
    say(page, "%s", "");
    say(page, "Each job's part, by what it would cost the job alone");
    print_jobs(page, t);
    if (t->estimate.rates->rack.count > 0) {
        say_wrapped(page, "", 0,
                    "What is on the rack is there once: together it is used up once, alone each "
                    "job would take of all of it.");
    } else if (together_saves(&t->all) < 0) {
        say_wrapped(page, "", 0,
                    "Together it costs more: a plan of more parts is harder to find. Give the "
                    "planner more time with --effort, or cut the jobs by themselves.");
    }
}
