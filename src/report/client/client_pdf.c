/* SPDX-License-Identifier: MIT */
/* The paper is drawn into nothing first, to count its pages, then for good.  Where narrower gaps
 * save a page it has these. */
#include "report/client/client_pdf.h"

#include "report/client/client_pdf_parts.h"

#define MARGIN 54.0
#define FOOT   40.0

static void draw_margins(void *what, struct flow *f) {
    struct client_page *const p = what;
    const struct offer *const o = p->offer;
    flow_foot(
        f, FOOT, 7.5,
        pool_words(p->pool, "%s%s%s", o->shop, o->shop[0] == '\0' ? "" : "  |  ", o->reference),
        p->pages);
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

/* A paper in the writing. */
struct writing {
    const struct offer *offer;
    const struct stop *stop;
    struct pool *pool;
    const char **lacking;
};

static bool count_pages(void *what, double spread, size_t *pages) {
    const struct writing *const w = what;
    return !stop_asked(w->stop) && draw(w->offer, NULL, spread, pages, w->pool, w->lacking);
}

bool client_pdf_write(const struct offer *o, const char *path, const struct stop *stop,
                      struct pool *pool, const char **lacking) {
    struct writing writing = {o, stop, pool, lacking};
    double spread;
    size_t pages;
    *lacking = NULL;
    return flow_fit(count_pages, &writing, &spread, &pages) && !stop_asked(stop) &&
           draw(o, path, spread, &pages, pool, lacking);
}
