/* SPDX-License-Identifier: MIT */
/* An operation is worked out in three steps: what it does to each row, what it takes in all, what
 * of that each row carries. */
#include "labor/labor.h"

#include "labor/run.h"
#include "labor/setup.h"
#include "labor/sums.h"
#include "model/charge.h"
#include "model/name.h"
#include "model/work_cost.h"

#include <string.h>

/* A driver that the job has as a whole: its count, none when it has nothing of it, and by what each
 * row carries of it. */
struct whole {
    fig count;
    fig *by; /* one a row; NULL: the driver is each row's own */
};

enum { MAKE_NOT_ASKED, MAKE_LEFT, MAKE_WORKED };

/* What every operation asks of a row, one behind the other: the rows themselves lie far apart, and
 * there are a hundred thousand of a long list. */
struct asked_row {
    const struct references *also; /* operations of its own; NULL: none */
    uint32_t subject, make, style;
};

/* What the operations are worked out with. */
struct work {
    const struct calc *calc;
    const struct finish_list *finish;
    struct asked_row *rows;
    struct whole wholes[DRIVER_COUNT];
    uint8_t *makes; /* of the job: whether the operation at hand works on rows of it */
    bool *styles;   /* of the rates: whether the operation at hand works on doors of it */
    /* of the operation at hand, one a row */
    bool *applies; /* whether it works on it */
    fig *basis;    /* by what its total is shared; none: nothing of it */
};

/* --- what it takes in all --------------------------------------------------------------------- */

/* Sum over the rows of pieces x what the operation is shared by. */
static fig basis_total(const struct work *w, const char *what, enum unit unit) {
    const struct quantities *const q = w->calc->quantities;
    return fig_total(w->calc->tape, what, unit, q->pieces, w->basis, q->count);
}

/* false: out of memory. */
static bool total(const struct work *w, struct operation_figures *o) {
    const struct calc *const c = w->calc;
    const struct operation *const op = &c->rates->operations[o->operation];
    bool held = true;
    o->machine_minutes = o->run;
    if (op->setup.set) {
        const int64_t setups = setup_count(c, o, w->applies, w->finish, &held);
        const fig each = calc_given(c, "set-up", &op->setup);
        /* names the operation, so that equal counts of two are two figures */
        const char *const rule = pool_format(
            c->pool, "counted from the door list by the rule of operation '%s'", op->name.s);
        if (rule == NULL) {
            return false;
        }
        o->setups = tape_constant(c->tape, "set-ups", UNIT_COUNT, 0, setups, rule);
        o->setup_minutes = calc_product(c, "set-up minutes", UNIT_MIN, o->setups, each);
        o->machine_minutes = fig_plus(c->tape, "machine minutes", o->run, o->setup_minutes);
    }
    const struct work_cost cost = work_cost_of(c, op, o->machine_minutes);
    o->person_minutes = cost.person_minutes;
    o->labor = cost.labor;
    o->machine = cost.machine;
    o->cost = cost.all;
    return held;
}

/* --- what each row carries -------------------------------------------------------------------- */

static void share(const struct work *w, struct operation_figures *o) {
    const struct calc *const c = w->calc;
    const struct quantities *const q = c->quantities;
    fig all = o->run;
    for (size_t r = 0; r < q->count && !fig_none(o->job_count); r++) {
        if (!fig_none(w->basis[r])) {
            all = basis_total(w, "shared by, the job", tape_unit(c->tape, w->basis[r]));
            break;
        }
    }
    for (size_t r = 0; r < q->count; r++) {
        struct operation_share *const s = &o->shares[r];
        const fig basis = w->basis[r];
        const size_t like = q->leaves[r].like;
        if (fig_none(basis)) {
            continue;
        }
        if (like < r && w->basis[like].id == basis.id) {
            s->person = o->shares[like].person;
            s->cost = o->shares[like].cost;
            continue;
        }
        tape_about_again(c->tape, w->rows[r].subject);
        s->person = fig_ratio(c->tape, "person-minutes, share", UNIT_MIN,
                              (figs){{o->person_minutes, basis}}, (figs){{all}});
        s->cost = fig_ratio(c->tape, "operation cost, share", UNIT_MONEY, (figs){{o->cost, basis}},
                            (figs){{all}});
    }
}

/* --- what an operation does to a row ---------------------------------------------------------- */

/* An operation works on a row that its style, its finish, the shop, the job or the row itself lists
 * it for; what a charge pays works on all that have something of it. But for style and row, on all
 * rows of a make, or on none. */
static bool make_has(const struct calc *c, const struct door *door, int32_t operation) {
    const struct rates *const rates = c->rates;
    const int32_t finish = door->construction->finish.index;
    return charge_of_operation(c->job, operation) >= 0 ||
           references_hold(&c->job->also, operation) ||
           references_hold(&rates->shop.operations, operation) ||
           (finish >= 0 && references_hold(&rates->finishes[finish].operations, operation));
}

/* An operation that the job has as a whole; false: it has nothing to do. */
static bool run_job(const struct work *w, struct operation_figures *o, const struct whole *whole) {
    const struct calc *const c = w->calc;
    const struct operation *const op = &c->rates->operations[o->operation];
    o->job_count = whole->count;
    for (size_t r = 0; r < c->quantities->count; r++) {
        w->basis[r] = w->applies[r] ? whole->by[r] : (fig){0};
    }
    if (fig_none(o->job_count)) {
        return false;
    }
    const fig passes = calc_given(c, "passes", &op->passes);
    const fig minutes = calc_given(c, "minutes each", &op->minutes);
    const fig together = calc_given(c, "worked on at once", &op->together);
    o->run = fig_ratio(c->tape, "run minutes, the job", UNIT_MIN,
                       (figs){{o->job_count, minutes, passes}}, (figs){{together}});
    return true;
}

/* An operation on each row that has something of its driver; false: none has. */
static bool run_rows(const struct work *w, struct operation_figures *o, uint32_t subject,
                     const struct run_rates *rates) {
    const struct calc *const c = w->calc;
    const struct operation *const op = &c->rates->operations[o->operation];
    bool works = false;
    for (size_t r = 0; r < c->quantities->count; r++) {
        const struct leaf_figures *const leaf = &c->quantities->leaves[r];
        w->applies[r] = w->applies[r] && !fig_none(leaf->driver[op->per.choice]);
        if (w->applies[r]) {
            const bool wide = run_is_wide(op, leaf->door);
            if (leaf->like < r && w->applies[leaf->like] && !wide) { /* wide ones may be asked of */
                o->shares[r] = o->shares[leaf->like];
            } else {
                tape_about_again(c->tape, leaf->subject);
                o->shares[r].count = leaf->driver[op->per.choice];
                run_leaf(&o->shares[r], c, op, rates, leaf);
            }
            o->wide = o->wide || wide;
            works = true;
        }
        w->basis[r] = o->shares[r].run; /* none where it does not apply */
    }
    tape_about_again(c->tape, subject);
    if (works) {
        o->run = basis_total(w, "run minutes, the job", UNIT_MIN);
    }
    return works;
}

/* false: the operation has nothing to do. */
static bool run(const struct work *w, struct operation_figures *o) {
    const struct calc *const c = w->calc;
    const struct operation *const op = &c->rates->operations[o->operation];
    const struct whole *const whole = &w->wholes[op->per.choice];
    bool works = false;
    for (size_t s = 0; s < c->rates->style_count; s++) {
        w->styles[s] = references_hold(&c->rates->styles[s].operations, o->operation);
    }
    memset(w->makes, MAKE_NOT_ASKED, c->job->make_count);
    for (size_t r = 0; r < c->quantities->count; r++) {
        const struct asked_row *const row = &w->rows[r];
        uint8_t *const make = &w->makes[row->make];
        if (*make == MAKE_NOT_ASKED) {
            *make =
                make_has(c, c->quantities->leaves[r].door, o->operation) ? MAKE_WORKED : MAKE_LEFT;
        }
        w->applies[r] = *make == MAKE_WORKED || w->styles[row->style] ||
                        (row->also != NULL && references_hold(row->also, o->operation));
        works = works || w->applies[r];
    }
    const uint32_t subject = tape_about(c->tape, op->name.s);
    if (!works) {
        return false;
    }
    const struct run_rates rates = run_rates_given(c, op);
    return whole->by != NULL ? run_job(w, o, whole) : run_rows(w, o, subject, &rates);
}

/* --- what the job has as a whole -------------------------------------------------------------- */

/* The sum of terms that are not none; none without any. */
static fig sum_known(const struct calc *c, const char *what, fig *terms, size_t count) {
    size_t n = 0;
    for (size_t i = 0; i < count; i++) {
        terms[n] = terms[i];
        n += fig_none(terms[i]) ? 0 : 1;
    }
    return n == 0 ? (fig){0} : fig_sum(c->tape, what, tape_unit(c->tape, terms[0]), terms, n);
}

/* What is bought, and what the plans have. terms: room for two figures a lumber and three a sheet.
 */
static void count_wholes(struct work *w, const struct lumber_list *lumber,
                         const struct sheet_list *sheets, fig *terms) {
    const struct calc *const c = w->calc;
    size_t n = 0;
    tape_about_job(c->tape);
    for (size_t i = 0; i < lumber->count; i++) {
        terms[n++] = lumber->buys[i].priced.bought;
        terms[n] = lumber->buys[i].priced.from_rack;
        n += fig_none(terms[n]) ? 0 : 1;
    }
    w->wholes[DRIVER_LUMBER].count = sum_known(
        c, n > lumber->count ? "lumber bought and taken from the rack" : "lumber bought in all",
        terms, n);
    n = 0;
    for (size_t i = 0; i < sheets->count; i++) {
        terms[n++] = sheets->buys[i].priced.whole;
        terms[n++] = sheets->buys[i].priced.half;
        terms[n++] = sheets->buys[i].priced.from_rack;
    }
    w->wholes[DRIVER_SHEET].count = sum_known(c, "sheets bought and taken from the rack", terms, n);
    for (size_t i = 0; i < lumber->count; i++) {
        terms[i] = lumber->buys[i].plan.boards;
    }
    w->wholes[DRIVER_BOARD].count = sum_known(c, "boards by plan in all", terms, lumber->count);
    n = 0;
    for (size_t i = 0; i < lumber->count; i++) {
        terms[n++] = lumber->buys[i].plan.cuts;
    }
    for (size_t i = 0; i < sheets->count; i++) {
        terms[n++] = sheets->buys[i].plan.cuts;
    }
    w->wholes[DRIVER_CUT].count = sum_known(c, "cuts of the plans in all", terms, n);
    w->wholes[DRIVER_JOB].count = c->units->one;
}

/* What a leaf takes of all materials of a kind. */
static fig leaf_net(const struct calc *c, const struct leaf_figures *leaf, const char *what,
                    enum material_kind kind) {
    fig nets[MOST_USES];
    size_t n = 0;
    for (size_t u = 0; u < leaf->use_count; u++) {
        if (leaf->uses[u].material_kind == kind) {
            nets[n++] = leaf->uses[u].net;
        }
    }
    return n == 1 ? nets[0] : sum_known(c, what, nets, n);
}

/* By what each row carries of what the job has as a whole: its doors, lumber, sheet area, parts. */
static void share_wholes(struct work *w) {
    const struct calc *const c = w->calc;
    for (size_t r = 0; r < c->quantities->count; r++) {
        const struct leaf_figures *const leaf = &c->quantities->leaves[r];
        tape_about_again(c->tape, leaf->subject);
        w->wholes[DRIVER_JOB].by[r] = leaf->driver[DRIVER_DOOR];
        w->wholes[DRIVER_CUT].by[r] = leaf->driver[DRIVER_PART];
        w->wholes[DRIVER_LUMBER].by[r] =
            leaf_net(c, leaf, "lumber net, all kinds", MATERIAL_LUMBER);
        w->wholes[DRIVER_SHEET].by[r] = leaf_net(c, leaf, "sheet area, all kinds", MATERIAL_SHEET);
    }
}

/* Notes what is asked of the rows. */
static void ask_rows(struct work *w) {
    const struct calc *const c = w->calc;
    for (size_t r = 0; r < c->quantities->count; r++) {
        const struct leaf_figures *const leaf = &c->quantities->leaves[r];
        const struct row *const row = leaf->door->row;
        w->rows[r] = (struct asked_row){.also = row->also.count > 0 ? &row->also : NULL,
                                        .subject = leaf->subject,
                                        .make = (uint32_t)row->make->number,
                                        .style = (uint32_t)(leaf->door->style - c->rates->styles)};
    }
}

static bool take_room(struct work *w, struct labor *labor) {
    static const enum driver wholes[] = {DRIVER_JOB, DRIVER_CUT, DRIVER_LUMBER, DRIVER_SHEET};
    const struct calc *const c = w->calc;
    const size_t rows = c->quantities->count;
    labor->operations = pool_take(c->pool, c->rates->operation_count, sizeof *labor->operations);
    labor->machines = pool_take(c->pool, c->rates->machine_count + 1, sizeof *labor->machines);
    labor->leaf_minutes = pool_take(c->pool, rows, sizeof(fig));
    labor->leaf_bench_minutes = pool_take(c->pool, rows, sizeof(fig));
    labor->leaf_cost = pool_take(c->pool, rows, sizeof(fig));
    w->rows = pool_take(c->pool, rows, sizeof *w->rows);
    w->basis = pool_take(c->pool, rows, sizeof *w->basis);
    w->makes = pool_take(c->pool, c->job->make_count, sizeof *w->makes);
    w->styles = pool_take(c->pool, c->rates->style_count, sizeof *w->styles);
    w->applies = pool_take(c->pool, rows, sizeof *w->applies);
    for (size_t i = 0; i < sizeof wholes / sizeof *wholes; i++) {
        w->wholes[wholes[i]].by = pool_take(c->pool, rows, sizeof(fig));
    }
    w->wholes[DRIVER_BOARD].by = w->wholes[DRIVER_LUMBER].by;
    return !pool_failed(c->pool);
}

bool labor_make(struct labor *labor, const struct calc *c, const struct labor_inputs *in) {
    struct work work = {.calc = c, .finish = in->finish};
    const size_t most =
        2 * c->rates->operation_count + 2 * in->lumber->count + 3 * in->sheets->count;
    fig *const terms = pool_take(c->pool, most, sizeof *terms);
    *labor = (struct labor){0};
    if (terms == NULL || !take_room(&work, labor)) {
        return false;
    }
    ask_rows(&work);
    count_wholes(&work, in->lumber, in->sheets, terms);
    share_wholes(&work);
    struct operation_share *shares = NULL; /* empty, for the next operation that does something */
    for (size_t i = 0; i < c->rates->operation_count; i++) {
        struct operation_figures *const o = &labor->operations[labor->operation_count];
        if (shares == NULL) {
            shares = pool_take(c->pool, c->quantities->count, sizeof *shares);
        }
        *o = (struct operation_figures){.operation = (int32_t)i,
                                        .charge = charge_of_operation(c->job, (int32_t)i),
                                        .shares = shares};
        if (shares == NULL) {
            return false;
        }
        if (run(&work, o)) {
            if (!total(&work, o)) {
                return false;
            }
            share(&work, o);
            labor->operation_count++;
            shares = NULL;
        }
    }
    sums_make(labor, c, in->finish, terms);
    return true;
}
