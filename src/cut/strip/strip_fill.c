/* SPDX-License-Identifier: MIT */
/* Items go in by value a unit of size, in lots of 1, 2, 4, ... pieces. Each lot doubles the list
 * of states (size, value); states that are larger and worth less than another, or that cannot
 * pass the best even if the rest were filled at the next lot's value, are dropped. */
#include "cut/strip/strip_fill.h"

#include "base/int128.h"
#include "base/order.h"
#include "base/pool.h"

#include <stdlib.h>
#include <string.h>

/* States kept in all: above it the answer is only good, no longer proven (100 MB). */
#define STEPS_MAX  ((size_t)6000000)
#define STATES_MAX ((size_t)1500000)

struct lot {
    int64_t size, value; /* of all its pieces */
    int64_t times;
    size_t item;
    double worth;    /* value a unit, rounded up by a shade */
    int64_t least;   /* the least size of this and all later lots */
    int64_t dearest; /* the highest value of them */
};

struct state {
    int64_t size, value;
    uint32_t step; /* how it came to be */
};

struct step {
    uint32_t before;
    uint32_t lot;
};

struct fill {
    size_t lot_count;
    struct lot *lots;
    size_t state_count, state_room, next_room;
    struct state *states, *next;
    size_t step_count, step_room;
    struct step *steps;
    int64_t capacity;
    int64_t ceiling; /* no filling is worth more */
    int64_t best;
    uint32_t best_step; /* 0: nothing above the floor yet */
    bool exact;
};

static int compare_lots(const void *left, const void *right) {
    const struct lot *a = left;
    const struct lot *b = right;
    int128 worth_a = (int128)a->value * b->size;
    int128 worth_b = (int128)b->value * a->size;
    if (worth_a != worth_b) {
        return worth_a > worth_b ? -1 : 1;
    }
    const int size = order_by_number(b->size, a->size);
    return size != 0 ? size : order_by_number((int64_t)a->item, (int64_t)b->item);
}

/* How many lots an item makes: one for each doubling of its pieces. */
static size_t lots_of(const struct fill *fill, const struct strip_fill_item *item) {
    int64_t left = fill->capacity / item->size;
    size_t lots = 0;
    for (left = left < item->most ? left : item->most; left > 0; left /= 2) {
        lots++;
    }
    return lots;
}

static bool list_lots(struct fill *fill, const struct strip_fill_item *items, size_t count) {
    size_t lots = 1;
    for (size_t i = 0; i < count; i++) {
        lots += items[i].most > 0 ? lots_of(fill, &items[i]) : 0;
    }
    fill->lots = calloc(lots, sizeof *fill->lots);
    if (fill->lots == NULL) {
        return false;
    }
    for (size_t i = 0; i < count; i++) {
        int64_t left = items[i].value > 0 ? fill->capacity / items[i].size : 0;
        left = left < items[i].most ? left : items[i].most;
        for (int64_t times = 1; left > 0; times *= 2) {
            int64_t lot = times < left ? times : left;
            fill->lots[fill->lot_count++] = (struct lot){
                .size = lot * items[i].size,
                .value = lot * items[i].value,
                .times = lot,
                .item = i,
                .worth = (double)items[i].value / (double)items[i].size * (1.0 + 1e-12),
            };
            left -= lot;
        }
    }
    qsort(fill->lots, fill->lot_count, sizeof *fill->lots, compare_lots);
    int64_t least = INT64_MAX / 2;
    int64_t dearest = 0;
    for (size_t i = fill->lot_count; i-- > 0;) {
        struct lot *lot = &fill->lots[i];
        lot->least = least = lot->size < least ? lot->size : least;
        lot->dearest = dearest = lot->value > dearest ? lot->value : dearest;
    }
    return true;
}

/* Room for the states and steps that one more lot makes at most. */
static bool states_grow(struct fill *fill) {
    const size_t states = 2 * fill->state_count + 2;
    const size_t steps = fill->step_count + fill->state_count + 2;
    bool failed = false;
    fill->states =
        array_grow(fill->states, &fill->state_room, states, sizeof *fill->states, &failed);
    fill->next = array_grow(fill->next, &fill->next_room, states, sizeof *fill->next, &failed);
    fill->steps = array_grow(fill->steps, &fill->step_room, steps, sizeof *fill->steps, &failed);
    return !failed;
}

/* No more value than this can be added by the lots from `lot` on: room for one, or all of the room
 * at the next lot's value. */
static double most_rest(const struct fill *fill, int64_t left, size_t lot) {
    if (lot == fill->lot_count || left < fill->lots[lot].least) {
        return 0.0;
    }
    double rest = (double)left * fill->lots[lot].worth;
    if (left < 2 * fill->lots[lot].least && (double)fill->lots[lot].dearest < rest) {
        rest = (double)fill->lots[lot].dearest;
    }
    return rest;
}

/* Keeps a state that is worth more than the last one kept and may still pass the best. A new one
 * (fresh) gets its step first. */
static void keep(struct fill *fill, size_t *kept, struct state state, bool fresh, size_t lot) {
    if (*kept > 0 && state.value <= fill->next[*kept - 1].value) {
        return;
    }
    double rest = most_rest(fill, fill->capacity - state.size, lot + 1);
    bool better = fresh && state.value > fill->best;
    if (!better && ((double)state.value + rest) * (1.0 + 1e-12) + 1.0 <= (double)fill->best) {
        return;
    }
    if (fresh) {
        fill->steps[fill->step_count] = (struct step){state.step, (uint32_t)lot};
        state.step = (uint32_t)fill->step_count++;
    }
    if (better) {
        fill->best = state.value;
        fill->best_step = state.step;
    }
    fill->next[(*kept)++] = state;
}

/* Merges the states with themselves plus one lot, both by rising size. */
static void add_lot(struct fill *fill, size_t lot) {
    const struct lot *add = &fill->lots[lot];
    size_t old = 0;
    size_t kept = 0;
    for (size_t from = 0; from < fill->state_count || old < fill->state_count;) {
        bool take_old = from >= fill->state_count;
        struct state grown = {0};
        if (!take_old) {
            grown = fill->states[from];
            grown.size += add->size;
            grown.value += add->value;
            if (grown.size > fill->capacity) {
                from = fill->state_count;
                continue;
            }
            take_old =
                old < fill->state_count &&
                (fill->states[old].size < grown.size ||
                 (fill->states[old].size == grown.size && fill->states[old].value >= grown.value));
        }
        if (take_old) {
            keep(fill, &kept, fill->states[old++], false, lot);
        } else {
            keep(fill, &kept, grown, true, lot);
            from++;
        }
    }
    struct state *held = fill->states;
    const size_t held_room = fill->state_room;
    fill->states = fill->next;
    fill->state_room = fill->next_room;
    fill->next = held;
    fill->next_room = held_room;
    fill->state_count = kept;
}

/* All of the room that sums of the sizes can fill, at the best lot's value, down to a sum that the
 * values can make. A search that reached it is over: where pieces are worth their length, as in a
 * board filled as full as it goes, that is after a few lots of hundreds. */
static int64_t ceiling_of(const struct fill *fill) {
    int64_t size = 0;
    int64_t value = 0;
    for (size_t i = 0; i < fill->lot_count; i++) {
        size = cut_common_divisor(size, fill->lots[i].size);
        value = cut_common_divisor(value, fill->lots[i].value);
    }
    if (fill->lot_count == 0) {
        return 0;
    }
    int128 room = fill->capacity - fill->capacity % size;
    int128 most = room * fill->lots[0].value / fill->lots[0].size;
    most -= most % value;
    return most < INT64_MAX ? (int64_t)most : INT64_MAX;
}

/* The lots in order, whatever fits: a first best, so that states are cut off early. */
static int64_t greedy_value(const struct fill *fill) {
    int64_t left = fill->capacity;
    int64_t value = 0;
    for (size_t i = 0; i < fill->lot_count; i++) {
        if (fill->lots[i].size <= left) {
            left -= fill->lots[i].size;
            value += fill->lots[i].value;
        }
    }
    return value;
}

/* --- a search for few pieces ------------------------------------------------------------------ */

/* Sizes that go into a board a few times are searched in depth, which needs no lists. It gives up
 * after so many fillings looked at. */
#define DEPTH_ITEMS ((size_t)64)
#define DEPTH_STEPS 6000

/* The items by value a unit of size, best first; those that may be of use. */
static size_t sort_items(const struct fill *fill, const struct strip_fill_item *items, size_t count,
                         struct lot *sorted) {
    size_t n = 0;
    for (size_t i = 0; i < count; i++) {
        const int64_t fit = fill->capacity / items[i].size;
        const struct lot lot = {.size = items[i].size,
                                .value = items[i].value,
                                .times = fit < items[i].most ? fit : items[i].most,
                                .item = i,
                                .worth =
                                    (double)items[i].value / (double)items[i].size * (1.0 + 1e-12)};
        if (lot.times <= 0 || lot.value <= 0) {
            continue;
        }
        size_t at = n++;
        for (; at > 0 && compare_lots(&sorted[at - 1], &lot) > 0; at--) {
            sorted[at] = sorted[at - 1];
        }
        sorted[at] = lot;
    }
    int64_t least = INT64_MAX / 2;
    for (size_t i = n; i-- > 0;) {
        sorted[i].least = least = sorted[i].size < least ? sorted[i].size : least;
    }
    return n;
}

/* In depth: as many of the best item as go in, then of the next; backward by one piece at a time.
 * counts: one an item, of the best filling. false: it gave up, or has too many items. */
static bool search_depth(struct fill *fill, const struct strip_fill_item *items, size_t count,
                         int64_t *counts, bool *found, int64_t *spent) {
    struct lot sorted[DEPTH_ITEMS];
    int64_t taken[DEPTH_ITEMS];
    if (count > DEPTH_ITEMS) {
        return false;
    }
    const size_t n = sort_items(fill, items, count, sorted);
    int64_t left = fill->capacity;
    int64_t value = 0;
    int steps = 0;
    size_t at = 0;
    *found = false;
    for (;;) {
        while (at < n && left >= sorted[at].least &&
               ((double)value + (double)left * sorted[at].worth) * (1.0 + 1e-12) + 1.0 >
                   (double)fill->best) {
            const int64_t fit = left / sorted[at].size;
            taken[at] = fit < sorted[at].times ? fit : sorted[at].times;
            left -= taken[at] * sorted[at].size;
            value += taken[at] * sorted[at].value;
            at++;
        }
        if (value > fill->best) {
            fill->best = value;
            *found = true;
            memset(counts, 0, count * sizeof *counts);
            for (size_t i = 0; i < at; i++) {
                counts[sorted[i].item] = taken[i];
            }
        }
        while (at > 0 && taken[at - 1] == 0) {
            at--;
        }
        if (at == 0 || ++steps > DEPTH_STEPS) {
            break;
        }
        taken[at - 1]--;
        left += sorted[at - 1].size;
        value -= sorted[at - 1].value;
    }
    cut_spend(spent, 20 * (int64_t)steps + 10 * (int64_t)n + 30);
    return at == 0;
}

static bool run(struct fill *fill, int64_t *spent) {
    for (size_t lot = 0; lot < fill->lot_count && fill->state_count > 0; lot++) {
        if (fill->best >= fill->ceiling) {
            break;
        }
        if (fill->state_count > STATES_MAX || fill->step_count + fill->state_count > STEPS_MAX) {
            fill->exact = false;
            break;
        }
        if (!states_grow(fill)) {
            return false;
        }
        cut_spend(spent, 3 * (int64_t)fill->state_count + 30);
        add_lot(fill, lot);
    }
    return true;
}

bool strip_fill_best(const struct strip_fill_item *items, size_t count, int64_t capacity,
                     int64_t floor, int64_t *counts, struct strip_fill_result *result,
                     int64_t *spent) {
    struct fill fill = {.capacity = capacity, .best = floor, .exact = true};
    bool found = false;
    if (search_depth(&fill, items, count, counts, &found, spent)) {
        *result = (struct strip_fill_result){fill.best, found, true};
        return true;
    }
    fill.best = floor;
    bool ok = list_lots(&fill, items, count) && states_grow(&fill);
    if (ok) {
        /* One below the greedy value, so that the greedy filling itself is found again. */
        int64_t greedy = greedy_value(&fill) - 1;
        fill.best = greedy > floor ? greedy : floor;
        fill.ceiling = ceiling_of(&fill);
        fill.steps[fill.step_count++] = (struct step){0, 0};
        fill.states[fill.state_count++] = (struct state){0, 0, 0};
        cut_spend(spent, 50 * (int64_t)count + 500);
        ok = run(&fill, spent);
    }
    *result = (struct strip_fill_result){fill.best, fill.best_step != 0, fill.exact};
    if (ok && result->found) {
        memset(counts, 0, count * sizeof *counts);
        for (uint32_t step = fill.best_step; step != 0; step = fill.steps[step].before) {
            const struct lot *lot = &fill.lots[fill.steps[step].lot];
            counts[lot->item] += lot->times;
        }
    }
    free(fill.lots);
    free(fill.states);
    free(fill.next);
    free(fill.steps);
    return ok;
}
