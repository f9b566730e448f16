/* SPDX-License-Identifier: MIT */
/* The checker: looks at a plan as a person with a tape measure would, and believes nothing that the
 * planner says. It shares no code with the planners, only the types. */
#ifndef DOORCOST_CUT_CHECK_PLAN_CHECK_H
#define DOORCOST_CUT_CHECK_PLAN_CHECK_H

#include "cut/sheet/sheet_plan.h"

enum plan_fault {
    PLAN_GOOD,
    PLAN_NO_MEMORY,    /* could not be checked */
    PLAN_WRONG_INDEX,  /* a stock, item, node or part that does not exist, or used twice */
    PLAN_WRONG_COUNT,  /* an item is there less or more often than wanted */
    PLAN_TOO_MANY,     /* more pieces of a stock than there are copies */
    PLAN_OUTSIDE,      /* a part leaves the trimmed stock */
    PLAN_OVERLAP,      /* two parts share room */
    PLAN_NO_KERF,      /* no blade fits between two parts */
    PLAN_NOT_CUTTABLE, /* edge-to-edge cuts cannot free the parts */
    PLAN_TURNED,       /* an item is turned that must not be */
    PLAN_WRONG_CUT,    /* the tree of cuts does not give the parts where they are */
    PLAN_WRONG_COST,   /* the cost is not the sum of prices */
    PLAN_WRONG_BOUND   /* the bound is above the cost, or below 0 */
};

struct plan_finding {
    enum plan_fault fault;
    size_t where; /* the sheet with the fault, from 0; SIZE_MAX: the whole plan */
};

/* The first fault found, or PLAN_GOOD. The job is one that the planner accepts. */
struct plan_finding sheet_plan_check(const struct cut_job *job, const struct sheet_plan *plan);

/* A fault in words, such as "two parts overlap". Static text. */
const char *plan_fault_text(enum plan_fault fault);

#endif
