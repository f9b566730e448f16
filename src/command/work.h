/* SPDX-License-Identifier: MIT */
/* What every command starts from: the inputs read, the estimates made. */
#ifndef DOORCOST_COMMAND_WORK_H
#define DOORCOST_COMMAND_WORK_H

#include "command/command.h"
#include "price/estimate.h"
#include "read/job/job_texts.h"
#include "report/text/print.h"

/* What a command asks for. */
struct work_request {
    const char *option; /* NULL: the base job */
    enum work_scope scope;
    enum work_trace trace;
    bool saved;                /* the job may stand in a saved quote */
    struct plan_request plans; /* which cutting plans are made */
};

struct work {
    struct work_request request;
    struct problems problems;
    struct job_texts texts; /* what the files say; lives in problems */
    struct job job;
    struct rates rates;
    struct estimate *estimates; /* the first is the base job or the option named */
    size_t count;
    struct list_made made; /* of the base job, where only problems are kept */
};

enum work_result {
    WORK_OK,
    WORK_INPUTS,    /* problems has errors */
    WORK_NO_OPTION, /* the job has no option of that name */
    WORK_MEMORY
};

/* Reads the job at path, which is borrowed, and estimates it. work: always left so that work_close
 * may be called. */
enum work_result work_open(struct work *work, const char *path, struct work_request request)
    __attribute__((warn_unused_result));
/* Frees all that the work holds; also after a failed work_open. */
void work_close(struct work *work);

#endif
