/* SPDX-License-Identifier: MIT */
#include "report/type/text_width.h"

#include "report/type/type_font.h"

#include <assert.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

/* Letters remembered of each weight, by the low bits of their code: the letters of one script do
 * not meet. */
#define SLOTS ((size_t)4096)
/* Letters are measured at this size, so that what is rounded away is negligible. */
#define SIZE 1000.0

struct slot {
    gunichar letter; /* 0: free */
    float width;
};

struct text_widths {
    PangoLayout *layout;
    PangoContext *context;
    bool bold; /* the layout's weight now */
    struct slot slots[2][SLOTS];
};

struct text_widths *text_widths_new(void) {
    struct text_widths *const w = calloc(1, sizeof *w);
    if (w != NULL) {
        w->context = pango_font_map_create_context(pango_cairo_font_map_get_default());
        w->layout = pango_layout_new(w->context);
        type_font_set(w->layout, SIZE, false);
    }
    return w;
}

void text_widths_free(struct text_widths *w) {
    if (w != NULL) {
        g_object_unref(w->layout);
        g_object_unref(w->context);
        free(w);
    }
}

static float measure(struct text_widths *w, gunichar letter, bool bold) {
    char bytes[6];
    int wide = 0;
    const int size = g_unichar_to_utf8(letter, bytes);
    if (w->bold != bold) {
        type_font_set(w->layout, SIZE, bold);
        w->bold = bold;
    }
    pango_layout_set_text(w->layout, bytes, size);
    pango_layout_get_size(w->layout, &wide, NULL);
    return (float)(wide / (PANGO_SCALE * SIZE));
}

static double letter_width(struct text_widths *w, gunichar letter, bool bold) {
    struct slot *const slot = &w->slots[bold ? 1 : 0][letter % SLOTS];
    if (letter != 0 && slot->letter != letter) {
        const bool over = g_unichar_iszerowidth(letter); /* the letter before it */
        *slot = (struct slot){.letter = letter, .width = over ? 0 : measure(w, letter, bold)};
    }
    return letter == 0 ? 0 : slot->width;
}

double text_width(struct text_widths *w, const char *text, size_t size, bool bold) {
    double width = 0;
    for (const char *at = text; at < text + size; at = g_utf8_next_char(at)) {
        width += letter_width(w, g_utf8_get_char(at), bold);
    }
    return width;
}

double text_widest_word(struct text_widths *w, const char *text, bool bold) {
    double widest = 0;
    while (*text != '\0') {
        const size_t size = strcspn(text, " -");
        const double width = text_width(w, text, size, bold);
        widest = width > widest ? width : widest;
        text += size;
        text += *text != '\0' ? 1 : 0;
    }
    return widest;
}

size_t text_lines(struct text_widths *w, const char *text, bool bold, double room) {
    const double blank = letter_width(w, ' ', bold);
    size_t lines = 1;
    double used = 0;
    assert(room > 0);
    while (*text != '\0') {
        const size_t size = strcspn(text, " ");
        const double word = text_width(w, text, size, bold);
        if (used > 0 && used + blank + word > room) {
            lines++;
            used = 0;
        }
        used += word + (used > 0 ? blank : 0);
        while (used > room) {
            lines++;
            used -= room;
        }
        text += size;
        text += *text == ' ' ? 1 : 0;
    }
    return lines;
}
