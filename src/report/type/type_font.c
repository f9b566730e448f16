/* SPDX-License-Identifier: MIT */
#include "report/type/type_font.h"

/* The first has the widths of the workbooks' Arial; the second stands in for letters that it lacks.
 */
#define FAMILIES "Liberation Sans,DejaVu Sans"

/* Shapes as the font draws them, on no grid of dots, so that a page is the same at every size. */
static void set_options(PangoLayout *layout) {
    cairo_font_options_t *const options = cairo_font_options_create();
    cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
    cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
    cairo_font_options_set_antialias(options, CAIRO_ANTIALIAS_GRAY);
    pango_cairo_context_set_font_options(pango_layout_get_context(layout), options);
    pango_layout_context_changed(layout);
    cairo_font_options_destroy(options);
}

void type_font_set(PangoLayout *layout, double size, bool bold) {
    PangoFontDescription *const font = pango_font_description_from_string(FAMILIES);
    set_options(layout);
    pango_font_description_set_absolute_size(font, size * PANGO_SCALE);
    pango_font_description_set_weight(font, bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
    pango_layout_set_font_description(layout, font);
    pango_font_description_free(font);
}
