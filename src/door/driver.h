/* SPDX-License-Identifier: MIT */
/* What work counted by a driver is on. */
#ifndef DOORCOST_DOOR_DRIVER_H
#define DOORCOST_DOOR_DRIVER_H

#include "door/door.h"

/* Whether work counted by `driver` is on the door as a whole, so that the door and not its parts
 * calls for set-ups and must go through the machine: by door, hinge, edge, run or area. */
bool driver_is_whole_door(enum driver driver);

/* Whether an operation counted by `driver` works on that part: stiles on stiles, joints on the
 * frame, both sides of a joint being cut; runs of frame on the frame, solid panels on those, doors
 * and areas on all.
 */
bool driver_works_on(enum driver driver, const struct part *part);

#endif
