/* SPDX-License-Identifier: MIT */
/* Sheets being filled, and the parts that are on none of them yet. */
#ifndef DOORCOST_CUT_SHEET_SHEET_STATE_H
#define DOORCOST_CUT_SHEET_SHEET_STATE_H

#include "cut/common/cut_random.h"
#include "cut/sheet/sheet_tree.h"

/* Empty when all zero. A slot without parts is a sheet not bought. */
struct sheet_state {
    const struct cut_model *model;
    size_t slot_count, slot_room;
    struct sheet_tree *slots;
    bool *touched;   /* one a slot: changed since the caller last looked */
    double *room;    /* one a slot: no larger part has a place there; -1.0: no parts */
    int64_t *out;    /* one a kind: parts on no sheet */
    double out_area; /* their area */
    int64_t cost;    /* of the sheets bought */
    int64_t *left;   /* one a bin: copies not bought */
};

/* How a filling goes about its work. */
struct sheet_fill {
    int64_t budget; /* the sheets may cost so much */
    int order;      /* what makes a part early, see sheet_state.c; 0 to SHEET_ORDERS - 1 */
    double shuffle; /* 0: strictly in order; 1: up to twice as early by chance */
    struct tree_weights weights;
    double noise; /* chance in the choice of a place */
    size_t bin;   /* the only one bought new, or SIZE_MAX */
};

#define SHEET_ORDERS 5

/* No sheets, all parts out. false: an allocation failed; the state is cleared by its owner. */
__attribute__((warn_unused_result)) bool sheet_state_init(struct sheet_state *state,
                                                          const struct cut_model *model);
/* Frees what a state holds and empties it. */
void sheet_state_clear(struct sheet_state *state);

/* Makes `to` equal to `from`: all slots, or those touched in either. false: an allocation failed.
 */
__attribute__((warn_unused_result)) bool sheet_state_copy(struct sheet_state *to,
                                                          const struct sheet_state *from);

/* Takes the part that is `node` of the slot's tree off its sheet; it is out then. */
void sheet_state_take_out(struct sheet_state *state, size_t slot, int32_t node);
/* Takes all parts off a sheet, which is no longer bought then. */
void sheet_state_empty(struct sheet_state *state, size_t slot);

/* Puts parts that are out on sheets, buying new ones within the budget; what finds no place stays
 * out. order: room for one entry a kind. Work is added to *spent. false: an allocation failed. */
__attribute__((warn_unused_result)) bool sheet_state_fill(struct sheet_state *state,
                                                          const struct sheet_fill *fill,
                                                          struct cut_random *random,
                                                          int64_t *spent);

#endif
