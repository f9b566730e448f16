/* SPDX-License-Identifier: MIT */
/* Why a price moved: the way from one job to another, a group of inputs at a time.
 *
 * Each step takes one group (bridge/group.h) from the newer job, and the whole job is read and
 * estimated anew; a step is the difference to the estimate before it. The last estimate is that of
 * the newer job as it stands, so the steps add up to the whole difference whatever the order. What
 * a change comes to depends on what was changed before it; the order is that of the groups.
 * Method: docs/method.md, "Why a price moved". */
#ifndef DOORCOST_BRIDGE_BRIDGE_H
#define DOORCOST_BRIDGE_BRIDGE_H

#include "bridge/change.h"
#include "price/outcome.h"

struct bridge_step {
    unsigned groups; /* bits 1 << enum bridge_group: the one of the step, and those before it
                        that could not be estimated without it */
    const char *why; /* why these could not; NULL where there is one group */
    const struct bridge_change *changes; /* of these groups */
    size_t change_count;
    struct outcome adds;
};

struct bridge {
    struct pool pool;     /* of all below */
    struct problems read; /* owns the texts that changes show */
    const char *older_path, *newer_path;
    struct outcome older, newer;
    struct bridge_changes changes; /* by group */
    struct bridge_step *steps; /* in their order; groups in which nothing changed are left out */
    size_t step_count;
    uint8_t money_decimals;
};

enum bridge_result {
    BRIDGE_OK,
    BRIDGE_MEMORY,
    BRIDGE_FAULT,    /* one of the two could not be read or estimated */
    BRIDGE_CURRENCY, /* they are in different currencies */
    BRIDGE_UNIT      /* their sizes, or those of their rates, are in different units */
};

/* Makes the bridge between the jobs at two paths, each a job file or a saved quote; both are
 * borrowed. option: its name, in both;
 * NULL: the jobs as listed. Faults of the two jobs are not told here: they were read before.
 * bridge_clear must be called whatever the result. */
enum bridge_result bridge_make(struct bridge *bridge, const char *older, const char *newer,
                               const char *option, struct plan_request plans)
    __attribute__((warn_unused_result));

/* Frees all that the bridge owns. */
void bridge_clear(struct bridge *bridge);

#endif
