/* SPDX-License-Identifier: MIT */
/* Rows to write in. Their columns are those of the door list, so that it is typed as it stands. */
#include "report/draw/tag.h"
#include "report/visit/visit_parts.h"

#include <stdio.h>

#define HEAD_HIGH 24.0
#define ROW_HIGH  27.0
#define INSET     3.0

/* One that a page may have, in points; the note takes what is left, 60 and more on A4. */
struct column {
    const char *name;
    double width;
    bool size;                            /* the unit stands below its name */
    bool (*wanted)(const struct visit *); /* NULL: always */
};

/* Among so many sections of a kind a row has to choose. */
static bool chooses(size_t count) {
    return count > 1;
}

bool visit_has_style(const struct visit *v) {
    return v->rates == NULL || chooses(v->rates->style_count);
}

bool visit_has_finish(const struct visit *v) {
    return v->rates != NULL && chooses(v->rates->finish_count);
}

bool visit_has_glass(const struct visit *v) {
    return v->rates != NULL && chooses(v->rates->glass_count);
}

static const struct column columns[] = {
    {"", 16, false, NULL},
    {"id", 28, false, NULL},
    {"room", 46, false, NULL},
    {"use", 46, false, NULL},
    {"count", 32, false, NULL},
    {"width", 50, true, NULL},
    {"height", 50, true, NULL},
    {"leaves", 36, false, NULL},
    {"hinge side", 32, false, NULL},
    {"style", 48, false, visit_has_style},
    {"finish", 42, false, visit_has_finish},
    {"glass", 36, false, visit_has_glass},
};
#define COLUMNS (sizeof columns / sizeof *columns)

/* Those that a sheet has, with their left edges; the note comes last. */
struct layout {
    const struct column *columns[COLUMNS + 1];
    double left[COLUMNS + 2];
    size_t count;
};

static void lay_out(struct layout *l, const struct visit *v, const struct flow *f) {
    static const struct column note = {"note", 0, false, NULL};
    double x = f->x;
    *l = (struct layout){0};
    for (size_t i = 0; i < COLUMNS; i++) {
        const struct column *const c = &columns[i];
        if (c->wanted != NULL && !c->wanted(v)) {
            continue;
        }
        l->columns[l->count] = c;
        l->left[l->count++] = x;
        x += c->width;
    }
    l->columns[l->count] = &note;
    l->left[l->count++] = x;
    l->left[l->count] = f->x + f->width;
}

static void draw_heads(struct flow *f, const struct layout *l, enum length_unit unit) {
    tag_begin(f->pdf->cr, "TR");
    for (size_t i = 0; i < l->count; i++) {
        char text[48];
        const struct text_style style = {
            .size = VISIT_SMALL, .bold = true, .width = l->left[i + 1] - l->left[i] - 2 * INSET};
        (void)snprintf(text, sizeof text, "%s%s", l->columns[i]->name,
                       !l->columns[i]->size ? "" : (unit == LENGTH_MM ? ", mm" : ", in"));
        tag_text(f->pdf->cr, "TH", l->left[i] + INSET, f->y + 2, text, &style);
    }
    tag_end(f->pdf->cr, "TR");
}

static void draw_lines(const struct flow *f, const struct layout *l) {
    cairo_t *const cr = f->pdf->cr;
    const double bottom = f->y + HEAD_HIGH + VISIT_ROWS * ROW_HIGH;
    cairo_save(cr);
    cairo_set_line_width(cr, 0.6);
    for (int row = 0; row <= VISIT_ROWS + 1; row++) {
        const double y = row == 0 ? f->y : f->y + HEAD_HIGH + (row - 1) * ROW_HIGH;
        cairo_move_to(cr, f->x, y);
        cairo_line_to(cr, f->x + f->width, y);
    }
    for (size_t i = 0; i <= l->count; i++) {
        cairo_move_to(cr, l->left[i], f->y);
        cairo_line_to(cr, l->left[i], bottom);
    }
    cairo_stroke(cr);
    cairo_restore(cr);
}

void visit_table(struct flow *f, const struct visit *v) {
    struct layout l;
    lay_out(&l, v, f);
    (void)flow_need(f, HEAD_HIGH + VISIT_ROWS * ROW_HIGH);
    tag_begin(f->pdf->cr, "Table");
    draw_heads(f, &l, v->unit);
    for (int row = 1; row <= VISIT_ROWS; row++) {
        char number[16];
        const struct text_style style = {.size = VISIT_TEXT, .gray = 0.35};
        (void)snprintf(number, sizeof number, "%d", row);
        tag_begin(f->pdf->cr, "TR");
        tag_text(f->pdf->cr, "TD", f->x + INSET,
                 f->y + HEAD_HIGH + (row - 1) * ROW_HIGH + ROW_HIGH / 2 - 5, number, &style);
        tag_end(f->pdf->cr, "TR");
    }
    draw_lines(f, &l);
    tag_end(f->pdf->cr, "Table");
    f->y += HEAD_HIGH + VISIT_ROWS * ROW_HIGH;
}
