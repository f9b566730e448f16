/* SPDX-License-Identifier: MIT */
/* What a plan may cut of the rack: the rows of a lumber or sheet as stocks of which there are only
 * so many, and what was taken of them. Method: docs/method.md, "From the rack". */
#ifndef DOORCOST_STOCK_RACK_STOCK_H
#define DOORCOST_STOCK_RACK_STOCK_H

#include "model/calc.h"
#include "model/limits.h"
#include "model/rack.h"
#include "stock/plan_input.h"

struct rack_stock {
    struct rack_item *rows; /* those with something left; the last `sawn` are offcuts */
    size_t count, sawn;
    fig *left;  /* pieces of each */
    fig *worth; /* money of a piece of each, to the cent */
    fig *size;  /* area or volume of a piece of each; set by the plan */
    fig *taken; /* pieces of each; set by the plan */
    /* In all, none where nothing is there: */
    fig pieces, amount, charged; /* amount: of `size`; charged: worth of what is taken, of each row
                                    what its worth says, to the cent */
};

/* Finds the rows of a kind, NAME_LUMBER or NAME_SHEET, and index. Memory of calc's pool; false: out
 * of memory. */
bool rack_stock_find(struct rack_stock *rack, const struct calc *calc, int kind, int32_t index)
    __attribute__((warn_unused_result));

/* The row that a stock of a plan is, the first `sold` of which are sold; NULL: it is sold. */
static inline const struct rack_item *rack_stock_row(const struct rack_stock *rack, size_t sold,
                                                     size_t stock) {
    return stock < sold ? NULL : &rack->rows[stock - sold];
}

/* Adds to a plan's operands how many stocks are of the rack and how many of these are sawn, of
 * which sawn are the words; nothing where there are none. */
void rack_stock_counts(const struct rack_stock *rack, struct plan_input *input, const char *sawn);

/* Puts pieces and worth of row i on the tape. */
void rack_stock_add(struct rack_stock *rack, const struct calc *calc, size_t i);

/* Adds up what is taken; what: of the sizes, unit: theirs. */
void rack_stock_total(struct rack_stock *rack, const struct calc *calc, const char *what,
                      enum unit unit);

#endif
