/* SPDX-License-Identifier: MIT */
/* Elevations made from doors.  The parts are those of door/frame.h and door/door.h; nothing is
 * invented but how far within its edge the field of a raised panel begins and, where nobody says
 * it, where along its edge a hinge mark stands (then the marks say the side and the number). */
#ifndef DOORCOST_REPORT_DOORS_DOOR_ELEVATION_H
#define DOORCOST_REPORT_DOORS_DOOR_ELEVATION_H

#include "door/door.h"
#include "price/estimate.h"
#include "report/draw/elevation.h"

struct door_elevation {
    const struct door *door; /* borrowed */
    struct elevation drawing;
};

/* What a leaf hangs on, as it is drawn. */
struct hung_on {
    int32_t count;          /* 0: no hinges */
    const length *at;       /* of elevation.hinge_at */
    length cup, cup_center; /* likewise */
};
struct hung_on hung_on_of(const struct estimate *estimate, const struct leaf_figures *leaf);

/* Makes the elevation of a door whose parts were made without a fault, that hangs on that.  unit:
 * of the dimensions.  The arrays live in pool.  false: out of memory. */
bool door_elevation_make(struct door_elevation *made, struct pool *pool, const struct door *door,
                         struct hung_on on, enum length_unit unit)
    __attribute__((warn_unused_result));

/* Whether two doors look the same but for count, room and name: one drawing serves both. */
bool door_elevation_same(const struct door_elevation *a, const struct door_elevation *b);
/* Equal for drawings that are the same: for struct index of base/index.h. */
uint64_t door_elevation_hash(const struct door_elevation *of);

/* Whether two doors are of one kind, whatever their size: style, form, rows, columns, glass, use
 * and leaves agree. */
bool door_kind_same(const struct door *a, const struct door *b);

#endif
