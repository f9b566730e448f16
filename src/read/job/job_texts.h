/* SPDX-License-Identifier: MIT */
/* The files of a job as texts, before anything is made of them: sections and keys of job and rates,
 * rows of the door list. What is made of them is told by job_read_texts, so that files which differ
 * in chosen keys and rows can be put together and read like any other. */
#ifndef DOORCOST_READ_JOB_JOB_TEXTS_H
#define DOORCOST_READ_JOB_JOB_TEXTS_H

#include "read/file/ini.h"
#include "read/file/table.h"

struct job_texts {
    const char *path; /* of the job file */
    struct ini job, rates;
    struct table list, woods, rack; /* these two: not `open` where the rates name none */
    bool saved; /* they stand in a saved quote, which has neither terms nor picture of the shop */
};

/* Reads the files of the job at path, or the saved quote there (read/job/saved.h). All lives in the
 * pool of problems. Values of files that name another become its whole path, so that they mean the
 * same beside any other file. What is wrong goes to problems; a file that could not be read is not
 * `open`. false: memory is out. */
bool job_texts_read(struct job_texts *texts, const char *path, struct problems *problems)
    __attribute__((warn_unused_result));

/* Whether a key of [shop] names a file for the client's papers alone, terms or picture: no price
 * depends on it, and a saved quote leaves it out. */
bool job_texts_paper(const char *key);

#endif
