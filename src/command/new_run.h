/* SPDX-License-Identifier: MIT */
/* A run of `new` for a job file: its answers; for src/command/new_*.c only. */
#ifndef DOORCOST_COMMAND_NEW_RUN_H
#define DOORCOST_COMMAND_NEW_RUN_H

#include "command/new_files.h"
#include "draft/draft.h"
#include "read/file/source.h"

/* A run; all of it is cleared at its end. */
struct new_run {
    const struct request *request;
    struct streams streams;
    struct pool pool;
    struct problems problems; /* of the old job and the rates; what they hold lives in it */
    struct folder folder;
    struct draft draft;
    struct rates rates;
    struct source old_source; /* of --from */
    struct ini old;
    bool set[MOST_QUESTIONS];          /* by --set */
    bool asked[MOST_QUESTIONS];        /* at the terminal */
    const char *typed[MOST_QUESTIONS]; /* in place of what is offered; NULL: that was taken */
    bool asks;
    const char *shipped;    /* the path that the shipped rates go to; NULL: there are rates */
    const char *rates_text; /* of them, with what was asked for; NULL: as they ship */
    const char *list; /* the path of a list that is written to be filled in; NULL: there is one */
    struct list_draft list_draft;
    struct new_files files;
};

/* What --set says: answers to questions, and more. Any status but STATUS_DONE, here and below: said
 * on err. */
enum status new_take_sets(struct new_run *run);
/* The old job: that of --from, else the last of the folder. */
enum status new_take_old(struct new_run *run);
/* Answers the questions on unit and rates (of_rates), or all others: asks, or takes what is
 * offered.
 */
enum status new_answer_all(struct new_run *run, bool of_rates);
/* Sees to the list that is to be filled in: that of --list, which the job names then. */
enum status new_take_list(struct new_run *run);
/* new_accept.c: where there is somebody to ask, asks of each warning whether it is meant so, and
 * writes those that are into the job, which stands at its path; they are accepted then. */
enum status new_accept(struct new_run *run, const struct job *job, struct problems *problems);
/* new_adopt.c: of the jobs of the folder that go by rates of that unit as shipped, or by those at
 * `from` (NULL: none), asks whether each shall go by those at path, where there is somebody to ask;
 * else says how it would. *job: the last of them; unchanged where there is none. */
enum status new_adopt(const struct folder *folder, const char *path, const char *from,
                      enum length_unit unit, struct pool *pool, struct streams streams,
                      const char **job);
/* Says the problems of the run; STATUS_INPUTS. */
enum status new_say_problems(struct new_run *run);

#endif
