/* SPDX-License-Identifier: MIT */
/* Prices by size as a table for other programs. */
#ifndef DOORCOST_REPORT_CSV_CSV_SIZE_TABLE_H
#define DOORCOST_REPORT_CSV_CSV_SIZE_TABLE_H

#include "price/size_table.h"

#include <stdio.h>

/* A record for each style, size, count and way, behind a head that names the columns. Whether out
 * took it is for the caller to ask. */
void csv_size_table(FILE *out, const struct estimate *estimate, const struct size_table *table);

#endif
