/* SPDX-License-Identifier: MIT */
/* How a door is made, out of what the job, an option and the row each say. */
#ifndef DOORCOST_MODEL_CONSTRUCTION_H
#define DOORCOST_MODEL_CONSTRUCTION_H

#include "model/job.h"

/* Whether two say the same, wherever they say it. */
bool construction_same(const struct construction *a, const struct construction *b);
/* A hash of what it says; those that say the same have the same one. */
uint64_t construction_hash(const struct construction *construction);

/* What a panel of that form is made of: of solid ones the lumber named for them, else `panel`. */
const struct material_reference *construction_panel(const struct construction *construction,
                                                    enum door_form form);

/* How row is made under an option: [make], changed by the option, changed by the row's own words.
 * An end panel closes no opening: it is measured as the panel itself, whatever the job says. option
 * < 0: the base job. Cannot fail. */
struct construction row_construction(const struct job *job, const struct row *row, int option);

/* What `hardware` lists for a row that is made so. Catches, locks and stays are of what swings:
 * what the job or an option lists is for doors; a front or a panel has what its own row lists. */
const struct hardware_items *row_hardware(const struct row *row,
                                          const struct construction *construction);

/* The row on whose lines a place of the door list stands: rows are in the order of the list. NULL:
 * the place is above them all, or in another file. Borrowed. */
const struct row *job_row_at(const struct job *job, struct place place);

/* What `accept` of the job says where that question is meant so: its id, and the row that it stands
 * on where it stands on one. In pool, or static. */
const char *job_accept_item(const struct job *job, const struct problem *question,
                            struct pool *pool);

#endif
