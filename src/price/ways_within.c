/* SPDX-License-Identifier: MIT */
#include "price/ways_within.h"

#include "price/pick.h"

#include <string.h>

/* Hours of a way that could not be estimated: never within, and 10^5 rows of it are no overflow. */
#define NEVER INT64_C(10000000000000)

struct search {
    struct ways_trial *trial;
    struct ways *ways;
    struct pick_way *table; /* WAY_KINDS a row: what a change to that way adds */
    struct pick_thing *things;
    size_t *picked; /* where the search stands */
    size_t *next;   /* a choice to be tried */
};

static bool search_init(struct search *s, struct ways_trial *trial, struct ways *ways,
                        struct pool *pool) {
    const size_t rows = ways->row_count;
    *s = (struct search){.trial = trial,
                         .ways = ways,
                         .table = pool_take(pool, rows * WAY_KINDS, sizeof *s->table),
                         .things = pool_take(pool, rows, sizeof *s->things),
                         .picked = pool_take(pool, rows, sizeof *s->picked),
                         .next = pool_take(pool, rows, sizeof *s->next)};
    ways->within.by_sums.picked = pool_take(pool, rows, sizeof *s->picked);
    ways->within.best.picked = pool_take(pool, rows, sizeof *s->picked);
    return !pool_failed(pool);
}

/* Whether a is the better one: less over the limit, then less money, then fewer hours. */
static bool betters(const struct search *s, const struct outcome *a, const struct outcome *b) {
    const int64_t limit = s->ways->within.limit;
    const int64_t over_a = a->bench > limit ? a->bench - limit : 0;
    const int64_t over_b = b->bench > limit ? b->bench - limit : 0;
    if (over_a != over_b) {
        return over_a < over_b;
    }
    return a->bought != b->bought ? a->bought < b->bought : a->bench < b->bench;
}

static size_t bytes(const struct search *s) {
    return s->ways->row_count * sizeof *s->picked;
}

/* Keeps a choice that was estimated whole if it is the best so far. */
static void keep(struct search *s, const size_t *picked, const struct outcome *real) {
    struct ways_choice *const best = &s->ways->within.best;
    s->ways->within.tried++;
    if (!best->made || betters(s, real, &best->real)) {
        memcpy(best->picked, picked, bytes(s));
        best->real = *real;
        best->made = true;
    }
}

static bool try_next(struct search *s, struct outcome *real) {
    const bool made = ways_trial_run(s->trial, s->ways->rows, s->next, s->ways->row_count, real);
    if (made) {
        keep(s, s->next, real);
    }
    return made;
}

/* --- all that there are --- */

/* How many choices there are, where that is no more than are all tried; else 0. */
static size_t count_choices(const struct ways *ways) {
    size_t count = 1;
    for (size_t i = 0; i < ways->row_count; i++) {
        count *= ways->rows[i].count;
        if (count > WAYS_MOST_WHOLE) {
            return 0;
        }
    }
    return count;
}

static void try_all(struct search *s, size_t count) {
    struct outcome real;
    for (size_t n = 0; n < count && s->trial->memory; n++) {
        size_t rest = n;
        for (size_t i = 0; i < s->ways->row_count; i++) {
            s->next[i] = rest % s->ways->rows[i].count;
            rest /= s->ways->rows[i].count;
        }
        (void)try_next(s, &real);
    }
}

/* --- from one choice to a better one --- */

/* What the sums of the table advise, from a choice that comes to `from`. */
static enum pick_result advise(struct search *s, const struct outcome *from) {
    for (size_t i = 0; i < s->ways->row_count; i++) {
        s->things[i] =
            (struct pick_thing){.ways = s->table + i * WAY_KINDS, .count = s->ways->rows[i].count};
    }
    return pick_make(s->things, s->ways->row_count, s->ways->within.limit - from->bench, s->next);
}

/* The job as listed with each row alone on each of its ways: known already. */
static void fill_from_listed(struct search *s) {
    for (size_t i = 0; i < s->ways->row_count; i++) {
        for (size_t w = 0; w < s->ways->rows[i].count; w++) {
            const struct outcome *const whole = &s->ways->rows[i].ways[w].whole;
            s->table[i * WAY_KINDS + w] =
                (struct pick_way){.hours = whole->bench - s->ways->job.bench,
                                  .money = whole->bought - s->ways->job.bought};
        }
    }
}

/* The same of the choice where the search stands; the best of these is left in *best, its place in
 * *row and *way, where it betters that. */
static bool fill_from_here(struct search *s, const struct outcome *here, struct outcome *best,
                           size_t *row, size_t *way) {
    bool better = false;
    *best = *here;
    for (size_t i = 0; i < s->ways->row_count && s->trial->memory; i++) {
        memcpy(s->next, s->picked, bytes(s));
        for (size_t w = 0; w < s->ways->rows[i].count; w++) {
            struct pick_way *const cell = &s->table[i * WAY_KINDS + w];
            struct outcome real = *here;
            *cell = (struct pick_way){0};
            s->next[i] = w;
            if (w == s->picked[i]) {
                continue;
            }
            if (!try_next(s, &real)) {
                cell->hours = NEVER;
                continue;
            }
            *cell = (struct pick_way){.hours = real.bench - here->bench,
                                      .money = real.bought - here->bought};
            if (betters(s, &real, best)) {
                *best = real;
                *row = i;
                *way = w;
                better = true;
            }
        }
    }
    return better;
}

/* From the choice s->picked, which comes to *here, to better ones as long as there are. */
static enum pick_result climb(struct search *s, struct outcome here) {
    bool better = true;
    while (better) {
        struct outcome best;
        struct outcome advised;
        size_t row = 0;
        size_t way = 0;
        better = fill_from_here(s, &here, &best, &row, &way);
        if (!s->trial->memory) {
            return PICK_MEMORY;
        }
        const enum pick_result result = advise(s, &here);
        if (result == PICK_MEMORY || result == PICK_TOO_MANY) {
            return result;
        }
        if (try_next(s, &advised) && betters(s, &advised, &best)) {
            memcpy(s->picked, s->next, bytes(s));
            best = advised;
            better = true;
        } else if (better) {
            s->picked[row] = way;
        }
        here = best;
    }
    return s->trial->memory ? PICK_WITHIN : PICK_MEMORY;
}

static enum pick_result climb_from(struct search *s, const struct ways_choice *start) {
    if (!start->made) {
        return PICK_WITHIN;
    }
    memcpy(s->picked, start->picked, bytes(s));
    return climb(s, start->real);
}

/* --- all of it --- */

static enum ways_result finish(struct search *s, enum pick_result result) {
    struct ways_within *const within = &s->ways->within;
    if (result == PICK_TOO_MANY) {
        return WAYS_TOO_MANY;
    }
    if (result == PICK_MEMORY || !s->trial->memory) {
        return WAYS_MEMORY;
    }
    ways_trial_choice(s->trial, s->ways, &within->best);
    within->within = within->best.real.bench <= within->limit;
    return s->trial->memory ? WAYS_OK : WAYS_MEMORY;
}

enum ways_result ways_within_make(struct ways_trial *trial, struct ways *ways, struct pool *pool) {
    struct search s;
    struct ways_within *const within = &ways->within;
    if (!search_init(&s, trial, ways, pool)) {
        return WAYS_MEMORY;
    }
    fill_from_listed(&s);
    enum pick_result result = advise(&s, &ways->job);
    if (result == PICK_TOO_MANY || result == PICK_MEMORY) {
        return finish(&s, result);
    }
    memcpy(within->by_sums.picked, s.next, bytes(&s));
    ways_trial_choice(trial, ways, &within->by_sums);
    keep(&s, s.picked, &ways->job); /* all zero: as listed */
    const size_t count = count_choices(ways);
    within->all = count > 0;
    if (within->all) {
        within->tried = 0;
        try_all(&s, count);
        return finish(&s, PICK_WITHIN);
    }
    result = climb_from(&s, &within->by_sums);
    for (int a = WAYS_ALL_COUNT - 1; a >= 0 && result == PICK_WITHIN; a--) {
        result = climb_from(&s, &ways->all[a]);
    }
    return finish(&s, result);
}
