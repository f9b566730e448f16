/* SPDX-License-Identifier: MIT */
#include "report/client/client_pdf_parts.h"
#include "report/draw/tag.h"

#include <ctype.h>
#include <stdio.h>
#include <string.h>

#define LOGO_WIDTH  150.0
#define LOGO_HEIGHT 48.0

static double larger(double a, double b) {
    return a > b ? a : b;
}

/* --- the letterhead --- */

struct source_bytes {
    const unsigned char *bytes;
    size_t size, at;
};

static cairo_status_t give(void *closure, unsigned char *data, unsigned int size) {
    struct source_bytes *const s = closure;
    if (s->size - s->at < size) {
        return CAIRO_STATUS_READ_ERROR;
    }
    memcpy(data, s->bytes + s->at, size);
    s->at += size;
    return CAIRO_STATUS_SUCCESS;
}

/* Draws the shop's picture; returns the width that it takes, 0: there is none. */
static double draw_logo(const struct client_page *p, double x, double y) {
    const struct offer_logo *const logo = &p->offer->logo;
    if (logo->bytes == NULL) {
        return 0;
    }
    struct source_bytes source = {.bytes = logo->bytes, .size = logo->size};
    cairo_surface_t *const picture = cairo_image_surface_create_from_png_stream(give, &source);
    double scale = LOGO_HEIGHT / logo->height;
    if (logo->width * scale > LOGO_WIDTH) {
        scale = LOGO_WIDTH / logo->width;
    }
    if (cairo_surface_status(picture) == CAIRO_STATUS_SUCCESS) {
        cairo_t *const cr = p->flow.pdf->cr;
        tag_begin(cr, "Figure");
        cairo_save(cr);
        cairo_translate(cr, x, y);
        cairo_scale(cr, scale, scale);
        cairo_set_source_surface(cr, picture, 0, 0);
        /* cairo_paint would make the drawing forget what was begun before, tags too */
        cairo_rectangle(cr, 0, 0, logo->width, logo->height);
        cairo_fill(cr);
        cairo_restore(cr);
        tag_end(cr, "Figure");
    }
    cairo_surface_destroy(picture);
    return logo->width * scale + 12;
}

/* The shop at the left, as wide as what the paper is called at the right leaves. */
static void letterhead(struct client_page *p) {
    struct flow *const f = &p->flow;
    const struct offer *const o = p->offer;
    cairo_t *const cr = f->pdf->cr;
    const double top = f->y;
    const double x = f->x + draw_logo(p, f->x, top);
    struct text_style paper = {.size = 22, .bold = true};
    struct text_style mark = {.size = 12, .bold = true};
    char word[16] = "";
    for (size_t i = 0; i + 1 < sizeof word && o->paper[i] != '\0'; i++) {
        word[i] = (char)toupper((unsigned char)o->paper[i]);
    }
    const double wide =
        larger(text_measure(cr, word, &paper).width, text_measure(cr, o->mark, &mark).width);
    const double width = f->x + f->width - x - wide - 18;
    const struct text_style name = {.size = 14, .bold = true, .width = width};
    const struct text_style small = {.size = CLIENT_TEXT, .gray = CLIENT_GRAY, .width = width};
    f->y += tag_text(cr, "P", x, f->y, o->shop, &name);
    for (size_t i = 0; i < o->shop_lines.count; i++) {
        f->y += tag_text(cr, "P", x, f->y, o->shop_lines.text[i], &small);
    }
    paper.width = mark.width = f->width;
    paper.align = mark.align = ALIGN_RIGHT;
    tag_text(cr, "P", f->x, top - 4, word, &paper);
    tag_text(cr, "P", f->x, top + 22, o->mark, &mark);
    f->y = larger(f->y, o->mark[0] != '\0' ? top + 38 : top);
    f->y = larger(f->y, x > f->x ? top + LOGO_HEIGHT : top);
    flow_gap(f, 8);
    flow_rule(f, 1, 0);
    flow_gap(f, 12);
}

/* --- who, which, when --- */

static void parties(struct client_page *p) {
    struct flow *const f = &p->flow;
    const struct offer *const o = p->offer;
    cairo_t *const cr = f->pdf->cr;
    const double half = f->width * 0.5;
    const struct text_style title = {.size = 13, .bold = true, .width = f->width};
    const struct text_style text = {.size = CLIENT_TEXT, .width = half - 34};
    const struct text_style label = {.size = CLIENT_TEXT, .gray = CLIENT_GRAY};
    const struct text_style fact = {.size = CLIENT_TEXT, .width = f->width - half - 62};
    f->y += tag_text(cr, "H1", f->x, f->y, o->title, &title) + 6;
    double left = f->y;
    double right = f->y;
    if (o->client[0] != '\0' || o->client_address[0] != '\0') {
        tag_begin(cr, "P");
        text_draw(cr, f->x, left, "For", &label);
        left += text_draw(cr, f->x + 26, left, o->client, &text);
        left += text_draw(cr, f->x + 26, left, o->client_address, &text);
        tag_end(cr, "P");
    }
    for (size_t i = 0; i < o->fact_count; i++) {
        tag_begin(cr, "P");
        text_draw(cr, f->x + half, right, o->facts[i].label, &label);
        right += text_draw(cr, f->x + half + 60, right, o->facts[i].text, &fact);
        tag_end(cr, "P");
    }
    f->y = left > right ? left : right;
    flow_gap(f, 10);
}

/* --- the total, for who reads no further --- */

/* Lines below each other, drawn or only measured; money: size of the second. Returns their height.
 */
static double box_column(const struct client_page *p, const char *const *texts, double x,
                         double width, double money, bool draw) {
    const struct text_style styles[] = {
        {.size = 8, .gray = CLIENT_GRAY, .width = width},
        {.size = money, .bold = true, .width = width},
        {.size = CLIENT_TEXT, .width = width},
    };
    cairo_t *const cr = p->flow.pdf->cr;
    double y = p->flow.y + 5;
    for (size_t i = 0; i < sizeof styles / sizeof *styles; i++) {
        if (texts[i][0] != '\0') {
            y += draw ? tag_text(cr, "P", x, y, texts[i], &styles[i])
                      : text_measure(cr, texts[i], &styles[i]).height;
        }
    }
    return y + 5 - p->flow.y;
}

static void total_box(struct client_page *p) {
    struct flow *const f = &p->flow;
    const struct offer *const o = p->offer;
    cairo_t *const cr = f->pdf->cr;
    const char *const left[] = {o->total_label, o->total_words, o->other_total};
    const char *const right[] = {o->pay_label, o->pay_words, ""};
    const double half = f->width * 0.5;
    const double second = f->x + half;
    const double height = larger(box_column(p, left, f->x + 10, half - 20, 16, false),
                                 box_column(p, right, second, half - 10, 12, false));
    (void)flow_need(f, height);
    cairo_save(cr);
    cairo_set_source_rgb(cr, 0.94, 0.94, 0.94);
    cairo_rectangle(cr, f->x, f->y, f->width, height);
    cairo_fill(cr);
    cairo_restore(cr);
    box_column(p, left, f->x + 10, half - 20, 16, true);
    box_column(p, right, second, half - 10, 12, true);
    f->y += height;
    flow_gap(f, 10);
}

void client_pdf_head(struct client_page *p) {
    letterhead(p);
    parties(p);
    if (p->offer->prices == NULL) {
        total_box(p);
    }
    for (size_t i = 0; i < p->offer->statements.count; i++) {
        flow_text(&p->flow, p->offer->statements.text[i], (struct text_style){.size = CLIENT_TEXT});
        flow_gap(&p->flow, 2);
    }
}
