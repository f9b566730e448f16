/* SPDX-License-Identifier: MIT */
/* The cutting plans on the terminal: what to buy, how it is cut, where the waste goes. */
#include "report/text/print.h"

#include "base/text.h"
#include "report/words/plan_words.h"

#include <string.h>

struct teller {
    struct page *page;
    const struct estimate *e;
    struct pool pool;
};

/* text, with `more` behind it after a comma. */
static const char *join(struct teller *t, const char *text, const char *more) {
    return pool_format(&t->pool, "%s%s%s", text, text[0] == '\0' ? "" : ", ", text_or_empty(more));
}

/* --- both ways side by side --- */

static const struct grid_column way_columns[] = {
    {"", GRID_LEFT, true}, {"by factor", GRID_RIGHT, false}, {"by plan", GRID_RIGHT, false}};

static void put_way(struct grid *grid, const char *what, struct shown factor, struct shown plan) {
    grid_put(grid, "%s", what);
    grid_put(grid, "%s", factor.text);
    grid_put(grid, "%s", plan.text);
}

static void print_lumber_ways(struct teller *t, const struct lumber_buy *b) {
    const struct estimate *const e = t->e;
    const struct lumber *const l = &e->rates->lumber[b->material];
    struct grid grid;
    grid_init(&grid, way_columns, 3, 2);
    put_way(&grid, "to buy", show_unit(e, b->by_factor.bought), show_unit(e, b->by_plan.bought));
    put_way(&grid, "cost", show_money(e, b->by_factor.cost), show_money(e, b->by_plan.cost));
    put_way(&grid, "waste added", show_unit(e, b->by_factor.waste_added),
            show_unit(e, b->by_plan.waste_added));
    put_way(&grid, "yield", show_unit(e, b->by_factor.yield), show_unit(e, b->by_plan.yield));
    grid_print(&grid, t->page);
    grid_clear(&grid);
    say_wrapped(t->page, "", 2, "%s %s %s",
                plan_asks(e, b->implied_waste, &l->waste, (enum waste_as)l->waste_as.choice).text,
                plan_prices(b->planned), plan_short(e, b->short_of_plan).text);
}

static void print_sheet_ways(struct teller *t, const struct sheet_buy *b) {
    const struct estimate *const e = t->e;
    const struct sheet *const s = &e->rates->sheets[b->material];
    struct grid grid;
    grid_init(&grid, way_columns, 3, 2);
    put_way(&grid, "to buy", show_sheets(e, &b->by_factor), show_sheets(e, &b->by_plan));
    put_way(&grid, "cost", show_money(e, b->by_factor.cost), show_money(e, b->by_plan.cost));
    put_way(&grid, "waste added", show_unit(e, b->by_factor.waste_added),
            show_unit(e, b->by_plan.waste_added));
    put_way(&grid, "yield", show_unit(e, b->by_factor.yield), show_unit(e, b->by_plan.yield));
    grid_print(&grid, t->page);
    grid_clear(&grid);
    say_wrapped(t->page, "", 2, "%s %s %s",
                plan_asks(e, b->implied_waste, &s->waste, (enum waste_as)s->waste_as.choice).text,
                plan_prices(b->planned), plan_short(e, b->short_of_plan).text);
}

/* --- where it goes --- */

struct share {
    const char *what;
    fig amount;
};

static void print_split(struct teller *t, const struct share *shares, size_t count, const char *all,
                        fig bought, fig keep) {
    static const struct grid_column columns[] = {{NULL, GRID_LEFT, true},
                                                 {NULL, GRID_RIGHT, false}};
    const struct estimate *const e = t->e;
    struct grid grid;
    grid_init(&grid, columns, 2, 2);
    for (size_t i = 0; i < count; i++) {
        if (!fig_none(shares[i].amount) && tape_amount(&e->tape, shares[i].amount) != 0) {
            grid_put(&grid, "%s", shares[i].what);
            grid_put(&grid, "%s", show(e, shares[i].amount).text);
        }
    }
    grid_rule(&grid);
    grid_put(&grid, "%s", all);
    grid_put(&grid, "%s", show_unit(e, bought).text);
    say(t->page, "%s", "");
    grid_print(&grid, t->page);
    grid_clear(&grid);
    if (tape_amount(&e->tape, keep) > 0) {
        say_wrapped(t->page, "", 2, "of the offcuts, worth keeping: %s", show_unit(e, keep).text);
    }
}

static void print_lumber_split(struct teller *t, const struct lumber_buy *b) {
    const struct lumber_plan *const p = &b->plan;
    const struct share shares[] = {
        {"finished parts", b->net},
        {"end and edge allowance", p->allowances},
        {"ends trimmed, edges straightened", p->trim},
        {"kerf", p->kerf},
        {"kept for defects", p->defects},
        {"offcuts", p->offcuts},
        {"tallied to whole feet of surface", p->tally},
        {"yard's minimum or price break", b->over_plan},
    };
    print_split(t, shares, sizeof shares / sizeof *shares, "bought by plan", b->by_plan.bought,
                p->keep_worth);
}

static void print_sheet_split(struct teller *t, const struct sheet_buy *b) {
    const struct sheets_plan *const p = &b->plan;
    const struct share shares[] = {
        {"parts", b->net}, {"edges trimmed", p->trim}, {"kerf", p->kerf}, {"offcuts", b->offcuts}};
    print_split(t, shares, sizeof shares / sizeof *shares, "bought by plan", b->by_plan.bought,
                p->keep_worth);
}

/* --- how it is cut --- */

/* `2 3/8: 2 x D01 stile 31, D02 rail 15 1/4`: one strip. */
static const char *strip_words(struct teller *t, const struct lumber_plan *p,
                               const struct board_strip *strip) {
    const char *words = "";
    for (size_t i = 0, run; i < strip->count; i += run) {
        const size_t item = p->plan->pieces[strip->first + i];
        for (run = 1; i + run < strip->count && p->plan->pieces[strip->first + i + run] == item;) {
            run++;
        }
        const char *const name = plan_part_name(&t->pool, &p->parts[item]);
        const struct shown size = plan_show(t->e, p->job.items[item].length);
        const char *const one = run == 1
                                    ? pool_format(&t->pool, "%s %s", name, size.text)
                                    : pool_format(&t->pool, "%zu x %s %s", run, name, size.text);
        words = text_or_empty(join(t, words, one));
    }
    return pool_format(&t->pool, "%s: %s", plan_show(t->e, strip->width).text, words);
}

static bool print_board(struct teller *t, const struct lumber_plan *p, const struct alike *alike) {
    const struct estimate *const e = t->e;
    const struct board_use *const use = &p->plan->boards[alike->first];
    const struct cut_stock *const stock = &p->job.stocks[use->stock];
    struct board_layout layout = {0};
    const char *words = "";
    for (size_t s = 0; s < use->count; s++) {
        const char *const strip = strip_words(t, p, &p->plan->strips[use->first + s]);
        words = text_or_empty(
            pool_format(&t->pool, "%s%s%s", words, s == 0 ? "" : " | ", text_or_empty(strip)));
    }
    const bool held = board_layout_make(&layout, &p->job, p->plan, alike->first, p->keep);
    const char *keep = "";
    for (size_t i = 0; held && i < layout.offcut_count; i++) {
        if (layout.offcuts[i].keep) {
            const struct board_box *const box = &layout.offcuts[i].box;
            keep = text_or_empty(
                join(t, keep,
                     pool_format(&t->pool, "%s", plan_show_size(e, box->width, box->length).text)));
        }
    }
    const char *const first = pool_format(&t->pool, "  %s, %s: ", plan_numbers(alike, "board").text,
                                          plan_show_size(e, stock->width, stock->length).text);
    say_wrapped(t->page, text_or_empty(first), 4, "%s%s%s", words, keep[0] == '\0' ? "" : "; keep ",
                keep);
    board_layout_clear(&layout);
    return held;
}

/* Boards to buy by size: `22 of 5 x 96, 1 of 7 x 96`. */
static void print_board_sizes(struct teller *t, const struct lumber_plan *p) {
    const char *words = "";
    for (size_t s = 0; s < p->job.stock_count; s++) {
        if (tape_amount(&t->e->tape, p->counts[s]) > 0) {
            const struct cut_stock *const stock = &p->job.stocks[s];
            words = text_or_empty(
                join(t, words,
                     pool_format(&t->pool, "%s of %s", show(t->e, p->counts[s]).text,
                                 plan_show_size(t->e, stock->width, stock->length).text)));
        }
    }
    say_wrapped(t->page, "  boards to buy: ", 4, "%s", words);
}

static bool print_lumber(struct teller *t, const struct lumber_buy *b) {
    const struct lumber_plan *const p = &b->plan;
    const struct lumber *const l = &t->e->rates->lumber[b->material];
    say(t->page, "%s", "");
    say_wrapped(t->page, l->name.s, 0, " %s", text_or_empty(l->thickness_text.s));
    if (p->no_plan_reason != NULL) {
        say_wrapped(t->page, "", 2, "no plan: %s", p->no_plan_reason);
        return true;
    }
    say_wrapped(t->page, "", 2, "%s", plan_proof_boards(t->e, b).text);
    print_lumber_ways(t, b);
    print_lumber_split(t, b);
    say(t->page, "%s", "");
    print_board_sizes(t, p);
    size_t count = 0;
    const struct alike *const list = plan_alike_boards(&t->pool, p->plan, &count);
    bool held = list != NULL;
    for (size_t i = 0; held && i < count; i++) {
        held = print_board(t, p, &list[i]);
    }
    return held;
}

/* `3 x D01 panel 13 15/16 x 29 1/16`, ...: the parts of a sheet, each item once. */
static const char *sheet_words(struct teller *t, const struct sheets_plan *p,
                               const struct sheet_sheet *sheet) {
    int64_t *const counts = pool_take(&t->pool, p->job.item_count, sizeof *counts);
    const char *words = "";
    for (size_t i = 0; counts != NULL && i < sheet->part_count; i++) {
        counts[p->plan->parts[sheet->first_part + i].item]++;
    }
    for (size_t i = 0; counts != NULL && i < p->job.item_count; i++) {
        const struct cut_item *const item = &p->job.items[i];
        const char *const name = plan_part_name(&t->pool, &p->parts[i]);
        const struct shown size = plan_show_size(t->e, item->width, item->length);
        if (counts[i] == 1) {
            words = text_or_empty(join(t, words, pool_format(&t->pool, "%s %s", name, size.text)));
        } else if (counts[i] > 1) {
            words = text_or_empty(
                join(t, words,
                     pool_format(&t->pool, "%lld x %s %s", (long long)counts[i], name, size.text)));
        }
    }
    return words;
}

static void print_one_sheet(struct teller *t, const struct sheets_plan *p,
                            const struct alike *alike) {
    const struct estimate *const e = t->e;
    const struct sheet_sheet *const sheet = &p->plan->sheets[alike->first];
    const struct cut_stock *const stock = &p->job.stocks[sheet->stock];
    const char *keep = "";
    for (size_t i = 0; i < sheet->node_count; i++) {
        const struct sheet_node *const n = &p->plan->nodes[sheet->first_node + i];
        if (n->use == SHEET_OFFCUT && sheet_keeps(p->keep, n->length, n->width)) {
            keep = text_or_empty(join(
                t, keep, pool_format(&t->pool, "%s", plan_show_size(e, n->width, n->length).text)));
        }
    }
    const char *const first = pool_format(
        &t->pool,
        "  %s, %s: ", plan_numbers(alike, sheet->stock == SHEET_HALF ? "half sheet" : "sheet").text,
        plan_show_size(e, stock->width, stock->length).text);
    say_wrapped(t->page, text_or_empty(first), 4, "%s%s%s", sheet_words(t, p, sheet),
                keep[0] == '\0' ? "" : "; keep ", keep);
}

static bool print_sheets(struct teller *t, const struct sheet_buy *b) {
    const struct sheets_plan *const p = &b->plan;
    say(t->page, "%s", "");
    say_wrapped(t->page, t->e->rates->sheets[b->material].name.s, 0, "%s", "");
    if (p->no_plan_reason != NULL) {
        say_wrapped(t->page, "", 2, "no plan: %s", p->no_plan_reason);
        return true;
    }
    say_wrapped(t->page, "", 2, "%s", plan_proof_sheets(t->e, b).text);
    print_sheet_ways(t, b);
    print_sheet_split(t, b);
    say(t->page, "%s", "");
    size_t count = 0;
    const struct alike *const list = plan_alike_sheets(&t->pool, p->plan, &count);
    for (size_t i = 0; list != NULL && i < count; i++) {
        print_one_sheet(t, p, &list[i]);
    }
    return list != NULL;
}

void plan_print(struct page *page, const struct estimate *e) {
    struct teller t = {.page = page, .e = e};
    bool held = true;
    head_print(page, "Cutting plans", e);
    for (size_t i = 0; held && i < e->lumber.count; i++) {
        pool_init(&t.pool);
        held = print_lumber(&t, &e->lumber.buys[i]) && !pool_failed(&t.pool);
        pool_clear(&t.pool);
    }
    for (size_t i = 0; held && i < e->sheets.count; i++) {
        pool_init(&t.pool);
        held = print_sheets(&t, &e->sheets.buys[i]) && !pool_failed(&t.pool);
        pool_clear(&t.pool);
    }
    if (e->lumber.count + e->sheets.count == 0) {
        say(page, "nothing to cut in this job");
    }
    page->failed = page->failed || !held;
}
