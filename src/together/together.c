/* SPDX-License-Identifier: MIT */
#include "together/together.h"

#include "together/joined_job.h"
#include "together/together_lines.h"

enum estimate_result together_make(struct together *t, const struct together_job *jobs,
                                   size_t count, const char *option, enum together_of of,
                                   struct estimate_request request, struct problems *problems) {
    *t = (struct together){.jobs = jobs, .count = count, .of = of};
    pool_init(&t->pool);
    struct option *const named = pool_take(&t->pool, 1, sizeof *named);
    if (named == NULL || !joined_job_make(t)) {
        return ESTIMATE_MEMORY;
    }
    request.option = -1;
    if (option != NULL) { /* its changes are in the rows; its name is shown */
        named->name.s = option;
        t->job.options = named;
        t->job.option_count = 1;
        request.option = 0;
    }
    const enum estimate_result result =
        estimate_make(&t->estimate, jobs[0].alone->rates, &t->job, request, problems);
    if (result != ESTIMATE_OK) {
        return result;
    }
    t->money_decimals = t->estimate.tape.money_decimals;
    return together_lines_make(t) ? ESTIMATE_OK : ESTIMATE_MEMORY;
}

void together_clear(struct together *t) {
    estimate_clear(&t->estimate);
    pool_clear(&t->pool);
    *t = (struct together){0};
}
