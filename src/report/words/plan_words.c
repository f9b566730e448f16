/* SPDX-License-Identifier: MIT */
#include "report/words/plan_words.h"

#include <stdio.h>

/* --- alike --- */

/* Whether two boards, or sheets, of a plan are cut alike. */
typedef bool alike_same(const void *plan, size_t a, size_t b);

static struct alike *find_alike(struct pool *pool, const void *plan, size_t all, alike_same *same,
                                size_t *count) {
    struct alike *const list = pool_take(pool, all, sizeof *list);
    size_t next = 1;
    *count = 0;
    for (size_t i = 0; list != NULL && i < all; i++) {
        size_t first = 0;
        while (first < *count && !same(plan, list[first].first, i)) {
            first++;
        }
        if (first == *count) {
            list[(*count)++] = (struct alike){.first = i};
        }
        list[first].copies++;
    }
    for (size_t i = 0; i < *count; i++) {
        list[i].number = next;
        next += list[i].copies;
    }
    return list;
}

static bool boards_alike(const void *plan, size_t a, size_t b) {
    return board_same(plan, a, b);
}

static bool sheets_alike(const void *plan, size_t a, size_t b) {
    return sheet_same(plan, a, b);
}

struct alike *plan_alike_boards(struct pool *pool, const struct board_plan *plan, size_t *count) {
    return find_alike(pool, plan, plan->board_count, boards_alike, count);
}

struct alike *plan_alike_sheets(struct pool *pool, const struct sheet_plan *plan, size_t *count) {
    return find_alike(pool, plan, plan->sheet_count, sheets_alike, count);
}

struct shown plan_numbers(const struct alike *alike, const char *noun) {
    struct shown s;
    if (alike->copies == 1) {
        (void)snprintf(s.text, sizeof s.text, "%s %zu", noun, alike->number);
    } else {
        (void)snprintf(s.text, sizeof s.text, "%ss %zu %s %zu", noun, alike->number,
                       alike->copies == 2 ? "and" : "to", alike->number + alike->copies - 1);
    }
    return s;
}

const char *plan_sheet_noun(const struct sheets_plan *plan, size_t stock) {
    const struct rack_item *const item = rack_stock_row(&plan->rack, plan->sold, stock);
    return item == NULL ? (stock == SHEET_HALF ? "half sheet" : "sheet")
           : item->sawn ? "rack offcut"
                        : "rack sheet";
}

const char *plan_board_noun(const struct lumber_plan *plan, size_t stock) {
    const struct rack_item *const item = rack_stock_row(&plan->rack, plan->sold, stock);
    return item == NULL ? "board" : item->sawn ? "rack offcut" : "rack board";
}

/* --- sizes and names --- */

length plan_length(const struct estimate *e, int64_t size) {
    return length_of_millionths(size, e->job->unit);
}

struct shown plan_show(const struct estimate *e, int64_t size) {
    struct shown s;
    length_show(plan_length(e, size), e->job->unit, s.text, sizeof s.text);
    return s;
}

struct shown plan_show_size(const struct estimate *e, int64_t across, int64_t along) {
    return show_size(plan_length(e, across), plan_length(e, along), e->job->unit);
}

struct shown plan_show_left(const struct estimate *e, int64_t across, int64_t along) {
    const enum length_unit unit = e->job->unit;
    return show_size(length_by_tape(plan_length(e, across), unit),
                     length_by_tape(plan_length(e, along), unit), unit);
}

const char *plan_part_name(struct pool *pool, const struct plan_part *part) {
    const char *const id = part->door->name;
    const char *const kind =
        part->holds > 0 && part_is_rail(part->part->kind) ? "rail" : part_full_name(part->part);
    const char *const name =
        part->holds > 0 ? pool_format(pool, "%s blank (%lld %s%s)", id, (long long)part->holds,
                                      kind, part->holds == 1 ? "" : "s")
                        : pool_format(pool, "%s %s%s", id, kind,
                                      part->spare              ? " or spare"
                                      : part->part->staves > 1 ? " stave"
                                                               : "");
    return name == NULL ? "" : name;
}

/* --- the proof, the factor --- */

struct shown plan_proof_boards(const struct estimate *e, const struct lumber_buy *b) {
    const struct lumber_plan *const p = &b->plan;
    const bool one = tape_amount(&e->tape, p->boards) == 1;
    const bool rack = !fig_none(p->rack.pieces) && tape_amount(&e->tape, p->rack.pieces) > 0;
    struct shown s;
    (void)snprintf(s.text, sizeof s.text,
                   "%.8s board%s%s%.8s%s, %.15s at the price of a small lot; less than %.15s is "
                   "impossible",
                   show(e, p->boards).text, one ? "" : "s", rack ? ", " : "",
                   rack ? show(e, p->rack.pieces).text : "", rack ? " from the rack" : "",
                   show_money(e, p->at_price).text, show_money(e, p->bound).text);
    return s;
}

struct shown plan_proof_sheets(const struct estimate *e, const struct sheet_buy *b) {
    const struct sheets_plan *const p = &b->plan;
    const struct shown sheets = show_sheets(e, &b->by_plan);
    const bool least = tape_amount(&e->tape, p->gap) == 0;
    struct shown s;
    if (!fig_none(p->rack.charged) && tape_amount(&e->tape, p->rack.charged) > 0) {
        /* the planner counts by pieces, each of a worth that is rounded: to the cent it knows the
         * gap alone */
        const uint8_t decimals = e->tape.money_decimals;
        const int64_t paid = tape_scaled(&e->tape, b->by_plan.cost, decimals) +
                             tape_scaled(&e->tape, p->rack.charged, decimals);
        (void)snprintf(s.text, sizeof s.text, "%.48s, %.18s with worth; %s%.18s%s", sheets.text,
                       show_number(paid, decimals).text, least ? "proved least" : "at most ",
                       least ? "" : show_money(e, p->gap).text,
                       least ? "" : " more than the least");
    } else if (!fig_none(p->fewest)) {
        (void)snprintf(s.text, sizeof s.text,
                       least ? "%.40s; fewer than %.20s is impossible" : "%.40s; at least %.20s",
                       sheets.text, show(e, p->fewest).text);
    } else {
        (void)snprintf(s.text, sizeof s.text, "%.45s, %.15s; less than %.15s is impossible",
                       sheets.text, show_money(e, b->by_plan.cost).text,
                       show_money(e, p->bound).text);
    }
    return s;
}

struct shown plan_asks(const struct estimate *e, fig asks, const struct value *waste,
                       enum waste_as as) {
    struct shown s;
    (void)snprintf(s.text, sizeof s.text, "The plan asks for %.24s %s; the rates say %.20s %%.",
                   show_unit(e, asks).text, as == WASTE_ADDED ? "added" : "lost",
                   show_number(waste->amount, waste->decimals).text);
    return s;
}

struct shown plan_short(const struct estimate *e, fig short_of_plan) {
    struct shown s = {""};
    if (!fig_none(short_of_plan) && tape_amount(&e->tape, short_of_plan) > 0) {
        (void)snprintf(s.text, sizeof s.text,
                       "The plan needs %.24s more than the factor buys: buy by the plan.",
                       show_unit(e, short_of_plan).text);
    }
    return s;
}

const char *plan_prices(bool planned) {
    return planned ? "The plan prices the job." : "The factor prices the job.";
}
