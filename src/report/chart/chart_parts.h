/* SPDX-License-Identifier: MIT */
/* Shared by the files of the chart: for src/report/chart only. */
#ifndef DOORCOST_REPORT_CHART_CHART_PARTS_H
#define DOORCOST_REPORT_CHART_CHART_PARTS_H

#include "days/work/day_rows.h"
#include "report/draw/flow.h"

#define CHART_TEXT  8.0 /* points */
#define CHART_SMALL 7.5

struct chart {
    const struct day_plan *plan;
    const struct day_rows *rows;
    const struct rates *rates;
    struct flow flow;
    struct pool pool;
    const char *finish; /* the only one that work is told of, left out of its words; "": several */
    size_t pages;       /* in all; 0 while they are counted */
    /* The week that is drawn: its first day, as an index into work_days, and how many it has. */
    size_t first_day, day_count;
    double names; /* width of the names of rows */
    double day;   /* width of a day */
};

/* The left edge of a day of the week. */
static inline double chart_day_x(const struct chart *chart, size_t day) {
    return chart->flow.x + chart->names + (double)(day - chart->first_day) * chart->day;
}

/* Draws the names of the days, and what comes before them where a page begins with them. */
void chart_heads(struct chart *chart);

/* The finish that all coats are of, `painted, lamp white`; "": there are several, or none. In pool.
 */
const char *chart_only_finish(const struct day_rows *rows, struct pool *pool);

/* Whether the row has something to show in the week. */
bool chart_row_shows(const struct chart *chart, const struct day_row *row);

/* Draws the row of the week, over as many pages as it takes. */
void chart_row(struct chart *chart, const struct day_row *row);

#endif
