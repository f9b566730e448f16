/* SPDX-License-Identifier: MIT */
/* Runs the search on the plain problem and puts its patterns back into the words of the job. */
#include "cut/strip/strip_plan.h"

#include "cut/strip/strip_dive.h"

#include <stdlib.h>

/* Writes one board; true when it is the same as the board before. */
static bool write_board(struct strip_plan *plan, const struct strip_pool *boards,
                        const struct strip_pattern *pattern, struct cut_handout *handout) {
    struct strip_board *board = &plan->boards[plan->board_count];
    *board =
        (struct strip_board){handout->model->bins[pattern->bin].stock, 1, plan->piece_count, 0};
    for (size_t i = 0; i < pattern->count; i++) {
        const struct strip_part *part = &boards->parts[pattern->first + i];
        for (int64_t n = 0; n < part->times; n++) {
            plan->pieces[plan->piece_count + board->count] = cut_handout_next(handout, part->kind);
            board->count++;
        }
    }
    if (plan->board_count == 0) {
        return false;
    }
    const struct strip_board *last = board - 1;
    bool same = last->stock == board->stock && last->count == board->count;
    for (size_t i = 0; i < board->count && same; i++) {
        same = plan->pieces[last->first + i] == plan->pieces[board->first + i];
    }
    return same;
}

static bool write_boards(struct strip_plan *plan, const struct strip_pool *boards,
                         const struct cut_model *model, const struct cut_job *job) {
    struct cut_handout handout;
    int64_t count = 0;
    for (size_t p = 0; p < boards->pattern_count; p++) {
        count += boards->patterns[p].times;
    }
    plan->boards = calloc((size_t)count + 1, sizeof *plan->boards);
    plan->pieces = calloc((size_t)model->pieces + 1, sizeof *plan->pieces);
    bool ok =
        cut_handout_init(&handout, model, job) && plan->boards != NULL && plan->pieces != NULL;
    for (size_t p = 0; p < boards->pattern_count && ok; p++) {
        for (int64_t n = 0; n < boards->patterns[p].times; n++) {
            if (write_board(plan, boards, &boards->patterns[p], &handout)) {
                plan->boards[plan->board_count - 1].times++;
            } else {
                plan->piece_count += plan->boards[plan->board_count].count;
                plan->board_count++;
            }
        }
    }
    cut_handout_clear(&handout);
    return ok;
}

static enum cut_status make(const struct cut_job *job, const struct cut_model *model,
                            int64_t effort, struct strip_plan *plan) {
    struct strip_search search = {.model = model, .effort = effort};
    enum cut_status status = CUT_NO_MEMORY;
    if (strip_search_run(&search)) {
        status = search.cost == INT64_MAX ? CUT_SHORT : CUT_DONE;
    }
    if (status == CUT_DONE) {
        plan->cost = search.cost;
        plan->bound = search.bound;
        plan->spent = search.spent;
        status = write_boards(plan, &search.best, model, job) ? CUT_DONE : CUT_NO_MEMORY;
    }
    strip_search_clear(&search);
    return status;
}

enum cut_status strip_plan_make(const struct cut_job *job, int64_t effort,
                                struct strip_plan **plan) {
    *plan = NULL;
    struct cut_model model;
    enum cut_status status = cut_model_init(&model, job, true);
    if (status != CUT_DONE) {
        return status;
    }
    struct strip_plan *made = calloc(1, sizeof *made);
    status = made != NULL ? make(job, &model, effort, made) : CUT_NO_MEMORY;
    cut_model_clear(&model);
    if (status != CUT_DONE) {
        strip_plan_free(made);
        return status;
    }
    *plan = made;
    return CUT_DONE;
}

void strip_plan_free(struct strip_plan *plan) {
    if (plan != NULL) {
        free(plan->boards);
        free(plan->pieces);
        free(plan);
    }
}
