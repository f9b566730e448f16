/* SPDX-License-Identifier: MIT */
#include "command/jobs_together.h"

#include "base/text.h"
#include "command/files.h"
#include "command/progress.h"
#include "report/json/json.h"
#include "together/rates_differ.h"

#include <stdlib.h>

#define MOST_TOLD 5 /* of what rates say otherwise */

/* --- the rates that they share ---------------------------------------------------------------- */

static const char *quoted(struct problems *problems, const char *text) {
    return text == NULL ? "nothing"
                        : pool_words(&problems->pool, "'%s'", problem_quote(problems, text));
}

static void tell_change(const struct bridge_change *change, const char *a, const char *b,
                        struct problems *quoting, FILE *err) {
    const char *const where = problem_quote(quoting, change->where);
    if (change->what == NULL) {
        text_print(err, "  %s stands in the rates of '%s' alone\n", where,
                   change->older != NULL ? a : b);
    } else {
        text_print(err, "  %s %s: %s in the rates of '%s', %s in those of '%s'\n", where,
                   problem_quote(quoting, change->what), quoted(quoting, change->older), a,
                   quoted(quoting, change->newer), b);
    }
}

/* Says what the rates of `path` have otherwise. */
static void tell_differ(const struct bridge_changes *changes, const char *words, const char *first,
                        const char *path, FILE *err) {
    struct problems quoting;
    problems_init(&quoting);
    const char *const a = problem_quote(&quoting, first);
    const char *const b = problem_quote(&quoting, path);
    if (words != NULL) {
        text_print(err, "doorcost: '%s' can't be put together with '%s': %s\n", b, a, words);
    } else {
        text_print(err,
                   "doorcost: '%s' buys by other rates than '%s'; give jobs whose rates say the "
                   "same of materials, waste and prices\n",
                   b, a);
    }
    for (size_t i = 0; words == NULL && i < changes->count && i < MOST_TOLD; i++) {
        tell_change(&changes->list[i], a, b, &quoting, err);
    }
    if (words == NULL && changes->count > MOST_TOLD) {
        text_print(err, "  and %zu more\n", changes->count - MOST_TOLD);
    }
    problems_clear(&quoting);
}

static enum status compare_rates(const struct work *a, const struct work *b, const char *first,
                                 const char *path, struct streams streams) {
    const struct rates_side sides[] = {{&a->job, &a->rates, &a->texts},
                                       {&b->job, &b->rates, &b->texts}};
    struct bridge_changes changes;
    const char *words = NULL;
    struct pool pool;
    enum status status = STATUS_DONE;
    pool_init(&pool);
    if (!rates_differ(&changes, &words, &sides[0], &sides[1], &pool)) {
        status = command_out_of_memory(streams);
    } else if (changes.count > 0 || words != NULL) {
        tell_differ(&changes, words, first, path, streams.err);
        status = STATUS_INPUTS;
    }
    pool_clear(&pool);
    return status;
}

/* --- opening ---------------------------------------------------------------------------------- */

static enum status open_more(struct jobs_together *all, const struct request *request,
                             struct streams streams) {
    enum status status = STATUS_DONE;
    for (size_t i = 0; i < request->word_count && status == STATUS_DONE; i++) {
        struct work *const work = &all->more[all->opened++];
        status = command_open(request, request->words[i], all->first->request, work, streams);
        if (status == STATUS_DONE) {
            status = compare_rates(all->first, work, request->job, request->words[i], streams);
        }
        all->jobs[i + 1] = (struct together_job){request->words[i], work->estimates};
    }
    return status;
}

static enum status put_together(struct jobs_together *all, const struct request *request,
                                enum together_of of, struct streams streams) {
    struct progress progress;
    progress_begin(&progress, streams.err, "estimating the jobs as one");
    const enum estimate_result result =
        together_make(&all->together, all->jobs, request->word_count + 1, request->option, of,
                      (struct estimate_request){.plans = all->first->request.plans,
                                                .purchase = true,
                                                .traced = all->first->request.trace == TRACE_ALL},
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

enum status jobs_together_open(struct jobs_together *all, const struct request *request,
                               struct work *first, enum together_of of, struct streams streams) {
    *all = (struct jobs_together){.first = first};
    problems_init(&all->problems);
    if (request->word_count + 1 > MOST_JOBS_TOGETHER) {
        text_print(streams.err, "doorcost: %zu jobs are named; '%s' takes %d at once\n",
                   request->word_count + 1, request->command->name, MOST_JOBS_TOGETHER);
        return STATUS_USE;
    }
    all->more = calloc(request->word_count, sizeof *all->more);
    all->jobs = calloc(request->word_count + 1, sizeof *all->jobs);
    if (all->more == NULL || all->jobs == NULL) {
        return command_out_of_memory(streams);
    }
    all->jobs[0] = (struct together_job){request->job, first->estimates};
    const enum status status = open_more(all, request, streams);
    return status == STATUS_DONE ? put_together(all, request, of, streams) : status;
}

enum status jobs_together_check(const struct jobs_together *all, struct output *outputs,
                                size_t count, const struct request *request,
                                struct streams streams) {
    enum status status = files_check(outputs, count, request, all->first, streams);
    struct request other = *request;
    for (size_t i = 0; i < all->opened && status == STATUS_DONE; i++) {
        other.job = request->words[i];
        status = files_check(outputs, count, &other, &all->more[i], streams);
    }
    return status;
}

enum status jobs_together_json(const struct jobs_together *all, const struct request *request,
                               struct streams streams) {
    struct json_paper paper = command_paper(request, all->first);
    paper.job = &all->together.job;
    paper.estimates = &all->together.estimate;
    paper.count = 1;
    paper.together = &all->together;
    return command_send(&paper, streams);
}

void jobs_together_close(struct jobs_together *all) {
    together_clear(&all->together);
    for (size_t i = 0; i < all->opened; i++) {
        work_close(&all->more[i]);
    }
    free(all->more);
    free(all->jobs);
    problems_clear(&all->problems);
    *all = (struct jobs_together){0};
}
