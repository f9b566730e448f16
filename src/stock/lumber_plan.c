/* SPDX-License-Identifier: MIT */
#include "stock/lumber_plan.h"

#include "stock/board_chooser.h"

/* --- the job of the planner
 * -------------------------------------------------------------------------------------------------------
 */

struct planner {
    struct lumber_plan *p;
    struct pool *pool;
    struct tape *tape;
    const struct measures *m;
    const struct rates *rates;
    const struct lumber *lumber;
    int32_t material;
    enum unit unit;
    fig thickness, price;
    fig length3; /* cubes of the job's length in the unit */
    fig net;
    fig *operands;
    size_t operand_count;
    fig *each, *pieces; /* of the parts as they are cut, for their total */
    size_t cut_count;
};

static fig given_length(const struct planner *l, const char *what, const struct value *value) {
    return value->set ? measures_given(l->tape, l->m, what, value)
                      : tape_constant(l->tape, what, l->m->length, 0, 0, "none given");
}

static void add_operand(struct planner *l, fig f) {
    l->operands[l->operand_count++] = f;
}

/* Board feet or m3 of one board, and what it costs at the price of a small lot. */
static fig board_price(const struct planner *l, size_t s, fig wide, fig along) {
    if (l->unit == UNIT_M3) {
        l->p->footage[s] =
            fig_ratio(l->tape, "volume of a board", UNIT_M3, (figs){{l->thickness, wide, along}},
                      (figs){{l->m->length3_per_m3}});
    } else {
        const fig operands[] = {l->m->inch, wide, along};
        fig surface;
        fig_chosen(l->tape, "surface measure of a board", UNIT_COUNT, &surface_chooser, operands, 3,
                   &surface, 1);
        l->p->footage[s] = fig_ratio(l->tape, "board feet of a board", UNIT_BF,
                                     (figs){{surface, l->thickness}}, (figs){{l->m->inch}});
    }
    return fig_ratio(l->tape, "price of a board", UNIT_MONEY, (figs){{l->p->footage[s], l->price}},
                     (figs){{{0}}});
}

static bool add_stocks(struct planner *l, fig *widths, fig *lengths, fig *prices) {
    const struct values *const w = &l->lumber->board_widths;
    const struct values *const n = &l->lumber->board_lengths;
    const size_t count = w->count * n->count;
    struct cut_stock *const stocks = pool_take(l->pool, count, sizeof *stocks);
    l->p->footage = pool_take(l->pool, count, sizeof *l->p->footage);
    l->p->counts = pool_take(l->pool, count, sizeof *l->p->counts);
    if (pool_failed(l->pool)) {
        return false;
    }
    for (size_t s = 0; s < count; s++) {
        widths[s] = measures_given(l->tape, l->m, "board width", &w->v[s % w->count]);
        lengths[s] = measures_given(l->tape, l->m, "board length", &n->v[s / w->count]);
        prices[s] = board_price(l, s, widths[s], lengths[s]);
        stocks[s] = (struct cut_stock){.length = tape_amount(l->tape, lengths[s]),
                                       .width = tape_amount(l->tape, widths[s]),
                                       .price = tape_amount(l->tape, prices[s]),
                                       .copies = CUT_UNLIMITED};
        add_operand(l, lengths[s]);
        add_operand(l, widths[s]);
        add_operand(l, prices[s]);
    }
    l->p->job.stocks = stocks;
    l->p->job.stock_count = count;
    return true;
}

static bool add_items(struct planner *l, const struct quantities *q, size_t most) {
    struct cut_item *const items = pool_take(l->pool, most, sizeof *items);
    l->p->parts = pool_take(l->pool, most, sizeof *l->p->parts);
    if (pool_failed(l->pool)) {
        return false;
    }
    size_t n = 0;
    for (size_t r = 0; r < q->count; r++) {
        const struct leaf_figures *const leaf = &q->leaves[r];
        for (size_t i = 0; i < leaf->door->part_count; i++) {
            const struct part *const part = &leaf->door->parts[i];
            if (part->material_kind != MATERIAL_LUMBER || part->material != l->material) {
                continue;
            }
            const struct part_figures *const f = &leaf->parts[i];
            items[n] = (struct cut_item){.length = tape_amount(l->tape, f->rough_length),
                                         .width = tape_amount(l->tape, f->stave_width),
                                         .demand = tape_amount(l->tape, f->staves)};
            l->p->parts[n++] = (struct plan_part){
                .door = leaf->door, .part = part, .pieces = tape_amount(l->tape, f->staves)};
            add_operand(l, f->rough_length);
            add_operand(l, f->stave_width);
            add_operand(l, f->staves);
            l->each[l->cut_count] = fig_ratio(
                l->tape, "a part as it is cut", l->unit,
                (figs){{f->rough_length, f->stave_width, l->thickness}}, (figs){{l->length3}});
            l->pieces[l->cut_count++] = f->staves;
        }
    }
    l->p->job.items = items;
    l->p->job.item_count = n;
    return true;
}

static size_t count_items(const struct quantities *q, int32_t material) {
    size_t n = 0;
    for (size_t r = 0; r < q->count; r++) {
        for (size_t i = 0; i < q->leaves[r].door->part_count; i++) {
            const struct part *const part = &q->leaves[r].door->parts[i];
            n += part->material_kind == MATERIAL_LUMBER && part->material == material ? 1 : 0;
        }
    }
    return n;
}

/* --- what the plan comes to
 * ----------------------------------------------------------------------------------------------------------
 */

static void tally(const struct planner *l, const fig *widths, const fig *lengths) {
    struct lumber_plan *const p = l->p;
    const size_t stocks = p->job.stock_count;
    if (l->unit == UNIT_M3) {
        p->bought = fig_total(l->tape, "boards bought", UNIT_M3, p->counts, p->footage, stocks);
        return;
    }
    fig operands[1 + 3 * LUMBER_PLAN_SIZES] = {l->m->inch};
    for (size_t s = 0; s < stocks; s++) {
        operands[1 + 3 * s] = p->counts[s];
        operands[2 + 3 * s] = widths[s];
        operands[3 + 3 * s] = lengths[s];
    }
    fig surface;
    fig_chosen(l->tape, "surface measure, all boards", UNIT_COUNT, &tally_chooser, operands,
               1 + 3 * stocks, &surface, 1);
    p->bought = fig_ratio_to(l->tape, "board feet, tallied", UNIT_BF, 0,
                             (figs){{surface, l->thickness}}, (figs){{l->m->inch}});
}

/* An area that the chooser gave in hundredths, as board feet or m3. */
static fig footage_of(const struct planner *l, const char *what, fig hundredths) {
    const fig unit =
        tape_constant(l->tape, "hundredths of an area in one", UNIT_COUNT, 0, 100, "by definition");
    return fig_ratio(l->tape, what, l->unit, (figs){{hundredths, l->thickness}},
                     (figs){{unit, l->length3}});
}

/* The boards by what becomes of them. Offcuts are what remains. */
static void split(const struct planner *l, const fig *widths, const fig *lengths, const fig *more) {
    struct lumber_plan *const p = l->p;
    fig sizes[LUMBER_PLAN_SIZES];
    for (size_t s = 0; s < p->job.stock_count; s++) {
        sizes[s] = fig_ratio(l->tape, "a board by its size", l->unit,
                             (figs){{l->thickness, widths[s], lengths[s]}}, (figs){{l->length3}});
    }
    p->measured =
        fig_total(l->tape, "boards by their sizes", l->unit, p->counts, sizes, p->job.stock_count);
    p->rough =
        fig_total(l->tape, "parts as they are cut", l->unit, l->pieces, l->each, l->cut_count);
    p->allowances = fig_plus(l->tape, "end and edge allowance", p->rough, fig_minus(l->net));
    p->trim = footage_of(l, "ends and edges of boards", more[BOARD_OUT_TRIM]);
    p->kerf = footage_of(l, "kerf", more[BOARD_OUT_KERF]);
    p->defects = footage_of(l, "kept for defects", more[BOARD_OUT_DEFECTS]);
    p->keep_worth = footage_of(l, "offcuts worth keeping", more[BOARD_OUT_KEEP]);
    const fig terms[] = {p->measured, fig_minus(p->rough), fig_minus(p->trim), fig_minus(p->kerf),
                         fig_minus(p->defects)};
    p->offcuts = fig_sum(l->tape, "offcuts", l->unit, terms, 5);
    if (l->unit == UNIT_BF) {
        p->tally = fig_plus(l->tape, "tallied to whole feet of surface", p->bought,
                            fig_minus(p->measured));
    }
    p->cuts = fig_ratio(l->tape, "cuts of the plan", UNIT_COUNT, (figs){{more[BOARD_OUT_CUTS]}},
                        (figs){{{0}}});
}

static bool take_plan(const struct planner *l, const fig *widths, const fig *lengths,
                      const fig *prices) {
    static const char *const more[BOARD_OUT_COUNT] = {
        [BOARD_OUT_CUTS] = "cuts of all boards",
        [BOARD_OUT_TRIM] = "ends and edges, hundredths of an area",
        [BOARD_OUT_KERF] = "kerf, hundredths of an area",
        [BOARD_OUT_DEFECTS] = "kept for defects, hundredths of an area",
        [BOARD_OUT_KEEP] = "offcuts worth keeping, hundredths of an area"};
    struct lumber_plan *const p = l->p;
    const size_t stocks = p->job.stock_count;
    int64_t known[LUMBER_PLAN_SIZES + BOARD_OUT_COUNT] = {0};
    const char *labels[LUMBER_PLAN_SIZES + BOARD_OUT_COUNT];
    fig out[LUMBER_PLAN_SIZES + BOARD_OUT_COUNT];
    if (!board_outputs(&p->job, p->plan, p->keep, known)) {
        return false;
    }
    for (size_t s = 0; s < stocks + BOARD_OUT_COUNT; s++) {
        labels[s] = s < stocks ? "boards to buy" : more[s - stocks];
    }
    fig_chosen_known(l->tape, labels, UNIT_COUNT, &boards_chooser, l->operands, l->operand_count,
                     known, out, stocks + BOARD_OUT_COUNT);
    for (size_t s = 0; s < stocks; s++) {
        p->counts[s] = out[s];
    }
    p->boards = fig_sum(l->tape, "boards in all", UNIT_COUNT, p->counts, stocks);
    tally(l, widths, lengths);
    p->at_price = fig_total(l->tape, "boards at the price of a small lot", UNIT_MONEY, p->counts,
                            prices, stocks);
    p->bound = tape_constant(l->tape, "least possible, boards at that price", UNIT_MONEY, 2,
                             p->plan->bound, "proved by the planner: docs/cutting.md");
    p->gap = fig_plus(l->tape, "more than the least possible", p->at_price, fig_minus(p->bound));
    split(l, widths, lengths, out + stocks);
    return true;
}

static const char *why_not(enum cut_status status) {
    return status == CUT_NO_ROOM ? "a part fits no board stocked"
                                 : "a size or the number of parts is out of the planner's range";
}

bool lumber_plan_make(struct lumber_plan *plan, struct pool *pool, struct tape *tape,
                      const struct measures *measures, const struct rates *rates, int32_t material,
                      const struct quantities *quantities, fig net, int64_t effort) {
    const struct lumber *const lumber = &rates->lumber[material];
    const size_t stocks = lumber->board_widths.count * lumber->board_lengths.count;
    const size_t items = count_items(quantities, material);
    fig widths[LUMBER_PLAN_SIZES];
    fig lengths[LUMBER_PLAN_SIZES];
    fig prices[LUMBER_PLAN_SIZES];
    *plan = (struct lumber_plan){.keep = keep_rule_of(measures->lengths)};
    if (stocks == 0 || stocks > LUMBER_PLAN_SIZES) {
        plan->missing = stocks == 0 ? "no board widths and lengths are stocked"
                                    : "more board sizes than the planner takes";
        return true;
    }
    struct planner l = {
        .p = plan,
        .pool = pool,
        .tape = tape,
        .m = measures,
        .rates = rates,
        .lumber = lumber,
        .material = material,
        .unit = lumber_unit(lumber),
        .net = net,
        .operands = pool_take(pool, BOARD_FIXED_OPERANDS + 3 * (stocks + items), sizeof(fig)),
        .each = pool_take(pool, items, sizeof(fig)),
        .pieces = pool_take(pool, items, sizeof(fig))};
    if (pool_failed(pool)) {
        return false;
    }
    l.length3 = l.unit == UNIT_BF ? measures->length3_per_bf : measures->length3_per_m3;
    l.thickness = measures_given(tape, measures, "thickness, nominal", &lumber->thickness);
    l.thickness = l.unit == UNIT_BF
                      ? fig_larger(tape, "thickness counted", l.thickness, measures->inch)
                      : l.thickness;
    l.price = measures_given(tape, measures, "price", &lumber->price);
    add_operand(&l, tape_constant(tape, "planner's effort", UNIT_COUNT, 0, effort,
                                  "units of work (docs/cutting.md)"));
    const fig trims[] = {given_length(&l, "saw kerf", &rates->saw.kerf),
                         given_length(&l, "end trim", &lumber->end_trim),
                         given_length(&l, "edge straightened", &rates->saw.straighten)};
    for (size_t i = 0; i < 3; i++) {
        add_operand(&l, trims[i]);
    }
    const fig share = lumber->defects.set
                          ? measures_given(tape, measures, "defects", &lumber->defects)
                          : tape_constant(tape, "no defects", UNIT_PERCENT, 0, 0, "none given");
    add_operand(&l, share);
    add_operand(&l, tape_constant(tape, "offcut worth keeping, length from", measures->length, 6,
                                  plan->keep.length, "common practice, no source"));
    add_operand(&l, tape_constant(tape, "offcut worth keeping, width from", measures->length, 6,
                                  plan->keep.board_width, "common practice, no source"));
    add_operand(&l, tape_constant(tape, "board sizes", UNIT_COUNT, 0, (int64_t)stocks,
                                  "widths x lengths stocked"));
    plan->job = (struct board_job){.kerf = tape_amount(tape, trims[0]),
                                   .end_trim = tape_amount(tape, trims[1]),
                                   .edge = tape_amount(tape, trims[2]),
                                   .defects = tape_scaled(tape, share, 6) / 100};
    if (!add_stocks(&l, widths, lengths, prices) || !add_items(&l, quantities, items)) {
        return false;
    }
    const enum cut_status status = board_plan_make(&plan->job, effort, &plan->plan);
    if (status == CUT_NO_MEMORY) {
        return false;
    }
    if (status != CUT_DONE) {
        plan->missing = why_not(status);
        return true;
    }
    plan->missing = board_plan_check(&plan->job, plan->plan);
    return plan->missing != NULL || take_plan(&l, widths, lengths, prices);
}
