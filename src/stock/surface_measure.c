/* SPDX-License-Identifier: MIT */
#include "stock/surface_measure.h"

#include <assert.h>

int64_t surface_measure_add(struct surface_measure *measure, length width, length along) {
    assert(width > 0 && along > 0);
    const int64_t feet = along / NM_PER_FOOT;
    const int64_t twelfths = width * feet; /* surface x 12 in nm */
    const int64_t unit = 12 * NM_PER_INCH;
    int64_t surface = twelfths / unit;
    const int64_t rest = twelfths % unit;
    if (2 * rest == unit) {
        surface += measure->next_half_down ? 0 : 1;
        measure->next_half_down = !measure->next_half_down;
    } else if (2 * rest > unit) {
        surface++;
    }
    measure->feet += surface;
    return surface;
}

fig surface_measure_board_feet(const struct calc *c, fig surface, fig thickness) {
    return fig_ratio_to(c->tape, "board feet, tallied", UNIT_BF, 0, (figs){{surface, thickness}},
                        (figs){{c->units->inch}});
}
