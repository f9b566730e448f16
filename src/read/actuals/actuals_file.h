/* SPDX-License-Identifier: MIT */
/* The way into the reader of what a shop noted of a job: a table as spreadsheets save it. */
#ifndef DOORCOST_READ_ACTUALS_ACTUALS_FILE_H
#define DOORCOST_READ_ACTUALS_ACTUALS_FILE_H

#include "model/actuals.h"

/* Reads the table at path against the names of rates, which were read without errors; every fault
 * goes to problems, in one go. actuals: always left so that actuals_clear may be called. false: out
 * of memory. */
bool actuals_read(struct actuals *actuals, const struct rates *rates, const char *path,
                  struct problems *problems) __attribute__((warn_unused_result));

/* Frees all that was read; actuals is empty after. */
void actuals_clear(struct actuals *actuals);

#endif
