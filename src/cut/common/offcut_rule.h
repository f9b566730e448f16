/* SPDX-License-Identifier: MIT */
/* Which offcuts of a plan are worth a place in the rack. Limits: common practice, no source. */
#ifndef DOORCOST_CUT_COMMON_OFFCUT_RULE_H
#define DOORCOST_CUT_COMMON_OFFCUT_RULE_H

#include "base/length.h"

#include <stdbool.h>
#include <stdint.h>

/* Least sizes, in millionths of the job's unit of length. */
struct offcut_rule {
    int64_t length;      /* of the longer side of a sheet's offcut; of a board's, along it */
    int64_t board_width; /* of a board's offcut */
    int64_t sheet_width; /* of the shorter side of a sheet's offcut */
};

/* What a shop that counts in the unit keeps: 12 in long, of a board 1 1/2 in wide, of a sheet 6 in;
 * 300, 40 and 150 mm. */
static inline struct offcut_rule offcut_rule_of(enum length_unit unit) {
    return unit == LENGTH_INCH ? (struct offcut_rule){12000000, 1500000, 6000000}
                               : (struct offcut_rule){300000000, 40000000, 150000000};
}

#endif
