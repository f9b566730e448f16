/* SPDX-License-Identifier: MIT */
/* The part of the buying list that is counted in pieces: glass, hardware, consumables. */
#include "report/text/print.h"
#include "report/words/show.h"

/* --- glass --- */

/* The panes of one glass, a line for each row and size: what the glass shop is told. */
static void put_panes(struct grid *grid, const struct estimate *e, int32_t glass) {
    for (size_t r = 0; r < e->quantities.count; r++) {
        const struct leaf_figures *const leaf = &e->quantities.leaves[r];
        for (size_t i = 0; i < leaf->door->part_count; i++) {
            const struct part *const part = &leaf->door->parts[i];
            if (part->material_kind != MATERIAL_GLASS || part->material != glass) {
                continue;
            }
            grid_put(grid, "  %s", leaf->door->name);
            grid_put(grid, "%s", show(e, leaf->parts[i].pieces).text);
            grid_put(grid, "%s",
                     show_size(part->shown_width, part->shown_height, e->job->unit).text);
            grid_put(grid, "%s", show_unit(e, leaf->parts[i].area).text);
            grid_put(grid, "%s", show_money(e, leaf->parts[i].cost).text);
            grid_end_row(grid);
        }
    }
}

static void print_glass(struct page *page, const struct estimate *e) {
    static const struct grid_column columns[] = {
        {"glass", GRID_LEFT, true},        {"panes", GRID_RIGHT, false},
        {"size", GRID_RIGHT, false},       {"charged", GRID_RIGHT, false},
        {"price each", GRID_RIGHT, false}, {"cost", GRID_RIGHT, false}};
    struct grid grid;
    if (e->glass.count == 0) {
        return;
    }
    grid_init(&grid, columns, 6, 0);
    for (size_t i = 0; i < e->glass.count; i++) {
        const struct glass_buy *const b = &e->glass.buys[i];
        grid_put(&grid, "%s", e->rates->glass[b->material].name.s);
        grid_put(&grid, "%s", "");
        grid_put(&grid, "%s", "");
        grid_put(&grid, "%s", show_unit(e, b->area).text);
        grid_put(&grid, "%s", "");
        grid_put(&grid, "%s", show_money(e, b->cost).text);
        put_panes(&grid, e, b->material);
        if (!fig_none(b->stops)) {
            grid_heading(&grid, "    of that for stops, %s: %s",
                         show_value(&e->rates->glass[b->material].stops, e->job->unit).text,
                         show_money(e, b->stops).text);
        }
    }
    say(page, "%s", "");
    grid_print(&grid, page);
    grid_clear(&grid);
}

/* --- hardware --- */

static void put_hardware(struct grid *grid, const struct estimate *e,
                         const struct hardware_buy *b) {
    grid_put(grid, "%s", e->rates->hardware[b->hardware].name.s);
    grid_put(grid, "%s", show(e, b->needed).text);
    if (b->by_others) {
        grid_put(grid, "by others");
        grid_end_row(grid);
        return;
    }
    grid_put(grid, "%s", show(e, b->with_spares).text);
    if (fig_none(b->packs)) {
        grid_put(grid, "%s", show(e, b->bought).text);
    } else {
        grid_put(grid, "%s (%s pack%s)", show(e, b->bought).text, show(e, b->packs).text,
                 tape_scaled(&e->tape, b->packs, 0) == 1 ? "" : "s");
    }
    grid_put(grid, "%s%s", show_money(e, b->price).text,
             e->rates->hardware[b->hardware].price_by.choice == PRICE_PER_PACK ? " a pack" : "");
    grid_put(grid, "%s", show_money(e, b->cost).text);
    grid_put(grid, "%s", show_money(e, b->charged).text);
    if (!fig_none(b->from_rack)) {
        grid_heading(grid, "    %s of them from the rack", show(e, b->from_rack).text);
    }
}

static void print_hardware(struct page *page, const struct estimate *e) {
    static const struct grid_column columns[] = {
        {"hardware", GRID_LEFT, true},      {"on doors", GRID_RIGHT, false},
        {"with spares", GRID_RIGHT, false}, {"to buy", GRID_RIGHT, false},
        {"price", GRID_RIGHT, false},       {"cost", GRID_RIGHT, false},
        {"charged", GRID_RIGHT, false}};
    struct grid grid;
    if (e->hardware.count == 0) {
        return;
    }
    grid_init(&grid, columns, 7, 0);
    for (size_t i = 0; i < e->hardware.count; i++) {
        put_hardware(&grid, e, &e->hardware.buys[i]);
    }
    say(page, "%s", "");
    grid_print(&grid, page);
    grid_clear(&grid);
}

/* --- consumables --- */

static void print_consumables(struct page *page, const struct estimate *e) {
    static const struct grid_column columns[] = {{"consumables", GRID_LEFT, true},
                                                 {"for", GRID_RIGHT, false},
                                                 {"price", GRID_RIGHT, false},
                                                 {"cost", GRID_RIGHT, false}};
    struct grid grid;
    if (e->costs.consumable_count == 0) {
        return;
    }
    grid_init(&grid, columns, 4, 0);
    for (size_t i = 0; i < e->costs.consumable_count; i++) {
        const struct consumable_figures *const c = &e->costs.consumables[i];
        const bool doors = c->quantity.id == e->quantities.all_leaves.id;
        grid_put(&grid, "%s", e->rates->consumables[c->consumable].name.s);
        grid_put(&grid, "%s%s", show_unit(e, c->quantity).text, doors ? " doors" : "");
        grid_put(&grid, "%s", show_unit(e, c->price).text);
        grid_put(&grid, "%s", show_money(e, c->cost).text);
    }
    say(page, "%s", "");
    grid_print(&grid, page);
    grid_clear(&grid);
}

/* --- what others make --- */

static void put_bought_in(struct grid *grid, const struct estimate *e,
                          const struct leaf_figures *leaf, const char *what, fig each) {
    if (fig_none(each)) {
        return;
    }
    grid_put(grid, "%s", leaf->door->name);
    grid_put(grid, "%s", what);
    grid_put(grid, "%s", show(e, leaf->pieces).text);
    grid_put(grid, "%s", show_size(leaf->door->width, leaf->door->height, e->job->unit).text);
    grid_put(grid, "%s", show_money(e, each).text);
}

static void print_bought_in(struct page *page, const struct estimate *e) {
    static const struct grid_column columns[] = {{"bought in", GRID_LEFT, false},
                                                 {"what", GRID_LEFT, true},
                                                 {"doors", GRID_RIGHT, false},
                                                 {"size", GRID_RIGHT, false},
                                                 {"price each", GRID_RIGHT, false}};
    struct grid grid;
    if (fig_none(e->costs.job.group[COST_BOUGHT_IN])) {
        return;
    }
    grid_init(&grid, columns, 5, 0);
    for (size_t r = 0; r < e->quantities.count; r++) {
        const struct leaf_figures *const leaf = &e->quantities.leaves[r];
        const int32_t finish = leaf->door->construction->finish.index;
        put_bought_in(&grid, e, leaf, leaf->door->style->name.s, leaf->bought_in);
        put_bought_in(&grid, e, leaf, finish < 0 ? "" : e->rates->finishes[finish].name.s,
                      leaf->put_out);
    }
    say(page, "%s", "");
    grid_print(&grid, page);
    grid_clear(&grid);
}

void sundries_print(struct page *page, const struct estimate *e) {
    print_glass(page, e);
    print_hardware(page, e);
    print_consumables(page, e);
    print_bought_in(page, e);
}
