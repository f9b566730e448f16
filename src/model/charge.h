/* SPDX-License-Identifier: MIT */
/* All that a job charges beside its doors: the charges in their order, delivery last. */
#ifndef DOORCOST_MODEL_CHARGE_H
#define DOORCOST_MODEL_CHARGE_H

#include "model/job.h"

/* How many there are, 0 or more. */
size_t charge_count(const struct job *job);

/* The charge of that index, below charge_count. Borrowed. */
const struct charge *charge_at(const struct job *job, size_t index);

/* What it is for: "delivery" for that. Borrowed. */
const char *charge_name(const struct job *job, size_t index);

/* The index of the first charge that the operation is done for and paid by; -1: none. operation:
 * index into rates.operations. */
int32_t charge_of_operation(const struct job *job, int32_t operation);

#endif
