/* SPDX-License-Identifier: MIT */
#include "report/client/client_pdf_parts.h"

/* A line of the price, and the gap below it. */
#define LINE     11.0
#define LINE_GAP 2.5

static double line_high(const struct client_page *p) {
    return LINE + LINE_GAP * p->flow.spread;
}

static void money_line(struct client_page *p, const struct offer_line *line) {
    struct flow *const f = &p->flow;
    cairo_t *const cr = f->pdf->cr;
    const bool grand = line->kind == OFFER_TOTAL;
    const bool info = line->kind == OFFER_TAXED;
    const bool sum = line->kind == OFFER_AFTER || line->kind == OFFER_BEFORE_TAX ||
                     line->kind == OFFER_BEFORE_CARD;
    const double left = f->x + f->width * 0.3;
    const double width = f->width * 0.7;
    const struct text_style label = {.size = grand ? 11 : CLIENT_TEXT,
                                     .bold = grand,
                                     .gray = info ? CLIENT_GRAY : 0,
                                     .width = width * 0.74};
    const struct text_style money = {.size = grand ? 11 : CLIENT_TEXT,
                                     .bold = grand,
                                     .gray = info ? CLIENT_GRAY : 0,
                                     .width = width,
                                     .align = ALIGN_RIGHT};
    if (grand || sum) {
        cairo_save(cr);
        cairo_set_line_width(cr, grand ? 1 : 0.5);
        cairo_move_to(cr, left + (grand ? 0 : width * 0.8), f->y - 1);
        cairo_line_to(cr, left + width, f->y - 1);
        cairo_stroke(cr);
        cairo_restore(cr);
        f->y += grand ? 4 : 1;
    }
    const double height = text_draw(cr, left, f->y, line->words, &label);
    text_draw(cr, left, f->y, line->amount.text, &money);
    f->y += (height > line_high(p) ? height : line_high(p)) + (grand ? 3 : 0);
}

static double option_height(struct client_page *p, const struct offer_option *option, bool draw) {
    struct flow *const f = &p->flow;
    cairo_t *const cr = f->pdf->cr;
    const double wide = f->width * 0.6;
    const struct text_style name = {.size = CLIENT_TEXT, .bold = true, .width = wide};
    const struct text_style text = {.size = 8.5, .gray = CLIENT_GRAY, .width = wide};
    const struct text_style all = {.size = 8.5, .gray = CLIENT_GRAY, .width = f->width};
    const struct text_style money = {
        .size = CLIENT_TEXT, .bold = true, .width = f->width, .align = ALIGN_RIGHT};
    const struct text_style small = {
        .size = 8.5, .gray = CLIENT_GRAY, .width = f->width, .align = ALIGN_RIGHT};
    double y = text_measure(cr, option->name, &name).height;
    if (draw) {
        text_draw(cr, f->x, f->y, option->name, &name);
        text_draw(cr, f->x, f->y + y, option->words, &text);
        text_draw(cr, f->x, f->y, option->first, &money);
        text_draw(cr, f->x, f->y + 12, option->second, &small);
    }
    y += text_measure(cr, option->words, &text).height;
    y = y > 24 ? y : 24;
    if (option->payments[0] != '\0') {
        if (draw) {
            text_draw(cr, f->x, f->y + y, option->payments, &all);
        }
        y += text_measure(cr, option->payments, &all).height;
    }
    return y + 5 * f->spread;
}

static void options(struct client_page *p) {
    const struct offer *const o = p->offer;
    for (size_t i = 0; i < o->option_count; i++) {
        const double height = option_height(p, &o->options[i], false);
        if (i == 0) {
            flow_heading(&p->flow, "Options, for the same list", height);
        }
        (void)flow_need(&p->flow, height);
        p->flow.y += option_height(p, &o->options[i], true);
    }
}

/* Right of the middle, as the lines are. */
static void price_words(struct client_page *p, const char *text, bool bold) {
    struct flow *const f = &p->flow;
    const struct text_style style = {.size = bold ? CLIENT_TEXT : 8.5,
                                     .bold = bold,
                                     .gray = bold ? 0 : CLIENT_GRAY,
                                     .width = f->width * 0.7};
    if (text[0] != '\0') {
        f->y += text_draw(f->pdf->cr, f->x + f->width * 0.3, f->y, text, &style) + 2;
    }
}

void client_price(struct client_page *p) {
    const struct offer *const o = p->offer;
    const double line = line_high(p);
    const double words =
        (o->payments_head[0] != '\0' ? line : 0) + 2 * line * (double)o->pay_notes.count;
    const double high = line * (double)(o->line_count + o->payment_count) + words + 30;
    flow_heading(&p->flow, "Price", high < p->flow.bottom - p->flow.top - 40 ? high : 120);
    for (size_t i = 0; i < o->line_count; i++) {
        (void)flow_need(&p->flow, line + 4);
        money_line(p, &o->lines[i]);
    }
    flow_gap(&p->flow, 5);
    price_words(p, o->payments_head, true);
    for (size_t i = 0; i < o->payment_count; i++) {
        (void)flow_need(&p->flow, line + 4);
        money_line(p, &o->payments[i]);
    }
    for (size_t i = 0; i < o->pay_notes.count; i++) {
        price_words(p, o->pay_notes.text[i], false);
    }
    options(p);
}
