/* SPDX-License-Identifier: MIT */
/* What the files of the tape share; for src/figure only. */
#ifndef DOORCOST_FIGURE_TAPE_PARTS_H
#define DOORCOST_FIGURE_TAPE_PARTS_H

#include "figure/tape.h"

/* Set in a word of the operands: subtracted in a sum, below the line in a ratio. */
#define TAPE_MINUS_BIT 0x80000000u

/* What the chooser of the figure whose operands stand from key - 1 on gave; key 0: nothing yet. */
struct chosen_last {
    uint32_t key;
    int64_t out[CHOOSER_MOST_OUTPUTS];
};

/* The number of a label, by its address: one slot for all labels whose addresses end alike, which
 * holds the last of them. */
#define LABEL_SLOTS ((size_t)1024) /* a power of two */

struct label_slot {
    const char *what;
    uint16_t number;
};

/* A given by its hash, which is kept so that other givens need not be looked at. id 0: free. */
struct given_slot {
    uint32_t id, hash;
};

/* Keeps the first fault and where it was. */
void tape_set_fault(struct tape *tape, enum tape_fault fault, fig at);

/* The number of a label; 0 and a fault when memory is out. */
uint16_t tape_label_number(struct tape *tape, const char *what);

/* Adds a word to the operands; false and a fault when memory is out. */
bool tape_add_word(struct tape *tape, uint32_t word);

/* Adds a figure whose operands are the words from made.first on, under label and the tape's present
 * subject, and works its value out; none when memory is out. */
fig tape_add_figure(struct tape *tape, struct figure made, const char *what);

#endif
