/* SPDX-License-Identifier: MIT */
/* The signals that ask a program to end, held back while half-made files stand beside their
 * targets.
 *
 * Nothing is caught: a signal stays pending, its work is taken back where the program asks for it,
 * and it ends the program by the system's own means once the hold is over.  So no handler and no
 * global flag are needed, and the shell sees what it expects. */
#ifndef DOORCOST_REPORT_FILE_HOLD_H
#define DOORCOST_REPORT_FILE_HOLD_H

#include <signal.h>
#include <stdbool.h>

/* All 0: nothing is held. */
struct hold {
    sigset_t before; /* the mask to go back to */
    bool held;
};

/* From here SIGHUP, SIGINT and SIGTERM wait.  Does nothing where this hold is on already, or
 * where the system refuses: then they end the program at once, as ever.  Holds may stand within one
 * another; the outermost lets go. */
void hold_begin(struct hold *hold);

/* Whether one of them waits that is not ignored. */
bool hold_asked(const struct hold *hold);

/* Lets them through: where one waits, this does not return. */
void hold_end(struct hold *hold);

#endif
