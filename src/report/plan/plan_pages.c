/* SPDX-License-Identifier: MIT */
#include "report/plan/plan_pages.h"

#include "base/text.h"
#include "report/draw/pdf.h"
#include "report/draw/sink.h"
#include "report/plan/plan_draw.h"
#include "report/words/show.h"

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <stdlib.h>

#define MARGIN 30.0
#define HEAD   40.0
#define FOOT   16.0

/* --- which pages there are --- */

static bool add_pages(struct plan_pages *pages, bool sheet, size_t buy, const struct alike *list,
                      size_t count, size_t *room) {
    bool failed = false;
    pages->pages =
        array_grow(pages->pages, room, pages->count + count, sizeof *pages->pages, &failed);
    if (list == NULL || failed) {
        return false;
    }
    for (size_t i = 0; i < count; i++) {
        pages->pages[pages->count++] =
            (struct plan_page){.sheet = sheet, .buy = buy, .alike = list[i]};
    }
    return true;
}

bool plan_pages_make(struct plan_pages *pages, const struct estimate *e) {
    const bool letter = show_on_letter(e);
    const double long_side = letter ? 792.0 : 297.0 * 72 / 25.4;
    const double short_side = letter ? 612.0 : 210.0 * 72 / 25.4;
    size_t room = 0;
    size_t count = 0;
    bool held = true;
    *pages = (struct plan_pages){.e = e, .width = long_side, .height = short_side};
    pool_init(&pages->pool);
    for (size_t i = 0; held && i < e->lumber.count; i++) {
        const struct board_plan *const plan = e->lumber.buys[i].plan.plan;
        if (plan != NULL && e->lumber.buys[i].plan.no_plan_reason == NULL) {
            const struct alike *const list = plan_alike_boards(&pages->pool, plan, &count);
            held = add_pages(pages, false, i, list, count, &room);
        }
    }
    for (size_t i = 0; held && i < e->sheets.count; i++) {
        const struct sheet_plan *const plan = e->sheets.buys[i].plan.plan;
        if (plan != NULL && e->sheets.buys[i].plan.no_plan_reason == NULL) {
            const struct alike *const list = plan_alike_sheets(&pages->pool, plan, &count);
            held = add_pages(pages, true, i, list, count, &room);
        }
    }
    return held;
}

void plan_pages_clear(struct plan_pages *pages) {
    free(pages->pages);
    pool_clear(&pages->pool);
    *pages = (struct plan_pages){0};
}

/* --- a page --- */

static const char *head_words(const struct plan_pages *pages, const struct plan_page *page,
                              struct pool *pool) {
    const struct estimate *const e = pages->e;
    if (page->sheet) {
        const struct sheet_buy *const b = &e->sheets.buys[page->buy];
        const struct sheet_plan *const plan = b->plan.plan;
        const size_t stock = plan->sheets[page->alike.first].stock;
        return pool_format(
            pool, "%s, %s of %zu, %s", e->rates->sheets[b->material].name.s,
            plan_numbers(&page->alike, stock == SHEET_HALF ? "half sheet" : "sheet").text,
            plan->sheet_count,
            plan_show_size(e, b->plan.job.stocks[stock].width, b->plan.job.stocks[stock].length)
                .text);
    }
    const struct lumber_buy *const b = &e->lumber.buys[page->buy];
    const struct board_plan *const plan = b->plan.plan;
    const struct cut_stock *const stock =
        &b->plan.job.stocks[plan->boards[page->alike.first].stock];
    const struct lumber *const l = &e->rates->lumber[b->material];
    return pool_format(pool, "%s %s, %s of %zu, %s", l->name.s, text_or_empty(l->thickness_text.s),
                       plan_numbers(&page->alike, "board").text, plan->board_count,
                       plan_show_size(e, stock->width, stock->length).text);
}

static void draw_margins(const struct plan_pages *pages, cairo_t *cr, size_t at,
                         struct pool *pool) {
    const struct plan_page *const page = &pages->pages[at];
    const struct job *const job = pages->e->job;
    const char *const agreed = show_agreed(pool, pages->e);
    const double width = pages->width - 2 * MARGIN;
    const struct text_style title = {.size = 17, .bold = true, .width = width * 0.62, .cut = true};
    const struct text_style times = {
        .size = 22, .bold = true, .width = width, .align = ALIGN_RIGHT};
    const struct text_style name = {.size = 9, .width = width * 0.8, .cut = true};
    const struct text_style foot = {.size = 7.5, .gray = 0.3, .width = width * 0.85, .cut = true};
    const struct text_style number = {
        .size = 7.5, .gray = 0.3, .width = width, .align = ALIGN_RIGHT};
    text_draw(cr, MARGIN, MARGIN - 6, text_or_empty(head_words(pages, page, pool)), &title);
    if (page->alike.copies > 1) {
        text_draw(cr, MARGIN, MARGIN - 8,
                  text_or_empty(pool_format(pool, "x %zu", page->alike.copies)), &times);
    }
    text_draw(cr, MARGIN, MARGIN + 16,
              text_or_empty(pool_format(
                  pool, "%s%s%s, %s, %s%s%s", job->title.s, job->number.s == NULL ? "" : ", ",
                  text_or_empty(job->number.s), job->date.s, estimate_name(pages->e),
                  agreed == NULL ? "" : "; agreed: ", text_or_empty(agreed))),
              &name);
    const double low = pages->height - MARGIN - 2;
    text_draw(cr, MARGIN, low,
              job->unit == LENGTH_MM
                  ? "Sizes in mm as they are sawn, width x length. Guards on; the machine's "
                    "manual comes first. See a board before you cut it: defects move the cuts."
                  : "Sizes in inches as they are sawn, width x length. Guards on; the machine's "
                    "manual comes first. See a board before you cut it: defects move the cuts.",
              &foot);
    text_draw(cr, MARGIN, low,
              text_or_empty(pool_format(pool, "page %zu of %zu", at + 1, pages->count)), &number);
}

bool plan_pages_draw(struct plan_pages *pages, cairo_t *cr, size_t at) {
    const struct plan_page *const page = &pages->pages[at];
    const struct patch patch = {.x = MARGIN,
                                .y = MARGIN + HEAD,
                                .width = pages->width - 2 * MARGIN,
                                .height = pages->height - 2 * MARGIN - HEAD - FOOT};
    struct pool pool;
    pool_init(&pool);
    struct sketch sketch = {.cr = cr, .e = pages->e, .pool = &pool};
    draw_margins(pages, cr, at, &pool);
    bool held =
        page->sheet
            ? draw_sheet_page(&sketch, &pages->e->sheets.buys[page->buy], &page->alike, patch)
            : draw_board_page(&sketch, &pages->e->lumber.buys[page->buy], &page->alike, patch);
    held = held && !pool_failed(&pool);
    pool_clear(&pool);
    return held;
}

/* --- files --- */

bool plan_pages_pdf(struct plan_pages *pages, const char *path, const struct stop *stop) {
    const struct job *const job = pages->e->job;
    const struct pdf_facts facts = {.title = job->title.s,
                                    .subject = "cutting plans",
                                    .author = pages->e->rates->shop.name.s,
                                    .year = job->year,
                                    .month = job->month,
                                    .day = job->day,
                                    .letter = show_on_letter(pages->e)};
    struct pdf pdf;
    bool done = pdf_open(&pdf, path, &facts);
    cairo_pdf_surface_set_size(pdf.surface, pages->width, pages->height); /* on its side */
    for (size_t i = 0; done && i < pages->count; i++) {
        done = !stop_asked(stop) && plan_pages_draw(pages, pdf.cr, i);
        pdf_page(&pdf);
    }
    return pdf_close(&pdf) && done;
}

bool plan_pages_svg(struct plan_pages *pages, size_t at, const char *path) {
    struct sink sink;
    if (!sink_open(&sink, path)) {
        return false;
    }
    cairo_surface_t *const surface =
        cairo_svg_surface_create_for_stream(sink_take, &sink, pages->width, pages->height);
    cairo_t *const cr = cairo_create(surface);
    bool done = plan_pages_draw(pages, cr, at) && cairo_status(cr) == CAIRO_STATUS_SUCCESS;
    cairo_destroy(cr);
    cairo_surface_finish(surface);
    done = done && cairo_surface_status(surface) == CAIRO_STATUS_SUCCESS;
    cairo_surface_destroy(surface);
    return sink_close(&sink) && done;
}

bool plan_pages_png(struct plan_pages *pages, size_t at, struct image *image, unsigned char **bytes,
                    size_t *size) {
    *bytes = NULL;
    return plan_pages_draw(pages, image->cr, at) && image_take(image, bytes, size);
}
