/* SPDX-License-Identifier: MIT */
/* Where hinges are bored: the places of a leaf in words, and leaves whose bores are alike together,
 * as a boring machine's stops are set. */
#ifndef DOORCOST_REPORT_WORDS_BORE_LIST_H
#define DOORCOST_REPORT_WORDS_BORE_LIST_H

#include "price/estimate.h"

/* Leaves with one hinge at the same places of hinged edges of one length. */
struct bore_group {
    int32_t hinge;      /* index into rates.hardware */
    bool level;         /* the edge is level: places are from the left, as seen from the front */
    length edge;        /* nm */
    const char *places; /* `3 1/2, 20 1/4` */
    int64_t hinges;     /* of all of them */
    const char *doors;  /* `G01 1, G02 4`: leaves of each */
};

struct bore_list {
    const struct bore_group *groups; /* in the order of the rates, the longest edge first */
    size_t count;
};

/* Groups all leaves of which it is said where their hinges are. Memory of pool. false: out of
 * memory. */
bool bore_list_make(struct bore_list *list, struct pool *pool, const struct estimate *estimate)
    __attribute__((warn_unused_result));

/* `3 1/2, 20 1/4 from the upper end`; "": it is not said, or memory is out. In pool. */
const char *bore_places(struct pool *pool, const struct estimate *estimate,
                        const struct leaf_figures *leaf);

/* `cup 35 mm, center 22.5 mm from the edge`, in millimeters wherever these are tenths, as makers of
 * hinges tell them; "": the hinge has none, or memory is out. In pool. */
const char *bore_cup(struct pool *pool, const struct hardware *hinge);

#endif
