/* SPDX-License-Identifier: MIT */
#include "learn/rack_after.h"

#include "learn/learned_parts.h"

/* The rack in the making. Amounts that are left have GOODS_DECIMALS. */
struct shelf {
    const struct estimate *e;
    struct pool *pool;
    struct rack *next; /* has room for all rows there may be */
};

/* --- what was there --------------------------------------------------------------------------- */

static void copy_rows(const struct shelf *s) {
    const struct rack *const rack = &s->e->rates->rack;
    for (size_t i = 0; i < rack->count; i++) {
        struct rack_item *const row = &s->next->items[s->next->count++];
        *row = rack->items[i];
        row->left.amount = learned_value(&row->left, GOODS_DECIMALS);
        row->left.decimals = GOODS_DECIMALS;
        row->worth.amount = learned_value(&row->worth, s->e->tape.money_decimals);
        row->worth.decimals = s->e->tape.money_decimals;
    }
}

/* A row of the rack as it is in the making. Rows are in the order of the old ones. */
static struct rack_item *row_of(const struct shelf *s, const struct rack_item *old) {
    return &s->next->items[old - s->e->rates->rack.items];
}

/* Takes so much off a row, and its part of the worth. */
static void take(const struct shelf *s, const struct rack_item *old, fig taken) {
    if (old == NULL || fig_none(taken)) {
        return;
    }
    struct rack_item *const row = row_of(s, old);
    const int64_t was = row->left.amount;
    row->left.amount -= tape_scaled(&s->e->tape, taken, GOODS_DECIMALS);
    if (row->worth.set && was > 0) {
        row->worth.amount = learned_share(row->worth.amount, row->left.amount, was);
        row->worth.set = row->worth.amount > 0;
    }
}

static void take_all(const struct shelf *s) {
    const struct estimate *const e = s->e;
    const struct rack *const rack = &e->rates->rack;
    for (size_t i = 0; i < e->hardware.count; i++) {
        const struct hardware_buy *const b = &e->hardware.buys[i];
        take(s, rack_find(rack, NAME_HARDWARE, b->hardware, NULL), b->from_rack);
    }
    for (size_t i = 0; i < e->finish.product_count; i++) {
        const struct product *const p = &e->finish.products[i];
        take(s,
             p->coating >= 0 ? rack_find(rack, NAME_COATING, p->coating, p->color)
                             : rack_find(rack, NAME_ADDITIVE, p->additive, NULL),
             p->from_rack);
    }
    for (size_t i = 0; i < e->sheets.count; i++) {
        const struct sheets_plan *const p = &e->sheets.buys[i].plan;
        for (size_t n = p->sold; p->plan != NULL && n < p->job.stock_count; n++) {
            take(s, rack_same(rack, sheets_plan_rack(p, n)), p->taken[n - p->sold]);
        }
    }
}

/* --- what the job leaves ---------------------------------------------------------------------- */

/* Adds so much to the row that is about the same as `like`, or a new one. */
static void add(const struct shelf *s, const struct rack_item *like, int64_t amount) {
    struct rack_item *row = NULL;
    for (size_t i = 0; row == NULL && i < s->next->count; i++) {
        const struct rack one = {&s->next->items[i], 1};
        row = rack_same(&one, like) != NULL ? &s->next->items[i] : NULL;
    }
    if (row == NULL) {
        row = &s->next->items[s->next->count++];
        *row = *like;
        row->what.s =
            pool_words(s->pool, "%s %s", name_section((enum name_kind)like->kind),
                       name_at(s->e->rates, (enum name_kind)like->kind, (size_t)like->index));
        row->left.amount = 0;
        row->left.decimals = GOODS_DECIMALS;
        row->left.set = true;
    }
    row->left.amount += amount;
}

static struct value side_of(const struct estimate *e, int64_t size) {
    const length whole = length_of_millionths(size, e->job->unit);
    return (struct value){
        .amount = length_by_tape(whole, e->rates->shop.unit), .unit = UNIT_NM, .set = true};
}

/* The offcuts of a plan that are worth a place. */
static void add_offcuts(const struct shelf *s, const struct sheet_buy *b) {
    const struct sheets_plan *const p = &b->plan;
    for (size_t n = 0; b->planned && n < p->plan->node_count; n++) {
        const struct sheet_node *const node = &p->plan->nodes[n];
        if (node->use == SHEET_OFFCUT && sheet_keeps(p->keep, node->length, node->width)) {
            const struct rack_item offcut = {.kind = NAME_SHEET,
                                             .index = b->material,
                                             .width = side_of(s->e, node->width),
                                             .length = side_of(s->e, node->length),
                                             .left = {.unit = UNIT_COUNT}};
            add(s, &offcut, GOODS_ONE);
        }
    }
}

/* The only color that the job has a coating in; *several: there are more, and none is told. */
static const char *color_of(const struct estimate *e, int32_t coating, bool *several) {
    const char *color = NULL;
    size_t count = 0;
    for (size_t i = 0; i < e->finish.product_count; i++) {
        if (e->finish.products[i].coating == coating) {
            color = e->finish.products[i].color;
            count++;
        }
    }
    *several = count > 1;
    return color;
}

/* What was noted as left, but sheets: of these the plan knows the sizes. */
static void add_noted(const struct shelf *s, const struct learned_goods *g,
                      struct problems *problems) {
    bool several = false;
    const char *const color = g->kind == NAME_COATING ? color_of(s->e, g->index, &several) : NULL;
    if (g->left <= 0 ||
        (g->kind != NAME_HARDWARE && g->kind != NAME_COATING && g->kind != NAME_ADDITIVE)) {
        return;
    }
    if (several) {
        problem_add(problems, SEVERITY_WARNING, "rack-which-color", g->place,
                    "'%s' is noted as left over, and the job has it in several colors; add it to "
                    "the new rack yourself, with its color",
                    problem_quote(problems, g->name));
        return;
    }
    const struct rack_item like = {
        .kind = (int)g->kind,
        .index = g->index,
        .color = {.s = color},
        .left = {.unit = (uint8_t)(g->kind == NAME_HARDWARE ? UNIT_COUNT : g->unit)}};
    add(s, &like, g->left);
}

/* --- all of it -------------------------------------------------------------------------------- */

static void drop_empty(struct rack *rack) {
    size_t kept = 0;
    for (size_t i = 0; i < rack->count; i++) {
        if (rack->items[i].left.amount > 0) {
            rack->items[kept++] = rack->items[i];
        }
    }
    rack->count = kept;
}

bool rack_after(struct rack *next, const struct estimate *e, const struct learned *learned,
                struct problems *problems, struct pool *pool) {
    size_t most = e->rates->rack.count + learned->goods_count;
    for (size_t i = 0; i < e->sheets.count; i++) {
        const struct sheets_plan *const p = &e->sheets.buys[i].plan;
        most += p->plan == NULL ? 0 : p->plan->node_count;
    }
    *next = (struct rack){.items = pool_take(pool, most, sizeof *next->items)};
    if (next->items == NULL) {
        return false;
    }
    const struct shelf shelf = {e, pool, next};
    copy_rows(&shelf);
    take_all(&shelf);
    for (size_t i = 0; i < e->sheets.count; i++) {
        if (e->sheets.buys[i].plan.plan != NULL) {
            add_offcuts(&shelf, &e->sheets.buys[i]);
        }
    }
    for (size_t i = 0; i < learned->goods_count; i++) {
        add_noted(&shelf, &learned->goods[i], problems);
    }
    drop_empty(next);
    return !pool_failed(pool) && !problems->failed;
}
