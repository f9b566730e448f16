/* SPDX-License-Identifier: MIT */
/* Shared by the files that draw an elevation, and by nobody else. */
#ifndef DOORCOST_REPORT_DRAW_DRAW_PARTS_H
#define DOORCOST_REPORT_DRAW_DRAW_PARTS_H

#include "report/draw/draw.h"

/* A drawing on its paper: the leaf's upper left corner stands at x, y; scale is points a nm. */
struct drawing {
    cairo_t *cr;
    const struct elevation *e;
    double x, y, scale;
    double letters;         /* size of all words, points */
    struct size_room *room; /* of the dimensions; NULL: none are drawn */
};

/* What the dimensions need beside and below the leaf. */
struct size_room {
    double mark;                    /* from the leaf to the first line, past hinge marks */
    double part_width, whole_width; /* of the labels beside the leaf */
    double below_part;              /* depth of the labels of parts below the leaf */
    double left, below;             /* all in all */
    bool staggered; /* labels beside the leaf stand in two columns, their parts are so low */
};

/* How much room the dimensions take when the leaf is drawn at drawing->scale. */
struct size_room draw_dimension_room(const struct drawing *drawing);
/* Draws the dimensions beside and below the leaf, in the room that drawing->room tells. */
void draw_dimensions(const struct drawing *drawing);

#endif
