/* SPDX-License-Identifier: MIT */
/* The tape of figures: every number of a job from the sizes of parts on, with what it was made
 * from.
 *
 * A figure is a fixed-point integer with a unit and decimals, a label ("board feet, net"), a
 * subject (the door, the material), the operation that made it and the figures it was made from.
 * Figures point backward only, so a tape can be replayed from its givens in one pass, written as
 * formulas of a workbook, explained as a tree, and checked by anybody with a pocket calculator:
 * decimals shown are decimals used.
 *
 * Rounding is half away from zero, once per operation, in 128-bit integers.  Every stored |value|
 * stays under 10^12, so that the doubles of a spreadsheet program agree.
 *
 * Operators return no status.  The first fault (memory, a value too large, a division by nothing)
 * sticks; the caller asks tape_fault once a stage.  After a fault operators still return figures,
 * whose values mean nothing. */
#ifndef DOORCOST_FIGURE_TAPE_H
#define DOORCOST_FIGURE_TAPE_H

#include "base/index.h"
#include "base/pool.h"
#include "base/problem.h"
#include "figure/unit.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* The handle of a figure; id 0 is none. One field, so that dollars do not add to inches by
 * accident. */
typedef struct fig {
    uint32_t id;
} fig;

/* Up to three figures above or below the line of a ratio; unused ones are none. */
typedef struct figs {
    fig f[3];
} figs;

enum figure_op {
    OP_GIVEN,     /* read from a file, measured from a drawing, or published */
    OP_SUM,       /* a + b - c ... */
    OP_TOTAL,     /* count x each + count x each ... */
    OP_RATIO,     /* up to three figures over up to three, rounded once */
    OP_LARGER,    /* the larger of two */
    OP_SMALLER,   /* the smaller of two */
    OP_UP,        /* up to a multiple of a step */
    OP_PICK_UPTO, /* from a table: the value beside the first limit that is not less; past the last,
                     the last */
    OP_PICK_FROM, /* from a table: the value beside the last limit that is not more; below the
                     first, the first */
    OP_CHOSEN, /* by a named pure function: replay calls it again, a spreadsheet shows it plain */
    OP_COUNT
};

enum tape_fault { TAPE_OK, TAPE_MEMORY, TAPE_TOO_LARGE, TAPE_DIVISION };

/* Where a given comes from: a place in a file, or a published source; one of the two. */
struct origin {
    struct place place;
    bool worked; /* worked out from what stands there before figures begin; else it stands there */
    const char *source;
};

/* An operand of a figure as others see it. minus: subtracted in a sum, below the line in a ratio.
 * In a total operands come in pairs (count, each); in a pick the picked-by figure, then pairs
 * (limit, value). */
struct operand {
    fig f;
    bool minus;
};

/* A named pure function that chooses several values at once (containers to buy, a cutting plan):
 * the same operands give the same choice on every machine. in: the operands' values, scaled to 6
 * decimals. out: outputs values at decimals 0, as many as asked for by output number.  Returns
 * false when there is no answer. */
#define CHOOSER_MOST_OUTPUTS 128

struct chooser {
    const char *name;
    bool (*choose)(const int64_t *in, size_t count, int64_t *out, size_t outputs);
};

struct history;
struct chosen_last;
struct label_slot;

struct tape {
    uint64_t *values;          /* of each figure value, unit and decimals; [0] is none */
    struct history *histories; /* one beside each value; only of a traced tape */
    uint32_t *words; /* operands; of a tape that is not traced, those of the last figure alone */
    struct origin *origins;
    const char **labels;
    struct label_slot *label_slots; /* finds the number of a label that was used before */
    const char **subjects;
    const struct chooser **choosers;
    struct chosen_last *last; /* what the last chooser gave: its outputs follow each other */
    struct index givens; /* finds an equal given of a traced tape, by the number of its figure */
    uint32_t *seen; /* of a tape that is not traced: by its value, a figure that was made before */
    size_t value_room, history_room, word_room, origin_room;
    size_t label_room, subject_room, chooser_room;
    const char *fault_label, *fault_subject; /* of the first figure that could not be made */
    uint32_t count, word_count, origin_count, label_count, subject_count, chooser_count;
    uint32_t about; /* the subject of figures made from now on */
    enum tape_fault fault;
    bool traced;            /* how its figures came about is kept */
    uint8_t money_decimals; /* of computed money; 2 unless tape_set_money says otherwise */
};

/* traced: how each figure came about is kept, so that the tape can be asked for labels, subjects,
 * operations, operands and origins, set and replayed.  A tape that is not traced knows values,
 * units and decimals alone: for estimates of which only results are wanted.  Its givens, and its
 * figures about anything but the job, of one value, unit and decimals may be one figure, whatever
 * they are called: of a long list few are not. */
void tape_init(struct tape *tape, bool traced);
/* Frees all that the tape holds; its figures are dead. */
void tape_clear(struct tape *tape);

/* How many decimals computed money has from now on: those of the currency, 0 to 4. */
void tape_set_money(struct tape *tape, uint8_t decimals);
/* Decimals of a computed figure of unit: those of the unit, for money those of the currency. */
uint8_t tape_unit_decimals(const struct tape *tape, enum unit unit);

/* What the next figures are about. name: borrowed, must outlive the tape (static, or of the job's
 * pool). The number that it returns may be given to tape_about_again. */
uint32_t tape_about(struct tape *tape, const char *name);
/* The next figures are about a subject that tape_about has numbered. */
void tape_about_again(struct tape *tape, uint32_t subject);
/* The next figures are about the job itself, as those of a new tape are. */
void tape_about_job(struct tape *tape);

/* --- makers.  what: the label, static.  Results with a unit argument have that unit's decimals.
 * ---------------------- */

/* A given of a file: value / 10^decimals of unit, as written (decimals 0 to 6).  The same value of
 * the same place under the same label is one figure, however often it is asked for, so that a rate
 * has one home. */
fig tape_given(struct tape *tape, const char *what, enum unit unit, uint8_t decimals, int64_t value,
               struct place place);
/* The same of what geometry has worked out from what stands at that place, as the width of a door
 * from its opening. */
fig tape_worked(struct tape *tape, const char *what, enum unit unit, uint8_t decimals,
                int64_t value, struct place place);
/* A given of published origin or by definition; source: names it, static or of the job's pool. */
fig tape_constant(struct tape *tape, const char *what, enum unit unit, uint8_t decimals,
                  int64_t value, const char *source);

/* The sum of count terms (a term of fig_minus is subtracted); none terms are passed over.  Exact:
 * decimals are the most that a term or the unit has. */
fig fig_sum(struct tape *tape, const char *what, enum unit unit, const fig *terms, size_t count);
/* The figure as one to be subtracted; for terms of a sum only. */
fig fig_minus(fig f);
/* a + b, b may be of fig_minus; unit of a. */
fig fig_plus(struct tape *tape, const char *what, fig a, fig b);

/* counts[0] x each[0] + counts[1] x each[1] + ...; pairs with a none are passed over. Rounded once
 * to the unit's decimals. */
fig fig_total(struct tape *tape, const char *what, enum unit unit, const fig *counts,
              const fig *each, size_t count);

/* over / under, rounded once. At least one over; under may be empty. 0 / 0 is 0: the
 * share of a cost that no one has a part in. */
fig fig_ratio(struct tape *tape, const char *what, enum unit unit, figs over, figs under);

/* A ratio with decimals of its own, for counts by which something is sold whole. */
fig fig_ratio_to(struct tape *tape, const char *what, enum unit unit, uint8_t decimals, figs over,
                 figs under);

/* The larger of two of one unit; a where they are equal. Unit of a. */
fig fig_larger(struct tape *tape, const char *what, fig a, fig b);
/* The smaller of two, likewise. */
fig fig_smaller(struct tape *tape, const char *what, fig a, fig b);

/* a raised to the next multiple of step (> 0); a multiple stays. Unit and decimals of step. */
fig fig_up(struct tape *tape, const char *what, fig a, fig step);

/* From a table of count rows with ascending limits the value beside the first limit that is not
 * less than `by`; past the last, the last. Unit and decimals of the first value. */
fig fig_pick_upto(struct tape *tape, const char *what, fig by, const fig *limits, const fig *values,
                  size_t count);
/* The same, beside the last limit that is not more than `by`; below the first, the first. */
fig fig_pick_from(struct tape *tape, const char *what, fig by, const fig *limits, const fig *values,
                  size_t count);

/* Outputs 0 to outputs - 1 (at most CHOOSER_MOST_OUTPUTS) of a chooser over the operands into out;
 * decimals 0.  The chooser is called once for all of them. */
void fig_chosen(struct tape *tape, const char *what, enum unit unit, const struct chooser *chooser,
                const fig *operands, size_t count, fig *out, size_t outputs);

/* The same where the caller has just called the chooser with these operands: its outputs are taken
 * as known, and the chooser is asked again only by a replay.  what: a label an output. */
void fig_chosen_known(struct tape *tape, const char *const *what, enum unit unit,
                      const struct chooser *chooser, const fig *operands, size_t count,
                      const int64_t *known, fig *out, size_t outputs);

/* --- asking
 * ----------------------------------------------------------------------------------------------------------
 */

/* Whether there is no figure: what is not known or not asked for. */
static inline bool fig_none(fig f) {
    return f.id == 0;
}
/* Whether both are one figure of a tape. */
static inline bool fig_same(fig a, fig b) {
    return a.id == b.id;
}
/* The first fault of all; after one no value means anything. */
enum tape_fault tape_fault(const struct tape *tape);
/* What the figure of that fault is called; "" before, and for want of memory. */
const char *tape_fault_label(const struct tape *tape);
/* What it is about; "" likewise. */
const char *tape_fault_subject(const struct tape *tape);
/* The unit of a figure; of none UNIT_NUMBER. */
enum unit tape_unit(const struct tape *tape, fig f);
/* Its decimals; of none 0. */
uint8_t tape_decimals(const struct tape *tape, fig f);
/* Decimals of it that a person reads: of what was given all, of computed percents at most two, of
 * cubic meters four. The value keeps all. Of a tape that is not traced what has as many decimals as
 * computed figures is taken as one. */
uint8_t tape_read_decimals(const struct tape *tape, fig f);
/* Its value at its decimals: 4.10 is 410 at 2; of none 0. */
int64_t tape_amount(const struct tape *tape, fig f);
/* Its value rescaled to `decimals` (half away from zero when fewer). */
int64_t tape_scaled(const struct tape *tape, fig f, uint8_t decimals);
/* The operation that made it; of none OP_GIVEN. This and what follows is for a traced tape. */
enum figure_op tape_op(const struct tape *tape, fig f);
/* What it is about, as tape_about numbers it. */
uint32_t tape_subject(const struct tape *tape, fig f);
/* What it is called. Borrowed. */
const char *tape_label(const struct tape *tape, fig f);
/* The name of what it is about; "" for the job itself. Borrowed. */
const char *tape_subject_name(const struct tape *tape, fig f);
/* Where a given comes from; of others empty. */
struct origin tape_origin(const struct tape *tape, fig f);
/* How many operands it was made of. */
size_t tape_operands(const struct tape *tape, fig f);
/* Operand i of these, i below tape_operands. */
struct operand tape_operand(const struct tape *tape, fig f, size_t i);
/* The chooser and output of a chosen figure; NULL for others. */
const struct chooser *tape_chooser(const struct tape *tape, fig f, uint32_t *output);
/* An operation as JSON names it; static. */
const char *figure_op_name(enum figure_op op);

/* Writes a value at its decimals ("4.10", "-0.5", "18") into text (32 bytes are enough); returns
 * text. */
char *figure_text(int64_t value, uint8_t decimals, char *text, size_t size);
/* The same for a figure. */
char *tape_text(const struct tape *tape, fig f, char *text, size_t size);

/* A figure in floating point, 0 of none: for an order of what matters or a fit to compare with, no
 * amount that anybody pays. */
double tape_real(const struct tape *tape, fig f);

/* What of a result rests on each figure before it, by figure number: by how much the result would
 * grow, in its own unit, if that figure were doubled and the slope stayed what it is here;
 * roundings and choices stay as they are. The caller frees; NULL: out of memory. For a traced
 * tape. */
double *tape_weigh(const struct tape *tape, fig result) __attribute__((warn_unused_result));

/* --- replay
 * ----------------------------------------------------------------------------------------------------------
 */

/* Puts another value (at the figure's own decimals) into a given; tape_replay then carries it
 * through. */
void tape_set(struct tape *tape, fig given, int64_t value);

/* Makes every figure again from its operands, in order. Returns how many values changed; asks
 * nothing of the fault before. On a tape whose givens were not touched the answer is 0. */
uint32_t tape_replay(struct tape *tape);

#endif
