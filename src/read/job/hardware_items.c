/* SPDX-License-Identifier: MIT */
/* `2 knob, catch, 1 lock per opening`: how many, 1 where no number stands, the name of a piece of
 * hardware, and whether the leaves of a pair share it. */
#include "read/job/hardware_items.h"

#include "base/text.h"
#include "model/name.h"
#include "read/key/grammar.h"
#include "read/key/quantity.h"

#include <string.h>

#define PER_OPENING " per opening"
/* As many as pulls; more on one leaf are a slip of the hand. */
#define MOST_PIECES 20

static const struct unit_form pieces[] = {{"", UNIT_COUNT, 0, 1, MOST_PIECES}, {0}};

/* Takes `per opening` off the end. */
static bool take_per_opening(struct reader *reader, struct entry *name) {
    const size_t size = strlen(name->text);
    const size_t mark = strlen(PER_OPENING);
    if (size <= mark || !text_same(name->text + size - mark, PER_OPENING)) {
        return false;
    }
    *name = entry_part(reader, name, name->text, name->text + size - mark);
    return true;
}

/* `2 stay catch`: whether an unknown name ends in one that is known, so that a comma lacks. */
static bool lacks_comma(struct reader *reader, const struct key *key, const struct entry *name) {
    if (!reader->names_known || name_find(reader->rates, key->kind.names, name->text) >= 0) {
        return false;
    }
    for (const char *blank = strchr(name->text, ' '); blank != NULL;
         blank = strchr(blank + 1, ' ')) {
        if (name_find(reader->rates, key->kind.names, blank + 1) >= 0) {
            problem_add(reader->problems, SEVERITY_ERROR, "unknown-name", name->place,
                        "%s '%s' is not in the rates, but '%s' is; put commas between items, as in "
                        "'%s'",
                        key->name, entry_quote(reader, name),
                        problem_quote(reader->problems, blank + 1), key->example);
            return true;
        }
    }
    return false;
}

static bool read_item(struct reader *reader, const struct key *key, const struct entry *entry,
                      struct hardware_item *item) {
    struct entry name = *entry;
    *item = (struct hardware_item){
        .count = {.amount = 1, .place = entry->place, .unit = UNIT_COUNT, .set = true}};
    if (name_find(reader->rates, key->kind.names, name.text) < 0) { /* it may begin with digits */
        item->per_opening = take_per_opening(reader, &name);
        const char *const blank = name.text + strcspn(name.text, " \t");
        if (name.text[strspn(name.text, "+-.0123456789")] == *blank && *blank != '\0') {
            const struct entry number = entry_part(reader, &name, name.text, blank);
            name = entry_part(reader, &name, blank, name.text + strlen(name.text));
            if (!quantity_value(reader, key, &number, pieces, &item->count, NULL)) {
                return false;
            }
        }
    }
    item->hardware.name = entry_text(reader, &name);
    item->hardware.index = lacks_comma(reader, key, &name) ? -1 : name_resolve(reader, key, &name);
    return true;
}

/* It would not be clear which number was meant. */
static bool check_once(struct reader *reader, const struct key *key,
                       const struct hardware_item *items, size_t count) {
    const struct reference *const last = &items[count - 1].hardware;
    for (size_t i = 0; i + 1 < count; i++) {
        if (last->index >= 0 && items[i].hardware.index == last->index) {
            problem_add(reader->problems, SEVERITY_ERROR, "listed-twice", last->name.place,
                        "%s names '%s' twice; name it once, with the number of all", key->name,
                        problem_quote(reader->problems, last->name.s));
            return false;
        }
    }
    return true;
}

void read_hardware_items(struct reader *reader, const struct key *key, const struct entry *entry,
                         void *target) {
    struct hardware_items *const field = key_field(key, target);
    struct entry *items;
    size_t count;
    if (text_same(entry->text, "none")) {
        *field = (struct hardware_items){.written = entry_text(reader, entry)};
        return;
    }
    if (!list_split(reader, key, entry, false, &items, &count)) {
        return;
    }
    struct hardware_item *const list = pool_take(reader->pool, count, sizeof *list);
    for (size_t i = 0; list != NULL && i < count; i++) {
        if (!read_item(reader, key, &items[i], &list[i]) || !check_once(reader, key, list, i + 1)) {
            return;
        }
    }
    if (list != NULL) {
        *field = (struct hardware_items){
            .written = entry_text(reader, entry), .list = list, .count = count};
    }
}
