/* SPDX-License-Identifier: MIT */
/* The work of one job or several, put in order by day: when each is ready, what decides it, what
 * one more of what is scarce would bring.
 *
 * Minutes are those of the estimates, allowance included. Method: docs/method.md, "By day". */
#ifndef DOORCOST_DAYS_WORK_DAY_PLAN_H
#define DOORCOST_DAYS_WORK_DAY_PLAN_H

#include "days/order/order_plan.h"
#include "price/estimate.h"

/* Of what there is only so much, by number of resource; the machines of the rates follow. */
enum day_resource { RESOURCE_PEOPLE, RESOURCE_RACKS, RESOURCE_MACHINES };

/* The capacity of what the rates do not limit. */
#define NEVER_SCARCE 1000000

/* Between the finish and the coat of a step. */
#define DAY_BEFORE_COAT ": "

/* A part of an operation that is done in one go. */
struct day_step {
    size_t job;
    int32_t operation; /* index into rates.operations; -1: a mark, at which others wait */
    const char *what;  /* the finish, where there are several, and the coat; "" else */
    const char *coat;  /* of which coat it is, within what, behind the finish; NULL: of none */
    int64_t minutes;   /* of work */
    int32_t doors;     /* that the whole of this work is done to */
    int32_t hands;     /* people at it */
    int32_t machine;   /* index into rates.machines; -1: none */
    int32_t clamps;    /* sets that it holds until it is free */
    int32_t places;    /* on the racks, likewise */
    int64_t begins;    /* minute of work */
    int64_t free;      /* minute of work: what it leaves has dried or set, or is back */
};

/* Work of a day on one operation of a job. */
struct day_line {
    int32_t day; /* date_number */
    size_t job;
    int32_t operation;
    const char *what;
    int64_t minutes; /* of people */
};

/* What an end is decided by. */
enum day_cause {
    CAUSE_WORK,   /* work that waits for other work */
    CAUSE_DRYING, /* such work, and what dries or sets between */
    CAUSE_PEOPLE,
    CAUSE_RACKS,
    CAUSE_CLAMPS,
    CAUSE_MACHINE
};

/* How soon all could be done if that alone were scarce. */
struct day_bound {
    enum day_cause cause;
    int32_t machine; /* index into rates.machines; -1: it is none */
    int32_t day;     /* date_number */
    int64_t clock;   /* minute on the clock */
};

/* What one more of something would bring; of CAUSE_DRYING, if nothing had to dry. */
struct day_more {
    enum day_cause cause;
    int32_t machine;
    int32_t day;    /* on which all is done then */
    int64_t gained; /* working days */
};

struct day_job {
    const struct estimate *estimate;
    int32_t from;      /* date_number: work begins no sooner */
    int32_t begins;    /* of its first work */
    int32_t ready;     /* of its last */
    int64_t minutes;   /* of people, planned */
    int64_t unplanned; /* of people: done before the job is taken */
    const char *left;  /* names of these operations, with commas; "" */
};

struct day_plan {
    struct day_job *jobs;
    size_t job_count;
    struct day_step *steps; /* marks included */
    size_t step_count;
    struct day_line *lines; /* by day, then job, then as the work goes */
    size_t line_count;
    const struct day_bound *bounds; /* the latest first: that decides */
    size_t bound_count;
    struct day_more *more; /* one of each that is scarce */
    size_t more_count;
    const int32_t *work_days; /* date_number of each working day from the first on */
    size_t work_day_count;
    int32_t first;   /* date_number of the first working day */
    int32_t ready;   /* date_number: all is done */
    int32_t soonest; /* date_number: no plan is done sooner */
    int64_t days;    /* working days from first to ready, both counted */
    int64_t soonest_days;
    int64_t day_minutes;            /* of a working day */
    int64_t minutes;                /* of people, all jobs */
    int32_t people, clamps, places; /* as the rates have them; NEVER_SCARCE */
    bool few_hands; /* an operation wants more hands than there are people: it takes them longer */
};

enum day_result {
    DAY_OK,
    DAY_MEMORY,
    DAY_TOO_MANY, /* more than MOST_TASKS steps */
    DAY_TOO_LONG  /* past the last working day that a plan knows */
};

/* What is asked of a plan. */
struct day_request {
    struct day_job *jobs; /* their estimates, of one rates file; the rest is filled in */
    size_t count;
    int32_t from; /* date_number: work begins no sooner; INT32_MIN: than `ready` of the job says,
                     else the client took the job, else the date of the quote */
};

/* Makes the plan. Memory of pool; borrows the jobs and their estimates. */
enum day_result day_plan_make(struct day_plan *plan, struct day_request request, struct pool *pool)
    __attribute__((warn_unused_result));

#endif
