/* SPDX-License-Identifier: MIT */
#include "report/words/build_up_words.h"

/* Whether a group of cost takes a markup of its own. */
static bool has_markups(const struct rates *rates) {
    for (int g = 0; g < COST_GROUP_COUNT; g++) {
        if (rates->markup[g].set) {
            return true;
        }
    }
    return false;
}

const char *build_up_label(const struct estimate *e, const struct field *field) {
    if (field->offset != offsetof(struct build_up, profit)) {
        return field_label(field);
    }
    if (has_markups(e->rates)) {
        return "profit, by group";
    }
    return e->rates->shop.profit_as.choice == PROFIT_MARKUP ? "profit, markup on cost"
                                                            : "profit, margin of price";
}

fig build_up_rate(const struct estimate *e, const struct field *field) {
    const struct tape *const tape = &e->tape;
    const fig figure = field_figure(field, &e->costs.job);
    const enum cost_group group = field_group(field);
    if ((field->views & FIELD_TOTAL) != 0 || (group != COST_GROUP_COUNT && group != COST_REMAKES)) {
        return (fig){0};
    }
    for (size_t i = 0; i < tape_operands(tape, figure); i++) {
        const fig operand = tape_operand(tape, figure, i).f;
        if (!fig_none(operand) && tape_op(tape, operand) == OP_GIVEN &&
            tape_origin(tape, operand).place.file != 0) {
            return operand;
        }
    }
    return (fig){0};
}
