/* SPDX-License-Identifier: MIT */
#include "stock/sheets_by_plan.h"

#include "cut/ahead/plan_ahead.h"
#include "cut/check/plan_check.h"

#include <stdlib.h>

#define MILLION 1000000
/* Operands of the chooser before the stocks: effort, kerf, trim, 1 where parts may be turned, least
 * longer and shorter side of an offcut worth keeping, stocks. */
#define FIXED_OPERANDS 7

/* Outputs of the chooser behind a count for each stock. */
enum { OUT_CUTS, OUT_TRIM, OUT_KERF, OUT_KEEP, OUT_COUNT };

/* out: sheets of each stock, then the outputs behind them; zeros before. */
static void give_outputs(const struct cut_job *job, const struct sheet_plan *plan,
                         struct offcut_rule keep, int64_t *out) {
    struct sheet_totals totals;
    sheet_totals_make(&totals, job, plan, keep);
    for (size_t i = 0; i < plan->sheet_count; i++) {
        out[plan->sheets[i].stock]++;
    }
    int64_t *const more = out + job->stock_count;
    more[OUT_CUTS] = totals.cuts;
    more[OUT_TRIM] = totals.trim;
    more[OUT_KERF] = totals.kerf;
    more[OUT_KEEP] = totals.keep;
}

/* in: as the operands, then length, width, price of each stock, then length, width, pieces of each
 * item, at 6 decimals. */
static bool choose(const int64_t *in, size_t count, int64_t *out, size_t outputs) {
    if (count < FIXED_OPERANDS || outputs < SHEET_STOCKS + OUT_COUNT) {
        return false;
    }
    struct cut_stock stocks[SHEET_STOCKS];
    const size_t stock_count = (size_t)(in[6] / MILLION);
    if (stock_count == 0 || stock_count > SHEET_STOCKS ||
        count < FIXED_OPERANDS + 3 * stock_count) {
        return false;
    }
    const int64_t *at = in + FIXED_OPERANDS;
    for (size_t s = 0; s < stock_count; s++, at += 3) {
        stocks[s] = (struct cut_stock){
            .length = at[0], .width = at[1], .price = at[2], .copies = CUT_UNLIMITED};
    }
    (void)plan_input_prices(stocks, stock_count);
    const size_t items_count = (count - FIXED_OPERANDS - 3 * stock_count) / 3;
    struct cut_item *const items = calloc(items_count + 1, sizeof *items);
    if (items == NULL) {
        return false;
    }
    for (size_t i = 0; i < items_count; i++, at += 3) {
        items[i] = (struct cut_item){
            .length = at[0], .width = at[1], .demand = at[2] / MILLION, .turn = in[3] > 0};
    }
    const struct cut_job job = {.kerf = in[1],
                                .trim = in[2],
                                .stock_count = stock_count,
                                .stocks = stocks,
                                .item_count = items_count,
                                .items = items};
    struct sheet_plan *plan = NULL;
    const struct offcut_rule keep = {.length = in[4], .sheet_width = in[5]};
    const bool chosen = sheet_plan_make(&job, keep, in[0] / MILLION, &plan) == CUT_DONE;
    if (chosen) {
        give_outputs(&job, plan, keep, out);
    }
    sheet_plan_free(plan);
    free(items);
    return chosen;
}

const struct chooser sheets_chooser = {.name = "sheets", .choose = choose};

/* What a plan is made from, beside what its planner is given. */
struct planner {
    const struct calc *calc;
    struct sheets_plan *plan;
    struct plan_input input;
    const struct sheet *sheet;
    fig prices[SHEET_STOCKS];
};

static void add_stock(struct planner *l, struct cut_stock *stock, fig along, fig across,
                      fig price) {
    const struct tape *const tape = l->calc->tape;
    *stock = (struct cut_stock){.length = tape_amount(tape, along),
                                .width = tape_amount(tape, across),
                                .price = tape_scaled(tape, price, 6),
                                .copies = CUT_UNLIMITED};
    plan_input_stock(&l->input, along, across, price);
}

static bool add_stocks(struct planner *l) {
    const struct calc *const c = l->calc;
    struct cut_stock *const stocks = pool_take(c->pool, SHEET_STOCKS, sizeof *stocks);
    if (stocks == NULL) {
        return false;
    }
    const bool half = l->sheet->half_price.set;
    const fig along = calc_given(c, "sheet length", &l->sheet->length);
    const fig across = calc_given(c, "sheet width", &l->sheet->width);
    l->prices[SHEET_WHOLE] = calc_given(c, "price", &l->sheet->price);
    plan_input_add(&l->input, tape_constant(c->tape, "sheet sizes", UNIT_COUNT, 0, half ? 2 : 1,
                                            "whole, and half where sold"));
    add_stock(l, &stocks[SHEET_WHOLE], along, across, l->prices[SHEET_WHOLE]);
    if (half) {
        const fig half_along = fig_ratio(c->tape, "half the length", c->units->length,
                                         (figs){{along}}, (figs){{c->units->two}});
        l->prices[SHEET_HALF] = calc_given(c, "price of a half sheet", &l->sheet->half_price);
        add_stock(l, &stocks[SHEET_HALF], half_along, across, l->prices[SHEET_HALF]);
    }
    l->plan->price_decimals = plan_input_prices(stocks, half ? 2 : 1);
    l->plan->job.stocks = stocks;
    l->plan->job.stock_count = half ? 2 : 1;
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

static void take_plan(struct planner *l) {
    static const char *const more[OUT_COUNT] = {
        [OUT_CUTS] = "cuts of all sheets",
        [OUT_TRIM] = "edges of sheets, hundredths of an area",
        [OUT_KERF] = "kerf, hundredths of an area",
        [OUT_KEEP] = "offcuts worth keeping, hundredths of an area"};
    const struct calc *const c = l->calc;
    struct sheets_plan *const p = l->plan;
    const size_t stocks = p->job.stock_count;
    int64_t known[SHEET_STOCKS + OUT_COUNT] = {0};
    const char *labels[SHEET_STOCKS + OUT_COUNT];
    fig out[SHEET_STOCKS + OUT_COUNT];
    give_outputs(&p->job, p->plan, p->keep, known);
    for (size_t s = 0; s < stocks + OUT_COUNT; s++) {
        labels[s] = s >= stocks        ? more[s - stocks]
                    : s == SHEET_WHOLE ? "whole sheets to buy"
                                       : "half sheets to buy";
    }
    fig_chosen_known(c->tape, labels, UNIT_COUNT, &sheets_chooser, l->input.operands,
                     l->input.operand_count, known, out, stocks + OUT_COUNT);
    for (size_t s = 0; s < stocks; s++) {
        p->counts[s] = out[s];
    }
    p->bound = tape_constant(c->tape, "least possible", UNIT_MONEY, p->price_decimals,
                             p->plan->bound, "proved by the planner: docs/cutting.md");
    const fig cost =
        fig_total(c->tape, "sheets of the plan", UNIT_MONEY, p->counts, l->prices, stocks);
    p->gap = fig_plus(c->tape, "more than the least possible", cost, fig_minus(p->bound));
    if (stocks == 1 && tape_amount(c->tape, l->prices[0]) > 0) {
        const fig sheets = fig_ratio(c->tape, "least possible, in sheets", UNIT_FACTOR,
                                     (figs){{p->bound}}, (figs){{l->prices[0]}});
        p->fewest = fig_up(c->tape, "fewest sheets possible", sheets, c->units->one);
    }
    const fig *const totals = out + stocks;
    p->trim = area_of(c, "edges of sheets", totals[OUT_TRIM]);
    p->kerf = area_of(c, "kerf", totals[OUT_KERF]);
    p->keep_worth = area_of(c, "offcuts worth keeping", totals[OUT_KEEP]);
    p->cuts = calc_product(c, "cuts of the plan", UNIT_COUNT, totals[OUT_CUTS], (fig){0});
}

bool sheets_plan_make(struct sheets_plan *plan, const struct calc *c, int32_t material,
                      struct plan_request request) {
    const struct sheet *const sheet = &c->rates->sheets[material];
    *plan = (struct sheets_plan){.keep = plan_input_keep(c->units->lengths)};
    struct planner l = {.calc = c, .plan = plan, .sheet = sheet};
    if (!plan_input_init(&l.input, c, MATERIAL_SHEET, material, !sheet->grain,
                         FIXED_OPERANDS + 3 * SHEET_STOCKS) ||
        !set_job(&l, request.effort)) {
        return false;
    }
    const enum cut_status status =
        plan_ahead_sheets(request.ahead, &plan->job, plan->keep, request.effort, &plan->plan);
    if (status == CUT_NO_MEMORY) {
        return false;
    }
    if (status != CUT_DONE) {
        plan->no_plan_reason =
            status == CUT_NO_ROOM ? "a part fits no sheet" : "a size is out of the planner's range";
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
