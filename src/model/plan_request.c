/* SPDX-License-Identifier: MIT */
#include "model/plan_request.h"

#include "model/name.h"

/* An operation that nothing lists is not done. */
static bool is_listed(const struct rates *rates, int32_t operation) {
    bool listed = references_hold(&rates->shop.operations, operation);
    for (size_t i = 0; !listed && i < rates->style_count; i++) {
        listed = references_hold(&rates->styles[i].operations, operation);
    }
    for (size_t i = 0; !listed && i < rates->finish_count; i++) {
        listed = references_hold(&rates->finishes[i].operations, operation);
    }
    return listed;
}

const struct operation *plan_counted_by(const struct rates *rates, enum material_kind kind) {
    for (size_t i = rates->operation_count; i > 0; i--) {
        const struct operation *const op = &rates->operations[i - 1];
        const bool boards = kind == MATERIAL_LUMBER && op->per.choice == DRIVER_BOARD;
        if ((boards || op->per.choice == DRIVER_CUT) && is_listed(rates, (int32_t)(i - 1))) {
            return op;
        }
    }
    return NULL;
}

bool plan_wanted(const struct rates *rates, enum material_kind kind, struct plan_request request) {
    const struct choice *const by =
        kind == MATERIAL_LUMBER ? &rates->shop.lumber_by : &rates->shop.sheets_by;
    return request.always || by->choice == PRICED_BY_PLAN || plan_counted_by(rates, kind) != NULL;
}
