/* SPDX-License-Identifier: MIT */
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

/* A paper in the writing. */
struct writing {
    const struct offer *offer;
    const struct stop *stop;
};

static bool draw(void *what, struct pdf *pdf, double spread, size_t *pages) {
    const struct writing *const w = what;
    if (stop_asked(w->stop)) {
        return false;
    }
    struct pool pool;
    pool_init(&pool);
    struct client_page p = {.offer = w->offer, .pool = &pool, .pages = *pages};
    p.flow = (struct flow){
        .pdf = pdf,
        .x = MARGIN,
        .width = pdf->width - 2 * MARGIN,
        .top = MARGIN - 6,
        .bottom = pdf->height - FOOT - 14,
        .y = MARGIN - 6,
        .spread = spread,
        .margins = draw_margins,
        .what = &p,
    };
    client_pdf_head(&p);
    draw_parts(&p);
    flow_end(&p.flow);
    *pages = p.flow.page;
    const bool held = !pool_failed(&pool);
    pool_clear(&pool);
    return held;
}

bool client_pdf_write(const struct offer *o, const char *path, const struct stop *stop,
                      struct pool *pool, const char **lacking) {
    const struct pdf_facts facts = {
        .title = o->title,
        .author = o->shop,
        .subject = o->paper,
        .year = o->year,
        .month = o->month,
        .day = o->day,
        .letter = o->letter,
    };
    struct writing writing = {o, stop};
    return flow_write(draw, &writing, &facts, path, pool, lacking);
}
