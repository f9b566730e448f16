/* SPDX-License-Identifier: MIT */
/* The sorts of work that a shop tells apart, and which operations are of which. */
#ifndef DOORCOST_MODEL_WORK_SORT_H
#define DOORCOST_MODEL_WORK_SORT_H

#include "model/rates.h"

/* What lists an operation: a style, a finish, the shop for every job. What only a job, a row or a
 * charge names is work around the doors. */
enum work_sort { WORK_MAKING, WORK_FINISHING, WORK_AROUND, WORK_SORT_COUNT };

/* The sort of the operation at that index of rates.operations. */
enum work_sort work_sort_of(const struct rates *rates, int32_t operation);

/* `making`, `finishing`, `around it`; static. */
const char *work_sort_name(enum work_sort sort);

#endif
