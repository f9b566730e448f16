/* SPDX-License-Identifier: MIT */
/* Jobs that a call names one behind the other, to be bought for or cut together. */
#ifndef DOORCOST_COMMAND_JOBS_TOGETHER_H
#define DOORCOST_COMMAND_JOBS_TOGETHER_H

#include "command/work.h"
#include "report/file/output.h"
#include "together/together.h"

struct jobs_together {
    struct work *first; /* the caller's */
    struct work *more;  /* of the words behind the first job */
    size_t opened;      /* of these */
    struct together_job *jobs;
    struct problems problems; /* of the jobs as one */
    struct together together;
};

/* Opens the jobs behind the first and puts all together. Any status but STATUS_DONE: said on err.
 * jobs_together_close must be called whatever the status. */
enum status jobs_together_open(struct jobs_together *all, const struct request *request,
                               struct work *first, enum together_of of, struct streams streams);
/* files_check against the inputs of all jobs. */
enum status jobs_together_check(const struct jobs_together *all, struct output *outputs,
                                size_t count, const struct request *request,
                                struct streams streams);
/* The result as JSON. */
enum status jobs_together_json(const struct jobs_together *all, const struct request *request,
                               struct streams streams);
/* Frees all but the first work. */
void jobs_together_close(struct jobs_together *all);

#endif
