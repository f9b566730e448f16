/* SPDX-License-Identifier: MIT */
#include "report/words/buy_list.h"

#include "base/text.h"
#include "report/words/buy_lister.h"

#include <stdlib.h>
#include <string.h>

/* The noun without its s for one of it. */
static const char *unit_words(struct lister *l, const struct buy_line *line) {
    const bool one = tape_scaled(&l->e->tape, line->count, 6) == 1000000;
    return one && line->unit[0] != '\0'
               ? pool_words(l->pool, "%.*s", (int)strlen(line->unit) - 1, line->unit)
               : line->unit;
}

/* `22 boards`, `1 board`, `100 bf`. */
static const char *count_words(struct lister *l, const struct buy_line *line, fig count) {
    if (fig_none(count)) {
        return "";
    }
    const char *const unit = line->unit[0] == '\0' ? show_unit_name(l->e, count) : line->unit;
    return pool_words(l->pool, "%s%s%s", show_few(l->e, count).text, unit[0] == '\0' ? "" : " ",
                      unit);
}

void lister_add(struct lister *l, struct buy_line line) {
    struct buy_list *const list = l->list;
    list->lines = array_grow(list->lines, &list->room, list->line_count + 1, sizeof *list->lines,
                             &list->failed);
    if (!list->failed) {
        line.what = line.what == NULL ? "" : line.what;
        line.size = line.size == NULL ? "" : line.size;
        line.unit = line.unit == NULL ? "" : line.unit;
        line.ordered = line.ordered == NULL ? line.what : line.ordered;
        line.note = buy_note_words(l->pool, l->e, &line.why);
        line.unit = unit_words(l, &line);
        line.how_many = count_words(l, &line, line.count);
        line.ordered_many = line.by_parts           ? ""
                            : fig_none(line.beyond) ? line.how_many
                                                    : count_words(l, &line, line.beyond);
        list->lines[list->line_count++] = line;
    }
}

const char *lister_keep(struct lister *l, struct shown shown) {
    return pool_words(l->pool, "%s", shown.text);
}

const char *lister_thick(struct lister *l, const char *thickness) {
    return pool_words(l->pool, "%s thick", thickness);
}

bool lister_some(const struct lister *l, fig f) {
    return !fig_none(f) && tape_amount(&l->e->tape, f) != 0;
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
                lister_add(
                    l, (struct buy_line){
                           .size = lister_keep(l, show_size(part->shown_width, part->shown_height,
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
        const char *const name = glass->client_name.s;
        struct buy_line line = {
            .what = glass->name.s,
            .ordered = pool_words(l->pool, "%s, cut to size", name != NULL ? name : glass->name.s),
            .size = lister_thick(l, show_value(&glass->thickness, l->e->job->unit).text),
            .count = b->area,
            .cost = b->cost,
            .by_parts = true};
        buy_note_add(&line.why,
                     (struct buy_clause){.words = fig_none(b->stops)
                                                      ? "cut to size; the area is as charged"
                                                      : "cut to size, with its stops; the area is "
                                                        "as charged"});
        lister_add(l, line);
        add_panes(l, b->material);
    }
}

/* --- finish --- */

/* `12 more from the rack`; "" where nothing is. */
static const char *rack_note(struct lister *l, fig from_rack) {
    return lister_some(l, from_rack)
               ? pool_words(l->pool, "%s more from the rack", show_unit(l->e, from_rack).text)
               : "";
}

static void add_product(struct lister *l, const struct product *p) {
    size_t kinds = 0;
    size_t only = 0;
    for (size_t s = 0; s < p->size_count; s++) {
        if (lister_some(l, p->counts[s])) {
            kinds++;
            only = s;
        }
    }
    struct buy_line line = {.what = p->title, .cost = p->cost, .by_others = kinds == 0};
    buy_note_add(&line.why, (struct buy_clause){.words = rack_note(l, p->from_rack)});
    if (kinds == 1) {
        line.size = p->sizes->s[only].words;
        line.count = p->counts[only];
        line.unit = "containers";
        line.price = p->prices[only];
    }
    lister_add(l, line);
    for (size_t s = 0; kinds > 1 && s < p->size_count; s++) {
        if (lister_some(l, p->counts[s])) {
            lister_add(l, (struct buy_line){.size = p->sizes->s[s].words,
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
        struct buy_line line = {.what = h->name.s, .ordered = h->client_name.s, .unit = "pieces"};
        if (b->by_others) {
            line.count = b->needed;
            line.by_others = true;
            buy_note_add(&line.why, (struct buy_clause){.words = "by others: not bought here"});
        } else {
            line.count = packs ? b->packs : b->bought;
            line.unit = packs ? "packs" : "pieces";
            line.size = packs ? pool_words(l->pool, "pack of %s",
                                           show_number(h->pack.amount, h->pack.decimals).text)
                              : "";
            line.cost = b->cost;
            line.price = b->price;
            line.by_others = !lister_some(l, b->bought);
            const bool by_piece = packs && h->price_by.choice != PRICE_PER_PACK;
            buy_note_add(&line.why,
                         (struct buy_clause){.words = by_piece ? "price of a piece" : ""});
            buy_note_add(&line.why, (struct buy_clause){.words = rack_note(l, b->from_rack)});
            buy_note_add(&line.why,
                         (struct buy_clause){.words = "# on the doors, the rest to spare",
                                             .values = {b->needed},
                                             .more = b->bought,
                                             .than = b->needed});
        }
        lister_add(l, line);
    }
}

static void add_consumables(struct lister *l) {
    const struct estimate *const e = l->e;
    for (size_t i = 0; i < e->costs.consumable_count; i++) {
        const struct consumable_figures *const c = &e->costs.consumables[i];
        lister_add(
            l, (struct buy_line){.what = e->rates->consumables[c->consumable].name.s,
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
        lister_add(
            l, (struct buy_line){
                   .what = pool_words(l->pool, "%s, %s", door->name, what),
                   .size = lister_keep(l, show_size(door->width, door->height, l->e->job->unit)),
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
    [COST_LUMBER] = {"Lumber", lister_add_lumber},
    [COST_SHEETS] = {"Sheets and banding", lister_add_sheets},
    [COST_GLASS] = {"Glass", add_glass},
    [COST_FINISH] = {"Finish", add_finish},
    [COST_HARDWARE] = {"Hardware", add_hardware},
    [COST_CONSUMABLES] = {"Small supplies, as much as is used up", add_consumables},
    [COST_BOUGHT_IN] = {"Made or finished by others", add_bought_in},
};

/* Whether another line of the group would read the same to a supplier. */
static bool reads_like_another(const struct buy_list *list, size_t first, size_t at) {
    const struct buy_line *const line = &list->lines[at];
    for (size_t i = first; i < list->line_count; i++) {
        const struct buy_line *const other = &list->lines[i];
        if (i != at && !other->part && text_same(other->ordered, line->ordered) &&
            text_same(other->size, line->size)) {
            return true;
        }
    }
    return false;
}

/* The shop's own name stands behind the words that several lines have. */
static void tell_apart(struct lister *l, size_t first) {
    struct buy_list *const list = l->list;
    bool *const alike = pool_take(l->pool, list->line_count - first, sizeof *alike);
    for (size_t i = first; i < list->line_count && alike != NULL; i++) {
        alike[i - first] = !list->lines[i].part && reads_like_another(list, first, i);
    }
    for (size_t i = first; i < list->line_count && alike != NULL; i++) {
        struct buy_line *const line = &list->lines[i];
        if (alike[i - first] && !text_same(line->ordered, line->what)) {
            line->ordered = pool_words(l->pool, "%s (%s)", line->ordered, line->what);
        }
    }
}

bool buy_list_make(struct buy_list *list, struct pool *pool, const struct estimate *e) {
    struct lister l = {.list = list, .pool = pool, .e = e};
    *list = (struct buy_list){.total = e->purchase.total};
    for (int g = 0; g < BUY_GROUPS; g++) {
        const size_t first = list->line_count;
        suppliers[g].add(&l);
        if (list->line_count > first) {
            tell_apart(&l, first);
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
