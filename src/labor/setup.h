/* SPDX-License-Identifier: MIT */
/* How often an operation is set up: once per distinct thickness, width, length, material ... of the
 * parts that it works on. */
#ifndef DOORCOST_LABOR_SETUP_H
#define DOORCOST_LABOR_SETUP_H

#include "door/driver.h"
#include "finish/finish.h"
#include "labor/labor.h"

/* The number of set-ups of an operation over the rows where applies[row] is true: 1 a job, a
 * distinct material, thickness, ..., or a mix of the finish's batches (SETUP_PER_COAT,
 * SETUP_PER_COLOR). Of thicknesses, widths and lengths `o` gets what they are for; memory of
 * the pool of c. *held: set to false when out of memory, else left. */
int64_t setup_count(const struct calc *c, struct operation_figures *o, const bool *applies,
                    const struct finish_list *finish, bool *held);

#endif
