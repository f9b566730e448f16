/* SPDX-License-Identifier: MIT */
/* Pictures for a workbook: what is drawn in black and grays becomes a PNG of six grays, which the
 * eye does not tell from more, at a third of the size and a fraction of the work of one in colors.
 * Pictures of one size are drawn one after another on the same surface. */
#ifndef DOORCOST_REPORT_DRAW_IMAGE_H
#define DOORCOST_REPORT_DRAW_IMAGE_H

#include <cairo.h>
#include <stdbool.h>
#include <stddef.h>

struct image {
    cairo_surface_t *surface;
    cairo_t *cr; /* to be drawn with, in points */
    double width, height;
};

/* A white picture of width x height points, `dots` a point. image_close must be called. */
void image_open(struct image *image, double width, double height, double dots);

/* What was drawn, as PNG, and a white picture again.  *bytes: owned by the caller; NULL and false
 * when memory is out or drawing failed. */
bool image_take(struct image *image, unsigned char **bytes, size_t *size)
    __attribute__((warn_unused_result));

/* Frees the picture. */
void image_close(struct image *image);

#endif
