/* SPDX-License-Identifier: MIT */
/* Shared by the files that draw the pages of a cutting plan, and by nobody else. */
#ifndef DOORCOST_REPORT_PLAN_PLAN_DRAW_H
#define DOORCOST_REPORT_PLAN_PLAN_DRAW_H

#include "report/plan/plan_pages.h"
#include "report/type/text_style.h"

/* A page in the making: what lies on board or sheet is drawn by scales along and across. */
struct sketch {
    cairo_t *cr;
    const struct estimate *e;
    struct pool *pool;
    double x, y;          /* of the board's corner, on the page */
    double along, across; /* points by a millionth of the unit */
};

/* A rectangle of the page. */
struct patch {
    double x, y, width, height;
};

/* The place of a region of the board. */
struct patch sketch_patch(const struct sketch *sketch, int64_t x, int64_t y, int64_t along,
                          int64_t across);

enum tone {
    TONE_PART,    /* white, full line */
    TONE_OFFCUT,  /* light gray, dashed line */
    TONE_RESERVE, /* hatched */
    TONE_TRIM,    /* cross hatched */
    TONE_KERF     /* black */
};
/* Fills a patch so. */
void sketch_fill(const struct sketch *sketch, struct patch patch, enum tone tone);

/* Words in the middle of a patch, as large as fits up to `size`, turned where that is larger:
 * `name` bold, `more` below it.  Nothing where neither fits legibly. */
void sketch_label(const struct sketch *sketch, struct patch patch, double size, const char *name,
                  const char *more);

/* The patch without its edges, on which the numbers of the cuts stand: room for a label. */
struct patch sketch_inside(struct patch patch);

/* The number of a cut in a circle around x, y. */
void sketch_number(const struct sketch *sketch, double x, double y, size_t number);

/* A line with arrows at both ends and words at its middle, along or upright. */
void sketch_dimension(const struct sketch *sketch, double x, double y, double run, bool upright,
                      const char *words);

/* An arrow along the grain; grain false: `no grain`. */
void sketch_grain(const struct sketch *sketch, double x, double y, bool grain);

/* A list of lines in columns that fills a patch; headings are bold. The size of its letters shrinks
 * until all fit. */
struct cut_step {
    const char *text;
    bool heading;
};
/* Draws a list of lines in columns that fill the patch, headings bold; the size of its letters
 * shrinks until all fit. */
void sketch_steps(const struct sketch *sketch, struct patch patch, const struct cut_step *steps,
                  size_t count);

/* Draws a board with its cuts, and the list of them, into the patch. false: out of memory. */
bool draw_board_page(struct sketch *sketch, const struct lumber_buy *buy, const struct alike *alike,
                     struct patch patch) __attribute__((warn_unused_result));
/* The same of a sheet. */
bool draw_sheet_page(struct sketch *sketch, const struct sheet_buy *buy, const struct alike *alike,
                     struct patch patch) __attribute__((warn_unused_result));

#endif
