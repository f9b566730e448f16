/* SPDX-License-Identifier: MIT */
#include "price/strike.h"

#include "base/order.h"
#include "model/limits.h"
#include "price/near_size.h"

#include <stdlib.h>

struct maker {
    struct strike *strike;
    const struct estimate *base;
    struct plan_request plans;
    struct row *rows; /* of the job that is tried: room for all of base's */
    bool memory;      /* false: out of memory */
};

/* What the job comes to with the first `count` of m->rows in place of its own; false: it could not
 * be estimated so. */
static bool try_rows(struct maker *m, size_t count, struct outcome *outcome) {
    struct job job = *m->base->job;
    job.rows = m->rows;
    job.row_count = count;
    const enum estimate_result result =
        outcome_try(outcome, m->base->rates, &job, m->base->option, m->plans);
    m->memory = m->memory && result != ESTIMATE_MEMORY;
    return result == ESTIMATE_OK;
}

/* --- rows --- */

/* The job without the rows of that list. */
static size_t copy_without(const struct maker *m, const size_t *rows, size_t count) {
    return outcome_rows_without(m->rows, m->base->job, rows, count);
}

static void take_row(struct maker *m, struct strike_row *found, size_t r) {
    const struct estimate *const base = m->base;
    const struct row *const row = &base->job->rows[r];
    struct outcome outcome;
    *found = (struct strike_row){.row = row};
    for (size_t i = 0; i < base->quantities.count; i++) {
        if (base->quantities.leaves[i].door->row == row) {
            found->listed += estimate_money(base, base->costs.doors[i].amount);
        }
    }
    found->listed_one = found->listed / row->count.amount;
    found->has_less = try_rows(m, copy_without(m, &r, 1), &outcome);
    found->less = outcome_minus(m->strike->job, outcome);
    if (!m->memory || row->count.amount >= MOST_OF_ROW) {
        return;
    }
    const size_t all = copy_without(m, NULL, 0);
    m->rows[r].count.amount++;
    found->has_more = try_rows(m, all, &outcome);
    found->more = outcome_minus(outcome, m->strike->job);
}

static void take_rows(struct maker *m, const size_t *rows, size_t count) {
    struct strike *const s = m->strike;
    for (size_t i = 0; i < s->row_count && m->memory; i++) {
        take_row(m, &s->rows[i], count == 0 ? i : rows[i]);
    }
    if (count > 1 && m->memory) {
        struct outcome outcome;
        s->has_together = try_rows(m, copy_without(m, rows, count), &outcome);
        s->together = outcome_minus(s->job, outcome);
    }
}

/* --- sizes --- */

/* The rows whose leaves have one of the sizes of `near` get the other one. */
static struct strike_size copy_alike(const struct maker *m, const struct near_size *near, bool up,
                                     struct pool *pool) {
    const struct doors *const doors = &m->base->doors;
    struct strike_size size = {.width = near->width,
                               .from = near->size[up ? 0 : 1],
                               .to = near->size[up ? 1 : 0],
                               .other = near->leaves[up ? 1 : 0]->row,
                               .rows = pool_take(pool, doors->count, sizeof(const struct row *))};
    (void)copy_without(m, NULL, 0);
    for (size_t d = 0; d < doors->count && size.rows != NULL; d++) {
        const struct door *const leaf = &doors->doors[d];
        const length side = near->width ? leaf->width : leaf->height;
        if (near_size_kind_same(leaf, near->leaves[0], near->width) && side == size.from) {
            struct row *const row = &m->rows[leaf->row - m->base->job->rows];
            if (near->width) {
                row->width.amount += (size.to - size.from) * leaf->leaves;
            } else {
                row->height.amount += size.to - size.from;
            }
            size.rows[size.row_count++] = leaf->row;
        }
    }
    return size;
}

/* A set-up, or a thousandth of the direct cost: less is not worth a word. */
static bool saves(const struct strike *s, const struct strike_size *size) {
    return size->less.direct > 0 &&
           (size->less.setups > 0 || size->less.direct * 1000 >= s->job.direct);
}

static int by_saving(const void *a, const void *b) {
    const struct strike_size *const x = a;
    const struct strike_size *const y = b;
    const int saving = order_by_number(y->less.direct, x->less.direct);
    return saving != 0 ? saving : place_order(x->rows[0]->place, y->rows[0]->place);
}

/* Each pair of neighboring sizes is made one both ways; the way that saves more is kept. */
static bool take_sizes(struct maker *m, struct pool *pool) {
    struct strike *const s = m->strike;
    struct near_sizes near;
    if (!near_sizes_find(&near, &m->base->doors, m->base->job->unit, pool)) {
        return false;
    }
    s->sizes = pool_take(pool, near.count + 1, sizeof *s->sizes);
    for (size_t i = 0; s->sizes != NULL && i < near.count && m->memory; i++) {
        struct strike_size best = {0};
        for (int up = 0; up <= 1; up++) {
            struct strike_size size = copy_alike(m, &near.list[i], up == 1, pool);
            struct outcome outcome;
            m->memory = m->memory && size.rows != NULL;
            if (m->memory && try_rows(m, m->base->job->row_count, &outcome)) {
                size.less = outcome_minus(s->job, outcome);
                best = size.less.direct > best.less.direct ? size : best;
            }
        }
        if (saves(s, &best)) {
            s->sizes[s->size_count++] = best;
        }
    }
    if (s->sizes != NULL) {
        qsort(s->sizes, s->size_count, sizeof *s->sizes, by_saving);
    }
    return s->sizes != NULL;
}

bool strike_make(struct strike *strike, const struct estimate *base, struct plan_request plans,
                 const size_t *rows, size_t count, struct pool *pool) {
    const size_t all = base->job->row_count;
    *strike = (struct strike){
        .job = outcome_of(base),
        .row_count = count == 0 ? all : count,
        .money_decimals = base->tape.money_decimals,
    };
    strike->rows = pool_take(pool, strike->row_count, sizeof *strike->rows);
    struct maker m = {.strike = strike,
                      .base = base,
                      .plans = plans,
                      .rows = calloc(all, sizeof *m.rows),
                      .memory = strike->rows != NULL};
    m.memory = m.memory && m.rows != NULL;
    if (m.memory) {
        take_rows(&m, rows, count);
        m.memory = m.memory && (count > 0 || take_sizes(&m, pool));
    }
    free(m.rows);
    return m.memory;
}
