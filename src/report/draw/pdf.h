/* SPDX-License-Identifier: MIT */
/* A PDF file of pages, letter or A4, upright or across, with title, language and a tree of its
 * pieces (report/draw/tag.h), of which it must have one.  The same facts and drawing give the same
 * bytes.
 */
#ifndef DOORCOST_REPORT_DRAW_PDF_H
#define DOORCOST_REPORT_DRAW_PDF_H

#include "base/pool.h"
#include "report/draw/sink.h"

#include <cairo.h>
#include <stdbool.h>
#include <stdint.h>

struct pdf_facts {
    const char *title, *author, *subject; /* document properties */
    int32_t year, month, day;             /* of the document's making, so that runs repeat */
    bool letter;                          /* US letter, else A4 */
    bool across;                          /* wider than high */
};

struct pdf {
    cairo_surface_t *surface;
    cairo_t *cr;
    double width, height; /* points */
    struct sink sink;
    enum pdf_told { TOLD_NOTHING, TOLD_LANGUAGE, TOLD_TABLE, TOLD_ALL } told; /* of the language */
    long place; /* digits so far of where the table of places stands */
    bool nowhere;
};

/* path: NULL for a document that goes nowhere, to find out how many pages it takes. pdf: always
 * left so that pdf_close may be called; it must stay where it is until then. */
bool pdf_open(struct pdf *pdf, const char *path, const struct pdf_facts *facts)
    __attribute__((warn_unused_result));

/* Ends the page; the next thing drawn is on a new one. */
void pdf_page(struct pdf *pdf);

/* *lacking (may be NULL, then pool too): in pool, the first text with letters of which no typeface
 * of this computer knows the shape, for which boxes stand; NULL: there is none. false: could not be
 * written, or memory ran out. */
bool pdf_close(struct pdf *pdf, struct pool *pool, const char **lacking)
    __attribute__((warn_unused_result));

#endif
