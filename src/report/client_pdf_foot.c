/* SPDX-License-Identifier: MIT */
#include "report/client_pdf_parts.h"
#include "report/offer_parts.h"

#define LINE 13.5

/* --- price --- */

static void money_line(struct client_page *p, const struct offer_line *line) {
    struct flow *const f = &p->flow;
    struct offer *const o = p->offer;
    cairo_t *const cr = f->pdf->cr;
    const bool grand = line->kind == OFFER_TOTAL;
    const bool info = line->kind == OFFER_TAXED;
    const bool sum = line->kind == OFFER_AFTER || line->kind == OFFER_BEFORE_TAX ||
                     line->kind == OFFER_BEFORE_CARD;
    const double left = f->x + f->width * 0.3;
    const double width = f->width * 0.7;
    const struct letters label = {.size = grand ? 11 : CLIENT_TEXT,
                                  .bold = grand,
                                  .grey = info ? CLIENT_GREY : 0,
                                  .width = width * 0.74};
    const struct letters money = {.size = grand ? 11 : CLIENT_TEXT,
                                  .bold = grand,
                                  .grey = info ? CLIENT_GREY : 0,
                                  .width = width,
                                  .align = LETTERS_RIGHT};
    const char *const text = fig_none(line->percent)
                                 ? line->label
                                 : offer_or_nothing(pool_format(&o->pool, "%s, %s", line->label,
                                                                offer_percent(o, line->percent)));
    if (grand || sum) {
        cairo_save(cr);
        cairo_set_line_width(cr, grand ? 1 : 0.5);
        cairo_move_to(cr, left + (grand ? 0 : width * 0.8), f->y - 1);
        cairo_line_to(cr, left + width, f->y - 1);
        cairo_stroke(cr);
        cairo_restore(cr);
        f->y += grand ? 4 : 1;
    }
    const double height = letters_draw(cr, left, f->y, text, &label);
    letters_draw(cr, left, f->y, offer_money(o, line->amount, line->less), &money);
    f->y += (height > LINE ? height : LINE) + (grand ? 3 : 0);
}

static void options(struct client_page *p) {
    struct flow *const f = &p->flow;
    struct offer *const o = p->offer;
    const struct letters name = {.size = CLIENT_TEXT, .bold = true, .width = f->width * 0.6};
    const struct letters text = {.size = 8.5, .grey = CLIENT_GREY, .width = f->width * 0.6};
    const struct letters money = {
        .size = CLIENT_TEXT, .bold = true, .width = f->width, .align = LETTERS_RIGHT};
    const struct letters small = {
        .size = 8.5, .grey = CLIENT_GREY, .width = f->width, .align = LETTERS_RIGHT};
    if (o->option_count == 0) {
        return;
    }
    flow_heading(f, "Options, for the same list", 40);
    for (size_t i = 0; i < o->option_count; i++) {
        const struct offer_option *const option = &o->options[i];
        const char *const total = offer_hundredths(o, option->total, false);
        const char *const more = offer_hundredths(o, option->difference, true);
        const char *const size = offer_hundredths(
            o, option->difference < 0 ? -option->difference : option->difference, false);
        (void)flow_need(f, 30);
        const double top = f->y;
        double y = top + letters_draw(f->pdf->cr, f->x, top, option->name, &name);
        y += letters_draw(f->pdf->cr, f->x, y, option->words, &text);
        const bool less = option->difference < 0;
        const char *const first =
            option->adds
                ? pool_format(&o->pool, "%s %s %s %s", less ? "takes" : "adds", size, o->currency,
                              less ? "off the total above" : "to the total above")
                : pool_format(&o->pool, "replaces the total above: %s %s", total, o->currency);
        const char *const second =
            option->adds ? pool_format(&o->pool, "total with it %s %s", total, o->currency)
                         : pool_format(&o->pool, "difference %s %s", more, o->currency);
        letters_draw(f->pdf->cr, f->x, top, offer_or_nothing(first), &money);
        letters_draw(f->pdf->cr, f->x, top + 12, offer_or_nothing(second), &small);
        f->y = (y > top + 24 ? y : top + 24) + 4;
    }
}

void client_price(struct client_page *p) {
    const struct offer *const o = p->offer;
    const double high = LINE * (double)(o->line_count + o->payment_count) + 40;
    flow_heading(&p->flow, "Price", high < p->flow.bottom - p->flow.top - 40 ? high : 120);
    for (size_t i = 0; i < o->line_count; i++) {
        (void)flow_need(&p->flow, LINE + 4);
        money_line(p, &o->lines[i]);
    }
    flow_gap(&p->flow, 5);
    for (size_t i = 0; i < o->payment_count; i++) {
        (void)flow_need(&p->flow, LINE + 4);
        money_line(p, &o->payments[i]);
    }
    options(p);
}

/* --- words --- */

/* Draws a list with its heading in a column, or only measures it; returns the height. */
static double list_column(struct client_page *p, const char *head, const struct offer_texts *texts,
                          double x, double width, bool measure) {
    cairo_t *const cr = p->flow.pdf->cr;
    const struct letters bold = {.size = 11, .bold = true, .width = width};
    const struct letters text = {.size = CLIENT_TEXT, .width = width - 10};
    const struct letters dash = {.size = CLIENT_TEXT};
    double y = p->flow.y;
    y += (measure ? letters_measure(cr, head, &bold).height : letters_draw(cr, x, y, head, &bold)) +
         4;
    for (size_t i = 0; i < texts->count; i++) {
        if (!measure) {
            letters_draw(cr, x, y, "\xE2\x80\x93", &dash);
            y += letters_draw(cr, x + 10, y, texts->text[i], &text) + 2;
        } else {
            y += letters_measure(cr, texts->text[i], &text).height + 2;
        }
    }
    return y - p->flow.y;
}

static void in_and_out(struct client_page *p) {
    struct flow *const f = &p->flow;
    const struct offer *const o = p->offer;
    const double width = (f->width - 24) / 2;
    const double right = f->x + width + 24;
    const double in = list_column(p, "Included", &o->included, f->x, width, true);
    const double out = list_column(p, "Not included", &o->excluded, right, width, true);
    const double height = in > out ? in : out;
    if (!flow_need(f, height + 12)) {
        flow_gap(f, 12);
    }
    list_column(p, "Included", &o->included, f->x, width, false);
    list_column(p, "Not included", &o->excluded, right, width, false);
    f->y += height;
}

static void paragraphs(struct client_page *p, const char *head, const struct offer_texts *texts,
                       bool numbered) {
    struct flow *const f = &p->flow;
    struct offer *const o = p->offer;
    if (texts->count == 0) {
        return;
    }
    flow_heading(f, head, 30);
    for (size_t i = 0; i < texts->count; i++) {
        const struct letters text = {.size = CLIENT_TEXT - 0.5,
                                     .width = f->width - (numbered ? 18 : 0)};
        const double height = letters_measure(f->pdf->cr, texts->text[i], &text).height;
        (void)flow_need(f, height);
        if (numbered) {
            const struct letters number = {.size = CLIENT_TEXT - 0.5, .grey = CLIENT_GREY};
            letters_draw(f->pdf->cr, f->x, f->y,
                         offer_or_nothing(pool_format(&o->pool, "%zu", i + 1)), &number);
        }
        letters_draw(f->pdf->cr, f->x + (numbered ? 18 : 0), f->y, texts->text[i], &text);
        f->y += height + 3;
    }
}

void client_words(struct client_page *p) {
    const struct offer *const o = p->offer;
    paragraphs(p, "Wood, panels and finish", &o->made, false);
    in_and_out(p);
    paragraphs(p, "Notes", &o->notes, false);
    paragraphs(p, "Terms", &o->terms, true);
}

/* --- signatures --- */

static void sign_column(struct client_page *p, const char *head, double x, double width) {
    cairo_t *const cr = p->flow.pdf->cr;
    const struct letters bold = {.size = CLIENT_TEXT, .bold = true, .width = width};
    const struct letters small = {.size = 7.5, .grey = CLIENT_GREY};
    const double line = p->flow.y + 44;
    letters_draw(cr, x, p->flow.y, head, &bold);
    cairo_save(cr);
    cairo_set_line_width(cr, 0.6);
    cairo_move_to(cr, x, line);
    cairo_line_to(cr, x + width * 0.66, line);
    cairo_move_to(cr, x + width * 0.72, line);
    cairo_line_to(cr, x + width, line);
    cairo_stroke(cr);
    cairo_restore(cr);
    letters_draw(cr, x, line + 3, "signature and name", &small);
    letters_draw(cr, x + width * 0.72, line + 3, "date", &small);
}

void client_sign(struct client_page *p) {
    struct flow *const f = &p->flow;
    struct offer *const o = p->offer;
    const double width = (f->width - 30) / 2;
    flow_heading(f, "Agreed", 80);
    const char *const words = pool_format(
        &o->pool, "To the list%s the price of %s%s%s.", o->terms.count > 0 ? "," : " and",
        o->total_words, o->terms.count > 0 ? " and the terms above" : "",
        o->option_count > 0 ? ", or with the option: ______________" : "");
    flow_text(f, offer_or_nothing(words), (struct letters){.size = CLIENT_TEXT});
    flow_gap(f, 8);
    sign_column(p, o->client[0] == '\0' ? "For the client" : o->client, f->x, width);
    sign_column(p, o->shop[0] == '\0' ? "For the shop" : o->shop, f->x + width + 30, width);
    f->y += 58;
}
