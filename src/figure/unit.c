/* SPDX-License-Identifier: MIT */
#include "figure/unit.h"

#include <assert.h>

static const struct {
    const char *name;
    uint8_t decimals;
} units[UNIT_COUNT_OF_UNITS] = {
    [UNIT_NUMBER] = {"", 6},
    [UNIT_COUNT] = {"", 0},
    [UNIT_NM] = {"nm", 0},
    [UNIT_IN] = {"in", 6},
    [UNIT_MM] = {"mm", 6},
    [UNIT_FT] = {"ft", 4},
    [UNIT_M] = {"m", 4},
    [UNIT_MIL] = {"mil", 4},
    [UNIT_UM] = {"um", 3},
    [UNIT_SQFT] = {"sq ft", 4},
    [UNIT_M2] = {"m2", 4},
    [UNIT_BF] = {"bf", 4},
    [UNIT_M3] = {"m3", 6},
    [UNIT_GAL] = {"gal", 4},
    [UNIT_L] = {"L", 4},
    [UNIT_MIN] = {"min", 2},
    [UNIT_HOUR] = {"h", 2},
    [UNIT_DAY] = {"days", 2},
    [UNIT_LB] = {"lb", 2},
    [UNIT_KG] = {"kg", 2},
    [UNIT_PERCENT] = {"%", 4},
    [UNIT_FACTOR] = {"", 6},
    [UNIT_MONEY] = {"", 2},
    [UNIT_MONEY_PER_BF] = {"per bf", 6},
    [UNIT_MONEY_PER_M3] = {"per m3", 6},
    [UNIT_MONEY_PER_SHEET] = {"per sheet", 6},
    [UNIT_MONEY_EACH] = {"each", 6},
    [UNIT_MONEY_PER_HOUR] = {"per hour", 6},
    [UNIT_MONEY_PER_SQFT] = {"per sq ft", 6},
    [UNIT_MONEY_PER_M2] = {"per m2", 6},
    [UNIT_MONEY_PER_DOOR] = {"per door", 6},
    [UNIT_MONEY_PER_HINGE] = {"per hinge", 6},
    [UNIT_MONEY_PER_FT] = {"per ft", 6},
    [UNIT_MONEY_PER_M] = {"per m", 6},
    [UNIT_FT_PER_MIN] = {"ft per min", 6},
    [UNIT_M_PER_MIN] = {"m per min", 6},
    [UNIT_SQFT_PER_GAL] = {"sq ft per gal", 6},
    [UNIT_M2_PER_L] = {"m2 per L", 6},
    [UNIT_LB_PER_SQFT] = {"lb per sq ft", 6},
    [UNIT_KG_PER_M2] = {"kg per m2", 6},
    [UNIT_LB_PER_CUFT] = {"lb per cu ft", 6},
    [UNIT_KG_PER_M3] = {"kg per m3", 6},
    [UNIT_G_PER_CM3] = {"g per cm3", 6},
};

const char *unit_name(enum unit unit) {
    assert(unit < UNIT_COUNT_OF_UNITS);
    return units[unit].name;
}

uint8_t unit_decimals(enum unit unit) {
    assert(unit < UNIT_COUNT_OF_UNITS);
    return units[unit].decimals;
}

bool unit_is_money(enum unit unit) {
    return unit >= UNIT_MONEY && unit <= UNIT_MONEY_PER_M;
}
