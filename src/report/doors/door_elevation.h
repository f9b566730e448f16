/* SPDX-License-Identifier: MIT */
/* Elevations made from doors.  The parts are those of door/frame.h and door/door.h; nothing is
 * invented but where along its edge a hinge mark stands (the marks say the side and the number) and
 * how far within its edge the field of a raised panel begins. */
#ifndef DOORCOST_REPORT_DOORS_DOOR_ELEVATION_H
#define DOORCOST_REPORT_DOORS_DOOR_ELEVATION_H

#include "door/door.h"
#include "report/draw/elevation.h"

struct door_elevation {
    const struct door *door; /* borrowed */
    struct elevation drawing;
};

/* Makes the elevation of a door whose parts were made without a fault.  hinges: of a leaf, 0 for
 * none.  unit: of the dimensions.  The arrays live in pool.  false: out of memory. */
bool door_elevation_make(struct door_elevation *made, struct pool *pool, const struct door *door,
                         int32_t hinges, enum length_unit unit) __attribute__((warn_unused_result));

/* Whether two doors look the same but for count, room and name: one drawing serves both. */
bool door_elevation_same(const struct door_elevation *a, const struct door_elevation *b);
/* Equal for drawings that are the same: for struct index of base/index.h. */
uint64_t door_elevation_hash(const struct door_elevation *of);

/* Whether two doors are of one kind, whatever their size: style, form, rows, columns, glass, use
 * and leaves agree. */
bool door_kind_same(const struct door *a, const struct door *b);

#endif
