/* SPDX-License-Identifier: MIT */
/* A run of `new --rates`: for src/command/new_rates.c and rates_*.c only. */
#ifndef DOORCOST_COMMAND_RATES_RUN_H
#define DOORCOST_COMMAND_RATES_RUN_H

#include "command/new_files.h"
#include "draft/draft.h"
#include "read/file/source.h"

struct rates_run {
    const struct request *request;
    struct streams streams;
    struct pool pool;
    struct problems problems;
    struct folder places[2]; /* the folder of the file; where that is `rates`, the one above, too */
    size_t place_count;
    const char *from; /* the file that it is made of; NULL: the rates that ship */
    bool metric;      /* of these */
    bool few;         /* no more is asked than who the shop is and what its hours cost */
    struct source source;
    struct ini ini;
    struct ini_lines lines;
    const char *path; /* of the file to be */
    const char *own;  /* what `own` names */
    bool invented;    /* numbers are as shipped */
    struct ini shipped;
    struct new_files files;
};

/* What the reader says of a change of the file that it is made of; in the run's pool. NULL:
 * nothing. */
const char *rates_change_fault(struct rates_run *run, const struct rate_change *change);
/* Makes the change, and names what is the shop's own by it. false: out of memory, or the value can
 * stand in no line. */
bool rates_put(struct rates_run *run, const struct rate_change *change)
    __attribute__((warn_unused_result));

/* For a job that the rates that ship are put beside: who the shop is and what its hours cost, asked
 * at the terminal. *text: those rates with the answers, in pool; the rates as they ship where all
 * of them are kept. Status: as of the command. */
enum status rates_ask_few(const struct request *request, struct streams streams, bool metric,
                          struct pool *pool, const char **text);

/* rates_walk.c: asks for the numbers that must be the shop's own, but those that --set gives, and
 * puts what is answered: of [shop] each, of goods and work those that are named. Status: as of the
 * command. */
enum status rates_walk(struct rates_run *run);
/* rates_steps.c: whether the key of [shop] is a number that `own` names. */
bool rates_walk_number(const char *key);

#endif
