/* SPDX-License-Identifier: MIT */
#include "stock/spares.h"

#include "base/order.h"
#include "door/driver.h"
#include "model/limits.h"
#include "model/work_cost.h"
#include "stock/lumber.h"
#include "stock/spare_chooser.h"

#include <stdlib.h>

/* A rail of a row. */
struct rail {
    const struct leaf_figures *leaf;
    size_t part;
    size_t place; /* in the list */
};

static const struct part *part_of(const struct rail *rail) {
    return &rail->leaf->door->parts[rail->part];
}

/* Lumber, then the thickest and widest first: what is milled in one set-up stands together. */
static int by_setup(const struct part *a, const struct part *b) {
    const int lumber = order_by_number(a->material, b->material);
    const int thickness = order_by_number(b->thickness, a->thickness);
    return lumber != 0 ? lumber : thickness != 0 ? thickness : order_by_number(b->width, a->width);
}

static int compare(const void *x, const void *y) {
    const struct rail *const a = x;
    const struct rail *const b = y;
    const int setup = by_setup(part_of(a), part_of(b));
    const int along = order_by_number(part_of(b)->length, part_of(a)->length);
    return setup != 0   ? setup
           : along != 0 ? along
                        : order_by_number((int64_t)a->place, (int64_t)b->place);
}

static bool may_have_spares(const struct part *part, const struct part_figures *f) {
    return part_is_rail(part->kind) && part->material_kind == MATERIAL_LUMBER && part->rise == 0 &&
           !fig_none(f->rough_length);
}

/* All rails that may have spares, in pool; NULL: out of memory. */
static struct rail *gather(const struct calc *c, size_t *count) {
    const struct quantities *const q = c->quantities;
    size_t most = 0;
    for (size_t r = 0; r < q->count; r++) {
        most += q->leaves[r].door->part_count;
    }
    struct rail *const rails = pool_take(c->pool, most + 1, sizeof *rails);
    *count = 0;
    for (size_t r = 0; rails != NULL && r < q->count; r++) {
        for (size_t i = 0; i < q->leaves[r].door->part_count; i++) {
            if (may_have_spares(&q->leaves[r].door->parts[i], &q->leaves[r].parts[i])) {
                rails[*count] = (struct rail){&q->leaves[r], i, *count};
                ++*count;
            }
        }
    }
    return rails;
}

/* Whether one more rail of that kind asks for the set-up of an operation. */
static bool sets_up(const struct operation *op, const struct part *part) {
    const enum driver driver = (enum driver)op->per.choice;
    return op->setup.set && op->setup_per.choice < SETUP_PER_COAT &&
           !driver_is_whole_door(driver) && driver_works_on(driver, part);
}

/* What setting up all machines of a rail once more takes and costs; none where that is nothing. */
static bool price_setups(const struct calc *c, struct spare_rails *s) {
    const struct door *const door = s->leaf->door;
    const struct references *const ops = &door->style->operations;
    fig *const minutes = pool_take(c->pool, ops->count, sizeof *minutes);
    fig *const costs = pool_take(c->pool, ops->count, sizeof *costs);
    size_t n = 0;
    for (size_t i = 0; costs != NULL && minutes != NULL && i < ops->count; i++) {
        const struct operation *const op = &c->rates->operations[ops->r[i].index];
        if (sets_up(op, &door->parts[s->part])) {
            tape_about(c->tape, op->name.s);
            minutes[n] = calc_given(c, "set-up", &op->setup);
            costs[n] = work_cost_of(c, op, minutes[n]).all;
            n++;
        }
    }
    tape_about(c->tape, c->rates->lumber[door->parts[s->part].material].name.s);
    s->setup_minutes = calc_sum(c, "minutes to set up once more", UNIT_MIN, minutes, n);
    s->setup_cost = calc_sum(c, "to set up once more", UNIT_MONEY, costs, n);
    return costs != NULL && minutes != NULL;
}

static fig percent_of(const struct calc *c, const char *what, fig hundredths) {
    return fig_ratio(c->tape, what, UNIT_PERCENT, (figs){{hundredths}},
                     (figs){{c->units->hundred}});
}

static void choose(const struct calc *c, struct spare_rails *s) {
    const struct part_figures *const f = &s->leaf->parts[s->part];
    const struct lumber *const lumber = &c->rates->lumber[s->leaf->door->parts[s->part].material];
    const fig wasted = waste_applied(c, f->net, calc_given(c, "waste", &lumber->waste),
                                     (enum waste_as)lumber->waste_as.choice);
    s->each = calc_product(c, "lumber of a spare rail", UNIT_MONEY, wasted,
                           calc_given(c, "price", &lumber->price));
    s->spoiled = calc_given(c, "remakes, percent of doors", &c->rates->shop.remakes);
    fig out[SPARE_OUTPUTS];
    fig_chosen(c->tape, "spare rails", UNIT_COUNT, &spare_chooser,
               (fig[]){s->pieces, s->spoiled, s->each, s->setup_cost}, 4, out, SPARE_OUTPUTS);
    s->spares = out[SPARE_OUT_COUNT];
    s->count = tape_amount(c->tape, s->spares);
    s->short_without =
        percent_of(c, "chance to set up once more, no spares", out[SPARE_OUT_SHORT_WITHOUT]);
    s->short_with =
        percent_of(c, "chance to set up once more, with spares", out[SPARE_OUT_SHORT_WITH]);
}

/* Rails that are milled in one set-up; terms: room for as many. false: out of memory. */
static bool add_group(struct spare_list *list, const struct calc *c, const struct rail *rails,
                      size_t count, fig *terms) {
    struct spare_rails *const s = &list->rails[list->count];
    *s = (struct spare_rails){.leaf = rails->leaf, .part = rails->part};
    for (size_t i = 0; i < count; i++) {
        terms[i] = rails[i].leaf->parts[rails[i].part].pieces;
    }
    tape_about(c->tape, c->rates->lumber[part_of(rails)->material].name.s);
    s->pieces = calc_sum(c, "rails of one width", UNIT_COUNT, terms, count);
    if (tape_amount(c->tape, s->pieces) > MOST_SPARED) {
        problem_add(c->problems, SEVERITY_ERROR, "too-many-to-spare", rails->leaf->door->row->place,
                    "the job has more than %d rails of one width; so many are no batch of one "
                    "set-up: quote them in parts, or without 'spare rails'",
                    MOST_SPARED);
        return true;
    }
    if (!price_setups(c, s)) {
        return false;
    }
    if (tape_amount(c->tape, s->setup_cost) > 0) {
        choose(c, s);
        list->count++;
    }
    return true;
}

bool spares_make(struct spare_list *list, const struct calc *c) {
    *list = (struct spare_list){0};
    if (!c->rates->shop.spare_rails) {
        return true;
    }
    size_t count;
    struct rail *const rails = gather(c, &count);
    list->rails = pool_take(c->pool, count + 1, sizeof *list->rails);
    fig *const terms = pool_take(c->pool, count + 1, sizeof *terms);
    if (pool_failed(c->pool)) {
        return false;
    }
    qsort(rails, count, sizeof *rails, compare);
    for (size_t i = 0; i < count;) {
        size_t end = i + 1;
        while (end < count && by_setup(part_of(&rails[i]), part_of(&rails[end])) == 0) {
            end++;
        }
        if (!add_group(list, c, &rails[i], end - i, terms)) {
            return false;
        }
        i = end;
    }
    tape_about_job(c->tape);
    return true;
}

/* The rails whose spares are cut as that part is; NULL: it has none. */
static const struct spare_rails *rails_of(const struct spare_list *list,
                                          const struct leaf_figures *leaf, size_t i) {
    for (size_t s = 0; list != NULL && s < list->count; s++) {
        const struct spare_rails *const rails = &list->rails[s];
        if (rails->leaf == leaf && rails->part == i && rails->count > 0) {
            return rails;
        }
    }
    return NULL;
}

int64_t spares_count(const struct spare_list *list, const struct leaf_figures *leaf, size_t i) {
    const struct spare_rails *const rails = rails_of(list, leaf, i);
    return rails == NULL ? 0 : rails->count;
}

fig spares_of(const struct calc *c, const struct leaf_figures *leaf, size_t i) {
    const struct spare_rails *const rails = rails_of(c->spares, leaf, i);
    return rails == NULL ? (fig){0} : rails->spares;
}

fig spares_total(const struct calc *c, const char *what, enum unit unit, int32_t lumber,
                 size_t offset) {
    const size_t most = c->spares == NULL ? 0 : c->spares->count;
    fig total = {0};
    for (size_t s = 0; s < most; s++) {
        const struct spare_rails *const rails = &c->spares->rails[s];
        const struct part_figures *const f = &rails->leaf->parts[rails->part];
        if (rails->count == 0 || rails->leaf->door->parts[rails->part].material != lumber) {
            continue;
        }
        const fig each = *(const fig *)(const void *)((const char *)f + offset);
        const fig all = calc_product(c, what, unit, rails->spares, each);
        total = fig_none(total) ? all : fig_plus(c->tape, what, total, all);
    }
    return total;
}
