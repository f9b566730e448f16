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
    struct table list;
};

/* Reads the three files of the job at path. All lives in the pool of problems. Values that name a
 * file become its whole path, so that they mean the same beside any other file; the table of woods
 * that lies beside the rates unnamed is named. What is wrong goes to problems; a file that could
 * not be read is not `open`. false: memory is out. */
bool job_texts_read(struct job_texts *texts, const char *path, struct problems *problems)
    __attribute__((warn_unused_result));

#endif
