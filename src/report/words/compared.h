/* SPDX-License-Identifier: MIT */
/* What options are compared by: the lines from cost to total, then profit, purchase, work, weight,
 * in one order on every paper. */
#ifndef DOORCOST_REPORT_WORDS_COMPARED_H
#define DOORCOST_REPORT_WORDS_COMPARED_H

#include "report/words/sale_line.h"

/* A line over estimates of one job. */
struct compared_line {
    const char *label;
    const fig *figures; /* one an estimate; none: it has no such figure */
    bool less;          /* is taken off */
    bool total;         /* what stands above leads to it */
    bool behind;        /* stands behind the total: what the price leaves and takes */
};

struct compared {
    struct compared_line *lines; /* without those that no estimate has */
    size_t count;
};

/* The lines over an array of `count` estimates, the first of them the job's own. zeros: those that
 * come to nothing are kept, as a workbook does, where a rate may be raised. Memory of pool; no
 * lines when it is out. */
struct compared compared_make(struct pool *pool, const struct estimate *const *estimates,
                              size_t count, bool zeros);

#endif
