/* SPDX-License-Identifier: MIT */
#include "chance/spread.h"

#include "base/order.h"

#include <assert.h>
#include <math.h>
#include <stdlib.h>

static int ascending(const void *left, const void *right) {
    return order_by_number(*(const int64_t *)left, *(const int64_t *)right);
}

void spread_sort(int64_t *draws, size_t count) {
    qsort(draws, count, sizeof *draws, ascending);
}

int64_t spread_percentile(const int64_t *sorted, size_t count, double percent) {
    assert(count > 0 && percent > 0 && percent <= 100);
    /* the share is taken back by less than a draw, so that 80 % of 10,000 is 8,000 */
    const double place = ceil((double)count * percent / 100 - 1e-6);
    return sorted[place < 1 ? 0 : (size_t)place - 1];
}

size_t spread_above(const int64_t *sorted, size_t count, int64_t limit) {
    size_t from = 0;
    size_t to = count;
    while (from < to) { /* all before `from` are at most limit, all from `to` on more */
        const size_t middle = from + (to - from) / 2;
        if (sorted[middle] <= limit) {
            from = middle + 1;
        } else {
            to = middle;
        }
    }
    return count - from;
}

struct placed {
    int64_t value;
    size_t place;
};

static int by_value(const void *left, const void *right) {
    const struct placed *const a = left;
    const struct placed *const b = right;
    const int order = order_by_number(a->value, b->value);
    return order != 0 ? order : order_by_number((int64_t)a->place, (int64_t)b->place);
}

bool spread_ranks(const int64_t *draws, size_t count, double *ranks) {
    struct placed *const list = calloc(count + 1, sizeof *list);
    if (list == NULL) {
        return false;
    }
    for (size_t i = 0; i < count; i++) {
        list[i] = (struct placed){.value = draws[i], .place = i};
    }
    qsort(list, count, sizeof *list, by_value);
    size_t end;
    for (size_t from = 0; from < count; from = end) {
        for (end = from + 1; end < count && list[end].value == list[from].value;) {
            end++;
        }
        for (size_t i = from; i < end; i++) {
            ranks[list[i].place] = (double)(from + end - 1) / 2;
        }
    }
    free(list);
    return true;
}

static double mean_of(const double *a, size_t count) {
    double sum = 0;
    for (size_t i = 0; i < count; i++) {
        sum += a[i];
    }
    return sum / (double)count;
}

double spread_correlation(const double *a, const double *b, size_t count) {
    const double mean_a = mean_of(a, count);
    const double mean_b = mean_of(b, count);
    double aa = 0;
    double bb = 0;
    double ab = 0;
    for (size_t i = 0; i < count; i++) {
        aa += (a[i] - mean_a) * (a[i] - mean_a);
        bb += (b[i] - mean_b) * (b[i] - mean_b);
        ab += (a[i] - mean_a) * (b[i] - mean_b);
    }
    return aa > 0 && bb > 0 ? ab / sqrt(aa * bb) : 0;
}
