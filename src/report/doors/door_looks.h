/* SPDX-License-Identifier: MIT */
/* The looks of a job's doors: rows that look alike share a drawing. */
#ifndef DOORCOST_REPORT_DOORS_DOOR_LOOKS_H
#define DOORCOST_REPORT_DOORS_DOOR_LOOKS_H

#include "price/estimate.h"
#include "report/doors/door_elevation.h"

struct door_look {
    struct door_elevation elevation;
    const char *ids;   /* of the rows that look so: `G01, G04`; NULL past `named` */
    const char *words; /* `door, shaker; 17 3/4 x 23 3/4, panel mdf-panel`; likewise */
    const char *alt;   /* the same for who does not see the drawing; likewise */
};

struct door_looks {
    struct door_look *list; /* in the order of the first row of each */
    size_t count;
};

/* Gathers the rows of an estimate by their looks, and finds the words for the first `named` of
 * them. A leaf that is seen in another's drawing has none. Memory of pool. false: out of memory. */
bool door_looks_make(struct door_looks *looks, const struct estimate *estimate, size_t named,
                     struct pool *pool) __attribute__((warn_unused_result));

#endif
