/* SPDX-License-Identifier: MIT */
/* What is on the rack as a table that the reader of it takes. */
#ifndef DOORCOST_REPORT_CSV_CSV_RACK_H
#define DOORCOST_REPORT_CSV_CSV_RACK_H

#include "model/rates.h"

#include <stdio.h>

/* Writes all rows with their heading. rates: those that the rack is of. Errors of the file are for
 * the caller to ask of it. */
void csv_rack(FILE *file, const struct rack *rack, const struct rates *rates);

#endif
