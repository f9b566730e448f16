/* SPDX-License-Identifier: MIT */
/* The work by day as an iCalendar file, which calendar programs take in: an event for each person
 * and day, and one for the day on which a job is ready. */
#ifndef DOORCOST_REPORT_CALENDAR_DAY_CALENDAR_H
#define DOORCOST_REPORT_CALENDAR_DAY_CALENDAR_H

#include "days/work/day_rows.h"

/* Writes the plan to path as it stands (the caller has seen to a safe place). The last event is
 * left open, for the seal is its last property (report/file). The same plan gives the same bytes,
 * and a job keeps the names of its events when it is planned anew. rows: of the plan; pool: for
 * words. false: not written, or out of memory. */
bool day_calendar_write(const struct day_plan *plan, const struct day_rows *rows, const char *path,
                        struct pool *pool) __attribute__((warn_unused_result));

#endif
