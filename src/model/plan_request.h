/* SPDX-License-Identifier: MIT */
/* Which cutting plans a job needs: those that its user asks for, those that the rates price by,
 * those that its work is counted by, and those that tell what is cut of the rack. */
#ifndef DOORCOST_MODEL_PLAN_REQUEST_H
#define DOORCOST_MODEL_PLAN_REQUEST_H

#include "model/job.h"

struct plan_ahead;

/* What the user asks of the planners. */
struct plan_request {
    int64_t effort; /* units of work for the plan of one material, from 0: cut/cut_stock.h */
    bool always;    /* else only where the rates price by plan, or count work by it */
    struct plan_ahead *ahead; /* plans that were made before; NULL: none. cut/ahead/plan_ahead.h */
};

/* The operation that is counted by the plans of a kind of material, MATERIAL_LUMBER (boards, cuts)
 * or MATERIAL_SHEET (cuts), and is listed by the shop, a style or a finish: the last of the rates;
 * NULL: there is none. Borrowed. */
const struct operation *plan_counted_by(const struct rates *rates, enum material_kind kind);

/* Whether a material of a kind, MATERIAL_LUMBER or MATERIAL_SHEET, and index (into the rates' array
 * of it) needs a plan: asked for, priced by it, work is counted by it, or the rack has boards of
 * it.
 */
bool plan_wanted(const struct rates *rates, enum material_kind kind, int32_t index,
                 struct plan_request request);
/* Whether any material of the rates does. */
bool plan_wanted_any(const struct rates *rates, struct plan_request request);

#endif
