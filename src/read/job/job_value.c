/* SPDX-License-Identifier: MIT */
#include "read/job/job_value.h"

#include "base/text.h"
#include "read/job/job_keys.h"
#include "read/key/grammar.h"

#include <string.h>

/* The kind of a section without a name. */
static const struct section_kind *section_of(const char *name) {
    for (size_t i = 0; i < job_section_count; i++) {
        if (!job_sections[i]->home.named && text_same(job_sections[i]->name, name)) {
            return job_sections[i];
        }
    }
    return NULL;
}

const struct key *job_key(const char *section, const char *key) {
    const struct section_kind *const kind = section_of(section);
    return kind == NULL ? NULL : key_find(kind->keys, kind->key_count, key);
}

const char *job_section_help(const char *section) {
    const struct section_kind *const kind = section_of(section);
    return kind == NULL ? NULL : kind->help;
}

void job_value_check(const char *section, const struct key *key, const char *text,
                     const struct rates *rates, enum length_unit unit, const char *path,
                     struct problems *problems) {
    struct job job = {.path = path, .unit = unit};
    struct reader reader = {.pool = &problems->pool,
                            .problems = problems,
                            .path = path,
                            .rates = rates,
                            .unit = unit,
                            .money_decimals = rates->shop.money_decimals,
                            .names_known = true};
    const struct entry entry = {.text = text};
    construction_init(&job.construction);
    key->kind.read(&reader, key, &entry, (char *)&job + section_of(section)->home.at);
}

/* The kinds of names that a key takes, as bits 1 << enum name_kind; 0: none. */
static unsigned names_of(const struct key *key) {
    static const enum name_kind materials[] = {[MATERIAL_LUMBER] = NAME_LUMBER,
                                               [MATERIAL_SHEET] = NAME_SHEET,
                                               [MATERIAL_GLASS] = NAME_GLASS};
    const struct value_kind *const kind = &key->kind;
    unsigned names = 0;
    for (int m = MATERIAL_LUMBER; m <= MATERIAL_GLASS; m++) {
        names |= (kind->material_kinds & 1U << m) != 0 ? 1U << materials[m] : 0;
    }
    return kind->read == read_name || kind->read == read_name_none ? 1U << kind->names : names;
}

/* Whether a name is offered for a key: no hinge is what a door is pulled by, told by what is said
 * of it or by its name. */
static bool suits(const struct key *key, const struct rates *rates, int kind, size_t i) {
    if (kind != NAME_HARDWARE || !text_same(key->name, "pull")) {
        return true;
    }
    static const char hinge[] = "hinge";
    const struct hardware *const h = &rates->hardware[i];
    return !h->inset && !h->cup.set && !h->overlay.set &&
           !text_holds_word(h->name.s, hinge, sizeof hinge - 1);
}

const char **job_value_list(const struct key *key, const struct rates *rates, struct pool *pool,
                            size_t *count) {
    const unsigned names = names_of(key);
    size_t room = 1; /* none */
    for (int kind = 0; kind < NAME_KIND_COUNT; kind++) {
        room += (names & 1U << kind) != 0 ? name_count(rates, kind) : 0;
    }
    for (const struct spelling *s = key->kind.choices; s != NULL && s->text != NULL; s++) {
        room++;
    }
    const char **const list = pool_take(pool, room, sizeof *list);
    *count = 0;
    for (int kind = 0; kind < NAME_KIND_COUNT && list != NULL; kind++) {
        const size_t of_kind = (names & 1U << kind) != 0 ? name_count(rates, kind) : 0;
        for (size_t i = 0; i < of_kind; i++) {
            if (suits(key, rates, kind, i)) {
                list[(*count)++] = name_at(rates, kind, i);
            }
        }
    }
    for (const struct spelling *s = key->kind.choices; list != NULL && s != NULL && s->text != NULL;
         s++) {
        if (spelling_is_first(key->kind.choices, s)) {
            list[(*count)++] = s->text;
        }
    }
    if (key->kind.read == read_name_none && *count > 0) {
        list[(*count)++] = "none";
    }
    return list;
}

const char *job_value_choices(const struct key *key, const struct rates *rates, struct pool *pool) {
    size_t count;
    const char *const *const list = job_value_list(key, rates, pool, &count);
    const char *words = NULL;
    for (size_t i = 0; i < count; i++) {
        words = pool_words(pool, "%s%s%s", text_or_empty(words), i == 0 ? "" : ", ", list[i]);
    }
    return words;
}

const struct key *list_key(const char *column) {
    const struct key *const key = key_find(row_keys, row_key_count, column);
    return key != NULL ? key : key_find(construction_keys, CONSTRUCTION_KEY_COUNT, column);
}
