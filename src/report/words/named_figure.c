/* SPDX-License-Identifier: MIT */
/* One walk over all that has a name and a table of fields; the asked name is held against each. */
#include "report/words/named_figure.h"

#include "base/text.h"
#include "report/words/field.h"

#include <string.h>
#include <strings.h>

struct search {
    const struct estimate *e;
    struct pool *pool;
    const char *name; /* asked for */
    fig found;
    const char **names; /* all there are; only after a search that found nothing */
    size_t count, room;
    bool collect;
};

static void keep_name(struct search *s, const char *of, const char *name) {
    if (!s->collect || s->count == s->room) {
        return;
    }
    s->names[s->count++] = of[0] == '\0' ? name : pool_words(s->pool, "%s %s", of, name);
}

/* What follows `of` and a blank in the asked name; the name itself where of is ""; NULL: it begins
 * otherwise. */
static const char *rest_of(const struct search *s, const char *of) {
    const size_t size = strlen(of);
    if (size == 0) {
        return s->name;
    }
    return strncasecmp(s->name, of, size) == 0 && s->name[size] == ' ' ? s->name + size + 1 : NULL;
}

/* Looks among the fields of a thing. */
static void look_in(struct search *s, const char *of, const struct field_table *table,
                    const void *thing) {
    const char *const rest = rest_of(s, of);
    for (size_t i = 0; i < table->count; i++) {
        const struct field *const field = &table->fields[i];
        const fig figure = field_figure(field, thing);
        if (fig_none(figure)) {
            continue;
        }
        if (s->collect) {
            keep_name(s, of, field_label(field));
        } else if (rest != NULL && fig_none(s->found) &&
                   (text_same(rest, field_label(field)) ||
                    (field->key != NULL && text_same(rest, field->key)))) {
            s->found = figure;
        }
    }
}

/* The figure that a thing is asked for by its name alone. */
static void look_at(struct search *s, const char *of, const char *more, fig figure) {
    if (fig_none(figure)) {
        return;
    }
    if (s->collect) {
        keep_name(s, of, more);
        return;
    }
    const char *const rest = rest_of(s, of);
    if (fig_none(s->found) && rest != NULL && text_same(rest, more)) {
        s->found = figure;
    }
}

/* --- what has a name --- */

/* A leaf, under its own name or that of its row. */
static void look_at_leaf(struct search *s, size_t r, const char *id) {
    const struct estimate *const e = s->e;
    const struct leaf_figures *const leaf = &e->quantities.leaves[r];
    const struct door_price *const price = &e->costs.doors[r];
    look_at(s, "", id, price->unit);
    look_in(s, id, &fields_door_price, price);
    look_in(s, id, &fields_leaf, leaf);
    look_in(s, id, &fields_build_up, &price->cost);
    look_at(s, id, "person-minutes", e->labor.leaf_minutes[r]);
    for (size_t i = 0; i < e->labor.operation_count; i++) {
        const struct operation_figures *const o = &e->labor.operations[i];
        look_at(s, id, e->rates->operations[o->operation].name.s, o->shares[r].person);
    }
}

static void look_at_doors(struct search *s) {
    for (size_t r = 0; r < s->e->quantities.count; r++) {
        const struct door *const door = s->e->quantities.leaves[r].door;
        look_at_leaf(s, r, door->name);
        if (!text_same(door->name, door->row->id.s)) {
            look_at_leaf(s, r, door->row->id.s); /* of leaves that differ, the first */
        }
    }
}

static void look_at_job(struct search *s) {
    const struct estimate *const e = s->e;
    look_in(s, "", &fields_sale, &e->sale);
    look_in(s, "", &fields_build_up, &e->costs.job);
    look_in(s, "", &fields_costs, &e->costs);
    look_in(s, "", &fields_labor, &e->labor);
    look_in(s, "", &fields_purchase, &e->purchase);
}

static void look_at_stock(struct search *s) {
    const struct estimate *const e = s->e;
    for (size_t i = 0; i < e->lumber.count; i++) {
        const struct lumber_buy *const b = &e->lumber.buys[i];
        const char *const name = e->rates->lumber[b->material].name.s;
        look_at(s, "", name, lumber_charged(b));
        look_in(s, name, &fields_lumber, b);
        look_in(s, name, &fields_lumber_way, &b->priced);
        look_in(s, name, &fields_lumber_job, b);
        look_in(s, name, &fields_lumber_plan, b);
    }
    for (size_t i = 0; i < e->sheets.count; i++) {
        const struct sheet_buy *const b = &e->sheets.buys[i];
        const char *const name = e->rates->sheets[b->material].name.s;
        look_at(s, "", name, b->charged);
        look_in(s, name, &fields_sheet, b);
        look_in(s, name, &fields_sheet_way, &b->priced);
        look_in(s, name, &fields_sheet_job, b);
        look_in(s, name, &fields_sheet_plan, b);
    }
    for (size_t i = 0; i < e->banding.count; i++) {
        const struct banding_buy *const b = &e->banding.buys[i];
        const char *const name = e->rates->bandings[b->banding].name.s;
        look_at(s, "", name, b->charged);
        look_in(s, name, &fields_banding, b);
    }
    for (size_t i = 0; i < e->glass.count; i++) {
        const struct glass_buy *const b = &e->glass.buys[i];
        const char *const name = e->rates->glass[b->material].name.s;
        look_at(s, "", name, b->cost);
        look_in(s, name, &fields_glass, b);
    }
}

static void look_at_pieces(struct search *s) {
    const struct estimate *const e = s->e;
    for (size_t i = 0; i < e->finish.product_count; i++) {
        const struct product *const p = &e->finish.products[i];
        look_at(s, "", p->title, p->charged);
        look_at(s, "", p->name, p->charged);
        look_in(s, p->title, &fields_product, p);
        look_in(s, p->name, &fields_product, p);
    }
    for (size_t i = 0; i < e->finish.batch_count; i++) {
        const struct batch *const b = &e->finish.batches[i];
        const char *const name = e->rates->finishes[b->finish].name.s;
        look_at(s, "", name, b->cost);
        look_in(s, name, &fields_batch, b);
    }
    for (size_t i = 0; i < e->hardware.count; i++) {
        const struct hardware_buy *const b = &e->hardware.buys[i];
        const char *const name = e->rates->hardware[b->hardware].name.s;
        look_at(s, "", name, b->charged);
        look_in(s, name, &fields_hardware, b);
    }
    for (size_t i = 0; i < e->costs.consumable_count; i++) {
        const struct consumable_figures *const c = &e->costs.consumables[i];
        const char *const name = e->rates->consumables[c->consumable].name.s;
        look_at(s, "", name, c->cost);
        look_in(s, name, &fields_consumable, c);
    }
    for (size_t i = 0; i < e->labor.operation_count; i++) {
        const struct operation_figures *const o = &e->labor.operations[i];
        const char *const name = e->rates->operations[o->operation].name.s;
        look_at(s, "", name, o->cost);
        look_in(s, name, &fields_operation, o);
    }
}

static void look_everywhere(struct search *s) {
    look_at_doors(s);
    look_at_job(s);
    look_at_stock(s);
    look_at_pieces(s);
}

fig named_figure(const struct estimate *e, struct pool *pool, const char *name, const char **near) {
    enum { MOST_NAMES = 20000 }; /* to look for a near one among */
    struct search s = {.e = e, .pool = pool, .name = name};
    *near = NULL;
    look_everywhere(&s);
    if (fig_none(s.found)) {
        s.room = MOST_NAMES;
        s.names = pool_take(pool, s.room, sizeof *s.names);
        s.collect = s.names != NULL;
        look_everywhere(&s);
        *near = text_nearest(name, s.names, s.count);
    }
    return s.found;
}
