/* SPDX-License-Identifier: MIT */
#include "price/size_table.h"

#include "base/int128.h"
#include "door/leaf.h"
#include "model/construction.h"

#include <stdlib.h>
#include <string.h>

/* 10^SIZE_AREA_DECIMALS */
#define AREA_ONE 10000

struct maker {
    const struct estimate *base;
    struct plan_request plans;
    const struct size_table *table;
    struct row *rows; /* all of base's, and room for one more */
    bool memory;      /* false: out of memory */
};

/* The job of those rows; with a make that it may not have yet. */
static struct job job_of(const struct maker *m, struct row *rows, size_t count) {
    struct job job = *m->base->job;
    job.rows = rows;
    job.row_count = count;
    job.make_count++;
    return job;
}

/* The row is a job of its own, of the same client: nothing is taken to him, nothing is charged or
 * done besides. */
static struct job job_alone(const struct maker *m, struct row *row) {
    struct job job = job_of(m, row, 1);
    job.sale.charges = NULL;
    job.sale.charge_count = 0;
    job.sale.delivery = (struct charge){.operation.index = -1};
    job.also = (struct references){0};
    return job;
}

static bool try_job(struct maker *m, const struct job *job, struct outcome *outcome) {
    const enum estimate_result result =
        outcome_try(outcome, m->base->rates, job, m->base->option, m->plans);
    m->memory = m->memory && result != ESTIMATE_MEMORY;
    return result == ESTIMATE_OK;
}

/* --- the flat price --- */

/* Of the doors of that style; of all leaves where style is below 0. */
static struct size_flat flat_of(const struct estimate *e, int32_t style) {
    struct size_flat flat = {.own = style >= 0};
    int64_t listed = 0;
    for (size_t i = 0; i < e->quantities.count; i++) {
        const struct leaf_figures *const leaf = &e->quantities.leaves[i];
        if (style < 0 || (leaf->door->construction->style.index == style &&
                          leaf->door->row->use.choice == USE_DOOR)) {
            listed += estimate_money(e, e->costs.doors[i].amount);
            flat.area += tape_scaled(&e->tape, leaf->face, SIZE_AREA_DECIMALS) *
                         tape_scaled(&e->tape, e->quantities.pieces[i], 0);
        }
    }
    const int64_t all = estimate_money(e, e->sale.doors);
    if (all > 0) {
        flat.sold =
            (int64_t)int128_round((int128)listed * estimate_money(e, e->sale.after_discount), all);
    }
    if (flat.area > 0) {
        flat.rate = (int64_t)int128_round((int128)flat.sold * AREA_ONE, flat.area);
    }
    return flat;
}

/* --- prices --- */

/* One face of the leaf of the row, exact but for the last decimal. */
static int64_t area_of(const struct estimate *e, const struct row *row) {
    const struct construction construction = row_construction(e->job, row, e->option);
    const struct leaf leaf =
        leaf_size(row, &construction, LEAF_HUNG, size_step_of(&e->rates->saw, e->units.lengths));
    const int128 side = e->units.metric ? 1000 * NM_PER_MM : NM_PER_FOOT;
    return (int64_t)int128_round((int128)leaf.width * leaf.height * AREA_ONE, side * side);
}

static void set_price(const struct size_flat *flat, struct size_price *price, int64_t count,
                      int64_t area) {
    const struct outcome *const o = &price->outcome;
    price->each = (int64_t)int128_round(o->before_tax, count);
    price->per_area = (int64_t)int128_round((int128)o->before_tax * AREA_ONE, area);
    price->flat = (int64_t)int128_round((int128)flat->rate * area, AREA_ONE);
    if (price->flat < o->direct) {
        price->flat_does = FLAT_LOSES;
    } else if (price->flat < o->before_tax) {
        price->flat_does = FLAT_LESS;
    }
}

static void take_count(struct maker *m, const struct size_line *line, const struct size_flat *flat,
                       size_t at) {
    const int64_t count = m->table->counts[at];
    const size_t all = m->base->job->row_count;
    struct size_price *const added = &line->prices[SIZE_ADDED][at];
    struct size_price *const alone = &line->prices[SIZE_ALONE][at];
    struct row *const row = &m->rows[all];
    *row = line->row;
    row->count.amount = count;
    const struct job with = job_of(m, m->rows, all + 1);
    added->has = try_job(m, &with, &added->outcome);
    if (added->has) {
        added->outcome = outcome_minus(added->outcome, m->table->job);
        set_price(flat, added, count, line->area * count);
    }
    const struct job by_itself = job_alone(m, row);
    alone->has = m->memory && try_job(m, &by_itself, &alone->outcome);
    if (alone->has) {
        set_price(flat, alone, count, line->area * count);
    }
}

static void take_line(struct maker *m, struct size_line *line, const struct size_flat *flat,
                      struct pool *pool) {
    line->area = area_of(m->base, &line->row);
    for (int way = 0; way < SIZE_WAY_COUNT; way++) {
        line->prices[way] = pool_take(pool, m->table->count_count, sizeof *line->prices[way]);
        m->memory = m->memory && line->prices[way] != NULL;
    }
    for (size_t c = 0; c < m->table->count_count && m->memory; c++) {
        take_count(m, line, flat, c);
    }
}

bool size_table_make(struct size_table *table, const struct estimate *base,
                     struct plan_request plans, struct pool *pool) {
    const size_t all = base->job->row_count;
    table->job = outcome_of(base);
    table->money_decimals = base->tape.money_decimals;
    struct maker m = {.base = base,
                      .plans = plans,
                      .table = table,
                      .rows = calloc(all + 1, sizeof *m.rows),
                      .memory = true};
    m.memory = m.rows != NULL;
    if (m.memory) {
        memcpy(m.rows, base->job->rows, all * sizeof *m.rows);
    }
    for (size_t s = 0; s < table->style_count && m.memory; s++) {
        struct size_style *const style = &table->styles[s];
        style->flat = flat_of(base, style->style);
        if (style->flat.area == 0) {
            style->flat = flat_of(base, -1);
        }
        for (size_t l = 0; l < style->line_count && m.memory; l++) {
            if (style->lines[l].reason == NULL) {
                take_line(&m, &style->lines[l], &style->flat, pool);
            }
        }
    }
    free(m.rows);
    return m.memory;
}
