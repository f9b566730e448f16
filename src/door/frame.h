/* SPDX-License-Identifier: MIT */
/* The frame of a door: how its stiles and rails divide the leaf, and into which openings. */
#ifndef DOORCOST_DOOR_FRAME_H
#define DOORCOST_DOOR_FRAME_H

#include "door/door.h"

#define FRAME_MOST_ROWS    32
#define FRAME_MOST_COLUMNS 32

struct frame {
    length stile, top_rail, bottom_rail, mid_rail, mid_stile; /* widths */
    length tongue; /* what a rail is longer for, each end; 0 for dowels */
    bool mitred;
    int32_t rows, columns;
    length row[FRAME_MOST_ROWS];       /* heights of the openings, top first */
    length column[FRAME_MOST_COLUMNS]; /* widths, left first */
};

enum frame_fault {
    FRAME_OK,
    FRAME_TOO_NARROW,   /* no opening left between the stiles */
    FRAME_TOO_LOW,      /* no opening left between the rails */
    FRAME_ROWS_DIFFER,  /* given heights do not add up to the space between the rails */
    FRAME_MITRE_UNEQUAL /* mitred stiles and rails of different widths */
};

/* Divides a leaf of width x height by the widths of its style.  Columns are equal, rows equal or as
 * given; a division that does not come out even is rounded to unit's step and the last takes what
 * remains. *space: what was there to be divided between the rails when the answer is
 * FRAME_ROWS_DIFFER.  At most 31 mid rails or mid stiles (the reader sees to it). */
enum frame_fault frame_divide(struct frame *frame, const struct door *door, enum length_unit unit,
                              length *space);

#endif
