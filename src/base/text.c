/* SPDX-License-Identifier: MIT */
#include "base/text.h"

#include "base/array.h"
#include "base/pool.h"

#include <stdlib.h>
#include <string.h>
#include <wchar.h>

#define LONGEST_COMPARED ((size_t)63)
#define MOST_DECIMALS    6
/* 10^12: below it a double holds the same decimal. */
#define TOO_LARGE ((int64_t)1000000000000)

static unsigned char lower(char c) {
    return (unsigned char)(c >= 'A' && c <= 'Z' ? c - 'A' + 'a' : c);
}

static bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

/* Length of the UTF-8 sequence at text, 0 when it is none. */
static size_t sequence_length(const unsigned char *text, size_t size) {
    static const struct {
        unsigned char first, last; /* of the lead byte */
        unsigned char low, high;   /* of the second byte */
        size_t length;
    } forms[] = {
        {0x00, 0x7F, 0x00, 0x00, 1}, {0xC2, 0xDF, 0x80, 0xBF, 2}, {0xE0, 0xE0, 0xA0, 0xBF, 3},
        {0xE1, 0xEC, 0x80, 0xBF, 3}, {0xED, 0xED, 0x80, 0x9F, 3}, {0xEE, 0xEF, 0x80, 0xBF, 3},
        {0xF0, 0xF0, 0x90, 0xBF, 4}, {0xF1, 0xF3, 0x80, 0xBF, 4}, {0xF4, 0xF4, 0x80, 0x8F, 4},
    };

    for (size_t i = 0; i < COUNT_OF(forms); i++) {
        size_t length = forms[i].length;

        if (text[0] < forms[i].first || text[0] > forms[i].last) {
            continue;
        }
        if (length > size) {
            return 0;
        }
        if (length > 1 && (text[1] < forms[i].low || text[1] > forms[i].high)) {
            return 0;
        }
        for (size_t k = 2; k < length; k++) {
            if (text[k] < 0x80 || text[k] > 0xBF) {
                return 0;
            }
        }
        return length;
    }
    return 0;
}

/* Bytes of a blank that ends right before to; 0: none does. */
static size_t blank_before(const char *from, const char *to) {
    static const char *const blanks[] = {" ", "\t", "\xC2\xA0", "\xE2\x80\xAF"};

    for (size_t i = 0; i < COUNT_OF(blanks); i++) {
        size_t size = strlen(blanks[i]);

        if ((size_t)(to - from) >= size && memcmp(to - size, blanks[i], size) == 0) {
            return size;
        }
    }
    return 0;
}

const char *text_trim_end(const char *from, const char *to) {
    for (size_t size = blank_before(from, to); size > 0; size = blank_before(from, to)) {
        to -= size;
    }
    return to;
}

const char *text_skip_blanks(const char *text) {
    if (*text > ' ' && *text < 0x7F) {
        return text; /* ASCII that one sees, as nearly always */
    }
    for (size_t size = 1; size < 4 && text[size - 1] != '\0';) {
        if (blank_before(text, text + size) == size) {
            text += size;
            size = 1;
        } else {
            size++;
        }
    }
    return text;
}

/* How many bytes of ASCII text begins with, counted by eights. */
static size_t ascii_length(const char *text, size_t size) {
    uint64_t eight;
    size_t at = 0;
    for (; size - at >= sizeof eight; at += sizeof eight) {
        memcpy(&eight, text + at, sizeof eight);
        if ((eight & UINT64_C(0x8080808080808080)) != 0) {
            break;
        }
    }
    return at;
}

bool text_is_utf8(const char *text, size_t size, size_t *bad) {
    const unsigned char *bytes = (const unsigned char *)text;
    size_t at = 0;

    while (at < size) {
        const size_t ascii = ascii_length(text + at, size - at);
        const size_t length = ascii > 0 ? ascii : sequence_length(bytes + at, size - at);

        if (length == 0) {
            if (bad != NULL) {
                *bad = at;
            }
            return false;
        }
        at += length;
    }
    return true;
}

/* Code points of controls and of marks that turn the direction of writing. */
static bool is_hidden(uint32_t point) {
    static const struct {
        uint32_t first, last;
    } hidden[] = {{0x00, 0x1F},     {0x7F, 0x9F},     {0x061C, 0x061C},
                  {0x200E, 0x200F}, {0x202A, 0x202E}, {0x2066, 0x2069}};

    for (size_t i = 0; i < COUNT_OF(hidden); i++) {
        if (point >= hidden[i].first && point <= hidden[i].last) {
            return true;
        }
    }
    return false;
}

bool text_shows(const char *text, size_t size, size_t *length) {
    static const unsigned char lead_bits[] = {0, 0x7F, 0x1F, 0x0F, 0x07};
    const unsigned char *const bytes = (const unsigned char *)text;
    uint32_t point;

    *length = sequence_length(bytes, size);
    if (*length == 0) {
        *length = 1;
        return false;
    }
    point = bytes[0] & lead_bits[*length];
    for (size_t i = 1; i < *length; i++) {
        point = point << 6 | (bytes[i] & 0x3FU);
    }
    return !is_hidden(point);
}

int text_order(const char *a, const char *b) {
    while (*a != '\0' && lower(*a) == lower(*b)) {
        a++;
        b++;
    }
    return (int)lower(*a) - (int)lower(*b);
}

bool text_same(const char *a, const char *b) {
    return text_order(a, b) == 0;
}

static bool is_word_blank(char c) {
    return c == ' ' || c == '-' || c == '_';
}

bool text_same_word(const char *a, const char *b) {
    for (; *a != '\0' && *b != '\0'; a++, b++) {
        const bool blanks = is_word_blank(*a) && is_word_blank(*b);

        if (!blanks && lower(*a) != lower(*b)) {
            return false;
        }
    }
    return *a == *b;
}

static bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

bool text_holds_word(const char *text, const char *word, size_t size) {
    char wanted[64];
    char part[64];

    if (text == NULL || size == 0 || size >= sizeof(wanted)) {
        return false;
    }
    memcpy(wanted, word, size);
    wanted[size] = '\0';
    for (const char *at = text; *at != '\0'; at++) {
        if ((at > text && is_letter(at[-1])) || strlen(at) < size || is_letter(at[size])) {
            continue;
        }
        memcpy(part, at, size);
        part[size] = '\0';
        if (text_same(part, wanted)) {
            return true;
        }
    }
    return false;
}

bool text_lists(const char *list, const char *name) {
    const size_t size = strlen(name);

    for (const char *from = list;;) {
        const char *const end = from + strcspn(from, ",");
        const char *const start = text_skip_blanks(from);
        size_t same = 0;

        while (start + same < end && same < size && lower(start[same]) == lower(name[same])) {
            same++;
        }
        if (same == size && start <= end && text_trim_end(start, end) == start + size) {
            return true;
        }
        if (*end == '\0') {
            return false;
        }
        from = end + 1;
    }
}

size_t text_distance(const char *a, const char *b) {
    /* Three rows of the usual table: two back for the swap of neighbors. */
    size_t rows[3][LONGEST_COMPARED + 1];
    size_t a_size = strlen(a);
    size_t b_size = strlen(b);

    if (a_size > LONGEST_COMPARED || b_size > LONGEST_COMPARED) {
        return SIZE_MAX;
    }
    for (size_t j = 0; j <= b_size; j++) {
        rows[0][j] = j;
    }
    for (size_t i = 1; i <= a_size; i++) {
        size_t *row = rows[i % 3];
        const size_t *above = rows[(i - 1) % 3];
        const size_t *two_above = rows[(i + 1) % 3];

        row[0] = i;
        for (size_t j = 1; j <= b_size; j++) {
            size_t least = above[j - 1] + (lower(a[i - 1]) == lower(b[j - 1]) ? 0 : 1);

            if (above[j] + 1 < least) {
                least = above[j] + 1;
            }
            if (row[j - 1] + 1 < least) {
                least = row[j - 1] + 1;
            }
            if (i > 1 && j > 1 && lower(a[i - 1]) == lower(b[j - 2]) &&
                lower(a[i - 2]) == lower(b[j - 1]) && two_above[j - 2] + 1 < least) {
                least = two_above[j - 2] + 1;
            }
            row[j] = least;
        }
    }
    return rows[a_size % 3][b_size];
}

const char *text_nearest(const char *text, const char *const *names, size_t count) {
    const char *nearest = NULL;
    size_t least = SIZE_MAX;

    for (size_t i = 0; i < count; i++) {
        size_t distance = text_distance(text, names[i]);
        size_t longer = strlen(text);
        size_t allowed;

        if (strlen(names[i]) > longer) {
            longer = strlen(names[i]);
        }
        allowed = longer / 3 > 0 ? longer / 3 : 1;
        /* Nothing in common is no suggestion: 'x' for 'y'. */
        if (distance <= allowed && distance < longer && distance < least) {
            least = distance;
            nearest = names[i];
        }
    }
    return nearest;
}

const char *text_or_empty(const char *text) {
    return text == NULL ? "" : text;
}

size_t text_columns(const char *text) {
    mbstate_t state = {0};
    size_t size = strlen(text);
    size_t at = 0;
    size_t columns = 0;

    while (at < size) {
        wchar_t wide;
        int width;

        /* most of all text, and the same in every locale */
        if (text[at] >= ' ' && text[at] <= '~') {
            at++;
            columns++;
            continue;
        }
        size_t length = mbrtowc(&wide, text + at, size - at, &state);
        if (length == (size_t)-1 || length == (size_t)-2 || length == 0) {
            length = sequence_length((const unsigned char *)text + at, size - at);
            at += length > 0 ? length : 1;
            columns++;
            state = (mbstate_t){0};
            continue;
        }
        width = wcwidth(wide);
        columns += width < 0 ? 1 : (size_t)width;
        at += length;
    }
    return columns;
}

/* The character at text in units of UTF-16; *size: its bytes. */
static size_t units_at(const char *text, size_t *size) {
    *size = 1;
    while (((unsigned char)text[*size] & 0xC0) == 0x80) {
        (*size)++;
    }
    return (unsigned char)text[0] >= 0xF0 ? 2 : 1;
}

size_t text_units(const char *text) {
    size_t units = 0;
    for (size_t size; *text != '\0'; text += size) {
        units += units_at(text, &size);
    }
    return units;
}

char *text_cut(struct pool *pool, const char *text, size_t most) {
    static const char ellipsis[] = "\xE2\x80\xA6";
    size_t at = 0;
    size_t units = 0;
    if (text_units(text) <= most) {
        return pool_text(pool, text, strlen(text));
    }
    for (size_t size; text[at] != '\0'; at += size) {
        units += units_at(text + at, &size);
        if (units + 1 > most) {
            break;
        }
    }
    return pool_format(pool, "%.*s%s", (int)at, text, most > 0 ? ellipsis : "");
}

bool text_decimal(const char *text, size_t size, int64_t *value, uint8_t *decimals) {
    int64_t number = 0;
    uint8_t places = 0;
    size_t digits = 0;
    size_t at = 0;
    bool minus = false;
    bool point = false;

    if (size > 0 && (text[0] == '-' || text[0] == '+')) {
        minus = text[0] == '-';
        at = 1;
    }
    for (; at < size; at++) {
        if (text[at] == '.' && !point) {
            point = true;
            continue;
        }
        if (!is_digit(text[at])) {
            return false;
        }
        number = number * 10 + (text[at] - '0');
        digits++;
        places = (uint8_t)(places + (point ? 1 : 0));
        if (number >= TOO_LARGE || places > MOST_DECIMALS) {
            return false;
        }
    }
    if (digits == 0 || (point && places == 0)) {
        return false;
    }
    *value = minus ? -number : number;
    *decimals = places;
    return true;
}
