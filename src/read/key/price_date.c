/* SPDX-License-Identifier: MIT */
#include "read/key/price_date.h"

#include "base/text.h"
#include "read/key/day.h"
#include "read/key/grammar.h"
#include "read/key/quantity.h"

#include <string.h>

/* A price that halves in a year, or doubles, is a slip. */
static const struct unit_form yearly_forms[] = {
    {"% a year", UNIT_PERCENT, 0, -50, 100},
    {"% per year", UNIT_PERCENT, 0, -50, 100},
    {0},
};
static const struct key yearly_key = {.name = "rise of a price", .example = "4 % a year"};

void price_date_report(struct reader *reader, const struct key *key, const struct entry *entry) {
    problem_add(reader->problems, SEVERITY_ERROR, "date-not-of-price", entry->place,
                "the date of %s '%s' has no effect: only prices of the rates have one, behind "
                "their range; take it away",
                key->name, entry_quote(reader, entry));
}

/* What stands in the parentheses from `on ` on, a part of the entry's text. */
static bool read_date(struct reader *reader, const struct entry *entry, const char *from,
                      const char *to, struct price_date *date) {
    const char *const comma = memchr(from, ',', (size_t)(to - from));
    const struct entry day = entry_part(reader, entry, from, comma == NULL ? to : comma);
    struct date on;
    if (!date_value(reader, &day, &on)) {
        return false;
    }
    date->on = (struct value){
        .amount = date_number(on), .place = day.place, .unit = UNIT_DAY, .set = true};
    date->rise = "";
    if (comma == NULL) {
        return true;
    }
    struct entry yearly = entry_part(reader, entry, comma + 1, to);
    yearly.fixed = true;
    date->rise = pool_words(reader->pool, ", %s", yearly.text);
    return quantity_value(reader, &yearly_key, &yearly, yearly_forms, &date->yearly, NULL);
}

bool price_date_take(struct reader *reader, const struct entry *entry, char *text,
                     struct price_date *date) {
    const size_t size = strlen(text);
    char *const open = strrchr(text, '(');
    *date = (struct price_date){.rise = ""};
    if (size == 0 || text[size - 1] != ')' || open == NULL) {
        return true;
    }
    const char *const words = text_skip_blanks(open + 1);
    if (strncmp(words, "on ", 3) != 0) {
        return true;
    }
    *open = '\0';
    text[text_trim_end(text, open) - text] = '\0';
    return read_date(reader, entry, entry->text + (words + 3 - text), entry->text + size - 1, date);
}
