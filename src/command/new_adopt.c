/* SPDX-License-Identifier: MIT */
/* Jobs that go by rates as shipped, when the shop has some of its own: whoever made a job first
 * would quote by invented prices for good. */
#include "base/text.h"
#include "command/ask.h"
#include "command/new_files.h"
#include "command/new_run.h"
#include "read/file/source.h"

#include <string.h>
#include <sys/stat.h>

/* Whether the job goes by the rates at that path; NULL: there are none. */
static bool goes_by(const struct folder_job *job, const char *rates, struct pool *pool) {
    const char *const name = ini_given(&job->ini, "job", "rates");
    const char *const path =
        name == NULL || rates == NULL ? NULL : source_beside(pool, job->path, name);
    struct stat its;
    struct stat ours;
    return path != NULL && stat(path, &its) == 0 && stat(rates, &ours) == 0 &&
           its.st_dev == ours.st_dev && its.st_ino == ours.st_ino;
}

/* Asks whether the job shall go by the rates, where there is somebody to ask; else says how. */
static enum status adopt_one(const struct folder_job *job, const char *rates, bool shipped,
                             struct pool *pool, struct streams streams) {
    const char *const old = ini_given(&job->ini, "job", "rates");
    if (!ask_can(streams.in, streams.err)) {
        text_print(streams.out, "%s goes by %s%s: 'rates = %s' in its [job] has it go by these\n",
                   job->path, old, shipped ? ", as shipped" : "", rates);
        return STATUS_DONE;
    }
    bool yes = false;
    const struct ask question = {
        .why = pool_words(
            pool,
            "%s goes by %s%s. Shall it go by the new rates from now on? Its line 'rates' "
            "is changed, and nothing else.",
            job->path, old, shipped ? ", which is as shipped" : ""),
        .name = "change it",
        .offer = "yes",
        .ended = "the job is as it was"};
    const enum ask_result result = ask_whether(question, streams.in, streams.err, pool, &yes);
    if (result != ASK_ANSWERED) {
        return result == ASK_MEMORY ? command_out_of_memory(streams) : STATUS_INPUTS;
    }
    if (!yes) {
        return STATUS_DONE;
    }
    const enum status status = new_files_change(job->path, "rates", rates, streams);
    if (status == STATUS_DONE) {
        text_print(streams.out, "%s goes by %s now\n", job->path, rates);
    }
    return status;
}

enum status new_adopt(const struct folder *folder, const char *path, const char *from,
                      enum length_unit unit, struct pool *pool, struct streams streams,
                      const char **job) {
    enum status status = STATUS_DONE;
    for (size_t i = 0; i < folder->job_count && status == STATUS_DONE; i++) {
        const struct folder_job *const one = &folder->jobs[i];
        const bool shipped = folder_is_shipped(one, unit);
        const char *const rates =
            shipped || goes_by(one, from, pool) ? draft_renamed(path, "", one->path, pool) : NULL;
        if (rates != NULL) {
            status = adopt_one(one, rates, shipped, pool, streams);
            *job = pool_words(pool, "%s", one->path);
        }
    }
    return status;
}
