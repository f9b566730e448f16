/* SPDX-License-Identifier: MIT */
/* Asking for a typeface at another size takes longer than all else of a text, and drawings measure
 * the same words again and again until they fit, and then draw them.  So a surface sets all its
 * texts at one size, scales what it draws, and remembers how they were set: letters stand on no
 * grid of dots, so a line is as much longer as it is larger. */
#include "report/type/text_style.h"

#include "report/type/text_width.h"
#include "report/type/type_font.h"

#include <string.h>

/* A text that meets another in its slot takes its place. A power of two. */
#define SLOTS ((size_t)8192)
#define SIZE  64.0 /* so large that what is rounded away is negligible */

/* How a text is set. */
struct setting {
    bool bold, leftward, cut;
    enum text_align align; /* left where there is nothing to align by */
    int width;             /* at SIZE, in units of Pango; -1: as it needs */
};

struct set_text {
    char *text; /* NULL: free */
    struct setting setting;
    PangoLayout *layout;
};

struct typesetter {
    PangoLayout *models[2][2]; /* leftward or not, bold or not: others are made after these */
    struct set_text slots[SLOTS];
    char *lacking; /* the first text that no typeface has all letters of; NULL: none yet */
    size_t users;  /* drawings that remember their texts here */
};

/* Where a drawing keeps it. */
static const cairo_user_data_key_t place;

/* A drawing leaves it; the last one frees it. */
static void typesetter_leave(void *typesetter) {
    struct typesetter *const t = typesetter;
    if (--t->users > 0) {
        return;
    }
    for (size_t i = 0; i < SLOTS; i++) {
        g_free(t->slots[i].text);
        g_clear_object(&t->slots[i].layout);
    }
    for (size_t i = 0; i < 4; i++) {
        g_object_unref(t->models[i / 2][i % 2]);
    }
    g_free(t->lacking);
    g_free(t);
}

/* The direction is one of the context, so each has its own. */
static PangoLayout *make_model(cairo_t *cr, bool leftward) {
    PangoLayout *const layout = pango_cairo_create_layout(cr);
    PangoContext *const context = pango_layout_get_context(layout);
    type_font_set(layout, SIZE, false);
    pango_context_set_round_glyph_positions(context, FALSE);
    pango_context_set_base_dir(context, leftward ? PANGO_DIRECTION_RTL : PANGO_DIRECTION_LTR);
    pango_layout_set_auto_dir(layout, FALSE);
    pango_layout_set_wrap(layout, PANGO_WRAP_WORD_CHAR);
    return layout;
}

static void typesetter_join(struct typesetter *t, cairo_t *cr) {
    t->users++;
    if (cairo_set_user_data(cr, &place, t, typesetter_leave) != CAIRO_STATUS_SUCCESS) {
        t->users--;
    }
}

/* The typesetter of a drawing, which lives as long as it does. */
static struct typesetter *typesetter_of(cairo_t *cr) {
    struct typesetter *t = cairo_get_user_data(cr, &place);
    if (t == NULL) {
        t = g_new0(struct typesetter, 1);
        for (int i = 0; i < 2; i++) {
            t->models[i][0] = make_model(cr, i == 1);
            t->models[i][1] = pango_layout_copy(t->models[i][0]);
            type_font_set(t->models[i][1], SIZE, true);
        }
        typesetter_join(t, cr);
    }
    return t;
}

/* Of the scripts that are written from right to left, those that are today. */
static bool is_leftward_letter(gunichar letter) {
    switch (g_unichar_get_script(letter)) {
    case G_UNICODE_SCRIPT_ARABIC:
    case G_UNICODE_SCRIPT_HEBREW:
    case G_UNICODE_SCRIPT_SYRIAC:
    case G_UNICODE_SCRIPT_THAANA:
    case G_UNICODE_SCRIPT_NKO:
    case G_UNICODE_SCRIPT_ADLAM:
        return true;
    default:
        return false;
    }
}

/* A text with a mark behind each name that runs from right to left: else numbers behind its comma
 * would run on with it. To be freed. */
static char *with_marks(const char *text) {
    GString *const marked = g_string_new(NULL);
    bool leftward = false;
    for (const char *at = text; *at != '\0'; at = g_utf8_next_char(at)) {
        const gunichar letter = g_utf8_get_char(at);
        if (leftward && letter < 0x80 && strchr(",;:|()", (int)letter) != NULL) {
            g_string_append(marked, "\u200e");
            leftward = false;
        }
        leftward = is_leftward_letter(letter) || (leftward && !g_unichar_isalpha(letter));
        g_string_append_unichar(marked, letter);
    }
    return g_string_free(marked, FALSE);
}

static PangoLayout *set_anew(const struct typesetter *t, const char *text, struct setting setting) {
    static const PangoAlignment aligns[] = {
        [ALIGN_LEFT] = PANGO_ALIGN_LEFT,
        [ALIGN_CENTER] = PANGO_ALIGN_CENTER,
        [ALIGN_RIGHT] = PANGO_ALIGN_RIGHT,
    };
    PangoLayout *const layout =
        pango_layout_copy(t->models[setting.leftward ? 1 : 0][setting.bold ? 1 : 0]);
    pango_layout_set_alignment(layout, aligns[setting.align]);
    pango_layout_set_width(layout, setting.width);
    pango_layout_set_ellipsize(layout, setting.cut ? PANGO_ELLIPSIZE_END : PANGO_ELLIPSIZE_NONE);
    pango_layout_set_single_paragraph_mode(layout, setting.cut);
    char *const marked = setting.leftward ? g_strdup(text) : with_marks(text);
    pango_layout_set_text(layout, marked, -1);
    g_free(marked);
    return layout;
}

static bool same_setting(struct setting a, struct setting b) {
    return a.bold == b.bold && a.leftward == b.leftward && a.cut == b.cut && a.align == b.align &&
           a.width == b.width;
}

/* Whether a text begins with a letter that runs from right to left, and has none that does not. */
static bool is_leftward(const char *text) {
    if ((unsigned char)text[0] < 0x80 || !is_leftward_letter(g_utf8_get_char(text))) {
        return false;
    }
    for (const char *at = text; *at != '\0'; at = g_utf8_next_char(at)) {
        const gunichar letter = g_utf8_get_char(at);
        if (g_unichar_isalpha(letter) && !is_leftward_letter(letter)) {
            return false;
        }
    }
    return true;
}

/* The text as it is set; lives until the next call for the same typesetter. */
static PangoLayout *lay_out(cairo_t *cr, const char *text, const struct text_style *style) {
    struct typesetter *const t = typesetter_of(cr);
    const bool wide = style->width > 0;
    const bool aligned = wide || strchr(text, '\n') != NULL;
    const struct setting setting = {
        .bold = style->bold,
        .leftward = is_leftward(text),
        .cut = style->cut,
        .align = aligned ? style->align : ALIGN_LEFT,
        .width = wide ? (int)(style->width * SIZE / style->size * PANGO_SCALE) : -1};
    const size_t mix = (size_t)g_str_hash(text) * 2 + (style->bold ? 1 : 0);
    struct set_text *const slot = &t->slots[(mix + (size_t)setting.width) % SLOTS];
    if (slot->text == NULL || !same_setting(slot->setting, setting) ||
        strcmp(slot->text, text) != 0) {
        g_free(slot->text);
        g_clear_object(&slot->layout);
        *slot = (struct set_text){
            .text = g_strdup(text), .setting = setting, .layout = set_anew(t, text, setting)};
    }
    return slot->layout;
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
    return box_of(lay_out(cr, text, style), style->size);
}

double text_draw(cairo_t *cr, double x, double y, const char *text,
                 const struct text_style *style) {
    PangoLayout *const layout = lay_out(cr, text, style);
    const struct text_box box = box_of(layout, style->size);
    struct typesetter *const t = typesetter_of(cr);
    double left = x;
    if (t->lacking == NULL && pango_layout_get_unknown_glyphs_count(layout) > 0) {
        t->lacking = g_strdup(text);
    }
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

void text_share(cairo_t *cr, cairo_t *with) {
    typesetter_join(typesetter_of(with), cr);
}

const char *text_lacking(cairo_t *cr) {
    return typesetter_of(cr)->lacking;
}

const char *text_typefaces(const char *text) {
    for (const char *at = text; *at != '\0'; at = g_utf8_next_char(at)) {
        switch (g_unichar_get_script(g_utf8_get_char(at))) {
        case G_UNICODE_SCRIPT_HAN:
        case G_UNICODE_SCRIPT_HIRAGANA:
        case G_UNICODE_SCRIPT_KATAKANA:
        case G_UNICODE_SCRIPT_HANGUL:
        case G_UNICODE_SCRIPT_BOPOMOFO:
            return "fonts-noto-cjk";
        default:
            break;
        }
    }
    return "fonts-noto-core";
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
