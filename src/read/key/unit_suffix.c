/* SPDX-License-Identifier: MIT */
#include "read/key/unit_suffix.h"

#include "base/array.h"
#include "base/text.h"

#include <string.h>

static const struct spelling {
    const char *written, *plain;
} spellings[] = {
    {"h", "hour"},          {"hr", "hour"},       {"hrs", "hour"},
    {"hours", "hour"},      {"mins", "min"},      {"minute", "min"},
    {"minutes", "min"},     {"days", "day"},      {"feet", "ft"},
    {"foot", "ft"},         {"inch", "in"},       {"inches", "in"},
    {"meter", "m"},         {"metre", "m"},       {"meters", "m"},
    {"metres", "m"},        {"sq.", "sq"},        {"square", "sq"},
    {"cu.", "cu"},          {"cubic", "cu"},      {"ft2", "sqft"},
    {"ft\xC2\xB2", "sqft"}, {"sqm", "m2"},        {"m\xC2\xB2", "m2"},
    {"m\xC2\xB3", "m3"},    {"ft.", "ft"},        {"in.", "in"},
    {"cm\xC2\xB3", "cm3"},  {"ft3", "cuft"},      {"ft\xC2\xB3", "cuft"},
    {"gallon", "gal"},      {"gallons", "gal"},   {"gals", "gal"},
    {"quart", "qt"},        {"quarts", "qt"},     {"qts", "qt"},
    {"pint", "pt"},         {"pints", "pt"},      {"litre", "l"},
    {"liter", "l"},         {"litres", "l"},      {"liters", "l"},
    {"ounce", "oz"},        {"ounces", "oz"},     {"fl.", "fl"},
    {"fluid", "fl"},        {"lbs", "lb"},        {"pound", "lb"},
    {"pounds", "lb"},       {"kgs", "kg"},        {"kilogram", "kg"},
    {"kilograms", "kg"},    {"percent", "%"},     {"pct", "%"},
    {"boards", "board"},    {"sheets", "sheet"},  {"doors", "door"},
    {"parts", "part"},      {"pieces", "piece"},  {"stiles", "stile"},
    {"rails", "rail"},      {"panels", "panel"},  {"joints", "joint"},
    {"hinges", "hinge"},    {"ea", "each"},       {"colour", "color"},
    {"colors", "color"},    {"colours", "color"}, {"materials", "material"},
    {"coats", "coat"},      {"labour", "labor"},  {"mitre", "mitre"},
    {"miter", "mitre"},     {"mixes", "mix"},     {"litre.", "l"},
    {"people", ""},         {"person", ""},       {"times", ""},
};

static const struct pair {
    const char *first, *second, *plain;
} pairs[] = {
    {"sq", "ft", "sqft"}, {"cu", "ft", "cuft"}, {"sq", "m", "m2"},
    {"cu", "m", "m3"},    {"fl", "oz", "floz"}, {"board", "ft", "bf"},
};

/* A word as written into its plain form; "" drops it. */
static const char *plain_word(const char *choice) {
    for (size_t i = 0; i < COUNT_OF(spellings); i++) {
        if (text_same(spellings[i].written, choice)) {
            return spellings[i].plain;
        }
    }
    return choice;
}

static const char *plain_pair(const char *first, const char *second) {
    for (size_t i = 0; i < COUNT_OF(pairs); i++) {
        if (strcmp(pairs[i].first, first) == 0 && strcmp(pairs[i].second, second) == 0) {
            return pairs[i].plain;
        }
    }
    return NULL;
}

/* The next word of *text, lower case; `%`, `/` and `+` are words of their own. false: none; or it
 * is too long, and *text stays before it. */
static bool next_word(const char **text, char choice[UNIT_SUFFIX_SIZE]) {
    const char *at = *text;
    size_t size = 0;

    while (*at == ' ' || *at == '\t' || *at == ',') {
        at++;
    }
    if (*at == '%' || *at == '/') {
        choice[size++] = *at++;
    } else {
        while (*at != '\0' && strchr(" \t,%/", *at) == NULL && size < UNIT_SUFFIX_SIZE - 1) {
            char c = *at++;

            choice[size++] = (char)(c >= 'A' && c <= 'Z' ? c - 'A' + 'a' : c);
        }
    }
    choice[size] = '\0';
    if (size == UNIT_SUFFIX_SIZE - 1) {
        return false;
    }
    *text = at;
    return size > 0;
}

/* Adds a word to a suffix of *size bytes. false: no room. */
static bool add_word(char suffix[UNIT_SUFFIX_SIZE], const char *choice) {
    char *last = strrchr(suffix, ' ');
    const char *joined;
    size_t size;

    last = last == NULL ? suffix : last + 1;
    joined = plain_pair(last, choice);
    if (joined != NULL) {
        *last = '\0';
        choice = joined;
    }
    size = strlen(suffix);
    if (size + strlen(choice) + 2 > UNIT_SUFFIX_SIZE) {
        return false;
    }
    if (size > 0 && joined == NULL) {
        suffix[size++] = ' ';
    }
    memcpy(suffix + size, choice, strlen(choice) + 1);
    return true;
}

bool unit_suffix_plain(const char *text, char suffix[UNIT_SUFFIX_SIZE]) {
    char choice[UNIT_SUFFIX_SIZE];

    suffix[0] = '\0';
    while (next_word(&text, choice)) {
        const char *plain = strcmp(choice, "/") == 0 ? "per" : plain_word(choice);

        if (*plain != '\0' && !add_word(suffix, plain)) {
            return false;
        }
    }
    return *text == '\0';
}
