/* SPDX-License-Identifier: MIT */
/* What papers say of work by day. */
#ifndef DOORCOST_REPORT_WORDS_DAY_WORDS_H
#define DOORCOST_REPORT_WORDS_DAY_WORDS_H

#include "days/work/day_rows.h"
#include "report/words/show.h"

/* `Mon 2026-03-02`; day: date_number. */
struct shown show_day(int32_t day);

/* Minutes as hours, one decimal. */
struct shown show_hours(int64_t minutes);

/* `13 working days`, `1 working day`. */
struct shown show_working_days(int64_t days);

/* What an end is decided by: `people`, `places on the racks`, `table saw`. Borrowed. */
const char *day_cause_words(const struct rates *rates, enum day_cause cause, int32_t machine);

/* Why that decides, a sentence without its full stop; static. */
const char *day_cause_reason(enum day_cause cause);

/* What one more of it is: `a person`, `a clamp set`, `a rack`, `a second table saw`. In pool; ""
 * when memory is out. */
const char *day_more_words(const struct rates *rates, const struct day_more *more,
                           struct pool *pool);

/* The job of a plan in short: its number where it has one, else its title. Borrowed. */
const char *day_job_name(const struct day_plan *plan, size_t job);

/* The operation of a line. Borrowed. */
const char *day_line_name(const struct day_plan *plan, const struct day_line *line);

/* A row of the plan: `person 2`, `table saw`, `racks`. In pool or borrowed; "" when memory is out.
 */
const char *day_row_name(const struct rates *rates, const struct day_row *row, struct pool *pool);

/* The work of an entry with what it is done to, and what it waits for: `spray: topcoat, coat 3 of
 * 4`, `glue, in clamps`. In pool or borrowed; "" when memory is out. */
const char *day_entry_words(const struct rates *rates, const struct day_rows *rows,
                            const struct day_entry *entry, struct pool *pool);

/* Of a day, an index into work_days, on which nobody is at work: that, and what dries, sets or is
 * away; "" of another. In pool. */
const char *day_idle_words(const struct rates *rates, const struct day_rows *rows, size_t day,
                           struct pool *pool);

/* What the plan rests on beside the estimates, a sentence each, at most DAY_NOTES. In pool; ""
 * when memory is out. Returns how many. */
#define DAY_NOTES 8
size_t day_notes(const struct day_plan *plan, const char *notes[DAY_NOTES], struct pool *pool);

#endif
