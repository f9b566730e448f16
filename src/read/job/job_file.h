/* SPDX-License-Identifier: MIT */
/* The way into the reader: a job with all that it names. */
#ifndef DOORCOST_READ_JOB_JOB_FILE_H
#define DOORCOST_READ_JOB_JOB_FILE_H

#include "model/job.h"
#include "model/rate_change.h"
#include "read/job/job_texts.h"

/* What job_read takes in place of a job file as it stands. */
struct job_instead {
    bool saved; /* path may also be that of a saved quote (read/job/saved.h) */
    bool visit; /* before there is a list: none is read, and path may be that of a rates file, which
                   leaves the job empty, without a title */
    const struct rate_changes *changes; /* of the rates, as if their file had them so; NULL: none */
};

/* Reads the job file, the rates file that it names and its door list; every fault of all three goes
 * to problems, in one go. Both structs are always left so that job_clear and rates_clear may be
 * called.  false: out of memory. */
bool job_read(struct job *job, struct rates *rates, const char *path, struct problems *problems)
    __attribute__((warn_unused_result));

/* The same with changes to the rates, as if their file had them so. */
bool job_read_changed(struct job *job, struct rates *rates, const char *path,
                      const struct rate_changes *changes, struct problems *problems)
    __attribute__((warn_unused_result));

/* The same; *texts: what was read, as it stands in the files. It lives in the pool of problems. */
bool job_read_keep(struct job *job, struct rates *rates, const char *path,
                   struct job_instead instead, struct job_texts *texts, struct problems *problems)
    __attribute__((warn_unused_result));

/* The same of files that were read as texts, which may have been put together of several. Borrows
 * texts, with the problems that they were read with, as long as job and rates live. */
bool job_read_texts(struct job *job, struct rates *rates, const struct job_texts *texts,
                    struct problems *problems) __attribute__((warn_unused_result));

/* Frees all that was read; job is empty after. */
void job_clear(struct job *job);

#endif
