/* SPDX-License-Identifier: MIT */
/* What the note of a row tells the client of the door, and nobody made or priced. */
#ifndef DOORCOST_DOOR_WARN_NOTE_H
#define DOORCOST_DOOR_WARN_NOTE_H

#include "door/door.h"

/* Adds to calc's problems: warnings of a note with a word for glass, mid rails or an arch on a door
 * that has none. Quiet where the note says `no` or `without` before it, or the name of the style or
 * the words of an extra charge have the word, or such a charge has no words. */
void note_warn(const struct calc *calc, const struct door *door);

#endif
