/* SPDX-License-Identifier: MIT */
#include "read/key/rows.h"

const struct unit_form forms_money[] = {{"", UNIT_MONEY, 0, 0, NO_LIMIT}, {0}};
const struct unit_form forms_percent[] = {{"%", UNIT_PERCENT, 0, 0, 100}, {0}};
const struct spelling choices_unit[] = {{"in", LENGTH_INCH}, {"mm", LENGTH_MM}, {0}};
const struct spelling choices_yes_no[] = {{"yes", 1}, {"no", 0}, {0}};
