/* SPDX-License-Identifier: MIT */
/* `80.00 for samples`, `3 % for rush work`, `for templates by make templates`: a price, what for,
 * and the operation that does it. Without a price it is what the operation costs, marked up. */
#include "read/job/charge.h"

#include "base/text.h"
#include "model/charge.h"
#include "model/name.h"
#include "read/key/grammar.h"
#include "read/key/quantity.h"

#include <string.h>

/* A `mark` in text, a word between blanks; it may also begin the text, without its blank. NULL:
 * there is none. The first of ` for ` counts, as words may have others; the last of ` by `. */
static const char *find_mark(const char *text, const char *mark, bool last) {
    const size_t size = strlen(mark) - 1; /* without the blank before it */
    const char *found = strncmp(text, mark + 1, size) == 0 ? text - 1 : NULL;
    for (const char *at = strstr(text, mark); at != NULL && (last || found == NULL);
         at = strstr(at + 1, mark)) {
        found = at;
    }
    return found;
}

static void report_item(struct reader *reader, const struct key *key, const struct entry *item) {
    problem_add(reader->problems, SEVERITY_ERROR, "bad-item", item->place,
                "%s: '%s' cannot be read; expected one like '%s'", key->name,
                entry_quote(reader, item), key->example);
}

/* Cuts what follows the mark off an entry into *after; false: the mark is there, and nothing is
 * behind it. Without the mark *after is empty. */
static bool cut_off(struct reader *reader, const char *mark, bool last, struct entry *entry,
                    struct entry *after) {
    const char *const at = find_mark(entry->text, mark, last);
    *after = (struct entry){.text = ""};
    if (at == NULL) {
        return true;
    }
    *after = entry_part(reader, entry, at + strlen(mark), entry->text + strlen(entry->text));
    *entry = at < entry->text ? (struct entry){.text = "", .place = entry->place}
                              : entry_part(reader, entry, entry->text, at);
    return after->text[0] != '\0';
}

static bool read_one(struct reader *reader, const struct key *key, const struct entry *item,
                     bool named, struct charge *charge) {
    struct entry price = *item;
    struct entry operation;
    struct entry name = {.text = ""};
    *charge = (struct charge){.operation.index = -1, .given = true};
    if (!cut_off(reader, " by ", true, &price, &operation) ||
        (named && (!cut_off(reader, " for ", false, &price, &name) || name.text[0] == '\0')) ||
        (price.text[0] == '\0' && operation.text[0] == '\0')) {
        report_item(reader, key, item);
        return false;
    }
    if (named) {
        charge->name = entry_text(reader, &name);
    }
    if (operation.text[0] != '\0') {
        charge->operation.name = entry_text(reader, &operation);
        charge->operation.index = name_resolve(reader, key, &operation);
    }
    return price.text[0] == '\0' ||
           quantity_value(reader, key, &price, key->kind.forms, &charge->value, NULL);
}

void read_charges(struct reader *reader, const struct key *key, const struct entry *entry,
                  void *target) {
    struct charge **const field = key_field(key, target);
    size_t *const field_count = (size_t *)(void *)((char *)target + key->field.beside);
    struct entry *items;
    size_t count;
    if (!list_split(reader, key, entry, true, &items, &count)) {
        return;
    }
    struct charge *const charges = pool_take(reader->pool, count, sizeof *charges);
    for (size_t i = 0; charges != NULL && i < count; i++) {
        if (!read_one(reader, key, &items[i], true, &charges[i])) {
            return;
        }
    }
    if (charges != NULL) {
        *field = charges;
        *field_count = count;
    }
}

void read_delivery(struct reader *reader, const struct key *key, const struct entry *entry,
                   void *target) {
    struct charge charge;
    if (read_one(reader, key, entry, false, &charge)) {
        *(struct charge *)key_field(key, target) = charge;
    }
}

/* --- paid twice --- */

/* What names an operation beside the charge; NULL: nothing. */
static const char *named_by(const struct rates *rates, const struct job *job, int32_t operation,
                            size_t charge) {
    if (references_hold(&rates->shop.operations, operation)) {
        return "the shop";
    }
    if (references_hold(&job->also, operation)) {
        return "'also' of the job";
    }
    for (size_t i = 0; i < rates->style_count; i++) {
        if (references_hold(&rates->styles[i].operations, operation)) {
            return "a style";
        }
    }
    for (size_t i = 0; i < rates->finish_count; i++) {
        if (references_hold(&rates->finishes[i].operations, operation)) {
            return "a finish";
        }
    }
    for (size_t i = 0; i < job->row_count; i++) {
        if (references_hold(&job->rows[i].also, operation)) {
            return "'also' of a row";
        }
    }
    return charge_of_operation(job, operation) == (int32_t)charge ? NULL : "another charge";
}

void charges_check(struct reader *reader, const struct job *job) {
    for (size_t i = 0; i < charge_count(job); i++) {
        const struct charge *const charge = charge_at(job, i);
        if (charge->operation.index < 0) {
            continue;
        }
        const char *const by = named_by(reader->rates, job, charge->operation.index, i);
        if (by != NULL) {
            problem_add(reader->problems, SEVERITY_ERROR, "paid-twice",
                        charge->operation.name.place,
                        "operation '%s' is paid by this charge, and %s names it too, so that the "
                        "client would pay for it twice; name it in one place",
                        problem_quote(reader->problems, charge->operation.name.s), by);
        }
    }
}
