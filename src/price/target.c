/* SPDX-License-Identifier: MIT */
#include "price/target.h"

#include "base/int128.h"

#include <stdlib.h>

/* A whole, in hundredths of a percent. */
#define WHOLE 10000
/* As many sets of rows are tried as make at most so many rows to estimate: some seconds. */
#define MOST_ROWS_TRIED 200000
/* Of larger sets nobody would speak with a client. */
#define MOST_SET 3
/* Decimals that a number of the rates may have. */
#define RATE_DECIMALS 6

/* Between which values a lever goes, in hundredths of a percent: as the files allow, and of hours
 * from a tenth to ten times. */
static const struct {
    int64_t low, high;
    bool raises; /* more of it is a higher total */
} ranges[LEVER_COUNT] = {
    [LEVER_PROFIT] = {0, 100000, true}, /* of a margin less, see lever_end */
    [LEVER_DISCOUNT] = {0, 9900, false},
    [LEVER_HOURS] = {1000, 100000, true},
};
#define MOST_MARGIN 9500

struct finder {
    struct target *target;
    const struct estimate *base;
    struct plan_request plans;
    struct operation *operations; /* room for those of the rates */
    struct row *rows;             /* likewise of the job */
    bool memory;                  /* false: out of memory */
};

/* --- trying --- */

static bool try_job(struct finder *f, const struct rates *rates, const struct job *job,
                    struct outcome *outcome) {
    const enum estimate_result result = outcome_try(outcome, rates, job, f->base->option, f->plans);
    f->memory = f->memory && result != ESTIMATE_MEMORY;
    return result == ESTIMATE_OK;
}

/* value x over / under at as many decimals as a file may have. */
static void scale(struct value *value, int64_t over, int64_t under) {
    int128 amount = value->amount;
    for (unsigned i = value->decimals; i < RATE_DECIMALS; i++) {
        amount *= 10;
    }
    value->amount = (int64_t)int128_round(amount * over, under);
    value->decimals = RATE_DECIMALS;
}

static void scale_work(const struct finder *f, int64_t to) {
    const struct rates *const rates = f->base->rates;
    for (size_t i = 0; i < rates->operation_count; i++) {
        struct operation *const op = &f->operations[i];
        *op = rates->operations[i];
        scale(&op->minutes, to, WHOLE);
        scale(&op->handling, to, WHOLE);
        scale(&op->setup, to, WHOLE);
        scale(&op->feed, WHOLE, to);
    }
}

static bool try_lever(struct finder *f, enum lever lever, int64_t to, struct outcome *outcome) {
    const struct value percent = {
        .amount = to, .decimals = LEVER_DECIMALS, .unit = UNIT_PERCENT, .set = true};
    struct rates rates = *f->base->rates;
    struct job job = *f->base->job;
    switch (lever) {
    case LEVER_PROFIT:
        rates.shop.profit = percent;
        break;
    case LEVER_DISCOUNT:
        job.sale.discount = percent;
        job.sale.discounts = (struct steps){0};
        break;
    case LEVER_HOURS:
        scale_work(f, to);
        rates.operations = f->operations;
        break;
    case LEVER_COUNT:
        break;
    }
    return try_job(f, &rates, &job, outcome);
}

/* --- levers --- */

static bool goes_up(const struct finder *f) {
    return f->target->wanted > f->target->job.client;
}

static bool reached(const struct finder *f, const struct outcome *outcome) {
    return goes_up(f) ? outcome->client >= f->target->wanted : outcome->client <= f->target->wanted;
}

/* Where the lever stands, in hundredths of a percent: rounded, or to the side from which it
 * starts. */
static int64_t lever_now(const struct finder *f, enum lever lever, bool *between) {
    const struct estimate *const e = f->base;
    const struct value *const profit = &e->rates->shop.profit;
    int64_t amount = 0;
    unsigned decimals = 0;
    int64_t under = 1;
    *between = false;
    if (lever == LEVER_HOURS) {
        return WHOLE;
    }
    if (lever == LEVER_PROFIT && profit->set) {
        amount = profit->amount;
        decimals = profit->decimals;
    } else if (lever == LEVER_DISCOUNT && !fig_none(e->sale.discount_rate)) {
        amount = tape_scaled(&e->tape, e->sale.discount_rate, RATE_DECIMALS);
        decimals = RATE_DECIMALS;
    }
    for (; decimals < LEVER_DECIMALS; decimals++) {
        amount *= 10;
    }
    for (; decimals > LEVER_DECIMALS; decimals--) {
        under *= 10;
    }
    *between = amount % under != 0;
    return (int64_t)int128_round(amount, under);
}

static int64_t lever_end(const struct finder *f, enum lever lever, bool high) {
    const bool margin = f->base->rates->shop.profit_as.choice == PROFIT_MARGIN;
    if (!high) {
        return ranges[lever].low;
    }
    return lever == LEVER_PROFIT && margin ? MOST_MARGIN : ranges[lever].high;
}

/* Halves the steps between `out`, which does not reach it, and answer->then, which does. */
static void narrow(struct finder *f, enum lever lever, struct lever_answer *answer, int64_t out) {
    while (f->memory && (answer->then - out) / 2 != 0) {
        const int64_t middle = out + (answer->then - out) / 2;
        struct outcome outcome;
        const bool has = try_lever(f, lever, middle, &outcome);
        if (has && reached(f, &outcome)) {
            answer->then = middle;
            answer->outcome = outcome;
        } else {
            out = middle;
        }
    }
}

static void turn(struct finder *f, enum lever lever) {
    struct lever_answer *const answer = &f->target->levers[lever];
    bool between;
    const int64_t now = lever_now(f, lever, &between);
    const bool more = goes_up(f) == ranges[lever].raises;
    answer->now = now;
    if (f->target->wanted == f->target->job.client) {
        *answer = (struct lever_answer){
            .now = now, .then = now, .reaches = true, .has = true, .outcome = f->target->job};
        return;
    }
    answer->then = lever_end(f, lever, more);
    answer->has = try_lever(f, lever, answer->then, &answer->outcome);
    answer->reaches = answer->has && reached(f, &answer->outcome);
    if (answer->reaches) {
        /* the step next to where it stands may be short of it, or on its other side */
        narrow(f, lever, answer, between ? now + (more ? -1 : 1) : now);
    }
}

/* --- rows --- */

/* How many sets of `size` of so many rows there are; more than can be tried: some number above. */
static int64_t count_sets(int64_t rows, int64_t size) {
    int128 sets = 1;
    for (int64_t i = 0; i < size && sets <= MOST_ROWS_TRIED; i++) {
        sets = sets * (rows - i) / (i + 1);
    }
    return (int64_t)sets;
}

/* The job without the rows of that set. */
static bool try_set(struct finder *f, const size_t *set, size_t size, struct outcome *outcome) {
    struct job job = *f->base->job;
    job.rows = f->rows;
    job.row_count = outcome_rows_without(f->rows, f->base->job, set, size);
    return try_job(f, f->base->rates, &job, outcome);
}

static int64_t distance(const struct finder *f, const struct outcome *outcome) {
    const int64_t off = outcome->client - f->target->wanted;
    return off < 0 ? -off : off;
}

/* Keeps a set that comes nearer; one that reaches the total is nearer than any that does not. */
static void keep(const struct finder *f, const size_t *set, size_t size,
                 const struct outcome *outcome) {
    struct rows_answer *const best = &f->target->rows;
    const bool reaches = reached(f, outcome);
    if (best->count > 0 &&
        (best->reaches != reaches ? best->reaches
                                  : distance(f, &best->outcome) <= distance(f, outcome))) {
        return;
    }
    if (!reaches && distance(f, outcome) >= distance(f, &f->target->job)) {
        return;
    }
    for (size_t i = 0; i < size; i++) {
        best->rows[i] = &f->base->job->rows[set[i]];
    }
    best->count = size;
    best->reaches = reaches;
    best->outcome = *outcome;
}

/* The next set of that size among so many rows; false: it was the last. */
static bool next_set(size_t *set, size_t size, size_t rows) {
    size_t at = size;
    while (at > 0 && set[at - 1] == rows - size + at - 1) {
        at--;
    }
    if (at == 0) {
        return false;
    }
    set[at - 1]++;
    for (size_t i = at; i < size; i++) {
        set[i] = set[i - 1] + 1;
    }
    return true;
}

static void try_sets(struct finder *f, size_t size) {
    const size_t rows = f->base->job->row_count;
    size_t set[MOST_SET];
    for (size_t i = 0; i < size; i++) {
        set[i] = i;
    }
    do {
        struct outcome outcome;
        if (try_set(f, set, size, &outcome)) {
            keep(f, set, size, &outcome);
        }
    } while (f->memory && next_set(set, size, rows));
    f->target->rows.most_tried = size;
}

/* Sets of more rows only where no smaller one reaches it, and some row stays. */
static void leave_out(struct finder *f) {
    const struct rates *const rates = f->base->rates;
    const int64_t rows = (int64_t)f->base->job->row_count;
    const bool planned = rates->shop.lumber_by.choice == PRICED_BY_PLAN ||
                         rates->shop.sheets_by.choice == PRICED_BY_PLAN;
    const int64_t most = planned ? 1 : MOST_SET;
    if (f->target->wanted >= f->target->job.client) {
        return;
    }
    for (int64_t size = 1; f->memory && !f->target->rows.reaches && size <= most && size < rows &&
                           count_sets(rows, size) * rows <= MOST_ROWS_TRIED;
         size++) {
        try_sets(f, (size_t)size);
    }
}

bool target_make(struct target *target, const struct estimate *base, struct plan_request plans,
                 struct pool *pool) {
    *target = (struct target){.wanted = target->wanted,
                              .job = outcome_of(base),
                              .money_decimals = base->tape.money_decimals};
    target->rows.rows = pool_take(pool, MOST_SET, sizeof(const struct row *));
    struct finder f = {.target = target, .base = base, .plans = plans};
    f.operations = calloc(base->rates->operation_count + 1, sizeof *f.operations);
    f.rows = calloc(base->job->row_count + 1, sizeof *f.rows);
    f.memory = target->rows.rows != NULL && f.operations != NULL && f.rows != NULL;
    for (int lever = 0; lever < LEVER_COUNT && f.memory; lever++) {
        turn(&f, (enum lever)lever);
    }
    if (f.memory) {
        leave_out(&f);
    }
    free(f.operations);
    free(f.rows);
    return f.memory;
}
