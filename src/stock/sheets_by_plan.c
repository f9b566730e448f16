/* SPDX-License-Identifier: MIT */
#include "stock/sheets_by_plan.h"

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
                         struct keep_rule keep, int64_t *out) {
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
    struct cut_stock stocks[SHEET_STOCKS];
    const size_t stock_count = count < FIXED_OPERANDS ? 0 : (size_t)(in[6] / MILLION);
    if (stock_count == 0 || stock_count > SHEET_STOCKS || outputs < SHEET_STOCKS + OUT_COUNT ||
        count < FIXED_OPERANDS + 3 * stock_count) {
        return false;
    }
    const int64_t *at = in + FIXED_OPERANDS;
    for (size_t s = 0; s < stock_count; s++, at += 3) {
        stocks[s] = (struct cut_stock){.length = at[0],
                                       .width = at[1],
                                       .price = at[2] / (MILLION / 100),
                                       .copies = CUT_UNLIMITED};
    }
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
    const bool chosen = sheet_plan_make(&job, in[0] / MILLION, &plan) == CUT_DONE;
    if (chosen) {
        give_outputs(&job, plan, (struct keep_rule){.length = in[4], .sheet_width = in[5]}, out);
    }
    sheet_plan_free(plan);
    free(items);
    return chosen;
}

const struct chooser sheets_chooser = {.name = "sheets", .choose = choose};

struct planner {
    struct sheets_plan *p;
    struct pool *pool;
    struct tape *tape;
    const struct measures *m;
    const struct sheet *sheet;
    int32_t material;
    fig *operands;
    size_t operand_count;
    fig prices[SHEET_STOCKS];
};

static void add_operand(struct planner *l, fig f) {
    l->operands[l->operand_count++] = f;
}

static fig length_or_none(const struct planner *l, const char *what, const struct value *value) {
    return value->set ? measures_given(l->tape, l->m, what, value)
                      : tape_constant(l->tape, what, l->m->length, 0, 0, "none given");
}

static void add_stock(struct planner *l, struct cut_stock *stocks, size_t at, fig along, fig across,
                      fig price) {
    l->prices[at] = price;
    stocks[at] = (struct cut_stock){.length = tape_amount(l->tape, along),
                                    .width = tape_amount(l->tape, across),
                                    .price = tape_scaled(l->tape, price, 2),
                                    .copies = CUT_UNLIMITED};
    add_operand(l, along);
    add_operand(l, across);
    add_operand(l, price);
}

static bool add_stocks(struct planner *l) {
    struct cut_stock *const stocks = pool_take(l->pool, SHEET_STOCKS, sizeof *stocks);
    if (stocks == NULL) {
        return false;
    }
    const bool half = l->sheet->half_price.set;
    const fig along = measures_given(l->tape, l->m, "sheet length", &l->sheet->length);
    const fig across = measures_given(l->tape, l->m, "sheet width", &l->sheet->width);
    const fig price = measures_given(l->tape, l->m, "price", &l->sheet->price);
    add_operand(l, tape_constant(l->tape, "sheet sizes", UNIT_COUNT, 0, half ? 2 : 1,
                                 "whole, and half where sold"));
    add_stock(l, stocks, SHEET_WHOLE, along, across, price);
    if (half) {
        const fig half_along = fig_ratio(l->tape, "half the length", l->m->length, (figs){{along}},
                                         (figs){{l->m->two}});
        const fig half_price =
            measures_given(l->tape, l->m, "price of a half sheet", &l->sheet->half_price);
        add_stock(l, stocks, SHEET_HALF, half_along, across, half_price);
    }
    l->p->job.stocks = stocks;
    l->p->job.stock_count = half ? 2 : 1;
    return true;
}

static bool is_of(const struct part *part, int32_t material) {
    return part->material_kind == MATERIAL_SHEET && part->material == material;
}

static size_t count_items(const struct quantities *q, int32_t material) {
    size_t n = 0;
    for (size_t r = 0; r < q->count; r++) {
        for (size_t i = 0; i < q->leaves[r].door->part_count; i++) {
            n += is_of(&q->leaves[r].door->parts[i], material) ? 1 : 0;
        }
    }
    return n;
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
            const struct part_figures *const f = &leaf->parts[i];
            if (!is_of(&leaf->door->parts[i], l->material)) {
                continue;
            }
            items[n] = (struct cut_item){.length = tape_amount(l->tape, f->length),
                                         .width = tape_amount(l->tape, f->width),
                                         .demand = tape_amount(l->tape, f->pieces),
                                         .turn = !l->sheet->grain};
            l->p->parts[n] = (struct plan_part){
                .door = leaf->door, .part = &leaf->door->parts[i], .pieces = items[n].demand};
            n++;
            add_operand(l, f->length);
            add_operand(l, f->width);
            add_operand(l, f->pieces);
        }
    }
    l->p->job.items = items;
    l->p->job.item_count = n;
    return true;
}

/* An area that the chooser gave in hundredths of the square of a length. */
static fig area_of(const struct planner *l, const char *what, fig hundredths) {
    const fig unit =
        tape_constant(l->tape, "hundredths of an area in one", UNIT_COUNT, 0, 100, "by definition");
    return fig_ratio(l->tape, what, l->m->area, (figs){{hundredths}},
                     (figs){{unit, l->m->length2_per_area}});
}

static void take_plan(struct planner *l) {
    static const char *const more[OUT_COUNT] = {
        [OUT_CUTS] = "cuts of all sheets",
        [OUT_TRIM] = "edges of sheets, hundredths of an area",
        [OUT_KERF] = "kerf, hundredths of an area",
        [OUT_KEEP] = "offcuts worth keeping, hundredths of an area"};
    struct sheets_plan *const p = l->p;
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
    fig_chosen_known(l->tape, labels, UNIT_COUNT, &sheets_chooser, l->operands, l->operand_count,
                     known, out, stocks + OUT_COUNT);
    for (size_t s = 0; s < stocks; s++) {
        p->counts[s] = out[s];
    }
    p->bound = tape_constant(l->tape, "least possible", UNIT_MONEY, 2, p->plan->bound,
                             "proved by the planner: docs/cutting.md");
    const fig cost =
        fig_total(l->tape, "sheets of the plan", UNIT_MONEY, p->counts, l->prices, stocks);
    p->gap = fig_plus(l->tape, "more than the least possible", cost, fig_minus(p->bound));
    if (stocks == 1 && tape_amount(l->tape, l->prices[0]) > 0) {
        const fig sheets = fig_ratio(l->tape, "least possible, in sheets", UNIT_FACTOR,
                                     (figs){{p->bound}}, (figs){{l->prices[0]}});
        p->fewest = fig_up(l->tape, "fewest sheets possible", sheets, l->m->one);
    }
    const fig *const totals = out + stocks;
    p->trim = area_of(l, "edges of sheets", totals[OUT_TRIM]);
    p->kerf = area_of(l, "kerf", totals[OUT_KERF]);
    p->keep_worth = area_of(l, "offcuts worth keeping", totals[OUT_KEEP]);
    p->cuts = fig_ratio(l->tape, "cuts of the plan", UNIT_COUNT, (figs){{totals[OUT_CUTS]}},
                        (figs){{{0}}});
}

bool sheets_plan_make(struct sheets_plan *plan, struct pool *pool, struct tape *tape,
                      const struct measures *measures, const struct rates *rates, int32_t material,
                      const struct quantities *quantities, int64_t effort) {
    const struct sheet *const sheet = &rates->sheets[material];
    const size_t most = count_items(quantities, material);
    *plan = (struct sheets_plan){.keep = keep_rule_of(measures->lengths)};
    struct planner l = {
        .p = plan,
        .pool = pool,
        .tape = tape,
        .m = measures,
        .sheet = sheet,
        .material = material,
        .operands = pool_take(pool, FIXED_OPERANDS + 3 * (SHEET_STOCKS + most), sizeof(fig))};
    if (l.operands == NULL) {
        return false;
    }
    const fig kerf = length_or_none(&l, "saw kerf", &rates->saw.kerf);
    const fig trim = length_or_none(&l, "edge trim", &sheet->edge_trim);
    add_operand(&l, tape_constant(tape, "planner's effort", UNIT_COUNT, 0, effort,
                                  "units of work (docs/cutting.md)"));
    add_operand(&l, kerf);
    add_operand(&l, trim);
    add_operand(&l,
                tape_constant(tape, sheet->grain ? "grain kept" : "no grain: parts may be turned",
                              UNIT_COUNT, 0, sheet->grain ? 0 : 1, "the sheet's grain"));
    add_operand(&l, tape_constant(tape, "offcut worth keeping, longer side from", measures->length,
                                  6, plan->keep.length, "common practice, no source"));
    add_operand(&l, tape_constant(tape, "offcut worth keeping, shorter side from", measures->length,
                                  6, plan->keep.sheet_width, "common practice, no source"));
    plan->job = (struct cut_job){.kerf = tape_amount(tape, kerf), .trim = tape_amount(tape, trim)};
    if (!add_stocks(&l) || !add_items(&l, quantities, most)) {
        return false;
    }
    const enum cut_status status = sheet_plan_make(&plan->job, effort, &plan->plan);
    if (status == CUT_NO_MEMORY) {
        return false;
    }
    if (status != CUT_DONE) {
        plan->missing =
            status == CUT_NO_ROOM ? "a part fits no sheet" : "a size is out of the planner's range";
        return true;
    }
    const struct plan_finding finding = sheet_plan_check(&plan->job, plan->plan);
    if (finding.fault != PLAN_GOOD) {
        plan->missing = plan_fault_text(finding.fault);
        return finding.fault != PLAN_NO_MEMORY;
    }
    take_plan(&l);
    return true;
}
