/* SPDX-License-Identifier: MIT */
/* The products of a finish: how much of each is needed, which containers hold it, what the batches
 * are charged of it. For src/finish only. */
#ifndef DOORCOST_FINISH_PRODUCT_H
#define DOORCOST_FINISH_PRODUCT_H

#include "finish/coat.h"

/* What a coat takes: its coating, reducer, catalyst, and what it is washed off with. */
#define PRODUCTS_OF_COAT 4

/* Needs, containers and money of all products, and what each batch is charged. false: out of
 * memory. */
bool products_make(const struct calc *calc, struct finish_list *list)
    __attribute__((warn_unused_result));

/* Sets need_high or need_low (gal, L) of all products from the coats of list, which were put on at
 * that end of transfer; products_make was called for it. false: out of memory. */
bool products_need_at(const struct calc *calc, const struct finish_list *list, enum transfer_at at)
    __attribute__((warn_unused_result));

/* A name as it stands, or with its color: "NAME, COLOR"; NULL: out of memory. */
const char *finish_with_color(const struct calc *calc, const char *name, const char *color);

#endif
