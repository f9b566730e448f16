/* SPDX-License-Identifier: MIT */
/* The pieces that a leaf is made of; for src/door only. */
#ifndef DOORCOST_DOOR_PIECES_H
#define DOORCOST_DOOR_PIECES_H

#include "door/door.h"

/* Fills in the parts and openings of a leaf whose size, style and construction are known, its
 * joints, arches and stuck edge; slabs of a sheet become as thick as the sheet. door->parts and
 * door->openings: room for FRAME_MOST_PARTS and 2 x FRAME_MOST_ROWS. The reader has checked that it
 * can be made. Method: docs/method.md, "Parts". */
void pieces_make(const struct calc *calc, struct door *door);

#endif
