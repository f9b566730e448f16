/* SPDX-License-Identifier: MIT */
/* An operation is worked out in three steps: what it does to each row, what it takes in all, what
 * of that each row carries. */
#include "labor/labor.h"

#include "labor/plans.h"
#include "labor/run.h"
#include "labor/setup.h"
#include "labor/sums.h"

#include <stdlib.h>

struct floor {
    struct labor *labor;
    struct tape *tape;
    const struct measures *m;
    const struct rates *rates;
    const struct quantities *q;
    const struct finish_list *finish;
    struct problems *problems;
    fig lumber_bought, sheets_bought; /* none when nothing is */
    fig boards, cuts;                 /* of the cutting plans; none without */
    fig *leaf_lumber, *leaf_sheet;    /* net of a leaf, for shares of what the job has as a whole */
    fig *leaf_parts;                  /* its parts, likewise */
    fig *pieces, *each;               /* room for totals over the rows */
    bool *applies;
};

static fig ratio(const struct floor *f, const char *what, enum unit unit, figs over, figs under) {
    return fig_ratio(f->tape, what, unit, over, under);
}

/* --- what an operation does to a row
 * ----------------------------------------------------------------------------------- */

/* An operation works on a row that its style, its finish or the shop lists it for. */
static bool row_has(const struct floor *f, size_t row, int32_t operation) {
    const struct door *const door = f->q->leaves[row].door;
    if (sums_listed(&f->rates->shop.operations, operation) ||
        sums_listed(&door->style->operations, operation)) {
        return true;
    }
    return door->construction.finish.index >= 0 &&
           sums_listed(&f->rates->finishes[door->construction.finish.index].operations, operation);
}

/* --- what it takes in all
 * ------------------------------------------------------------------------------------------------
 */

static fig rows_total(const struct floor *f, const struct operation_figures *o, const char *what,
                      enum unit unit, fig (*pick)(const struct operation_share *)) {
    for (size_t r = 0; r < f->q->count; r++) {
        f->pieces[r] = f->q->leaves[r].pieces;
        f->each[r] = pick(&o->shares[r]);
    }
    return fig_total(f->tape, what, unit, f->pieces, f->each, f->q->count);
}

static fig pick_run(const struct operation_share *s) {
    return s->run;
}
static fig pick_basis(const struct operation_share *s) {
    return s->basis;
}

static bool total(const struct floor *f, struct operation_figures *o) {
    const struct operation *const op = &f->rates->operations[o->operation];
    bool held = true;
    o->machine_minutes = o->run;
    if (op->setup.set) {
        const int64_t setups = setup_count(op, f->q, f->applies, f->finish, f->rates, &held);
        const fig each = measures_given(f->tape, f->m, "set-up", &op->setup);
        o->setups = tape_constant(f->tape, "set-ups", UNIT_COUNT, 0, setups,
                                  "counted from the door list by the operation's rule");
        o->setup_minutes =
            ratio(f, "set-up minutes", UNIT_MIN, (figs){{o->setups, each}}, (figs){{{0}}});
        o->machine_minutes = fig_plus(f->tape, "machine minutes", o->run, o->setup_minutes);
    }
    const fig hands = measures_given(f->tape, f->m, "hands", &op->hands);
    const struct shop *const shop = &f->rates->shop;
    const fig allowance = measures_given(f->tape, f->m, "allowance", &shop->allowance);
    figs over = {{o->machine_minutes, hands}};
    figs under = {{{0}}};
    if (!fig_none(allowance) && shop->allowance_on.choice == ALLOWANCE_ADDED) {
        over.f[2] = fig_plus(f->tape, "work and allowance", f->m->hundred, allowance);
        under.f[0] = f->m->hundred;
    } else if (!fig_none(allowance)) {
        over.f[2] = f->m->hundred;
        under.f[0] =
            fig_plus(f->tape, "work, percent of shift", f->m->hundred, fig_minus(allowance));
    }
    o->person_minutes = ratio(f, "person-minutes", UNIT_MIN, over, under);
    const fig rate = measures_given(f->tape, f->m, "labor rate",
                                    op->labor_rate.set ? &op->labor_rate : &shop->labor_rate);
    o->labor =
        ratio(f, "labor", UNIT_MONEY, (figs){{o->person_minutes, rate}}, (figs){{f->m->sixty}});
    o->cost = o->labor;
    if (op->machine >= 0 && f->rates->machines[op->machine].rate.set) {
        const fig hour =
            measures_given(f->tape, f->m, "machine rate", &f->rates->machines[op->machine].rate);
        o->machine = ratio(f, "machine", UNIT_MONEY, (figs){{o->machine_minutes, hour}},
                           (figs){{f->m->sixty}});
        o->cost = fig_plus(f->tape, "labor and machine", o->labor, o->machine);
    }
    return held;
}

/* --- what each row carries
 * ------------------------------------------------------------------------------------------------
 */

static void share(const struct floor *f, struct operation_figures *o) {
    fig all = o->run;
    for (size_t r = 0; r < f->q->count && !fig_none(o->job_count); r++) {
        if (!fig_none(o->shares[r].basis)) {
            const enum unit unit = (enum unit)tape_figure(f->tape, o->shares[r].basis)->unit;
            all = rows_total(f, o, "shared by, the job", unit, pick_basis);
            break;
        }
    }
    for (size_t r = 0; r < f->q->count; r++) {
        struct operation_share *const s = &o->shares[r];
        if (fig_none(s->basis)) {
            continue;
        }
        tape_about_again(f->tape, f->q->leaves[r].subject);
        s->person = ratio(f, "person-minutes, share", UNIT_MIN,
                          (figs){{o->person_minutes, s->basis}}, (figs){{all}});
        s->cost = ratio(f, "operation cost, share", UNIT_MONEY, (figs){{o->cost, s->basis}},
                        (figs){{all}});
    }
}

/* Operations that the job has as a whole: their count is the job's, each row carries by its own
 * doors, lumber or sheet area. */
static bool job_driver(const struct floor *f, struct operation_figures *o, enum driver driver) {
    const fig *by = NULL;
    if (driver == DRIVER_JOB) {
        o->job_count = f->m->one;
    } else if (driver == DRIVER_LUMBER) {
        o->job_count = f->lumber_bought;
        by = f->leaf_lumber;
    } else if (driver == DRIVER_SHEET) {
        o->job_count = f->sheets_bought;
        by = f->leaf_sheet;
    } else if (driver == DRIVER_BOARD) {
        o->job_count = f->boards;
        by = f->leaf_lumber;
    } else if (driver == DRIVER_CUT) {
        o->job_count = f->cuts;
        by = f->leaf_parts;
    } else {
        return false;
    }
    for (size_t r = 0; r < f->q->count; r++) {
        o->shares[r].basis =
            !f->applies[r] ? (fig){0} : (by == NULL ? f->q->leaves[r].driver[DRIVER_DOOR] : by[r]);
    }
    return true;
}

static bool start(const struct floor *f, struct operation_figures *o) {
    const struct operation *const op = &f->rates->operations[o->operation];
    const enum driver driver = (enum driver)op->per.choice;
    bool works = false;
    for (size_t r = 0; r < f->q->count; r++) {
        f->applies[r] = row_has(f, r, o->operation);
        works = works || f->applies[r];
    }
    const uint32_t subject = tape_about(f->tape, op->name.s);
    if (!works) {
        return false;
    }
    run_rates(f->tape, f->m, op);
    if (job_driver(f, o, driver)) {
        if (fig_none(o->job_count)) {
            return false;
        }
        const fig passes = measures_given(f->tape, f->m, "passes", &op->passes);
        const fig minutes = measures_given(f->tape, f->m, "minutes each", &op->minutes);
        const fig together = measures_given(f->tape, f->m, "worked on at once", &op->together);
        o->run = ratio(f, "run minutes, the job", UNIT_MIN, (figs){{o->job_count, minutes, passes}},
                       (figs){{together}});
        return true;
    }
    works = false;
    for (size_t r = 0; r < f->q->count; r++) {
        const struct leaf_figures *const leaf = &f->q->leaves[r];
        f->applies[r] = f->applies[r] && !fig_none(leaf->driver[driver]);
        if (f->applies[r]) {
            tape_about_again(f->tape, leaf->subject);
            o->shares[r].count = leaf->driver[driver];
            run_leaf(&o->shares[r], f->tape, f->m, f->rates, op, leaf, f->problems);
            works = true;
        }
    }
    tape_about_again(f->tape, subject);
    if (works) {
        o->run = rows_total(f, o, "run minutes, the job", UNIT_MIN, pick_run);
    }
    return works;
}

/* Lumber and sheets bought, and what of each kind a leaf takes: the drivers that the job has as a
 * whole. */
static void job_drivers(struct floor *f, const struct lumber_list *lumber,
                        const struct sheet_list *sheets, fig *terms) {
    tape_about_again(f->tape, 0);
    size_t n = 0;
    for (size_t i = 0; i < lumber->count; i++) {
        terms[n++] = lumber->buys[i].bought;
    }
    if (n > 0) {
        const enum unit unit = (enum unit)tape_figure(f->tape, terms[0])->unit;
        f->lumber_bought = fig_sum(f->tape, "lumber bought in all", unit, terms, n);
    }
    n = 0;
    for (size_t i = 0; i < sheets->count; i++) {
        terms[n++] = sheets->buys[i].whole;
        terms[n++] = sheets->buys[i].half;
    }
    if (n > 0) {
        f->sheets_bought = fig_sum(f->tape, "sheets bought in all", UNIT_COUNT, terms, n);
    }
    plans_count(f->tape, lumber, sheets, terms, &f->boards, &f->cuts);
    for (size_t r = 0; r < f->q->count; r++) {
        const struct leaf_figures *const leaf = &f->q->leaves[r];
        f->leaf_parts[r] = leaf->driver[DRIVER_PART];
        fig wood[MOST_USES];
        fig board[MOST_USES];
        size_t woods = 0;
        size_t boards = 0;
        for (size_t u = 0; u < leaf->use_count; u++) {
            if (leaf->uses[u].material_kind == MATERIAL_LUMBER) {
                wood[woods++] = leaf->uses[u].net;
            } else if (leaf->uses[u].material_kind == MATERIAL_SHEET) {
                board[boards++] = leaf->uses[u].net;
            }
        }
        tape_about_again(f->tape, leaf->subject);
        if (woods > 0) {
            const enum unit unit = (enum unit)tape_figure(f->tape, wood[0])->unit;
            f->leaf_lumber[r] =
                woods == 1 ? wood[0] : fig_sum(f->tape, "lumber net, all kinds", unit, wood, woods);
        }
        if (boards > 0) {
            f->leaf_sheet[r] =
                boards == 1 ? board[0]
                            : fig_sum(f->tape, "sheet area, all kinds", f->m->area, board, boards);
        }
    }
}

static bool take_room(struct floor *f, struct pool *pool) {
    const size_t rows = f->q->count;
    const size_t operations = f->rates->operation_count;
    f->labor->operations = pool_take(pool, operations, sizeof *f->labor->operations);
    f->labor->machines = pool_take(pool, f->rates->machine_count + 1, sizeof *f->labor->machines);
    f->labor->leaf_minutes = pool_take(pool, rows, sizeof(fig));
    f->labor->leaf_bench_minutes = pool_take(pool, rows, sizeof(fig));
    f->labor->leaf_cost = pool_take(pool, rows, sizeof(fig));
    f->leaf_lumber = pool_take(pool, rows, sizeof(fig));
    f->leaf_sheet = pool_take(pool, rows, sizeof(fig));
    f->leaf_parts = pool_take(pool, rows, sizeof(fig));
    f->pieces = pool_take(pool, rows, sizeof(fig));
    f->each = pool_take(pool, rows, sizeof(fig));
    f->applies = pool_take(pool, rows, sizeof(bool));
    return !pool_failed(pool);
}

bool labor_make(struct labor *labor, struct pool *pool, struct tape *tape,
                const struct measures *measures, const struct rates *rates,
                const struct quantities *quantities, const struct lumber_list *lumber,
                const struct sheet_list *sheets, const struct finish_list *finish,
                struct problems *problems) {
    *labor = (struct labor){0};
    struct floor floor = {.labor = labor,
                          .tape = tape,
                          .m = measures,
                          .rates = rates,
                          .q = quantities,
                          .finish = finish,
                          .problems = problems};
    const size_t terms = rates->operation_count + lumber->count + 2 * sheets->count + 1;
    fig *const room = pool_take(pool, 2 * terms, sizeof *room);
    if (room == NULL || !take_room(&floor, pool)) {
        return false;
    }
    job_drivers(&floor, lumber, sheets, room);
    for (size_t i = 0; i < rates->operation_count; i++) {
        struct operation_figures *const o = &labor->operations[labor->operation_count];
        *o = (struct operation_figures){.operation = (int32_t)i};
        o->shares = pool_take(pool, quantities->count, sizeof *o->shares);
        if (o->shares == NULL) {
            return false;
        }
        if (start(&floor, o)) {
            if (!total(&floor, o)) {
                return false;
            }
            share(&floor, o);
            labor->operation_count++;
        }
    }
    const struct sums_inputs inputs = {.tape = tape,
                                       .measures = measures,
                                       .rates = rates,
                                       .quantities = quantities,
                                       .finish = finish};
    sums_make(labor, &inputs, room, room + terms);
    return true;
}
