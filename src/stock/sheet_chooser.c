/* SPDX-License-Identifier: MIT */
#include "stock/sheet_chooser.h"

#include "cut/common/cut_area.h"

#include <stdlib.h>

#define MILLION 1000000

/* Area of the parts on the sheets of the first `sold` stocks. */
static int64_t sold_parts(const struct sheet_plan *plan, size_t sold) {
    int128 area = 0;
    for (size_t s = 0; s < plan->sheet_count; s++) {
        const struct sheet_sheet *const sheet = &plan->sheets[s];
        for (size_t i = 0; sheet->stock < sold && i < sheet->node_count; i++) {
            const struct sheet_node *const n = &plan->nodes[sheet->first_node + i];
            area += n->use == SHEET_PIECE ? (int128)n->length * n->width : 0;
        }
    }
    return cut_area_hundredths(area);
}

void sheet_outputs(const struct cut_job *job, const struct sheet_plan *plan,
                   struct offcut_rule keep, size_t sold, int64_t *out) {
    struct sheet_totals totals;
    sheet_totals_make(&totals, job, plan, keep);
    for (size_t i = 0; i < plan->sheet_count; i++) {
        out[plan->sheets[i].stock]++;
    }
    int64_t *const more = out + job->stock_count;
    more[SHEET_OUT_CUTS] = totals.cuts;
    more[SHEET_OUT_TRIM] = totals.trim;
    more[SHEET_OUT_KERF] = totals.kerf;
    more[SHEET_OUT_KEEP] = totals.keep;
    if (sold < job->stock_count) {
        more[SHEET_OUT_SOLD_PARTS] = sold_parts(plan, sold);
    }
}

/* The stocks from at on: those sold, then those of the rack. */
static void read_stocks(const int64_t *at, size_t sold, size_t rack, struct cut_stock *stocks) {
    for (size_t s = 0; s < sold + rack; s++) {
        stocks[s] = (struct cut_stock){
            .length = at[0], .width = at[1], .price = at[2], .copies = CUT_UNLIMITED};
        if (s >= sold) {
            stocks[s].copies = at[3] / MILLION;
        }
        at += s < sold ? SHEET_SIZE_OPERANDS : SHEET_RACK_OPERANDS;
    }
    (void)plan_input_prices(stocks, sold + rack);
}

/* Sizes that a job is cut from. */
struct sizes {
    size_t sold, rack, sawn;
};

static bool choose_of(const int64_t *in, size_t count, size_t fixed, struct sizes sizes,
                      int64_t *out) {
    struct cut_stock stocks[SHEET_PLAN_SIZES];
    const size_t sold = sizes.sold;
    const size_t rack = sizes.rack;
    const size_t first = fixed + SHEET_SIZE_OPERANDS * sold + SHEET_RACK_OPERANDS * rack;
    if (sold == 0 || sold > SHEET_STOCKS || rack > MOST_RACK_SIZES || sizes.sawn > rack ||
        count < first) {
        return false;
    }
    read_stocks(in + fixed, sold, rack, stocks);
    const size_t item_count = (count - first) / 3;
    struct cut_item *const items = calloc(item_count + 1, sizeof *items);
    if (items == NULL) {
        return false;
    }
    const int64_t *at = in + first;
    for (size_t i = 0; i < item_count; i++, at += 3) {
        items[i] = (struct cut_item){
            .length = at[0], .width = at[1], .demand = at[2] / MILLION, .turn = in[3] > 0};
    }
    const struct cut_job job = {.kerf = in[1],
                                .trim = in[2],
                                .stock_count = sold + rack,
                                .stocks = stocks,
                                .sawn_count = sizes.sawn,
                                .item_count = item_count,
                                .items = items};
    struct sheet_plan *plan = NULL;
    const struct offcut_rule keep = {.length = in[4], .sheet_width = in[5]};
    const bool chosen = sheet_plan_make(&job, keep, in[0] / MILLION, &plan) == CUT_DONE;
    if (chosen) {
        sheet_outputs(&job, plan, keep, sold, out);
    }
    sheet_plan_free(plan);
    free(items);
    return chosen;
}

static bool choose(const int64_t *in, size_t count, int64_t *out, size_t outputs) {
    return count >= SHEET_FIXED_OPERANDS && outputs >= SHEET_STOCKS + SHEET_OUT_COUNT &&
           choose_of(in, count, SHEET_FIXED_OPERANDS,
                     (struct sizes){.sold = (size_t)(in[6] / MILLION)}, out);
}

static bool choose_with_rack(const int64_t *in, size_t count, int64_t *out, size_t outputs) {
    const size_t fixed = SHEET_FIXED_OPERANDS + SHEET_RACK_COUNTS;
    return count >= fixed && outputs >= SHEET_PLAN_SIZES + SHEET_OUT_MOST &&
           choose_of(in, count, fixed,
                     (struct sizes){(size_t)(in[6] / MILLION), (size_t)(in[7] / MILLION),
                                    (size_t)(in[8] / MILLION)},
                     out);
}

/* Papers know both by one name: they choose the same. */
const struct chooser sheets_chooser = {.name = "sheets", .choose = choose};
const struct chooser sheets_rack_chooser = {.name = "sheets", .choose = choose_with_rack};
