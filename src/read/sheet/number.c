/* SPDX-License-Identifier: MIT */
/* Sizes and counts pass through a double here because the workbook holds one: 15 digits of it are
 * what every spreadsheet shows, and all that was typed. */
#include "read/sheet/number.h"

#include "base/date.h"
#include "base/text.h"

#include <ctype.h>
#include <errno.h>
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* --- formats --- */

/* What stands for a unit that is too long to be one, so that none is read into its first letters.
 */
#define LONG_SUFFIX " (a long unit)"

/* What a format shows, gathered along it. */
struct shown {
    bool digits, slash, question, percent, day, time, month;
    char suffix[NUMBER_SUFFIX];
    size_t size;
};

static void add_suffix(struct shown *shown, char c) {
    if (shown->digits && shown->size < sizeof shown->suffix) {
        shown->suffix[shown->size++] = c;
    }
}

/* A letter or sign of the code that stands for something. */
static void add_sign(struct shown *shown, char c) {
    switch (tolower((unsigned char)c)) {
    case '0':
    case '#':
    case '?':
        shown->digits = true;
        shown->question = shown->question || c == '?';
        shown->size = 0; /* what stands between digits is not behind them */
        break;
    case '/':
        shown->slash = shown->digits;
        break;
    case '%':
        shown->percent = true;
        break;
    case 'd':
    case 'y':
        shown->day = true;
        break;
    case 'h':
    case 's':
        shown->time = true;
        break;
    case 'm':
        shown->month = true;
        break;
    case '\'':
        add_suffix(shown, c);
        break;
    default:
        break;
    }
}

/* The part of the code for numbers over zero. */
static void look(struct shown *shown, const char *code) {
    for (const char *c = code; *c != '\0' && *c != ';'; c++) {
        if (*c == '"') {
            for (c++; *c != '\0' && *c != '"'; c++) {
                add_suffix(shown, *c);
            }
        } else if (*c == '\\' && c[1] != '\0') {
            add_suffix(shown, *++c);
        } else if ((*c == '_' || *c == '*') && c[1] != '\0') {
            c++; /* a blank as wide as that character, or it over and over */
        } else if (*c == '[') {
            const char first = (char)tolower((unsigned char)c[1]);
            shown->time = shown->time || ((first == 'h' || first == 'm' || first == 's') &&
                                          (c[2] == c[1] || c[2] == ']'));
            c += strcspn(c, "]");
        } else {
            add_sign(shown, *c);
        }
        if (*c == '\0') {
            break;
        }
    }
}

struct number_form number_form_of(const char *code, struct pool *pool) {
    struct shown shown = {0};
    struct number_form form = {NUMBER_PLAIN, NULL};

    if (strncasecmp(code, "General", strlen("General")) == 0) {
        code += strlen("General");
        shown.digits = true;
    }
    look(&shown, code);
    if (shown.day || (shown.month && !shown.time && !shown.digits)) {
        form.kind = NUMBER_DATE;
    } else if (shown.time) {
        form.kind = NUMBER_TIME;
    } else if (shown.percent) {
        form.kind = NUMBER_PERCENT;
    } else {
        form.kind = shown.slash ? NUMBER_FRACTION : NUMBER_PLAIN;
        if (shown.size == sizeof shown.suffix) {
            form.suffix = LONG_SUFFIX;
        } else if (strspn(shown.suffix, " ") < shown.size) {
            form.suffix = pool_text(pool, shown.suffix, shown.size);
        }
    }
    return form;
}

struct number_form number_form_built_in(unsigned id) {
    struct number_form form = {NUMBER_PLAIN, NULL};

    if (id == 9 || id == 10) {
        form.kind = NUMBER_PERCENT;
    } else if (id == 12 || id == 13) {
        form.kind = NUMBER_FRACTION;
    } else if ((id >= 14 && id <= 17) || id == 22 || (id >= 27 && id <= 31) || id == 36 ||
               (id >= 50 && id <= 54) || id == 57 || id == 58) {
        form.kind = NUMBER_DATE;
    } else if ((id >= 18 && id <= 21) || (id >= 32 && id <= 35) || (id >= 45 && id <= 47) ||
               id == 55 || id == 56) {
        form.kind = NUMBER_TIME;
    }
    return form;
}

/* --- numbers --- */

#define DECIMALS "9"

static void put_plain(char *room, double number) {
    (void)snprintf(room, NUMBER_TEXT, "%.15g", number);
    const char *const point = strchr(room, '.');
    if (strchr(room, 'e') == NULL && (point == NULL || strlen(point) <= 1 + (size_t)9)) {
        return;
    }
    if (fabs(number) < 1e15) {
        (void)snprintf(room, NUMBER_TEXT, "%." DECIMALS "f", number);
        char *end = room + strlen(room);
        while (end[-1] == '0') {
            *--end = '\0';
        }
        if (end[-1] == '.') {
            end[-1] = '\0';
        }
    }
}

/* `23 7/16`, `7/16`; false: it is not so many 64ths. */
static bool put_fraction(char *room, double number) {
    const double parts = fabs(number) * 64;
    if (parts >= 1e12 || floor(parts) < parts || number == 0) {
        return false;
    }
    const int64_t whole = (int64_t)parts / 64;
    int64_t over = (int64_t)parts % 64;
    int under = 64;
    while (over > 0 && over % 2 == 0) {
        over /= 2;
        under /= 2;
    }
    const char *const sign = number < 0 ? "-" : "";
    if (over == 0) {
        (void)snprintf(room, NUMBER_TEXT, "%s%lld", sign, (long long)whole);
    } else if (whole == 0) {
        (void)snprintf(room, NUMBER_TEXT, "%s%lld/%d", sign, (long long)over, under);
    } else {
        (void)snprintf(room, NUMBER_TEXT, "%s%lld %lld/%d", sign, (long long)whole, (long long)over,
                       under);
    }
    return true;
}

#define DAY_SECONDS 86400

static void put_time(char *room, size_t size, long long seconds) {
    int used = snprintf(room, size, "%lld:%02lld", seconds / 3600, seconds / 60 % 60);
    if (seconds % 60 != 0 && used > 0 && (size_t)used < size) {
        (void)snprintf(room + used, size - (size_t)used, ":%02lld", seconds % 60);
    }
}

/* false: it is no day of the years 1899 to 9999. */
static bool put_date(char *room, double number, bool from_1904) {
    const int step = 36500;
    struct date date = {1899, 12, 30};

    number += from_1904 ? 1462 : 0;
    if (!(number >= 0) || number >= 2958466) {
        return false;
    }
    /* before March 1900 days are counted as if that year had a February 29 */
    const long long seconds = llround(number * DAY_SECONDS);
    int64_t days = seconds / DAY_SECONDS;
    days += days < 60 ? 1 : 0;
    for (; days > step; days -= step) {
        date = date_after(date, step);
    }
    (void)date_text(date_after(date, (int32_t)days), room, NUMBER_TEXT);
    if (seconds % DAY_SECONDS > 0) {
        size_t used = strlen(room);
        room[used++] = ' ';
        put_time(room + used, NUMBER_TEXT - used, seconds % DAY_SECONDS);
    }
    return true;
}

void number_suffix(char *room, const char *suffix) {
    (void)snprintf(room + strlen(room), NUMBER_SUFFIX, "%s",
                   strlen(suffix) < NUMBER_SUFFIX ? suffix : LONG_SUFFIX);
}

const char *number_text(char *room, const char *value, struct number_form form, bool from_1904) {
    const size_t digits = strspn(value, "0123456789");
    char *end;

    if (form.kind == NUMBER_PLAIN && digits > 0 && digits < 15 && value[digits] == '\0' &&
        value[0] != '0') {
        memcpy(room, value, digits + 1); /* most are, and long lists have many */
        return room;
    }
    errno = 0;
    const double number = strtod(value, &end);

    if (*value == '\0' || *end != '\0' || errno != 0 || !isfinite(number)) {
        return value;
    }
    if ((form.kind == NUMBER_DATE && put_date(room, number, from_1904)) ||
        (form.kind == NUMBER_FRACTION && put_fraction(room, number))) {
        return room;
    }
    if (form.kind == NUMBER_TIME && number >= 0 && number < 1e6) {
        put_time(room, NUMBER_TEXT, llround(number * DAY_SECONDS));
    } else if (form.kind == NUMBER_PERCENT) {
        put_plain(room, number * 100);
        (void)snprintf(room + strlen(room), NUMBER_TEXT - strlen(room), " %%");
    } else {
        put_plain(room, number);
    }
    return room;
}
