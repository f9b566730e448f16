/* SPDX-License-Identifier: MIT */
#include "report/plan/plan_draw.h"

#include "base/text.h"

#include <math.h>
#include <stdio.h>

#define SMALLEST 4.8 /* letters that can still be read at the saw */
#define HATCH    4.0
#define NUMBER   5.5 /* half the number of a cut, in its circle */

struct patch sketch_patch(const struct sketch *s, int64_t x, int64_t y, int64_t along,
                          int64_t across) {
    return (struct patch){.x = s->x + (double)x * s->along,
                          .y = s->y + (double)y * s->across,
                          .width = (double)along * s->along,
                          .height = (double)across * s->across};
}

/* --- fills --- */

static void hatch(cairo_t *cr, struct patch p, bool crossed) {
    cairo_save(cr);
    cairo_rectangle(cr, p.x, p.y, p.width, p.height);
    cairo_clip(cr);
    cairo_set_line_width(cr, 0.35);
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

/* --- words --- */

/* The size at which both lines fit into width x height; 0: none is legible. */
static double fitting(const struct sketch *s, double width, double height, double size,
                      const char *name, const char *more) {
    while (size >= SMALLEST) {
        const struct text_style bold = {.size = size, .bold = true};
        const struct text_style plain = {.size = size};
        const struct text_box top = text_measure(s->cr, name, &bold);
        const struct text_box low = text_measure(s->cr, more, &plain);
        const double wide = top.width > low.width ? top.width : low.width;
        const double high = (name[0] == '\0' ? 0 : top.height) + (more[0] == '\0' ? 0 : low.height);
        if (wide <= width - 3 && high <= height - 1.5) {
            return size;
        }
        size -= 0.4;
    }
    return 0;
}

struct patch sketch_inside(struct patch p) {
    if (p.width > 40) {
        p.x += NUMBER;
        p.width -= 2 * NUMBER;
    } else if (p.height > 40) {
        p.y += 2 * NUMBER + 2;
        p.height -= 2 * NUMBER + 2;
    }
    if (p.height > 30) {
        p.y += NUMBER;
        p.height -= 2 * NUMBER;
    }
    return p;
}

void sketch_label(const struct sketch *s, struct patch p, double size, const char *name,
                  const char *more) {
    cairo_t *const cr = s->cr;
    const double flat = fitting(s, p.width, p.height, size, name, more);
    const double turned = fitting(s, p.height, p.width, size, name, more);
    const double chosen = flat >= SMALLEST && flat >= turned - 2 ? flat : turned;
    if (chosen <= 0) {
        return;
    }
    const struct text_style bold = {.size = chosen, .bold = true, .align = ALIGN_CENTER};
    const struct text_style plain = {.size = chosen, .align = ALIGN_CENTER};
    const double top = name[0] == '\0' ? 0 : text_measure(cr, name, &bold).height;
    const double low = more[0] == '\0' ? 0 : text_measure(cr, more, &plain).height;
    cairo_save(cr);
    cairo_translate(cr, p.x + p.width / 2, p.y + p.height / 2);
    if (chosen > flat || flat < turned - 2) {
        cairo_rotate(cr, -M_PI_2);
    }
    if (name[0] != '\0') {
        text_draw(cr, 0, -(top + low) / 2, name, &bold);
    }
    if (more[0] != '\0') {
        text_draw(cr, 0, (top - low) / 2, more, &plain);
    }
    cairo_restore(cr);
}

void sketch_number(const struct sketch *s, double x, double y, size_t number) {
    char text[16];
    (void)snprintf(text, sizeof text, "%zu", number);
    const struct text_style style = {
        .size = number < 100 ? 6.4 : 5.2, .bold = true, .align = ALIGN_CENTER};
    const double high = text_measure(s->cr, text, &style).height;
    cairo_save(s->cr);
    cairo_new_path(s->cr);
    cairo_arc(s->cr, x, y, 5.2, 0, 2 * M_PI);
    cairo_set_source_rgb(s->cr, 1, 1, 1);
    cairo_fill_preserve(s->cr);
    cairo_set_source_rgb(s->cr, 0, 0, 0);
    cairo_set_line_width(s->cr, 0.6);
    cairo_stroke(s->cr);
    text_draw(s->cr, x, y - high / 2, text, &style);
    cairo_restore(s->cr);
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
    const struct text_style style = {.size = 9, .align = ALIGN_CENTER};
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
    const struct text_style style = {.size = 9};
    const struct text_box box = text_measure(s->cr, grain ? "grain" : "no grain", &style);
    text_draw(s->cr, x, y - box.height / 2, grain ? "grain" : "no grain", &style);
    if (grain) {
        const double from = x + box.width + 5;
        cairo_save(s->cr);
        cairo_set_source_rgb(s->cr, 0, 0, 0);
        cairo_set_line_width(s->cr, 1);
        cairo_move_to(s->cr, from, y);
        cairo_line_to(s->cr, from + 54, y);
        cairo_stroke(s->cr);
        arrow(s->cr, from + 60, y, 0);
        arrow(s->cr, from - 2, y, M_PI);
        cairo_restore(s->cr);
    }
}

/* --- the list of cuts --- */

#define COLUMN_GAP 12.0

/* How many columns of lines `high` fit, by the widest line. */
static size_t columns_of(const struct sketch *s, struct patch p, const struct cut_step *steps,
                         size_t count, double size) {
    double wide = 1;
    for (size_t i = 0; i < count; i++) {
        const struct text_style l = {.size = size, .bold = steps[i].heading};
        const double w = text_measure(s->cr, text_or_empty(steps[i].text), &l).width;
        wide = w > wide ? w : wide;
    }
    const double fit = (p.width + COLUMN_GAP) / (wide + COLUMN_GAP);
    return fit < 1 ? 1 : (size_t)fit;
}

struct step_place {
    size_t column, line;
};

/* The place after `at` for a step: a heading does not stand at the foot of a column, parted from
 * what it heads. */
static struct step_place place_next(struct step_place at, const struct cut_step *step, bool last,
                                    size_t lines) {
    const bool stranded = step->heading && !last && lines > 1 && at.line + 1 == lines;
    return at.line >= lines || stranded ? (struct step_place){.column = at.column + 1} : at;
}

/* How many columns the steps take. */
static size_t columns_needed(const struct cut_step *steps, size_t count, size_t lines) {
    struct step_place at = {0};
    for (size_t i = 0; i < count; i++) {
        at = place_next(at, &steps[i], i + 1 == count, lines);
        at.line++;
    }
    return at.column + 1;
}

void sketch_steps(const struct sketch *s, struct patch p, const struct cut_step *steps,
                  size_t count) {
    double size = 11;
    size_t columns = 1;
    size_t lines = 1;
    for (;;) {
        lines = (size_t)(p.height / (size * 1.3));
        columns = columns_of(s, p, steps, count, size);
        if (size <= SMALLEST || (lines > 0 && columns_needed(steps, count, lines) <= columns)) {
            break;
        }
        size -= 0.3;
    }
    if (lines == 0) {
        return;
    }
    /* as many columns as are needed, evenly long and evenly wide */
    const size_t needed = columns_needed(steps, count, lines);
    while (lines > 1 && columns_needed(steps, count, lines - 1) <= needed) {
        lines--;
    }
    const size_t spread = needed > 3 ? needed : 3;
    const double step = (p.width + COLUMN_GAP) / (double)(spread < columns ? spread : columns);
    struct step_place at = {0};
    for (size_t i = 0; i < count; i++) {
        const struct text_style l = {.size = size, .bold = steps[i].heading};
        at = place_next(at, &steps[i], i + 1 == count, lines);
        text_draw(s->cr, p.x + (double)at.column * step, p.y + (double)at.line * size * 1.3,
                  text_or_empty(steps[i].text), &l);
        at.line++;
    }
}
