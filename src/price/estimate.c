/* SPDX-License-Identifier: MIT */
#include "price/estimate.h"

#include "door/warn.h"
#include "labor/warn.h"
#include "price/warn.h"
#include "stock/warn.h"

/* What is taken, bought and worked. */
static bool make_quantities(struct estimate *e, struct calc *c, struct plan_request plans) {
    const struct labor_inputs work = {
        .lumber = &e->lumber, .sheets = &e->sheets, .finish = &e->finish};
    if (!quantities_make(&e->quantities, c, &e->doors)) {
        return false;
    }
    c->quantities = &e->quantities;
    if (!spares_make(&e->spares, c)) {
        return false;
    }
    c->spares = &e->spares;
    return lumber_make(&e->lumber, c, plans) && sheets_make(&e->sheets, c, plans) &&
           glass_make(&e->glass, c) && banding_make(&e->banding, c) &&
           hardware_make(&e->hardware, c) && finish_make(&e->finish, c) &&
           labor_make(&e->labor, c, &work);
}

static bool make_money(struct estimate *e, const struct calc *c, bool purchase) {
    const struct cost_inputs inputs = {
        .lumber = &e->lumber,
        .sheets = &e->sheets,
        .glass = &e->glass,
        .banding = &e->banding,
        .finish = &e->finish,
        .hardware = &e->hardware,
        .labor = &e->labor,
    };
    return costs_make(&e->costs, c, &inputs) && sale_make(&e->sale, c, &e->costs) &&
           (!purchase || purchase_make(&e->purchase, c, &inputs, &e->costs.job));
}

static enum estimate_result ask_fault(const struct estimate *e, struct problems *problems) {
    const enum tape_fault fault = tape_fault(&e->tape);
    if (fault == TAPE_OK) {
        return ESTIMATE_OK;
    }
    if (fault == TAPE_MEMORY) {
        return ESTIMATE_MEMORY;
    }
    problem_add(problems, SEVERITY_ERROR,
                fault == TAPE_TOO_LARGE ? "figure-too-large" : "figure-divides-by-nothing",
                e->job->title.place,
                "figure '%s' of '%s' %s; expected rates and sizes of an ordinary job",
                tape_fault_label(&e->tape), problem_quote(problems, tape_fault_subject(&e->tape)),
                fault == TAPE_TOO_LARGE ? "is too large" : "would divide by nothing");
    return ESTIMATE_FAULT;
}

/* What every stage works with. */
static struct calc begin(struct estimate *e, const struct rates *rates, const struct job *job,
                         struct estimate_request request, struct problems *problems) {
    *e = (struct estimate){.rates = rates, .job = job, .option = request.option};
    pool_init(&e->pool);
    tape_init(&e->tape, request.traced);
    tape_set_money(&e->tape, rates->shop.money_decimals);
    units_init(&e->units, &e->tape, job->unit, rates->shop.unit == LENGTH_MM);
    e->units.ages = (struct price_ages){
        .numbers = &rates->numbers,
        .quoted = job_quoted(job),
        .used = pool_take(&e->pool, rates->numbers.count, sizeof(bool)),
    };
    return (struct calc){.tape = &e->tape,
                         .units = &e->units,
                         .rates = rates,
                         .job = job,
                         .pool = &e->pool,
                         .problems = problems};
}

bool estimate_tell_plans(const struct rates *rates, const struct job *job,
                         struct estimate_request request) {
    struct estimate e;
    struct problems unheard; /* the estimate itself will say them */
    problems_init(&unheard);
    request.traced = false;
    struct calc calc = begin(&e, rates, job, request, &unheard);
    bool held = doors_make(&e.doors, &calc, request.option) &&
                quantities_make(&e.quantities, &calc, &e.doors);
    calc.quantities = &e.quantities;
    held = held && lumber_make(&e.lumber, &calc, request.plans) &&
           sheets_make(&e.sheets, &calc, request.plans) && !unheard.failed;
    estimate_clear(&e);
    problems_clear(&unheard);
    return held;
}

enum estimate_result estimate_make(struct estimate *e, const struct rates *rates,
                                   const struct job *job, struct estimate_request request,
                                   struct problems *problems) {
    struct calc calc = begin(e, rates, job, request, problems);
    if (!doors_make(&e->doors, &calc, request.option) ||
        !make_quantities(e, &calc, request.plans) || !make_money(e, &calc, request.purchase)) {
        return ESTIMATE_MEMORY;
    }
    /* what a craftsman would ask, once the figures are there */
    doors_warn(&calc);
    stock_warn(&calc, &e->doors, &e->lumber, &e->sheets);
    plan_warn(&calc, &e->lumber, &e->sheets);
    finish_warn(&calc, &e->finish, &e->labor);
    also_warn(&calc, &e->labor);
    shapes_warn(&calc, &e->labor);
    prices_warn(&calc);
    return problems_count(problems, SEVERITY_ERROR) > 0 ? ESTIMATE_FAULT : ask_fault(e, problems);
}

void estimate_keep_tape(struct estimate *e) {
    lumber_clear(&e->lumber);
    sheets_clear(&e->sheets);
    pool_clear(&e->pool);
    *e = (struct estimate){.tape = e->tape};
}

void estimate_clear(struct estimate *e) {
    estimate_keep_tape(e);
    tape_clear(&e->tape);
}

const char *estimate_name(const struct estimate *e) {
    return e->option < 0 ? "as listed" : e->job->options[e->option].name.s;
}
