/* SPDX-License-Identifier: MIT */
#include "stock/sheets_by_plan.h"

#include "cut/ahead/plan_ahead.h"
#include "cut/check/plan_check.h"
#include "model/name.h"

/* What a plan is made from, beside what its planner is given. */
struct planner {
    const struct calc *calc;
    struct sheets_plan *plan;
    struct plan_input input;
    const struct sheet *sheet;
    int32_t material;
    struct cut_stock *stocks; /* three of SHEET_PLAN_SIZES */
    fig *prices;
    size_t count;
};

/* The next stock: its sizes and its price to the operands. */
static struct cut_stock *add_stock(struct planner *l, fig along, fig across, fig price) {
    const struct tape *const tape = l->calc->tape;
    struct cut_stock *const stock = &l->stocks[l->count];
    *stock = (struct cut_stock){.length = tape_amount(tape, along),
                                .width = tape_amount(tape, across),
                                .price = tape_scaled(tape, price, 6),
                                .copies = CUT_UNLIMITED};
    l->prices[l->count++] = price;
    plan_input_stock(&l->input, along, across, price);
    return stock;
}

/* A row of the rack as a stock. */
static void add_rack(struct planner *l, size_t i) {
    const struct calc *const c = l->calc;
    struct rack_stock *const rack = &l->plan->rack;
    const struct rack_item *const item = &rack->rows[i];
    rack_stock_add(rack, c, i);
    const fig along = calc_given(c, "length of a piece on the rack",
                                 item->sawn ? &item->length : &l->sheet->length);
    const fig across =
        calc_given(c, "width of a piece on the rack", item->sawn ? &item->width : &l->sheet->width);
    add_stock(l, along, across, rack->worth[i])->copies = tape_scaled(c->tape, rack->left[i], 0);
    plan_input_add(&l->input, rack->left[i]);
    rack->size[i] = calc_area(c, "area of a piece on the rack", along, across);
}

/* --- the plan --------------------------------------------------------------------------------- */

static bool add_stocks(struct planner *l) {
    const struct calc *const c = l->calc;
    struct sheets_plan *const p = l->plan;
    const bool half = l->sheet->half_price.set;
    p->sold = half ? 2 : 1;
    l->stocks = pool_take(c->pool, SHEET_PLAN_SIZES, sizeof *l->stocks);
    l->prices = pool_take(c->pool, SHEET_PLAN_SIZES, sizeof *l->prices);
    const bool priced = c->rates->shop.sheets_by.choice == PRICED_BY_PLAN;
    if (pool_failed(c->pool) ||
        (priced && !rack_stock_find(&p->rack, c, NAME_SHEET, l->material))) {
        return false;
    }
    const size_t rack = p->rack.count;
    p->job.stock_count = p->sold + rack;
    p->job.sawn_count = p->rack.sawn;
    const fig along = calc_given(c, "sheet length", &l->sheet->length);
    const fig across = calc_given(c, "sheet width", &l->sheet->width);
    const fig price = calc_given(c, "price", &l->sheet->price);
    plan_input_add(&l->input, tape_constant(c->tape, "sheet sizes", UNIT_COUNT, 0, half ? 2 : 1,
                                            "whole, and half where sold"));
    rack_stock_counts(&p->rack, &l->input, "of these offcuts, which are not trimmed");
    (void)add_stock(l, along, across, price);
    if (half) {
        const fig half_along = fig_ratio(c->tape, "half the length", c->units->length,
                                         (figs){{along}}, (figs){{c->units->two}});
        const fig half_price = calc_given(c, "price of a half sheet", &l->sheet->half_price);
        (void)add_stock(l, half_along, across, half_price);
    }
    for (size_t i = 0; i < rack; i++) {
        add_rack(l, i);
    }
    p->price_decimals = plan_input_prices(l->stocks, p->job.stock_count);
    p->job.stocks = l->stocks;
    return true;
}

/* The operands before the stocks, the stocks, the items. */
static bool set_job(struct planner *l, int64_t effort) {
    const struct calc *const c = l->calc;
    const bool grain = l->sheet->grain;
    const fig kerf = plan_input_length(c, "saw kerf", &c->rates->saw.kerf);
    const fig trim = plan_input_length(c, "edge trim", &l->sheet->edge_trim);
    plan_input_add(&l->input, plan_input_effort(c, effort));
    plan_input_add(&l->input, kerf);
    plan_input_add(&l->input, trim);
    plan_input_add(&l->input,
                   tape_constant(c->tape, grain ? "grain kept" : "no grain: parts may be turned",
                                 UNIT_COUNT, 0, grain ? 0 : 1, "the sheet's grain"));
    plan_input_least(&l->input, "offcut worth keeping, longer side from", l->plan->keep.length);
    plan_input_least(&l->input, "offcut worth keeping, shorter side from",
                     l->plan->keep.sheet_width);
    l->plan->job = (struct cut_job){.kerf = tape_amount(c->tape, kerf),
                                    .trim = tape_amount(c->tape, trim),
                                    .items = l->input.items,
                                    .item_count = l->input.item_count};
    l->plan->parts = l->input.parts;
    if (!add_stocks(l)) {
        return false;
    }
    plan_input_items(&l->input);
    return true;
}

/* An area that the chooser gave in hundredths of the square of a length. */
static fig area_of(const struct calc *c, const char *what, fig hundredths) {
    const fig unit =
        tape_constant(c->tape, "hundredths of an area in one", UNIT_COUNT, 0, 100, "by definition");
    return fig_ratio(c->tape, what, c->units->area, (figs){{hundredths}},
                     (figs){{unit, c->units->length2_per_area}});
}

static const char *output_label(const struct sheets_plan *p, size_t output) {
    static const char *const more[SHEET_OUT_MOST] = {
        [SHEET_OUT_CUTS] = "cuts of all sheets",
        [SHEET_OUT_TRIM] = "edges of sheets, hundredths of an area",
        [SHEET_OUT_KERF] = "kerf, hundredths of an area",
        [SHEET_OUT_KEEP] = "offcuts worth keeping, hundredths of an area",
        [SHEET_OUT_SOLD_PARTS] = "parts on sheets that are bought, hundredths of an area"};
    return output >= p->job.stock_count ? more[output - p->job.stock_count]
           : output >= p->sold          ? "pieces from the rack"
           : output == SHEET_WHOLE      ? "whole sheets to buy"
                                        : "half sheets to buy";
}

static void take_plan(struct planner *l) {
    const struct calc *const c = l->calc;
    struct sheets_plan *const p = l->plan;
    const size_t stocks = p->job.stock_count;
    const bool rack = stocks > p->sold;
    const size_t outputs = stocks + (rack ? SHEET_OUT_MOST : SHEET_OUT_COUNT);
    int64_t known[SHEET_PLAN_SIZES + SHEET_OUT_MOST] = {0};
    const char *labels[SHEET_PLAN_SIZES + SHEET_OUT_MOST];
    fig out[SHEET_PLAN_SIZES + SHEET_OUT_MOST];
    sheet_outputs(&p->job, p->plan, p->keep, p->sold, known);
    for (size_t s = 0; s < outputs; s++) {
        labels[s] = output_label(p, s);
    }
    fig_chosen_known(c->tape, labels, UNIT_COUNT, rack ? &sheets_rack_chooser : &sheets_chooser,
                     l->input.operands, l->input.operand_count, known, out, outputs);
    for (size_t s = 0; s < stocks; s++) {
        *(s < p->sold ? &p->counts[s] : &p->rack.taken[s - p->sold]) = out[s];
    }
    p->bound = tape_constant(c->tape, "least possible", UNIT_MONEY, p->price_decimals,
                             p->plan->bound, "proved by the planner: docs/cutting.md");
    p->cost = fig_total(c->tape, "sheets of the plan", UNIT_MONEY, out, l->prices, stocks);
    p->gap = fig_plus(c->tape, "more than the least possible", p->cost, fig_minus(p->bound));
    if (stocks == 1 && tape_amount(c->tape, l->prices[0]) > 0) {
        const fig sheets = fig_ratio(c->tape, "least possible, in sheets", UNIT_FACTOR,
                                     (figs){{p->bound}}, (figs){{l->prices[0]}});
        p->fewest = fig_up(c->tape, "fewest sheets possible", sheets, c->units->one);
    }
    const fig *const totals = out + stocks;
    p->trim = area_of(c, "edges of sheets", totals[SHEET_OUT_TRIM]);
    p->kerf = area_of(c, "kerf", totals[SHEET_OUT_KERF]);
    p->keep_worth = area_of(c, "offcuts worth keeping", totals[SHEET_OUT_KEEP]);
    p->cuts = calc_product(c, "cuts of the plan", UNIT_COUNT, totals[SHEET_OUT_CUTS], (fig){0});
    if (rack) {
        p->sold_parts = area_of(c, "parts on sheets that are bought", totals[SHEET_OUT_SOLD_PARTS]);
        rack_stock_total(&p->rack, c, "area from the rack", c->units->area);
    }
}

bool sheets_plan_make(struct sheets_plan *plan, const struct calc *c, int32_t material,
                      struct plan_request request) {
    const struct sheet *const sheet = &c->rates->sheets[material];
    *plan = (struct sheets_plan){.keep = plan_input_keep(c->units->lengths)};
    struct planner l = {.calc = c, .plan = plan, .sheet = sheet, .material = material};
    if (!plan_input_init(&l.input, c, MATERIAL_SHEET, material, !sheet->grain,
                         SHEET_FIXED_OPERANDS + PLAN_RACK_COUNTS +
                             PLAN_SIZE_OPERANDS * SHEET_STOCKS +
                             PLAN_RACK_OPERANDS * MOST_RACK_SIZES) ||
        !set_job(&l, request.effort)) {
        return false;
    }
    const enum cut_status status =
        plan_ahead_sheets(request.ahead, &plan->job, plan->keep, request.effort, &plan->plan);
    if (status == CUT_NO_MEMORY) {
        return false;
    }
    if (status != CUT_DONE) {
        plan->no_plan_reason = status == CUT_NO_ROOM ? "a part fits no sheet"
                               : status == CUT_SHORT ? "a part fits no sheet that is sold, and the "
                                                       "rack has too few"
                                                     : "a size is out of the planner's range";
        return true;
    }
    const struct plan_finding finding = sheet_plan_check(&plan->job, plan->plan);
    if (finding.fault != PLAN_GOOD) {
        plan->no_plan_reason = plan_fault_text(finding.fault);
        return finding.fault != PLAN_NO_MEMORY;
    }
    take_plan(&l);
    return true;
}
