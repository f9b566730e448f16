/* SPDX-License-Identifier: MIT */
#include "stock/sheet_chooser.h"

#include "cut/common/cut_area.h"

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

static bool choose_of(const int64_t *in, size_t count, bool rack, int64_t *out) {
    struct plan_operands given;
    struct sheet_plan *plan = NULL;
    bool chosen = false;
    /* 1 where parts may be turned stands behind effort, kerf and trim */
    if (plan_operands_read(&given, in, count, SHEET_FIXED_OPERANDS, rack, SHEET_STOCKS,
                           count > 3 && in[3] > 0)) {
        const struct offcut_rule keep = {.length = in[4], .sheet_width = in[5]};
        const struct cut_job job = {.kerf = in[1],
                                    .trim = in[2],
                                    .stock_count = given.sold + given.rack,
                                    .stocks = given.stocks,
                                    .sawn_count = given.sawn,
                                    .item_count = given.item_count,
                                    .items = given.items};
        chosen = sheet_plan_make(&job, keep, in[0] / MILLION, &plan) == CUT_DONE;
        if (chosen) {
            sheet_outputs(&job, plan, keep, given.sold, out);
        }
    }
    sheet_plan_free(plan);
    plan_operands_free(&given);
    return chosen;
}

static bool choose(const int64_t *in, size_t count, int64_t *out, size_t outputs) {
    return outputs >= SHEET_STOCKS + SHEET_OUT_COUNT && choose_of(in, count, false, out);
}

static bool choose_with_rack(const int64_t *in, size_t count, int64_t *out, size_t outputs) {
    return outputs >= SHEET_PLAN_SIZES + SHEET_OUT_MOST && choose_of(in, count, true, out);
}

/* Papers know both by one name: they choose the same. */
const struct chooser sheets_chooser = {.name = "sheets", .choose = choose};
const struct chooser sheets_rack_chooser = {.name = "sheets", .choose = choose_with_rack};
