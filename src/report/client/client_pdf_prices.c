/* SPDX-License-Identifier: MIT */
/* A price list: a table for each style and way of ordering. */
#include "report/client/client_pdf_parts.h"
#include "report/draw/tag.h"

#define SIZE_WIDTH  120.0
#define PRICE_WIDTH 70.0
#define ROW_GAP     2.5
#define ROWS_KEPT   ((size_t)6) /* go with the head of their table */

static const struct text_style made_style = {.size = CLIENT_TEXT};

/* Draws a row, of the heads where size is NULL. */
static void put_row(struct client_page *p, const struct offer_price_table *table,
                    const struct offer_size *size) {
    struct flow *const f = &p->flow;
    cairo_t *const cr = f->pdf->cr;
    struct text_style style = {
        .size = CLIENT_TEXT, .gray = size == NULL ? CLIENT_GRAY : 0, .width = SIZE_WIDTH};
    const char *const tag = size == NULL ? "TH" : "TD";
    tag_begin(cr, "TR");
    const double height =
        tag_text(cr, tag, f->x, f->y, size == NULL ? CLIENT_SIZE_HEAD : size->words, &style);
    style.width = PRICE_WIDTH;
    style.align = ALIGN_RIGHT;
    for (size_t c = 0; c < table->count; c++) {
        tag_text(cr, tag, f->x + SIZE_WIDTH + (double)c * PRICE_WIDTH, f->y,
                 size == NULL ? table->counts[c] : client_price_text(&size->prices[c]), &style);
    }
    tag_end(cr, "TR");
    f->y += height + (size == NULL ? 1 : ROW_GAP * f->spread);
    if (size == NULL) {
        flow_rule(f, 0.7, 0);
        f->y += 3;
    }
}

static double row_height(const struct client_page *p) {
    return text_measure(p->flow.pdf->cr, CLIENT_SIZE_HEAD, &made_style).height +
           ROW_GAP * p->flow.spread;
}

static void put_table(struct client_page *p, const struct offer_price_table *table) {
    struct flow *const f = &p->flow;
    const double row = row_height(p);
    const size_t kept = table->size_count < ROWS_KEPT ? table->size_count : ROWS_KEPT;
    const double least = 12 + (double)(kept + 3) * row;
    if (table->style[0] != '\0') {
        flow_heading(f, table->style, least + 3 * row);
        flow_text(f, table->made, made_style);
    }
    (void)flow_need(f, least);
    flow_gap(f, 8);
    flow_text(f, table->head, (struct text_style){.size = CLIENT_TEXT, .bold = true});
    flow_gap(f, 3);
    tag_begin(f->pdf->cr, "Table");
    put_row(p, table, NULL);
    for (size_t i = 0; i < table->size_count; i++) {
        if (flow_need(f, row)) {
            put_row(p, table, NULL);
        }
        put_row(p, table, &table->sizes[i]);
    }
    tag_end(f->pdf->cr, "Table");
}

void client_pdf_prices(struct client_page *p) {
    const struct offer *const o = p->offer;
    for (size_t i = 0; i < o->prices->table_count; i++) {
        put_table(p, &o->prices->tables[i]);
    }
    flow_gap(&p->flow, 6);
    if (o->list_note[0] != '\0') {
        flow_text(&p->flow, o->list_note, (struct text_style){.size = 7.5, .gray = CLIENT_GRAY});
    }
}
