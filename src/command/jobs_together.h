/* SPDX-License-Identifier: MIT */
/* Jobs that a call names one behind the other, to be bought for or cut together. */
#ifndef DOORCOST_COMMAND_JOBS_TOGETHER_H
#define DOORCOST_COMMAND_JOBS_TOGETHER_H

#include "command/further.h"
#include "command/work.h"
#include "report/file/output.h"
#include "together/together.h"

struct jobs_together {
    struct further_jobs more;
    struct problems problems;  /* of the jobs as one */
    struct together_job *jobs; /* of their pool */
    struct together together;
};

/* What a command shows: one job, or several put together. */
struct shown_jobs {
    struct work *work;         /* of the first */
    struct jobs_together *all; /* NULL: it is one job */
};

/* The estimate that is shown. */
static inline const struct estimate *shown_estimate(const struct shown_jobs *shown) {
    return shown->all == NULL ? &shown->work->estimates[0] : &shown->all->together.estimate;
}

/* What was put together; NULL: it is one job. */
static inline const struct together *shown_together(const struct shown_jobs *shown) {
    return shown->all == NULL ? NULL : &shown->all->together;
}

/* Shows the job of work, or, where the call names more behind it, opens these and puts all
 * together. Any status but STATUS_DONE was said on err. */
enum status jobs_show(const struct request *request, struct work *work, enum together_of of,
                      enum status (*show)(const struct request *request,
                                          const struct shown_jobs *shown, struct streams streams),
                      struct streams streams);
/* files_check against the inputs of all jobs. */
enum status jobs_check(const struct shown_jobs *shown, struct output *outputs, size_t count,
                       const struct request *request, struct streams streams);
/* The result as JSON. */
enum status jobs_json(const struct shown_jobs *shown, const struct request *request,
                      struct streams streams);

#endif
