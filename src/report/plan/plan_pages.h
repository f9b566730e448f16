/* SPDX-License-Identifier: MIT */
/* An estimate's cutting plans on paper, to hang at the saw: lists of what to fetch, to rip, to stop
 * at and to keep, then every board and sheet with its cuts, several a page; those that are cut
 * alike once.  Letter where the rates are in inches, A4 where they are metric; black and grays that
 * print. */
#ifndef DOORCOST_REPORT_PLAN_PLAN_PAGES_H
#define DOORCOST_REPORT_PLAN_PLAN_PAGES_H

#include "base/stop.h"
#include "report/draw/image.h"
#include "report/words/plan_words.h"

#include <cairo.h>

struct plan_stack;
struct plan_block;

/* Dots a point of pages as pictures: as few as small letters bear, since plans are most of what a
 * workbook's pictures take. */
#define PLAN_PAGES_DOTS 1.4

struct plan_pages {
    const struct estimate *e;
    struct pool pool;
    cairo_t *cr;                     /* measured with; NULL: nothing is */
    const struct plan_stack *stacks; /* what is planned, one a material */
    size_t stack_count;
    struct plan_block *blocks; /* what stands on the pages, in their order */
    size_t block_count, block_room;
    size_t count;
    size_t most;                         /* laid out at most; 0: all */
    bool more;                           /* these are not all */
    bool book;                           /* pictures of a workbook: without margins */
    double width, height;                /* of a page, points */
    double left, top, inner_width, foot; /* where blocks stand; foot: below the last one */
};

/* Lays out the pages.  book: 0: for paper; else as pictures so wide as a page of a workbook, of
 * which no more are laid out than so many.
 * pages: always left so that plan_pages_clear may be called; no pages where nothing is planned.
 * false: out of memory. */
bool plan_pages_make(struct plan_pages *pages, const struct estimate *estimate, size_t book)
    __attribute__((warn_unused_result));
/* Frees what the pages hold. */
void plan_pages_clear(struct plan_pages *pages);

/* All pages as a PDF, to path as it stands (the caller has seen to a safe place). stop: asked
 * between pages. *lacking: as pdf_close has it, in the pages' pool. false: not written, or out of
 * memory. */
bool plan_pages_pdf(struct plan_pages *pages, const char *path, const struct stop *stop,
                    const char **lacking) __attribute__((warn_unused_result));
/* Page `at`, below count, as an SVG, likewise; *lacking stays where nothing lacks. */
bool plan_pages_svg(struct plan_pages *pages, size_t at, const char *path, const char **lacking)
    __attribute__((warn_unused_result));

/* A page as PNG, drawn on an image of width x height. *bytes: to be freed; NULL and false when
 * memory is out. */
bool plan_pages_png(struct plan_pages *pages, size_t at, struct image *image, unsigned char **bytes,
                    size_t *size) __attribute__((warn_unused_result));
/* `poplar 4/4 board 1; poplar 4/4 boards 2 and 3; mdf-panel sheet 1`: what a page shows. In the
 * pages' pool; empty when memory is out. */
const char *plan_pages_words(struct plan_pages *pages, size_t at);

#endif
