/* SPDX-License-Identifier: MIT */
/* The JSON form of every command's result; docs/json.md describes it.  Keys stand in a fixed order,
 * numbers that were figured are texts (a decimal number in JSON would be read as a double), so the
 * same inputs give the same bytes. */
#ifndef DOORCOST_REPORT_JSON_JSON_H
#define DOORCOST_REPORT_JSON_JSON_H

#include "bridge/bridge.h"
#include "days/work/day_rows.h"
#include "learn/hours_fit.h"
#include "price/chance.h"
#include "price/size_table.h"
#include "price/strike.h"
#include "price/target.h"
#include "price/ways.h"
#include "together/together.h"
#include "trial/range.h"

#include <stdio.h>

/* What of an estimate is written. */
enum json_part {
    JSON_DOORS = 1 << 0,
    JSON_MATERIALS = 1 << 1,
    JSON_FINISH = 1 << 2,
    JSON_LABOR = 1 << 3,
    JSON_COSTS = 1 << 4,
    JSON_SALE = 1 << 5,
    JSON_PURCHASE = 1 << 6,
    JSON_TAPE = 1 << 7,
    JSON_PLANS = 1 << 8,
    JSON_INPUTS = 1 << 9, /* of the job, not of an estimate */
};

struct json_paper {
    const char *command;
    unsigned parts; /* of enum json_part */
    const struct problems *problems;
    const struct problems *further;   /* of other files that the command read; NULL: none */
    const struct job_texts *inputs;   /* what the files say; for JSON_INPUTS alone */
    const struct job *job;            /* NULL: the inputs were wrong, only problems are written */
    const struct estimate *estimates; /* the first is what the others are compared with */
    size_t count;
    fig explained;                     /* of the first estimate: what was asked for; none */
    const struct strike *strike;       /* of the first estimate; NULL: not asked for */
    const struct learned *learned;     /* likewise */
    const struct proposals *proposals; /* of all jobs that were learned from; likewise */
    const struct hours_fit *hours_fit; /* likewise */
    const struct day_plan *days;       /* of all jobs of the call; likewise */
    const struct day_rows *day_rows;   /* of these; where days is set */
    const struct ranges *ranges;       /* of the first estimate; likewise */
    const struct bridge *bridge;       /* to the first estimate; likewise */
    const struct size_table *sizes;    /* likewise */
    const struct ways *ways;           /* of the first estimate; likewise */
    const struct chance *chance;       /* likewise */
    const struct target *target;       /* likewise */
    const struct together *together;   /* whose estimate is the first; likewise */
};

/* Writes the document and a line feed, piece by piece. false: out of memory, and what was written
 * is not whole. Whether out took it is for the caller to ask. */
bool json_write(const struct json_paper *paper, FILE *out) __attribute__((warn_unused_result));

#endif
