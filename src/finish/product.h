/* SPDX-License-Identifier: MIT */
/* The products of a finish: how much of each is needed, which containers hold it, what the batches
 * are charged of it. For src/finish only. */
#ifndef DOORCOST_FINISH_PRODUCT_H
#define DOORCOST_FINISH_PRODUCT_H

#include "finish/coat.h"

/* What a coat takes: its coating, reducer, catalyst, and what it is washed off with. */
#define PRODUCTS_OF_COAT 4

/* Needs, containers and money of all products, and what each batch is charged. terms: room for
 * PRODUCTS_OF_COAT figures a coat of the job. false: out of memory. */
bool products_make(const struct calc *calc, struct finish_list *list, fig *terms)
    __attribute__((warn_unused_result));

/* Sets need_high or need_low (gal, L) of product p from the coats of list, which were put on at
 * that end of transfer; products_make was called for it. terms: as above. */
void product_need_at(const struct calc *calc, const struct finish_list *list, size_t p,
                     enum transfer_at at, fig *terms);

/* A name as it stands, or with its color: "NAME, COLOR"; NULL: out of memory. */
const char *finish_with_color(const struct calc *calc, const char *name, const char *color);

#endif
