/* SPDX-License-Identifier: MIT */
/* What is turned to reach a wanted total is called, the same on every paper. */
#ifndef DOORCOST_REPORT_WORDS_TARGET_WORDS_H
#define DOORCOST_REPORT_WORDS_TARGET_WORDS_H

#include "price/target.h"

/* "profit, % markup", "discount, %", "hours of work"; static. */
const char *lever_name(enum lever lever, const struct estimate *estimate);
/* Ids of the rows that are left out: `G03, G07`; "" for none. In pool; "" when memory is out. */
const char *target_rows(const struct target *target, struct pool *pool);

#endif
