/* SPDX-License-Identifier: MIT */
/* Text on drawings and pages, set by Pango on a Cairo surface.  Sizes in the units of the surface:
 * points on paper. Text is UTF-8. */
#ifndef DOORCOST_REPORT_DRAW_LETTERS_H
#define DOORCOST_REPORT_DRAW_LETTERS_H

#include <cairo.h>
#include <stdbool.h>

enum letters_align { LETTERS_LEFT, LETTERS_CENTER, LETTERS_RIGHT };

struct letters {
    double size;
    bool bold;
    enum letters_align align;
    double gray;  /* 0 black to 1 white */
    double width; /* lines are broken at this; 0: one line */
    bool cut;     /* one line, cut with an ellipsis where it is wider than width */
};

struct letters_box {
    double width, height;
};

/* The room that text takes. */
struct letters_box letters_measure(cairo_t *cr, const char *text, const struct letters *letters);

/* Sets text with its upper left corner at x, y (with its box of `width` there, where one is given);
 * returns its height. */
double letters_draw(cairo_t *cr, double x, double y, const char *text,
                    const struct letters *letters);

#endif
