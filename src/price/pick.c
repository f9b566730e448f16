/* SPDX-License-Identifier: MIT */
#include "price/pick.h"

#include "base/order.h"
#include "base/pool.h"

#include <stdlib.h>

/* A pick of ways for the first things, by what it takes. */
struct sum {
    int64_t hours, money;
    uint32_t before; /* the sum that it was made from */
    uint32_t way;    /* that was added to it */
};

struct picking {
    struct sum *sums; /* of all things, one level after another */
    size_t count, room;
    bool failed; /* out of memory */
};

static int by_hours(const void *a, const void *b) {
    const struct sum *const x = a;
    const struct sum *const y = b;
    int order = order_by_number(x->hours, y->hours);
    order = order != 0 ? order : order_by_number(x->money, y->money);
    order = order != 0 ? order : order_by_number(x->before, y->before);
    return order != 0 ? order : order_by_number(x->way, y->way);
}

static int64_t fewest_hours(const struct pick_thing *thing) {
    int64_t least = thing->ways[0].hours;
    for (size_t w = 1; w < thing->count; w++) {
        least = thing->ways[w].hours < least ? thing->ways[w].hours : least;
    }
    return least;
}

/* Where even the fewest hours of each thing are too many. */
static void pick_fewest(const struct pick_thing *things, size_t count, size_t *picked) {
    for (size_t i = 0; i < count; i++) {
        const struct pick_way *const ways = things[i].ways;
        picked[i] = 0;
        for (size_t w = 1; w < things[i].count; w++) {
            const struct pick_way *const best = &ways[picked[i]];
            if (ways[w].hours < best->hours ||
                (ways[w].hours == best->hours && ways[w].money < best->money)) {
                picked[i] = w;
            }
        }
    }
}

/* Each sum from `first` on with each way of the thing, unless the things to come, which take `rest`
 * hours at least, bring it over the limit. Of what remains only that is kept which costs less than
 * all that takes fewer hours. false: too many, or out of memory. */
static bool add_thing(struct picking *p, size_t first, const struct pick_thing *thing,
                      int64_t limit, int64_t rest) {
    const size_t end = p->count;
    for (size_t s = first; s < end; s++) {
        for (size_t w = 0; w < thing->count; w++) {
            const struct pick_way *const way = &thing->ways[w];
            if (p->sums[s].hours + way->hours + rest > limit) {
                continue;
            }
            if (p->count >= PICK_MOST_SUMS) {
                return false;
            }
            p->sums = array_grow(p->sums, &p->room, p->count + 1, sizeof *p->sums, &p->failed);
            if (p->failed) {
                return false;
            }
            p->sums[p->count++] = (struct sum){.hours = p->sums[s].hours + way->hours,
                                               .money = p->sums[s].money + way->money,
                                               .before = (uint32_t)s,
                                               .way = (uint32_t)w};
        }
    }
    size_t kept = end;
    qsort(p->sums + end, p->count - end, sizeof *p->sums, by_hours);
    for (size_t s = end; s < p->count; s++) {
        if (kept == end || p->sums[s].money < p->sums[kept - 1].money) {
            p->sums[kept++] = p->sums[s];
        }
    }
    p->count = kept;
    return true;
}

/* The fewest hours come first and are within the limit, so every level has a sum. */
static enum pick_result pick_least(struct picking *p, const struct pick_thing *things, size_t count,
                                   int64_t limit, int64_t rest, size_t *picked) {
    p->sums = array_grow(p->sums, &p->room, 1, sizeof *p->sums, &p->failed);
    if (p->failed) {
        return PICK_MEMORY;
    }
    p->sums[p->count++] = (struct sum){0};
    for (size_t i = 0, first = 0; i < count; i++) {
        const size_t next = p->count;
        rest -= fewest_hours(&things[i]);
        if (!add_thing(p, first, &things[i], limit, rest)) {
            return p->failed ? PICK_MEMORY : PICK_TOO_MANY;
        }
        first = next;
    }
    size_t at = p->count - 1; /* the most hours, the least money */
    for (size_t i = count; i > 0; i--) {
        picked[i - 1] = p->sums[at].way;
        at = p->sums[at].before;
    }
    return PICK_WITHIN;
}

enum pick_result pick_make(const struct pick_thing *things, size_t count, int64_t limit,
                           size_t *picked) {
    int64_t rest = 0;
    for (size_t i = 0; i < count; i++) {
        rest += fewest_hours(&things[i]);
    }
    if (rest > limit) {
        pick_fewest(things, count, picked);
        return PICK_OVER;
    }
    struct picking p = {0};
    const enum pick_result result = pick_least(&p, things, count, limit, rest, picked);
    free(p.sums);
    return result;
}
