/* SPDX-License-Identifier: MIT */
/* A single value of the job file, before there is one: whether the reader would take it, and what
 * it may be. */
#ifndef DOORCOST_READ_JOB_JOB_VALUE_H
#define DOORCOST_READ_JOB_JOB_VALUE_H

#include "model/job.h"
#include "read/key/key.h"

/* The row of a key of [job], [make] or [sale]; NULL: there is none. Static. */
const struct key *job_key(const char *section, const char *key);
/* What such a section is about: its line in docs/formats.md. Static; NULL: there is none. */
const char *job_section_help(const char *section);

/* Reads text (trimmed, not empty) as the value of key, which is a row of that section; what is
 * wrong with it goes to problems. rates: where names are looked up. path: of the job file. */
void job_value_check(const char *section, const struct key *key, const char *text,
                     const struct rates *rates, enum length_unit unit, const char *path,
                     struct problems *problems);

/* The row of a column of the door list; NULL: there is none. Static. */
const struct key *list_key(const char *column);

/* What a value may be: names of the rates, or words; *count 0: anything of its kind. In pool; NULL
 * when memory is out. */
const char **job_value_list(const struct key *key, const struct rates *rates, struct pool *pool,
                            size_t *count);
/* What a value may be, with commas between: names of the rates, or words; NULL: anything of its
 * kind. In pool. */
const char *job_value_choices(const struct key *key, const struct rates *rates, struct pool *pool);

#endif
