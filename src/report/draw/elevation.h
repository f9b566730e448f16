/* SPDX-License-Identifier: MIT */
/* The elevation of a door: what its front shows, as boxes, strokes and dimensions, before anything
 * is drawn.
 *
 * Lengths in nm, x to the right, y down, from the upper left corner of the first leaf.  A pair is
 * two leaves side by side, the second mirrored.  The parts are those of door/frame.h and
 * door/door.h; nothing is invented but where along its edge a hinge mark stands (the marks say the
 * side and the number) and how far within its edge the field of a raised panel begins. */
#ifndef DOORCOST_REPORT_DRAW_ELEVATION_H
#define DOORCOST_REPORT_DRAW_ELEVATION_H

#include "door/door.h"

enum trait {
    TRAIT_LEAF,   /* outline of the leaf */
    TRAIT_SLAB,   /* a leaf in one piece */
    TRAIT_STILE,  /* also mid stiles */
    TRAIT_RAIL,   /* also mid rails */
    TRAIT_PANEL,  /* what is seen of a panel: an opening of the frame */
    TRAIT_RAISED, /* the field of a raised panel */
    TRAIT_GLASS,  /* what is seen of a pane */
    TRAIT_OPEN,   /* an opening that stays open */
    TRAIT_HIDDEN, /* edge of a panel or pane within the groove or rabbet */
    TRAIT_HINGE   /* a mark outside the leaf */
};

struct elevation_box {
    enum trait trait;
    length x, y, width, height;
};

/* A line between two points: the miter of a corner. */
struct elevation_stroke {
    length x1, y1, x2, y2;
};

/* The distance between two points of one axis. */
struct elevation_dimension {
    bool upright;    /* measured along y, stands beside the leaf; else along x, below it */
    bool whole;      /* of the leaf, in the outer chain; else of a part */
    length from, to; /* along the axis */
};

/* Where hinges may be marked. */
enum hinge_edge { EDGE_NONE, EDGE_LEFT, EDGE_RIGHT, EDGE_TOP, EDGE_BOTTOM };

struct elevation {
    const struct door *door; /* borrowed */
    enum length_unit unit;
    length width, height; /* of all that is drawn without dimensions: one leaf or a pair */
    int32_t hinges;       /* of a leaf */
    enum hinge_edge edge; /* of the first leaf; EDGE_NONE: not said, or no hinges */
    struct elevation_box *boxes;
    size_t box_count;
    struct elevation_stroke *strokes;
    size_t stroke_count;
    struct elevation_dimension *dimensions; /* of the first leaf, ascending in each chain */
    size_t dimension_count;
};

/* Makes the elevation of a door whose parts were made without a fault.  hinges: of a leaf, 0 for
 * none.  The arrays live in pool.  true: memory held. */
bool elevation_make(struct elevation *elevation, struct pool *pool, const struct door *door,
                    int32_t hinges, enum length_unit unit) __attribute__((warn_unused_result));

/* Whether two doors look the same but for count, room and name: one drawing serves both. */
bool elevation_same(const struct elevation *a, const struct elevation *b);

/* Whether two doors are of one kind, whatever their size: style, form, rows, columns, glass, use
 * and leaves agree. */
bool elevation_kind_same(const struct door *a, const struct door *b);

#endif
