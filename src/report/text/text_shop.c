/* SPDX-License-Identifier: MIT */
/* What stands below the quote for the shop alone. */
#include "model/charge.h"
#include "report/text/print.h"
#include "report/words/build_up_words.h"
#include "report/words/moves.h"
#include "report/words/plan_words.h"
#include "report/words/planned.h"
#include "report/words/shipped.h"
#include "report/words/show.h"

static const struct grid_column money_columns[] = {
    {NULL, GRID_LEFT, true}, {NULL, GRID_RIGHT, false}, {NULL, GRID_RIGHT, false}};

/* The lines of a table that come to something. */
static void put_lines(struct grid *grid, const struct estimate *e, const struct field_table *table,
                      const void *thing) {
    const bool build_up = table == &fields_build_up;
    for (size_t i = 0; i < table->count; i++) {
        const struct field *const field = &table->fields[i];
        const fig money = field_figure(field, thing);
        if ((field->views & FIELD_LINE) == 0 || tape_amount(&e->tape, money) == 0) {
            continue;
        }
        if ((field->views & FIELD_TOTAL) != 0) {
            grid_rule(grid);
        }
        const fig rate = build_up ? build_up_rate(e, field) : (fig){0};
        grid_put(grid, "%s", build_up ? build_up_label(e, field) : field_label(field));
        grid_put(grid, "%s", fig_none(rate) ? "" : show_unit(e, rate).text);
        grid_put(grid, "%s", show_money(e, money).text);
    }
}

/* The charges that an operation is done for: what they bring, and what they cost. */
static void put_charges(struct grid *grid, const struct estimate *e) {
    for (size_t i = 0; i < charge_count(e->job); i++) {
        const fig cost = e->costs.charges[i].full;
        if (fig_none(cost)) {
            continue;
        }
        grid_rule(grid);
        grid_put(grid, "%s, charged", charge_name(e->job, i));
        grid_put(grid, "%s", "");
        grid_put(grid, "%s", show_money(e, sale_charged(&e->sale, i)).text);
        grid_put(grid, "%s, cost with overhead", charge_name(e->job, i));
        grid_put(grid, "%s", "");
        grid_put(grid, "%s", show_money(e, cost).text);
    }
}

static void print_cost(struct page *page, const struct estimate *e) {
    struct grid grid;
    grid_init(&grid, money_columns, 3, 2);
    put_lines(&grid, e, &fields_build_up, &e->costs.job);
    put_lines(&grid, e, &fields_costs, &e->costs);
    put_charges(&grid, e);
    grid_print(&grid, page);
    grid_clear(&grid);
    say(page, "%s", "");
    if (fig_none(e->sale.margin_left)) {
        say_wrapped(page, "", 2, "Profit left, what is sold less its cost with overhead: %s",
                    show_money(e, e->sale.profit_left).text);
    } else {
        say_wrapped(page, "", 2,
                    "Profit left, what is sold less its cost with overhead: %s, a margin of %s",
                    show_money(e, e->sale.profit_left).text,
                    show_unit(e, e->sale.margin_left).text);
    }
}

static void put_need(struct grid *grid, const char *name, const char *net, const char *factor,
                     const char *plan) {
    grid_put(grid, "%s", name);
    grid_put(grid, "%s", net);
    grid_put(grid, "%s", factor);
    grid_put(grid, "%s", plan);
}

static const char *way_words(const struct choice *by) {
    return by->choice == PRICED_BY_PLAN ? "plan" : "factor";
}

/* That the factor buys too little of a material for its plan. */
static void say_short(struct page *page, const struct estimate *e, const struct planned *p) {
    const struct shown words = plan_short(e, p->short_of_plan);
    if (words.text[0] != '\0') {
        say_wrapped(page, "", 2, "%s: %s", p->name, words.text);
    }
}

static void print_short(struct page *page, const struct estimate *e) {
    for (size_t i = 0; i < e->lumber.count; i++) {
        const struct planned lumber = planned_lumber(e, i);
        say_short(page, e, &lumber);
    }
    for (size_t i = 0; i < e->sheets.count; i++) {
        const struct planned sheet = planned_sheet(e, i);
        say_short(page, e, &sheet);
    }
}

static void print_spares(struct page *page, const struct estimate *e) {
    static const struct grid_column columns[] = {{"spare rails", GRID_LEFT, true},
                                                 {"as long as", GRID_LEFT, false},
                                                 {"needed", GRID_RIGHT, false},
                                                 {"spare", GRID_RIGHT, false},
                                                 {"each", GRID_RIGHT, false},
                                                 {"set-up", GRID_RIGHT, false},
                                                 {"needs one, without", GRID_RIGHT, false},
                                                 {"with", GRID_RIGHT, false}};
    struct grid grid;
    if (e->spares.count == 0) {
        return;
    }
    grid_init(&grid, columns, sizeof columns / sizeof *columns, 2);
    for (size_t i = 0; i < e->spares.count; i++) {
        const struct spare_rails *const s = &e->spares.rails[i];
        const struct part *const part = &s->leaf->door->parts[s->part];
        char width[32];
        char along[32];
        grid_put(&grid, "%s %s", e->rates->lumber[part->material].name.s,
                 length_show(part->width, e->job->unit, width, sizeof width));
        grid_put(&grid, "%s %s", s->leaf->door->name,
                 length_show(part->length, e->job->unit, along, sizeof along));
        grid_put(&grid, "%s", show(e, s->pieces).text);
        grid_put(&grid, "%s", show(e, s->spares).text);
        grid_put(&grid, "%s", show_money(e, s->each).text);
        grid_put(&grid, "%s", show_money(e, s->setup_cost).text);
        grid_put(&grid, "%s", show_unit(e, s->short_without).text);
        grid_put(&grid, "%s", show_unit(e, s->short_with).text);
    }
    grid_print(&grid, page);
    grid_clear(&grid);
    say(page, "%s", "");
}

static void print_stock(struct page *page, const struct estimate *e) {
    static const struct grid_column columns[] = {{"material", GRID_LEFT, true},
                                                 {"on the doors", GRID_RIGHT, false},
                                                 {"buy by factor", GRID_RIGHT, false},
                                                 {"by plan", GRID_RIGHT, false}};
    struct grid grid;
    grid_init(&grid, columns, 4, 2);
    for (size_t i = 0; i < e->lumber.count; i++) {
        const struct lumber_buy *const b = &e->lumber.buys[i];
        put_need(&grid, e->rates->lumber[b->material].name.s, show_unit(e, b->net).text,
                 show_unit(e, b->by_factor.bought).text, show_unit(e, b->by_plan.bought).text);
    }
    for (size_t i = 0; i < e->sheets.count; i++) {
        const struct sheet_buy *const b = &e->sheets.buys[i];
        put_need(&grid, e->rates->sheets[b->material].name.s, show_unit(e, b->net).text,
                 show_sheets(e, &b->by_factor).text,
                 b->plan.no_plan_reason != NULL ? "-" : show_sheets(e, &b->by_plan).text);
    }
    grid_print(&grid, page);
    grid_clear(&grid);
    print_short(page, e);
    const struct shop *const shop = &e->rates->shop;
    const char *const lumber_by = way_words(&shop->lumber_by);
    const char *const sheets_by = way_words(&shop->sheets_by);
    if (shop->lumber_by.choice == shop->sheets_by.choice) {
        say_wrapped(page, "", 2, "(priced by %s; 'doorcost plan' shows how they are cut)",
                    lumber_by);
    } else {
        say_wrapped(page, "", 2,
                    "(lumber is priced by %s, sheets by %s; 'doorcost plan' shows how they are "
                    "cut)",
                    lumber_by, sheets_by);
    }
    say(page, "%s", "");
    print_spares(page, e);
}

static void put_finish(struct grid *grid, const struct estimate *e) {
    for (size_t i = 0; i < e->finish.product_count; i++) {
        const struct product *const p = &e->finish.products[i];
        grid_put(grid, "%s", p->title);
        grid_put(grid, "%s", show_unit(e, p->need).text);
        grid_put(grid, "%s", show_unit(e, p->bought).text);
    }
}

static void print_needs(struct page *page, const struct estimate *e) {
    static const struct grid_column columns[] = {
        {"finish", GRID_LEFT, true}, {"needed", GRID_RIGHT, false}, {"to buy", GRID_RIGHT, false}};
    struct grid grid;
    if (e->lumber.count + e->sheets.count > 0) {
        print_stock(page, e);
    }
    if (e->finish.product_count > 0) {
        grid_init(&grid, columns, 3, 2);
        put_finish(&grid, e);
        grid_print(&grid, page);
        grid_clear(&grid);
    }
    say_wrapped(page, "", 2,
                "(of finish: losses in; 'doorcost buy' gives the whole list, 'doorcost finish' the "
                "reasons)");
}

/* Minutes a door by sort of work, what shops have told beside them. */
static void print_minutes(struct page *page, const struct estimate *e) {
    static const struct grid_column columns[] = {{"minutes a door", GRID_LEFT, false},
                                                 {"here", GRID_RIGHT, false},
                                                 {"shops report", GRID_LEFT, true}};
    const struct {
        const char *label;
        fig minutes;
        const char *told;
    } rows[] = {
        {"making it", e->labor.making, "18 to 35, unfinished"},
        {"finishing it", e->labor.finishing, "23 to 25"},
        {"around it", e->labor.general_minutes, "-"},
    };
    struct grid grid;
    grid_init(&grid, columns, 3, 2);
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        if (!fig_none(rows[i].minutes)) {
            grid_put(&grid, "%s", rows[i].label);
            grid_put(&grid, "%s", show(e, rows[i].minutes).text);
            grid_put(&grid, "%s", rows[i].told);
        }
    }
    grid_rule(&grid);
    grid_put(&grid, "all work");
    grid_put(&grid, "%s", show(e, e->labor.minutes_a_door).text);
    grid_end_row(&grid);
    grid_print(&grid, page);
    grid_clear(&grid);
    say_wrapped(page, "", 2,
                "(around it: measuring, quoting, packing and what else every job has; what shops "
                "report is told, not measured: docs/method.md, 'A band to check against')");
}

/* A door bought in is not weighed: the rates say nothing of what it is made of. */
static const char *unweighed_words(const struct estimate *e) {
    for (size_t r = 0; r < e->quantities.count; r++) {
        if (e->quantities.leaves[r].door->bought_in) {
            return ", but for those bought in";
        }
    }
    return "";
}

static void print_hours(struct page *page, const struct estimate *e) {
    print_minutes(page, e);
    say(page, "%s", "");
    if (fig_same(e->labor.hours, e->labor.bench_hours)) {
        say_wrapped(page, "", 2, "Person-hours: %s.", show(e, e->labor.hours).text);
    } else {
        say_wrapped(page, "", 2, "Person-hours: %s, of that at the bench: %s.",
                    show(e, e->labor.hours).text, show(e, e->labor.bench_hours).text);
    }
    if (!fig_none(e->labor.work_days)) {
        say_wrapped(page, "", 2, "Working days, one person: %s.", show(e, e->labor.work_days).text);
    }
    if (!fig_none(e->labor.dry_hours)) {
        say_wrapped(page, "", 2, "Drying, slowest batch: %s.",
                    show_unit(e, e->labor.dry_hours).text);
    }
    if (fig_none(e->quantities.weight)) {
        say_wrapped(page, "", 2, "Weight: not known, the density of a material is missing.");
    } else {
        say_wrapped(page, "", 2, "Weight of all doors and fronts%s: %s.", unweighed_words(e),
                    show_unit(e, e->quantities.weight).text);
    }
}

/* Numbers that are told of those that move the total. */
#define MOST_MOVES 8

static void print_moves(struct page *page, const struct estimate *e) {
    static const struct grid_column columns[] = {{"10 % more of", GRID_LEFT, true},
                                                 {"adds about", GRID_RIGHT, false},
                                                 {"line", GRID_RIGHT, false},
                                                 {"", GRID_LEFT, false}};
    struct grid grid;
    struct pool pool;
    pool_init(&pool);
    const struct moves moves = moves_of(e, &pool);
    grid_init(&grid, columns, 4, 2);
    for (size_t i = 0; i < moves.count && i < MOST_MOVES; i++) {
        const struct move *const m = &moves.list[i];
        grid_put(&grid, "%s %s", m->setting->title, m->setting->key);
        grid_put(&grid, "%.0f", m->adds);
        grid_put(&grid, "%u", m->setting->line);
        grid_put(&grid, "%s", m->shipped ? "as shipped" : "");
    }
    if (moves.count > 0) {
        say(page, "%s", "");
        say_wrapped(page, "", 0, "What moves the total most, of %s", e->rates->settings.file_name);
        grid_print(&grid, page);
    }
    grid_clear(&grid);
    page->failed = page->failed || pool_failed(&pool);
    pool_clear(&pool);
}

/* What of invented rates the job still takes. */
static void print_shipped(struct page *page, const struct estimate *e) {
    static const struct grid_column columns[] = {{NULL, GRID_LEFT, false}, {NULL, GRID_LEFT, true}};
    struct grid grid;
    struct pool pool;
    if (!shipped_example(e)) {
        return;
    }
    pool_init(&pool);
    const struct shipped shipped = shipped_of(e, &pool);
    say(page, "%s", "");
    say_wrapped(page, "", 0, "%s", shipped_words(&shipped, &pool));
    grid_init(&grid, columns, 2, 2);
    for (size_t i = 0; i < shipped.group_count; i++) {
        grid_put(&grid, "%s", shipped.groups[i].kind);
        grid_put(&grid, "%s", shipped.groups[i].names);
    }
    grid_print(&grid, page);
    grid_clear(&grid);
    if (shipped.left > 0) {
        say_wrapped(page, "", 2,
                    "(put in your own and name them in 'own' of [shop]: docs/how-to/own-rates.md)");
    }
    page->failed = page->failed || pool_failed(&pool);
    pool_clear(&pool);
}

void shop_print(struct page *page, const struct estimate *e) {
    say(page, "%s", "");
    say(page, "For the shop, not for the client");
    say(page, "%s", "");
    print_cost(page, e);
    say(page, "%s", "");
    print_needs(page, e);
    say(page, "%s", "");
    print_hours(page, e);
    print_moves(page, e);
    print_shipped(page, e);
    cautions_print(page, e, CAUTION_SHOP | CAUTION_QUOTE);
}
