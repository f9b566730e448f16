/* SPDX-License-Identifier: MIT */
/* Questions at a terminal, answered a line each. */
#ifndef DOORCOST_COMMAND_ASK_H
#define DOORCOST_COMMAND_ASK_H

#include "base/pool.h"
#include "report/text/grid.h"

/* Whether there is somebody to ask: the answers are typed at a terminal, and what is asked is seen
 * at one. in may be NULL: nobody. */
bool ask_can(FILE *in, FILE *out);

/* One question. */
struct ask {
    const char *why;     /* a line or two above it */
    const char *choices; /* what may be answered; NULL: not told */
    const char *name;    /* of what is asked for */
    const char *offer;   /* what Enter takes; NULL: nothing */
    const char *like;  /* an answer whose unit a bare number gets where nothing is offered; NULL */
    const char *ended; /* what is said where the answers end; NULL: nothing was written */
    bool needed;       /* it may not be left out */
    bool back;         /* `<` asks for the question before */
};

/* What is wrong with an answer, in words for the user; NULL: nothing. context: of the caller. */
typedef const char *ask_fault(void *context, const char *answer);

enum ask_result {
    ASK_ANSWERED,
    ASK_BACK,  /* to the question before */
    ASK_ENDED, /* the answers ended, which is said; nothing more can be asked */
    ASK_MEMORY
};

/* Asks on out until an answer has no fault: Enter takes the offer, `-` leaves it out (*answer is
 * NULL), `<` goes back where that may be. A bare number that lacks a unit is taken in that of the
 * offer, and told so. *answer: in pool, or the offer. */
enum ask_result ask(const struct ask *ask, FILE *in, FILE *out, ask_fault *fault, void *context,
                    struct pool *pool, const char **answer) __attribute__((warn_unused_result));

/* Asks what is answered by yes or no, and is needed; choices of *ask are told by this. *yes: the
 * answer. */
enum ask_result ask_whether(struct ask ask, FILE *in, FILE *out, struct pool *pool, bool *yes)
    __attribute__((warn_unused_result));

#endif
