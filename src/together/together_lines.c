/* SPDX-License-Identifier: MIT */
#include "together/together_lines.h"

#include "base/int128.h"

#include <assert.h>
#include <string.h>

/* The job whose lines are listed; ALL_JOBS: the estimate over all. */
#define ALL_JOBS SIZE_MAX

struct lister {
    struct together *t;
    const struct estimate *e;
    size_t job;
    size_t room;
};

static bool same_line(const struct together_line *a, const struct together_line *b) {
    return a->group == b->group && a->index == b->index && a->other == b->other &&
           strcmp(a->name, b->name) == 0;
}

/* Adds the cost of a thing to its line; a thing that nothing is paid for has none. */
static void add(struct lister *l, struct together_line wanted, fig cost) {
    struct together *const t = l->t;
    if (fig_none(cost)) {
        return;
    }
    const int64_t money = estimate_money(l->e, cost);
    size_t i = 0;
    while (i < t->line_count && !same_line(&t->lines[i], &wanted)) {
        i++;
    }
    struct together_line *const line = &t->lines[i];
    if (i == t->line_count) {
        assert(i < l->room);
        *line = wanted;
        line->alone_of = pool_take(&t->pool, t->count, sizeof *line->alone_of);
        line->part_of = pool_take(&t->pool, t->count, sizeof *line->part_of);
        line->takes_of = pool_take(&t->pool, t->count, sizeof *line->takes_of);
        if (pool_failed(&t->pool)) {
            return;
        }
        t->line_count++;
    }
    if (l->job == ALL_JOBS) {
        line->together += money;
    } else {
        line->alone_of[l->job] += money;
        line->takes_of[l->job] = 1;
        line->alone += money;
    }
}

static void add_stock(struct lister *l) {
    const struct estimate *const e = l->e;
    const bool cut = l->t->of == TOGETHER_CUT;
    for (size_t i = 0; i < e->lumber.count; i++) {
        const struct lumber_buy *const b = &e->lumber.buys[i];
        add(l,
            (struct together_line){.group = COST_LUMBER,
                                   .name = e->rates->lumber[b->material].name.s,
                                   .index = b->material},
            cut ? b->by_plan.cost : b->priced.cost);
    }
    for (size_t i = 0; i < e->sheets.count; i++) {
        const struct sheet_buy *const b = &e->sheets.buys[i];
        add(l,
            (struct together_line){.group = COST_SHEETS,
                                   .name = e->rates->sheets[b->material].name.s,
                                   .index = b->material},
            cut ? b->by_plan.cost : b->priced.cost);
    }
}

static void add_goods(struct lister *l) {
    const struct estimate *const e = l->e;
    for (size_t i = 0; i < e->banding.count; i++) {
        const struct banding_buy *const b = &e->banding.buys[i];
        add(l,
            (struct together_line){.group = COST_SHEETS,
                                   .name = e->rates->bandings[b->banding].name.s,
                                   .index = b->banding,
                                   .other = 1},
            b->cost);
    }
    for (size_t i = 0; i < e->glass.count; i++) {
        const struct glass_buy *const b = &e->glass.buys[i];
        add(l,
            (struct together_line){.group = COST_GLASS,
                                   .name = e->rates->glass[b->material].name.s,
                                   .index = b->material},
            b->cost);
    }
    for (size_t i = 0; i < e->finish.product_count; i++) {
        const struct product *const p = &e->finish.products[i];
        add(l,
            (struct together_line){
                .group = COST_FINISH, .name = p->title, .index = p->coating, .other = p->additive},
            p->cost);
    }
    for (size_t i = 0; i < e->hardware.count; i++) {
        const struct hardware_buy *const b = &e->hardware.buys[i];
        add(l,
            (struct together_line){.group = COST_HARDWARE,
                                   .name = e->rates->hardware[b->hardware].name.s,
                                   .index = b->hardware},
            b->by_others ? (fig){0} : b->cost);
    }
    for (size_t i = 0; i < e->costs.consumable_count; i++) {
        const struct consumable_figures *const f = &e->costs.consumables[i];
        add(l,
            (struct together_line){.group = COST_CONSUMABLES,
                                   .name = e->rates->consumables[f->consumable].name.s,
                                   .index = f->consumable},
            f->cost);
    }
    add(l, (struct together_line){.group = COST_BOUGHT_IN, .name = "made or finished by others"},
        e->costs.job.group[COST_BOUGHT_IN]);
}

static void list(struct lister *l, const struct estimate *e, size_t job) {
    l->e = e;
    l->job = job;
    add_stock(l);
    if (l->t->of == TOGETHER_BOUGHT) {
        add_goods(l);
    }
}

/* Parts of a line by what it costs each job alone, or where that is nothing, evenly: between the
 * running sums, rounded, so that they add up to the line. */
static void share(const struct together *t, struct together_line *line) {
    int64_t takers = 0;
    for (size_t i = 0; i < t->count; i++) {
        takers += line->takes_of[i];
    }
    const int64_t *const by = line->alone > 0 ? line->alone_of : line->takes_of;
    const int64_t all = line->alone > 0 ? line->alone : takers;
    int64_t before = 0;
    int64_t sum = 0;
    for (size_t i = 0; i < t->count && all > 0; i++) {
        sum += by[i];
        const int64_t upto = (int64_t)int128_round((int128)line->together * sum, all);
        line->part_of[i] = upto - before;
        before = upto;
    }
    line->shared = takers > 1 || together_saves(line) != 0;
}

static void add_line(const struct together *t, struct together_line *sum,
                     const struct together_line *line) {
    sum->alone += line->alone;
    sum->together += line->together;
    for (size_t i = 0; i < t->count; i++) {
        sum->alone_of[i] += line->alone_of[i];
        sum->part_of[i] += line->part_of[i];
    }
}

static bool begin_sum(struct together *t, struct together_line *sum) {
    sum->alone_of = pool_take(&t->pool, t->count, sizeof *sum->alone_of);
    sum->part_of = pool_take(&t->pool, t->count, sizeof *sum->part_of);
    return !pool_failed(&t->pool);
}

static bool add_up(struct together *t) {
    t->all.name = "in all";
    t->unshared.name = "what one job alone takes";
    if (!begin_sum(t, &t->all) || !begin_sum(t, &t->unshared)) {
        return false;
    }
    for (size_t i = 0; i < t->line_count; i++) {
        add_line(t, &t->all, &t->lines[i]);
        if (!t->lines[i].shared) {
            add_line(t, &t->unshared, &t->lines[i]);
        }
    }
    return true;
}

static size_t most_lines(const struct estimate *e) {
    return e->lumber.count + e->sheets.count + e->banding.count + e->glass.count +
           e->finish.product_count + e->hardware.count + e->costs.consumable_count + 1;
}

bool together_lines_make(struct together *t) {
    struct lister l = {.t = t, .room = most_lines(&t->estimate)};
    for (size_t i = 0; i < t->count; i++) {
        l.room += most_lines(t->jobs[i].alone);
    }
    t->lines = pool_take(&t->pool, l.room, sizeof *t->lines);
    if (t->lines == NULL) {
        return false;
    }
    list(&l, &t->estimate, ALL_JOBS); /* first, as its order is that of the groups */
    for (size_t i = 0; i < t->count; i++) {
        list(&l, t->jobs[i].alone, i);
    }
    for (size_t i = 0; i < t->line_count; i++) {
        share(t, &t->lines[i]);
    }
    return add_up(t) && !pool_failed(&t->pool);
}
