/* SPDX-License-Identifier: MIT */
/* The pieces of the measuring sheet; for src/report/visit only. Sizes in points. */
#ifndef DOORCOST_REPORT_VISIT_VISIT_PARTS_H
#define DOORCOST_REPORT_VISIT_VISIT_PARTS_H

#include "report/draw/flow.h"
#include "report/type/text_style.h"
#include "report/visit/visit_pdf.h"

#define VISIT_TEXT  8.5 /* of what is read */
#define VISIT_SMALL 8.0 /* the smallest letters */
#define VISIT_ROWS  12  /* openings a page */

/* --- visit_words.c --- */

/* How far a door reaches over its opening, or keeps clear of it, and what lies between a pair; with
 * lines to write on where the job does not say. In pool. */
const char *visit_fit_words(const struct visit *visit, struct pool *pool);
/* What width and height are of, in which unit and to which step. In pool. */
const char *visit_size_words(const struct visit *visit, struct pool *pool);
/* The names that the columns take, a line a column; returns how many, at most VISIT_NAMES. In pool.
 */
#define VISIT_NAMES 6
size_t visit_names(const struct visit *visit, struct pool *pool, const char *lines[VISIT_NAMES]);

/* --- visit_drawing.c --- */

/* Draws what is measured where, side by side over the width of the flow. of_door: sizes are of the
 * finished door. */
void visit_draw(struct flow *flow, bool of_door);

/* --- visit_table.c --- */

/* Draws the rows to write in, each by `more` higher than the least. */
void visit_table(struct flow *flow, const struct visit *visit, double more);
#endif
