/* SPDX-License-Identifier: MIT */
#include "report/draw/text_style.h"

#include <pango/pangocairo.h>

/* The second stands in for style that the first lacks. */
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

static PangoLayout *lay_out(cairo_t *cr, const char *text, const struct text_style *style) {
    static const PangoAlignment aligns[] = {
        [ALIGN_LEFT] = PANGO_ALIGN_LEFT,
        [ALIGN_CENTER] = PANGO_ALIGN_CENTER,
        [ALIGN_RIGHT] = PANGO_ALIGN_RIGHT,
    };
    PangoLayout *const layout = pango_cairo_create_layout(cr);
    PangoFontDescription *const font = pango_font_description_from_string(FAMILIES);
    set_options(layout);
    pango_font_description_set_absolute_size(font, style->size * PANGO_SCALE);
    pango_font_description_set_weight(font, style->bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
    pango_layout_set_font_description(layout, font);
    pango_font_description_free(font);
    pango_layout_set_alignment(layout, aligns[style->align]);
    if (style->width > 0) {
        pango_layout_set_width(layout, (int)(style->width * PANGO_SCALE));
        pango_layout_set_wrap(layout, PANGO_WRAP_WORD_CHAR);
    }
    if (style->cut) {
        pango_layout_set_ellipsize(layout, PANGO_ELLIPSIZE_END);
        pango_layout_set_single_paragraph_mode(layout, TRUE);
    }
    pango_layout_set_text(layout, text, -1);
    return layout;
}

static struct text_box box_of(PangoLayout *layout) {
    int width = 0;
    int height = 0;
    pango_layout_get_size(layout, &width, &height);
    return (struct text_box){.width = (double)width / PANGO_SCALE,
                             .height = (double)height / PANGO_SCALE};
}

struct text_box text_measure(cairo_t *cr, const char *text, const struct text_style *style) {
    PangoLayout *const layout = lay_out(cr, text, style);
    const struct text_box box = box_of(layout);
    g_object_unref(layout);
    return box;
}

double text_draw(cairo_t *cr, double x, double y, const char *text,
                 const struct text_style *style) {
    PangoLayout *const layout = lay_out(cr, text, style);
    const struct text_box box = box_of(layout);
    double left = x;
    if (style->width <= 0 && style->align != ALIGN_LEFT) {
        left -= style->align == ALIGN_RIGHT ? box.width : box.width / 2;
    }
    cairo_save(cr);
    cairo_set_source_rgb(cr, style->gray, style->gray, style->gray);
    cairo_move_to(cr, left, y);
    pango_cairo_show_layout(cr, layout);
    cairo_restore(cr);
    g_object_unref(layout);
    return box.height;
}
