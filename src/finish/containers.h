/* SPDX-License-Identifier: MIT */
/* The cheapest set of containers that holds a need.
 *
 * "1 gal may cost less than 3 qt": of all sets that hold the need the one of least money is taken,
 * of equal ones that with the least left over, then that with the fewest containers.  The search is
 * exact; only where sizes of the very same price by volume leave more than some millions of equal
 * sets does it stop and take the best one seen.  Method: docs/method.md, "Containers". */
#ifndef DOORCOST_FINISH_CONTAINERS_H
#define DOORCOST_FINISH_CONTAINERS_H

#include "figure/tape.h"
#include "model/limits.h"

struct container_size {
    int64_t volume; /* > 0, any unit, the same as the need's */
    int64_t price;  /* >= 0 */
};

/* counts: one a size.  false: no sizes. need <= 0 takes none. */
bool containers_choose(int64_t need, const struct container_size *sizes, size_t count,
                       int64_t *counts);

/* The least need, in steps of `step` (> 0), for which the same set is chosen as for `need` (> 0).
 */
int64_t containers_hold_from(int64_t need, int64_t step, const struct container_size *sizes,
                             size_t count);

/* The same as a chooser of the tape: operands need, then volume and price of each size; output i:
 * how many of size i. */
extern const struct chooser containers_chooser;

#endif
