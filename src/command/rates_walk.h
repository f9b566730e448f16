/* SPDX-License-Identifier: MIT */
/* What `new --rates` asks, step by step: for src/command/rates_steps.c and rates_walk.c only. */
#ifndef DOORCOST_COMMAND_RATES_WALK_H
#define DOORCOST_COMMAND_RATES_WALK_H

#include "command/rates_run.h"

struct walk_step {
    const char *section, *key; /* key NULL: it asks which sections of a kind are gone through */
    const char *name;          /* what the question calls it */
    const char *why, *choices;
    const char *value; /* as it stands in the file; NULL: not there */
    const char *offer;
    const struct walk_step *which; /* that asks whether this one is asked; NULL: it is */
    const char *of;                /* as the answer to that names it */
    bool needed;
    bool asked;
    const char *answer;
};

struct walk {
    struct rates_run *run;
    struct walk_step *steps;
    size_t count;
    const struct walk_step *now; /* that is asked */
};

/* Finds what there is to ask, by the rates of the run. All of it in the run's pool. false: out of
 * memory. */
bool walk_find(struct walk *walk) __attribute__((warn_unused_result));
/* Takes out the words of [shop] that a few questions leave out: no other shop may keep them. false:
 * out of memory. */
bool walk_drop_words(struct rates_run *run) __attribute__((warn_unused_result));

#endif
