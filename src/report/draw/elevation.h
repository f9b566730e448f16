/* SPDX-License-Identifier: MIT */
/* The elevation of a door: what its front shows, as boxes, strokes and dimensions, before anything
 * is drawn.  Geometry alone: it knows neither the door nor anything of the job.
 *
 * Lengths in nm, x to the right, y down, from the upper left corner of the first leaf.  A pair is
 * two leaves side by side, the second mirrored; so are leaves that fold, drawn flat.  The dashed
 * lines of a leaf meet in the middle of its hinged edge. */
#ifndef DOORCOST_REPORT_DRAW_ELEVATION_H
#define DOORCOST_REPORT_DRAW_ELEVATION_H

#include "base/length.h"

enum trait {
    TRAIT_LEAF,   /* outline of the leaf */
    TRAIT_SLAB,   /* a leaf in one piece */
    TRAIT_STILE,  /* also mid stiles */
    TRAIT_RAIL,   /* also mid rails */
    TRAIT_PANEL,  /* what is seen of a panel: an opening of the frame */
    TRAIT_RAISED, /* the field of a raised panel */
    TRAIT_GLASS,  /* what is seen of a pane */
    TRAIT_BAR,    /* laid on a pane */
    TRAIT_OPEN,   /* an opening that stays open */
    TRAIT_SLAT,   /* one of those that close an opening */
    TRAIT_HIDDEN, /* edge of a panel or pane within the groove or rabbet */
    TRAIT_HINGE,  /* a mark outside the leaf */
    TRAIT_BORE    /* of a hinge, from behind: a circle in its box */
};

struct elevation_box {
    enum trait trait;
    length x, y, width, height;
    length rise; /* its top is an arch that rises so far, within the height; 0: straight */
};

/* A line between two points: the miter of a frame, how a leaf opens (dashed), that two leaves stand
 * at right angles, as seen from above (bold). */
enum stroke_kind { STROKE_MITER, STROKE_OPENING, STROKE_CORNER };
struct elevation_stroke {
    enum stroke_kind kind;
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
    enum length_unit unit;  /* of the dimensions */
    length width, height;   /* of all that is drawn without dimensions: one leaf or several */
    int32_t hinges;         /* of a leaf */
    const length *hinge_at; /* along the hinged edge, from its upper or left end to the middle of
                               each, borrowed; NULL: not said */
    length cup, cup_center; /* diameter of the bores, and from the edge to the middle; 0: none */
    enum hinge_edge edge;   /* of the first leaf; EDGE_NONE: not said, or no hinges */
    struct elevation_box *boxes;
    size_t box_count;
    struct elevation_stroke *strokes;
    size_t stroke_count;
    struct elevation_dimension *dimensions; /* of the first leaf; of the one hinged to it where it
                                               differs; ascending in each chain */
    size_t dimension_count;
    const char *note;   /* in words, what the lines don't tell; NULL: nothing. Static */
    enum trait note_on; /* it stands on the widest of these */
};

#endif
