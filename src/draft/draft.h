/* SPDX-License-Identifier: MIT */
/* A job file to be, from answers: new, or made of the lines of an old one.
 *
 * A table of questions (question.c) says which keys a job begins with, in the order of the file. An
 * answer is what was set, else what is offered: what the last job of the folder has, what the rates
 * have, what is usual. What a key means and may be stands in the reader's tables alone. */
#ifndef DOORCOST_DRAFT_DRAFT_H
#define DOORCOST_DRAFT_DRAFT_H

#include "draft/folder.h"
#include "model/job.h"
#include "model/rate_change.h"
#include "read/file/ini_edit.h"

#define MOST_QUESTIONS ((size_t)48)

struct draft;
struct question {
    const char *section, *key;
    const char *why; /* asked at a terminal with these words; NULL: it is not asked */
    bool own;        /* belongs to one job alone: no other goes on with it */
    const char *(*offer)(const struct draft *draft); /* NULL: nothing is offered */
    /* Whether the job has it, by the answers so far; of a key that it needs whether it is asked.
     * NULL: always. */
    bool (*wanted)(const struct draft *draft);
};

struct draft {
    struct pool *pool;           /* all that it makes lives there */
    const char *path;            /* of the job file to be */
    const struct folder *folder; /* round it */
    const struct rates *rates;   /* that it names; empty: not known yet */
    const char *old_path;        /* a job that is gone on from; NULL: none */
    const struct ini *old;
    bool from;                          /* the old one was asked for: its lines are kept */
    struct date date;                   /* today */
    const char *values[MOST_QUESTIONS]; /* of each question; NULL: left out */
    const struct rate_change *more;     /* what was set and is no question */
    size_t more_count;
};

/* All questions; *count: how many. Static. */
const struct question *questions(size_t *count);
/* Where a question stands among them; their count: there is none of that key. */
size_t question_find(const char *section, const char *key);

/* The answer so far; NULL: none. */
const char *draft_value(const struct draft *draft, const char *section, const char *key);
/* Of bare lengths: by the answer to `unit`. */
enum length_unit draft_unit(const struct draft *draft);

/* What is offered for a question: what the old job has, where another job goes on with it and these
 * rates take it, else what the question offers. In pool; NULL: nothing. */
const char *draft_offer(struct draft *draft, const struct question *question);
/* What may be answered, with commas between; in pool. NULL: not told. */
const char *draft_choices(const struct draft *draft, const struct question *question);
/* Whether text would be read as the answer; what is wrong with it goes to problems. */
bool draft_takes(const struct draft *draft, const struct question *question, const char *text,
                 struct problems *problems);

/* The name by which a job in the folder of path `to` names what a job at `from` names so. In pool;
 * NULL: out of memory. */
const char *draft_renamed(const char *name, const char *from, const char *to, struct pool *pool);

/* What became of the keys of an old job: lists with commas; "" where there are none. */
struct draft_told {
    const char *kept, *changed, *dropped;
};

/* The lines of the job file: those of the old one where that was asked for (old: its lines), and
 * told of in *told; else new ones, and *told is empty. false: out of memory, or a value can stand
 * in no line: then *bad is its key, else NULL. */
bool draft_lines(const struct draft *draft, const struct source *old, struct ini_lines *lines,
                 struct draft_told *told, const char **bad) __attribute__((warn_unused_result));

#endif
