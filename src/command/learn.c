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
    struct problems problems; /* of what was noted, and of what is made of it */
    struct noted_job *jobs;   /* as many as were opened */
    size_t count;
    const char *rates; /* new rates as -o asks for, in pool */
    char *rack;        /* the next rack as --rack asks for, owned */
};

/* What was noted of a job whose work is open. */
static enum status note(struct learner_run *run, struct noted_job *job, const char *path) {
    if (!actuals_read(&job->actuals, &job->work->rates, path, &run->problems)) {
        return command_out_of_memory(run->streams);
    }
    if (problems_count(&run->problems, SEVERITY_ERROR) > 0) {
        return STATUS_INPUTS;
    }
    return learned_make(&job->learned, &job->work->estimates[0], &job->actuals, &run->problems,
                        &run->pool)
               ? STATUS_DONE
               : command_out_of_memory(run->streams);
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
    problems_clear(&run->problems); /* shows lines of what was noted */
    for (size_t i = 0; i < run->count; i++) {
        actuals_clear(&run->jobs[i].actuals);
        if (i > 0) {
            work_close(&run->jobs[i].own);
        }
    }
    free(run->jobs);
    free(run->rack);
    pool_clear(&run->pool);
}

/* The rates file with the proposals in it. */
static enum status make_rates(struct learner_run *run, const struct proposals *proposals) {
    struct source source;
    if (!source_read(&source, run->jobs[0].work->rates.path, (struct place){0}, &run->problems)) {
        return command_out_of_memory(run->streams);
    }
    if (!source.open) {
        return STATUS_INPUTS;
    }
    run->rates = proposals_write(proposals, source.lines, source.count, &run->pool);
    return run->rates == NULL ? command_out_of_memory(run->streams) : STATUS_DONE;
}

/* What is on the rack when the job is done. */
static enum status make_rack(struct learner_run *run) {
    const struct noted_job *const job = &run->jobs[0];
    struct rack next;
    size_t size = 0;
    FILE *const file = open_memstream(&run->rack, &size);
    bool memory = file != NULL && rack_after(&next, &job->work->estimates[0], &job->learned,
                                             &run->problems, &run->pool);
    if (memory) {
        csv_rack(file, &next, &job->work->rates);
    }
    memory = (file == NULL || fclose(file) == 0) && memory;
    return memory ? STATUS_DONE : command_out_of_memory(run->streams);
}

/* All files that the call names, or none; none may be there yet. */
static enum status write_all(const struct learner_run *run) {
    const struct request *const request = run->request;
    const char *texts[2];
    struct output files[2];
    size_t count = 0;
    if (request->output != NULL) {
        files[count] = (struct output){.path = request->output, .kind = OUTPUT_TEXT, .fresh = true};
        texts[count++] = run->rates;
    }
    if (request->rack != NULL) {
        files[count] = (struct output){.path = request->rack, .kind = OUTPUT_TEXT, .fresh = true};
        texts[count++] = run->rack;
    }
    enum status status =
        count == 0 ? STATUS_DONE : files_begin(files, count, request, run->streams);
    if (count == 0 || status != STATUS_DONE) {
        return status;
    }
    for (size_t i = 0; i < count; i++) {
        if (!files_put(&files[i], texts[i])) {
            return files_failed(files, count, i, run->streams);
        }
    }
    return files_finish(files, count, request, run->streams);
}

static enum status tell(struct learner_run *run, const struct learned_job *jobs,
                        const struct proposals *proposals, const struct hours_fit *fit) {
    if (run->request->json) {
        struct json_paper paper = command_paper(run->request, run->jobs[0].work);
        paper.further = &run->problems;
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
    enum status status = run->request->output == NULL ? STATUS_DONE : make_rates(run, &proposals);
    if (status == STATUS_DONE && run->request->rack != NULL) {
        status = make_rack(run);
    }
    command_problems(run->request, &run->problems, run->streams);
    if (status == STATUS_DONE) {
        status = tell(run, jobs, &proposals, &fit);
    }
    return status == STATUS_DONE ? write_all(run) : status;
}

/* Says what was found before a job could not be learned from; errors as JSON too where that was
 * asked for. */
static enum status tell_wrong(const struct learner_run *run, const struct work *work,
                              enum status status) {
    command_problems(run->request, &run->problems, run->streams);
    if (!run->request->json || problems_count(&run->problems, SEVERITY_ERROR) == 0) {
        return status;
    }
    struct json_paper paper = command_paper(run->request, work);
    paper.job = NULL;
    paper.further = &run->problems;
    const enum status sent = command_send(&paper, run->streams);
    return sent == STATUS_DONE ? status : sent;
}

/* Whether --rack can be followed; what can't is said. */
static bool rack_can(const struct request *request, struct streams streams) {
    const char *const ending = strrchr(request->rack, '.');
    if (ending == NULL || !text_same(ending, ".csv")) {
        text_print(streams.err, "doorcost: --rack '%s' does not end in .csv\n", request->rack);
    } else if (request->word_count > 1) {
        text_print(streams.err, "doorcost: --rack tells of one job: several would each take what "
                                "is there; run 'learn' for one after the other\n");
    } else if (request->output != NULL && strcmp(request->output, request->rack) == 0) {
        text_print(streams.err, "doorcost: -o and --rack both name '%s'; give each a file\n",
                   request->rack);
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
    problems_init(&run.problems);
    enum status status = run.jobs == NULL ? command_out_of_memory(streams) : open_all(&run, work);
    status = status == STATUS_DONE ? propose(&run) : tell_wrong(&run, work, status);
    close_all(&run);
    return status;
}
