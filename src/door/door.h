/* SPDX-License-Identifier: MIT */
/* A door of the list as its parts: sizes of the leaf, of every stile, rail, panel and pane, and of
 * the openings that its frame leaves. Lengths in nm; sizes that are cut are multiples of 1/64 in or
 * 0.1 mm.
 *
 * Method: docs/method.md, "Geometry". */
#ifndef DOORCOST_DOOR_DOOR_H
#define DOORCOST_DOOR_DOOR_H

#include "door/leaf.h"
#include "model/calc.h"
#include "model/size_step.h"

enum part_kind {
    PART_STILE,
    PART_TOP_RAIL,
    PART_BOTTOM_RAIL,
    PART_MID_RAIL,
    PART_MID_STILE,
    PART_PANEL,
    PART_PANE,
    PART_SLAB,
    PART_BAR, /* laid on a pane; its width is ripped from the board, its thickness is seen */
    PART_KIND_COUNT
};

struct part {
    enum part_kind kind;
    enum material_kind material_kind; /* what it is made of, and which */
    int32_t material;
    int32_t count;                    /* pieces a leaf, 1 or more */
    length length, width, thickness;  /* finished; length runs along the grain */
    length rough_length, rough_width; /* of lumber: with allowances; else as finished */
    length shown_width,
        shown_height;        /* of panels, panes and slabs: as they stand in the door; else 0 */
    length weight_thickness; /* for the weight: the mean one of a raised panel */
    int32_t staves;          /* a solid panel or slab is glued up of so many; 1: of one board */
    bool raised;             /* its edges are raised */
    length rise; /* of the arch to which this top rail or panel is cut, within its size; else 0 */
};

/* Openings of one size that the frame leaves. */
struct opening {
    length width, height;
    length rise;   /* of the arch that it ends in at the top, within its height; 0: straight */
    int32_t count; /* a leaf */
};

/* One row of the door list, made into a leaf and its parts; of a row whose leaves fold each of the
 * two leaves, as they differ in what they carry and may differ in width. */
struct door {
    const struct row *row;
    const char *name;          /* as papers of the shop call it: the row's id, and which leaf */
    enum leaf_role role;       /* of a leaf that folds; else LEAF_HUNG */
    const struct door *beside; /* the leaf that it is hinged to, of the same row; NULL: none */
    const struct construction *construction; /* under the option; doors of one make share it */
    const struct style *style;               /* a low front of a framed style has its slab style */
    enum door_form form;                     /* of the style */
    length width, height, thickness;         /* of a leaf */
    int32_t leaves;                          /* such leaves a door of the row: 1 or 2 */
    int32_t joints;                          /* corner and mid joints of a leaf; 0 for a slab */
    int32_t arches;                          /* of its top rail; 0: straight, or not made here */
    length stuck_edge; /* inner edge of the frame, round every opening, a leaf */
    size_t first; /* of the doors, the first leaf that is made alike; itself where there is none */
    struct part *parts;
    size_t part_count;
    struct opening *openings;
    size_t opening_count;
    struct size_step step; /* to which its sizes are rounded */
    bool bought_in;        /* bought as it is: no parts */
};

/* One a row, in the order of the list; of a row whose leaves fold two, the one that hangs first. Of
 * the pool of the estimate. */
struct doors {
    struct door *doors;
    size_t count;
};

/* Makes the doors of calc's job under an option (-1: the base job), each cut to the steps of the
 * job's unit. The reader has checked that each can be made. Memory of calc's pool; false: out of
 * memory. */
bool doors_make(struct doors *doors, const struct calc *calc, int option)
    __attribute__((warn_unused_result));

/* Whether one sees through the leaf: its form is glass or open. */
bool door_is_see_through(const struct door *door);

/* How the grain of its panels or its slab runs: as row, option or [make] say, else its style. */
enum panel_grain door_grain(const struct door *door);

/* The number of pieces of a kind in a leaf. */
int32_t door_pieces(const struct door *door, enum part_kind kind);

/* "stile", "top rail", ...: as papers call it. Static. */
const char *part_kind_name(enum part_kind kind);
/* The same of a part, "top rail, arched" where it is cut to an arch. Static. */
const char *part_full_name(const struct part *part);

/* Whether a part is one of the frame (stile, rail, mid rail, mid stile). */
bool part_is_frame(enum part_kind kind);
/* Whether a part fills the door or an opening of its frame: a panel, a pane, a slab. */
bool part_is_field(enum part_kind kind);

/* The hardware that the leaf hangs on: the hinge, or of a leaf that hangs on another one the hinge
 * between them. Borrowed; its index is -1 where none is named. */
const struct reference *door_hinge(const struct door *door);

/* The length (nm) of the edge that the leaf hangs on: its height, its width where that is level. */
length door_hinged_edge(const struct door *door);

/* Whether the leaf is made just like the one that it hangs on, so that what is asked of that one is
 * asked of both. */
bool door_is_twin(const struct door *door);

/* The door in whose drawing this one is seen: itself, or the leaf that it hangs on. */
const struct door *door_drawn(const struct door *door);

/* Whether it is a rail: top, bottom or mid. */
bool part_is_rail(enum part_kind kind);

/* How many bars divide each pane of a row made by that style, upright and level ones: none but on
 * glass that is set here. */
struct bars {
    int32_t upright, level;
};
struct bars style_bars(const struct style *style, const struct row *row);

#endif
