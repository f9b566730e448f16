/* SPDX-License-Identifier: MIT */
/* Rows to write in. Their columns are those of the door list, so that it is typed as it stands. */
#include "model/list_column.h"
#include "report/draw/tag.h"
#include "report/visit/visit_parts.h"

#include <assert.h>
#include <stdio.h>

#define HEAD_HIGH 24.0
#define ROW_LEAST 27.0
#define INSET     3.0

#define MOST_COLUMNS 16

/* Those that a sheet has, with their left edges: the number of the row, the columns of a list, and
 * the note, which takes what is left, 60 points and more on A4. */
struct layout {
    struct list_column columns[MOST_COLUMNS];
    double left[MOST_COLUMNS + 1];
    size_t count;
};

static void add(struct layout *l, const struct list_column *column, double width) {
    assert(l->count < MOST_COLUMNS);
    l->columns[l->count] = *column;
    l->left[l->count + 1] = l->left[l->count] + width;
    l->count++;
}

static void lay_out(struct layout *l, const struct visit *v, const struct flow *f) {
    static const double widths[] = {28, 46, 46, 32, 50, 50, 36, 32, 48, 42, 36}; /* points */
    size_t count;
    const struct list_column *const columns = list_columns(&count);
    assert(count == sizeof widths / sizeof *widths);
    *l = (struct layout){.left = {f->x}};
    add(l, &(struct list_column){.name = ""}, 16);
    for (size_t i = 0; i < count; i++) {
        if (columns[i].wanted == NULL || columns[i].wanted(v->rates)) {
            add(l, &columns[i], widths[i]);
        }
    }
    add(l, &(struct list_column){.name = "note"}, f->x + f->width - l->left[l->count]);
}

static void draw_heads(struct flow *f, const struct layout *l, enum length_unit unit) {
    tag_begin(f->pdf->cr, "TR");
    for (size_t i = 0; i < l->count; i++) {
        char text[48];
        const struct text_style style = {
            .size = VISIT_SMALL, .bold = true, .width = l->left[i + 1] - l->left[i] - 2 * INSET};
        (void)snprintf(text, sizeof text, "%s%s", l->columns[i].name,
                       !l->columns[i].size ? "" : (unit == LENGTH_MM ? ", mm" : ", in"));
        tag_text(f->pdf->cr, "TH", l->left[i] + INSET, f->y + 2, text, &style);
    }
    tag_end(f->pdf->cr, "TR");
}

static void draw_lines(const struct flow *f, const struct layout *l, double high) {
    cairo_t *const cr = f->pdf->cr;
    const double bottom = f->y + HEAD_HIGH + VISIT_ROWS * high;
    cairo_save(cr);
    cairo_set_line_width(cr, 0.6);
    for (int row = 0; row <= VISIT_ROWS + 1; row++) {
        const double y = row == 0 ? f->y : f->y + HEAD_HIGH + (row - 1) * high;
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

void visit_table(struct flow *f, const struct visit *v, double more) {
    const double high = ROW_LEAST + more;
    struct layout l;
    lay_out(&l, v, f);
    (void)flow_need(f, HEAD_HIGH + VISIT_ROWS * high);
    tag_begin(f->pdf->cr, "Table");
    draw_heads(f, &l, v->unit);
    for (int row = 1; row <= VISIT_ROWS; row++) {
        char number[16];
        const struct text_style style = {.size = VISIT_TEXT, .gray = 0.35};
        (void)snprintf(number, sizeof number, "%d", row);
        tag_begin(f->pdf->cr, "TR");
        tag_text(f->pdf->cr, "TD", f->x + INSET, f->y + HEAD_HIGH + (row - 1) * high + high / 2 - 5,
                 number, &style);
        tag_end(f->pdf->cr, "TR");
    }
    draw_lines(f, &l, high);
    tag_end(f->pdf->cr, "Table");
    f->y += HEAD_HIGH + VISIT_ROWS * high;
}
