/* SPDX-License-Identifier: MIT */
#include "base/date.h"

#include <stdio.h>

static int32_t days_of(int32_t year, int32_t month) {
    static const int8_t days[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    const bool leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
    return days[month - 1] + (month == 2 && leap ? 1 : 0);
}

char *date_after(int32_t year, int32_t month, int32_t day, int32_t days, char *text, size_t size) {
    day += days;
    while (day > days_of(year, month)) {
        day -= days_of(year, month);
        month++;
        if (month > 12) {
            month = 1;
            year++;
        }
    }
    (void)snprintf(text, size, "%04d-%02d-%02d", (int)year, (int)month, (int)day);
    return text;
}
