/* SPDX-License-Identifier: MIT */
/* A saved quote: what `quote --json` printed, as the texts of the files that it was made from. They
 * stand under its key `inputs` (docs/json.md), written by report/json/json_inputs.c. */
#ifndef DOORCOST_READ_JOB_SAVED_H
#define DOORCOST_READ_JOB_SAVED_H

#include "read/job/job_texts.h"

/* Whether the file at path is taken for JSON: its name ends in `.json`, or the first of it that is
 * no blank is '{'. */
bool saved_is(const char *path);

/* Fills texts from the document at path; paths in values stay as the files have them. Each file of
 * the document is one of problems, with the document's name before its own. All lives in the pool
 * of problems. What is wrong goes to problems, and texts->job is not `open` then. false: memory is
 * out. */
bool saved_read(struct job_texts *texts, const char *path, struct problems *problems)
    __attribute__((warn_unused_result));

#endif
