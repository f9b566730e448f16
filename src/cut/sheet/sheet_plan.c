/* SPDX-License-Identifier: MIT */
/* Runs the search on the plain problem and draws what it found. */
#include "cut/sheet/sheet_plan.h"

#include "cut/sheet/sheet_bound.h"
#include "cut/sheet/sheet_layout.h"
#include "cut/sheet/sheet_search.h"

#include <stdlib.h>

/* Parts know their kind so far. */
static bool name_items(struct sheet_plan *plan, const struct cut_model *model,
                       const struct cut_job *job) {
    struct cut_handout handout;
    const bool ok = cut_handout_init(&handout, model, job);
    for (size_t p = 0; p < plan->part_count && ok; p++) {
        plan->parts[p].item = cut_handout_next(&handout, plan->parts[p].item);
    }
    cut_handout_clear(&handout);
    return ok;
}

static bool draw_sheets(struct sheet_plan *plan, const struct sheet_state *state,
                        const struct cut_model *model, const struct cut_job *job,
                        struct offcut_rule keep) {
    for (size_t s = 0; s < state->slot_count; s++) {
        if (state->slots[s].parts > 0 &&
            !sheet_layout_add(plan, model, job, keep, &state->slots[s])) {
            return false;
        }
    }
    return name_items(plan, model, job);
}

static enum cut_status make(const struct cut_job *job, const struct cut_model *model,
                            struct offcut_rule keep, int64_t effort, struct sheet_plan *plan) {
    struct sheet_search search = {.model = model, .job = job, .keep = keep, .effort = effort};
    enum cut_status status = CUT_NO_MEMORY;
    if (sheet_bound(model, effort / 10, &search.spent, &search.bound) &&
        sheet_search_run(&search)) {
        status = search.found ? CUT_DONE : CUT_SHORT;
    }
    if (status == CUT_DONE) {
        plan->cost = search.best.cost;
        plan->bound = search.bound;
        plan->spent = search.spent;
        status = draw_sheets(plan, &search.best, model, job, keep) ? CUT_DONE : CUT_NO_MEMORY;
    }
    sheet_search_clear(&search);
    return status;
}

enum cut_status sheet_plan_make(const struct cut_job *job, struct offcut_rule keep, int64_t effort,
                                struct sheet_plan **plan) {
    *plan = NULL;
    struct cut_model model;
    enum cut_status status = cut_model_init(&model, job, false);
    if (status != CUT_DONE) {
        return status;
    }
    struct sheet_plan *made = calloc(1, sizeof *made);
    status = made != NULL ? make(job, &model, keep, effort, made) : CUT_NO_MEMORY;
    cut_model_clear(&model);
    if (status != CUT_DONE) {
        sheet_plan_free(made);
        return status;
    }
    *plan = made;
    return CUT_DONE;
}

void sheet_plan_free(struct sheet_plan *plan) {
    if (plan != NULL) {
        free(plan->sheets);
        free(plan->nodes);
        free(plan->parts);
        free(plan);
    }
}
