/* SPDX-License-Identifier: MIT */
#include "labor/warn.h"

#include "model/name.h"

/* The shop's limit in the unit and at the decimals of films on the tape. */
static int64_t film_limit(const struct calc *c, uint8_t *decimals) {
    const bool metric = c->units->film == UNIT_UM;
    *decimals = metric ? 3 : 4;
    return metric ? c->rates->limits.dry_film.amount : c->rates->limits.dry_film.amount * 100 / 254;
}

static void warn_of_film(const struct calc *c, const struct batch *b) {
    uint8_t decimals;
    char is[32];
    char most[32];
    if (!c->rates->limits.dry_film.set || fig_none(b->dry_film)) {
        return;
    }
    const int64_t limit = film_limit(c, &decimals);
    if (tape_scaled(c->tape, b->dry_film, decimals) <= limit) {
        return;
    }
    const struct finish *const finish = &c->rates->finishes[b->finish];
    problem_add(
        c->problems, SEVERITY_WARNING, "film-thick", finish->name.place,
        "finish '%s' is %s %s dry in all, more than the shop's %s; most data sheets warn of thick "
        "films: fewer or thinner coats?",
        problem_quote(c->problems, finish->name.s),
        figure_text(tape_scaled(c->tape, b->dry_film, 1), 1, is, sizeof is),
        unit_name(c->units->film),
        figure_text(c->units->film == UNIT_UM ? limit / 100 : limit / 1000, 1, most, sizeof most));
}

/* Hundredths of minutes at the gun for all coats of a batch. */
static int64_t minutes_at_gun(const struct calc *c, const struct finish_list *finish,
                              const struct labor *labor, const struct batch *batch) {
    int64_t minutes = 0;
    for (size_t i = 0; i < labor->operation_count; i++) {
        const struct operation_figures *const o = &labor->operations[i];
        const struct operation *const op = &c->rates->operations[o->operation];
        if (op->per.choice != DRIVER_SPRAYED_PER_COAT || op->machine < 0) {
            continue;
        }
        for (size_t n = 0; n < batch->row_count; n++) {
            const size_t r = finish->rows[batch->first_row + n];
            if (!fig_none(o->shares[r].run)) {
                minutes += tape_amount(c->tape, c->quantities->leaves[r].pieces) *
                           tape_scaled(c->tape, o->shares[r].run, 2);
            }
        }
    }
    return minutes;
}

static void warn_of_pot_life(const struct calc *c, const struct finish_list *finish,
                             const struct labor *labor, const struct batch *b) {
    int64_t coats = 0;
    for (size_t i = 0; i < b->coat_count; i++) {
        coats += b->coats[i].way->by_hand ? 0 : tape_amount(c->tape, b->coats[i].times);
    }
    for (size_t i = 0; coats > 0 && i < b->coat_count; i++) {
        const struct coating *const coating = &c->rates->coatings[b->coats[i].coating];
        const int64_t times = tape_amount(c->tape, b->coats[i].times);
        const int64_t mixes =
            fig_none(b->coats[i].mixes) ? times : tape_amount(c->tape, b->coats[i].mixes);
        if (!coating->pot_life.set || times == 0 || mixes < times || b->coats[i].way->by_hand) {
            continue;
        }
        /* minutes of one mix in hundredths, against hours at their own decimals */
        const int64_t one = minutes_at_gun(c, finish, labor, b) / coats / (mixes / times);
        int64_t life = coating->pot_life.amount * 6000;
        for (uint8_t d = 0; d < coating->pot_life.decimals; d++) {
            life /= 10;
        }
        if (one > life) {
            char minutes[32];
            char hours[32];
            problem_add(c->problems, SEVERITY_WARNING, "pot-life-short", coating->pot_life.place,
                        "a mix of '%s' takes %s minutes to spray and keeps %s hours; mix less at "
                        "once (a smaller 'mix size')",
                        problem_quote(c->problems, coating->name.s),
                        figure_text(one / 100, 0, minutes, sizeof minutes),
                        figure_text(coating->pot_life.amount, coating->pot_life.decimals, hours,
                                    sizeof hours));
        }
    }
}

/* Whether a product of that tinted coating is needed as the rack has it, without a color. */
static bool needs_untinted(const struct finish_list *finish, int32_t coating) {
    for (size_t p = 0; p < finish->product_count; p++) {
        if (finish->products[p].coating == coating && finish->products[p].color == NULL) {
            return true;
        }
    }
    return false;
}

/* A can of the rack without a color stays there where the job needs that coating in colors, of
 * which the rack has none: asked once a can, of the first such color. */
static void warn_of_rack(const struct calc *c, const struct finish_list *finish,
                         const struct rack_item *can) {
    for (size_t p = 0; p < finish->product_count; p++) {
        const struct product *const product = &finish->products[p];
        if (product->coating == can->index && product->color != NULL &&
            rack_find(&c->rates->rack, NAME_COATING, can->index, product->color) == NULL) {
            problem_add(c->problems, SEVERITY_WARNING, "rack-no-color", can->what.place,
                        "'%s' of the rack has no color, and the job needs it in '%s'; none of it "
                        "is used: write its color beside it, or accept that it stays there",
                        problem_quote(c->problems, can->what.s),
                        problem_quote(c->problems, product->color));
            return;
        }
    }
}

void finish_warn(const struct calc *c, const struct finish_list *finish,
                 const struct labor *labor) {
    for (size_t b = 0; b < finish->batch_count; b++) {
        warn_of_film(c, &finish->batches[b]);
        warn_of_pot_life(c, finish, labor, &finish->batches[b]);
    }
    for (size_t i = 0; i < c->rates->rack.count; i++) {
        const struct rack_item *const can = &c->rates->rack.items[i];
        if (can->kind == NAME_COATING && can->color.s == NULL && can->left.amount > 0 &&
            !needs_untinted(finish, can->index)) {
            warn_of_rack(c, finish, can);
        }
    }
}

/* --- shapes --- */

/* Whether an operation counted by that driver is done to a row. */
static bool is_worked(const struct calc *c, const struct labor *labor, enum driver driver,
                      size_t row) {
    for (size_t i = 0; i < labor->operation_count; i++) {
        const struct operation_figures *const o = &labor->operations[i];
        if (c->rates->operations[o->operation].per.choice == (int)driver &&
            !fig_none(o->shares[row].run)) {
            return true;
        }
    }
    return false;
}

void shapes_warn(const struct calc *c, const struct labor *labor) {
    for (size_t r = 0; r < c->quantities->count; r++) {
        const struct door *const door = c->quantities->leaves[r].door;
        if (door->arches > 0 && !is_worked(c, labor, DRIVER_ARCH, r)) {
            problem_add(c->problems, SEVERITY_WARNING, "arch-unpriced", door->row->arch.place,
                        "nothing is counted for the arch of door '%s': style '%s' lists no "
                        "operation per arch; add one, or take the arch away",
                        problem_quote(c->problems, door->row->id.s),
                        problem_quote(c->problems, door->style->name.s));
        }
        if (door_pieces(door, PART_BAR) > 0 && !is_worked(c, labor, DRIVER_BAR, r) &&
            !is_worked(c, labor, DRIVER_BAR_RUN, r)) {
            problem_add(c->problems, SEVERITY_WARNING, "bars-unpriced",
                        door->row->lights_wide.place,
                        "nothing is counted for the bars of door '%s': style '%s' lists no "
                        "operation per bar; add one, or take the bars away",
                        problem_quote(c->problems, door->row->id.s),
                        problem_quote(c->problems, door->style->name.s));
        }
    }
}

/* --- operations besides --- */

static const struct operation_figures *find_operation(const struct labor *labor,
                                                      int32_t operation) {
    for (size_t i = 0; i < labor->operation_count; i++) {
        if (labor->operations[i].operation == operation) {
            return &labor->operations[i];
        }
    }
    return NULL;
}

static void ask_also(const struct calc *c, const struct reference *also, const char *why) {
    problem_add(
        c->problems, SEVERITY_WARNING, "without-effect", also->name.place,
        "operation '%s' has no effect here: %s; take it away, or check what it is counted by",
        problem_quote(c->problems, also->name.s), why);
}

/* Why an operation that a row adds does nothing more there; NULL: it does. o: it at work in the
 * job; NULL: nowhere. */
static const char *no_work_why(const struct calc *c, const struct operation_figures *o,
                               const struct door *door, size_t row, int32_t operation) {
    const int32_t finish = door->construction->finish.index;
    if (references_hold(&c->rates->shop.operations, operation) ||
        references_hold(&c->job->also, operation)) {
        return "every door has it";
    }
    if (references_hold(&door->style->operations, operation) ||
        (finish >= 0 && references_hold(&c->rates->finishes[finish].operations, operation))) {
        return "the row's style or finish has it";
    }
    return o == NULL || fig_none(o->shares[row].person)
               ? "the row has nothing that it is counted by"
               : NULL;
}

void also_warn(const struct calc *c, const struct labor *labor) {
    for (size_t i = 0; i < c->job->also.count; i++) {
        const struct reference *const also = &c->job->also.r[i];
        if (references_hold(&c->rates->shop.operations, also->index)) {
            ask_also(c, also, "the shop has it for every job");
        } else if (find_operation(labor, also->index) == NULL) {
            ask_also(c, also, "no door has what it is counted by");
        }
    }
    for (size_t r = 0; r < c->quantities->count; r++) {
        const struct door *const door = c->quantities->leaves[r].door;
        for (size_t i = 0; i < door->row->also.count; i++) {
            const struct reference *const also = &door->row->also.r[i];
            const char *const why =
                no_work_why(c, find_operation(labor, also->index), door, r, also->index);
            if (why != NULL) {
                ask_also(c, also, why);
            }
        }
    }
}
