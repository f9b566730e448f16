/* SPDX-License-Identifier: MIT */
/* Which parts of which doors an item of a planner's job stands for. */
#ifndef DOORCOST_STOCK_PLAN_PART_H
#define DOORCOST_STOCK_PLAN_PART_H

#include "door/door.h"

struct plan_part {
    const struct door *door;
    const struct part *part;
    int64_t pieces; /* of the job */
};

/* What is asked of the planners. */
struct plan_wish {
    int64_t effort; /* units of work for the plan of one material: cut/cut_stock.h */
    bool always;    /* else only where the rates price by plan, or count work by it */
    /* An operation that is counted by boards or cuts of lumber, by cuts of sheets: the plan is then
     * made, and one that can't be is an error. NULL: none. */
    const struct operation *lumber_for, *sheets_for;
};

#endif
