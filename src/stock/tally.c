/* SPDX-License-Identifier: MIT */
#include "stock/tally.h"

#include <assert.h>

int64_t tally_board(struct tally *tally, length width, length along) {
    assert(width > 0 && along > 0);
    const int64_t feet = along / NM_PER_FOOT;
    const int64_t twelfths = width * feet; /* surface x 12 in nm */
    const int64_t unit = 12 * NM_PER_INCH;
    int64_t surface = twelfths / unit;
    const int64_t rest = twelfths % unit;
    if (2 * rest == unit) {
        surface += tally->next_half_down ? 0 : 1;
        tally->next_half_down = !tally->next_half_down;
    } else if (2 * rest > unit) {
        surface++;
    }
    tally->surface += surface;
    tally->boards++;
    return surface;
}

int64_t tally_board_feet(const struct tally *tally, length thickness) {
    const int64_t thick = thickness < NM_PER_INCH ? NM_PER_INCH : thickness;
    /* 64ths of an inch keep the product small and exact for every nominal thickness */
    const int64_t sixty_fourths = (thick + NM_PER_64TH / 2) / NM_PER_64TH;
    return (tally->surface * sixty_fourths + 32) / 64;
}
