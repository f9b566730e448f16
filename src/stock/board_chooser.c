/* SPDX-License-Identifier: MIT */
#include "stock/board_chooser.h"

#include "stock/surface_measure.h"

#include <stdlib.h>

#define MILLION 1000000

/* in: the fixed operands (defects in percent), then length, width, price of each stock, then
 * length, width, pieces of each item, all at 6 decimals. */
static bool read_job(const int64_t *in, size_t count, struct board_job *job,
                     struct cut_stock *stocks, struct cut_item *items) {
    const size_t stock_count = (size_t)(in[8] / MILLION);
    if (stock_count > LUMBER_PLAN_SIZES || count < BOARD_FIXED_OPERANDS + 3 * stock_count) {
        return false;
    }
    const size_t item_count = (count - BOARD_FIXED_OPERANDS - 3 * stock_count) / 3;
    const int64_t *at = in + BOARD_FIXED_OPERANDS;
    for (size_t s = 0; s < stock_count; s++, at += 3) {
        stocks[s] = (struct cut_stock){
            .length = at[0], .width = at[1], .price = at[2], .copies = CUT_UNLIMITED};
    }
    (void)plan_input_prices(stocks, stock_count);
    for (size_t i = 0; i < item_count; i++, at += 3) {
        items[i] = (struct cut_item){.length = at[0], .width = at[1], .demand = at[2] / MILLION};
    }
    *job = (struct board_job){.kerf = in[1],
                              .end_trim = in[2],
                              .edge = in[3],
                              .defects = in[4] / 100, /* percent at 6 decimals to millionths */
                              .crosscut_first = in[7] != 0,
                              .stocks = stocks,
                              .stock_count = stock_count,
                              .items = items,
                              .item_count = item_count};
    return true;
}

/* out: boards of each stock, then the outputs behind them; zeros before. */
bool board_outputs(const struct board_job *job, const struct board_plan *plan,
                   struct offcut_rule keep, int64_t *out) {
    struct board_totals totals;
    if (!board_totals_make(&totals, job, plan, keep)) {
        return false;
    }
    for (size_t b = 0; b < plan->board_count; b++) {
        out[plan->boards[b].stock]++;
    }
    int64_t *const more = out + job->stock_count;
    more[BOARD_OUT_CUTS] = totals.cuts;
    more[BOARD_OUT_TRIM] = totals.trim;
    more[BOARD_OUT_KERF] = totals.kerf;
    more[BOARD_OUT_DEFECTS] = totals.defects;
    more[BOARD_OUT_KEEP] = totals.keep;
    return true;
}

static bool choose_boards(const int64_t *in, size_t count, int64_t *out, size_t outputs) {
    if (count < BOARD_FIXED_OPERANDS || outputs < LUMBER_PLAN_SIZES + BOARD_OUT_COUNT) {
        return false;
    }
    struct cut_stock stocks[LUMBER_PLAN_SIZES];
    struct cut_item *const items = calloc(count + 1, sizeof *items);
    struct board_plan *plan = NULL;
    struct board_job job;
    bool chosen = items != NULL && read_job(in, count, &job, stocks, items) &&
                  board_plan_make(&job, in[0] / MILLION, &plan) == CUT_DONE;
    chosen =
        chosen &&
        board_outputs(&job, plan, (struct offcut_rule){.length = in[5], .board_width = in[6]}, out);
    board_plan_free(plan);
    free(items);
    return chosen;
}

/* A length at 6 decimals of a unit whose inch is `inch`, as nanometers. */
static length as_nm(int64_t value, int64_t inch) {
    return length_of_millionths(value, inch == MILLION ? LENGTH_INCH : LENGTH_MM);
}

/* in: an inch, width, length. out: surface measure, an exact half up. */
static bool choose_surface(const int64_t *in, size_t count, int64_t *out, size_t outputs) {
    struct surface_measure measure = {0};
    if (count != 3 || outputs < 1 || in[1] <= 0 || in[2] <= 0) {
        return false;
    }
    out[0] = surface_measure_add(&measure, as_nm(in[1], in[0]), as_nm(in[2], in[0]));
    return true;
}

/* in: an inch, then boards, width, length of each size. out: surface measure of all, halves up and
 * down by turns. */
static bool choose_tally(const int64_t *in, size_t count, int64_t *out, size_t outputs) {
    struct surface_measure measure = {0};
    if (count < 1 || (count - 1) % 3 != 0 || outputs < 1) {
        return false;
    }
    for (size_t i = 1; i < count; i += 3) {
        for (int64_t n = 0; n < in[i] / MILLION; n++) {
            (void)surface_measure_add(&measure, as_nm(in[i + 1], in[0]), as_nm(in[i + 2], in[0]));
        }
    }
    out[0] = measure.feet;
    return true;
}

const struct chooser boards_chooser = {.name = "boards", .choose = choose_boards};
const struct chooser surface_chooser = {.name = "surface measure", .choose = choose_surface};
const struct chooser tally_chooser = {.name = "tally", .choose = choose_tally};
