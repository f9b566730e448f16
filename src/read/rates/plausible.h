/* SPDX-License-Identifier: MIT */
/* Slips of the pen in prices, rates and percentages: numbers outside of what is usual, and larger
 * amounts that come dearer than smaller ones. */
#ifndef DOORCOST_READ_RATES_PLAUSIBLE_H
#define DOORCOST_READ_RATES_PLAUSIBLE_H

#include "model/job.h"
#include "read/key/key.h"

/* Asks about each value of the rates, after all are read, that is not within what is usual:
 * [plausible] of the rates, else the table of plausible_keys.c. Nothing is asked about 0, which is
 * no slip, nor about money in currencies of another size than the dollar, but where the rates say
 * themselves what is usual. */
void plausible_check_rates(struct reader *reader, const struct rates *rates);

/* The same for the date and the percentages of the job. */
void plausible_check_job(struct reader *reader, const struct rates *rates, const struct job *job);

/* larger.c: asks about a larger container, a price break or a whole sheet that costs more than as
 * much in smaller ones, or less than one of these. */
void larger_check(struct reader *reader, const struct rates *rates);

#endif
