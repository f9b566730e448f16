/* SPDX-License-Identifier: MIT */
/* Areas of plans. */
#ifndef DOORCOST_CUT_COMMON_CUT_AREA_H
#define DOORCOST_CUT_COMMON_CUT_AREA_H

#include "base/int128.h"

#include <stdint.h>

/* An area in squares of a millionth of the job's unit of length, in hundredths of the square of
 * that unit: half away from zero. */
static inline int64_t cut_area_hundredths(int128 area) {
    return (int64_t)int128_round(area, (int128)10000 * 1000000);
}

#endif
