/* SPDX-License-Identifier: MIT */
/* Sums of prices are listed upward in steps of their common divisor; each sum knows the most
 * capacity that it buys. */
#include "cut/common/cut_cover.h"

#include <stdlib.h>

/* Sums listed at most (32 MB). */
#define SUMS_MAX INT64_C(2000000)

/* A sum of prices that cannot be bought exactly. */
#define NOT_A_SUM ((int128)-1)

static int64_t price_divisor(const struct cut_model *model) {
    int64_t divisor = 0;
    for (size_t r = 0; r < model->bin_count; r++) {
        divisor = cut_common_divisor(divisor, model->bins[r].price);
    }
    return divisor;
}

static int64_t price_most(const struct cut_model *model) {
    int64_t most = 0;
    for (size_t r = 0; r < model->bin_count; r++) {
        most = model->bins[r].price > most ? model->bins[r].price : most;
    }
    return most;
}

/* The bin whose capacity is cheapest, of those that cost something and were not taken before;
 * bin_count: none is left. *cost: what `need` of it costs, fractions of a piece allowed. */
static size_t cheapest(const struct cut_model *model, const int128 *capacity, const bool *taken,
                       double need, double *cost) {
    size_t best = model->bin_count;
    for (size_t r = 0; r < model->bin_count; r++) {
        if (capacity[r] > 0 && model->bins[r].price > 0 && !taken[r]) {
            double price = (double)model->bins[r].price * (need / (double)capacity[r]);
            best = best == model->bin_count || price < *cost ? r : best;
            *cost = best == r ? price : *cost;
        }
    }
    return best;
}

/* Least price by the best price for capacity, fractions of a piece allowed, rounded up. */
static int64_t fraction_least(const struct cut_model *model, const int128 *capacity, int128 need) {
    bool taken[CUT_STOCKS_MAX] = {false};
    double left = (double)need;
    double least = 0.0;
    double cost = 0.0;
    size_t r = cheapest(model, capacity, taken, left, &cost);
    for (; r < model->bin_count && model->bins[r].limited;
         r = cheapest(model, capacity, taken, left, &cost)) {
        double all = (double)capacity[r] * (double)model->bins[r].copies;
        taken[r] = true;
        if (all >= left) {
            break;
        }
        least += (double)model->bins[r].price * (double)model->bins[r].copies;
        left -= all;
    }
    least += r < model->bin_count ? cost : 0.0;
    /* A shade below: rounding of the quotient must not lift the bound. */
    least = least * (1.0 - 1e-9) - 1e-6;
    return least > 0.0 && least < 9e18 ? (int64_t)least : 0;
}

double cut_cover_most(const struct cut_model *model, const int128 *capacity, int64_t money) {
    bool taken[CUT_STOCKS_MAX] = {false};
    double left = (double)money;
    double gift = 0.0;
    double most = 0.0;
    double cost = 0.0;
    for (size_t r = 0; r < model->bin_count; r++) {
        gift += model->bins[r].price == 0 ? (double)capacity[r] * (double)model->bins[r].copies : 0;
    }
    for (size_t r = cheapest(model, capacity, taken, 1.0, &cost); r < model->bin_count && left > 0;
         r = cheapest(model, capacity, taken, 1.0, &cost)) {
        double buys = (double)capacity[r] * (left / (double)model->bins[r].price);
        double all = (double)capacity[r] * (double)model->bins[r].copies;
        if (!model->bins[r].limited || buys <= all) {
            return most + buys + gift;
        }
        taken[r] = true;
        most += all;
        left -= (double)model->bins[r].price * (double)model->bins[r].copies;
    }
    return most + gift;
}

/* Adds so many copies of a bin, all or none of them, to what sums buy. */
static void add_lot(int128 *most, int64_t sums, int64_t step, int128 capacity) {
    for (int64_t sum = sums - 1; sum >= step; sum--) {
        if (most[sum - step] != NOT_A_SUM && most[sum - step] + capacity > most[sum]) {
            most[sum] = most[sum - step] + capacity;
        }
    }
}

/* The most capacity that each sum buys exactly of what there are only so many copies of: lots of 1,
 * 2, 4, ... copies give every number of them. false: there are as many as wanted of everything that
 * costs something, and no sum is set. */
static bool limited_most(const struct cut_model *model, const int128 *capacity, int64_t divisor,
                         int128 *most, int64_t sums) {
    bool any = false;
    for (size_t r = 0; r < model->bin_count; r++) {
        any = any || (model->bins[r].limited && model->bins[r].price > 0);
    }
    for (int64_t sum = 0; any && sum < sums; sum++) {
        most[sum] = sum == 0 ? 0 : NOT_A_SUM;
    }
    for (size_t r = 0; any && r < model->bin_count; r++) {
        const int64_t step = model->bins[r].price / divisor;
        int64_t left = model->bins[r].limited && step > 0 ? model->bins[r].copies : 0;
        for (int64_t lot = 1; left > 0; lot *= 2) {
            const int64_t copies = lot < left ? lot : left;
            left -= copies;
            if (copies <= sums / step) {
                add_lot(most, sums, copies * step, capacity[r] * copies);
            }
        }
    }
    return any;
}

/* The most capacity that exactly `sum` divisors buy; best: without what never runs out. */
static int128 most_capacity(const struct cut_model *model, const int128 *capacity,
                            const int128 *most, int64_t sum, int64_t divisor, int128 best) {
    for (size_t r = 0; r < model->bin_count; r++) {
        int64_t step = model->bins[r].limited ? 0 : model->bins[r].price / divisor;
        if (step > 0 && step <= sum && most[sum - step] != NOT_A_SUM &&
            most[sum - step] + capacity[r] > best) {
            best = most[sum - step] + capacity[r];
        }
    }
    return best;
}

bool cut_cover_least(const struct cut_model *model, const int128 *capacity, int128 need,
                     int64_t at_least, int64_t *least) {
    for (size_t r = 0; r < model->bin_count; r++) {
        if (model->bins[r].price == 0) {
            need -= capacity[r] * model->bins[r].copies;
        }
    }
    int64_t divisor = price_divisor(model);
    if (divisor == 0 || (need <= 0 && at_least <= 0)) {
        *least = at_least > 0 ? at_least : 0;
        return true;
    }
    int64_t from = need > 0 ? fraction_least(model, capacity, need) : 0;
    from = from > at_least ? from : at_least;
    int64_t start = from / divisor + (from % divisor > 0 ? 1 : 0);
    *least = start > INT64_MAX / divisor ? from : start * divisor;
    if (start > SUMS_MAX / 2) {
        return true;
    }
    int64_t sums = start + 2 * price_most(model) / divisor + 1;
    sums = sums < SUMS_MAX ? sums : SUMS_MAX;
    int128 *most = calloc((size_t)sums, sizeof *most);
    if (most == NULL) {
        return false;
    }
    const bool limited = limited_most(model, capacity, divisor, most, sums);
    for (int64_t sum = 0; sum < sums; sum++) {
        const int128 known = limited ? most[sum] : sum == 0 ? 0 : NOT_A_SUM;
        most[sum] = most_capacity(model, capacity, most, sum, divisor, known);
        if (sum >= start && most[sum] != NOT_A_SUM && most[sum] >= need) {
            *least = sum * divisor;
            break;
        }
    }
    free(most);
    return true;
}
