/* SPDX-License-Identifier: MIT */
/* Questions that the job answers beforehand: `accept = leaf-wide D01` of [job]. */
#ifndef DOORCOST_READ_JOB_ACCEPT_H
#define DOORCOST_READ_JOB_ACCEPT_H

#include "model/construction.h"
#include "read/key/key.h"

/* Every question that can be accepted, by its id: the warnings of docs/problems.md. */
extern const char *const question_ids[];
extern const size_t question_id_count;

/* Reads `ID`, `ID ROW` or `ID SECTION` between commas into struct acceptance *, size_t beside it;
 * an id that is no question is reported. */
key_read read_accept;

/* Makes the questions among problems that the job answers accepted: those of that id, and where the
 * answer names a row of the door list or a section of rates or job, those on its lines. all: every
 * question of the job was asked, so an answer to none is warned of. false: memory is out. */
bool accept_apply(const struct job *job, struct problems *problems, bool all)
    __attribute__((warn_unused_result));

#endif
