/* SPDX-License-Identifier: MIT */
/* The surface of a leaf: its face, and what of it is sprayed. */
#ifndef DOORCOST_DOOR_SURFACE_H
#define DOORCOST_DOOR_SURFACE_H

#include "door/quantity.h"

/* Puts face and perimeter of the leaf on the tape and, where its row has a finish, faces, edges,
 * inner edges and profile.  Width, height and thickness of the leaf must be set.  Sprayed = faces +
 * 2 (W + H) T + profile extra x stuck edge; of a see-through leaf the openings come off each face
 * and its inner edges are added.  Method: docs/method.md, "Surface". */
void surface_make(struct leaf_figures *leaf, const struct calc *calc);

#endif
