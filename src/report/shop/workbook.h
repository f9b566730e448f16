/* SPDX-License-Identifier: MIT */
/* The shop's workbook of an estimate. */
#ifndef DOORCOST_REPORT_SHOP_WORKBOOK_H
#define DOORCOST_REPORT_SHOP_WORKBOOK_H

#include "base/stop.h"
#include "price/estimate.h"

/* A workbook that is laid out and not yet written. */
struct shop_book;

/* Lays out the workbook of base.  options: option_count estimates of the same job; borrowed by this
 * call alone, as base is but for its tape, which must outlive the workbook. stop:
 * asked as it is laid out and written; outlives it. NULL: memory ran out, or it was stopped.
 */
struct shop_book *shop_book_new(const struct estimate *base, const struct estimate *options,
                                size_t option_count, const struct problems *problems,
                                const struct stop *stop) __attribute__((warn_unused_result));
/* The figure that a cell shows, by its sheet and place as a spreadsheet names it: `Prices!F12`;
 * none: there is no such cell, or it shows words. */
fig shop_book_figure(const struct shop_book *workbook, const char *cell);
/* Writes it to path as it stands (the caller has seen to a safe place), once. false: not written
 * (errno tells), or memory ran out. */
bool shop_book_write(struct shop_book *workbook, const char *path)
    __attribute__((warn_unused_result));
/* Frees the workbook; NULL is accepted. */
void shop_book_free(struct shop_book *workbook);

#endif
