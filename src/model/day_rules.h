/* SPDX-License-Identifier: MIT */
/* What a plan by day goes by: [days]. */
#ifndef DOORCOST_MODEL_DAY_RULES_H
#define DOORCOST_MODEL_DAY_RULES_H

#include "base/date.h"
#include "model/value.h"

/* Days that follow each other; first <= last. */
struct day_span {
    struct date first, last;
};

struct days_off {
    struct day_span *spans; /* as listed */
    size_t count;
};

struct day_rules {
    unsigned weekdays;    /* that are worked: bits 1 << weekday, Monday is 0; 0: not given */
    struct days_off off;  /* days that are not worked beside the other weekdays */
    struct value people;  /* count, default 1 */
    struct value clamps;  /* count: doors or panels in clamps at once; unset: never scarce */
    struct value clamped; /* minutes in the clamps once glued */
    struct value racks;   /* count; unset: places are never scarce */
    struct value places;  /* count: doors that one of them takes while a coat dries */
    bool at_once;         /* a coat goes on both faces before it dries; else the back dries first */
    struct value finisher;       /* days that doors whose finish is put out are away */
    struct references unplanned; /* operations that are done before the job is taken */
    struct references first;     /* that come before all others, in this order */
    struct references last;      /* that come behind all others, in this order */
};

#endif
