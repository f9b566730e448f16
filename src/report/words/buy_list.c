/* SPDX-License-Identifier: MIT */
#include "report/words/buy_list.h"

#include "base/pool.h"
#include "report/words/plan_words.h"
#include "report/words/planned.h"

#include <stdlib.h>
#include <string.h>

struct lister {
    struct buy_list *list;
    struct pool *pool;
    const struct estimate *e;
};

/* The noun without its s for one of it. */
static const char *unit_words(struct lister *l, const struct buy_line *line) {
    const bool one = tape_scaled(&l->e->tape, line->count, 6) == 1000000;
    return one && line->unit[0] != '\0'
               ? pool_words(l->pool, "%.*s", (int)strlen(line->unit) - 1, line->unit)
               : line->unit;
}

/* `22 boards`, `1 board`, `100 bf`. */
static const char *count_words(struct lister *l, const struct buy_line *line) {
    if (fig_none(line->count)) {
        return "";
    }
    const char *const unit = line->unit[0] == '\0' ? show_unit_name(l->e, line->count) : line->unit;
    return pool_words(l->pool, "%s%s%s", show_few(l->e, line->count).text,
                      unit[0] == '\0' ? "" : " ", unit);
}

static void add(struct lister *l, struct buy_line line) {
    struct buy_list *const list = l->list;
    list->lines = array_grow(list->lines, &list->room, list->line_count + 1, sizeof *list->lines,
                             &list->failed);
    if (!list->failed) {
        line.what = line.what == NULL ? "" : line.what;
        line.size = line.size == NULL ? "" : line.size;
        line.unit = line.unit == NULL ? "" : line.unit;
        line.note = line.note == NULL ? "" : line.note;
        line.unit = unit_words(l, &line);
        line.how_many = count_words(l, &line);
        list->lines[list->line_count++] = line;
    }
}

static const char *keep(struct lister *l, struct shown shown) {
    return pool_words(l->pool, "%s", shown.text);
}

/* `4 thick`: of what no width and length stand beside. */
static const char *thick_words(struct lister *l, const char *thickness) {
    return pool_words(l->pool, "%s thick", thickness);
}

static bool some(const struct lister *l, fig f) {
    return !fig_none(f) && tape_amount(&l->e->tape, f) != 0;
}

/* --- lumber and sheets --- */

/* The boards of the plan by size: what to pick from the pile. */
static void add_boards(struct lister *l, const struct lumber_plan *p) {
    for (size_t s = 0; p->no_plan_reason == NULL && s < p->sold; s++) {
        const struct cut_stock *const stock = &p->job.stocks[s];
        if (some(l, p->counts[s])) {
            add(l, (struct buy_line){.size =
                                         keep(l, plan_show_size(l->e, stock->width, stock->length)),
                                     .count = p->counts[s],
                                     .unit = "boards",
                                     .part = true});
        }
    }
}

/* `2 of 24 x 48, 1 whole` of the rack, with `from the rack: ` before it; "" where nothing is. */
static const char *words_of_rack(struct lister *l, const struct rack_stock *rack) {
    const char *words = "";
    for (size_t i = 0; i < rack->count; i++) {
        const struct rack_item *const item = &rack->rows[i];
        const char *const size =
            item->width.set
                ? pool_words(
                      l->pool, "of %s",
                      show_size(item->width.amount, item->length.amount, l->e->job->unit).text)
                : "whole";
        if (some(l, rack->taken[i])) {
            words = pool_words(l->pool, "%s%s%s %s", words, words[0] == '\0' ? "" : ", ",
                               show(l->e, rack->taken[i]).text, size);
        }
    }
    return words[0] == '\0' ? "" : pool_words(l->pool, "from the rack: %s", words);
}

/* What comes from the rack, and whether the boards below are enough. */
static const char *lumber_note(struct lister *l, const struct planned *p, const char *rack,
                               bool nothing) {
    const char *const lack = keep(l, plan_short(l->e, p->short_of_plan));
    const char *const boards = p->no_plan_reason == NULL && !nothing ? BUY_BY_PLAN : "";
    if (rack[0] == '\0') {
        return lack[0] != '\0' ? lack : boards;
    }
    return lack[0] != '\0'     ? pool_words(l->pool, "%s. %s", rack, lack)
           : boards[0] != '\0' ? pool_words(l->pool, "%s; %s", rack, boards)
                               : rack;
}

static void add_lumber(struct lister *l) {
    for (size_t i = 0; i < l->e->lumber.count; i++) {
        const struct lumber_buy *const b = &l->e->lumber.buys[i];
        const struct planned p = planned_lumber(l->e, i);
        const char *const rack = p.no_plan_reason == NULL ? words_of_rack(l, &b->plan.rack) : "";
        const bool nothing = !some(l, b->priced.bought);
        add(l, (struct buy_line){.what = p.name,
                                 .size = strchr(p.thickness, '/') != NULL /* 4/4 says it all */
                                             ? p.thickness
                                             : thick_words(l, p.thickness),
                                 .count = nothing ? (fig){0} : b->priced.bought,
                                 .price = nothing ? (fig){0} : b->priced.price,
                                 .cost = b->priced.cost,
                                 .note = lumber_note(l, &p, rack, nothing),
                                 .by_others = nothing,
                                 .boards = p.no_plan_reason == NULL,
                                 .short_of_plan = p.no_plan_reason == NULL && rack[0] == '\0'
                                                      ? p.short_of_plan
                                                      : (fig){0}});
        add_boards(l, &b->plan);
    }
}

/* `1/4 x 49 x 97`. */
static const char *sheet_size(struct lister *l, const struct sheet *s, length along) {
    const enum length_unit unit = l->e->job->unit;
    return pool_words(l->pool, "%s x %s", show_value(&s->thickness, unit).text,
                      show_size(s->width.amount, along, unit).text);
}

static void add_sheet(struct lister *l, const struct sheet_buy *b, const struct planned *p) {
    const struct sheet *const s = &l->e->rates->sheets[b->material];
    const bool whole = some(l, b->priced.whole);
    const bool half = some(l, b->priced.half);
    const char *const size = sheet_size(l, s, s->length.amount);
    const char *const half_size = sheet_size(l, s, s->length.amount / 2);
    const char *const rack = b->planned ? words_of_rack(l, &b->plan.rack) : "";
    struct buy_line line = {.what = p->name,
                            .cost = b->priced.cost,
                            .note = rack[0] != '\0' ? rack /* priced by plan, which is not short */
                                                    : keep(l, plan_short(l->e, p->short_of_plan)),
                            .by_others = !whole && !half,
                            .short_of_plan = p->no_plan_reason == NULL && rack[0] == '\0'
                                                 ? p->short_of_plan
                                                 : (fig){0}};
    if (whole != half) {
        line.size = whole ? size : half_size;
        line.count = whole ? b->priced.whole : b->priced.half;
        line.unit = whole ? "sheets" : "half sheets";
        line.price = whole ? b->price : b->half_price;
    }
    add(l, line);
    if (whole && half) {
        add(l, (struct buy_line){.size = size,
                                 .count = b->priced.whole,
                                 .unit = "sheets",
                                 .price = b->price,
                                 .part = true});
        add(l, (struct buy_line){.size = half_size,
                                 .count = b->priced.half,
                                 .unit = "half sheets",
                                 .price = b->half_price,
                                 .part = true});
    }
}

/* `roll of 250 ft`: in the unit that edges are measured in. */
static const char *roll_words(struct lister *l, const struct banding *kind) {
    const length per = l->e->units.run == UNIT_M ? 1000 * NM_PER_MM : NM_PER_FOOT;
    const int64_t hundredths = (kind->roll.amount * 100 + per / 2) / per;
    const bool whole = hundredths % 100 == 0;
    return pool_words(l->pool, "roll of %s %s",
                      show_number(whole ? hundredths / 100 : hundredths, whole ? 0 : 2).text,
                      unit_name(l->e->units.run));
}

static void add_sheets(struct lister *l) {
    const struct estimate *const e = l->e;
    for (size_t i = 0; i < e->sheets.count; i++) {
        const struct planned p = planned_sheet(e, i);
        add_sheet(l, &e->sheets.buys[i], &p);
    }
    for (size_t i = 0; i < e->banding.count; i++) {
        const struct banding_buy *const b = &e->banding.buys[i];
        const struct banding *const kind = &e->rates->bandings[b->banding];
        const bool rolls = !fig_none(b->rolls);
        add(l, (struct buy_line){.what = kind->name.s,
                                 .size = rolls ? roll_words(l, kind) : "",
                                 .count = rolls ? b->rolls : b->needed,
                                 .unit = rolls ? "rolls" : "",
                                 .price = b->price,
                                 .cost = b->cost});
    }
}

/* --- glass --- */

/* Panes of one size in one line, in the order of the door list. */
static void add_panes(struct lister *l, int32_t glass) {
    const struct quantities *const q = &l->e->quantities;
    for (size_t r = 0; r < q->count; r++) {
        const struct leaf_figures *const leaf = &q->leaves[r];
        for (size_t i = 0; i < leaf->door->part_count; i++) {
            const struct part *const part = &leaf->door->parts[i];
            if (part->material_kind == MATERIAL_GLASS && part->material == glass) {
                add(l, (struct buy_line){
                           .size = keep(l, show_size(part->shown_width, part->shown_height,
                                                     l->e->job->unit)),
                           .count = leaf->parts[i].pieces,
                           .unit = "panes",
                           .what = pool_words(l->pool, "for %s", leaf->door->name),
                           .part = true});
            }
        }
    }
}

static void add_glass(struct lister *l) {
    for (size_t i = 0; i < l->e->glass.count; i++) {
        const struct glass_buy *const b = &l->e->glass.buys[i];
        const struct glass *const glass = &l->e->rates->glass[b->material];
        add(l, (struct buy_line){
                   .what = glass->name.s,
                   .size = thick_words(l, show_value(&glass->thickness, l->e->job->unit).text),
                   .count = b->area,
                   .cost = b->cost,
                   .note = fig_none(b->stops) ? "as charged, cut to size" : "with its stops"});
        add_panes(l, b->material);
    }
}

/* --- finish --- */

/* `12 more from the rack`; "" where nothing is. */
static const char *rack_note(struct lister *l, fig from_rack, const char *words) {
    return some(l, from_rack) ? pool_words(l->pool, "%s %s", show_unit(l->e, from_rack).text, words)
                              : "";
}

static void add_product(struct lister *l, const struct product *p) {
    size_t kinds = 0;
    size_t only = 0;
    for (size_t s = 0; s < p->size_count; s++) {
        if (some(l, p->counts[s])) {
            kinds++;
            only = s;
        }
    }
    struct buy_line line = {.what = p->title,
                            .cost = p->cost,
                            .note = rack_note(l, p->from_rack, "more from the rack"),
                            .by_others = kinds == 0};
    if (kinds == 1) {
        line.size = p->sizes->s[only].words;
        line.count = p->counts[only];
        line.unit = "containers";
        line.price = p->prices[only];
    }
    add(l, line);
    for (size_t s = 0; kinds > 1 && s < p->size_count; s++) {
        if (some(l, p->counts[s])) {
            add(l, (struct buy_line){.size = p->sizes->s[s].words,
                                     .count = p->counts[s],
                                     .unit = "containers",
                                     .price = p->prices[s],
                                     .part = true});
        }
    }
}

static void add_finish(struct lister *l) {
    for (size_t i = 0; i < l->e->finish.product_count; i++) {
        add_product(l, &l->e->finish.products[i]);
    }
}

/* --- what is counted in pieces --- */

static void add_hardware(struct lister *l) {
    const struct estimate *const e = l->e;
    for (size_t i = 0; i < e->hardware.count; i++) {
        const struct hardware_buy *const b = &e->hardware.buys[i];
        const struct hardware *const h = &e->rates->hardware[b->hardware];
        const bool packs = !fig_none(b->packs);
        struct buy_line line = {.what = h->name.s, .unit = "pieces"};
        if (b->by_others) {
            line.count = b->needed;
            line.note = "by others: not bought here";
            line.by_others = true;
        } else {
            line.count = packs ? b->packs : b->bought;
            line.unit = packs ? "packs" : "pieces";
            line.size = packs ? pool_words(l->pool, "pack of %s",
                                           show_number(h->pack.amount, h->pack.decimals).text)
                              : "";
            line.cost = b->cost;
            line.price = b->price;
            const char *const each =
                packs && h->price_by.choice != PRICE_PER_PACK ? "price of a piece" : "";
            const char *const rack = rack_note(l, b->from_rack, "more from the rack");
            line.note = pool_words(l->pool, "%s%s%s", each,
                                   each[0] == '\0' || rack[0] == '\0' ? "" : "; ", rack);
            line.by_others = !some(l, b->bought);
        }
        add(l, line);
    }
}

static void add_consumables(struct lister *l) {
    const struct estimate *const e = l->e;
    for (size_t i = 0; i < e->costs.consumable_count; i++) {
        const struct consumable_figures *const c = &e->costs.consumables[i];
        add(l, (struct buy_line){.what = e->rates->consumables[c->consumable].name.s,
                                 .count = c->quantity,
                                 .unit = fig_same(c->quantity, e->quantities.all_leaves) ? "doors"
                                         : fig_same(c->quantity, e->quantities.hinges)   ? "hinges"
                                                                                         : "",
                                 .price = c->price,
                                 .cost = c->cost});
    }
}

static void add_made_elsewhere(struct lister *l, const struct leaf_figures *leaf, const char *what,
                               fig each) {
    if (!fig_none(each)) {
        const struct door *const door = leaf->door;
        add(l, (struct buy_line){
                   .what = pool_words(l->pool, "%s, %s", door->name, what),
                   .size = keep(l, show_size(door->width, door->height, l->e->job->unit)),
                   .count = leaf->pieces,
                   .unit = "doors",
                   .price = each,
                   .cost = tape_amount(&l->e->tape, leaf->pieces) == 1 ? each : (fig){0}});
    }
}

static void add_bought_in(struct lister *l) {
    const struct estimate *const e = l->e;
    for (size_t r = 0; r < e->quantities.count; r++) {
        const struct leaf_figures *const leaf = &e->quantities.leaves[r];
        const int32_t finish = leaf->door->construction->finish.index;
        add_made_elsewhere(l, leaf, leaf->door->style->name.s, leaf->bought_in);
        add_made_elsewhere(l, leaf, finish < 0 ? "" : e->rates->finishes[finish].name.s,
                           leaf->put_out);
    }
}

/* --- all of it --- */

/* A supplier each, in the order of the groups of cost. */
static const struct {
    const char *title;
    void (*add)(struct lister *);
} suppliers[BUY_GROUPS] = {
    [COST_LUMBER] = {"Lumber", add_lumber},
    [COST_SHEETS] = {"Sheets and banding", add_sheets},
    [COST_GLASS] = {"Glass", add_glass},
    [COST_FINISH] = {"Finish", add_finish},
    [COST_HARDWARE] = {"Hardware", add_hardware},
    [COST_CONSUMABLES] = {"Small supplies, as much as is used up", add_consumables},
    [COST_BOUGHT_IN] = {"Made or finished by others", add_bought_in},
};

bool buy_list_make(struct buy_list *list, struct pool *pool, const struct estimate *e) {
    struct lister l = {.list = list, .pool = pool, .e = e};
    *list = (struct buy_list){.total = e->purchase.total};
    for (int g = 0; g < BUY_GROUPS; g++) {
        const size_t first = list->line_count;
        suppliers[g].add(&l);
        if (list->line_count > first) {
            list->groups[list->group_count++] =
                (struct buy_group){.group = (enum cost_group)g,
                                   .title = suppliers[g].title,
                                   .first = first,
                                   .count = list->line_count - first,
                                   .total = e->purchase.spent[g]};
        }
    }
    return !list->failed && !pool_failed(pool);
}

void buy_list_clear(struct buy_list *list) {
    free(list->lines);
    *list = (struct buy_list){0};
}
