/* SPDX-License-Identifier: MIT */
#include "report/client/client_pdf_parts.h"
#include "report/draw/tag.h"

/* A line of the price, and the gap below it. */
#define LINE     11.0
#define LINE_GAP 2.5

static double line_high(const struct client_page *p) {
    return LINE + LINE_GAP * p->flow.spread;
}

/* Whether a line is drawn above the amount of one of the kind. */
static bool is_sum(enum offer_line_kind kind) {
    return kind == OFFER_AFTER || kind == OFFER_BEFORE_TAX || kind == OFFER_BEFORE_CARD;
}

/* Draws a line, or only measures it; returns its height. */
static double money_line(struct client_page *p, const struct offer_line *line, bool draw) {
    struct flow *const f = &p->flow;
    cairo_t *const cr = f->pdf->cr;
    const bool grand = line->kind == OFFER_TOTAL;
    const double left = f->x + f->width * 0.3;
    const double width = f->width * 0.7;
    const double above = grand ? 4 : (is_sum(line->kind) ? 1 : 0);
    struct text_style style = {.size = grand ? 11 : CLIENT_TEXT,
                               .bold = grand,
                               .gray = line->kind == OFFER_TAXED ? CLIENT_GRAY : 0,
                               .width = width * 0.74};
    const double text = text_measure(cr, line->words, &style).height;
    const double height = text > line_high(p) ? text : line_high(p);
    if (draw && above > 0) {
        cairo_save(cr);
        cairo_set_line_width(cr, grand ? 1 : 0.5);
        cairo_move_to(cr, left + (grand ? 0 : width * 0.8), f->y - 1);
        cairo_line_to(cr, left + width, f->y - 1);
        cairo_stroke(cr);
        cairo_restore(cr);
    }
    if (draw) {
        tag_begin(cr, "TR");
        tag_text(cr, "TH", left, f->y + above, line->words, &style);
        style.width = width;
        style.align = ALIGN_RIGHT;
        tag_text(cr, "TD", left, f->y + above, line->amount.text, &style);
        tag_end(cr, "TR");
    }
    return above + height + (grand ? 3 : 0);
}

static double money_height(struct client_page *p, const struct offer_line *lines, size_t count) {
    double height = 0;
    for (size_t i = 0; i < count; i++) {
        height += money_line(p, &lines[i], false);
    }
    return height;
}

static void money_lines(struct client_page *p, const struct offer_line *lines, size_t count) {
    if (count == 0) {
        return;
    }
    tag_begin(p->flow.pdf->cr, "Table");
    for (size_t i = 0; i < count; i++) {
        (void)flow_need(&p->flow, money_line(p, &lines[i], false));
        p->flow.y += money_line(p, &lines[i], true);
    }
    tag_end(p->flow.pdf->cr, "Table");
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
        tag_text(cr, "H3", f->x, f->y, option->name, &name);
        tag_text(cr, "P", f->x, f->y + y, option->words, &text);
        tag_text(cr, "P", f->x, f->y, option->first, &money);
        tag_text(cr, "P", f->x, f->y + 12, option->second, &small);
    }
    y += text_measure(cr, option->words, &text).height;
    y = y > 24 ? y : 24;
    if (option->payments[0] != '\0') {
        if (draw) {
            tag_text(cr, "P", f->x, f->y + y, option->payments, &all);
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
            flow_heading(&p->flow, CLIENT_OPTIONS_HEAD, height);
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
        (void)flow_need(f, text_measure(f->pdf->cr, text, &style).height + (bold ? 2 * LINE : 0));
        f->y +=
            tag_text(f->pdf->cr, bold ? "H3" : "P", f->x + f->width * 0.3, f->y, text, &style) + 2;
    }
}

void client_pdf_price(struct client_page *p) {
    const struct offer *const o = p->offer;
    const double high = money_height(p, o->lines, o->line_count) +
                        money_height(p, o->payments, o->payment_count) +
                        (o->payments_head[0] != '\0' ? LINE : 0);
    flow_heading(&p->flow, CLIENT_PRICE_HEAD,
                 high < p->flow.bottom - p->flow.top - 40 ? high : 120);
    if (o->changes != NULL) {
        client_pdf_compared(p);
    } else {
        money_lines(p, o->lines, o->line_count);
    }
    flow_gap(&p->flow, 5);
    price_words(p, o->payments_head, true);
    money_lines(p, o->payments, o->payment_count);
    for (size_t i = 0; i < o->pay_notes.count; i++) {
        price_words(p, o->pay_notes.text[i], false);
    }
    options(p);
}
