/* SPDX-License-Identifier: MIT */
/* The rates that ship, as texts of the program: a shop that has none yet begins with a copy. */
#ifndef DOORCOST_DRAFT_SHIPPED_FILES_H
#define DOORCOST_DRAFT_SHIPPED_FILES_H

#include <stdbool.h>

/* rates/small-shop.ini and rates/metric-shop.ini. */
extern const char shipped_inch[], shipped_metric[];
/* What they name: rates/woods.csv, rates/terms.txt. */
extern const char shipped_woods[], shipped_terms[];

/* The rates in millimeters, or those in inches. */
static inline const char *shipped_rates(bool metric) {
    return metric ? shipped_metric : shipped_inch;
}

#endif
