/* SPDX-License-Identifier: MIT */
/* What stands round a job file to be: jobs, rates, lists. Of a folder FOLDER_MOST files are looked
 * at, by their names. */
#ifndef DOORCOST_DRAFT_FOLDER_H
#define DOORCOST_DRAFT_FOLDER_H

#include "base/length.h"
#include "base/problem.h"
#include "read/file/ini.h"

#define FOLDER_MOST ((size_t)1000)

struct folder_rates {
    const char *name;
    enum length_unit unit;
    bool own; /* numbers of it are the shop's own: it says `own`, or nothing of being invented */
};

struct folder_list {
    const char *name;
    const char *measure; /* what its headings say that sizes are of; NULL: nothing */
    const char *strange; /* headings like no column, with commas between; NULL: none */
    bool whole;          /* it has all columns that are needed */
};

struct folder_job {
    const char *path; /* as the program opens it */
    struct ini ini;
};

/* Names of files are as a job in the folder names them. */
struct folder {
    struct problems problems; /* of the files that were looked at, which nobody is told; all that is
                                 below lives in it */
    struct folder_job *jobs;  /* of the folder itself */
    size_t job_count;
    /* Of the first place that has any: rates, ../rates, the folder, above it; before them those of
     * all these places that are the shop's own. */
    struct folder_rates *rates;
    size_t rates_count;
    struct folder_list
        *lists; /* with sizes of doors, that no job of the folder names; whole ones first */
    size_t list_count;
};

/* Looks round the job file to be at path. folder: always left so that folder_clear may be called.
 * false: out of memory. */
bool folder_look(struct folder *folder, const char *path) __attribute__((warn_unused_result));
/* Frees all that was found. */
void folder_clear(struct folder *folder);

/* The job of the latest date, of several the last by name; NULL: there is none. */
const struct folder_job *folder_last(const struct folder *folder);
/* The first rates of the folder in that unit, else the first; NULL: there are none. Borrowed. */
const struct folder_rates *folder_rates(const struct folder *folder, enum length_unit unit);
/* Whether the rates that a job names are in that unit, and none of their numbers is the shop's own.
 */
bool folder_is_shipped(const struct folder_job *job, enum length_unit unit);
/* A value of [job] and so on, NULL: the file has none. */
const char *ini_given(const struct ini *ini, const char *section, const char *key);

#endif
