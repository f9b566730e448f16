/* SPDX-License-Identifier: MIT */
#include "read/key/day.h"

#include "base/text.h"

#include <string.h>

static int32_t days_of(int32_t year, int32_t month) {
    static const int32_t days[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    bool leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;

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

bool date_value(struct reader *reader, const struct entry *entry, struct date *date) {
    const char *text = entry->text;

    *date = (struct date){-1, -1, -1};
    if (strlen(text) == 10 && text[4] == '-' && text[7] == '-') {
        *date = (struct date){number_of(text, 0, 4), number_of(text, 5, 2), number_of(text, 8, 2)};
    }
    if (date->year < 1900 || date->month < 1 || date->month > 12 || date->day < 1 ||
        date->day > days_of(date->year, date->month)) {
        problem_add(reader->problems, SEVERITY_ERROR, "bad-date", entry->place,
                    "date '%s' is no day of the calendar; expected year, month and day like "
                    "'2026-03-02'",
                    problem_quote(reader->problems, text));
        return false;
    }
    return true;
}
