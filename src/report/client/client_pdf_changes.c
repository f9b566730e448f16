/* SPDX-License-Identifier: MIT */
/* A change order: rows taken off, changed and added, and the price before and now. */
#include "report/client/client_pdf_parts.h"

#define ID_WIDTH     52.0
#define AMOUNT_WIDTH 76.0
#define ROW_GAP      3.0

static double larger(double a, double b) {
    return a > b ? a : b;
}

/* --- rows --- */

/* Draws a row, or only measures it; returns its height. */
static double put_row(const struct client_page *p, const struct offer_change *row, bool draw) {
    const struct flow *const f = &p->flow;
    const bool each = p->offer->changes->each;
    const struct text_style id = {.size = CLIENT_TEXT, .bold = true, .width = ID_WIDTH - 6};
    const struct text_style words = {.size = CLIENT_TEXT,
                                     .width = f->width - ID_WIDTH - (each ? AMOUNT_WIDTH : 0)};
    const struct text_style amount = {.size = CLIENT_TEXT, .width = f->width, .align = ALIGN_RIGHT};
    cairo_t *const cr = f->pdf->cr;
    if (draw) {
        text_draw(cr, f->x, f->y, row->id, &id);
        text_draw(cr, f->x + ID_WIDTH, f->y, row->words, &words);
    }
    if (draw && each) {
        text_draw(cr, f->x, f->y, row->amount.text, &amount);
    }
    return larger(text_measure(cr, row->id, &id).height,
                  text_measure(cr, row->words, &words).height) +
           ROW_GAP * f->spread;
}

/* The head of a kind stands with its first row. */
static void put_head(struct client_page *p, const struct offer_change *row) {
    struct flow *const f = &p->flow;
    const struct text_style head = {.size = CLIENT_TEXT, .gray = CLIENT_GRAY};
    const char *const text = client_change_head(row->kind);
    (void)flow_need(f, 8 + text_measure(f->pdf->cr, text, &head).height + put_row(p, row, false));
    flow_gap(f, 4);
    f->y += text_draw(f->pdf->cr, f->x, f->y, text, &head) + 2;
}

void client_pdf_changes(struct client_page *p) {
    struct flow *const f = &p->flow;
    const struct offer_changes *const c = p->offer->changes;
    if (c->row_count == 0) {
        return;
    }
    flow_heading(f, CLIENT_CHANGES_HEAD, 20 + put_row(p, &c->rows[0], false));
    for (size_t i = 0; i < c->row_count; i++) {
        const double height = put_row(p, &c->rows[i], false);
        if (i == 0 || c->rows[i].kind != c->rows[i - 1].kind) {
            put_head(p, &c->rows[i]);
        }
        (void)flow_need(f, height);
        put_row(p, &c->rows[i], true);
        f->y += height;
    }
    flow_gap(f, 3);
    flow_text(f, p->offer->list_note, (struct text_style){.size = 7.5, .gray = CLIENT_GRAY});
}

/* --- the price --- */

/* A line, of the heads where line is NULL; draws it, or only measures it; returns its height. */
static double put_line(const struct client_page *p, const struct offer_compared *line, bool draw) {
    const struct flow *const f = &p->flow;
    const bool grand = line != NULL && line->total;
    struct text_style style = {.size = grand ? 10.5 : CLIENT_TEXT,
                               .bold = grand,
                               .gray = line == NULL ? CLIENT_GRAY : 0,
                               .width = f->width - CLIENT_COMPARED * AMOUNT_WIDTH};
    const char *const words = line == NULL ? " " : line->words;
    const double height = text_measure(f->pdf->cr, words, &style).height;
    if (draw) {
        text_draw(f->pdf->cr, f->x, f->y, words, &style);
    }
    style.align = ALIGN_RIGHT;
    style.width = AMOUNT_WIDTH;
    for (int i = 0; draw && i < CLIENT_COMPARED; i++) {
        const double x = f->x + f->width - (CLIENT_COMPARED - i) * AMOUNT_WIDTH;
        text_draw(f->pdf->cr, x, f->y,
                  line == NULL ? client_compared_heads[i] : client_compared(line, i)->text, &style);
    }
    return height + ROW_GAP * f->spread;
}

void client_pdf_compared(struct client_page *p) {
    struct flow *const f = &p->flow;
    const struct offer_changes *const c = p->offer->changes;
    f->y += put_line(p, NULL, true);
    for (size_t i = 0; i < c->line_count; i++) {
        const double height = put_line(p, &c->lines[i], false);
        (void)flow_need(f, height);
        if (c->lines[i].total) {
            flow_rule(f, 0.7, 0);
            f->y += 3;
        }
        put_line(p, &c->lines[i], true);
        f->y += height;
    }
}
