/* SPDX-License-Identifier: MIT */
/* An elevation as SVG: the boxes and strokes that Cairo draws on paper (report/draw/draw.c), with
 * its letters as letters, so that they stay sharp at any size and can be read aloud. What a trait
 * looks like is said in html.css. */
#include "report/html/html.h"

#include <math.h>
#include <string.h>

/* In units of the picture, which are points where it is shown at its own size. */
#define LEAF_WIDE   190.0
#define LEAF_HIGH   210.0
#define LETTER      9.5
#define LETTER_WIDE (0.56 * LETTER) /* digits of common typefaces; a fraction's bar is narrower */
#define GAP         6.0
#define TICK        2.5
#define EDGE        3.0 /* around all */

struct sheet {
    struct html *h;
    const struct elevation *e;
    bool sizes;                /* with what is hidden and the marks of hinges, too */
    size_t dimensions;         /* that are drawn */
    double scale;              /* units a nm */
    double mark;               /* how deep marks of hinges stand out of the leaf */
    double part_wide, part_up; /* room of the labels of parts: beside the leaf, below it */
    double whole_wide;
};

static const char *const classes[] = {
    [TRAIT_LEAF] = "leaf",   [TRAIT_SLAB] = "wood",   [TRAIT_STILE] = "wood",
    [TRAIT_RAIL] = "wood",   [TRAIT_PANEL] = "panel", [TRAIT_RAISED] = "raised",
    [TRAIT_GLASS] = "glass", [TRAIT_BAR] = "wood",    [TRAIT_OPEN] = "open",
    [TRAIT_SLAT] = "slat",   [TRAIT_HIDDEN] = "hid",  [TRAIT_HINGE] = "hinge",
    [TRAIT_BORE] = "hid",
};
static const char *const strokes[] = {
    [STROKE_MITER] = "miter", [STROKE_OPENING] = "opening", [STROKE_CORNER] = "corner"};

static double label_wide(const struct elevation *e, const struct elevation_dimension *d) {
    char text[32];
    return (double)strlen(length_show(d->to - d->from, e->unit, text, sizeof text)) * LETTER_WIDE;
}

/* A label wider than what it measures stands upright. */
static bool is_turned(const struct sheet *s, const struct elevation_dimension *d) {
    return !d->whole && label_wide(s->e, d) + 2 * TICK > (double)(d->to - d->from) * s->scale;
}

static void measure(struct sheet *s) {
    const struct elevation *const e = s->e;
    for (size_t i = 0; i < e->box_count; i++) {
        const struct elevation_box *const b = &e->boxes[i];
        const double out = b->trait != TRAIT_HINGE ? 0
                           : e->edge == EDGE_LEFT || e->edge == EDGE_RIGHT
                               ? (double)b->width * s->scale
                               : (double)b->height * s->scale;
        s->mark = out > s->mark ? out : s->mark;
    }
    for (size_t i = 0; i < s->dimensions; i++) {
        const struct elevation_dimension *const d = &e->dimensions[i];
        const double wide = label_wide(e, d);
        double *const most = !d->upright ? &s->part_up : d->whole ? &s->whole_wide : &s->part_wide;
        const double need = d->upright || is_turned(s, d) ? wide : LETTER;
        *most = (d->upright || !d->whole) && need > *most ? need : *most;
    }
}

static void put_box(const struct sheet *s, const struct elevation_box *b) {
    const double x = (double)b->x * s->scale;
    const double y = (double)b->y * s->scale;
    const double w = (double)b->width * s->scale;
    const double h = (double)b->height * s->scale;
    const double rise = (double)b->rise * s->scale;
    const char *const class = classes[b->trait];
    if (b->trait == TRAIT_BORE) {
        html_format(s->h, "<circle class=\"%s\" cx=\"%.1f\" cy=\"%.1f\" r=\"%.1f\"/>", class,
                    x + w / 2, y + h / 2, w / 2);
    } else if (b->rise > 0) {
        const double radius = (w * w / 4 + rise * rise) / (2 * rise);
        html_format(s->h,
                    "<path class=\"%s\" d=\"M%.1f %.1fA%.1f %.1f 0 0 1 %.1f %.1fV%.1fH%.1fZ\"/>",
                    class, x, y + rise, radius, radius, x + w, y + rise, y + h, x);
    } else {
        html_format(s->h,
                    "<rect class=\"%s\" x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%.1f\"/>",
                    class, x, y, w, h);
    }
    if (b->trait == TRAIT_OPEN) {
        html_format(s->h,
                    "<path class=\"opening\" d=\"M%.1f %.1fl%.1f %.1fM%.1f %.1fl%.1f %.1f\"/>", x,
                    y + rise, w, h - rise, x + w, y + rise, -w, h - rise);
    } else if (b->trait == TRAIT_GLASS) { /* the sign of glass: three slanted lines */
        const double run = (w < h ? w : h) * 0.35;
        for (int i = 0; i < 3; i++) {
            const double at = x + w / 2 - run / 2 + (i - 1) * 4.0;
            html_format(s->h, "<path class=\"shine\" d=\"M%.1f %.1fl%.1f %.1f\"/>", at,
                        y + h / 2 + run / 2, run, -run);
        }
    }
}

static void put_label(const struct sheet *s, double x, double y, const char *class, bool turned,
                      const char *text) {
    html_format(s->h, "<text class=\"%s\" ", class);
    if (turned) {
        html_format(s->h, "transform=\"translate(%.1f %.1f)rotate(-90)\">", x, y);
    } else {
        html_format(s->h, "x=\"%.1f\" y=\"%.1f\">", x, y);
    }
    html_text(s->h, text);
    html_put(s->h, "</text>");
}

static void put_upright(const struct sheet *s, const struct elevation_dimension *d) {
    const double near = -s->mark - GAP;
    const double x = d->whole && s->part_wide > 0 ? near - s->part_wide - GAP - 2 * TICK : near;
    const double from = (double)d->from * s->scale;
    const double to = (double)d->to * s->scale;
    char text[32];
    html_format(s->h, "<path class=\"dim\" d=\"M%.1f %.1fV%.1fM%.1f %.1fh%.1fM%.1f %.1fh%.1f\"/>",
                x, from, to, x - TICK, from, 2 * TICK, x - TICK, to, 2 * TICK);
    put_label(s, x - TICK - 1.5, (from + to) / 2 + LETTER * 0.35, "end", false,
              length_show(d->to - d->from, s->e->unit, text, sizeof text));
}

static void put_level(const struct sheet *s, const struct elevation_dimension *d) {
    const double near = (double)s->e->height * s->scale + s->mark + GAP;
    const double y = d->whole && s->part_up > 0 ? near + s->part_up + GAP + TICK : near;
    const double from = (double)d->from * s->scale;
    const double to = (double)d->to * s->scale;
    const bool turned = is_turned(s, d);
    char text[32];
    html_format(s->h, "<path class=\"dim\" d=\"M%.1f %.1fH%.1fM%.1f %.1fv%.1fM%.1f %.1fv%.1f\"/>",
                from, y, to, from, y - TICK, 2 * TICK, to, y - TICK, 2 * TICK);
    put_label(s, (from + to) / 2 + (turned ? LETTER * 0.35 : 0), y + TICK + (turned ? 2 : LETTER),
              turned ? "end" : "mid", turned,
              length_show(d->to - d->from, s->e->unit, text, sizeof text));
}

static void put_note(const struct sheet *s) {
    const struct elevation_box *widest = NULL;
    for (size_t i = 0; i < s->e->box_count; i++) {
        const struct elevation_box *const b = &s->e->boxes[i];
        if (b->trait == s->e->note_on && (widest == NULL || b->width > widest->width)) {
            widest = b;
        }
    }
    if (s->e->note != NULL && widest != NULL &&
        (double)strlen(s->e->note) * LETTER_WIDE < (double)widest->width * s->scale) {
        put_label(s, ((double)widest->x + (double)widest->width / 2) * s->scale,
                  ((double)widest->y + (double)widest->height / 2) * s->scale, "mid", false,
                  s->e->note);
    }
}

static void put_all(const struct sheet *s) {
    const struct elevation *const e = s->e;
    for (size_t i = 0; i < e->box_count; i++) {
        const enum trait trait = e->boxes[i].trait;
        if (s->sizes || (trait != TRAIT_HIDDEN && trait != TRAIT_HINGE && trait != TRAIT_BORE)) {
            put_box(s, &e->boxes[i]);
        }
    }
    for (size_t i = 0; i < e->stroke_count; i++) {
        const struct elevation_stroke *const l = &e->strokes[i];
        html_format(s->h, "<path class=\"%s\" d=\"M%.1f %.1fL%.1f %.1f\"/>", strokes[l->kind],
                    (double)l->x1 * s->scale, (double)l->y1 * s->scale, (double)l->x2 * s->scale,
                    (double)l->y2 * s->scale);
    }
    for (size_t i = 0; i < s->dimensions; i++) {
        if (e->dimensions[i].upright) {
            put_upright(s, &e->dimensions[i]);
        } else {
            put_level(s, &e->dimensions[i]);
        }
    }
    put_note(s);
}

void html_drawing(struct html *h, const struct elevation *e, bool sizes, const char *words) {
    struct sheet s = {.h = h, .e = e, .sizes = sizes, .dimensions = sizes ? e->dimension_count : 0};
    s.scale = LEAF_WIDE / (double)e->width;
    const double high = LEAF_HIGH / (double)e->height;
    s.scale = high < s.scale ? high : s.scale;
    measure(&s);
    const double left = s.mark + GAP + TICK + s.whole_wide + 2 +
                        (s.part_wide > 0 ? s.part_wide + GAP + 2 * TICK : 0) + EDGE;
    const double below =
        s.mark + GAP + TICK + LETTER + 3 + (s.part_up > 0 ? s.part_up + GAP + TICK : 0) + EDGE;
    const double wide = (double)e->width * s.scale + left + s.mark + EDGE;
    const double tall = (double)e->height * s.scale + s.mark + EDGE + below;
    html_format(h,
                "<svg class=\"door\" role=\"img\" viewBox=\"%.1f %.1f %.1f %.1f\" "
                "width=\"%.0f\" height=\"%.0f\" aria-label=\"",
                -left, -s.mark - EDGE, wide, tall, wide, tall);
    html_text(h, words);
    html_put(h, "\">");
    put_all(&s);
    html_put(h, "</svg>\n");
}
