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

/* Whether a value is above the one before it; else that is reported. */
static bool in_order(struct reader *reader, const struct key *key, const struct entry *item,
                     const struct value *before, const struct value *value) {
    if (!value_above(value, before)) {
        problem_add(
            reader->problems, SEVERITY_ERROR, "not-ascending", item->place,
            "%s: '%s' is not above the one before it; expected a list from small to large, like "
            "'%s'",
            key->name, entry_quote(reader, item), key->example);
        return false;
    }
    return true;
}

/* Reads item i of a list, of which those before it are read; how: what the caller of read_list
 * gave it. false: reported, or out of memory. */
typedef bool item_read(struct reader *reader, const struct key *key, const struct entry *item,
                       const void *how, void *items, size_t i);

/* A list: what its items are read by, and what they become. */
struct list_kind {
    bool numbers; /* a comma within a number is a slip */
    size_t size;  /* of what an item becomes, in bytes */
    item_read *read;
    const void *how;
};

/* What the items become, *count of them, in the reader's pool; NULL: reported, or out of memory. */
static void *read_list(struct reader *reader, const struct key *key, const struct entry *entry,
                       struct list_kind kind, size_t *count) {
    struct entry *items;
    if (!list_split(reader, key, entry, kind.numbers, &items, count)) {
        return NULL;
    }
    void *const things = pool_take(reader->pool, *count, kind.size);
    for (size_t i = 0; things != NULL && i < *count; i++) {
        if (!kind.read(reader, key, &items[i], kind.how, things, i)) {
            return NULL;
        }
    }
    return things;
}

static bool read_length_item(struct reader *reader, const struct key *key, const struct entry *item,
                             const void *how, void *items, size_t i) {
    struct value *const values = items;
    (void)how;
    if (!length_value(reader, key, item, key->kind.range, &values[i])) {
        return false;
    }
    return i == 0 || in_order(reader, key, item, &values[i - 1], &values[i]);
}

void read_lengths(struct reader *reader, const struct key *key, const struct entry *entry,
                  void *target) {
    struct values *const field = key_field(key, target);
    size_t count = 0;
    struct value *const values =
        read_list(reader, key, entry,
                  (struct list_kind){true, sizeof *values, read_length_item, NULL}, &count);
    if (values != NULL) {
        *field = (struct values){.v = values, .count = count};
    }
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

/* How a step is written: what stands between its limit and its value. */
struct step_way {
    const char *mark;
    enum limit_is limit;
};

static bool read_step(struct reader *reader, const struct key *key, const struct entry *item,
                      const void *how, void *items, size_t i) {
    const struct step_way *const way = how;
    struct step *const step = (struct step *)items + i;
    struct entry before;
    struct entry after;

    if (!cut_item(reader, key, item, way->mark, &before, &after)) {
        return false;
    }
    before.fixed = true;
    if (!read_limit(reader, key, &before, way->limit, &step->limit) ||
        !quantity_value(reader, key, &after, key->kind.forms, &step->value, NULL)) {
        return false;
    }
    step->words = entry_text(reader, &before).s;
    return step->words != NULL &&
           (i == 0 || in_order(reader, key, item, &step[-1].limit, &step->limit));
}

static void read_step_list(struct reader *reader, const struct key *key, const struct entry *entry,
                           void *target, struct step_way way) {
    struct steps *const field = key_field(key, target);
    size_t count = 0;
    struct step *const steps = read_list(
        reader, key, entry, (struct list_kind){true, sizeof *steps, read_step, &way}, &count);
    if (steps != NULL) {
        *field = (struct steps){.s = steps, .count = count};
    }
}

void read_steps(struct reader *reader, const struct key *key, const struct entry *entry,
                void *target) {
    const enum limit_is limit = key->kind.limit_forms == NULL ? LIMIT_LENGTH : LIMIT_QUANTITY;
    read_step_list(reader, key, entry, target, (struct step_way){":", limit});
}

void read_breaks(struct reader *reader, const struct key *key, const struct entry *entry,
                 void *target) {
    read_step_list(reader, key, entry, target, (struct step_way){" at ", LIMIT_QUANTITY});
}

void read_sizes(struct reader *reader, const struct key *key, const struct entry *entry,
                void *target) {
    read_step_list(reader, key, entry, target, (struct step_way){" at ", LIMIT_VOLUME});
}

/* How a number and its name stand side by side. */
struct naming {
    const char *mark; /* between the two */
    bool name_first;
};

static bool read_named(struct reader *reader, const struct key *key, const struct entry *item,
                       const void *how, void *items, size_t i) {
    const struct naming *const naming = how;
    struct named_value *const named = (struct named_value *)items + i;
    struct entry before;
    struct entry after;

    if (!cut_item(reader, key, item, naming->mark, &before, &after) ||
        !quantity_value(reader, key, naming->name_first ? &after : &before, key->kind.forms,
                        &named->value, NULL)) {
        return false;
    }
    named->name = entry_text(reader, naming->name_first ? &before : &after);
    return true;
}

static void read_named_list(struct reader *reader, const struct key *key, const struct entry *entry,
                            void *target, struct naming naming) {
    struct named_value **const field = key_field(key, target);
    size_t *const field_count = (size_t *)(void *)((char *)target + key->field.beside);
    size_t count = 0;
    struct named_value *const list = read_list(
        reader, key, entry, (struct list_kind){true, sizeof *list, read_named, &naming}, &count);
    if (list != NULL) {
        *field = list;
        *field_count = count;
    }
}

void read_stages(struct reader *reader, const struct key *key, const struct entry *entry,
                 void *target) {
    read_named_list(reader, key, entry, target, (struct naming){" when ", false});
}

void read_groups(struct reader *reader, const struct key *key, const struct entry *entry,
                 void *target) {
    read_named_list(reader, key, entry, target, (struct naming){" at ", true});
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

static bool read_reference(struct reader *reader, const struct key *key, const struct entry *item,
                           const void *how, void *items, size_t i) {
    struct reference *const reference = (struct reference *)items + i;
    (void)how;
    reference->name = entry_text(reader, item);
    reference->index = name_resolve(reader, key, item);
    return true;
}

void read_names(struct reader *reader, const struct key *key, const struct entry *entry,
                void *target) {
    struct references *const field = key_field(key, target);
    size_t count = 0;
    struct reference *const references =
        read_list(reader, key, entry,
                  (struct list_kind){false, sizeof *references, read_reference, NULL}, &count);
    if (references != NULL) {
        check_twice(reader, key, references, count);
        *field = (struct references){.r = references, .count = count};
    }
}

void read_choices(struct reader *reader, const struct key *key, const struct entry *entry,
                  void *target) {
    unsigned bits = 0;
    struct entry *items;
    size_t count;
    const struct spelling *none = key->kind.choices;

    while (none[1].text != NULL) {
        none++;
    }
    if (!list_split(reader, key, entry, false, &items, &count)) {
        return;
    }
    for (size_t i = 0; i < count; i++) {
        const struct spelling *spelling = choice_find(reader, key, &items[i]);
        const unsigned bit = spelling == NULL ? 0 : (unsigned)spelling->choice;

        if (spelling == NULL) {
            return;
        }
        if ((bits & bit) != 0 || (count > 1 && spelling == none)) {
            problem_add(
                reader->problems, SEVERITY_ERROR, "bad-item", entry->place,
                "%s '%s' %s; expected a list like '%s'", key->name, entry_quote(reader, entry),
                spelling == none ? "has 'none' beside others" : "says a thing twice", key->example);
            return;
        }
        bits |= bit;
    }
    *(unsigned *)key_field(key, target) = bits;
}
