/* SPDX-License-Identifier: MIT */
/* Where everything lies on one board of a plan: the parts, the cuts in the order in which they are
 * made, and what is left over.
 *
 * Places are counted from a corner of the board as it is bought: x along it, y across. Both ends
 * are trimmed, both edges straightened, the strips ripped one by one from y = 0 up, each strip
 * crosscut from the left.  The share kept for defects is drawn behind the parts, at the right end
 * of each strip: at the saw it goes to where the defects are.
 *
 * A board that is crosscut first: both ends are trimmed, the segments crosscut one by one from the
 * left over the whole width, and of each segment both edges are straightened and the parts ripped
 * from y = 0 up. What lies behind the last segment keeps its edges. Sizes in the unit of the job.
 */
#ifndef DOORCOST_CUT_BOARD_BOARD_LAYOUT_H
#define DOORCOST_CUT_BOARD_BOARD_LAYOUT_H

#include "cut/board/board_plan.h"
#include "cut/common/offcut_rule.h"

enum board_cut_kind {
    BOARD_CUT_END,  /* an end trimmed */
    BOARD_CUT_EDGE, /* an edge straightened */
    BOARD_CUT_RIP,
    BOARD_CUT_CROSS
};

/* A region of the board. */
struct board_box {
    int64_t x, y, length, width; /* length along x */
};

/* What a cut takes away: an end, an edge, or the kerf behind a strip or a part. */
struct board_cut {
    enum board_cut_kind kind;
    struct board_box box;
    int64_t size; /* of a rip or crosscut: of the strip, or of the part, before it */
    size_t strip; /* of the board: the strip it frees, or cuts into */
};

struct board_piece {
    size_t item; /* of the job */
    size_t strip;
    struct board_box box;
};

struct board_offcut {
    struct board_box box;
    bool keep;  /* worth keeping */
    bool rough; /* its edges are those of the board, not straightened */
};

struct board_layout {
    struct board_cut *cuts;
    size_t cut_count, cut_room;
    struct board_piece *pieces;
    size_t piece_count, piece_room;
    struct board_offcut *offcuts;
    size_t offcut_count, offcut_room;
    struct board_box *reserves; /* kept for defects */
    size_t reserve_count, reserve_room;
};

/* Lays out board number `board` of a plan that was checked. layout: of zeros, or used before; left
 * so that board_layout_clear may be called. false: out of memory. */
bool board_layout_make(struct board_layout *layout, const struct board_job *job,
                       const struct board_plan *plan, size_t board, struct offcut_rule keep)
    __attribute__((warn_unused_result));
/* Frees what a layout holds and empties it. */
void board_layout_clear(struct board_layout *layout);

/* Whether two boards of a plan are cut alike into the same items. */
bool board_same(const struct board_plan *plan, size_t a, size_t b);

/* What all boards of a plan come to: counts, and areas in hundredths of the square of a unit of
 * which the job's sizes are millionths. Parts, trim, kerf, defects and offcuts add up to the boards
 * but for the rounding of each. */
struct board_totals {
    int64_t cuts, parts, trim, kerf, defects, offcuts, keep;
};

/* Adds up all boards of a plan that was checked. false: out of memory. */
bool board_totals_make(struct board_totals *totals, const struct board_job *job,
                       const struct board_plan *plan, struct offcut_rule keep)
    __attribute__((warn_unused_result));

#endif
