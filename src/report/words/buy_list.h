/* SPDX-License-Identifier: MIT */
/* The buying list as the people read it who sell: a group for each kind of supplier, a line for
 * each thing, with the size and the count that it is asked for by. What a line takes several of
 * (boards of three sizes, panes, cans) stands in lines of its own below it. */
#ifndef DOORCOST_REPORT_WORDS_BUY_LIST_H
#define DOORCOST_REPORT_WORDS_BUY_LIST_H

#include "report/words/buy_note.h"

struct buy_line {
    const char *what;    /* in the shop's words; "" where size alone tells it from the line above */
    const char *ordered; /* in words that a supplier reads */
    const char *size;    /* as it is asked for: `5 x 96`, `1 gal`; "" */
    fig count;           /* how many, or how much of the unit that it has; none */
    const char *unit;    /* of a plain count: "boards", "packs"; "" where the figure has its own */
    const char *how_many; /* both in words: `22 boards`, `100 bf`; "" */
    fig price;            /* money for one of these; none: the line above has it */
    fig cost;             /* money for all; none: the line above has it, or it is not bought */
    struct buy_note why;  /* why so much, to who buys */
    const char *note;     /* that in words; "" */
    bool part;            /* of the line above it, which it does not add to */
    bool by_others;       /* named, not bought: others supply it, or the rack */
    bool by_parts;        /* its count is what is charged: what is ordered are the lines below it */
    fig beyond;           /* what these come to where the count is short of it; else none */
    const char *ordered_many; /* how_many as a supplier is asked for it */
};

/* What one kind of supplier sells. */
struct buy_group {
    enum cost_group group;
    const char *title; /* static */
    size_t first, count;
    fig total; /* money, of struct purchase */
};

enum { BUY_GROUPS = COST_BOUGHT_IN + 1 };

struct buy_list {
    struct buy_line *lines;
    size_t line_count, room;
    struct buy_group groups[BUY_GROUPS];
    size_t group_count;
    fig total; /* money for all */
    bool failed;
};

/* Lists what the estimate buys; it must have been asked for its purchase. Texts live in pool, the
 * lines on the heap: buy_list_clear frees them, also after a failure. false: out of memory. */
bool buy_list_make(struct buy_list *list, struct pool *pool, const struct estimate *estimate)
    __attribute__((warn_unused_result));

/* Frees the lines. */
void buy_list_clear(struct buy_list *list);

#endif
