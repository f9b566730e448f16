/* SPDX-License-Identifier: MIT */
/* `learn`: what happened, against the estimate; and new rates from it. */
#include "learn/hours_fit.h"
#include "learn/rack_after.h"

#include "base/text.h"
#include "command/command.h"
#include "command/files.h"
#include "command/work.h"
#include "read/actuals/actuals_file.h"
#include "read/file/source.h"
#include "report/csv/csv_rack.h"
#include "report/json/json.h"
#include "report/text/print.h"

#include <stdlib.h>
#include <string.h>

/* A job, and what was noted of it. */
struct noted_job {
    struct work *work;
    struct work own; /* of all but the first, whose work the command was given */
    struct actuals actuals;
    struct learned learned;
};

struct learner_run {
    const struct request *request;
    struct streams streams;
    struct pool pool;
    struct noted_job *jobs; /* as many as were opened */
    size_t count;
};

/* What was noted of a job whose work is open. */
static enum status note(struct learner_run *run, struct noted_job *job, const char *path) {
    struct problems problems;
    enum status status = STATUS_DONE;
    problems_init(&problems);
    bool memory = actuals_read(&job->actuals, &job->work->rates, path, &problems);
    if (memory && problems_count(&problems, SEVERITY_ERROR) > 0) {
        status = STATUS_INPUTS;
    } else if (memory) {
        memory = learned_make(&job->learned, &job->work->estimates[0], &job->actuals, &problems,
                              &run->pool);
    }
    command_problems(run->request, &problems, run->streams);
    problems_clear(&problems);
    return memory ? status : command_out_of_memory(run->streams);
}

/* A further job, as listed. */
static enum status open_further(const struct request *request, const struct work *first,
                                const char *path, struct work *work, struct streams streams) {
    struct work_request asked = first->request;
    asked.option = NULL;
    const enum status status = command_open(request, path, asked, work, streams);
    if (status == STATUS_DONE && !files_same(first->rates.path, work->rates.path)) {
        text_print(streams.err,
                   "doorcost: '%s' has other rates than '%s'; new rates are made from jobs that "
                   "name one file of rates\n",
                   path, request->job);
        return STATUS_USE;
    }
    return status;
}

/* All jobs that the call names, with what was noted of each. */
static enum status open_all(struct learner_run *run, struct work *work) {
    const struct request *const request = run->request;
    enum status status = STATUS_DONE;
    for (size_t i = 0; i < request->word_count && status == STATUS_DONE; i += 2) {
        struct noted_job *const job = &run->jobs[run->count++];
        job->work = work;
        if (i > 0) {
            job->work = &job->own;
            status = open_further(request, work, request->words[i - 1], &job->own, run->streams);
        }
        if (status == STATUS_DONE) {
            status = note(run, job, request->words[i]);
        }
    }
    return status;
}

static void close_all(struct learner_run *run) {
    for (size_t i = 0; i < run->count; i++) {
        actuals_clear(&run->jobs[i].actuals);
        if (i > 0) {
            work_close(&run->jobs[i].own);
        }
    }
    free(run->jobs);
    pool_clear(&run->pool);
}

/* Writes a file that must not be there yet. */
static enum status write_new(const struct request *request, const char *path, const char *text,
                             struct streams streams) {
    struct output file = {.path = path, .kind = OUTPUT_TEXT, .fresh = true};
    const enum status status = files_begin(&file, 1, request, streams);
    if (status != STATUS_DONE) {
        return status;
    }
    return files_put(&file, text) ? files_finish(&file, 1, request, streams)
                                  : files_failed(&file, 1, 0, streams);
}

/* The rates file with the proposals in it, to where -o says. */
static enum status write_rates(struct learner_run *run, const struct proposals *proposals) {
    const struct rates *const rates = &run->jobs[0].work->rates;
    struct problems problems;
    struct source source;
    enum status status = STATUS_INPUTS;
    problems_init(&problems);
    if (!source_read(&source, rates->path, (struct place){0}, &problems)) {
        status = command_out_of_memory(run->streams);
    } else if (source.open) {
        const char *const text = proposals_write(proposals, source.lines, source.count, &run->pool);
        status = text == NULL ? command_out_of_memory(run->streams)
                              : write_new(run->request, run->request->output, text, run->streams);
    }
    command_problems(run->request, &problems, run->streams);
    problems_clear(&problems);
    return status;
}

/* What is on the rack when the job is done, to where --rack says. */
static enum status write_rack(struct learner_run *run) {
    const struct noted_job *const job = &run->jobs[0];
    struct problems problems;
    struct rack next;
    char *text = NULL;
    size_t size = 0;
    enum status status = STATUS_DONE;
    problems_init(&problems);
    FILE *const file = open_memstream(&text, &size);
    bool held = file != NULL &&
                rack_after(&next, &job->work->estimates[0], &job->learned, &problems, &run->pool);
    if (held) {
        csv_rack(file, &next, &job->work->rates);
    }
    held = (file == NULL || fclose(file) == 0) && held;
    if (held) {
        status = write_new(run->request, run->request->rack, text, run->streams);
        command_problems(run->request, &problems, run->streams);
    }
    problems_clear(&problems);
    free(text);
    return held ? status : command_out_of_memory(run->streams);
}

static enum status tell(struct learner_run *run, const struct learned_job *jobs,
                        const struct proposals *proposals, const struct hours_fit *fit) {
    if (run->request->json) {
        struct json_paper paper = command_paper(run->request, run->jobs[0].work);
        paper.learned = &run->jobs[0].learned;
        paper.proposals = proposals;
        paper.hours_fit = fit;
        return command_send(&paper, run->streams);
    }
    struct page page = {.out = run->streams.out};
    for (size_t i = 0; i < run->count; i++) {
        learned_print(&page, &run->jobs[i].work->estimates[0], &run->jobs[i].learned);
        say(&page, "%s", "");
    }
    proposals_print(&page, proposals);
    if (run->count > 1) {
        hours_fit_print(&page, fit, jobs);
    }
    return page.failed ? command_out_of_memory(run->streams) : command_flush(run->streams);
}

static enum status propose(struct learner_run *run) {
    struct proposals proposals;
    struct hours_fit fit;
    struct learned_job *const jobs = pool_take(&run->pool, run->count, sizeof *jobs);
    for (size_t i = 0; i < run->count && jobs != NULL; i++) {
        jobs[i] = (struct learned_job){&run->jobs[i].work->estimates[0], &run->jobs[i].learned};
    }
    if (jobs == NULL || !proposals_make(&proposals, jobs, run->count, &run->pool) ||
        !hours_fit_make(&fit, jobs, run->count, &run->pool)) {
        return command_out_of_memory(run->streams);
    }
    enum status status = tell(run, jobs, &proposals, &fit);
    if (status == STATUS_DONE && run->request->output != NULL) {
        status = write_rates(run, &proposals);
    }
    if (status == STATUS_DONE && run->request->rack != NULL) {
        status = write_rack(run);
    }
    return status;
}

/* Whether --rack can be followed; what can't is said. */
static bool rack_can(const struct request *request, struct streams streams) {
    const char *const ending = strrchr(request->rack, '.');
    if (ending == NULL || !text_same(ending, ".csv")) {
        text_print(streams.err, "doorcost: --rack '%s' does not end in .csv\n", request->rack);
    } else if (request->word_count > 1) {
        text_print(streams.err, "doorcost: --rack tells of one job: several would each take what "
                                "is there; run 'learn' for one after the other\n");
    } else {
        return true;
    }
    return false;
}

enum status command_learn(const struct request *request, struct work *work,
                          struct streams streams) {
    if (request->word_count % 2 != 1) {
        text_print(streams.err,
                   "doorcost: 'learn' needs a file of what was noted behind each job file, as in: "
                   "%s\n",
                   request->command->example);
        return STATUS_USE;
    }
    if (request->rack != NULL && !rack_can(request, streams)) {
        return STATUS_USE;
    }
    struct learner_run run = {.request = request, .streams = streams};
    run.jobs = calloc(request->word_count / 2 + 1, sizeof *run.jobs);
    pool_init(&run.pool);
    enum status status = run.jobs == NULL ? command_out_of_memory(streams) : open_all(&run, work);
    if (status == STATUS_DONE) {
        status = propose(&run);
    }
    close_all(&run);
    return status;
}
