/* SPDX-License-Identifier: MIT */
/* Which offcuts of a plan are worth a place in the rack. */
#ifndef DOORCOST_CUT_COMMON_OFFCUT_RULE_H
#define DOORCOST_CUT_COMMON_OFFCUT_RULE_H

#include <stdint.h>

/* Least sizes, in the unit of the job. */
struct offcut_rule {
    int64_t length;      /* of the longer side of a sheet's offcut; of a board's, along it */
    int64_t board_width; /* of a board's offcut */
    int64_t sheet_width; /* of the shorter side of a sheet's offcut */
};

#endif
