/* SPDX-License-Identifier: MIT */
/* Draws elevations by Cairo, on paper or into a picture: black lines and grays that print. */
#ifndef DOORCOST_REPORT_DRAW_DRAW_H
#define DOORCOST_REPORT_DRAW_DRAW_H

#include "report/draw/elevation.h"
#include "report/draw/image.h"

#include <cairo.h>

/* Points on paper; in a picture they are scaled. */
struct area {
    double x, y, width, height;
};

enum detail {
    DETAIL_SMALL, /* the front alone, with its size where dimensions are wanted by the caller */
    DETAIL_FULL,  /* with what is hidden, hinge marks and dimensions of leaf and parts */
    DETAIL_WALL   /* the same, its letters so large that they are read from two steps */
};

/* Draws within area, as large as fits, in its middle. */
void draw_elevation(cairo_t *cr, const struct elevation *elevation, struct area area,
                    enum detail detail);

/* A picture of it that fills `image`, which is white before and after, as PNG.  *bytes: owned by
 * the caller; NULL and false when memory is out. */
bool draw_elevation_png(const struct elevation *elevation, struct image *image, enum detail detail,
                        unsigned char **bytes, size_t *size) __attribute__((warn_unused_result));

#endif
