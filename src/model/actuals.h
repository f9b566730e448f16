/* SPDX-License-Identifier: MIT */
/* What a shop noted of a job: hours, what was bought and used up, doors made again. A line of the
 * file each. */
#ifndef DOORCOST_MODEL_ACTUALS_H
#define DOORCOST_MODEL_ACTUALS_H

#include "base/pool.h"
#include "model/name.h"
#include "model/work_sort.h"

/* What a line is about. */
enum actual_about {
    ACTUAL_NOTHING,   /* it could not be read; reported */
    ACTUAL_OPERATION, /* index into rates.operations */
    ACTUAL_SORT,      /* index: enum work_sort */
    ACTUAL_ALL,       /* all work that no other line is about */
    ACTUAL_MATERIAL,  /* index into the rates' array of `kind` */
    ACTUAL_DOORS,     /* doors made again */
};

struct actual {
    struct place place;
    struct text what, date, cause, note;
    enum actual_about about;
    enum name_kind kind; /* of a material */
    int32_t index;
    struct value hours, minutes; /* one of them, of a line of work: of each person */
    struct value people;         /* count; preset 1 */
    struct value bought;         /* in the unit that the rates have the material in */
    struct value paid;           /* money */
    struct value taken, left;    /* opened or cut into, and what is left of that; as bought */
    struct value remade;         /* count of doors */
};

struct actuals {
    struct pool pool;
    struct actual *rows;
    size_t count;
};

#endif
