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

/* Least price by the best price for capacity, fractions of a piece allowed, rounded up. */
static int64_t fraction_least(const struct cut_model *model, const int128 *capacity, int128 need) {
    double best = -1.0;
    for (size_t r = 0; r < model->bin_count; r++) {
        if (capacity[r] > 0 && model->bins[r].price > 0) {
            double cost = (double)model->bins[r].price * ((double)need / (double)capacity[r]);
            best = best < 0.0 || cost < best ? cost : best;
        }
    }
    /* A shade below: rounding of the quotient must not lift the bound. */
    best = best * (1.0 - 1e-9) - 1e-6;
    return best > 0.0 && best < 9e18 ? (int64_t)best : 0;
}

/* The most capacity that exactly `sum` divisors buy. */
static int128 most_capacity(const struct cut_model *model, const int128 *capacity,
                            const int128 *most, int64_t sum, int64_t divisor) {
    int128 best = sum == 0 ? 0 : NOT_A_SUM;
    for (size_t r = 0; r < model->bin_count; r++) {
        int64_t step = model->bins[r].price / divisor;
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
    for (int64_t sum = 0; sum < sums; sum++) {
        most[sum] = most_capacity(model, capacity, most, sum, divisor);
        if (sum >= start && most[sum] != NOT_A_SUM && most[sum] >= need) {
            *least = sum * divisor;
            break;
        }
    }
    free(most);
    return true;
}
