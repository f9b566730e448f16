/* SPDX-License-Identifier: MIT */
#include "read/key/range.h"

#include "base/text.h"

#include <string.h>

static char *trim(char *text) {
    text += text_skip_blanks(text) - text;
    text[text_trim_end(text, text + strlen(text)) - text] = '\0';
    return text;
}

void range_unread(struct reader *reader, const struct entry *entry) {
    problem_add(reader->problems, SEVERITY_ERROR, "bad-range", entry->place,
                "the range of '%s' cannot be read; expected one like '4.10 per bf (3.80 to "
                "4.60)'",
                entry_quote(reader, entry));
}

bool range_take(struct reader *reader, const struct entry *entry, char *text, char **low,
                char **high) {
    size_t size = strlen(text);
    char *open = strrchr(text, '(');
    char *to;

    *low = NULL;
    *high = NULL;
    if (size == 0 || text[size - 1] != ')' || open == NULL) {
        return true;
    }
    to = strstr(open, " to ");
    if (strncmp(open + 1, "on ", 3) == 0) { /* where dates are taken off, none is left */
        return true;
    }
    if (to == NULL) {
        range_unread(reader, entry);
        return false;
    }
    text[size - 1] = '\0';
    *to = '\0';
    *open = '\0';
    *low = trim(open + 1);
    *high = trim(to + 4);
    (void)trim(text);
    return true;
}

void range_report(struct reader *reader, const struct key *key, const struct entry *entry) {
    problem_add(reader->problems, SEVERITY_ERROR, "bad-range", entry->place,
                "the range of %s '%s' does not hold the value; expected one like '4.10 per bf "
                "(3.80 to 4.60)'",
                key->name, entry_quote(reader, entry));
}

void range_ask(struct reader *reader, const struct key *key, const struct entry *entry) {
    problem_add(reader->problems, SEVERITY_WARNING, "range-unused", entry->place,
                "the range of %s '%s' has no effect: numbers of the rates are moved through "
                "theirs, limits and numbers of a job are not; take it away",
                key->name, entry_quote(reader, entry));
}

/* Where the entry stands in the value of its key; NULL: its text is not of there, or not kept. */
static const char *find_entry(const struct reader *reader, const struct entry *entry) {
    const struct ini_key *const key = reader->written;

    if (reader->numbers == NULL || key == NULL || entry->fixed) {
        return NULL;
    }
    const size_t at = (size_t)entry->place.column - key->value_place.column;
    const bool within = entry->place.line == key->value_place.line &&
                        entry->place.column >= key->value_place.column && at <= strlen(key->value);

    return within && strncmp(key->value + at, entry->text, strlen(entry->text)) == 0
               ? key->value + at
               : NULL;
}

/* The part of text, which ends at the number, that is of the number's own item. */
static const char *lead_of(const char *text) {
    const char *const comma = strrchr(text, ',');

    return comma == NULL ? text : text_skip_blanks(comma + 1);
}

/* An end of a range: a bare number takes the unit of the value. */
static const char *end_text(struct pool *pool, const char *end, const char *unit) {
    const bool bare = strspn(end, " \t+-0123456789./") == strlen(end);

    return pool_words(pool, "%s%s", end, bare ? unit : "");
}

/* Room for one more; NULL: the pool tells of want of memory. */
static struct rate_number *add(struct rate_numbers *numbers, struct pool *pool) {
    if (numbers->count == numbers->room) {
        const size_t room = numbers->room == 0 ? 64 : numbers->room * 2;
        struct rate_number *const list = pool_take(pool, room, sizeof *list);
        if (list == NULL) {
            return NULL;
        }
        if (numbers->count > 0) {
            memcpy(list, numbers->list, numbers->count * sizeof *list);
        }
        *numbers = (struct rate_numbers){list, numbers->count, room};
    }
    return &numbers->list[numbers->count++];
}

bool number_keep(struct reader *reader, const struct key *key, const struct entry *entry,
                 const struct number_written *written) {
    struct pool *const pool = reader->pool;
    const char *const at = find_entry(reader, entry);
    struct rate_number *const kept = at == NULL ? NULL : add(reader->numbers, pool);
    if (kept == NULL) {
        return at != NULL;
    }
    const struct ini_section *const section = reader->section;
    const char *const value = reader->written->value;
    const char *const comment = reader->written->comment;
    const char *const before = pool_words(pool, "%.*s", (int)(at - value), value);
    *kept = (struct rate_number){
        .value = written->value,
        .section = pool_words(pool, "%s%s%s", section->kind, section->name[0] == '\0' ? "" : " ",
                              section->name),
        .key = key->name,
        .before = before,
        .behind = pool_words(pool, "%s", at + strlen(entry->text)),
        .rise = "",
        .lead = lead_of(before),
        .likely = pool_words(pool, "%s", written->text),
        .unit = written->value.unit == UNIT_NM
                    ? (reader->unit == LENGTH_INCH ? RATE_INCHES : RATE_MILLIMETERS)
                    : pool_words(pool, "%s", written->unit),
        .reason = comment == NULL ? NULL : pool_text(pool, comment, strlen(comment)),
        .most_decimals = written->most_decimals,
        .least = written->least,
        .most = written->most,
    };
    if (!reader->ranged) {
        return false;
    }
    if (written->date.on.set) {
        kept->on = written->date.on;
        kept->yearly = written->date.yearly;
        kept->rise = written->date.rise;
    }
    if (written->ends.set) {
        kept->low = written->ends.low;
        kept->high = written->ends.high;
        kept->low_text = end_text(pool, written->low, written->unit);
        kept->high_text = end_text(pool, written->high, written->unit);
    }
    return true;
}
