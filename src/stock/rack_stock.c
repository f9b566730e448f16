/* SPDX-License-Identifier: MIT */
#include "stock/rack_stock.h"

#include "model/name.h"

/* Adds the rows that have something left, offcuts or not, to the list; how many they are. list
 * NULL: they are counted only. */
static size_t list_rows(const struct calc *c, int kind, int32_t index, bool sawn,
                        struct rack_item *list) {
    const struct rack *const rack = &c->rates->rack;
    size_t count = 0;
    for (size_t i = 0; (i = rack_next(rack, kind, index, i)) < rack->count; i++) {
        if (rack->items[i].left.amount > 0 && rack->items[i].sawn == sawn) {
            if (list != NULL) {
                list[count] = rack->items[i];
            }
            count++;
        }
    }
    return count;
}

bool rack_stock_find(struct rack_stock *rack, const struct calc *c, int kind, int32_t index) {
    const size_t whole = list_rows(c, kind, index, false, NULL);
    *rack = (struct rack_stock){.sawn = list_rows(c, kind, index, true, NULL)};
    rack->count = whole + rack->sawn;
    if (rack->count == 0) {
        return true;
    }
    rack->rows = pool_take(c->pool, rack->count, sizeof *rack->rows);
    rack->left = pool_take(c->pool, rack->count, sizeof *rack->left);
    rack->worth = pool_take(c->pool, rack->count, sizeof *rack->worth);
    rack->size = pool_take(c->pool, rack->count, sizeof *rack->size);
    rack->taken = pool_take(c->pool, rack->count, sizeof *rack->taken);
    if (pool_failed(c->pool)) {
        return false;
    }
    (void)list_rows(c, kind, index, false, rack->rows);
    (void)list_rows(c, kind, index, true, rack->rows + whole);
    return true;
}

void rack_stock_counts(const struct rack_stock *rack, struct plan_input *input, const char *sawn) {
    struct tape *const tape = input->calc->tape;
    if (rack->count > 0) {
        plan_input_add(input, tape_constant(tape, "sizes on the rack", UNIT_COUNT, 0,
                                            (int64_t)rack->count, "rows of the rack"));
        plan_input_add(input, tape_constant(tape, sawn, UNIT_COUNT, 0, (int64_t)rack->sawn,
                                            "rows of the rack"));
    }
}

void rack_stock_add(struct rack_stock *rack, const struct calc *c, size_t i) {
    const struct rack_item *const item = &rack->rows[i];
    rack->left[i] = calc_given(c, "pieces on the rack", &item->left);
    rack->worth[i] =
        item->worth.set
            ? fig_ratio(c->tape, "worth of a piece on the rack", UNIT_MONEY,
                        (figs){{calc_given(c, "worth of what is on the rack", &item->worth)}},
                        (figs){{rack->left[i]}})
            : tape_constant(c->tape, "worth of a piece on the rack", UNIT_MONEY,
                            c->tape->money_decimals, 0, "none given");
}

void rack_stock_total(struct rack_stock *rack, const struct calc *c, const char *what,
                      enum unit unit) {
    fig worths[MOST_RACK_SIZES] = {0};
    for (size_t i = 0; i < rack->count; i++) {
        if (rack->rows[i].worth.set) {
            const fig worth = calc_given(c, "worth of what is on the rack", &rack->rows[i].worth);
            worths[i] = fig_ratio(c->tape, "worth of what is taken from the rack", UNIT_MONEY,
                                  (figs){{worth, rack->taken[i]}}, (figs){{rack->left[i]}});
        }
    }
    rack->pieces = fig_sum(c->tape, "pieces from the rack", UNIT_COUNT, rack->taken, rack->count);
    rack->amount = fig_total(c->tape, what, unit, rack->taken, rack->size, rack->count);
    rack->charged =
        fig_sum(c->tape, "worth of the pieces from the rack", UNIT_MONEY, worths, rack->count);
}
