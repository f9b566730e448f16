/* SPDX-License-Identifier: MIT */
/* Work by day. */
#include "report/text/print.h"
#include "report/words/day_words.h"
#include "together/joined_job.h"

static void print_jobs(struct page *page, const struct day_plan *plan) {
    static const struct grid_column columns[] = {
        {"job", GRID_LEFT, true},    {"from", GRID_LEFT, false},   {"begins", GRID_LEFT, false},
        {"ready", GRID_LEFT, false}, {"hours", GRID_RIGHT, false},
    };
    struct grid grid;
    grid_init(&grid, columns, sizeof columns / sizeof *columns, 2);
    for (size_t j = 0; j < plan->job_count; j++) {
        const struct day_job *const job = &plan->jobs[j];
        const char *const name = day_job_name(plan, j);
        const char *const title = job->estimate->job->title.s;
        grid_put(&grid, "%s%s%s%s%s", plan->job_count > 1 ? joined_letter(j) : "",
                 plan->job_count > 1 ? "  " : "", name, name == title ? "" : ": ",
                 name == title ? "" : title);
        grid_put(&grid, "%s", show_day(job->from).text);
        grid_put(&grid, "%s", show_day(job->begins).text);
        grid_put(&grid, "%s", show_day(job->ready).text);
        grid_put(&grid, "%s", show_hours(job->minutes).text);
        grid_end_row(&grid);
    }
    if (plan->job_count > 1) {
        grid_rule(&grid);
        grid_put(&grid, "together");
        grid_put(&grid, "%s", "");
        grid_put(&grid, "%s", show_day(plan->first).text);
        grid_put(&grid, "%s", show_day(plan->ready).text);
        grid_put(&grid, "%s", show_hours(plan->minutes).text);
        grid_end_row(&grid);
    }
    grid_print(&grid, page);
    grid_clear(&grid);
}

static void print_result(struct page *page, const struct day_plan *plan) {
    static const struct grid_column columns[] = {{NULL, GRID_LEFT, false}, {NULL, GRID_LEFT, true}};
    const struct rates *const rates = plan->jobs[0].estimate->rates;
    const struct day_bound *const by = &plan->bounds[0];
    struct grid grid;
    grid_init(&grid, columns, 2, 2);
    grid_put(&grid, "all done");
    grid_put(&grid, "%s, %s from %s on", show_day(plan->ready).text,
             show_working_days(plan->days).text, show_day(plan->first).text);
    grid_put(&grid, "no plan before");
    grid_put(&grid, "%s, %s", show_day(plan->soonest).text,
             show_working_days(plan->soonest_days).text);
    grid_put(&grid, "decided by");
    grid_put(&grid, "%s: %s", day_cause_words(rates, by->cause, by->machine),
             day_cause_reason(by->cause));
    grid_print(&grid, page);
    grid_clear(&grid);
}

/* Of machines those alone that hold up more than the order of the work does. */
static bool tells(const struct day_plan *plan, const struct day_bound *by) {
    if (by->cause != CAUSE_MACHINE) {
        return true;
    }
    for (size_t i = 0; i < plan->bound_count; i++) {
        if (plan->bounds[i].cause == CAUSE_WORK) {
            return by->clock > plan->bounds[i].clock;
        }
    }
    return true;
}

static void print_bounds(struct page *page, const struct day_plan *plan) {
    static const struct grid_column columns[] = {
        {"were this the only limit", GRID_LEFT, true},
        {"soonest that all is done", GRID_LEFT, false},
    };
    const struct rates *const rates = plan->jobs[0].estimate->rates;
    struct grid grid;
    grid_init(&grid, columns, sizeof columns / sizeof *columns, 2);
    for (size_t i = 0; i < plan->bound_count; i++) {
        const struct day_bound *const by = &plan->bounds[i];
        if (tells(plan, by)) {
            grid_put(&grid, "%s", day_cause_words(rates, by->cause, by->machine));
            grid_put(&grid, "%s", show_day(by->day).text);
            grid_end_row(&grid);
        }
    }
    grid_print(&grid, page);
    grid_clear(&grid);
}

static void print_more(struct page *page, const struct day_plan *plan) {
    static const struct grid_column columns[] = {
        {"with one more", GRID_LEFT, true},
        {"all done", GRID_LEFT, false},
        {"working days saved", GRID_RIGHT, false},
    };
    const struct rates *const rates = plan->jobs[0].estimate->rates;
    struct grid grid;
    struct pool pool;
    pool_init(&pool);
    grid_init(&grid, columns, sizeof columns / sizeof *columns, 2);
    for (size_t i = 0; i < plan->more_count; i++) {
        const struct day_more *const more = &plan->more[i];
        grid_put(&grid, "%s", day_more_words(rates, more, &pool));
        grid_put(&grid, "%s", show_day(more->day).text);
        grid_put(&grid, "%lld", (long long)more->gained);
        grid_end_row(&grid);
    }
    grid_print(&grid, page);
    grid_clear(&grid);
    page->failed = page->failed || pool_failed(&pool);
    pool_clear(&pool);
}

/* The lines of a day, from *next on. idle: what is told where nobody is at work. */
static void put_day(struct grid *grid, const struct day_plan *plan, int32_t day, const char *idle,
                    size_t *next) {
    size_t line = *next;
    int64_t minutes = 0;
    for (size_t i = line; i < plan->line_count && plan->lines[i].day == day; i++) {
        minutes += plan->lines[i].minutes;
    }
    grid_heading(grid, "%s, %s hours%s", show_day(day).text, show_hours(minutes).text,
                 idle[0] == '\0' ? "" : pool_words(&grid->pool, ": %s", idle));
    for (; line < plan->line_count && plan->lines[line].day == day; line++) {
        const struct day_line *const l = &plan->lines[line];
        grid_put(grid, "%s%s%s", day_line_name(plan, l), l->what[0] == '\0' ? "" : ": ", l->what);
        if (plan->job_count > 1) {
            grid_put(grid, "%s  %s", joined_letter(l->job), day_job_name(plan, l->job));
        }
        grid_put(grid, "%s", show_hours(l->minutes).text);
        grid_end_row(grid);
    }
    *next = line;
}

static void print_days(struct page *page, const struct day_plan *plan,
                       const struct day_rows *rows) {
    static const struct grid_column several[] = {{"work, as it goes", GRID_LEFT, true},
                                                 {"job", GRID_LEFT, false},
                                                 {"hours", GRID_RIGHT, false}};
    static const struct grid_column one[] = {{"work, as it goes", GRID_LEFT, true},
                                             {"hours", GRID_RIGHT, false}};
    const struct rates *const rates = plan->jobs[0].estimate->rates;
    struct grid grid;
    size_t line = 0;
    grid_init(&grid, plan->job_count > 1 ? several : one, plan->job_count > 1 ? 3 : 2, 2);
    for (size_t d = 0; d < plan->work_day_count; d++) {
        put_day(&grid, plan, plan->work_days[d], day_idle_words(rates, rows, d, &grid.pool), &line);
    }
    grid_print(&grid, page);
    grid_clear(&grid);
}

void days_print(struct page *page, const struct day_plan *plan, const struct day_rows *rows) {
    const char *notes[DAY_NOTES];
    struct pool pool;
    pool_init(&pool);
    if (plan->job_count == 1) {
        head_print(page, "Work by day", plan->jobs[0].estimate);
    } else {
        say(page, "Work by day: %zu jobs together", plan->job_count);
    }
    say(page, "%s", "");
    print_jobs(page, plan);
    say(page, "%s", "");
    print_result(page, plan);
    say(page, "%s", "");
    print_bounds(page, plan);
    say(page, "%s", "");
    print_more(page, plan);
    say(page, "%s", "");
    print_days(page, plan, rows);
    const size_t count = day_notes(plan, notes, &pool);
    say(page, "%s", "");
    for (size_t i = 0; i < count; i++) {
        say_wrapped(page, "", 0, "%s", notes[i]);
    }
    page->failed = page->failed || pool_failed(&pool);
    pool_clear(&pool);
}
