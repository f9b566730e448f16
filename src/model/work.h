/* SPDX-License-Identifier: MIT */
/* The work of a shop: operations and machines, as the rates file has them. */
#ifndef DOORCOST_MODEL_WORK_H
#define DOORCOST_MODEL_WORK_H

#include "model/hazard.h"
#include "model/value.h"

/* What a client may ask whether it is done. */
enum task {
    TASK_NONE,
    TASK_BORING,   /* the doors for their hinges */
    TASK_HINGES,   /* fitting them to the doors */
    TASK_HANGING,  /* hanging and adjusting the doors */
    TASK_PULLS,    /* drilling for pulls and knobs, and fitting them */
    TASK_HARDWARE, /* fitting other hardware */
    TASK_DELIVERY,
    TASK_COUNT
};

struct operation {
    struct text name;
    struct text machine_name;
    struct text client_name; /* as the client reads that it is done; absent: not said, or as does */
    struct choice does;      /* enum task */
    struct choice per;       /* enum driver, needed */
    struct value minutes;    /* minutes per driver; or */
    struct value feed;       /* ft per min or m per min; only for runs */
    struct value handling;   /* minutes per handling_per */
    struct choice handling_per; /* enum driver: door, part, stile, rail, panel */
    struct value passes;        /* count, default 1 */
    struct value together;      /* count worked on at once, default 1 */
    struct value setup;         /* minutes */
    struct choice setup_per;    /* enum setup_per */
    struct value hands;         /* people at it, default 1 */
    struct value capacity;      /* nm across the machine; unset: any */
    struct value labor_rate;    /* money per hour; unset: the shop's */
    int32_t machine;            /* index into rates.machines, -1: handwork */
    bool one_side_open;         /* a wider door, up to twice the capacity, goes in two passes */
    bool by_wood;               /* takes longer in wood whose `work` says so */
    bool off_bench;             /* done elsewhere: measuring, quoting, delivering */
};

struct machine {
    struct text name;
    struct value rate;     /* money per hour */
    struct value shortest; /* nm; parts of frames that are shorter, rough, are milled in blanks */
    struct choice kind;    /* enum machine_kind */
};

#endif
