/* SPDX-License-Identifier: MIT */
/* What a board leaves for parts, and what no plan of boards can cost less than. */
#include "cut/board/board_plan.h"

#include "base/int128.h"

#define MILLION 1000000

int64_t board_usable_length(const struct board_job *job, size_t stock) {
    const int64_t sawn = job->stocks[stock].length - 2 * job->end_trim;
    /* defects come off in whole millionths of the board; a product of lengths in nanometers stays
     * far under 2^63 */
    const int64_t clear = sawn / MILLION * (MILLION - job->defects) +
                          sawn % MILLION * (MILLION - job->defects) / MILLION;
    return clear > 0 ? clear : 0;
}

int64_t board_usable_width(const struct board_job *job, size_t stock) {
    const int64_t width = job->stocks[stock].width - 2 * job->edge;
    return width > 0 ? width : 0;
}

/* Every part with its kerfs takes room of the boards' usable room and one kerf each way; the
 * cheapest room there is prices it. */
int64_t board_plan_bound(const struct board_job *job) {
    int128 need = 0;
    for (size_t i = 0; i < job->item_count; i++) {
        need += (int128)job->items[i].demand * (job->items[i].length + job->kerf) *
                (job->items[i].width + job->kerf);
    }
    int64_t best = 0;
    bool known = false;
    for (size_t s = 0; s < job->stock_count; s++) {
        const int128 room = (int128)(board_usable_length(job, s) + job->kerf) *
                            (board_usable_width(job, s) + job->kerf);
        if (board_usable_length(job, s) == 0 || board_usable_width(job, s) == 0) {
            continue;
        }
        /* need / room boards of this price, as if they could be cut: a lower bound when all stock
         * were this; the least over the stocks bounds every mixture */
        const int128 whole = need / room;
        const int128 rest = (need % room) * job->stocks[s].price;
        const int128 price = whole * job->stocks[s].price + int128_up(rest, room);
        if (!known || price < best) {
            best = (int64_t)price;
            known = true;
        }
    }
    return best;
}
