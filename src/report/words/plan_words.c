/* SPDX-License-Identifier: MIT */
#include "report/words/plan_words.h"

#include <stdio.h>

/* --- alike --- */

static void number(struct alike *list, size_t count) {
    size_t next = 1;
    for (size_t i = 0; i < count; i++) {
        list[i].number = next;
        next += list[i].copies;
    }
}

struct alike *plan_alike_boards(struct pool *pool, const struct board_plan *plan, size_t *count) {
    struct alike *const list = pool_take(pool, plan->board_count, sizeof *list);
    *count = 0;
    for (size_t b = 0; list != NULL && b < plan->board_count; b++) {
        size_t same = 0;
        while (same < *count && !board_same(plan, list[same].first, b)) {
            same++;
        }
        if (same == *count) {
            list[(*count)++] = (struct alike){.first = b};
        }
        list[same].copies++;
    }
    number(list, *count);
    return list;
}

struct alike *plan_alike_sheets(struct pool *pool, const struct sheet_plan *plan, size_t *count) {
    struct alike *const list = pool_take(pool, plan->sheet_count, sizeof *list);
    *count = 0;
    for (size_t b = 0; list != NULL && b < plan->sheet_count; b++) {
        size_t same = 0;
        while (same < *count && !sheet_same(plan, list[same].first, b)) {
            same++;
        }
        if (same == *count) {
            list[(*count)++] = (struct alike){.first = b};
        }
        list[same].copies++;
    }
    number(list, *count);
    return list;
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

/* --- sizes and names --- */

length plan_length(const struct estimate *e, int64_t size) {
    return e->job->unit == LENGTH_INCH ? size / 10 * 254 + size % 10 * 254 / 10 : size;
}

struct shown plan_show(const struct estimate *e, int64_t size) {
    struct shown s;
    length_show(plan_length(e, size), e->job->unit, s.text, sizeof s.text);
    return s;
}

struct shown plan_show_size(const struct estimate *e, int64_t across, int64_t along) {
    return show_size(plan_length(e, across), plan_length(e, along), e->job->unit);
}

const char *plan_part_name(struct pool *pool, const struct plan_part *part) {
    const char *const name =
        pool_format(pool, "%s %s%s", part->door->row->id.s, part_kind_name(part->part->kind),
                    part->part->staves > 1 ? " stave" : "");
    return name == NULL ? "" : name;
}

/* --- the proof, the factor --- */

struct shown plan_proof_boards(const struct estimate *e, const struct lumber_buy *b) {
    const struct lumber_plan *const p = &b->plan;
    const bool one = tape_amount(&e->tape, p->boards) == 1;
    struct shown s;
    (void)snprintf(s.text, sizeof s.text,
                   "%.8s board%s, %.15s at the price of a small lot; less than %.15s is impossible",
                   show(e, p->boards).text, one ? "" : "s", show_money(e, p->at_price).text,
                   show_money(e, p->bound).text);
    return s;
}

struct shown plan_proof_sheets(const struct estimate *e, const struct sheet_buy *b) {
    const struct sheets_plan *const p = &b->plan;
    const struct shown sheets = show_sheets(e, &b->by_plan);
    const bool least = tape_amount(&e->tape, p->gap) == 0;
    struct shown s;
    if (!fig_none(p->fewest)) {
        (void)snprintf(s.text, sizeof s.text,
                       least ? "%.40s; fewer than %.20s is impossible" : "%.40s; at least %.20s",
                       sheets.text, show(e, p->fewest).text);
    } else {
        (void)snprintf(s.text, sizeof s.text, "%.36s, %.15s; less than %.15s is impossible",
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
