/* SPDX-License-Identifier: MIT */
/* What a file may hold at most. The reader refuses more, naming the place and the limit, so that no
 * table is cut off in silence; the stages size their arrays by these. docs/formats.md lists them,
 * "Limits", and test_limits goes to each of them and over it. */
#ifndef DOORCOST_MODEL_LIMITS_H
#define DOORCOST_MODEL_LIMITS_H

enum {
    MOST_HEIGHTS = 32,        /* of a door's `rows`: more bars than any door was seen with */
    MOST_HINGES = 10,         /* of a leaf */
    MOST_HINGE_RULES = 32,    /* steps of a rule of [hinges] */
    MOST_PRICE_BREAKS = 32,   /* of a lumber */
    MOST_DISCOUNTS = 32,      /* steps of the discount by count */
    MOST_CONTAINER_SIZES = 8, /* of a product; the search for the cheapest set grows with them */
    MOST_COATS = 32,          /* products of a finish, one after another */
    MOST_DOOR_ROWS = 100000,  /* of a door list; some 400 MB to check them */
    MOST_OF_ROW = 9999,       /* openings or doors of a row */
    MOST_WOODS = 10000,       /* rows of the table of woods */
    MOST_DAYS_OFF = 366,      /* days of one span of holidays */
    MOST_RACK = 2000,         /* rows of what is on the rack */
    MOST_RACK_SIZES = 50,     /* sizes of one lumber or sheet there: choosers give few */
    MOST_SPARED = 20000,      /* rails of one width that spares are counted for */
    MOST_ACTUALS = 20000      /* rows of what was noted of a job */
};

#endif
