/* SPDX-License-Identifier: MIT */
/* Blocks down the pages; shared by the files of this room, and by nobody else. */
#ifndef DOORCOST_REPORT_PLAN_PLAN_FLOW_H
#define DOORCOST_REPORT_PLAN_PLAN_FLOW_H

#include "report/plan/plan_draw.h"

#define HEAD_SIZE  10.0
#define HEAD_TICK  10.0 /* a box before the name of a board */
#define GRAIN_ROOM 90.0 /* behind the name of a sheet */

enum plan_block_kind {
    BLOCK_WORDS, /* text over the whole width */
    BLOCK_LINES, /* lines in columns */
    BLOCK_HEAD,  /* of a board or sheet: a box for each that is cut so, and its name */
    BLOCK_BOARD, /* the drawing */
    BLOCK_SHEET
};

struct plan_block {
    enum plan_block_kind kind;
    size_t page;
    double x, y;             /* x: from the left margin */
    const char *text;        /* of words and heads */
    struct text_style style; /* the same */
    struct plan_columns columns;
    const struct plan_stack *stack; /* of heads and drawings, with `group` */
    size_t group;
    struct patch patch; /* of a drawing: its size */
};

/* Puts all blocks onto pages, whose sizes are set; cr: a drawing to measure with. false: out of
 * memory. */
bool plan_flow(struct plan_pages *pages, cairo_t *cr) __attribute__((warn_unused_result));

/* How far the name of a board stands in behind its boxes. */
double plan_head_indent(const struct plan_block *block);

#endif
