/* SPDX-License-Identifier: MIT */
/* Several jobs of one shop put together as one, to be bought for and cut at once.
 *
 * Rows keep how they are made; what a job says of its sale, its client and its work stays out. A
 * row is named by the letter of its job: `A-D01`. */
#ifndef DOORCOST_TOGETHER_JOINED_JOB_H
#define DOORCOST_TOGETHER_JOINED_JOB_H

#include "together/together.h"

/* The letter of job `number`, from 0 on, as text: "A". Static. */
const char *joined_letter(size_t number);

/* Puts together->job together of together->jobs, of which each must be estimated. Memory of its
 * pool; what rows say is borrowed. false: out of memory. */
bool joined_job_make(struct together *together) __attribute__((warn_unused_result));

#endif
