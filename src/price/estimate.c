/* SPDX-License-Identifier: MIT */
#include "price/estimate.h"

#include "door/question.h"
#include "labor/question.h"
#include "stock/question.h"

static bool quantities_stage(struct estimate *e, struct plan_wish wish, struct problems *problems) {
    return quantities_make(&e->quantities, &e->tape, &e->measures, e->rates, &e->doors) &&
           lumber_make(&e->lumber, &e->pool, &e->tape, &e->measures, e->rates, &e->quantities, wish,
                       problems) &&
           sheets_make(&e->sheets, &e->pool, &e->tape, &e->measures, e->rates, &e->quantities, wish,
                       problems) &&
           glass_make(&e->glass, &e->pool, &e->tape, e->rates, &e->quantities) &&
           banding_make(&e->banding, &e->pool, &e->tape, &e->measures, e->rates, &e->quantities) &&
           hardware_make(&e->hardware, &e->pool, &e->tape, &e->measures, e->rates,
                         &e->quantities) &&
           finish_make(&e->finish, &e->pool, &e->tape, &e->measures, e->rates, &e->quantities);
}

static bool money_stage(struct estimate *e, struct problems *problems) {
    const struct cost_inputs inputs = {
        .tape = &e->tape,
        .measures = &e->measures,
        .rates = e->rates,
        .quantities = &e->quantities,
        .lumber = &e->lumber,
        .sheets = &e->sheets,
        .glass = &e->glass,
        .banding = &e->banding,
        .finish = &e->finish,
        .hardware = &e->hardware,
        .labor = &e->labor,
    };
    return labor_make(&e->labor, &e->pool, &e->tape, &e->measures, e->rates, &e->quantities,
                      &e->lumber, &e->sheets, &e->finish, problems) &&
           costs_make(&e->costs, &e->pool, &inputs) &&
           sale_make(&e->sale, &e->pool, &e->tape, &e->measures, e->rates, &e->job->sale,
                     &e->costs) &&
           sale_rooms(&e->sale, &e->pool, &e->tape, &e->quantities, &e->costs);
}

/* What a craftsman would ask, once the figures are there. */
static void ask_questions(const struct estimate *e, struct problems *problems) {
    doors_question(&e->quantities, &e->tape, &e->measures, e->rates, problems);
    stock_question(&e->doors, e->rates, e->measures.lengths, problems);
    finish_question(&e->finish, &e->labor, &e->tape, &e->measures, e->rates, &e->quantities,
                    problems);
}

static enum estimate_result ask_fault(const struct estimate *e, struct problems *problems) {
    const enum tape_fault fault = tape_fault(&e->tape);
    if (fault == TAPE_OK) {
        return ESTIMATE_OK;
    }
    if (fault == TAPE_MEMORY) {
        return ESTIMATE_MEMORY;
    }
    const fig at = e->tape.fault_at;
    problem_add(problems, SEVERITY_ERROR,
                fault == TAPE_TOO_LARGE ? "figure-too-large" : "figure-divides-by-nothing",
                e->job->title.place,
                "figure '%s' of '%s' %s; expected rates and sizes of an ordinary job",
                tape_label(&e->tape, at), problem_quote(problems, tape_subject_name(&e->tape, at)),
                fault == TAPE_TOO_LARGE ? "is too large" : "would divide by nothing");
    return ESTIMATE_FAULT;
}

enum estimate_result estimate_make_as(struct estimate *e, const struct rates *rates,
                                      const struct job *job, struct estimate_wish wish,
                                      struct problems *problems) {
    *e = (struct estimate){.rates = rates, .job = job, .option = wish.option};
    pool_init(&e->pool);
    tape_init(&e->tape);
    measures_init(&e->measures, &e->tape, job->unit, rates->shop.unit == LENGTH_MM);
    if (!doors_make(&e->doors, rates, job, wish.option)) {
        return ESTIMATE_MEMORY;
    }
    if (!quantities_stage(e, labor_plans(rates, wish.plans), problems) ||
        !money_stage(e, problems)) {
        return ESTIMATE_MEMORY;
    }
    ask_questions(e, problems);
    if (problems_count(problems, SEVERITY_ERROR) > 0) {
        return ESTIMATE_FAULT;
    }
    return ask_fault(e, problems);
}

enum estimate_result estimate_make(struct estimate *e, const struct rates *rates,
                                   const struct job *job, int option, struct problems *problems) {
    return estimate_make_as(
        e, rates, job,
        (struct estimate_wish){.option = option, .plans = {.effort = CUT_EFFORT_SECOND}}, problems);
}

void estimate_clear(struct estimate *e) {
    lumber_clear(&e->lumber);
    sheets_clear(&e->sheets);
    quantities_clear(&e->quantities);
    doors_clear(&e->doors);
    tape_clear(&e->tape);
    pool_clear(&e->pool);
    *e = (struct estimate){0};
}

const char *estimate_name(const struct estimate *e) {
    return e->option < 0 ? "as listed" : e->job->options[e->option].name.s;
}
