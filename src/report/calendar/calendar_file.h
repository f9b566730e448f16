/* SPDX-License-Identifier: MIT */
/* Lines of an iCalendar file: RFC 5545, "Internet Calendaring and Scheduling Core Object
 * Specification". Lines end with CR LF and are folded where they would have more than 75 bytes
 * (3.1), never within a character. Errors of the file are for the caller to ask of it. */
#ifndef DOORCOST_REPORT_CALENDAR_CALENDAR_FILE_H
#define DOORCOST_REPORT_CALENDAR_CALENDAR_FILE_H

#include "base/date.h"

#include <stdio.h>

/* A line whose value is of the format itself: words, dates, names of components. */
void calendar_line(FILE *out, const char *name, const char *value);

/* A line whose value is a text of the user's, UTF-8: backslashes, semicolons, commas and line feeds
 * escaped (3.3.11), other characters that text_shows refuses as `?`, tabs as blanks. */
void calendar_text(FILE *out, const char *name, const char *text);

/* A line whose value is a day (3.3.4), `DTSTART;VALUE=DATE:20260302`. day: date_number. */
void calendar_day(FILE *out, const char *name, int32_t day);

#endif
