/* SPDX-License-Identifier: MIT */
/* Sizes are tried from the cheapest by volume on, the most containers first.  What is still needed
 * costs at least its volume at the next size's price by volume; a branch that can't come under the
 * best known that way is left, and with it all that have fewer of the size, for they need more of
 * dearer ones. */
#include "finish/containers.h"

#include "base/int128.h"

#include <string.h>

#define MOST_STEPS 4000000

struct set {
    int64_t counts[MOST_CONTAINER_SIZES];
    int64_t cost, volume, containers;
    bool known;
};

struct search {
    const struct container_size *sizes;
    size_t order[MOST_CONTAINER_SIZES]; /* by price by volume */
    size_t count;
    struct set best;
    int32_t steps;
};

static bool better(const struct set *a, const struct set *b) {
    if (!b->known || a->cost != b->cost) {
        return !b->known || a->cost < b->cost;
    }
    return a->volume != b->volume ? a->volume < b->volume : a->containers < b->containers;
}

/* Whether cost and the least that `left` can cost at the size in place `at` is more than the best
 * known. */
static bool hopeless(const struct search *s, int64_t cost, int64_t left, size_t at) {
    if (!s->best.known || left <= 0) {
        return s->best.known && cost > s->best.cost;
    }
    const struct container_size *const size = &s->sizes[s->order[at]];
    return (int128)left * size->price > ((int128)s->best.cost - cost) * size->volume;
}

static void try_from(struct search *s, size_t at, int64_t left, struct set *set) {
    if (left <= 0) {
        if (better(set, &s->best)) {
            s->best = *set;
            s->best.known = true;
        }
        return;
    }
    const size_t size = s->order[at];
    const int64_t volume = s->sizes[size].volume;
    const int64_t price = s->sizes[size].price;
    const struct set before = *set;
    for (int64_t n = (int64_t)int128_up(left, volume); n >= 0 && s->steps < MOST_STEPS; n--) {
        s->steps++;
        *set = before;
        set->counts[size] = n;
        set->cost += n * price;
        set->volume += n * volume;
        set->containers += n;
        const int64_t rest = left - n * volume;
        if (rest > 0 && (at + 1 == s->count || hopeless(s, set->cost, rest, at + 1))) {
            break;
        }
        if (!hopeless(s, set->cost, rest, at)) {
            try_from(s, at + 1, rest, set);
        }
    }
    *set = before;
}

/* Insertion sort by price by volume, larger volume first among equals. */
static void order_sizes(struct search *s) {
    for (size_t i = 0; i < s->count; i++) {
        size_t j = i;
        for (; j > 0; j--) {
            const struct container_size *const a = &s->sizes[s->order[j - 1]];
            const struct container_size *const b = &s->sizes[i];
            const int128 left = (int128)a->price * b->volume;
            const int128 right = (int128)b->price * a->volume;
            if (left < right || (left == right && a->volume >= b->volume)) {
                break;
            }
            s->order[j] = s->order[j - 1];
        }
        s->order[j] = i;
    }
}

bool containers_choose(int64_t need, const struct container_size *sizes, size_t count,
                       int64_t *counts) {
    if (count == 0 || count > MOST_CONTAINER_SIZES) {
        return false;
    }
    struct search search = {.sizes = sizes, .count = count};
    order_sizes(&search);
    struct set set = {0};
    try_from(&search, 0, need, &set);
    memcpy(counts, search.best.counts, count * sizeof *counts);
    return true;
}

/* As a need grows fewer sets hold it, so the needs that share a choice are one stretch: halving
 * finds its lower end. */
int64_t containers_hold_from(int64_t need, int64_t step, const struct container_size *sizes,
                             size_t count) {
    int64_t chosen[MOST_CONTAINER_SIZES];
    int64_t low = 0;
    int64_t high = need / step;
    if (!containers_choose(need, sizes, count, chosen)) {
        return need;
    }
    while (low + 1 < high) {
        const int64_t middle = low + (high - low) / 2;
        int64_t counts[MOST_CONTAINER_SIZES];
        (void)containers_choose(middle * step, sizes, count, counts);
        if (memcmp(counts, chosen, count * sizeof *counts) == 0) {
            high = middle;
        } else {
            low = middle;
        }
    }
    return high * step;
}

static bool choose(const int64_t *in, size_t count, int64_t *out, size_t outputs) {
    struct container_size sizes[MOST_CONTAINER_SIZES];
    const size_t n = (count - 1) / 2;
    if (count < 3 || n > MOST_CONTAINER_SIZES || n > outputs) {
        return false;
    }
    for (size_t i = 0; i < n; i++) {
        sizes[i] = (struct container_size){.volume = in[1 + 2 * i], .price = in[2 + 2 * i]};
        if (sizes[i].volume <= 0 || sizes[i].price < 0) {
            return false;
        }
    }
    return containers_choose(in[0], sizes, n, out);
}

const struct chooser containers_chooser = {.name = "containers", .choose = choose};
