/* SPDX-License-Identifier: MIT */
/* Several jobs bought for and cut at once: one estimate over all, what that saves against each
 * alone, and what each job bears of it.
 *
 * A line is a thing that is bought. What it costs together is shared by what it would cost each
 * job alone, so that all save in the same proportion; running sums are rounded, so the parts add up
 * to the line. Money has the decimals of the currency. Method: docs/method.md, "Several jobs at
 * once". */
#ifndef DOORCOST_TOGETHER_TOGETHER_H
#define DOORCOST_TOGETHER_TOGETHER_H

#include "price/estimate.h"

/* Jobs have letters. */
#define MOST_JOBS_TOGETHER 26

/* One of the jobs; all is borrowed. */
struct together_job {
    const char *path;
    const struct estimate *alone; /* with its purchase */
};

/* What is bought for all jobs, or cut by plan for all. */
enum together_of { TOGETHER_BOUGHT, TOGETHER_CUT };

struct together_line {
    enum cost_group group;
    const char *name;
    int32_t index, other; /* with group and name: which thing it is */
    int64_t alone;        /* money: each job by itself, added up */
    int64_t together;     /* money */
    int64_t *alone_of;    /* of each job */
    int64_t *takes_of;    /* 1: the job takes of it, be it free, as from the rack */
    int64_t *part_of;     /* what each job bears of `together` */
    bool shared;          /* several jobs take of it, or it is not what it is alone */
};

struct together {
    struct pool pool;
    const struct together_job *jobs;
    size_t count;
    enum together_of of;
    struct joined_jobs joined;
    struct job job; /* all of them; borrows from them */
    struct estimate estimate;
    struct together_line *lines; /* by group */
    size_t line_count;
    struct together_line unshared; /* those that are not shared, added up */
    struct together_line all;      /* all of them */
    uint8_t money_decimals;
};

/* Puts the jobs together and estimates them; all have been read without errors, by rates that say
 * the same (rates_differ), and estimated. option: by whose name all were; NULL: as listed. Of plans
 * that were not made there are no lines. Faults go to problems. together_clear must be called
 * whatever the result. */
enum estimate_result together_make(struct together *together, const struct together_job *jobs,
                                   size_t count, const char *option, enum together_of of,
                                   struct estimate_request request, struct problems *problems)
    __attribute__((warn_unused_result));
/* Frees all that it owns. */
void together_clear(struct together *together);

/* What `together` saves of `alone`; below 0: it costs more. */
static inline int64_t together_saves(const struct together_line *line) {
    return line->alone - line->together;
}

#endif
