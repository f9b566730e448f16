/* SPDX-License-Identifier: MIT */
#include "stock/lumber_plan.h"

#include "cut/ahead/plan_ahead.h"
#include "model/name.h"
#include "stock/board_chooser.h"
#include "stock/surface_measure.h"

/* Stocks of a plan's job at most. */
#define STOCKS_MOST (LUMBER_PLAN_SIZES + MOST_RACK_SIZES)

/* What a plan is made from, beside what its planner is given. */
struct planner {
    const struct calc *calc;
    struct lumber_plan *plan;
    struct plan_input input;
    const struct lumber *lumber;
    enum unit unit;
    fig net;
    fig thickness, price;
    fig length3; /* cubes of the job's length in the unit */
    fig widths[STOCKS_MOST], lengths[STOCKS_MOST], prices[STOCKS_MOST];
    struct cut_stock *stocks; /* of the job */
    fig *each, *pieces;       /* of the parts as they are cut, for their total */
};

/* Board feet or m3 of boards that are `wide` and `along`, by their sizes. */
static fig volume(const struct planner *l, const char *what, fig wide, fig along) {
    return fig_ratio(l->calc->tape, what, l->unit, (figs){{l->thickness, wide, along}},
                     (figs){{l->length3}});
}

/* --- the job of the planner ------------------------------------------------------------------- */

/* Board feet or m3 of one board, and what it costs at the price of a small lot. */
static fig board_price(const struct planner *l, size_t s, fig wide, fig along) {
    const struct calc *const c = l->calc;
    if (l->unit == UNIT_M3) {
        l->plan->footage[s] = volume(l, "volume of a board", wide, along);
    } else {
        const fig operands[] = {c->units->inch, wide, along};
        fig surface;
        fig_chosen(c->tape, "surface measure of a board", UNIT_COUNT, &surface_chooser, operands, 3,
                   &surface, 1);
        l->plan->footage[s] = fig_ratio(c->tape, "board feet of a board", UNIT_BF,
                                        (figs){{surface, l->thickness}}, (figs){{c->units->inch}});
    }
    return calc_product(c, "price of a board", UNIT_MONEY, l->plan->footage[s], l->price);
}

/* Sizes and price of a stock to the operands. */
static struct cut_stock *add_stock(struct planner *l, size_t s) {
    const struct tape *const tape = l->calc->tape;
    l->stocks[s] = (struct cut_stock){.length = tape_amount(tape, l->lengths[s]),
                                      .width = tape_amount(tape, l->widths[s]),
                                      .price = tape_scaled(tape, l->prices[s], 6),
                                      .copies = CUT_UNLIMITED};
    plan_input_stock(&l->input, l->lengths[s], l->widths[s], l->prices[s]);
    return &l->stocks[s];
}

/* A row of the rack as a stock. */
static void add_rack(struct planner *l, size_t i) {
    const struct calc *const c = l->calc;
    struct rack_stock *const rack = &l->plan->rack;
    const size_t s = l->plan->sold + i;
    rack_stock_add(rack, c, i);
    l->widths[s] = calc_given(c, "width of a piece on the rack", &rack->rows[i].width);
    l->lengths[s] = calc_given(c, "length of a piece on the rack", &rack->rows[i].length);
    l->prices[s] = rack->worth[i];
    add_stock(l, s)->copies = tape_scaled(c->tape, rack->left[i], 0);
    plan_input_add(&l->input, rack->left[i]);
    rack->size[i] = volume(l, "a piece on the rack by its size", l->widths[s], l->lengths[s]);
}

static bool add_stocks(struct planner *l) {
    const struct calc *const c = l->calc;
    const struct values *const w = &l->lumber->board_widths;
    const struct values *const n = &l->lumber->board_lengths;
    struct lumber_plan *const p = l->plan;
    const size_t count = p->sold + p->rack.count;
    l->stocks = pool_take(c->pool, count, sizeof *l->stocks);
    p->footage = pool_take(c->pool, p->sold, sizeof *p->footage);
    p->counts = pool_take(c->pool, p->sold, sizeof *p->counts);
    if (pool_failed(c->pool)) {
        return false;
    }
    for (size_t s = 0; s < p->sold; s++) {
        l->widths[s] = calc_given(c, "board width", &w->v[s % w->count]);
        l->lengths[s] = calc_given(c, "board length", &n->v[s / w->count]);
        l->prices[s] = board_price(l, s, l->widths[s], l->lengths[s]);
        (void)add_stock(l, s);
    }
    for (size_t i = 0; i < p->rack.count; i++) {
        add_rack(l, i);
    }
    p->price_decimals = plan_input_prices(l->stocks, count);
    p->job.stocks = l->stocks;
    p->job.stock_count = count;
    p->job.sawn_count = p->rack.sawn;
    return true;
}

static bool add_items(struct planner *l) {
    const struct plan_input *const in = &l->input;
    l->each = pool_take(l->calc->pool, in->item_count, sizeof *l->each);
    l->pieces = pool_take(l->calc->pool, in->item_count, sizeof *l->pieces);
    if (pool_failed(l->calc->pool)) {
        return false;
    }
    plan_input_items(&l->input);
    for (size_t i = 0; i < in->item_count; i++) {
        l->each[i] = fig_ratio(l->calc->tape, "a part as it is cut", l->unit,
                               (figs){{in->cuts[i].length, in->cuts[i].width, l->thickness}},
                               (figs){{l->length3}});
        l->pieces[i] = in->cuts[i].pieces;
    }
    l->plan->parts = in->parts;
    l->plan->job.items = in->items;
    l->plan->job.item_count = in->item_count;
    return true;
}

/* Thickness, price and the operands before the stocks. */
static void set_job(struct planner *l, int64_t effort) {
    const struct calc *const c = l->calc;
    const struct saw *const saw = &c->rates->saw;
    const struct value *const defects = &l->lumber->defects;
    l->length3 = l->unit == UNIT_BF ? c->units->length3_per_bf : c->units->length3_per_m3;
    l->thickness = calc_given(c, "thickness, nominal", &l->lumber->thickness);
    if (l->unit == UNIT_BF) {
        l->thickness = fig_larger(c->tape, "thickness counted", l->thickness, c->units->inch);
    }
    l->price = calc_given(c, "price", &l->lumber->price);
    plan_input_add(&l->input, plan_input_effort(c, effort));
    const fig kerf = plan_input_length(c, "saw kerf", &saw->kerf);
    const fig trim = plan_input_length(c, "end trim", &l->lumber->end_trim);
    const fig edge = plan_input_length(c, "edge straightened", &saw->straighten);
    const fig share = defects->set
                          ? calc_given(c, "defects", defects)
                          : tape_constant(c->tape, "no defects", UNIT_PERCENT, 0, 0, "none given");
    plan_input_add(&l->input, kerf);
    plan_input_add(&l->input, trim);
    plan_input_add(&l->input, edge);
    plan_input_add(&l->input, share);
    plan_input_least(&l->input, "offcut worth keeping, length from", l->plan->keep.length);
    plan_input_least(&l->input, "offcut worth keeping, width from", l->plan->keep.board_width);
    plan_input_add(&l->input, tape_constant(c->tape, "boards are crosscut first", UNIT_COUNT, 0,
                                            saw->crosscut_first ? 1 : 0,
                                            "first cut of [saw]: 0 rip, 1 crosscut"));
    plan_input_add(&l->input, tape_constant(c->tape, "board sizes", UNIT_COUNT, 0,
                                            (int64_t)l->plan->sold, "widths x lengths stocked"));
    rack_stock_counts(&l->plan->rack, &l->input, "of these offcuts, of which all is of use");
    l->plan->job = (struct board_job){.kerf = tape_amount(c->tape, kerf),
                                      .end_trim = tape_amount(c->tape, trim),
                                      .edge = tape_amount(c->tape, edge),
                                      .defects = tape_scaled(c->tape, share, 6) / 100,
                                      .crosscut_first = saw->crosscut_first};
}

/* --- what the plan comes to ------------------------------------------------------------------- */

/* What a yard counts for all boards of the plan. */
static fig bought(const struct planner *l) {
    const struct calc *const c = l->calc;
    const struct lumber_plan *const p = l->plan;
    const size_t stocks = p->sold;
    if (l->unit == UNIT_M3) {
        return fig_total(c->tape, "boards bought", UNIT_M3, p->counts, p->footage, stocks);
    }
    fig operands[1 + 3 * LUMBER_PLAN_SIZES] = {c->units->inch};
    for (size_t s = 0; s < stocks; s++) {
        operands[1 + 3 * s] = p->counts[s];
        operands[2 + 3 * s] = l->widths[s];
        operands[3 + 3 * s] = l->lengths[s];
    }
    fig surface;
    fig_chosen(c->tape, "surface measure, all boards", UNIT_COUNT, &tally_chooser, operands,
               1 + 3 * stocks, &surface, 1);
    return surface_measure_board_feet(c, surface, l->thickness);
}

/* An area that the chooser gave in hundredths, as board feet or m3. */
static fig footage_of(const struct planner *l, const char *what, fig hundredths) {
    const fig unit = tape_constant(l->calc->tape, "hundredths of an area in one", UNIT_COUNT, 0,
                                   100, "by definition");
    return fig_ratio(l->calc->tape, what, l->unit, (figs){{hundredths, l->thickness}},
                     (figs){{unit, l->length3}});
}

/* The boards by what becomes of them. Offcuts are what remains. */
static void split(const struct planner *l, const fig *more) {
    struct tape *const tape = l->calc->tape;
    struct lumber_plan *const p = l->plan;
    fig sizes[LUMBER_PLAN_SIZES];
    for (size_t s = 0; s < p->sold; s++) {
        sizes[s] = volume(l, "a board by its size", l->widths[s], l->lengths[s]);
    }
    const fig of_sold =
        fig_total(tape, "boards by their sizes", l->unit, p->counts, sizes, p->sold);
    p->measured = p->rack.count == 0 ? of_sold
                                     : fig_plus(tape, "boards by their sizes, with the rack",
                                                of_sold, p->rack.amount);
    p->rough =
        fig_total(tape, "parts as they are cut", l->unit, l->pieces, l->each, l->input.item_count);
    p->allowances = fig_plus(tape, "end and edge allowance", p->rough, fig_minus(l->net));
    p->trim = footage_of(l, "ends and edges of boards", more[BOARD_OUT_TRIM]);
    p->kerf = footage_of(l, "kerf", more[BOARD_OUT_KERF]);
    p->defects = footage_of(l, "kept for defects", more[BOARD_OUT_DEFECTS]);
    p->keep_worth = footage_of(l, "offcuts worth keeping", more[BOARD_OUT_KEEP]);
    const fig terms[] = {p->measured, fig_minus(p->rough), fig_minus(p->trim), fig_minus(p->kerf),
                         fig_minus(p->defects)};
    p->offcuts = fig_sum(tape, "offcuts", l->unit, terms, 5);
    if (l->unit == UNIT_BF) {
        p->tally =
            fig_plus(tape, "tallied to whole feet of surface", p->bought, fig_minus(of_sold));
    }
    p->cuts = calc_product(l->calc, "cuts of the plan", UNIT_COUNT, more[BOARD_OUT_CUTS], (fig){0});
}

static bool take_plan(const struct planner *l) {
    static const char *const more[BOARD_OUT_MOST] = {
        [BOARD_OUT_CUTS] = "cuts of all boards",
        [BOARD_OUT_TRIM] = "ends and edges, hundredths of an area",
        [BOARD_OUT_KERF] = "kerf, hundredths of an area",
        [BOARD_OUT_DEFECTS] = "kept for defects, hundredths of an area",
        [BOARD_OUT_KEEP] = "offcuts worth keeping, hundredths of an area",
        [BOARD_OUT_SOLD_PARTS] = "parts on boards that are bought, hundredths of an area"};
    struct tape *const tape = l->calc->tape;
    struct lumber_plan *const p = l->plan;
    const size_t stocks = p->job.stock_count;
    const bool rack = stocks > p->sold;
    const size_t outputs = stocks + (rack ? BOARD_OUT_MOST : BOARD_OUT_COUNT);
    int64_t known[STOCKS_MOST + BOARD_OUT_MOST] = {0};
    const char *labels[STOCKS_MOST + BOARD_OUT_MOST];
    fig out[STOCKS_MOST + BOARD_OUT_MOST];
    if (!board_outputs(&p->job, p->plan, p->keep, p->sold, known)) {
        return false;
    }
    for (size_t s = 0; s < outputs; s++) {
        labels[s] = s < p->sold  ? "boards to buy"
                    : s < stocks ? "pieces from the rack"
                                 : more[s - stocks];
    }
    fig_chosen_known(tape, labels, UNIT_COUNT, rack ? &boards_rack_chooser : &boards_chooser,
                     l->input.operands, l->input.operand_count, known, out, outputs);
    for (size_t s = 0; s < stocks; s++) {
        *(s < p->sold ? &p->counts[s] : &p->rack.taken[s - p->sold]) = out[s];
    }
    if (rack) {
        rack_stock_total(&p->rack, l->calc,
                         l->unit == UNIT_BF ? "board feet from the rack" : "volume from the rack",
                         l->unit);
        p->sold_parts =
            footage_of(l, "parts on boards that are bought", out[stocks + BOARD_OUT_SOLD_PARTS]);
    }
    p->boards = fig_sum(tape, "boards in all", UNIT_COUNT, out, stocks);
    p->bought = bought(l);
    p->at_price =
        fig_total(tape, "boards at the price of a small lot", UNIT_MONEY, out, l->prices, stocks);
    p->bound =
        tape_constant(tape, "least possible, boards at that price", UNIT_MONEY, p->price_decimals,
                      p->plan->bound, "proved by the planner: docs/cutting.md");
    p->gap = fig_plus(tape, "more than the least possible", p->at_price, fig_minus(p->bound));
    split(l, out + stocks);
    return true;
}

bool lumber_plan_make(struct lumber_plan *plan, const struct calc *c, int32_t material, fig net,
                      struct plan_request request) {
    const struct lumber *const lumber = &c->rates->lumber[material];
    const size_t stocks = lumber->board_widths.count * lumber->board_lengths.count;
    *plan = (struct lumber_plan){.keep = plan_input_keep(c->units->lengths), .sold = stocks};
    if (stocks == 0 || stocks > LUMBER_PLAN_SIZES) {
        plan->no_plan_reason = stocks == 0 ? "no board widths and lengths are stocked"
                                           : "more board sizes than the planner takes";
        return true;
    }
    struct planner l = {
        .calc = c, .plan = plan, .lumber = lumber, .unit = lumber_unit(lumber), .net = net};
    if (!rack_stock_find(&plan->rack, c, NAME_LUMBER, material) ||
        !plan_input_init(&l.input, c, MATERIAL_LUMBER, material, false,
                         BOARD_FIXED_OPERANDS + PLAN_RACK_COUNTS + PLAN_SIZE_OPERANDS * stocks +
                             PLAN_RACK_OPERANDS * plan->rack.count)) {
        return false;
    }
    set_job(&l, request.effort);
    if (!add_stocks(&l) || !add_items(&l)) {
        return false;
    }
    const enum cut_status status =
        plan_ahead_boards(request.ahead, &plan->job, request.effort, &plan->plan);
    if (status == CUT_NO_MEMORY) {
        return false;
    }
    if (status != CUT_DONE) {
        plan->no_plan_reason = status == CUT_NO_ROOM ? "a part fits no board stocked"
                               : status == CUT_SHORT
                                   ? "a part fits no board stocked, and the rack has too few"
                                   : "a size or the number of parts is out of the planner's range";
        return true;
    }
    plan->no_plan_reason = board_plan_check(&plan->job, plan->plan);
    return plan->no_plan_reason != NULL || take_plan(&l);
}
