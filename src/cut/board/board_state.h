/* SPDX-License-Identifier: MIT */
/* A plan of boards that parts are taken out of and put into one at a time, and that goes back to
 * what it was. For board_search.c only.
 *
 * Sizes are grown by a kerf. Each board is the cheapest that holds its strips; no stock of the job
 * is limited. What is taken out or put in is noted, so that it can be undone. */
#ifndef DOORCOST_CUT_BOARD_BOARD_STATE_H
#define DOORCOST_CUT_BOARD_BOARD_STATE_H

#include "base/pool.h"
#include "cut/board/board_plan.h"

#define BOARD_NONE UINT32_MAX /* no part, strip, board or room */

struct loose_part {
    int64_t length, width;
    size_t item;
    uint32_t strip;      /* that it is in; BOARD_NONE: it is out */
    uint32_t next, prev; /* in the strip */
};

struct loose_strip {
    int64_t width, used;
    uint32_t board, head; /* its first part; BOARD_NONE: there is no such strip */
    uint32_t next, prev;  /* on the board */
};

struct loose_board {
    int64_t across; /* of all strips */
    double area;    /* of all parts */
    uint32_t head;  /* its first strip */
    uint32_t room;  /* BOARD_NONE: there is no such board */
    uint32_t place; /* in `live` */
};

/* What a stock has to give. */
struct board_room {
    int64_t along, across, price;
    double area;
    size_t stock;
};

struct board_note {
    bool put;
    uint32_t part, strip, board, room; /* where it is or was; the room the board had before */
};

struct board_state {
    const struct board_job *job;
    struct pool pool;                        /* holds all arrays */
    struct board_room rooms[CUT_STOCKS_MAX]; /* cheapest first */
    uint32_t room_count;
    double area_price; /* the least that a square of the job's unit costs */
    struct loose_part *parts;
    struct loose_strip *strips; /* no more than parts, as boards are */
    struct loose_board *boards;
    uint32_t *free_strips, *free_boards; /* numbers that none has; the next is the last */
    uint32_t *live;                      /* numbers of boards */
    size_t part_count, free_strip_count, free_board_count, live_count;
    int64_t cost;  /* of all boards */
    double spread; /* sum over boards of free area squared by whole area, priced: higher where what
                      is free is together */
    struct board_note *notes;
    size_t note_count, note_room;
};

/* Fills *state, an empty one, from a whole plan of the job, which is borrowed. Closed by its owner,
 * also after a failure. false: out of memory. */
bool board_state_open(struct board_state *state, const struct board_job *job,
                      const struct board_plan *plan) __attribute__((warn_unused_result));
/* Frees what the state holds. */
void board_state_close(struct board_state *state);

/* The cheapest room for strips so long and so wide in all; BOARD_NONE: there is none. */
uint32_t board_state_room(const struct board_state *state, int64_t along, int64_t across);

/* Takes a part out of its strip; strip and board are no more when it was the last one. false: out
 * of memory. */
bool board_state_take(struct board_state *state, uint32_t part) __attribute__((warn_unused_result));

/* Puts a part that is out into a strip of its width on a board, either of them BOARD_NONE for a new
 * one; the board gets that room. false: out of memory. */
bool board_state_put(struct board_state *state, uint32_t part, uint32_t strip, uint32_t board,
                     uint32_t room) __attribute__((warn_unused_result));

/* All since board_state_settle as it was; the order of parts and strips may be another. */
void board_state_undo(struct board_state *state);
/* What was done stays. */
void board_state_settle(struct board_state *state);

/* The state as a plan with this bound, no part out; owned by the caller. NULL: out of memory. */
struct board_plan *board_state_write(const struct board_state *state, int64_t bound)
    __attribute__((warn_unused_result));

#endif
