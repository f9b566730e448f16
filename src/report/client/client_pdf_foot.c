/* SPDX-License-Identifier: MIT */
#include "report/client/client_pdf_parts.h"

/* Points: lists that are lower than this are not parted. */
#define KEPT_WHOLE 130.0

/* --- words --- */

/* Draws a list with its heading in a column, or only measures it; returns the height. */
static double list_column(struct client_page *p, const char *head, const struct offer_texts *texts,
                          double x, double width, bool measure) {
    cairo_t *const cr = p->flow.pdf->cr;
    const struct text_style bold = {.size = 11, .bold = true, .width = width};
    const struct text_style text = {.size = CLIENT_TEXT, .width = width - 10};
    const struct text_style dash = {.size = CLIENT_TEXT};
    const double gap = p->flow.spread;
    double y = p->flow.y;
    y += (measure ? text_measure(cr, head, &bold).height : text_draw(cr, x, y, head, &bold)) +
         4 * gap;
    for (size_t i = 0; i < texts->count; i++) {
        if (!measure) {
            text_draw(cr, x, y, "\xE2\x80\x93", &dash);
            y += text_draw(cr, x + 10, y, texts->text[i], &text) + 2 * gap;
        } else {
            y += text_measure(cr, texts->text[i], &text).height + 2 * gap;
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
    if (!flow_need(f, height + 12 * f->spread)) {
        flow_gap(f, 12);
    }
    list_column(p, "Included", &o->included, f->x, width, false);
    list_column(p, "Not included", &o->excluded, right, width, false);
    f->y += height;
}

/* Paragraphs of a list are set so far in. */
static double paragraph(struct client_page *p, const struct offer_texts *texts, size_t i,
                        bool numbered, bool draw) {
    struct flow *const f = &p->flow;
    const double in = numbered ? 18 : 0;
    const struct text_style text = {.size = CLIENT_TEXT - 0.5, .width = f->width - in};
    const struct text_style number = {.size = CLIENT_TEXT - 0.5, .gray = CLIENT_GRAY};
    if (draw && numbered) {
        text_draw(f->pdf->cr, f->x, f->y, pool_words(p->pool, "%zu", i + 1), &number);
    }
    return (draw ? text_draw(f->pdf->cr, f->x + in, f->y, texts->text[i], &text)
                 : text_measure(f->pdf->cr, texts->text[i], &text).height) +
           3 * f->spread;
}

/* A short list is not parted; of a longer one at least two paragraphs stand together, the last two
 * with what comes `after` it. */
static void paragraphs(struct client_page *p, const char *head, const struct offer_texts *texts,
                       bool numbered, double after) {
    struct flow *const f = &p->flow;
    const size_t count = texts->count;
    double whole = 0;
    double least = 0;
    for (size_t i = 0; i < count; i++) {
        whole += paragraph(p, texts, i, numbered, false);
        least = i < 2 ? whole : least;
    }
    if (count == 0) {
        return;
    }
    const bool kept = whole + after < KEPT_WHOLE || count < 4;
    flow_heading(f, head, kept ? whole + after : least);
    for (size_t i = 0; i < count && !kept; i++) {
        double needed = paragraph(p, texts, i, numbered, false);
        if (i + 2 == count) {
            needed += paragraph(p, texts, i + 1, numbered, false) + after;
        }
        (void)flow_need(f, i + 1 == count ? 0 : needed);
        f->y += paragraph(p, texts, i, numbered, true);
    }
    for (size_t i = 0; i < count && kept; i++) {
        f->y += paragraph(p, texts, i, numbered, true);
    }
}

/* --- signatures --- */

static void sign_column(struct client_page *p, const char *head, double x, double width) {
    cairo_t *const cr = p->flow.pdf->cr;
    const struct text_style bold = {.size = CLIENT_TEXT, .bold = true, .width = width};
    const struct text_style small = {.size = 7.5, .gray = CLIENT_GRAY};
    const double line = p->flow.y + 44;
    text_draw(cr, x, p->flow.y, head, &bold);
    cairo_save(cr);
    cairo_set_line_width(cr, 0.6);
    cairo_move_to(cr, x, line);
    cairo_line_to(cr, x + width * 0.66, line);
    cairo_move_to(cr, x + width * 0.72, line);
    cairo_line_to(cr, x + width, line);
    cairo_stroke(cr);
    cairo_restore(cr);
    text_draw(cr, x, line + 3, "signature and name", &small);
    text_draw(cr, x + width * 0.72, line + 3, "date", &small);
}

static double sign_height(const struct client_page *p) {
    const struct text_style style = {.size = CLIENT_TEXT, .width = p->flow.width};
    return text_measure(p->flow.pdf->cr, p->offer->agreed, &style).height + 110;
}

static void sign(struct client_page *p) {
    struct flow *const f = &p->flow;
    const struct offer *const o = p->offer;
    const double width = (f->width - 30) / 2;
    flow_heading(f, o->sign_head, 80);
    flow_text(f, o->agreed, (struct text_style){.size = CLIENT_TEXT});
    flow_gap(f, 8);
    sign_column(p, o->client[0] == '\0' ? "For the client" : o->client, f->x, width);
    if (!o->estimate) {
        sign_column(p, o->shop[0] == '\0' ? "For the shop" : o->shop, f->x + width + 30, width);
    }
    f->y += 58;
}

void client_made(struct client_page *p) {
    const struct offer *const o = p->offer;
    paragraphs(p, "Wood, panels and finish", &o->made, false, 0);
    in_and_out(p);
}

/* What is signed never stands on a page of its own: the last of the words goes with it. */
void client_words(struct client_page *p) {
    const struct offer *const o = p->offer;
    const double after = sign_height(p);
    paragraphs(p, "Notes", &o->notes, false, o->terms.count > 0 ? 0 : after);
    paragraphs(p, o->terms_head, &o->terms, true, after);
    sign(p);
}
