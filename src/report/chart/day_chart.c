/* SPDX-License-Identifier: MIT */
/* Week by week; a week in which nothing is done is told in a line. */
#include "report/chart/day_chart.h"

#include "base/text.h"
#include "report/chart/chart_parts.h"
#include "report/draw/tag.h"
#include "report/words/day_words.h"
#include "together/joined_job.h"

#define MARGIN 36.0
#define FOOT   30.0
#define TEXT   9.0
#define SMALL  8.0
#define NAMES  72.0 /* width of the names of rows */
#define TITLE  "Work by day"

static void draw_margins(void *what, struct flow *f) {
    struct chart *const c = what;
    const struct job *const job = c->plan->jobs[0].estimate->job;
    flow_foot(f, FOOT, SMALL,
              pool_words(&c->pool, "%s  |  %s%s  |  %s", text_or_empty(c->rates->shop.name.s),
                         day_job_name(c->plan, 0), c->plan->job_count > 1 ? " and others" : "",
                         job->date.s),
              c->pages);
}

/* --- above the chart --- */

static void draw_head(struct chart *c) {
    struct flow *const f = &c->flow;
    const struct day_plan *const plan = c->plan;
    const struct day_bound *const by = &plan->bounds[0];
    const struct text_style text = {.size = TEXT, .width = f->width};
    flow_title(f, TITLE, (struct text_style){.size = 15, .bold = true});
    flow_text(f, text_or_empty(c->rates->shop.name.s), text);
    for (size_t j = 0; j < plan->job_count; j++) {
        const char *const name = day_job_name(plan, j);
        const char *const title = plan->jobs[j].estimate->job->title.s;
        flow_text(f,
                  pool_words(&c->pool, "%s%s%s%s%s, ready %s",
                             plan->job_count > 1 ? joined_letter(j) : "",
                             plan->job_count > 1 ? "  " : "", name, name == title ? "" : ": ",
                             name == title ? "" : title, show_day(plan->jobs[j].ready).text),
                  text);
    }
    flow_text(f,
              pool_words(&c->pool, "All done %s, %s from %s on; decided by %s.",
                         show_day(plan->ready).text, show_working_days(plan->days).text,
                         show_day(plan->first).text,
                         day_cause_words(c->rates, by->cause, by->machine)),
              text);
    flow_gap(f, 4);
    flow_text(
        f,
        pool_words(&c->pool,
                   "A column is a working day of %s hours. Full bars: at work; hollow ones: it "
                   "dries, sets or is away, and nobody is at it.%s%s%s",
                   show_hours(plan->day_minutes).text,
                   c->finish[0] == '\0' ? "" : " Coats are of: ", c->finish,
                   c->finish[0] == '\0' ? "" : "."),
        (struct text_style){.size = SMALL, .width = f->width});
    flow_gap(f, 6);
}

static void draw_notes(struct chart *c) {
    struct flow *const f = &c->flow;
    const char *notes[DAY_NOTES];
    const size_t count = day_notes(c->plan, notes, &c->pool);
    const char *all = "";
    for (size_t i = 0; i < count; i++) {
        all = pool_words(&c->pool, "%s%s%s", all, i == 0 ? "" : " ", notes[i]);
    }
    flow_text(f, all, (struct text_style){.size = SMALL, .width = f->width});
}

/* --- weeks --- */

/* How many days from one on are of its week. */
static size_t days_of_week(const struct day_plan *plan, size_t first) {
    const int32_t day = plan->work_days[first];
    const int32_t monday = day - date_weekday(day);
    size_t count = 1;
    while (first + count < plan->work_day_count && plan->work_days[first + count] < monday + 7) {
        count++;
    }
    return count;
}

void chart_heads(struct chart *c) {
    struct flow *const f = &c->flow;
    const struct text_style style = {.size = SMALL, .bold = true, .width = c->day - 4};
    double height = 0;
    tag_begin(f->pdf->cr, "TR");
    for (size_t d = c->first_day; d < c->first_day + c->day_count; d++) {
        const double taken = tag_text(f->pdf->cr, "TH", chart_day_x(c, d) + 2, f->y,
                                      show_day(c->plan->work_days[d]).text, &style);
        height = taken > height ? taken : height;
    }
    tag_end(f->pdf->cr, "TR");
    f->y += height + 1.5;
    struct flow days = *f;
    days.width = chart_day_x(c, c->first_day + c->day_count) - f->x;
    flow_rule(&days, 0.7, 0);
}

static bool week_shows(const struct chart *c) {
    for (size_t r = 0; r < c->rows->row_count; r++) {
        if (chart_row_shows(c, &c->rows->rows[r])) {
            return true;
        }
    }
    return false;
}

static void draw_week(struct chart *c) {
    struct flow *const f = &c->flow;
    (void)flow_need(f, 10 * TEXT);
    tag_begin(f->pdf->cr, "Table");
    chart_heads(c);
    for (size_t r = 0; r < c->rows->row_count; r++) {
        if (chart_row_shows(c, &c->rows->rows[r])) {
            chart_row(c, &c->rows->rows[r]);
        }
    }
    tag_end(f->pdf->cr, "Table");
    flow_gap(f, 12);
}

static void draw_weeks(struct chart *c) {
    const struct day_plan *const plan = c->plan;
    size_t idle = SIZE_MAX; /* first day of weeks without work */
    size_t most = 1;
    for (size_t d = 0; d < plan->work_day_count; d += days_of_week(plan, d)) {
        most = days_of_week(plan, d) > most ? days_of_week(plan, d) : most;
    }
    c->names = NAMES;
    c->day = (c->flow.width - NAMES) / (double)most;
    for (size_t d = 0; d < plan->work_day_count; d += c->day_count) {
        c->first_day = d;
        c->day_count = days_of_week(plan, d);
        const bool shows = week_shows(c);
        if (shows && idle != SIZE_MAX) {
            flow_text(&c->flow,
                      pool_words(&c->pool, "Nothing is done from %s to %s.",
                                 show_day(plan->work_days[idle]).text,
                                 show_day(plan->work_days[d - 1]).text),
                      (struct text_style){.size = TEXT, .width = c->flow.width});
            flow_gap(&c->flow, 12);
        }
        idle = shows ? SIZE_MAX : idle == SIZE_MAX ? d : idle;
        if (shows) {
            draw_week(c);
        }
    }
}

/* --- the paper --- */

static bool draw(void *what, struct pdf *pdf, double spread, size_t *pages) {
    struct chart *const c = what;
    c->pages = *pages;
    c->flow = (struct flow){.pdf = pdf,
                            .x = MARGIN,
                            .width = pdf->width - 2 * MARGIN,
                            .top = MARGIN,
                            .bottom = pdf->height - FOOT - 8,
                            .y = MARGIN,
                            .spread = spread,
                            .margins = draw_margins,
                            .what = c};
    draw_head(c);
    draw_weeks(c);
    draw_notes(c);
    flow_end(&c->flow);
    *pages = c->flow.page;
    return !pool_failed(&c->pool);
}

bool day_chart_write(const struct day_plan *plan, const struct day_rows *rows, const char *path,
                     struct pool *pool, const char **lacking) {
    const struct estimate *const e = plan->jobs[0].estimate;
    const struct pdf_facts facts = {.title = TITLE,
                                    .subject = text_or_empty(e->job->number.s),
                                    .author = text_or_empty(e->rates->shop.name.s),
                                    .year = e->job->year,
                                    .month = e->job->month,
                                    .day = e->job->day,
                                    .letter = show_on_letter(e),
                                    .across = true};
    struct chart c = {.plan = plan, .rows = rows, .rates = e->rates};
    pool_init(&c.pool);
    c.finish = chart_only_finish(rows, &c.pool);
    const bool done = flow_write(draw, &c, &facts, path, pool, lacking);
    pool_clear(&c.pool);
    return done;
}
