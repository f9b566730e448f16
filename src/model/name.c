/* SPDX-License-Identifier: MIT */
#include "model/name.h"

#include "base/text.h"

#include <string.h>
#include <strings.h>

/* Every named struct of the rates begins with its name. */
static const struct name_row {
    const char *section;
    size_t at, count_at, size;
    size_t words; /* where a material has those that the client reads; 0: they are not gone by */
} rows[NAME_KIND_COUNT] = {
    [NAME_LUMBER] = {"lumber", offsetof(struct rates, lumber), offsetof(struct rates, lumber_count),
                     sizeof(struct lumber), offsetof(struct lumber, client_name)},
    [NAME_SHEET] = {"sheet", offsetof(struct rates, sheets), offsetof(struct rates, sheet_count),
                    sizeof(struct sheet), offsetof(struct sheet, client_name)},
    [NAME_GLASS] = {"glass", offsetof(struct rates, glass), offsetof(struct rates, glass_count),
                    sizeof(struct glass), offsetof(struct glass, client_name)},
    [NAME_BANDING] = {"banding", offsetof(struct rates, bandings),
                      offsetof(struct rates, banding_count), sizeof(struct banding)},
    [NAME_STYLE] = {"door", offsetof(struct rates, styles), offsetof(struct rates, style_count),
                    sizeof(struct style)},
    [NAME_OPERATION] = {"operation", offsetof(struct rates, operations),
                        offsetof(struct rates, operation_count), sizeof(struct operation)},
    [NAME_MACHINE] = {"machine", offsetof(struct rates, machines),
                      offsetof(struct rates, machine_count), sizeof(struct machine)},
    [NAME_ADDITIVE] = {"additive", offsetof(struct rates, additives),
                       offsetof(struct rates, additive_count), sizeof(struct additive)},
    [NAME_COATING] = {"coating", offsetof(struct rates, coatings),
                      offsetof(struct rates, coating_count), sizeof(struct coating)},
    [NAME_SPRAY] = {"spray", offsetof(struct rates, sprays), offsetof(struct rates, spray_count),
                    sizeof(struct spray)},
    [NAME_FINISH] = {"finish", offsetof(struct rates, finishes),
                     offsetof(struct rates, finish_count), sizeof(struct finish)},
    [NAME_HARDWARE] = {"hardware", offsetof(struct rates, hardware),
                       offsetof(struct rates, hardware_count), sizeof(struct hardware)},
    [NAME_CONSUMABLE] = {"consumable", offsetof(struct rates, consumables),
                         offsetof(struct rates, consumable_count), sizeof(struct consumable)},
    [NAME_WOOD] = {"wood", offsetof(struct rates, woods), offsetof(struct rates, wood_count),
                   sizeof(struct wood)},
};

const char *name_section(enum name_kind kind) {
    return rows[kind].section;
}

size_t name_count(const struct rates *rates, enum name_kind kind) {
    return *(const size_t *)(const void *)((const char *)rates + rows[kind].count_at);
}

/* A text of a named struct, `at` bytes behind its begin. */
static const char *text_at(const struct rates *rates, enum name_kind kind, size_t index,
                           size_t at) {
    const char *array = *(const char *const *)(const void *)((const char *)rates + rows[kind].at);

    return ((const struct text *)(const void *)(array + index * rows[kind].size + at))->s;
}

const char *name_at(const struct rates *rates, enum name_kind kind, size_t index) {
    return text_at(rates, kind, index, 0);
}

int32_t name_find(const struct rates *rates, enum name_kind kind, const char *name) {
    const size_t count = name_count(rates, kind);
    int32_t alike = -1;
    size_t found = 0;

    for (size_t i = 0; i < count; i++) {
        const char *const one = name_at(rates, kind, i);

        if (text_same(one, name)) {
            return (int32_t)i;
        }
        if (text_same_word(one, name)) {
            alike = (int32_t)i;
            found++;
        }
    }
    return found == 1 ? alike : -1;
}

const char *name_nearest(const struct rates *rates, unsigned kinds, const char *name,
                         struct pool *pool) {
    const char **names;
    size_t count = 0;

    for (unsigned kind = 0; kind < NAME_KIND_COUNT; kind++) {
        count += (kinds >> kind & 1U) != 0 ? name_count(rates, (enum name_kind)kind) : 0;
    }
    names = pool_take(pool, count, sizeof(*names));
    if (names == NULL) {
        return NULL;
    }
    count = 0;
    for (unsigned kind = 0; kind < NAME_KIND_COUNT; kind++) {
        size_t of_kind = (kinds >> kind & 1U) != 0 ? name_count(rates, (enum name_kind)kind) : 0;

        for (size_t i = 0; i < of_kind; i++) {
            names[count++] = name_at(rates, (enum name_kind)kind, i);
        }
    }
    const char *nearest = text_nearest(name, names, count);

    for (size_t i = 0; i < count && nearest == NULL; i++) {
        nearest = text_holds_word(name, names[i], strlen(names[i])) ? names[i] : NULL;
    }
    return nearest;
}

/* --- by words --- */

#define BETWEEN_WORDS " \t-_,"

/* The next word of *text, which goes on behind it; *size: 0 where there is none. */
static const char *next_word(const char **text, size_t *size) {
    const char *const word = *text + strspn(*text, BETWEEN_WORDS);

    *size = strcspn(word, BETWEEN_WORDS);
    *text = word + *size;
    return word;
}

static bool has_word(const char *text, const char *word, size_t size) {
    size_t own = 0;

    for (const char *one = next_word(&text, &own); own > 0; one = next_word(&text, &own)) {
        if (own == size && strncasecmp(one, word, size) == 0) {
            return true;
        }
    }
    return false;
}

/* Whether each word of text, of which there is one or more, is one of name or words. */
static bool all_words(const char *text, const char *name, const char *words) {
    size_t size = 0;
    bool any = false;

    for (const char *word = next_word(&text, &size); size > 0; word = next_word(&text, &size)) {
        if (!has_word(name, word, size) && !has_word(words, word, size)) {
            return false;
        }
        any = true;
    }
    return any;
}

size_t name_by_words(const struct rates *rates, unsigned kinds, const char *text,
                     enum name_kind *kind, int32_t *index, const char **all, struct pool *pool) {
    size_t found = 0;

    *all = "";
    for (unsigned k = 0; k < NAME_KIND_COUNT; k++) {
        const size_t count =
            (kinds >> k & 1U) == 0 || rows[k].words == 0 ? 0 : name_count(rates, (enum name_kind)k);
        for (size_t i = 0; i < count; i++) {
            const char *const name = name_at(rates, (enum name_kind)k, i);
            const char *const words = text_at(rates, (enum name_kind)k, i, rows[k].words);

            if (all_words(text, name, text_or_empty(words))) {
                *kind = (enum name_kind)k;
                *index = (int32_t)i;
                *all = pool_words(pool, "%s%s'%s'", *all, found == 0 ? "" : " or ", name);
                found++;
            }
        }
    }
    return found;
}

/* Names of a kind that a message lists. */
#define MOST_LISTED ((size_t)6)

const char *name_list(const struct rates *rates, unsigned kinds, struct pool *pool) {
    const char *list = "";

    for (unsigned kind = 0; kind < NAME_KIND_COUNT; kind++) {
        const size_t count = name_count(rates, (enum name_kind)kind);

        if ((kinds >> kind & 1U) == 0) {
            continue;
        }
        list = pool_words(pool, "%s%stheir [%s NAME] are %s", list, list[0] == '\0' ? "" : ", ",
                          rows[kind].section, count == 0 ? "none" : "");
        for (size_t i = 0; i < count && i < MOST_LISTED; i++) {
            list = pool_words(pool, "%s%s'%s'", list, i == 0 ? "" : ", ",
                              name_at(rates, (enum name_kind)kind, i));
        }
        if (count > MOST_LISTED) {
            list = pool_words(pool, "%s and %zu more", list, count - MOST_LISTED);
        }
    }
    return list;
}

const char *material_name(const struct rates *rates, enum material_kind material_kind,
                          int32_t material) {
    if (material < 0) {
        return "";
    }
    switch (material_kind) {
    case MATERIAL_LUMBER:
        return rates->lumber[material].name.s;
    case MATERIAL_SHEET:
        return rates->sheets[material].name.s;
    case MATERIAL_GLASS:
        return rates->glass[material].name.s;
    case MATERIAL_NONE:
        break;
    }
    return "";
}

bool references_hold(const struct references *list, int32_t index) {
    for (size_t i = 0; i < list->count; i++) {
        if (list->r[i].index == index) {
            return true;
        }
    }
    return false;
}
