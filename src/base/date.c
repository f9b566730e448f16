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

char *date_text(struct date date, char *text, size_t size) {
    (void)snprintf(text, size, "%04d-%02d-%02d", (int)date.year, (int)date.month, (int)date.day);
    return text;
}
