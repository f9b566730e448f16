/* SPDX-License-Identifier: MIT */
#include "report/draw/tag.h"

void tag_begin(cairo_t *cr, const char *type) {
    cairo_tag_begin(cr, type, "");
}

void tag_end(cairo_t *cr, const char *type) {
    cairo_tag_end(cr, type);
}

double tag_text(cairo_t *cr, const char *type, double x, double y, const char *text,
                const struct text_style *style) {
    if (text[0] == '\0') {
        return text_draw(cr, x, y, text, style);
    }
    tag_begin(cr, type);
    const double high = text_draw(cr, x, y, text, style);
    tag_end(cr, type);
    return high;
}
