/* SPDX-License-Identifier: MIT */
#include "stock/plan_input.h"

#include "model/limits.h"
#include "stock/spares.h"

#include <assert.h>
#include <stdlib.h>

#define MILLION 1000000

static bool is_of(const struct part *part, enum material_kind kind, int32_t material) {
    return part->material_kind == kind && part->material == material;
}

/* Items at most: a part may take blanks of two sizes. */
static size_t count_parts(const struct quantities *q, enum material_kind kind, int32_t material) {
    size_t n = 0;
    for (size_t r = 0; r < q->count; r++) {
        for (size_t i = 0; i < q->leaves[r].door->part_count; i++) {
            n += is_of(&q->leaves[r].door->parts[i], kind, material) ? 2 : 0;
        }
    }
    return n;
}

static void add_item(struct plan_input *in, const struct leaf_figures *leaf, size_t i,
                     struct plan_cut cut, int64_t holds, bool turn) {
    const struct tape *const tape = in->calc->tape;
    const struct part *const part = &leaf->door->parts[i];
    const size_t n = in->item_count++;
    in->cuts[n] = cut;
    in->items[n] = (struct cut_item){.length = tape_amount(tape, cut.length),
                                     .width = tape_amount(tape, cut.width),
                                     .demand = tape_amount(tape, cut.pieces),
                                     .turn = turn};
    in->parts[n] = (struct plan_part){
        .door = leaf->door, .part = part, .pieces = in->items[n].demand, .holds = holds};
}

static void gather(struct plan_input *in, const struct leaf_figures *leaf, size_t i, bool turn) {
    const struct part_figures *const f = &leaf->parts[i];
    if (leaf->door->parts[i].material_kind != MATERIAL_LUMBER) {
        add_item(in, leaf, i, (struct plan_cut){f->length, f->width, f->pieces}, 0, turn);
    } else if (!fig_none(f->rough_length)) {
        const fig spares = spares_of(in->calc, leaf, i);
        const fig pieces = fig_none(spares) ? f->staves
                                            : fig_plus(in->calc->tape, "rails, with spare ones",
                                                       f->staves, spares);
        add_item(in, leaf, i, (struct plan_cut){f->rough_length, f->stave_width, pieces}, 0, turn);
        in->parts[in->item_count - 1].spare = !fig_none(spares);
    }
    for (size_t k = 0; k < 2 && !fig_none(f->blank[k]); k++) {
        add_item(in, leaf, i, (struct plan_cut){f->blank[k], f->rough_width, f->blanks[k]},
                 tape_amount(in->calc->tape, f->blank_holds[k]), turn);
    }
}

bool plan_input_init(struct plan_input *in, const struct calc *c, enum material_kind kind,
                     int32_t material, bool turn, size_t more) {
    const struct quantities *const q = c->quantities;
    const size_t most = count_parts(q, kind, material);
    *in = (struct plan_input){.calc = c};
    in->parts = pool_take(c->pool, most, sizeof *in->parts);
    in->cuts = pool_take(c->pool, most, sizeof *in->cuts);
    in->items = pool_take(c->pool, most, sizeof *in->items);
    in->operand_most = more + 3 * most;
    in->operands = pool_take(c->pool, in->operand_most, sizeof *in->operands);
    if (pool_failed(c->pool)) {
        return false;
    }
    for (size_t r = 0; r < q->count; r++) {
        for (size_t i = 0; i < q->leaves[r].door->part_count; i++) {
            if (is_of(&q->leaves[r].door->parts[i], kind, material)) {
                gather(in, &q->leaves[r], i, turn);
            }
        }
    }
    return true;
}

void plan_input_add(struct plan_input *in, fig operand) {
    assert(in->operand_count < in->operand_most);
    in->operands[in->operand_count++] = operand;
}

void plan_input_least(struct plan_input *in, const char *what, int64_t least) {
    plan_input_add(in, tape_constant(in->calc->tape, what, in->calc->units->length, 6, least,
                                     "common practice, no source"));
}

void plan_input_stock(struct plan_input *in, fig along, fig across, fig price) {
    plan_input_add(in, along);
    plan_input_add(in, across);
    plan_input_add(in, price);
}

void plan_input_items(struct plan_input *in) {
    for (size_t i = 0; i < in->item_count; i++) {
        plan_input_stock(in, in->cuts[i].length, in->cuts[i].width, in->cuts[i].pieces);
    }
}

fig plan_input_length(const struct calc *c, const char *what, const struct value *value) {
    return value->set ? calc_given(c, what, value)
                      : tape_constant(c->tape, what, c->units->length, 0, 0, "none given");
}

uint8_t plan_input_prices(struct cut_stock *stocks, size_t count) {
    uint8_t decimals = 6;
    bool whole = true;
    while (decimals > 2 && whole) {
        for (size_t s = 0; s < count; s++) {
            whole = whole && stocks[s].price % 10 == 0;
        }
        for (size_t s = 0; whole && s < count; s++) {
            stocks[s].price /= 10;
        }
        if (whole) {
            decimals--;
        }
    }
    return decimals;
}

static void read_stocks(const struct plan_operands *o, const int64_t *at) {
    for (size_t s = 0; s < o->sold + o->rack; s++) {
        o->stocks[s] = (struct cut_stock){
            .length = at[0], .width = at[1], .price = at[2], .copies = CUT_UNLIMITED};
        if (s >= o->sold) {
            o->stocks[s].copies = at[3] / MILLION;
        }
        at += s < o->sold ? PLAN_SIZE_OPERANDS : PLAN_RACK_OPERANDS;
    }
    (void)plan_input_prices(o->stocks, o->sold + o->rack);
}

bool plan_operands_read(struct plan_operands *o, const int64_t *in, size_t count, size_t own,
                        bool with_rack, size_t most_sold, bool turn) {
    const size_t fixed = own + (with_rack ? PLAN_RACK_COUNTS : 0);
    *o = (struct plan_operands){0};
    if (count < fixed) {
        return false;
    }
    o->sold = (size_t)(in[own - 1] / MILLION);
    o->rack = with_rack ? (size_t)(in[own] / MILLION) : 0;
    o->sawn = with_rack ? (size_t)(in[own + 1] / MILLION) : 0;
    if (o->sold == 0 || o->sold > most_sold || o->rack > MOST_RACK_SIZES || o->sawn > o->rack) {
        return false;
    }
    const size_t first = fixed + PLAN_SIZE_OPERANDS * o->sold + PLAN_RACK_OPERANDS * o->rack;
    if (count < first) {
        return false;
    }
    o->item_count = (count - first) / 3;
    o->stocks = calloc(o->sold + o->rack, sizeof *o->stocks);
    o->items = calloc(o->item_count + 1, sizeof *o->items);
    if (o->stocks == NULL || o->items == NULL) {
        return false;
    }
    read_stocks(o, in + fixed);
    const int64_t *at = in + first;
    for (size_t i = 0; i < o->item_count; i++, at += 3) {
        o->items[i] = (struct cut_item){
            .length = at[0], .width = at[1], .demand = at[2] / MILLION, .turn = turn};
    }
    return true;
}

void plan_operands_free(struct plan_operands *o) {
    free(o->stocks);
    free(o->items);
    *o = (struct plan_operands){0};
}

struct offcut_rule plan_input_keep(enum length_unit unit) {
    return unit == LENGTH_INCH ? (struct offcut_rule){12000000, 1500000, 6000000}
                               : (struct offcut_rule){300000000, 40000000, 150000000};
}

fig plan_input_effort(const struct calc *c, int64_t effort) {
    return tape_constant(c->tape, "planner's effort", UNIT_COUNT, 0, effort,
                         "units of work (docs/cutting.md)");
}
