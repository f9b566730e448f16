/* SPDX-License-Identifier: MIT */
/* Units of values and figures: one table tells how each is named and with how many decimals a
 * computed figure of it is kept. Decimals shown are decimals used. */
#ifndef DOORCOST_FIGURE_UNIT_H
#define DOORCOST_FIGURE_UNIT_H

#include <stdbool.h>
#include <stdint.h>

enum unit {
    UNIT_NUMBER, /* a bare constant, as written */
    UNIT_COUNT,
    UNIT_NM, /* a length as read; becomes IN, MM, FT, M, MIL or UM on the tape */
    UNIT_IN,
    UNIT_MM,
    UNIT_FT,
    UNIT_M,
    UNIT_MIL,
    UNIT_UM,
    UNIT_SQFT,
    UNIT_M2,
    UNIT_BF,
    UNIT_M3,
    UNIT_GAL,
    UNIT_L,
    UNIT_MIN,
    UNIT_HOUR,
    UNIT_DAY,
    UNIT_LB,
    UNIT_KG,
    UNIT_PERCENT,
    UNIT_FACTOR,
    UNIT_MONEY,
    UNIT_MONEY_PER_BF,
    UNIT_MONEY_PER_M3,
    UNIT_MONEY_PER_SHEET,
    UNIT_MONEY_EACH,
    UNIT_MONEY_PER_HOUR,
    UNIT_MONEY_PER_SQFT,
    UNIT_MONEY_PER_M2,
    UNIT_MONEY_PER_DOOR,
    UNIT_MONEY_PER_HINGE,
    UNIT_MONEY_PER_FT,
    UNIT_MONEY_PER_M,
    UNIT_FT_PER_MIN,
    UNIT_M_PER_MIN,
    UNIT_SQFT_PER_GAL,
    UNIT_M2_PER_L,
    UNIT_LB_PER_SQFT,
    UNIT_KG_PER_M2,
    UNIT_LB_PER_CUFT,
    UNIT_KG_PER_M3,
    UNIT_G_PER_CM3,
    UNIT_COUNT_OF_UNITS,
};

/* The unit as it is shown after a number ("bf", "sq ft", "per hour"); "" for bare numbers and
 * counts, and for money, whose currency the job names. */
const char *unit_name(enum unit unit);

/* Whether it is of money: an amount, a price, a wage. */
bool unit_is_money(enum unit unit);

/* Decimals of a computed figure: length 6, area, board feet and volume 4 (cubic meters 6: a stile
 * is some 0.0007 m3), minutes and weight 2, percent 4, factor 6, money 2 (where its currency
 * has no other number: tape_unit_decimals), count 0; rates 6. */
uint8_t unit_decimals(enum unit unit);

#endif
