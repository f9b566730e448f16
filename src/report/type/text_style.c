/* SPDX-License-Identifier: MIT */
/* Asking for a typeface at another size takes longer than all else of a text, and drawings measure
 * the same words again and again until they fit.  So a surface sets all its texts at one size, by
 * one layout, scales what it draws, and remembers what it measured: letters stand on no grid of
 * dots, so a line is as much longer as it is larger. */
#include "report/type/text_style.h"

#include "report/type/text_width.h"
#include "report/type/type_font.h"

#include <string.h>

/* A text that meets another in its slot takes its place. A power of two. */
#define SLOTS ((size_t)1024)
#define SIZE  64.0 /* so large that what is rounded away is negligible */

struct measured {
    char *text; /* NULL: free */
    bool bold;
    struct text_box box; /* at SIZE */
};

struct typesetter {
    PangoLayout *layout;
    bool bold; /* the layout's weight now */
    struct measured slots[SLOTS];
};

static void typesetter_free(void *typesetter) {
    struct typesetter *const t = typesetter;
    for (size_t i = 0; i < SLOTS; i++) {
        g_free(t->slots[i].text);
    }
    g_object_unref(t->layout);
    g_free(t);
}

/* The typesetter of a drawing, which lives as long as it does. */
static struct typesetter *typesetter_of(cairo_t *cr) {
    static const cairo_user_data_key_t key;
    struct typesetter *t = cairo_get_user_data(cr, &key);
    if (t == NULL) {
        t = g_new0(struct typesetter, 1);
        t->layout = pango_cairo_create_layout(cr);
        type_font_set(t->layout, SIZE, false);
        pango_context_set_round_glyph_positions(pango_layout_get_context(t->layout), FALSE);
        pango_layout_set_wrap(t->layout, PANGO_WRAP_WORD_CHAR);
        (void)cairo_set_user_data(cr, &key, t, typesetter_free);
    }
    return t;
}

static PangoLayout *lay_out(cairo_t *cr, const char *text, const struct text_style *style) {
    static const PangoAlignment aligns[] = {
        [ALIGN_LEFT] = PANGO_ALIGN_LEFT,
        [ALIGN_CENTER] = PANGO_ALIGN_CENTER,
        [ALIGN_RIGHT] = PANGO_ALIGN_RIGHT,
    };
    struct typesetter *const t = typesetter_of(cr);
    PangoLayout *const layout = t->layout;
    if (t->bold != style->bold) {
        type_font_set(layout, SIZE, style->bold);
        t->bold = style->bold;
    }
    const double width = style->width * SIZE / style->size * PANGO_SCALE;
    pango_layout_set_alignment(layout, aligns[style->align]);
    pango_layout_set_width(layout, style->width > 0 ? (int)width : -1);
    pango_layout_set_ellipsize(layout, style->cut ? PANGO_ELLIPSIZE_END : PANGO_ELLIPSIZE_NONE);
    pango_layout_set_single_paragraph_mode(layout, style->cut);
    pango_layout_set_auto_dir(layout, style->left ? FALSE : TRUE);
    pango_context_set_base_dir(pango_layout_get_context(layout),
                               style->left ? PANGO_DIRECTION_LTR : PANGO_DIRECTION_WEAK_LTR);
    pango_layout_set_text(layout, text, -1);
    return layout;
}

/* What a layout takes at a size. */
static struct text_box box_of(PangoLayout *layout, double size) {
    const double scale = size / SIZE / PANGO_SCALE;
    int width = 0;
    int height = 0;
    pango_layout_get_size(layout, &width, &height);
    return (struct text_box){.width = width * scale, .height = height * scale};
}

struct text_box text_measure(cairo_t *cr, const char *text, const struct text_style *style) {
    if (style->width > 0) {
        return box_of(lay_out(cr, text, style), style->size);
    }
    const size_t mix = (size_t)g_str_hash(text) * 2 + (style->bold ? 1 : 0);
    struct measured *const m = &typesetter_of(cr)->slots[mix % SLOTS];
    if (m->text == NULL || m->bold != style->bold || strcmp(m->text, text) != 0) {
        g_free(m->text);
        *m = (struct measured){.text = g_strdup(text),
                               .bold = style->bold,
                               .box = box_of(lay_out(cr, text, style), SIZE)};
    }
    const double scale = style->size / SIZE;
    return (struct text_box){.width = m->box.width * scale, .height = m->box.height * scale};
}

double text_draw(cairo_t *cr, double x, double y, const char *text,
                 const struct text_style *style) {
    PangoLayout *const layout = lay_out(cr, text, style);
    const struct text_box box = box_of(layout, style->size);
    double left = x;
    if (style->width <= 0 && style->align != ALIGN_LEFT) {
        left -= style->align == ALIGN_RIGHT ? box.width : box.width / 2;
    }
    cairo_save(cr);
    cairo_set_source_rgb(cr, style->gray, style->gray, style->gray);
    cairo_translate(cr, left, y);
    cairo_scale(cr, style->size / SIZE, style->size / SIZE);
    cairo_move_to(cr, 0, 0);
    pango_cairo_show_layout(cr, layout);
    cairo_restore(cr);
    return box.height;
}

void text_prepare(void) {
    cairo_surface_t *const surface = cairo_image_surface_create(CAIRO_FORMAT_RGB24, 16, 16);
    cairo_t *const cr = cairo_create(surface);
    struct text_widths *const widths = text_widths_new();
    for (int bold = 0; bold < 2; bold++) {
        const struct text_style style = {.size = 8, .bold = bold == 1};
        (void)text_draw(cr, 0, 0, "8", &style);
        (void)(widths == NULL ? 0 : text_width(widths, "8", 1, bold == 1));
    }
    text_widths_free(widths);
    cairo_destroy(cr);
    cairo_surface_destroy(surface);
}
