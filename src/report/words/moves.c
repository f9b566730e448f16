/* SPDX-License-Identifier: MIT */
#include "report/words/moves.h"

#include "report/words/shipped.h"

#include <math.h>
#include <stdlib.h>

static int by_money(const void *left, const void *right) {
    const struct move *const a = left;
    const struct move *const b = right;
    if (fabs(a->adds) != fabs(b->adds)) {
        return fabs(a->adds) > fabs(b->adds) ? -1 : 1;
    }
    return a->setting < b->setting ? -1 : 1; /* in the order of the file */
}

/* One number of the file may stand on the tape more than once, under several labels. */
static void add_weights(const struct estimate *e, const double *weights, struct move *list) {
    const struct settings *const settings = &e->rates->settings;
    for (uint32_t id = 1; id < e->tape.count; id++) {
        const fig f = {id};
        const struct setting *const s = weights[id] != 0 && tape_op(&e->tape, f) == OP_GIVEN
                                            ? setting_at(settings, tape_origin(&e->tape, f).place)
                                            : NULL;
        if (s != NULL) {
            list[s - settings->list].adds += weights[id] / 10;
        }
    }
}

struct moves moves_of(const struct estimate *e, struct pool *pool) {
    const struct settings *const settings = &e->rates->settings;
    struct moves moves = {.list = pool_take(pool, settings->count, sizeof *moves.list)};
    double *const weights = tape_weigh(&e->tape, e->sale.total);
    if (moves.list == NULL || weights == NULL) {
        pool->failed = true;
        free(weights);
        return (struct moves){0};
    }
    add_weights(e, weights, moves.list);
    free(weights);
    for (size_t i = 0; i < settings->count; i++) {
        if (fabs(moves.list[i].adds) >= 0.005) {
            moves.list[moves.count++] =
                (struct move){.setting = &settings->list[i],
                              .adds = moves.list[i].adds,
                              .shipped = shipped_still(e->rates, &settings->list[i])};
        }
    }
    qsort(moves.list, moves.count, sizeof *moves.list, by_money);
    return moves;
}

/* Whether a line holds a number that may differ, and none that has a range. */
static bool lacks_range(const struct rate_numbers *numbers, uint32_t line) {
    bool could = false;
    for (size_t i = 0; i < numbers->count; i++) {
        const struct rate_number *const n = &numbers->list[i];
        if (n->value.place.line == line) {
            if (rate_number_ranged(n)) {
                return false;
            }
            could = could || rate_number_may_differ(n);
        }
    }
    return could;
}

struct moves moves_without_range(const struct estimate *e, struct pool *pool) {
    struct moves moves = moves_of(e, pool);
    size_t kept = 0;
    for (size_t i = 0; i < moves.count; i++) {
        if (lacks_range(&e->rates->numbers, moves.list[i].setting->line)) {
            moves.list[kept++] = moves.list[i];
        }
    }
    moves.count = kept;
    return moves;
}
