/* SPDX-License-Identifier: MIT */
/* What drawings of boards and of sheets share: fills, dimensions, grain. */
#include "report/plan/plan_draw.h"

#include <math.h>

#define HATCH       4.0
#define HATCH_WIDTH 0.35
#define KERF_LEAST  0.9
#define WORDS       8.0

/* Thin, and no thinner than a dot where there are dots: thinner ones are lost between them. */
static double hatch_width(cairo_t *cr) {
    double dot = 1;
    double none = 0;
    cairo_device_to_user_distance(cr, &dot, &none);
    const bool dots = cairo_surface_get_type(cairo_get_target(cr)) == CAIRO_SURFACE_TYPE_IMAGE;
    return dots && dot > HATCH_WIDTH ? dot : HATCH_WIDTH;
}

static void hatch(cairo_t *cr, struct patch p, bool crossed) {
    cairo_save(cr);
    cairo_rectangle(cr, p.x, p.y, p.width, p.height);
    cairo_clip(cr);
    cairo_set_line_width(cr, hatch_width(cr));
    cairo_set_antialias(cr, CAIRO_ANTIALIAS_NONE); /* many, and each at half a right angle */
    cairo_set_source_rgb(cr, 0.45, 0.45, 0.45);
    const size_t lines = (size_t)((p.width + p.height) / HATCH + 0.5);
    for (size_t i = 0; i < lines; i++) {
        const double at = HATCH / 2 + HATCH * (double)i;
        cairo_move_to(cr, p.x + at, p.y);
        cairo_line_to(cr, p.x + at - p.height, p.y + p.height);
        if (crossed) {
            cairo_move_to(cr, p.x + p.width - at, p.y);
            cairo_line_to(cr, p.x + p.width - at + p.height, p.y + p.height);
        }
    }
    cairo_stroke(cr);
    cairo_restore(cr);
}

void sketch_fill(const struct sketch *s, struct patch p, enum tone tone) {
    static const double grays[] = {
        [TONE_PART] = 1, [TONE_OFFCUT] = 0.9, [TONE_RESERVE] = 1, [TONE_TRIM] = 1, [TONE_KERF] = 0};
    cairo_t *const cr = s->cr;
    if (tone == TONE_KERF) {
        p.width = p.width < KERF_LEAST ? KERF_LEAST : p.width;
        p.height = p.height < KERF_LEAST ? KERF_LEAST : p.height;
    }
    cairo_save(cr);
    cairo_set_source_rgb(cr, grays[tone], grays[tone], grays[tone]);
    cairo_rectangle(cr, p.x, p.y, p.width, p.height);
    cairo_fill(cr);
    if (tone == TONE_RESERVE || tone == TONE_TRIM) {
        hatch(cr, p, tone == TONE_TRIM);
    }
    if (tone != TONE_KERF) {
        cairo_rectangle(cr, p.x, p.y, p.width, p.height);
        cairo_set_source_rgb(cr, 0, 0, 0);
        cairo_set_line_width(cr, tone == TONE_PART ? 0.7 : 0.4);
        if (tone == TONE_OFFCUT) {
            cairo_set_dash(cr, (const double[]){3, 2}, 2, 0);
        }
        cairo_stroke(cr);
    }
    cairo_restore(cr);
}

/* --- dimensions, grain --- */

static void arrow(cairo_t *cr, double x, double y, double angle) {
    cairo_save(cr);
    cairo_translate(cr, x, y);
    cairo_rotate(cr, angle);
    cairo_move_to(cr, 0, 0);
    cairo_line_to(cr, -6, -2);
    cairo_line_to(cr, -6, 2);
    cairo_close_path(cr);
    cairo_fill(cr);
    cairo_restore(cr);
}

void sketch_dimension(const struct sketch *s, double x, double y, double run, bool upright,
                      const char *words) {
    const struct text_style style = {.size = WORDS, .align = ALIGN_CENTER};
    const struct text_box box = text_measure(s->cr, words, &style);
    cairo_t *const cr = s->cr;
    cairo_save(cr);
    cairo_translate(cr, x, y);
    if (upright) {
        cairo_rotate(cr, M_PI_2);
    }
    cairo_set_source_rgb(cr, 0, 0, 0);
    cairo_set_line_width(cr, 0.5);
    cairo_move_to(cr, 0, 0);
    cairo_line_to(cr, run, 0);
    cairo_stroke(cr);
    arrow(cr, run, 0, 0);
    arrow(cr, 0, 0, M_PI);
    cairo_set_source_rgb(cr, 1, 1, 1);
    cairo_rectangle(cr, run / 2 - box.width / 2 - 4, -box.height / 2, box.width + 8, box.height);
    cairo_fill(cr);
    text_draw(cr, run / 2, -box.height / 2, words, &style);
    cairo_restore(cr);
}

void sketch_grain(const struct sketch *s, double x, double y, bool grain) {
    const struct text_style style = {.size = WORDS};
    const struct text_box box = text_measure(s->cr, grain ? "grain" : "no grain", &style);
    text_draw(s->cr, x, y - box.height / 2, grain ? "grain" : "no grain", &style);
    if (grain) {
        const double from = x + box.width + 5;
        cairo_save(s->cr);
        cairo_set_source_rgb(s->cr, 0, 0, 0);
        cairo_set_line_width(s->cr, 1);
        cairo_move_to(s->cr, from, y);
        cairo_line_to(s->cr, from + 30, y);
        cairo_stroke(s->cr);
        arrow(s->cr, from + 36, y, 0);
        arrow(s->cr, from - 2, y, M_PI);
        cairo_restore(s->cr);
    }
}
