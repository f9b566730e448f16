/* SPDX-License-Identifier: MIT */
#include "model/coat_way.h"

const struct spray *coat_way(const struct rates *rates, const struct finish *finish,
                             int32_t coating) {
    const int32_t own = rates->coatings[coating].put_on.index;
    return &rates->sprays[own >= 0 ? own : finish->spray];
}
