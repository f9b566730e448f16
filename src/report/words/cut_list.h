/* SPDX-License-Identifier: MIT */
/* The parts as they are cut at a machine, not door by door: what has one fence, and what has one
 * stop. Glass is not cut here. */
#ifndef DOORCOST_REPORT_WORDS_CUT_LIST_H
#define DOORCOST_REPORT_WORDS_CUT_LIST_H

#include "price/estimate.h"

/* Pieces of one size of one material: they are cut as one gang. Lengths in nm. */
struct cut_gang {
    length width, length;
    length rough_width, rough_length; /* of lumber; else as finished */
    int64_t pieces;
    const char *parts; /* `stile, top rail` */
    const char
        *doors; /* `G01 2, G02 8`: how many for which; of many the first, and how many more */
    bool stop;  /* the first of a length: the stop is moved */
};

/* Strips of one width, that lumber is ripped to and sheets are cut to: staves of what is glued up.
 */
struct cut_fence {
    length width;
    int64_t strips;
    length run; /* of their lengths, of lumber the rough ones, without kerfs */
};

/* What is cut of one thickness of a material. */
struct cut_run {
    enum material_kind kind;
    int32_t material;
    length thickness;
    const struct cut_fence *fences; /* widest first */
    size_t fence_count;
    const struct cut_gang *gangs; /* longest first, of one length the widest first */
    size_t gang_count;
};

struct cut_list {
    const struct cut_run *stocks; /* lumber, then sheets; in the order of the rates, the thickest
                                       first */
    size_t count;
};

/* The order in which parts are cut at stops, as qsort has it: of one material together, the
 * thickest first, then the longest, then the widest. */
int cut_order(const struct part *a, const struct part *b);

/* Lists what the estimate cuts. Memory of pool. false: out of memory. */
bool cut_list_make(struct cut_list *list, struct pool *pool, const struct estimate *estimate)
    __attribute__((warn_unused_result));

#endif
