/* SPDX-License-Identifier: MIT */
#include "stock/board_chooser.h"

#include "cut/common/cut_area.h"
#include "stock/surface_measure.h"

#define MILLION 1000000

/* Area of the parts on the boards of the first `sold` stocks. */
static int64_t sold_parts(const struct board_job *job, const struct board_plan *plan, size_t sold) {
    int128 area = 0;
    for (size_t b = 0; b < plan->board_count; b++) {
        const struct board_use *const board = &plan->boards[b];
        for (size_t s = 0; board->stock < sold && s < board->count; s++) {
            const struct board_strip *const strip = &plan->strips[board->first + s];
            for (size_t i = 0; i < strip->count; i++) {
                const struct cut_item *const part = &job->items[plan->pieces[strip->first + i]];
                area += (int128)part->length * part->width;
            }
        }
    }
    return cut_area_hundredths(area);
}

bool board_outputs(const struct board_job *job, const struct board_plan *plan,
                   struct offcut_rule keep, size_t sold, int64_t *out) {
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
    if (sold < job->stock_count) {
        more[BOARD_OUT_SOLD_PARTS] = sold_parts(job, plan, sold);
    }
    return true;
}

static bool choose_of(const int64_t *in, size_t count, bool rack, int64_t *out) {
    struct plan_operands given;
    struct board_plan *plan = NULL;
    bool chosen = false;
    if (plan_operands_read(&given, in, count, BOARD_FIXED_OPERANDS, rack, LUMBER_PLAN_SIZES,
                           false)) {
        const struct offcut_rule keep = {.length = in[5], .board_width = in[6]};
        const struct board_job job = {.kerf = in[1],
                                      .end_trim = in[2],
                                      .edge = in[3],
                                      .defects =
                                          in[4] / 100, /* percent at 6 decimals to millionths */
                                      .crosscut_first = in[7] != 0,
                                      .stocks = given.stocks,
                                      .stock_count = given.sold + given.rack,
                                      .sawn_count = given.sawn,
                                      .items = given.items,
                                      .item_count = given.item_count};
        chosen = board_plan_make(&job, in[0] / MILLION, &plan) == CUT_DONE &&
                 board_outputs(&job, plan, keep, given.sold, out);
    }
    board_plan_free(plan);
    plan_operands_free(&given);
    return chosen;
}

static bool choose_boards(const int64_t *in, size_t count, int64_t *out, size_t outputs) {
    return outputs >= LUMBER_PLAN_SIZES + BOARD_OUT_COUNT && choose_of(in, count, false, out);
}

static bool choose_with_rack(const int64_t *in, size_t count, int64_t *out, size_t outputs) {
    return outputs >= LUMBER_PLAN_SIZES + MOST_RACK_SIZES + BOARD_OUT_MOST &&
           choose_of(in, count, true, out);
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

/* Papers know both by one name: they choose the same. */
const struct chooser boards_chooser = {.name = "boards", .choose = choose_boards};
const struct chooser boards_rack_chooser = {.name = "boards", .choose = choose_with_rack};
const struct chooser surface_chooser = {.name = "surface measure", .choose = choose_surface};
const struct chooser tally_chooser = {.name = "tally", .choose = choose_tally};
