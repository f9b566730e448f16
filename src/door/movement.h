/* SPDX-License-Identifier: MIT */
/* How a solid panel moves across its grain between the driest and the wettest air of the year,
 * against its room in the grooves.
 *
 * Change of width = width x coefficient x (moisture then - moisture now), from 6 to 14 % moisture
 * (Wood Handbook, FPL-GTR-190, Eq. 13-2), with the tangential coefficient: boards are taken as
 * flat-sawn, which overstates a little.  Moisture that wood takes on in air of 70 F: Wood Handbook,
 * Table 4-2, between its rows by proportion.  Method: docs/method.md, "Movement". */
#ifndef DOORCOST_DOOR_MOVEMENT_H
#define DOORCOST_DOOR_MOVEMENT_H

#include "door/door.h"

struct movement {
    fig swell;  /* length: wider in the wettest air; none when species or climate is not known */
    fig shrink; /* length: narrower in the driest air */
    fig room;   /* length: clearance across, both edges */
    fig hold;   /* length: what the panel stands in the grooves, both edges, when it is made */
};

/* Moisture of wood in air of 70 F and a relative humidity (percent, 5 to 90), in hundredths of a
 * percent. Operand of the tape: the humidity; output 0. */
extern const struct chooser moisture_chooser;

/* The movement of a solid panel that is `width` (the job's unit) across its grain, in a door of its
 * style; all none when the part is no solid panel, or species or climate is not known. */
struct movement movement_make(const struct calc *calc, const struct door *door,
                              const struct part *part, fig width);

/* Warns of a panel that has no room to swell, or that comes out of its grooves when it shrinks. */
void movement_warn(const struct calc *calc, const struct door *door, const struct part *part,
                   const struct movement *movement);

#endif
