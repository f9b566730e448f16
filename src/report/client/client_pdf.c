/* SPDX-License-Identifier: MIT */
/* The paper is drawn into nothing first, to count its pages, then for good.  Where narrower gaps
 * save a page it has these. */
#include "report/client/client_pdf.h"

#include "report/client/client_pdf_parts.h"

#define MARGIN 54.0
#define FOOT   40.0
/* Of a paper longer than so many pages it does not matter whether it has one less. */
#define LONG_PAPER ((size_t)20)

static void draw_margins(void *what, struct flow *f) {
    struct client_page *const p = what;
    const struct offer *const o = p->offer;
    const struct text_style left = {
        .size = 7.5, .gray = CLIENT_GRAY, .width = f->width * 0.8, .cut = true};
    const struct text_style right = {
        .size = 7.5, .gray = CLIENT_GRAY, .width = f->width, .align = ALIGN_RIGHT};
    const double y = f->pdf->height - FOOT;
    text_draw(
        f->pdf->cr, f->x, y,
        pool_words(p->pool, "%s%s%s", o->shop, o->shop[0] == '\0' ? "" : "  |  ", o->reference),
        &left);
    text_draw(f->pdf->cr, f->x, y, pool_words(p->pool, "page %zu of %zu", f->page + 1, p->pages),
              &right);
}

static void draw_parts(struct client_page *p) {
    if (p->offer->prices != NULL) {
        client_pdf_prices(p);
        return;
    }
    if (p->offer->changes != NULL) {
        client_pdf_changes(p);
        client_pdf_price(p);
    } else {
        client_pdf_price(p);
        client_pdf_list(p);
        client_pdf_kinds(p);
    }
    client_pdf_words(p);
}

static bool draw(const struct offer *o, const char *path, double spread, size_t *pages,
                 struct pool *kept, const char **lacking) {
    const struct pdf_facts facts = {
        .title = o->title,
        .author = o->shop,
        .subject = o->paper,
        .year = o->year,
        .month = o->month,
        .day = o->day,
        .letter = o->letter,
    };
    struct pdf pdf;
    struct pool pool;
    pool_init(&pool);
    bool done = pdf_open(&pdf, path, &facts);
    struct client_page p = {.offer = o, .pool = &pool, .pages = *pages};
    p.flow = (struct flow){
        .pdf = &pdf,
        .x = MARGIN,
        .width = pdf.width - 2 * MARGIN,
        .top = MARGIN - 6,
        .bottom = pdf.height - FOOT - 14,
        .y = MARGIN - 6,
        .spread = spread,
        .margins = draw_margins,
        .what = &p,
    };
    if (done) {
        client_pdf_head(&p);
        draw_parts(&p);
        flow_end(&p.flow);
        *pages = p.flow.page;
    }
    done = pdf_close(&pdf, kept, lacking) && done && !pool_failed(&pool);
    pool_clear(&pool);
    return done;
}

bool client_pdf_write(const struct offer *o, const char *path, const struct stop *stop,
                      struct pool *pool, const char **lacking) {
    static const double spreads[] = {1, 0.75, 0.5};
    double best = 1;
    size_t pages = 0;
    *lacking = NULL;
    for (size_t i = 0; i < sizeof spreads / sizeof *spreads && pages <= LONG_PAPER; i++) {
        size_t count = 0;
        if (stop_asked(stop) || !draw(o, NULL, spreads[i], &count, pool, lacking)) {
            return false;
        }
        if (pages == 0 || count < pages) {
            best = spreads[i];
            pages = count;
        }
    }
    return !stop_asked(stop) && draw(o, path, best, &pages, pool, lacking);
}
