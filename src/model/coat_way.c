/* SPDX-License-Identifier: MIT */
#include "model/coat_way.h"

const struct spray *coat_way(const struct rates *rates, const struct finish *finish,
                             int32_t coating) {
    const int32_t own = rates->coatings[coating].put_on.index;
    return &rates->sprays[own >= 0 ? own : finish->spray];
}

bool finish_shows_color(const struct rates *rates, const struct finish *finish) {
    bool tinted = finish->coat_count == 0;
    for (size_t i = 0; i < finish->coat_count; i++) {
        const int32_t coating = finish->coats[i].coating;
        tinted = tinted || (coating >= 0 && rates->coatings[coating].tinted);
    }
    return tinted;
}
