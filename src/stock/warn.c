/* SPDX-License-Identifier: MIT */
#include "stock/warn.h"

#include "model/name.h"

static void warn(const struct calc *c, const char *id, const struct door *door,
                 const struct part *part, const char *what, length is, const char *stock,
                 length most, const char *remedy) {
    char size[32];
    char limit[32];
    problem_add(c->problems, SEVERITY_WARNING, id, door->row->place, "a %s is %s %s and %s %s; %s",
                part_kind_name(part->kind), length_show(is, c->units->lengths, size, sizeof size),
                what, stock, length_show(most, c->units->lengths, limit, sizeof limit), remedy);
}

/* in_plan: a plan has all parts of its lumber, cut of the rack maybe. */
static void warn_of_board(const struct calc *c, const struct door *door, const struct part *part,
                          bool in_plan) {
    const struct lumber *const lumber = &c->rates->lumber[part->material];
    const struct values *const lengths = &lumber->board_lengths;
    const struct values *const widths = &lumber->board_widths;
    if (part->thickness > lumber->thickness.amount) {
        warn(c, "part-too-thick", door, part, "thick", part->thickness, "its lumber",
             lumber->thickness.amount, "name thicker lumber, or a thinner door");
    }
    if (lengths->count > 0 && !in_plan) {
        const length most = lengths->v[lengths->count - 1].amount - 2 * lumber->end_trim.amount;
        if (part->rough_length > most) {
            warn(c, "part-too-long", door, part, "long, rough,", part->rough_length,
                 "the longest board stocked gives", most, "order longer boards for it");
        }
    }
    if (widths->count > 0 && !in_plan && part->staves == 1 &&
        part->rough_width > widths->v[widths->count - 1].amount) {
        warn(c, "part-too-wide", door, part, "wide, rough,", part->rough_width,
             "the widest board stocked is", widths->v[widths->count - 1].amount,
             "glue it up (a 'stave' of its style), or order wider boards");
    }
}

static void warn_of_sheet(const struct calc *c, const struct door *door, const struct part *part) {
    const struct sheet *const sheet = &c->rates->sheets[part->material];
    const length along = sheet->length.amount - 2 * sheet->edge_trim.amount;
    const length across = sheet->width.amount - 2 * sheet->edge_trim.amount;
    const bool fits = part->length <= along && part->width <= across;
    const bool turned = !sheet->grain && part->width <= along && part->length <= across;
    if (fits || turned) {
        return;
    }
    if (part->length > along) {
        warn(c, "panel-over-sheet", door, part, sheet->grain ? "long along the grain" : "long",
             part->length, "its sheet gives", along, "name a larger sheet, or make it of two");
    } else {
        warn(c, "panel-over-sheet", door, part, sheet->grain ? "wide across the grain" : "wide",
             part->width, "its sheet gives", across,
             sheet->grain ? "name a larger sheet, turn the grain, or make it of two"
                          : "name a larger sheet, or make it of two");
    }
}

/* Whether a plan that takes of the rack has all parts of that lumber. */
static bool is_in_plan(const struct lumber_list *lumber, int32_t material) {
    for (size_t i = 0; i < lumber->count; i++) {
        if (lumber->buys[i].material == material) {
            return !fig_none(lumber->buys[i].with_rack);
        }
    }
    return false;
}

/* Whether the plan that prices that sheet has all its parts. */
static bool is_planned(const struct sheet_list *sheets, int32_t material) {
    for (size_t i = 0; i < sheets->count; i++) {
        if (sheets->buys[i].material == material) {
            return sheets->buys[i].planned;
        }
    }
    return false;
}

void stock_warn(const struct calc *c, const struct doors *doors, const struct lumber_list *lumber,
                const struct sheet_list *sheets) {
    for (size_t d = 0; d < doors->count; d++) {
        const struct door *const door = &doors->doors[d];
        for (size_t i = 0; i < door->part_count; i++) {
            const struct part *const part = &door->parts[i];
            if (part->material_kind == MATERIAL_LUMBER) {
                warn_of_board(c, door, part, is_in_plan(lumber, part->material));
            } else if (part->material_kind == MATERIAL_SHEET &&
                       !is_planned(sheets, part->material)) {
                warn_of_sheet(c, door, part);
            }
        }
    }
}

/* --- plans --- */

static void ask_short(const struct calc *c, const char *kind, const struct text *name,
                      struct place place, const char *factor, const char *plan) {
    problem_add(
        c->problems, SEVERITY_WARNING, "plan-over-factor", place,
        "the waste of '%s' buys %s, and its cutting plan needs %s; buy by the plan, and price "
        "%s by plan or raise the waste",
        problem_quote(c->problems, name->s), factor, plan, kind);
}

/* `8 bf` */
static const char *amount_words(const struct calc *c, fig amount) {
    char text[32];
    const char *const words =
        pool_format(&c->problems->pool, "%s %s", tape_text(c->tape, amount, text, sizeof text),
                    unit_name(tape_unit(c->tape, amount)));
    return words == NULL ? "" : words;
}

/* `2 sheets and a half` */
static const char *sheets_words(const struct calc *c, const struct sheet_purchase_by *p) {
    const int64_t whole = tape_amount(c->tape, p->whole);
    const bool half = !fig_none(p->half) && tape_amount(c->tape, p->half) > 0;
    const char *const words =
        pool_format(&c->problems->pool, whole == 0 && half ? "half a sheet" : "%lld sheet%s%s",
                    (long long)whole, whole == 1 ? "" : "s", half ? " and a half" : "");
    return words == NULL ? "" : words;
}

/* Whether the factor is what the job is priced by, and buys less than the plan needs. */
static bool is_short(const struct calc *c, bool planned, fig short_of_plan) {
    return !planned && !fig_none(short_of_plan) && tape_amount(c->tape, short_of_plan) > 0;
}

/* A waste factor knows areas, and whether a part fits an offcut nobody knows without a plan. */
static void ask_unused(const struct calc *c, const struct sheet_buy *b) {
    const struct rack *const rack = &c->rates->rack;
    const size_t i = rack_next(rack, NAME_SHEET, b->material, 0);
    if (rack_has(rack, NAME_SHEET, b->material) &&
        c->rates->shop.sheets_by.choice == PRICED_BY_FACTOR) {
        problem_add(c->problems, SEVERITY_WARNING, "rack-by-factor", rack->items[i].what.place,
                    "'%s' is on the rack and none of it is used: sheets are priced by factor, "
                    "which counts areas and no pieces; price sheets by plan, or accept that it "
                    "stays there",
                    problem_quote(c->problems, rack->items[i].what.s));
    }
}

/* Without a plan nobody knows what can be cut of the rack. */
static void ask_unplanned(const struct calc *c, const struct lumber_buy *b) {
    const struct rack *const rack = &c->rates->rack;
    const size_t i = rack_next(rack, NAME_LUMBER, b->material, 0);
    if (rack_has(rack, NAME_LUMBER, b->material) && b->plan.no_plan_reason != NULL &&
        c->rates->shop.lumber_by.choice == PRICED_BY_FACTOR) {
        problem_add(c->problems, SEVERITY_WARNING, "rack-no-plan", rack->items[i].what.place,
                    "'%s' is on the rack and none of it is used: it has no cutting plan, as %s; "
                    "stock boards for it, or accept that it stays there",
                    problem_quote(c->problems, rack->items[i].what.s), b->plan.no_plan_reason);
    }
}

void plan_warn(const struct calc *c, const struct lumber_list *lumber,
               const struct sheet_list *sheets) {
    for (size_t i = 0; i < lumber->count; i++) {
        const struct lumber_buy *const b = &lumber->buys[i];
        const struct lumber *const l = &c->rates->lumber[b->material];
        if (is_short(c, b->planned, b->short_of_plan)) {
            ask_short(c, "lumber", &l->name, l->waste.place, amount_words(c, b->by_factor.bought),
                      amount_words(c, b->by_plan.bought));
        }
        ask_unplanned(c, b);
    }
    for (size_t i = 0; i < sheets->count; i++) {
        const struct sheet_buy *const b = &sheets->buys[i];
        const struct sheet *const s = &c->rates->sheets[b->material];
        if (is_short(c, b->planned, b->short_of_plan)) {
            ask_short(c, "sheets", &s->name, s->waste.place, sheets_words(c, &b->by_factor),
                      sheets_words(c, &b->by_plan));
        }
        ask_unused(c, b);
    }
}
