/* SPDX-License-Identifier: MIT */
/* Calendar dates (Gregorian). */
#ifndef DOORCOST_BASE_DATE_H
#define DOORCOST_BASE_DATE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* Writes the date that is days (0 to 36 500) after year-month-day as YYYY-MM-DD into text (11
 * bytes); returns text. */
char *date_after(int32_t year, int32_t month, int32_t day, int32_t days, char *text, size_t size);

#endif
