/* SPDX-License-Identifier: MIT */
/* Text that runs down pages: what is put stands below what was put before, and where a page has no
 * room left, a new one begins. */
#ifndef DOORCOST_REPORT_DRAW_FLOW_H
#define DOORCOST_REPORT_DRAW_FLOW_H

#include "report/draw/pdf.h"
#include "report/type/text_style.h"

#include <stddef.h>

struct flow {
    struct pdf *pdf;
    double x, width;    /* of the column of text */
    double top, bottom; /* where a page's text begins and ends */
    double y;           /* where the next thing goes */
    double spread;      /* gaps are this part of their full height */
    size_t page;        /* pages ended before this one */
    /* Draws what stands on every page; called as each page ends. */
    void (*margins)(void *what, struct flow *flow);
    void *what;
};

/* Starts a new page unless height points are left on this one; true: one was started. */
bool flow_need(struct flow *flow, double height);

/* Ends the last page. */
void flow_end(struct flow *flow);

/* Leaves room, as spread has it. */
void flow_gap(struct flow *flow, double height);

/* What the paper is called, over the whole width (where the style gives none). */
void flow_title(struct flow *flow, const char *text, struct text_style style);

/* A paragraph over the whole width (where the style gives none); it is not parted. */
void flow_text(struct flow *flow, const char *text, struct text_style style);

/* A heading, with at least `after` of what follows it on the same page. */
void flow_heading(struct flow *flow, const char *text, double after);

/* At the foot of a page, `up` points from its lower edge: words at the left, cut where they would
 * run into the number of the page at the right. pages: in all. */
void flow_foot(const struct flow *flow, double up, double size, const char *left, size_t pages);

/* Draws a paper with gaps of that part of their full height; *pages: how many it has; before, how
 * many it will have, 0 while that is not known. false: it could not, or was stopped. */
typedef bool flow_draw(void *what, struct pdf *pdf, double spread, size_t *pages);

/* Writes a paper to path as a PDF.  It is drawn into nothing first, to count its pages: its things
 * stand less far apart than in full where that saves one. A paper of one page can't have fewer; of
 * a long one, over twenty, it does not matter. pool, *lacking: as pdf_close has them. false: as
 * draw gave it, not written, or memory ran out. */
bool flow_write(flow_draw *draw, void *what, const struct pdf_facts *facts, const char *path,
                struct pool *pool, const char **lacking) __attribute__((warn_unused_result));

/* A line across. gray: 0 black. */
void flow_rule(struct flow *flow, double thick, double gray);

#endif
