/* SPDX-License-Identifier: MIT */
#include "command/jobs_together.h"

#include "base/text.h"
#include "command/files.h"
#include "command/progress.h"
#include "command/rates_alike.h"
#include "report/json/json.h"

static enum status buys_alike(const struct request *request, const struct work *a,
                              const struct work *b, const char *path, struct streams streams) {
    return rates_alike(request, a, b, path, RATES_BOUGHT, streams);
}

/* --- opening ---------------------------------------------------------------------------------- */

static enum status put_together(struct jobs_together *all, const struct request *request,
                                const struct work_request *asked, enum together_of of,
                                struct streams streams) {
    struct progress progress;
    progress_begin(&progress, streams.err, "estimating the jobs as one");
    const enum estimate_result result = together_make(
        &all->together, all->jobs, request->word_count + 1, request->option, of,
        (struct estimate_request){
            .plans = asked->plans, .purchase = true, .traced = asked->trace == TRACE_ALL},
        &all->problems);
    progress_end(&progress);
    if (result == ESTIMATE_MEMORY || all->problems.failed) {
        return command_out_of_memory(streams);
    }
    if (result != ESTIMATE_OK) { /* what is asked of each job was asked of it alone */
        command_problems(request, &all->problems, streams);
        return STATUS_INPUTS;
    }
    return STATUS_DONE;
}

/* Any status but STATUS_DONE was said. close_all must be called whatever the status. */
static enum status open_all(struct jobs_together *all, const struct request *request,
                            struct work *first, enum together_of of, struct streams streams) {
    *all = (struct jobs_together){0};
    problems_init(&all->problems);
    const enum status status = further_open(&all->more, request, first, buys_alike, streams);
    if (status != STATUS_DONE) {
        return status;
    }
    all->jobs = pool_take(&all->problems.pool, all->more.count + 1, sizeof *all->jobs);
    if (all->jobs == NULL) {
        return command_out_of_memory(streams);
    }
    all->jobs[0] = (struct together_job){request->job, first->estimates};
    for (size_t i = 0; i < all->more.count; i++) {
        all->jobs[i + 1] = (struct together_job){request->words[i], all->more.works[i].estimates};
    }
    return put_together(all, request, &first->request, of, streams);
}

/* Frees all but the first work. */
static void close_all(struct jobs_together *all) {
    together_clear(&all->together);
    further_close(&all->more);
    problems_clear(&all->problems);
    *all = (struct jobs_together){0};
}

/* --- showing ---------------------------------------------------------------------------------- */

enum status jobs_show(const struct request *request, struct work *work, enum together_of of,
                      enum status (*show)(const struct request *request,
                                          const struct shown_jobs *shown, struct streams streams),
                      struct streams streams) {
    struct jobs_together all;
    if (request->word_count == 0) {
        return show(request, &(struct shown_jobs){.work = work}, streams);
    }
    enum status status = open_all(&all, request, work, of, streams);
    if (status == STATUS_DONE) {
        status = show(request, &(struct shown_jobs){.work = work, .all = &all}, streams);
    }
    close_all(&all);
    return status;
}

enum status jobs_check(const struct shown_jobs *shown, struct output *outputs, size_t count,
                       const struct request *request, struct streams streams) {
    const struct further_jobs none = {0};
    return further_check(shown->all == NULL ? &none : &shown->all->more, shown->work, outputs,
                         count, request, streams);
}

enum status jobs_json(const struct shown_jobs *shown, const struct request *request,
                      struct streams streams) {
    const struct jobs_together *const all = shown->all;
    if (all == NULL) {
        return command_json(request, shown->work, streams);
    }
    struct json_paper paper = command_paper(request, shown->work);
    paper.job = &all->together.job;
    paper.estimates = &all->together.estimate;
    paper.count = 1;
    paper.together = &all->together;
    return command_send(&paper, streams);
}
