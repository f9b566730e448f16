/* SPDX-License-Identifier: MIT */
#include "base/date.h"

#include <stdio.h>

static int32_t days_of(int32_t year, int32_t month) {
    static const int8_t days[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    const bool leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
    return days[month - 1] + (month == 2 && leap ? 1 : 0);
}

struct date date_after(struct date date, int32_t days) {
    date.day += days;
    while (date.day > days_of(date.year, date.month)) {
        date.day -= days_of(date.year, date.month);
        date.month++;
        if (date.month > 12) {
            date.month = 1;
            date.year++;
        }
    }
    return date;
}

static int32_t days_of_year(int32_t year) {
    return 337 + days_of(year, 2);
}

/* Of a year that is no more than some hundred from 1970: counted, as a calendar on the wall. */
int32_t date_number(struct date date) {
    int32_t number = date.day - 1;
    for (int32_t month = 1; month < date.month; month++) {
        number += days_of(date.year, month);
    }
    for (int32_t year = 1970; year < date.year; year++) {
        number += days_of_year(year);
    }
    for (int32_t year = date.year; year < 1970; year++) {
        number -= days_of_year(year);
    }
    return number;
}

struct date date_of_number(int32_t number) {
    struct date date = {.year = 1970, .month = 1, .day = 1};
    for (; number < 0; date.year--) {
        number += days_of_year(date.year - 1);
    }
    for (; number >= days_of_year(date.year); date.year++) {
        number -= days_of_year(date.year);
    }
    return date_after(date, number);
}

char *date_text(struct date date, char *text, size_t size) {
    (void)snprintf(text, size, "%04d-%02d-%02d", (int)date.year, (int)date.month, (int)date.day);
    return text;
}
