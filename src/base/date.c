/* SPDX-License-Identifier: MIT */
#include "base/date.h"

#include "base/text.h"

#include <stdio.h>
#include <string.h>
#include <time.h>

static int32_t days_of(int32_t year, int32_t month) {
    static const int8_t days[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    const bool leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
    return days[month - 1] + (month == 2 && leap ? 1 : 0);
}

/* Digits [at, at + size) as a number; -1: not only digits. */
static int32_t number_of(const char *text, size_t at, size_t size) {
    int64_t number = 0;
    uint8_t decimals = 0;
    if (strspn(text + at, "0123456789") < size ||
        !text_decimal(text + at, size, &number, &decimals)) {
        return -1;
    }
    return (int32_t)number;
}

bool date_read(const char *text, struct date *date) {
    *date = (struct date){-1, -1, -1};
    if (strlen(text) == 10 && text[4] == '-' && text[7] == '-') {
        *date = (struct date){number_of(text, 0, 4), number_of(text, 5, 2), number_of(text, 8, 2)};
    }
    return date->year >= 1900 && date->month >= 1 && date->month <= 12 && date->day >= 1 &&
           date->day <= days_of(date->year, date->month);
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

int date_weekday(int32_t number) {
    const int32_t left = (number + 3) % 7; /* 1970-01-01 was a Thursday */
    return left < 0 ? left + 7 : left;
}

char *date_text(struct date date, char *text, size_t size) {
    (void)snprintf(text, size, "%04d-%02d-%02d", (int)date.year, (int)date.month, (int)date.day);
    return text;
}

struct date date_today(void) {
    const time_t now = time(NULL);
    struct tm today = {0};
    (void)localtime_r(&now, &today);
    return (struct date){today.tm_year + 1900, today.tm_mon + 1, today.tm_mday};
}
