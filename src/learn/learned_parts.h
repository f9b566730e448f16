/* SPDX-License-Identifier: MIT */
/* The pieces of what was learned. For src/learn only. */
#ifndef DOORCOST_LEARN_LEARNED_PARTS_H
#define DOORCOST_LEARN_LEARNED_PARTS_H

#include "base/int128.h"
#include "learn/learned.h"

/* What all of its makers work with. */
struct learner {
    struct learned *learned;
    const struct estimate *e;
    const struct actuals *actuals;
    struct problems *problems;
    struct pool *pool;
};

/* One of what is bought, in the decimals of amounts. */
#define GOODS_ONE INT64_C(1000000)

/* a x b / c to the nearest whole number, a half away from zero; c above 0. */
static inline int64_t learned_share(int64_t a, int64_t b, int64_t c) {
    return (int64_t)int128_round((int128)a * b, c);
}

/* A value at that many decimals; of one not set 0. */
int64_t learned_value(const struct value *value, uint8_t decimals);

/* Asks about what was noted where it is more than three times as much as was estimated, or less
 * than a third of it. noted, estimated: shown at `decimals` with unit behind. */
void learned_ask_far(const struct learner *learner, struct place place, const char *name,
                     int64_t noted, int64_t estimated, uint8_t decimals, const char *unit);

/* Fills in the work. false: out of memory. */
bool learned_work_make(const struct learner *learner) __attribute__((warn_unused_result));
/* Fills in the goods. false: out of memory. */
bool learned_goods_make(const struct learner *learner) __attribute__((warn_unused_result));

#endif
