/* SPDX-License-Identifier: MIT */
/* The drawings of an estimate's cutting plans, to hang at the saw: a page for each board and each
 * sheet; those that are cut alike share one.  Letter where the rates are in inches, A4 where they
 * are metric, on its side; black and grays that print. */
#ifndef DOORCOST_REPORT_PLAN_PLAN_PAGES_H
#define DOORCOST_REPORT_PLAN_PLAN_PAGES_H

#include "base/stop.h"
#include "report/draw/image.h"
#include "report/words/plan_words.h"

#include <cairo.h>

/* One page: a board of a lumber, or a sheet of a kind. */
struct plan_page {
    bool sheet;
    size_t buy; /* in the estimate's list of lumber, or of sheets */
    struct alike alike;
};

struct plan_pages {
    const struct estimate *e;
    struct pool pool;
    struct plan_page *pages;
    size_t count;
    double width, height; /* points */
};

/* Finds the pages.  pages: always left so that plan_pages_clear may be called. false: out of
 * memory.
 */
bool plan_pages_make(struct plan_pages *pages, const struct estimate *estimate)
    __attribute__((warn_unused_result));
/* Frees what the pages hold. */
void plan_pages_clear(struct plan_pages *pages);

/* Draws page `at` on a surface of width x height points. false: out of memory. */
bool plan_pages_draw(struct plan_pages *pages, cairo_t *cr, size_t at)
    __attribute__((warn_unused_result));

/* All pages as a PDF, to path as it stands (the caller has seen to a safe place). stop: asked
 * between pages. false: not written, or out of memory. */
bool plan_pages_pdf(struct plan_pages *pages, const char *path, const struct stop *stop)
    __attribute__((warn_unused_result));
/* Page `at`, below count, as an SVG, likewise. */
bool plan_pages_svg(struct plan_pages *pages, size_t at, const char *path)
    __attribute__((warn_unused_result));

/* A page as PNG, drawn on an image of width x height. *bytes: to be freed; NULL and false when
 * memory is out. */
bool plan_pages_png(struct plan_pages *pages, size_t at, struct image *image, unsigned char **bytes,
                    size_t *size) __attribute__((warn_unused_result));

#endif
