/* SPDX-License-Identifier: MIT */
/* Lists: items between commas. */
#include "read/key/grammar.h"
#include "read/key/quantity.h"

#include <string.h>

static bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

/* The end of the item at text; commas within parentheses belong to it. */
static const char *item_end(const char *text) {
    int depth = 0;

    for (; *text != '\0'; text++) {
        if (*text == ',' && depth == 0) {
            break;
        }
        depth += *text == '(' ? 1 : (*text == ')' && depth > 0 ? -1 : 0);
    }
    return text;
}

static size_t count_items(const char *text) {
    size_t count = 1;

    for (text = item_end(text); *text != '\0'; text = item_end(text + 1)) {
        count++;
    }
    return count;
}

bool list_fits(struct reader *reader, const struct key *key, const struct entry *entry,
               size_t count) {
    if (key->kind.most == 0 || count <= key->kind.most) {
        return true;
    }
    problem_add(reader->problems, SEVERITY_ERROR, "too-many", entry->place,
                "%s has %zu items; at most %zu can be counted with", key->name, count,
                key->kind.most);
    return false;
}

bool list_split(struct reader *reader, const struct key *key, const struct entry *entry,
                bool numbers, struct entry **items, size_t *count) {
    const char *from = entry->text;

    *count = count_items(from);
    if (!list_fits(reader, key, entry, *count)) {
        return false;
    }
    *items = pool_take(&reader->problems->pool, *count, sizeof(**items));
    if (*items == NULL) {
        return false;
    }
    for (size_t i = 0; i < *count; i++) {
        const char *to = item_end(from);

        if (numbers && *to == ',' && to > from && is_digit(to[-1]) && is_digit(to[1])) {
            problem_add(
                reader->problems, SEVERITY_ERROR, "comma-in-number", entry->place,
                "%s '%s' has a comma in its number; write decimals with a point and nothing "
                "between thousands: '1234.50'; put a blank behind a comma between items",
                key->name, entry_quote(reader, entry));
            return false;
        }
        (*items)[i] = entry_part(reader, entry, from, to);
        if ((*items)[i].text[0] == '\0') {
            problem_add(reader->problems, SEVERITY_ERROR, "empty-item", entry->place,
                        "%s '%s' has nothing between two commas or at an end; expected a list like "
                        "'%s'",
                        key->name, entry_quote(reader, entry), key->example);
            return false;
        }
        from = *to == '\0' ? to : to + 1;
    }
    return true;
}

static void report_order(struct reader *reader, const struct key *key, const struct entry *entry) {
    problem_add(
        reader->problems, SEVERITY_ERROR, "not-ascending", entry->place,
        "%s: '%s' is not above the one before it; expected a list from small to large, like "
        "'%s'",
        key->name, entry_quote(reader, entry), key->example);
}

void read_lengths(struct reader *reader, const struct key *key, const struct entry *entry,
                  void *target) {
    struct values *field = key_field(key, target);
    struct entry *items;
    struct value *values;
    size_t count;

    if (!list_split(reader, key, entry, true, &items, &count)) {
        return;
    }
    values = pool_take(reader->pool, count, sizeof(*values));
    if (values == NULL) {
        return;
    }
    for (size_t i = 0; i < count; i++) {
        if (!length_value(reader, key, &items[i], key->kind.range, &values[i])) {
            return;
        }
        if (i > 0 && !value_above(&values[i], &values[i - 1])) {
            report_order(reader, key, &items[i]);
            return;
        }
    }
    *field = (struct values){.v = values, .count = count};
}

/* Cuts an item at the mark (`:`, ` at `) into its two parts; false: reported. */
static bool cut_item(struct reader *reader, const struct key *key, const struct entry *item,
                     const char *mark, struct entry *before, struct entry *after) {
    const char *at = strstr(item->text, mark);

    if (at != NULL) {
        *before = entry_part(reader, item, item->text, at);
        *after = entry_part(reader, item, at + strlen(mark), item->text + strlen(item->text));
        if (before->text[0] != '\0' && after->text[0] != '\0') {
            return true;
        }
    }
    problem_add(reader->problems, SEVERITY_ERROR, "bad-item", item->place,
                "%s: '%s' cannot be read; expected a list like '%s'", key->name,
                entry_quote(reader, item), key->example);
    return false;
}

/* How the limit of a step is read. */
enum limit_is { LIMIT_LENGTH, LIMIT_QUANTITY, LIMIT_VOLUME };

static bool read_limit(struct reader *reader, const struct key *key, const struct entry *entry,
                       enum limit_is limit, struct value *value) {
    switch (limit) {
    case LIMIT_LENGTH:
        return length_value(reader, key, entry, key->kind.range, value);
    case LIMIT_VOLUME:
        return volume_value(reader, key, entry, NULL, value);
    case LIMIT_QUANTITY:
    default:
        return quantity_value(reader, key, entry, key->kind.limit_forms, value, NULL);
    }
}

static bool read_step(struct reader *reader, const struct key *key, const struct entry *item,
                      const char *mark, enum limit_is limit, struct step *step) {
    struct entry before;
    struct entry after;

    if (!cut_item(reader, key, item, mark, &before, &after) ||
        !read_limit(reader, key, &before, limit, &step->limit) ||
        !quantity_value(reader, key, &after, key->kind.forms, &step->value, NULL)) {
        return false;
    }
    step->words = entry_text(reader, &before).s;
    return step->words != NULL;
}

static void read_step_list(struct reader *reader, const struct key *key, const struct entry *entry,
                           void *target, const char *mark, enum limit_is limit) {
    struct steps *field = key_field(key, target);
    struct entry *items;
    struct step *steps;
    size_t count;

    if (!list_split(reader, key, entry, true, &items, &count)) {
        return;
    }
    steps = pool_take(reader->pool, count, sizeof(*steps));
    if (steps == NULL) {
        return;
    }
    for (size_t i = 0; i < count; i++) {
        if (!read_step(reader, key, &items[i], mark, limit, &steps[i])) {
            return;
        }
        if (i > 0 && !value_above(&steps[i].limit, &steps[i - 1].limit)) {
            report_order(reader, key, &items[i]);
            return;
        }
    }
    *field = (struct steps){.s = steps, .count = count};
}

void read_steps(struct reader *reader, const struct key *key, const struct entry *entry,
                void *target) {
    read_step_list(reader, key, entry, target, ":",
                   key->kind.limit_forms == NULL ? LIMIT_LENGTH : LIMIT_QUANTITY);
}

void read_breaks(struct reader *reader, const struct key *key, const struct entry *entry,
                 void *target) {
    read_step_list(reader, key, entry, target, " at ", LIMIT_QUANTITY);
}

void read_sizes(struct reader *reader, const struct key *key, const struct entry *entry,
                void *target) {
    read_step_list(reader, key, entry, target, " at ", LIMIT_VOLUME);
}

void read_stages(struct reader *reader, const struct key *key, const struct entry *entry,
                 void *target) {
    struct named_value **field = key_field(key, target);
    size_t *field_count = (size_t *)(void *)((char *)target + key->field.beside);
    struct named_value *values;
    struct entry *items;
    size_t count;

    if (!list_split(reader, key, entry, true, &items, &count)) {
        return;
    }
    values = pool_take(reader->pool, count, sizeof(*values));
    if (values == NULL) {
        return;
    }
    for (size_t i = 0; i < count; i++) {
        struct entry number;
        struct entry name;

        if (!cut_item(reader, key, &items[i], " when ", &number, &name) ||
            !quantity_value(reader, key, &number, key->kind.forms, &values[i].value, NULL)) {
            return;
        }
        values[i].name = entry_text(reader, &name);
    }
    *field = values;
    *field_count = count;
}

/* What is listed twice would be counted once: it is not clear which was meant. */
static void check_twice(struct reader *reader, const struct key *key,
                        const struct reference *references, size_t count) {
    for (size_t i = 1; i < count; i++) {
        size_t first = 0;

        while (first < i &&
               (references[i].index < 0 || references[first].index != references[i].index)) {
            first++;
        }
        if (first < i) {
            problem_add(reader->problems, SEVERITY_ERROR, "listed-twice", references[i].name.place,
                        "%s names '%s' twice; it is done once, so take one away, or give it passes",
                        key->name, problem_quote(reader->problems, references[i].name.s));
        }
    }
}

void read_names(struct reader *reader, const struct key *key, const struct entry *entry,
                void *target) {
    struct references *field = key_field(key, target);
    struct reference *references;
    struct entry *items;
    size_t count;

    if (!list_split(reader, key, entry, false, &items, &count)) {
        return;
    }
    references = pool_take(reader->pool, count, sizeof(*references));
    if (references == NULL) {
        return;
    }
    for (size_t i = 0; i < count; i++) {
        references[i].name = entry_text(reader, &items[i]);
        references[i].index = name_resolve(reader, key, &items[i]);
    }
    check_twice(reader, key, references, count);
    *field = (struct references){.r = references, .count = count};
}
