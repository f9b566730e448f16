/* SPDX-License-Identifier: MIT */
/* The buying list: lumber and sheets here, what is bought by the piece in text_sundries.c. */
#include "report/text/print.h"
#include "report/words/buy_list.h"
#include "report/words/plan_words.h"
#include "report/words/show.h"

static void put_short(struct grid *grid, const struct estimate *e, fig short_of_plan) {
    const struct shown words = plan_short(e, short_of_plan);
    if (words.text[0] != '\0') {
        grid_heading(grid, "    %s", words.text);
    }
}

/* --- lumber --- */

static void put_way(struct grid *grid, const struct estimate *e, const char *how,
                    const struct purchase_by *w) {
    grid_heading(grid, "    by %s: %s, %s; waste added %s, yield %s", how,
                 show_unit(e, w->bought).text, show_money(e, w->cost).text,
                 show_unit(e, w->waste_added).text, show_unit(e, w->yield).text);
}

static void put_ways(struct grid *grid, const struct estimate *e, const struct purchase_by *factor,
                     const struct purchase_by *plan) {
    put_way(grid, e, "factor", factor);
    if (!fig_none(plan->bought)) {
        put_way(grid, e, "plan", plan);
    }
}

static void put_lumber(struct grid *grid, const struct estimate *e, const struct lumber_buy *b) {
    const struct purchase_by *const p = &b->priced;
    const struct lumber *const l = &e->rates->lumber[b->material];
    grid_put(grid, "%s %s", l->name.s, l->thickness_text.s == NULL ? "" : l->thickness_text.s);
    grid_put(grid, "%s", show(e, b->net).text);
    grid_put(grid, "%s", show(e, b->rough).text);
    grid_put(grid, "%s", show(e, b->with_waste).text);
    grid_put(grid, "%s", show_unit(e, p->bought).text);
    grid_put(grid, "%s", show_money(e, p->price).text);
    grid_put(grid, "%s", show_money(e, p->cost).text);
    grid_heading(grid, "    waste %s",
                 show_waste(&l->waste, (enum waste_as)l->waste_as.choice).text);
    if (!fig_none(b->spares)) {
        grid_heading(grid, "    %s of spare rails besides ('quote --all' has how many)",
                     show_unit(e, b->spares).text);
    }
    if (!fig_none(b->with_rack)) {
        grid_heading(grid, "    %s from the rack, for %s of the net; charged with its worth %s",
                     show_unit(e, p->from_rack).text, show(e, b->on_rack).text,
                     show_money(e, b->with_rack).text);
    }
    put_ways(grid, e, &b->by_factor, &b->by_plan);
    if (b->plan.no_plan_reason == NULL) {
        grid_heading(
            grid, "    %s",
            plan_asks(e, b->implied_waste, &l->waste, (enum waste_as)l->waste_as.choice).text);
        grid_heading(grid, "    %s", plan_prices(b->planned));
        put_short(grid, e, b->short_of_plan);
    }
    const int64_t more = tape_scaled(&e->tape, p->bought, 6) - tape_scaled(&e->tape, p->needed, 6);
    if (more > 0) {
        grid_heading(grid, "    %s ordered, %s needed: at %s the lot costs %s instead of %s",
                     show_unit(e, p->bought).text, show(e, p->needed).text,
                     show_money(e, p->price).text, show_money(e, p->cost).text,
                     show_money(e, p->cost_as_needed).text);
    } else if (l->minimum.set &&
               tape_scaled(&e->tape, b->with_waste, 6) < tape_scaled(&e->tape, p->needed, 6) &&
               value_is(&e->tape, p->needed, &l->minimum)) {
        grid_heading(grid, "    the yard sells no less than %s",
                     show_value(&l->minimum, e->job->unit).text);
    }
}

static void print_lumber(struct page *page, const struct estimate *e) {
    static const struct grid_column columns[] = {
        {"lumber", GRID_LEFT, true},   {"net", GRID_RIGHT, false},
        {"rough", GRID_RIGHT, false},  {"with waste", GRID_RIGHT, false},
        {"to buy", GRID_RIGHT, false}, {"price", GRID_RIGHT, false},
        {"cost", GRID_RIGHT, false}};
    struct grid grid;
    if (e->lumber.count == 0) {
        return;
    }
    grid_init(&grid, columns, 7, 0);
    for (size_t i = 0; i < e->lumber.count; i++) {
        put_lumber(&grid, e, &e->lumber.buys[i]);
    }
    say(page, "%s", "");
    grid_print(&grid, page);
    grid_clear(&grid);
}

/* --- sheets --- */

static void put_sheet_way(struct grid *grid, const struct estimate *e, const char *how,
                          const struct sheet_purchase_by *w) {
    grid_heading(grid, "    by %s: %s, %s; waste added %s, yield %s", how, show_sheets(e, w).text,
                 show_money(e, w->cost).text, show_unit(e, w->waste_added).text,
                 show_unit(e, w->yield).text);
}

static void put_sheet(struct grid *grid, const struct estimate *e, const struct sheet_buy *b) {
    const struct sheet *const s = &e->rates->sheets[b->material];
    grid_put(grid, "%s", s->name.s);
    grid_put(grid, "%s", show(e, b->net).text);
    grid_put(grid, "%s", show_unit(e, b->needed).text);
    grid_put(grid, "%s", show_sheets(e, &b->priced).text);
    grid_put(grid, "%s", show_money(e, b->priced.cost).text);
    grid_put(grid, "%s", show_money(e, b->charged).text);
    grid_heading(grid, "    %s, a sheet %s%s%s",
                 show_size(s->width.amount, s->length.amount, e->job->unit).text,
                 show_money(e, b->price).text, fig_none(b->half_price) ? "" : ", a half ",
                 fig_none(b->half_price) ? "" : show_money(e, b->half_price).text);
    grid_heading(grid, "    waste %s",
                 show_waste(&s->waste, (enum waste_as)s->waste_as.choice).text);
    put_sheet_way(grid, e, "factor", &b->by_factor);
    if (b->plan.no_plan_reason == NULL) {
        put_sheet_way(grid, e, "plan", &b->by_plan);
        grid_heading(
            grid, "    %s",
            plan_asks(e, b->implied_waste, &s->waste, (enum waste_as)s->waste_as.choice).text);
        grid_heading(grid, "    %s", plan_prices(b->planned));
        put_short(grid, e, b->short_of_plan);
    }
}

static void print_sheets(struct page *page, const struct estimate *e) {
    static const struct grid_column columns[] = {
        {"sheets", GRID_LEFT, true},       {"net", GRID_RIGHT, false},
        {"with waste", GRID_RIGHT, false}, {"to buy", GRID_RIGHT, false},
        {"cost", GRID_RIGHT, false},       {"charged", GRID_RIGHT, false}};
    struct grid grid;
    if (e->sheets.count == 0) {
        return;
    }
    grid_init(&grid, columns, 6, 0);
    for (size_t i = 0; i < e->sheets.count; i++) {
        put_sheet(&grid, e, &e->sheets.buys[i]);
    }
    say(page, "%s", "");
    grid_print(&grid, page);
    grid_clear(&grid);
}

/* --- banding --- */

static void put_banding(struct grid *grid, const struct estimate *e, const struct banding_buy *b) {
    const struct banding *const kind = &e->rates->bandings[b->banding];
    grid_put(grid, "%s", kind->name.s);
    grid_put(grid, "%s", show(e, b->net).text);
    grid_put(grid, "%s", show_unit(e, b->needed).text);
    if (fig_none(b->rolls)) {
        grid_put(grid, "by the length");
    } else {
        grid_put(grid, "%s roll%s", show(e, b->rolls).text,
                 tape_scaled(&e->tape, b->rolls, 0) == 1 ? "" : "s");
    }
    grid_put(grid, "%s", show_money(e, b->price).text);
    grid_put(grid, "%s", show_money(e, b->cost).text);
    grid_put(grid, "%s", show_money(e, b->charged).text);
}

static void print_banding(struct page *page, const struct estimate *e) {
    static const struct grid_column columns[] = {
        {"banding", GRID_LEFT, true},      {"edges", GRID_RIGHT, false},
        {"with waste", GRID_RIGHT, false}, {"to buy", GRID_RIGHT, false},
        {"price", GRID_RIGHT, false},      {"cost", GRID_RIGHT, false},
        {"charged", GRID_RIGHT, false}};
    struct grid grid;
    if (e->banding.count == 0) {
        return;
    }
    grid_init(&grid, columns, 7, 0);
    for (size_t i = 0; i < e->banding.count; i++) {
        put_banding(&grid, e, &e->banding.buys[i]);
    }
    say(page, "%s", "");
    grid_print(&grid, page);
    grid_clear(&grid);
}

/* --- the list --- */

static void put_line(struct grid *grid, const struct estimate *e, const struct buy_line *line) {
    grid_put(grid, "%s", line->part ? "" : "[ ]");
    grid_put(grid, "%s%s", line->part ? "  " : "", line->what);
    grid_put(grid, "%s", line->size);
    grid_put(grid, "%s", line->how_many);
    grid_put(grid, "%s", fig_none(line->price) ? "" : show_money(e, line->price).text);
    grid_put(grid, "%s", fig_none(line->cost) ? "" : show_money(e, line->cost).text);
    if (line->note[0] != '\0') {
        grid_heading(grid, "        %s", line->note);
    }
}

/* What is said at the counter: a group a supplier. */
static bool print_list(struct page *page, const struct estimate *e) {
    static const struct grid_column columns[] = {
        {NULL, GRID_LEFT, false},  {NULL, GRID_LEFT, true},   {NULL, GRID_LEFT, false},
        {NULL, GRID_RIGHT, false}, {NULL, GRID_RIGHT, false}, {NULL, GRID_RIGHT, false}};
    struct buy_list list;
    struct pool pool;
    pool_init(&pool);
    const bool held = buy_list_make(&list, &pool, e);
    for (size_t g = 0; held && g < list.group_count; g++) {
        const struct buy_group *const group = &list.groups[g];
        struct grid grid;
        grid_init(&grid, columns, 6, 0);
        for (size_t i = 0; i < group->count; i++) {
            put_line(&grid, e, &list.lines[group->first + i]);
        }
        say(page, "%s", "");
        say(page, "%s: %s", group->title, show_money(e, group->total).text);
        grid_print(&grid, page);
        grid_clear(&grid);
    }
    buy_list_clear(&list);
    pool_clear(&pool);
    return held;
}

/* --- all of it --- */

static void print_totals(struct page *page, const struct estimate *e) {
    const struct purchase *const p = &e->purchase;
    static const struct grid_column columns[] = {{"in all", GRID_LEFT, true},
                                                 {"spent", GRID_RIGHT, false},
                                                 {"charged to the job", GRID_RIGHT, false}};
    struct grid grid;
    grid_init(&grid, columns, 3, 0);
    for (int g = 0; g <= COST_BOUGHT_IN; g++) {
        if (!fig_none(p->spent[g])) {
            grid_put(&grid, "%s", cost_group_name((enum cost_group)g));
            grid_put(&grid, "%s", show_money(e, p->spent[g]).text);
            grid_put(&grid, "%s", show_money(e, e->costs.job.group[g]).text);
        }
    }
    grid_rule(&grid);
    grid_put(&grid, "%s", e->rates->shop.currency.s);
    grid_put(&grid, "%s", show_money(e, p->total).text);
    grid_put(&grid, "%s", show_money(e, p->charged).text);
    say(page, "%s", "");
    grid_print(&grid, page);
    grid_clear(&grid);
    if (tape_amount(&e->tape, e->costs.job.group[COST_PURCHASE_TAX]) != 0) {
        say(page, "  and tax on purchases, as a cost of the job: %s",
            show_money(e, e->costs.job.group[COST_PURCHASE_TAX]).text);
    }
}

void buy_print(struct page *page, const struct estimate *e, const struct together *together) {
    head_print(page, "To buy", e);
    page->failed = !print_list(page, e) || page->failed;
    say(page, "%s", "");
    say(page, "How much, and why");
    print_lumber(page, e);
    print_sheets(page, e);
    print_banding(page, e);
    if (e->finish.product_count > 0) {
        say(page, "%s", "");
        say(page, "finish");
        products_print(page, e);
    }
    sundries_print(page, e);
    if (together == NULL) {
        print_totals(page, e);
    } else {
        together_print(page, together);
    }
    cautions_print(page, e, CAUTION_BUY);
}
