/* SPDX-License-Identifier: MIT */
/* Tables for other programs as comma-separated values: RFC 4180, UTF-8, lines end with CR LF.
 * Errors of the file are for the caller to ask of it. */
#ifndef DOORCOST_REPORT_CSV_CSV_H
#define DOORCOST_REPORT_CSV_CSV_H

#include <stdbool.h>
#include <stdio.h>

/* A table in the writing. Start from {.out = FILE}. */
struct csv {
    FILE *out;
    bool begun; /* the record has a cell already */
};

/* The next cell of the record, quoted where it has to be. */
void csv_put(struct csv *csv, const char *text);
/* Ends the record. */
void csv_end(struct csv *csv);

#endif
