/* SPDX-License-Identifier: MIT */
#include "report/draw/draw.h"

#include "report/draw/draw_parts.h"
#include "report/type/text_style.h"

#include <math.h>

/* Sizes of letters. */
#define USUAL 7.0
#define WALL  10.5

/* How a trait is drawn: its line and what fills it; a negative gray fills nothing. */
static const struct look_of {
    double line, line_gray, fill;
    bool dashed;
} looks[] = {
    [TRAIT_LEAF] = {1.2, 0, -1, false},     [TRAIT_SLAB] = {0.6, 0, 1, false},
    [TRAIT_STILE] = {0.6, 0, 1, false},     [TRAIT_RAIL] = {0.6, 0, 1, false},
    [TRAIT_PANEL] = {0.6, 0, 0.92, false},  [TRAIT_GLASS] = {0.6, 0, 1, false},
    [TRAIT_RAISED] = {0.5, 0, -1, false},   [TRAIT_OPEN] = {0.6, 0, 1, false},
    [TRAIT_BAR] = {0.5, 0, 1, false},       [TRAIT_SLAT] = {0.4, 0.2, 0.97, false},
    [TRAIT_HIDDEN] = {0.4, 0.35, -1, true}, [TRAIT_HINGE] = {0.6, 0, 0.25, false},
    [TRAIT_BORE] = {0.5, 0, -1, true},
};

/* The outline of a box: a rectangle, a circle of a bore, or one whose top is an arch, a circle's
 * segment. */
static void outline(const struct drawing *g, const struct elevation_box *b) {
    const double x = g->x + (double)b->x * g->scale;
    const double y = g->y + (double)b->y * g->scale;
    const double half = (double)b->width * g->scale / 2;
    const double height = (double)b->height * g->scale;
    const double rise = (double)b->rise * g->scale;
    if (b->trait == TRAIT_BORE) {
        cairo_new_sub_path(g->cr);
        cairo_arc(g->cr, x + half, y + half, half, 0, 2 * acos(-1));
        return;
    }
    if (b->rise <= 0) {
        cairo_rectangle(g->cr, x, y, 2 * half, height);
        return;
    }
    const double radius = (half * half + rise * rise) / (2 * rise);
    const double from = atan2(rise - radius, -half);
    const double to = atan2(rise - radius, half);
    cairo_new_sub_path(g->cr);
    cairo_arc(g->cr, x + half, y + radius, radius, from, to);
    cairo_line_to(g->cr, x + 2 * half, y + height);
    cairo_line_to(g->cr, x, y + height);
    cairo_close_path(g->cr);
}

/* Slanted lines in threes across a pane. */
static void hatch(const struct drawing *g, const struct elevation_box *b) {
    const double left = g->x + (double)b->x * g->scale;
    const double top = g->y + (double)b->y * g->scale;
    const double width = (double)b->width * g->scale;
    const double height = (double)b->height * g->scale;
    cairo_save(g->cr);
    outline(g, b);
    cairo_clip(g->cr);
    cairo_set_line_width(g->cr, 0.4);
    cairo_set_source_rgb(g->cr, 0.35, 0.35, 0.35);
    double at = 6;
    for (int i = 0; at < width + height; i++) {
        cairo_move_to(g->cr, left + at, top);
        cairo_line_to(g->cr, left + at - height, top + height);
        at += i % 3 == 2 ? 14.0 : 3.5;
    }
    cairo_stroke(g->cr);
    cairo_restore(g->cr);
}

/* Both diagonals: nothing is there. */
static void cross(const struct drawing *g, const struct elevation_box *b) {
    const double left = g->x + (double)b->x * g->scale;
    const double top = g->y + (double)b->y * g->scale;
    const double right = left + (double)b->width * g->scale;
    const double foot = top + (double)b->height * g->scale;
    cairo_save(g->cr);
    outline(g, b);
    cairo_clip(g->cr);
    cairo_set_line_width(g->cr, 0.4);
    cairo_set_source_rgb(g->cr, 0.35, 0.35, 0.35);
    cairo_move_to(g->cr, left, top);
    cairo_line_to(g->cr, right, foot);
    cairo_move_to(g->cr, right, top);
    cairo_line_to(g->cr, left, foot);
    cairo_stroke(g->cr);
    cairo_restore(g->cr);
}

static void draw_box(const struct drawing *g, const struct elevation_box *b) {
    const struct look_of *const look = &looks[b->trait];
    cairo_save(g->cr);
    if (look->fill >= 0) {
        outline(g, b);
        cairo_set_source_rgb(g->cr, look->fill, look->fill, look->fill);
        cairo_fill(g->cr);
    }
    if (b->trait == TRAIT_GLASS) {
        hatch(g, b);
    } else if (b->trait == TRAIT_OPEN) {
        cross(g, b);
    }
    if (look->dashed) {
        cairo_set_dash(g->cr, (const double[]){2.2, 1.6}, 2, 0);
    }
    outline(g, b);
    cairo_set_line_width(g->cr, look->line);
    cairo_set_source_rgb(g->cr, look->line_gray, look->line_gray, look->line_gray);
    cairo_stroke(g->cr);
    cairo_restore(g->cr);
}

static void draw_stroke(const struct drawing *g, const struct elevation_stroke *s) {
    static const double widths[] = {
        [STROKE_MITER] = 0.6, [STROKE_OPENING] = 0.4, [STROKE_CORNER] = 1.6};
    cairo_save(g->cr);
    cairo_set_line_width(g->cr, widths[s->kind]);
    if (s->kind == STROKE_OPENING) {
        cairo_set_source_rgb(g->cr, 0.35, 0.35, 0.35);
        cairo_set_dash(g->cr, (const double[]){5, 3}, 2, 0);
    }
    cairo_move_to(g->cr, g->x + (double)s->x1 * g->scale, g->y + (double)s->y1 * g->scale);
    cairo_line_to(g->cr, g->x + (double)s->x2 * g->scale, g->y + (double)s->y2 * g->scale);
    cairo_stroke(g->cr);
    cairo_restore(g->cr);
}

/* What lies behind and outside is drawn in full detail only; the miters go over stiles and rails,
 * and the outline over all. */
static void draw_leaf(const struct drawing *g, enum detail detail) {
    const struct elevation *const e = g->e;
    for (size_t i = 0; i < e->box_count; i++) {
        const enum trait trait = e->boxes[i].trait;
        const bool extra = trait == TRAIT_HIDDEN || trait == TRAIT_HINGE || trait == TRAIT_BORE;
        if (detail != DETAIL_SMALL || !extra) {
            draw_box(g, &e->boxes[i]);
        }
    }
    for (size_t i = 0; i < e->stroke_count; i++) {
        draw_stroke(g, &e->strokes[i]);
    }
}

static void draw_note(const struct drawing *g) {
    const struct elevation *const e = g->e;
    const struct elevation_box *widest = NULL;
    for (size_t i = 0; i < e->box_count; i++) {
        const struct elevation_box *const b = &e->boxes[i];
        if (b->trait == e->note_on && (widest == NULL || b->width > widest->width)) {
            widest = b;
        }
    }
    if (e->note == NULL || widest == NULL) {
        return;
    }
    const struct text_style style = {.size = g->letters, .align = ALIGN_CENTER};
    const struct text_box box = text_measure(g->cr, e->note, &style);
    const double middle = g->x + ((double)widest->x + (double)widest->width / 2) * g->scale;
    const double top =
        g->y + ((double)widest->y + (double)widest->height / 2) * g->scale - box.height / 2;
    if (box.width + 4 < (double)widest->width * g->scale &&
        box.height + 2 < (double)widest->height * g->scale) {
        text_draw(g->cr, middle, top, e->note, &style);
    }
}

static double least(double a, double b) {
    return a < b ? a : b;
}

void draw_elevation(cairo_t *cr, const struct elevation *e, struct area area, enum detail detail) {
    struct drawing g = {.cr = cr, .e = e, .letters = detail == DETAIL_WALL ? WALL : USUAL};
    struct size_room room = {.left = 1, .below = 1, .mark = 1};
    const double width = (double)e->width;
    const double height = (double)e->height;
    /* The room depends on the scale and the scale on the room: labels that are turned once the
     * leaf shrinks stay turned, so twice is enough. */
    g.scale = least(area.width / width, area.height / height);
    for (int pass = 0; pass < 3; pass++) {
        if (detail != DETAIL_SMALL) {
            room = draw_dimension_room(&g);
            g.room = &room;
        }
        g.scale = least((area.width - room.left - room.mark) / width,
                        (area.height - room.below - room.mark) / height);
    }
    if (g.scale <= 0) {
        return;
    }
    g.x = area.x + (area.width - room.left - room.mark - width * g.scale) / 2 + room.left;
    g.y = area.y + (area.height - room.below - room.mark - height * g.scale) / 2 + room.mark;
    cairo_save(cr);
    cairo_set_line_join(cr, CAIRO_LINE_JOIN_MITER);
    cairo_set_source_rgb(cr, 0, 0, 0);
    draw_leaf(&g, detail);
    if (g.room != NULL) {
        draw_note(&g);
        draw_dimensions(&g);
    }
    cairo_restore(cr);
}

bool draw_elevation_png(const struct elevation *e, struct image *image, enum detail detail,
                        unsigned char **bytes, size_t *size) {
    draw_elevation(
        image->cr, e,
        (struct area){.x = 2, .y = 2, .width = image->width - 4, .height = image->height - 4},
        detail);
    return image_take(image, bytes, size);
}
