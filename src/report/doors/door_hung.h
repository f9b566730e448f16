/* SPDX-License-Identifier: MIT */
/* How elevations show where leaves hang and how they open: hinge marks, dashed lines that meet at
 * the hinged edge, and leaves beside each other.  For src/report/doors only. */
#ifndef DOORCOST_REPORT_DOORS_DOOR_HUNG_H
#define DOORCOST_REPORT_DOORS_DOOR_HUNG_H

#include "door/door.h"
#include "report/draw/elevation.h"

#define MOST_HINGE_MARKS 10
/* Of a leaf: four miters, two lines that show how it opens, two that mark a corner. */
#define MOST_STROKES ((size_t)8)

/* Adds to the boxes of a drawing that has room for it. */
void elevation_put_box(struct elevation *e, struct elevation_box box);
/* The same of a box without an arch. */
void elevation_add_box(struct elevation *e, enum trait trait, length x, length y, length width,
                       length height);
/* Adds to its strokes likewise. */
void elevation_add_stroke(struct elevation *e, enum stroke_kind kind, length x1, length y1,
                          length x2, length y2);

/* Where the first leaf of a drawing hangs: of leaves that fold and of those hung level by what the
 * row says, of others where they have hinges. Of several that hang at both sides, or fold, the left
 * edge: the drawing is mirrored or turned. */
enum hinge_edge hung_edge(const struct door *door, int32_t hinges);

/* Marks the hinges of a leaf that is all of the drawing at its edge, and how it opens. */
void hung_mark(struct elevation *e);

/* Puts the leaf that was added to a drawing since `hung` was copied from it, as wide as e->width,
 * beside that one, hinged to it. Of its dimensions those of the width stay, where that differs. */
void hung_beside(struct elevation *e, const struct elevation *hung, length gap);

/* Marks, at x, that two leaves stand at right angles. */
void hung_corner(struct elevation *e, length x);

/* Adds the mirror image of all that is drawn to its right, beside the gap. */
void hung_mirror(struct elevation *e, length gap);

/* Makes the drawing its own mirror image; dimensions: these too, as its leaves differ. */
void hung_turn(struct elevation *e, bool dimensions);

#endif
