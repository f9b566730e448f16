/* SPDX-License-Identifier: MIT */
/* A line on the terminal that tells what is going on, once it has gone on for a second: `doorcost:
 * estimating the job, 3 s`.  It is cleared when the work is done, and nothing of it is ever written
 * to a file or a pipe. */
#ifndef DOORCOST_COMMAND_PROGRESS_H
#define DOORCOST_COMMAND_PROGRESS_H

#include <stdbool.h>
#include <stdio.h>
#include <threads.h>

struct progress {
    FILE *err;
    const char *what; /* static */
    thrd_t clock;
    mtx_t lock;
    cnd_t changed;
    bool runs; /* the clock was started */
    bool done; /* under the lock: the work is */
};

/* Begins to count, where err is a terminal that takes a line back. what: static, as `estimating the
 * job`. progress must stay where it is, and nobody may write to the terminal, until progress_end is
 * called. Where there is no memory for a clock, nothing is shown. */
void progress_begin(struct progress *progress, FILE *err, const char *what);
/* Clears the line, if there is one; safe to call again. */
void progress_end(struct progress *progress);

#endif
