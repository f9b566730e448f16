/* SPDX-License-Identifier: MIT */
#include "report/plan/plan_pages.h"

#include "base/text.h"
#include "report/draw/pdf.h"
#include "report/draw/sink.h"
#include "report/draw/tag.h"
#include "report/plan/plan_flow.h"
#include "report/words/show.h"

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <stdlib.h>

#define SIDE        34.0
#define TOP         40.0
#define HEADER      24.0
#define FOOT        36.0
#define FOOT_SIZE   7.5
#define BOOK_WIDTH  508.0 /* a page of the workbook */
#define BOOK_HEIGHT 304.0 /* two on a page, and no row of a spreadsheet is higher than 409 */
#define BOOK_SIDE   2.0

/* --- making --- */

static void set_size(struct plan_pages *p) {
    const bool letter = show_on_letter(p->e);
    if (p->book) {
        p->width = BOOK_WIDTH;
        p->height = BOOK_HEIGHT;
        p->left = p->top = BOOK_SIDE;
        p->foot = p->height - BOOK_SIDE;
    } else {
        p->width = letter ? 612.0 : 210.0 * 72 / 25.4;
        p->height = letter ? 792.0 : 297.0 * 72 / 25.4;
        p->left = SIDE;
        p->top = TOP;
        p->foot = p->height - FOOT;
    }
    p->inner_width = p->width - 2 * p->left;
}

bool plan_pages_make(struct plan_pages *pages, const struct estimate *e, size_t book) {
    *pages = (struct plan_pages){.e = e, .book = book > 0, .most = book};
    pool_init(&pages->pool);
    set_size(pages);
    pages->stacks = plan_stacks_make(&pages->pool, e, &pages->stack_count);
    if (pages->stacks == NULL) {
        return false;
    }
    if (pages->stack_count == 0) {
        return true;
    }
    cairo_surface_t *const surface = cairo_image_surface_create(CAIRO_FORMAT_RGB24, 1, 1);
    pages->cr = cairo_create(surface);
    cairo_surface_destroy(surface);
    return plan_flow(pages, pages->cr);
}

void plan_pages_clear(struct plan_pages *pages) {
    if (pages->cr != NULL) {
        cairo_destroy(pages->cr);
    }
    free(pages->blocks);
    pool_clear(&pages->pool);
    *pages = (struct plan_pages){0};
}

const char *plan_pages_words(struct plan_pages *pages, size_t at) {
    const char *words = at == 0 ? "what to fetch, rip, cut and keep" : "";
    for (size_t i = 0; i < pages->block_count; i++) {
        const struct plan_block *const b = &pages->blocks[i];
        if (b->page == at && b->kind == BLOCK_HEAD) {
            words = pool_words(&pages->pool, "%s%s%s", words, words[0] == '\0' ? "" : "; ",
                               plan_group_words(&pages->pool, pages->e, b->stack, b->group));
        }
    }
    return words[0] == '\0' ? "continued" : words;
}

/* --- a page --- */

static void draw_margins(const struct plan_pages *p, cairo_t *cr, size_t at, struct pool *pool) {
    const double width = p->inner_width;
    const struct text_style name = {.size = LINE_SIZE, .width = width * 0.85, .cut = true};
    const struct text_style number = {.size = LINE_SIZE, .width = width, .align = ALIGN_RIGHT};
    const struct text_style foot = {.size = FOOT_SIZE, .gray = 0.25, .width = width};
    text_draw(cr, p->left, HEADER,
              pool_words(pool, "%s, %s", p->e->job->title.s, plan_job_words(pool, p->e)), &name);
    text_draw(cr, p->left, HEADER, pool_words(pool, "page %zu of %zu", at + 1, p->count), &number);
    text_draw(cr, p->left, p->height - FOOT + 8,
              p->e->job->unit == LENGTH_MM
                  ? "Sizes in mm as they are sawn, width x length. Guards on; the machine's manual "
                    "comes first. See a board before you cut it: defects move the cuts."
                  : "Sizes in inches as they are sawn, width x length. Guards on; the machine's "
                    "manual comes first. See a board before you cut it: defects move the cuts.",
              &foot);
}

static void draw_head(const struct plan_pages *p, cairo_t *cr, const struct plan_block *b) {
    const double in = plan_head_indent(b);
    for (size_t i = 0; i < (size_t)(in / HEAD_TICK); i++) {
        plan_box(cr, p->left + (double)i * HEAD_TICK, b->y + 1);
    }
    tag_text(cr, "H3", p->left + in, b->y, b->text, &b->style);
    if (b->stack->sheet) {
        const struct sketch s = {.cr = cr};
        const int32_t material = p->e->sheets.buys[b->stack->buy].material;
        const struct text_style line = {.size = HEAD_SIZE, .bold = true};
        const double wide = text_measure(cr, b->text, &line).width;
        const double room = b->style.width;
        sketch_grain(&s, p->left + in + (wide < room ? wide : room) + 14, b->y + HEAD_SIZE * 0.65,
                     p->e->rates->sheets[material].grain);
    }
}

/* Numbers that a drawing had no room for are told beside its name. */
static void draw_unnamed(const struct plan_pages *p, const struct sketch *s,
                         const struct plan_block *b) {
    const struct text_style style = {
        .size = SMALLEST, .width = p->inner_width, .align = ALIGN_RIGHT};
    if (s->unnamed > 0) {
        text_draw(s->cr, p->left, b->y + b->patch.height - SMALLEST,
                  pool_words(s->pool, "%zu parts are too small for their number: see the cuts",
                             s->unnamed),
                  &style);
    }
}

static bool draw_picture(const struct plan_pages *p, cairo_t *cr, const struct plan_block *b) {
    struct pool pool;
    pool_init(&pool);
    struct sketch sketch = {.cr = cr, .e = p->e, .pool = &pool};
    struct patch patch = b->patch;
    patch.x = p->left + b->x;
    patch.y = b->y;
    bool held = b->kind == BLOCK_SHEET ? sheet_picture(&sketch, b->stack, b->group, patch)
                                       : board_picture(&sketch, b->stack, b->group, patch);
    draw_unnamed(p, &sketch, b);
    held = held && !pool_failed(&pool);
    pool_clear(&pool);
    return held;
}

/* Draws a page. false: out of memory. */
static bool draw_page(const struct plan_pages *p, cairo_t *cr, size_t at) {
    bool held = true;
    text_share(cr, p->cr);
    for (size_t i = 0; held && i < p->block_count; i++) {
        const struct plan_block *const b = &p->blocks[i];
        if (b->page != at) {
            continue;
        }
        switch (b->kind) {
        case BLOCK_WORDS:
            tag_text(cr, b->style.bold ? (at == 0 && i == 0 ? "H1" : "H2") : "P", p->left + b->x,
                     b->y, b->text, &b->style);
            break;
        case BLOCK_LINES:
            plan_columns_draw(cr, &b->columns, p->left + b->x, b->y);
            break;
        case BLOCK_HEAD:
            draw_head(p, cr, b);
            break;
        case BLOCK_BOARD:
        case BLOCK_SHEET:
            tag_begin(cr, "Figure");
            held = draw_picture(p, cr, b);
            tag_end(cr, "Figure");
            break;
        }
    }
    if (held && !p->book) {
        struct pool pool;
        pool_init(&pool);
        draw_margins(p, cr, at, &pool);
        held = !pool_failed(&pool);
        pool_clear(&pool);
    }
    return held;
}

/* --- files --- */

bool plan_pages_pdf(struct plan_pages *pages, const char *path, const struct stop *stop,
                    const char **lacking) {
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
    for (size_t i = 0; done && i < pages->count; i++) {
        done = !stop_asked(stop) && draw_page(pages, pdf.cr, i);
        pdf_page(&pdf);
    }
    return pdf_close(&pdf, &pages->pool, lacking) && done;
}

bool plan_pages_svg(struct plan_pages *pages, size_t at, const char *path, const char **lacking) {
    struct sink sink;
    if (!sink_open(&sink, path)) {
        return false;
    }
    cairo_surface_t *const surface =
        cairo_svg_surface_create_for_stream(sink_take, &sink, pages->width, pages->height);
    cairo_t *const cr = cairo_create(surface);
    bool done = draw_page(pages, cr, at) && cairo_status(cr) == CAIRO_STATUS_SUCCESS;
    const char *const text = text_lacking(cr);
    *lacking = text == NULL ? *lacking : pool_words(&pages->pool, "%s", text);
    cairo_destroy(cr);
    cairo_surface_finish(surface);
    done = done && cairo_surface_status(surface) == CAIRO_STATUS_SUCCESS;
    cairo_surface_destroy(surface);
    return sink_close(&sink) && done;
}

bool plan_pages_png(struct plan_pages *pages, size_t at, struct image *image, unsigned char **bytes,
                    size_t *size) {
    *bytes = NULL;
    return draw_page(pages, image->cr, at) && image_take(image, bytes, size);
}
