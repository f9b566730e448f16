/* SPDX-License-Identifier: MIT */
/* A row as the door list would have it that names nothing but a style and its size: for what one
 * more door would come to, which no list holds yet. */
#ifndef DOORCOST_READ_JOB_STYLE_ROW_H
#define DOORCOST_READ_JOB_STYLE_ROW_H

#include "model/job.h"

/* How long and how high a row may be: from 1 in to 120 in, as of the door list. */
bool style_row_side_fits(length side);

/* How many openings or doors a row may be of: from 1 to 9999, likewise. */
bool style_row_count_fits(int64_t count);

/* The make of a row that names the style of that index (into rates->styles) and nothing else, all
 * the rest being as [make] and the option say. Where rows of the job have the same one, it has
 * their number; else the number is job->make_count, which a job that has such a row counts one
 * more. Names are borrowed. */
struct make style_make(const struct rates *rates, const struct job *job, int32_t style);

/* A row of one door of that make, as measured, in nm. make: borrowed. */
struct row style_row(const struct make *make, length width, length height);

/* Whether the door of the row can be made under the option (-1: the base job); what is wrong goes
 * to problems, in the words of the reader of the list. rates, job: read without errors. */
bool style_row_can_be_made(const struct rates *rates, const struct job *job, const struct row *row,
                           int option, struct problems *problems)
    __attribute__((warn_unused_result));

#endif
