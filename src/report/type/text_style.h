/* SPDX-License-Identifier: MIT */
/* Text on drawings and pages, set by Pango on a Cairo surface.  Sizes in the units of the surface:
 * points on paper. Text is UTF-8.
 *
 * Papers are in English and run from left to right, whatever letters a line begins with. A text of
 * a script that runs from right to left alone is set so, at the side that `align` has. */
#ifndef DOORCOST_REPORT_TYPE_TEXT_STYLE_H
#define DOORCOST_REPORT_TYPE_TEXT_STYLE_H

#include <cairo.h>
#include <stdbool.h>

enum text_align { ALIGN_LEFT, ALIGN_CENTER, ALIGN_RIGHT };

struct text_style {
    double size;
    bool bold;
    enum text_align align;
    double gray;  /* 0 black to 1 white */
    double width; /* lines are broken at this; 0: one line */
    bool cut;     /* one line, cut with an ellipsis where it is wider than width */
};

struct text_box {
    double width, height;
};

/* Loads the typeface.  Where memory or threads lack for that, the libraries end the program without
 * asking: to be called before any file is begun. */
void text_prepare(void);

/* The room that text takes. */
struct text_box text_measure(cairo_t *cr, const char *text, const struct text_style *style);

/* Sets text with its upper left corner at x, y (with its box of `width` there, where one is given);
 * returns its height. */
double text_draw(cairo_t *cr, double x, double y, const char *text, const struct text_style *style);

/* Has a drawing remember how texts are set together with another, so that none is set twice: a
 * paper that is measured, or counted, before it is drawn. */
void text_share(cairo_t *cr, cairo_t *with);

/* The first text drawn that has letters of which no typeface of this computer knows the shape:
 * boxes stand for them; of drawings that share, on any. NULL: there is none. Lives as long as the
 * drawing. */
const char *text_lacking(cairo_t *cr);

/* The package of Debian that brings typefaces for a text that lacks them. Static. */
const char *text_typefaces(const char *text);

#endif
