/* SPDX-License-Identifier: MIT */
/* How often an operation is set up: once per distinct thickness, width, length, material ... of the
 * parts that it works on. */
#ifndef DOORCOST_LABOR_SETUP_H
#define DOORCOST_LABOR_SETUP_H

#include "finish/finish.h"

/* Whether work counted by `driver` is on the door as a whole, so that the door and not its parts
 * calls for set-ups and must go through the machine: by door, hinge, edge, run or area. */
bool driver_is_whole_door(enum driver driver);

/* Whether an operation counted by `driver` works on that part: stiles on stiles, joints on the
 * frame, both sides of a joint being cut; runs of frame on the frame, solid panels on those, doors
 * and areas on all.
 */
bool driver_works_on(enum driver driver, const struct part *part);

/* The number of set-ups of an operation over the rows where applies[row] is true: 1 a job, a
 * distinct material, thickness, ..., or a mix of the finish's batches (SETUP_PER_COAT,
 * SETUP_PER_COLOR). *held: set to false when out of memory, else left. */
int64_t setup_count(const struct calc *calc, const struct operation *operation, const bool *applies,
                    const struct finish_list *finish, bool *held);

#endif
