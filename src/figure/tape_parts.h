/* SPDX-License-Identifier: MIT */
/* What the files of the tape share; for src/figure only. */
#ifndef DOORCOST_FIGURE_TAPE_PARTS_H
#define DOORCOST_FIGURE_TAPE_PARTS_H

#include "figure/tape.h"

/* A figure as it is made. */
struct figure {
    int64_t value;
    uint32_t first;    /* into the operands; of a given, into the origins */
    uint32_t operands; /* how many */
    uint8_t op, unit, decimals;
    uint8_t output; /* of a chosen figure: which output of its chooser */
};

/* How a figure came about. */
struct history {
    uint32_t first, operands, subject; /* first, operands: as in struct figure */
    uint16_t label;
    uint8_t op, output;
};

#define VALUE_MOST ((INT64_C(1) << 47) - 1)

/* What a tape keeps of every figure in one word, for there are tens of millions of a long list:
 * the value in 48 bits, the unit and the decimals in 8 each. A value that does not fit, which is a
 * fault of the tape, is kept as the largest that does: a replay finds it again. */
static inline uint64_t value_pack(int64_t value, uint8_t unit, uint8_t decimals) {
    const int64_t least = value < -VALUE_MOST ? -VALUE_MOST : value;
    return (uint64_t)(least > VALUE_MOST ? VALUE_MOST : least) << 16 | (uint64_t)unit << 8 |
           decimals;
}
/* The value of a packed one, at its decimals. */
static inline int64_t value_amount(uint64_t packed) {
    return (int64_t)packed >> 16; /* every compiler that has 128-bit integers keeps the sign */
}
/* Its unit, of enum unit. */
static inline uint8_t value_unit(uint64_t packed) {
    return (uint8_t)(packed >> 8);
}
/* Its decimals. */
static inline uint8_t value_decimals(uint64_t packed) {
    return (uint8_t)packed;
}

/* Set in a word of the operands: subtracted in a sum, below the line in a ratio. */
#define TAPE_MINUS_BIT 0x80000000u

/* What a tape keeps of a figure; 0 of none, and of what is not on it. */
static inline uint64_t tape_packed(const struct tape *tape, fig f) {
    const uint32_t id = f.id & ~TAPE_MINUS_BIT;
    return id < tape->count ? tape->values[id] : 0;
}

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

/* How many values a tape that is not traced remembers figures of. */
#define SEEN_SLOTS ((size_t)16384) /* a power of two */

/* Keeps the first fault; label and subject: of the figure that has it. */
void tape_set_fault(struct tape *tape, enum tape_fault fault, const char *label,
                    const char *subject);
/* Notes that memory is out. */
void tape_out_of_memory(struct tape *tape);

/* The number of a label; 0 and a fault when memory is out. */
uint16_t tape_label_number(struct tape *tape, const char *what);

/* Where the operands of a new figure begin: its `first`, to be asked before they are added. */
uint32_t tape_begin_words(struct tape *tape);
/* Adds a word to the operands; false and a fault when memory is out. */
static inline bool tape_add_word(struct tape *tape, uint32_t word) {
    bool failed = tape->word_count == UINT32_MAX;
    tape->words = (uint32_t *)array_grow(
        tape->words, &tape->word_room, (size_t)tape->word_count + 1, sizeof *tape->words, &failed);
    if (failed) {
        tape_out_of_memory(tape);
        return false;
    }
    tape->words[tape->word_count++] = word;
    return true;
}

/* Adds a figure whose operands are the words from made->first on, under label and the tape's
 * present subject, and computes its value; none when memory is out. */
fig tape_add_figure(struct tape *tape, const struct figure *made, const char *what);

/* A figure whose value is known, |value| < 10^12, of a tape that is not traced; none when memory
 * is out. */
fig tape_add_value(struct tape *tape, int64_t value, enum unit unit, uint8_t decimals);

/* The decimals of a figure whose op, operands and least decimals are set: as many as the operands
 * that it sums, compares or picks from have, so that nothing of these is rounded. */
uint8_t figure_decimals(const struct tape *tape, const struct figure *made);

/* Makes figure id of a traced tape again from its operands, with more decimals where they have
 * got more; *changed: it has another value than before. What is wrong is given, not kept. */
enum tape_fault tape_make_again(struct tape *tape, uint32_t id, bool *changed)
    __attribute__((warn_unused_result));

#endif
