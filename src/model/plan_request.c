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

bool plan_wanted(const struct rates *rates, enum material_kind kind, int32_t index,
                 struct plan_request request) {
    const bool rack = kind == MATERIAL_LUMBER && rack_has(&rates->rack, NAME_LUMBER, index);
    const struct choice *const by =
        kind == MATERIAL_LUMBER ? &rates->shop.lumber_by : &rates->shop.sheets_by;
    return request.always || rack || by->choice == PRICED_BY_PLAN ||
           plan_counted_by(rates, kind) != NULL;
}

bool plan_wanted_any(const struct rates *rates, struct plan_request request) {
    bool wanted = false;
    for (size_t i = 0; i < rates->lumber_count; i++) {
        wanted = wanted || plan_wanted(rates, MATERIAL_LUMBER, (int32_t)i, request);
    }
    for (size_t i = 0; i < rates->sheet_count; i++) {
        wanted = wanted || plan_wanted(rates, MATERIAL_SHEET, (int32_t)i, request);
    }
    return wanted;
}
