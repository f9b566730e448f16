/* SPDX-License-Identifier: MIT */
/* Figures by the names that papers give them: `total`, `G03`, `G03 labor`, `poplar to buy`, `sand`,
 * `G03 sand`.  The names are those of the tables of fields (their labels, or their keys in JSON),
 * behind the name of what they are of, which the job itself does not need. */
#ifndef DOORCOST_REPORT_WORDS_NAMED_FIGURE_H
#define DOORCOST_REPORT_WORDS_NAMED_FIGURE_H

#include "price/estimate.h"

/* The figure of that name, case ignored, none where there is no such name; *near: then the name
 * that is nearest, in pool, NULL where none is near. A name that several have is of the first: rows
 * of the door list come first, then the job's own lines, materials, products, hardware, operations.
 * Out of memory fails the pool. */
fig named_figure(const struct estimate *estimate, struct pool *pool, const char *name,
                 const char **near) __attribute__((warn_unused_result));

#endif
