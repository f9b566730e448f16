/* SPDX-License-Identifier: MIT */
/* Which operations that a job may have are counted by what only a cutting plan knows. */
#include "labor/plans.h"

static bool listed(const struct references *list, int32_t operation) {
    for (size_t i = 0; i < list->count; i++) {
        if (list->r[i].index == operation) {
            return true;
        }
    }
    return false;
}

/* An operation that nothing lists is not done. */
static bool is_used(const struct rates *rates, int32_t operation) {
    bool used = listed(&rates->shop.operations, operation);
    for (size_t i = 0; !used && i < rates->style_count; i++) {
        used = listed(&rates->styles[i].operations, operation);
    }
    for (size_t i = 0; !used && i < rates->finish_count; i++) {
        used = listed(&rates->finishes[i].operations, operation);
    }
    return used;
}

struct plan_wish labor_plans(const struct rates *rates, struct plan_wish wish) {
    for (size_t i = 0; i < rates->operation_count; i++) {
        const struct operation *const op = &rates->operations[i];
        const bool cut = op->per.choice == DRIVER_CUT;
        if ((!cut && op->per.choice != DRIVER_BOARD) || !is_used(rates, (int32_t)i)) {
            continue;
        }
        wish.lumber_for = op;
        wish.sheets_for = cut ? op : wish.sheets_for;
    }
    return wish;
}

void plans_count(struct tape *tape, const struct lumber_list *lumber,
                 const struct sheet_list *sheets, fig *terms, fig *boards, fig *cuts) {
    size_t n = 0;
    for (size_t i = 0; i < lumber->count; i++) {
        if (!fig_none(lumber->buys[i].plan.boards)) {
            terms[n++] = lumber->buys[i].plan.boards;
        }
    }
    *boards = n == 0 ? (fig){0} : fig_sum(tape, "boards by plan in all", UNIT_COUNT, terms, n);
    n = 0;
    for (size_t i = 0; i < lumber->count; i++) {
        if (!fig_none(lumber->buys[i].plan.cuts)) {
            terms[n++] = lumber->buys[i].plan.cuts;
        }
    }
    for (size_t i = 0; i < sheets->count; i++) {
        if (!fig_none(sheets->buys[i].plan.cuts)) {
            terms[n++] = sheets->buys[i].plan.cuts;
        }
    }
    *cuts = n == 0 ? (fig){0} : fig_sum(tape, "cuts of the plans in all", UNIT_COUNT, terms, n);
}
