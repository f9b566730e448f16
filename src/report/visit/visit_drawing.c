/* SPDX-License-Identifier: MIT */
/* Three openings seen from the front: a door laid on, a pair, a door set in. The opening is gray,
 * doors are dashed with lines that meet at the hinged edge, as on the other drawings. */
#include "report/draw/draw.h"
#include "report/draw/tag.h"
#include "report/visit/visit_parts.h"

#define HIGH      131.0 /* of all */
#define HEAD      15.0
#define OPEN_LEFT 48.0 /* of the opening in its figure */
#define OPEN_TOP  14.0
#define OPEN_WIDE 82.0
#define OPEN_HIGH 66.0
#define OVER      8.0 /* of an overlay as drawn */
#define CLEAR     5.0 /* of a reveal */
#define OUTSIDE   9.0 /* from door to dimension */
#define TICK      3.0

static void line(cairo_t *cr, double x1, double y1, double x2, double y2) {
    cairo_move_to(cr, x1, y1);
    cairo_line_to(cr, x2, y2);
    cairo_stroke(cr);
}

static void words(cairo_t *cr, double x, double y, const char *text, enum text_align align) {
    const struct text_style style = {.size = VISIT_SMALL, .align = align};
    (void)text_draw(cr, x, y, text, &style);
}

static void draw_box(cairo_t *cr, struct area a, bool filled) {
    cairo_rectangle(cr, a.x, a.y, a.width, a.height);
    if (filled) {
        cairo_set_source_rgb(cr, 0.88, 0.88, 0.88);
        cairo_fill_preserve(cr);
        cairo_set_source_rgb(cr, 0, 0, 0);
    }
    cairo_set_line_width(cr, 1);
    cairo_stroke(cr);
}

/* A leaf, its hinges on one side. */
static void draw_leaf(cairo_t *cr, struct area a, bool left) {
    static const double dash[] = {3, 2};
    const double hung = left ? a.x : a.x + a.width;
    const double free_edge = left ? a.x + a.width : a.x;
    cairo_save(cr);
    cairo_set_line_width(cr, 0.7);
    cairo_set_dash(cr, dash, 2, 0);
    cairo_rectangle(cr, a.x, a.y, a.width, a.height);
    cairo_stroke(cr);
    cairo_set_line_width(cr, 0.4);
    line(cr, free_edge, a.y, hung, a.y + a.height / 2);
    line(cr, free_edge, a.y + a.height, hung, a.y + a.height / 2);
    cairo_restore(cr);
    cairo_rectangle(cr, hung - 1.5, a.y + a.height * 0.15, 3, 8);
    cairo_rectangle(cr, hung - 1.5, a.y + a.height * 0.85 - 8, 3, 8);
    cairo_fill(cr);
}

/* Width below and height beside what is measured, outside of all. */
static void draw_sizes(cairo_t *cr, struct area of, struct area all) {
    const double y = all.y + all.height + OUTSIDE;
    const double x = all.x - OUTSIDE;
    cairo_set_line_width(cr, 0.6);
    line(cr, of.x, y, of.x + of.width, y);
    line(cr, x, of.y, x, of.y + of.height);
    cairo_set_line_width(cr, 0.3);
    line(cr, of.x, of.y + of.height, of.x, y + TICK);
    line(cr, of.x + of.width, of.y + of.height, of.x + of.width, y + TICK);
    line(cr, of.x, of.y, x - TICK, of.y);
    line(cr, of.x, of.y + of.height, x - TICK, of.y + of.height);
    words(cr, of.x + of.width / 2, y + 2, "width", ALIGN_CENTER);
    words(cr, x - 4, of.y + of.height / 2 - 5, "height", ALIGN_RIGHT);
}

/* What lies between two upright edges, told at their right. */
static void draw_between(cairo_t *cr, double left, double right, double y, const char *text) {
    cairo_set_line_width(cr, 1.2);
    line(cr, left, y, right, y);
    cairo_set_line_width(cr, 0.3);
    line(cr, right, y, right + 6, y);
    words(cr, right + 8, y - 5, text, ALIGN_LEFT);
}

static struct area grown(struct area a, double by) {
    return (struct area){a.x - by, a.y - by, a.width + 2 * by, a.height + 2 * by};
}

static void draw_overlay(cairo_t *cr, struct area open, bool of_door) {
    const struct area door = grown(open, OVER);
    draw_box(cr, open, true);
    draw_leaf(cr, door, true);
    draw_sizes(cr, of_door ? door : open, door);
    draw_between(cr, open.x + open.width, door.x + door.width, open.y + open.height / 4, "overlay");
}

static void draw_pair(cairo_t *cr, struct area open, bool of_door) {
    const struct area both = grown(open, OVER);
    struct area leaf = both;
    leaf.width = (both.width - CLEAR) / 2;
    struct area right = leaf;
    right.x += leaf.width + CLEAR;
    draw_box(cr, open, true);
    draw_leaf(cr, leaf, true);
    draw_leaf(cr, right, false);
    draw_sizes(cr, of_door ? leaf : open, both);
    cairo_set_line_width(cr, 0.3);
    line(cr, leaf.x + leaf.width + CLEAR / 2, both.y + 6, both.x + both.width + 6, both.y + 6);
    words(cr, both.x + both.width + 8, both.y + 1, "gap", ALIGN_LEFT);
}

static void draw_inset(cairo_t *cr, struct area open, bool of_door) {
    const struct area door = grown(open, -CLEAR);
    draw_box(cr, open, true);
    draw_leaf(cr, door, false);
    draw_sizes(cr, of_door ? door : open, open);
    draw_between(cr, door.x + door.width, open.x + open.width, open.y + open.height * 0.4,
                 "reveal");
}

void visit_draw(struct flow *f, bool of_door) {
    static const struct {
        const char *head;
        void (*draw)(cairo_t *cr, struct area open, bool of_door);
    } figures[] = {{"Laid on; hinge side left", draw_overlay},
                   {"Pair: leaves 2, hinge side pair", draw_pair},
                   {"Set in; hinge side right", draw_inset}};
    const double each = f->width / 3;
    cairo_t *const cr = f->pdf->cr;
    (void)flow_need(f, HIGH);
    for (size_t i = 0; i < 3; i++) {
        const double x = f->x + (double)i * each;
        const struct text_style head = {.size = VISIT_TEXT, .bold = true, .width = each - 6};
        tag_text(cr, "P", x, f->y, figures[i].head, &head);
        cairo_save(cr);
        cairo_set_source_rgb(cr, 0, 0, 0);
        tag_begin(cr, "Figure");
        figures[i].draw(cr,
                        (struct area){x + OPEN_LEFT, f->y + HEAD + OPEN_TOP, OPEN_WIDE, OPEN_HIGH},
                        of_door);
        tag_end(cr, "Figure");
        cairo_restore(cr);
    }
    f->y += HIGH;
}
