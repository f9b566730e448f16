/* SPDX-License-Identifier: MIT */
/* Dimensions: a chain of the parts next to the leaf, the leaf itself outside it.  Beside the leaf
 * the labels stand left of their line; below it they hang under it, turned upright where one would
 * be wider than its part. */
#include "report/draw/draw_parts.h"
#include "report/type/text_style.h"

#define LABEL_DEEP 1.25 /* of its letters */
#define FIRST_GAP  7.0  /* from leaf or hinge marks to the inner chain */
#define LABEL_GAP  4.4  /* past the ticks */
#define CHAIN_GAP  5.0
#define TICK       2.2
#define LINE       0.4

static const char *label_of(const struct elevation *e, const struct elevation_dimension *d,
                            char *text, size_t size) {
    return length_show(d->to - d->from, e->unit, text, size);
}

/* A label wider than what it measures stands upright. */
static bool is_turned(const struct elevation_dimension *d, double width, double scale) {
    return !d->whole && width + 3 * TICK > (double)(d->to - d->from) * scale;
}

/* Whether two parts above each other are so low that their labels would meet. */
static bool labels_meet(const struct drawing *g) {
    const struct elevation *const e = g->e;
    double last = -1e30;
    for (size_t i = 0; i < e->dimension_count; i++) {
        const struct elevation_dimension *const d = &e->dimensions[i];
        if (d->upright && !d->whole) {
            const double middle = (double)(d->from + d->to) / 2 * g->scale;
            if (middle - last < LABEL_DEEP * g->letters) {
                return true;
            }
            last = middle;
        }
    }
    return false;
}

struct size_room draw_dimension_room(const struct drawing *g) {
    const struct elevation *const e = g->e;
    const struct text_style style = {.size = g->letters};
    const double deep_label = LABEL_DEEP * g->letters;
    struct size_room room = {.mark = FIRST_GAP};
    bool parts_below = false;
    for (size_t i = 0; i < e->box_count; i++) {
        if (e->boxes[i].trait == TRAIT_HINGE) {
            const double deep =
                (double)(e->edge == EDGE_LEFT || e->edge == EDGE_RIGHT ? e->boxes[i].width
                                                                       : e->boxes[i].height);
            room.mark = deep * g->scale + FIRST_GAP;
        }
    }
    room.staggered = labels_meet(g);
    for (size_t i = 0; i < e->dimension_count; i++) {
        const struct elevation_dimension *const d = &e->dimensions[i];
        char text[32];
        const double width = text_measure(g->cr, label_of(e, d, text, sizeof text), &style).width;
        if (d->upright) {
            double *const most = d->whole ? &room.whole_width : &room.part_width;
            *most = width > *most ? width : *most;
        } else if (!d->whole) {
            parts_below = true;
            const double depth = is_turned(d, width, g->scale) ? width : deep_label;
            room.below_part = depth > room.below_part ? depth : room.below_part;
        }
    }
    if (room.staggered) {
        room.part_width = 2 * room.part_width + LABEL_GAP;
    }
    room.left = room.mark + LABEL_GAP + room.whole_width +
                (room.part_width > 0 ? room.part_width + LABEL_GAP + CHAIN_GAP : 0);
    room.below = room.mark + LABEL_GAP + deep_label +
                 (parts_below ? room.below_part + LABEL_GAP + CHAIN_GAP : 0);
    return room;
}

static void tick(cairo_t *cr, double x, double y) {
    cairo_set_line_width(cr, 2 * LINE);
    cairo_move_to(cr, x - TICK, y + TICK);
    cairo_line_to(cr, x + TICK, y - TICK);
    cairo_stroke(cr);
    cairo_set_line_width(cr, LINE);
}

static void line(cairo_t *cr, double x1, double y1, double x2, double y2) {
    cairo_move_to(cr, x1, y1);
    cairo_line_to(cr, x2, y2);
    cairo_stroke(cr);
}

/* A label on white, as lines of the leaf may pass below it. */
static void write_label(const struct drawing *g, double x, double y, struct text_box box,
                        const char *text, const struct text_style *style) {
    cairo_save(g->cr);
    cairo_set_source_rgb(g->cr, 1, 1, 1);
    cairo_rectangle(g->cr, x - box.width - 1, y, box.width + 2, box.height);
    cairo_fill(g->cr);
    cairo_restore(g->cr);
    text_draw(g->cr, x, y, text, style);
}

/* Where the labels of parts would meet, every second one stands farther out. */
static void draw_upright(const struct drawing *g, const struct elevation_dimension *d, bool out) {
    const struct size_room *const room = g->room;
    const double inner = g->x - room->mark;
    const double outer =
        inner - (room->part_width > 0 ? LABEL_GAP + room->part_width + CHAIN_GAP : 0);
    const double x = d->whole ? outer : inner;
    const double from = g->y + (double)d->from * g->scale;
    const double to = g->y + (double)d->to * g->scale;
    char text[32];
    line(g->cr, x - TICK, from, g->x - 2, from);
    line(g->cr, x - TICK, to, g->x - 2, to);
    line(g->cr, x, from, x, to);
    tick(g->cr, x, from);
    tick(g->cr, x, to);
    struct text_style style = {.size = g->letters};
    style.align = ALIGN_RIGHT;
    (void)label_of(g->e, d, text, sizeof text);
    const struct text_box box = text_measure(g->cr, text, &style);
    const double aside = out ? (room->part_width - LABEL_GAP) / 2 + LABEL_GAP : 0;
    write_label(g, x - LABEL_GAP - aside, (from + to - box.height) / 2, box, text, &style);
}

static void draw_level(const struct drawing *g, const struct elevation_dimension *d) {
    const struct size_room *const room = g->room;
    const double foot = g->y + (double)g->e->height * g->scale;
    const bool parts = room->part_width > 0;
    const double inner = foot + room->mark;
    const double outer = inner + (parts ? LABEL_GAP + room->below_part + CHAIN_GAP : 0);
    const double y = d->whole ? outer : inner;
    const double from = g->x + (double)d->from * g->scale;
    const double to = g->x + (double)d->to * g->scale;
    struct text_style style = {.size = g->letters};
    char text[32];
    line(g->cr, from, foot + 2, from, y + TICK);
    line(g->cr, to, foot + 2, to, y + TICK);
    line(g->cr, from, y, to, y);
    tick(g->cr, from, y);
    tick(g->cr, to, y);
    (void)label_of(g->e, d, text, sizeof text);
    const struct text_box box = text_measure(g->cr, text, &style);
    if (!is_turned(d, box.width, g->scale)) {
        style.align = ALIGN_CENTER;
        text_draw(g->cr, (from + to) / 2, y + TICK, text, &style);
        return;
    }
    cairo_save(g->cr);
    cairo_translate(g->cr, (from + to - box.height) / 2, y + LABEL_GAP + box.width);
    cairo_rotate(g->cr, -1.5707963267948966);
    text_draw(g->cr, 0, 0, text, &style);
    cairo_restore(g->cr);
}

void draw_dimensions(const struct drawing *g) {
    cairo_save(g->cr);
    cairo_set_source_rgb(g->cr, 0.2, 0.2, 0.2);
    cairo_set_line_width(g->cr, LINE);
    /* the leaf's own lines first, the labels of its parts over them */
    for (int whole = 1; whole >= 0; whole--) {
        size_t upright = 0;
        for (size_t i = 0; i < g->e->dimension_count; i++) {
            const struct elevation_dimension *const d = &g->e->dimensions[i];
            if (d->whole != (whole == 1)) {
                continue;
            }
            if (d->upright) {
                draw_upright(g, d, g->room->staggered && !d->whole && upright++ % 2 == 1);
            } else {
                draw_level(g, d);
            }
        }
    }
    cairo_restore(g->cr);
}
