/* SPDX-License-Identifier: MIT */
/* What is labeled: every piece of every part, or every leaf, front and panel as it is packed. */
#ifndef DOORCOST_REPORT_LABELS_LABEL_LIST_H
#define DOORCOST_REPORT_LABELS_LABEL_LIST_H

#include "price/estimate.h"

/* Labels of one paper; more are asked for in parts, by naming rows. */
#define MOST_LABELS 20000

/* One label. Openings, leaves and pieces count from 1. */
struct label {
    const struct leaf_figures *leaf;
    const struct part *part; /* NULL: of the whole leaf */
    int32_t opening;         /* of the row */
    int32_t hung;            /* of the opening's leaves of this kind, from the left */
    int32_t piece;           /* of the leaf's pieces of this part */
    int32_t number;          /* of the leaf, among all of the job */
};

struct label_list {
    enum label_of of;
    struct label *labels; /* of parts in the order of cutting (report/words/cut_list.h), else in
                             that of the list */
    size_t count;
    int64_t wanted; /* how many there are; over MOST_LABELS none was listed */
};

/* Lists the labels of the estimate; rows: the rows of the job that are labeled, ascending;
 * row_count 0: all. Memory of pool. false: out of memory. */
bool label_list_make(struct label_list *list, struct pool *pool, const struct estimate *estimate,
                     enum label_of of, const size_t *rows, size_t row_count)
    __attribute__((warn_unused_result));

#endif
