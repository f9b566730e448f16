/* SPDX-License-Identifier: MIT */
#include "price/ways_trial.h"

#include "model/construction.h"

bool ways_trial_init(struct ways_trial *trial, const struct estimate *base,
                     struct plan_request plans, struct pool *pool) {
    const size_t count = base->job->row_count;
    *trial = (struct ways_trial){.base = base,
                                 .plans = plans,
                                 .rows = pool_take(pool, count, sizeof *trial->rows),
                                 .makes = pool_take(pool, count, sizeof *trial->makes)};
    trial->memory = trial->rows != NULL && trial->makes != NULL;
    return trial->memory;
}

static bool run(struct ways_trial *trial, size_t row_count, struct outcome *outcome) {
    struct job job = *trial->base->job;
    job.rows = trial->rows;
    job.make_count += job.row_count; /* one of its own for each row that changes */
    job.row_count = row_count;
    const enum estimate_result result =
        outcome_try(outcome, trial->base->rates, &job, trial->base->option, trial->plans);
    trial->memory = trial->memory && result != ESTIMATE_MEMORY;
    return result == ESTIMATE_OK;
}

/* As if the cells of the row named that style and that finish. */
static void change_row(struct ways_trial *trial, size_t place, const struct way *way) {
    const struct job *const job = trial->base->job;
    struct row *const row = &trial->rows[place];
    struct make *const make = &trial->makes[place];
    *make = *row->make;
    make->number = job->make_count + place;
    make->own.style = way->style != NULL ? *way->style : make->own.style;
    make->own.finish = way->finish != NULL ? *way->finish : make->own.finish;
    row->make = make;
    make->whole = row_construction(job, row, -1);
}

bool ways_trial_run(struct ways_trial *trial, const struct ways_row *rows, const size_t *picked,
                    size_t count, struct outcome *outcome) {
    const size_t all = outcome_rows_without(trial->rows, trial->base->job, NULL, 0);
    for (size_t i = 0; i < count; i++) {
        if (picked[i] > 0) {
            change_row(trial, rows[i].place, &rows[i].ways[picked[i]]);
        }
    }
    return run(trial, all, outcome);
}

bool ways_trial_without(struct ways_trial *trial, size_t place, struct outcome *outcome) {
    return run(trial, outcome_rows_without(trial->rows, trial->base->job, &place, 1), outcome);
}

void ways_trial_choice(struct ways_trial *trial, const struct ways *ways,
                       struct ways_choice *choice) {
    choice->changed = 0;
    choice->sum = ways->job;
    for (size_t i = 0; i < ways->row_count; i++) {
        const struct way *const way = &ways->rows[i].ways[choice->picked[i]];
        choice->sum = outcome_minus(choice->sum, outcome_minus(ways->job, way->whole));
        choice->changed += choice->picked[i] > 0 ? 1 : 0;
    }
    choice->made =
        ways_trial_run(trial, ways->rows, choice->picked, ways->row_count, &choice->real);
}
