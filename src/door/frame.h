/* SPDX-License-Identifier: MIT */
/* The frame of a door: how its stiles and rails divide the leaf, and into which openings. */
#ifndef DOORCOST_DOOR_FRAME_H
#define DOORCOST_DOOR_FRAME_H

#include "door/leaf.h"
#include "model/limits.h"

#define FRAME_MOST_ROWS    MOST_HEIGHTS
#define FRAME_MOST_COLUMNS 32 /* mid stiles are a count of at most 20 */

/* Upper bound on distinct part sizes of a leaf: stile, two rails, mid rail, level bars of two
 * widths, and for each row a mid stile, an upright bar, and panels of two widths, a divided width
 * leaving one that differs. */
#define FRAME_MOST_PARTS ((size_t)(6 + 4 * FRAME_MOST_ROWS))

struct frame {
    length stile, top_rail, bottom_rail, mid_rail, mid_stile; /* widths */
    length tongue; /* what a rail is longer for, each end; 0 for dowels */
    length rise;   /* of an arch over each opening of the top row, cut into the top rail, which is
                      that much wider; 0: straight */
    bool mitered;
    int32_t rows, columns;
    length row[FRAME_MOST_ROWS];       /* heights of the openings, top first */
    length column[FRAME_MOST_COLUMNS]; /* widths, left first */
};

enum frame_fault {
    FRAME_OK,
    FRAME_TOO_NARROW,   /* no opening left between the stiles */
    FRAME_TOO_LOW,      /* no opening left between the rails */
    FRAME_ROWS_DIFFER,  /* given heights do not add up to the space between the rails */
    FRAME_ARCH_MITERED, /* an arch in a mitered rail, whose corner it would cut */
    FRAME_ARCH_HIGH,    /* more than a half circle, or down to the foot of its opening */
};

/* Divides a leaf by the widths of its style.  Columns are equal, rows equal or as given; a division
 * that does not come out even is rounded to the step and the last takes what remains; given rows
 * may miss the space by less than a step, which the last takes too.  The reader has seen to equal
 * widths of a mitered frame and to at most 31 mid rails and mid stiles. frame is whole only on
 * FRAME_OK; its widths are set on any answer. */
enum frame_fault frame_divide(struct frame *frame, const struct style *style, const struct row *row,
                              struct leaf leaf, struct size_step step);

/* What stiles and mid stiles take of the width of a leaf, in nm. */
length frame_across(const struct frame *frame);
/* What rails and mid rails take of its height, in nm. */
length frame_down(const struct frame *frame);

#endif
