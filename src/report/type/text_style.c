/* SPDX-License-Identifier: MIT */
#include "report/type/text_style.h"

#include "report/type/type_font.h"

static PangoLayout *lay_out(cairo_t *cr, const char *text, const struct text_style *style) {
    static const PangoAlignment aligns[] = {
        [ALIGN_LEFT] = PANGO_ALIGN_LEFT,
        [ALIGN_CENTER] = PANGO_ALIGN_CENTER,
        [ALIGN_RIGHT] = PANGO_ALIGN_RIGHT,
    };
    PangoLayout *const layout = pango_cairo_create_layout(cr);
    type_font_set(layout, style->size, style->bold);
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
