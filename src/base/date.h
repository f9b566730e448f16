/* SPDX-License-Identifier: MIT */
/* Calendar dates (Gregorian). */
#ifndef DOORCOST_BASE_DATE_H
#define DOORCOST_BASE_DATE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* year: 1 to 9999; month: 1 to 12; day: of that month, from 1. */
struct date {
    int32_t year, month, day;
};

/* The date that is days (0 to 36 500) after another. */
struct date date_after(struct date date, int32_t days);

/* The days from 1970-01-01 to a date of 1900 or later; less than 0 before that day. */
int32_t date_number(struct date date);

/* The date of such a number. */
struct date date_of_number(int32_t number);

/* The weekday of a number: 0 is Monday, 6 Sunday. */
int date_weekday(int32_t number);

/* Reads a date written 2026-03-02, of the year 1900 or later. false: it is no day of the calendar,
 * and *date means nothing. */
bool date_read(const char *text, struct date *date);

/* Today, by the clock and the time zone of the computer. */
struct date date_today(void);

/* Writes a date as YYYY-MM-DD into text (11 bytes are enough); returns text. */
char *date_text(struct date date, char *text, size_t size);

#endif
