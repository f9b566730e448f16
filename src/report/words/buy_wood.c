/* SPDX-License-Identifier: MIT */
/* Lumber with the boards of its plan, sheets, banding. */
#include "report/words/buy_lister.h"
#include "report/words/plan_words.h"
#include "report/words/planned.h"

#include <string.h>

/* The boards of the plan by size: what to pick from the pile. all: of what is ordered. */
static void add_boards(struct lister *l, const struct lumber_plan *p, bool all) {
    const char *what = all ? "" : "among it";
    for (size_t s = 0; p->no_plan_reason == NULL && s < p->sold; s++) {
        const struct cut_stock *const stock = &p->job.stocks[s];
        if (lister_some(l, p->counts[s])) {
            lister_add(
                l, (struct buy_line){
                       .ordered = what,
                       .size = lister_keep(l, plan_show_size(l->e, stock->width, stock->length)),
                       .count = p->counts[s],
                       .unit = "boards",
                       .part = true});
            what = "";
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
        if (lister_some(l, rack->taken[i])) {
            words = pool_words(l->pool, "%s%s%s %s", words, words[0] == '\0' ? "" : ", ",
                               show(l->e, rack->taken[i]).text, size);
        }
    }
    return words[0] == '\0' ? "" : pool_words(l->pool, "from the rack: %s", words);
}

/* What the plan needs beyond the factor. */
static struct buy_clause short_clause(fig short_of_plan) {
    return (struct buy_clause){.words = fig_none(short_of_plan)
                                            ? ""
                                            : "the plan needs # more than the factor buys: buy by "
                                              "the plan",
                               .values = {short_of_plan},
                               .more = short_of_plan};
}

/* From what is needed to what is ordered, and how the boards that stand below are to it. */
static struct buy_note lumber_note(struct lister *l, const struct lumber_buy *b) {
    const struct purchase_by *const p = &b->priced;
    const bool minimum = l->e->rates->lumber[b->material].minimum.set;
    const bool planned = b->plan.no_plan_reason == NULL;
    struct buy_note note = {.count = 0};
    if (planned) {
        buy_note_add(&note, (struct buy_clause){.words = words_of_rack(l, &b->plan.rack)});
    }
    if (!lister_some(l, p->bought)) {
        return note;
    }
    if (planned) {
        buy_note_add(&note, short_clause(b->short_of_plan));
        buy_note_add(&note, (struct buy_clause){.words = b->planned ? "" : "by the waste factor",
                                                .more = b->by_factor.as_sold,
                                                .than = b->by_plan.as_sold});
    }
    if (minimum) {
        buy_note_add(&note, (struct buy_clause){.words = "# with waste, the yard sells no less "
                                                         "than #",
                                                .values = {p->as_sold, p->needed},
                                                .more = p->needed,
                                                .than = p->as_sold});
    }
    if (!fig_none(p->cost_as_needed)) {
        buy_note_add(
            &note, (struct buy_clause){.words = "# needed, # cost less: #, not #",
                                       .values = {p->needed, p->bought, p->cost, p->cost_as_needed},
                                       .more = p->bought,
                                       .than = p->needed});
    }
    if (planned) {
        buy_note_add(&note, (struct buy_clause){.words = "the boards are those of the cutting "
                                                         "plan, #",
                                                .values = {b->plan.bought}});
    }
    return note;
}

void lister_add_lumber(struct lister *l) {
    for (size_t i = 0; i < l->e->lumber.count; i++) {
        const struct lumber_buy *const b = &l->e->lumber.buys[i];
        const struct planned p = planned_lumber(l->e, i);
        const bool nothing = !lister_some(l, b->priced.bought);
        const int64_t bought = tape_scaled(&l->e->tape, b->priced.bought, 6);
        const int64_t by_plan =
            p.no_plan_reason != NULL ? 0 : tape_scaled(&l->e->tape, b->plan.bought, 6);
        lister_add(l,
                   (struct buy_line){.what = p.name,
                                     .ordered = l->e->rates->lumber[b->material].client_name.s,
                                     .size = strchr(p.thickness, '/') != NULL /* 4/4 says it all */
                                                 ? p.thickness
                                                 : lister_thick(l, p.thickness),
                                     .count = nothing ? (fig){0} : b->priced.bought,
                                     .price = nothing ? (fig){0} : b->priced.price,
                                     .cost = b->priced.cost,
                                     .why = lumber_note(l, b),
                                     .by_others = nothing,
                                     .beyond = by_plan > bought ? b->plan.bought : (fig){0}});
        add_boards(l, &b->plan, by_plan >= bought);
    }
}

/* `1/4 x 49 x 97`. */
static const char *sheet_size(struct lister *l, const struct sheet *s, length along) {
    const enum length_unit unit = l->e->job->unit;
    return pool_words(l->pool, "%s x %s", show_value(&s->thickness, unit).text,
                      show_size(s->width.amount, along, unit).text);
}

/* Words of a sheet that the shop bands may go on with that: `birch plywood, banded`; the supplier
 * sells it bare. */
static const char *ordered_sheet(struct lister *l, const struct sheet *s) {
    const char *const words = s->client_name.s;
    return words == NULL || s->banding < 0
               ? words
               : pool_words(l->pool, "%.*s", (int)strcspn(words, ","), words);
}

static void add_sheet(struct lister *l, const struct sheet_buy *b, const struct planned *p) {
    const struct sheet *const s = &l->e->rates->sheets[b->material];
    const bool whole = lister_some(l, b->priced.whole);
    const bool half = lister_some(l, b->priced.half);
    const char *const size = sheet_size(l, s, s->length.amount);
    const char *const half_size = sheet_size(l, s, s->length.amount / 2);
    struct buy_line line = {.what = p->name,
                            .ordered = ordered_sheet(l, s),
                            .cost = b->priced.cost,
                            .by_others = !whole && !half};
    if (b->planned) {
        buy_note_add(&line.why, (struct buy_clause){.words = words_of_rack(l, &b->plan.rack)});
    } else if (p->no_plan_reason == NULL) {
        buy_note_add(&line.why, short_clause(p->short_of_plan));
        buy_note_add(&line.why, (struct buy_clause){
                                    .words = "by the waste factor; by the cutting plan # would do",
                                    .values = {b->by_plan.cost},
                                    .more = b->by_factor.bought,
                                    .than = b->by_plan.bought});
    }
    if (whole != half) {
        line.size = whole ? size : half_size;
        line.count = whole ? b->priced.whole : b->priced.half;
        line.unit = whole ? "sheets" : "half sheets";
        line.price = whole ? b->price : b->half_price;
    }
    lister_add(l, line);
    if (whole && half) {
        lister_add(l, (struct buy_line){.size = size,
                                        .count = b->priced.whole,
                                        .unit = "sheets",
                                        .price = b->price,
                                        .part = true});
        lister_add(l, (struct buy_line){.size = half_size,
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

void lister_add_sheets(struct lister *l) {
    const struct estimate *const e = l->e;
    for (size_t i = 0; i < e->sheets.count; i++) {
        const struct planned p = planned_sheet(e, i);
        add_sheet(l, &e->sheets.buys[i], &p);
    }
    for (size_t i = 0; i < e->banding.count; i++) {
        const struct banding_buy *const b = &e->banding.buys[i];
        const struct banding *const kind = &e->rates->bandings[b->banding];
        const bool rolls = !fig_none(b->rolls);
        struct buy_line line = {.what = kind->name.s,
                                .size = rolls ? roll_words(l, kind) : "",
                                .count = rolls ? b->rolls : b->needed,
                                .unit = rolls ? "rolls" : "",
                                .price = b->price,
                                .cost = b->cost};
        if (rolls) {
            buy_note_add(&line.why,
                         (struct buy_clause){.words = "# needed", .values = {b->needed}});
        }
        lister_add(l, line);
    }
}
