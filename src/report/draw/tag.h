/* SPDX-License-Identifier: MIT */
/* What a piece of a page is, for who has a paper read aloud or taken apart: PDFs carry a tree of
 * such pieces in the order of reading, surfaces of other kinds take no notice.
 *
 * `type` is a type of structure of PDF (ISO 32000-1, 14.8.4): "H1" to "H3" headings, "P" a
 * paragraph, "Table", "TR", "TH", "TD", "L", "LI", "Lbl", "LBody", "Figure". A name that is none
 * puts the drawing into an error. Pieces may hold others; what is drawn stands in the innermost,
 * which holds no other and ends on its page. What stands in none, as the foot of a page, is left
 * out of the tree. */
#ifndef DOORCOST_REPORT_DRAW_TAG_H
#define DOORCOST_REPORT_DRAW_TAG_H

#include "report/type/text_style.h"

/* Begins a piece. */
void tag_begin(cairo_t *cr, const char *type);
/* Ends the piece that was begun last, of that type. */
void tag_end(cairo_t *cr, const char *type);
/* text_draw as a piece of its own; a text that is empty makes none. */
double tag_text(cairo_t *cr, const char *type, double x, double y, const char *text,
                const struct text_style *style);

#endif
