/* SPDX-License-Identifier: MIT */
/* What a board leaves for parts, and what no plan of boards can cost less than. */
#include "cut/board/board_plan.h"

#define MILLION 1000000

static bool is_sawn(const struct board_job *job, size_t stock) {
    return stock + job->sawn_count >= job->stock_count;
}

int64_t board_end_trim(const struct board_job *job, size_t stock) {
    return is_sawn(job, stock) ? 0 : job->end_trim;
}

int64_t board_edge(const struct board_job *job, size_t stock) {
    return is_sawn(job, stock) ? 0 : job->edge;
}

int64_t board_usable_length(const struct board_job *job, size_t stock) {
    const int64_t sawn = job->stocks[stock].length - 2 * board_end_trim(job, stock);
    const int64_t clear_share = MILLION - (is_sawn(job, stock) ? 0 : job->defects);
    /* defects come off in whole millionths of the board; a product of lengths in nanometers stays
     * far under 2^63 */
    const int64_t clear = sawn / MILLION * clear_share + sawn % MILLION * clear_share / MILLION;
    return clear > 0 ? clear : 0;
}

int64_t board_usable_width(const struct board_job *job, size_t stock) {
    const int64_t width = job->stocks[stock].width - 2 * board_edge(job, stock);
    return width > 0 ? width : 0;
}

/* The stock, not taken yet, of which room is cheapest; stock_count: none is left. */
static size_t cheapest(const struct board_job *job, const int128 *room, const bool *taken) {
    size_t best = job->stock_count;
    for (size_t s = 0; s < job->stock_count; s++) {
        const int64_t price = job->stocks[s].price;
        if (room[s] > 0 && !taken[s] &&
            (best == job->stock_count || price * room[best] < job->stocks[best].price * room[s])) {
            best = s;
        }
    }
    return best;
}

int128 board_cover_least(const struct board_job *job, const int128 *room, int128 need,
                         bool *known) {
    bool taken[CUT_STOCKS_MAX] = {false};
    int128 cost = 0;
    *known = true;
    while (need > 0) {
        const size_t s = cheapest(job, room, taken);
        if (s == job->stock_count) {
            *known = false;
            return 0;
        }
        const struct cut_stock *const stock = &job->stocks[s];
        const bool all = stock->copies != CUT_UNLIMITED && stock->copies <= need / room[s];
        if (!all) { /* need / room boards of this price, as if they could be cut */
            const int128 rest = (need % room[s]) * stock->price;
            return cost + need / room[s] * stock->price + int128_up(rest, room[s]);
        }
        taken[s] = true;
        cost += (int128)stock->copies * stock->price;
        need -= stock->copies * room[s];
    }
    return cost;
}

/* Every part with its kerfs takes room of the boards' usable room and one kerf each way. */
int64_t board_plan_bound(const struct board_job *job) {
    int128 room[CUT_STOCKS_MAX] = {0};
    int128 need = 0;
    bool known;
    for (size_t i = 0; i < job->item_count; i++) {
        need += (int128)job->items[i].demand * (job->items[i].length + job->kerf) *
                (job->items[i].width + job->kerf);
    }
    for (size_t s = 0; s < job->stock_count; s++) {
        if (board_usable_length(job, s) > 0 && board_usable_width(job, s) > 0) {
            room[s] = (int128)(board_usable_length(job, s) + job->kerf) *
                      (board_usable_width(job, s) + job->kerf);
        }
    }
    return (int64_t)board_cover_least(job, room, need, &known);
}
