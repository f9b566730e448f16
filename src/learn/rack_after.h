/* SPDX-License-Identifier: MIT */
/* What is on the rack when a job is done: what was there less what the job took of it, and what the
 * job leaves. */
#ifndef DOORCOST_LEARN_RACK_AFTER_H
#define DOORCOST_LEARN_RACK_AFTER_H

#include "learn/learned.h"

/* Makes the rows of the next rack of those that the estimate's rates have: less what the estimate
 * takes of each, with its part of the worth; more the offcuts worth keeping of sheets that are
 * priced by plan and of lumber that is, or that the rack has, worth nothing; more what was noted as
 * left of hardware, coatings and additives. Of those where it was noted what was taken, that stands
 * in place of what the estimate takes: old row + bought - taken, not below 0, + left. Rows with
 * nothing left are left out. Numbers of `left` have at most 6 decimals, sizes are as a tape shows
 * them. What was noted as left of a coating that the job has in several colors, or of a tinted one
 * that it does not have, is asked about, and not added. The rows are such as the reader takes:
 * those whose sizes became the same are put together, and of more than it takes the smallest
 * offcuts are left out, and asked about. All in pool. false: out of memory. */
bool rack_after(struct rack *next, const struct estimate *estimate, const struct learned *learned,
                struct problems *problems, struct pool *pool) __attribute__((warn_unused_result));

#endif
