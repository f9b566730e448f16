/* SPDX-License-Identifier: MIT */
/* Jobs that go by rates as shipped, when the shop has some of its own: whoever made a job first
 * would quote by invented prices for good. */
#include "base/text.h"
#include "command/ask.h"
#include "command/new_files.h"
#include "command/new_run.h"

#include <string.h>

/* Asks whether the job shall go by the rates, where there is somebody to ask; else says how. */
static enum status adopt_one(const struct folder_job *job, const char *rates, struct pool *pool,
                             struct streams streams) {
    const char *const old = ini_given(&job->ini, "job", "rates");
    if (!ask_can(streams.in, streams.err)) {
        text_print(streams.out,
                   "%s goes by %s, as shipped: 'rates = %s' in its [job] has it go by these\n",
                   job->path, old, rates);
        return STATUS_DONE;
    }
    const char *answer = NULL;
    const struct ask question = {
        .why =
            pool_words(pool,
                       "%s goes by %s, which is as shipped. Shall it go by the new rates from now "
                       "on? Its line 'rates' is changed, and nothing else.",
                       job->path, old),
        .choices = "yes, no",
        .name = "change it",
        .offer = "yes",
        .ended = "the job is as it was",
        .needed = true};
    const enum ask_result result =
        ask(&question, streams.in, streams.err, ask_yes_no, NULL, pool, &answer);
    if (result != ASK_ANSWERED) {
        return result == ASK_MEMORY ? command_out_of_memory(streams) : STATUS_INPUTS;
    }
    if (!text_same(answer, "yes")) {
        return STATUS_DONE;
    }
    const enum status status = new_files_change(job->path, "rates", rates, streams);
    if (status == STATUS_DONE) {
        text_print(streams.out, "%s goes by %s now\n", job->path, rates);
    }
    return status;
}

enum status new_adopt(const struct folder *folder, const char *path, enum length_unit unit,
                      struct pool *pool, struct streams streams, const char **job) {
    enum status status = STATUS_DONE;
    for (size_t i = 0; i < folder->job_count && status == STATUS_DONE; i++) {
        const struct folder_job *const one = &folder->jobs[i];
        const char *const rates =
            folder_is_shipped(one, unit) ? draft_renamed(path, "", one->path, pool) : NULL;
        if (rates != NULL) {
            status = adopt_one(one, rates, pool, streams);
            *job = pool_words(pool, "%s", one->path);
        }
    }
    return status;
}
