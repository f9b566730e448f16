/* SPDX-License-Identifier: MIT */
#include "report/draw/flow.h"

#include "report/draw/tag.h"

#include <stdio.h>

#define HEADING_SIZE 11.0
#define FOOT_GRAY    0.35
#define LONG_PAPER   ((size_t)20) /* pages */

static void end_page(struct flow *f) {
    f->margins(f->what, f);
    pdf_page(f->pdf);
    f->page++;
    f->y = f->top;
}

bool flow_need(struct flow *f, double height) {
    /* What is higher than a page starts at the top of one and is cut there: nothing is. */
    if (f->y + height <= f->bottom || f->y <= f->top) {
        return false;
    }
    end_page(f);
    return true;
}

void flow_end(struct flow *f) {
    end_page(f);
}

void flow_gap(struct flow *f, double height) {
    f->y += height * f->spread;
}

static void put_text(struct flow *f, const char *type, const char *text, struct text_style style) {
    if (style.width <= 0) {
        style.width = f->width;
    }
    (void)flow_need(f, text_measure(f->pdf->cr, text, &style).height);
    f->y += tag_text(f->pdf->cr, type, f->x, f->y, text, &style);
}

void flow_title(struct flow *f, const char *text, struct text_style style) {
    put_text(f, "H1", text, style);
}

void flow_text(struct flow *f, const char *text, struct text_style style) {
    put_text(f, "P", text, style);
}

void flow_heading(struct flow *f, const char *text, double after) {
    const struct text_style style = {.size = HEADING_SIZE, .bold = true, .width = f->width};
    if (!flow_need(f, 12 + HEADING_SIZE * 1.6 + after) && f->y > f->top) {
        flow_gap(f, 12);
    }
    f->y += tag_text(f->pdf->cr, "H2", f->x, f->y, text, &style) + 4 * f->spread;
}

void flow_foot(const struct flow *f, double up, double size, const char *left, size_t pages) {
    const struct text_style words = {
        .size = size, .gray = FOOT_GRAY, .width = f->width * 0.8, .cut = true};
    const struct text_style number = {
        .size = size, .gray = FOOT_GRAY, .width = f->width, .align = ALIGN_RIGHT};
    const double y = f->pdf->height - up;
    char page[64];
    (void)snprintf(page, sizeof page, "page %zu of %zu", f->page + 1, pages);
    text_draw(f->pdf->cr, f->x, y, left, &words);
    text_draw(f->pdf->cr, f->x, y, page, &number);
}

/* How far the things of a paper stand apart, and how many pages it has then. false: as draw gave
 * it. */
static bool fit(flow_draw *draw, void *what, struct pdf *nowhere, double *spread, size_t *pages) {
    static const double spreads[] = {1, 0.75, 0.5};
    *spread = 1;
    *pages = 0;
    for (size_t i = 0; i < sizeof spreads / sizeof *spreads && *pages != 1 && *pages <= LONG_PAPER;
         i++) {
        size_t found = 0;
        if (!draw(what, nowhere, spreads[i], &found)) {
            return false;
        }
        if (*pages == 0 || found < *pages) {
            *spread = spreads[i];
            *pages = found;
        }
    }
    return true;
}

bool flow_write(flow_draw *draw, void *what, const struct pdf_facts *facts, const char *path,
                struct pool *pool, const char **lacking) {
    struct pdf nowhere;
    struct pdf pdf;
    double spread;
    size_t pages;
    *lacking = NULL;
    bool done = pdf_open(&nowhere, NULL, facts) && fit(draw, what, &nowhere, &spread, &pages);
    if (done) {
        done = pdf_open(&pdf, path, facts);
        text_share(pdf.cr, nowhere.cr);
        done = done && draw(what, &pdf, spread, &pages);
        done = pdf_close(&pdf, pool, lacking) && done;
    }
    return pdf_close(&nowhere, NULL, NULL) && done;
}

void flow_rule(struct flow *f, double thick, double gray) {
    cairo_t *const cr = f->pdf->cr;
    cairo_save(cr);
    cairo_set_line_width(cr, thick);
    cairo_set_source_rgb(cr, gray, gray, gray);
    cairo_move_to(cr, f->x, f->y);
    cairo_line_to(cr, f->x + f->width, f->y);
    cairo_stroke(cr);
    cairo_restore(cr);
}
