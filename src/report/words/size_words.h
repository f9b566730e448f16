/* SPDX-License-Identifier: MIT */
/* What the prices by size are called, the same on every paper. */
#ifndef DOORCOST_REPORT_WORDS_SIZE_WORDS_H
#define DOORCOST_REPORT_WORDS_SIZE_WORDS_H

#include "price/size_table.h"

/* "added to this job", "alone"; static. */
const char *size_way_name(enum size_way way);
/* "bears it", "earns less", "loses money": what a flat price by area does; static. */
const char *flat_does_name(enum flat_does does);
/* "sq ft" or "m2": in which the rates count areas; static. */
const char *size_area_name(const struct estimate *estimate);

#endif
