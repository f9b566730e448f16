/* SPDX-License-Identifier: MIT */
#include "read/key/key.h"

#include "base/manual.h"
#include "base/text.h"
#include "read/key/grammar.h"

#include <string.h>

const char *entry_quote(struct reader *reader, const struct entry *entry) {
    return problem_quote(reader->problems, entry->text);
}

void *key_field(const struct key *key, void *target) {
    return (char *)target + key->field.at;
}

const struct key *key_find(const struct key *keys, size_t count, const char *name) {
    for (size_t i = 0; i < count; i++) {
        if (text_same(keys[i].name, name)) {
            return &keys[i];
        }
    }
    return NULL;
}

const char *key_expected(struct reader *reader, const struct key *key) {
    const char *text =
        key->other == NULL
            ? pool_format(&reader->problems->pool, "'%s'", key->example)
            : pool_format(&reader->problems->pool, "'%s' or '%s'", key->example, key->other);

    return text == NULL ? "" : text;
}

void key_preset(const struct key *key, struct place place, void *target) {
    if (key->kind.read == read_quantity && key->kind.forms[0].unit == UNIT_COUNT) {
        struct value *value = key_field(key, target);

        *value = (struct value){.amount = key->kind.preset, .unit = UNIT_COUNT, .place = place};
    } else if (key->kind.read == read_name || key->kind.read == read_name_none) {
        ((struct reference *)key_field(key, target))->index = -1;
    } else if (key->kind.read == read_material) {
        ((struct material_reference *)key_field(key, target))->index = -1;
    } else if (key->kind.read == read_index) {
        *(int32_t *)key_field(key, target) = -1;
    }
}

const struct ini_section *section_find(const struct ini *ini, const char *kind) {
    for (size_t i = 0; i < ini->count; i++) {
        if (text_same(ini->sections[i].kind, kind)) {
            return &ini->sections[i];
        }
    }
    return NULL;
}

const char *text_before(const struct ini *ini, const char *kind, const char *key) {
    const struct ini_section *section = section_find(ini, kind);
    const struct ini_key *written = section == NULL ? NULL : ini_key_find(section, key);

    return written == NULL ? "" : text_or_empty(written->value);
}

enum length_unit unit_before(const struct ini *ini, const char *kind) {
    return text_same(text_before(ini, kind, "unit"), "mm") ? LENGTH_MM : LENGTH_INCH;
}

bool section_has(const struct ini_section *section, const char *key) {
    return ini_key_find(section, key) != NULL;
}

/* `[lumber poplar]` */
static const char *section_title(struct reader *reader, const struct ini_section *section) {
    const char *title = pool_format(
        &reader->problems->pool, "[%s%s%s]", problem_quote(reader->problems, section->kind),
        section->name[0] ? " " : "", problem_quote(reader->problems, section->name));

    return title == NULL ? "" : title;
}

void section_lacks(struct reader *reader, const struct ini_section *section, const char *key,
                   const char *because) {
    if (!section_has(section, key)) {
        problem_add(reader->problems, SEVERITY_ERROR, "missing-key", section->place,
                    "%s lacks the key '%s'; it is needed %s", section_title(reader, section), key,
                    because);
    }
}

static bool is_known(const struct section_kind *kind, const char *name) {
    return key_find(kind->keys, kind->key_count, name) != NULL ||
           key_find(kind->more_keys, kind->more_key_count, name) != NULL;
}

/* All kinds of sections of a file. */
struct kinds {
    const struct section_kind *const *list;
    size_t count;
};

/* The kind of section that has a key of that name; NULL: none has. */
static const struct section_kind *home_of(struct kinds kinds, const char *name) {
    for (size_t i = 0; i < kinds.count; i++) {
        if (is_known(kinds.list[i], name)) {
            return kinds.list[i];
        }
    }
    return NULL;
}

/* What tells of the file with these sections. */
static const char *manual_of(struct reader *reader, struct kinds kinds) {
    const bool rates = text_same(kinds.list[0]->name, "shop");
    return manual_name(&reader->problems->pool, rates ? "rates" : "job");
}

static void report_unknown_key(struct reader *reader, struct kinds kinds,
                               const struct section_kind *kind, const struct ini_section *section,
                               const struct ini_key *key) {
    const struct section_kind *const home = home_of(kinds, key->name);
    const size_t count = kind->key_count + kind->more_key_count;
    const char **names = pool_take(&reader->problems->pool, count, sizeof(*names));
    const char *nearest;

    if (names == NULL) {
        return;
    }
    for (size_t i = 0; i < count; i++) {
        names[i] =
            i < kind->key_count ? kind->keys[i].name : kind->more_keys[i - kind->key_count].name;
    }
    nearest = text_nearest(key->name, names, count);
    if (nearest != NULL) {
        problem_add(reader->problems, SEVERITY_ERROR, "unknown-key", key->place,
                    "%s knows no key '%s'; did you mean '%s'?", section_title(reader, section),
                    problem_quote(reader->problems, key->name), nearest);
    } else if (home != NULL) {
        problem_add(reader->problems, SEVERITY_ERROR, "unknown-key", key->place,
                    "%s knows no key '%s', which is one of [%s%s]; put it there",
                    section_title(reader, section), problem_quote(reader->problems, key->name),
                    home->name, home->home.named ? " NAME" : "");
    } else {
        problem_add(reader->problems, SEVERITY_ERROR, "unknown-key", key->place,
                    "%s knows no key '%s'; see its keys in %s", section_title(reader, section),
                    problem_quote(reader->problems, key->name), manual_of(reader, kinds));
    }
}

/* Whether a key of the section is no key, but nearly this one: then that is said alone. */
static bool is_misspelled(const struct section_kind *kind, const struct ini_section *section,
                          const char *name) {
    for (size_t i = 0; i < section->count; i++) {
        const char *const written = section->keys[i].name;

        if (!is_known(kind, written) && text_nearest(written, &name, 1) != NULL) {
            return true;
        }
    }
    return false;
}

/* The rows go in the order of the table, so that `overlay` comes before `overlay left`. */
static void read_table(struct reader *reader, const struct section_kind *kind,
                       const struct key *keys, size_t count, const struct ini_section *section,
                       void *target) {
    for (size_t i = 0; i < count; i++) {
        const struct key *key = &keys[i];
        const struct ini_key *written = ini_key_find(section, key->name);

        key_preset(key, section->place, target);
        if (written == NULL) {
            if (key->needed && !is_misspelled(kind, section, key->name)) {
                problem_add(reader->problems, SEVERITY_ERROR, "missing-key", section->place,
                            "%s lacks the key '%s'; expected one like '%s = %s'",
                            section_title(reader, section), key->name, key->name, key->example);
            }
        } else if (written->value != NULL) {
            reader->section = section;
            reader->written = written;
            key->kind.read(reader, key,
                           &(struct entry){.text = written->value,
                                           .place = written->value_place,
                                           .cut = written->cut},
                           target);
            reader->written = NULL;
        }
    }
}

static void read_keys(struct reader *reader, struct kinds kinds, const struct section_kind *kind,
                      const struct ini_section *section, void *target) {
    read_table(reader, kind, kind->keys, kind->key_count, section, target);
    read_table(reader, kind, kind->more_keys, kind->more_key_count, section, target);
    for (size_t i = 0; i < section->count; i++) {
        const char *name = section->keys[i].name;

        if (!is_known(kind, name)) {
            report_unknown_key(reader, kinds, kind, section, &section->keys[i]);
        }
    }
}

static const struct section_kind *find_kind(const struct section_kind *const *kinds, size_t count,
                                            const char *name) {
    for (size_t i = 0; i < count; i++) {
        if (text_same(kinds[i]->name, name)) {
            return kinds[i];
        }
    }
    return NULL;
}

static void report_unknown_section(struct reader *reader, const struct section_kind *const *kinds,
                                   size_t count, const struct ini_section *section) {
    const char **names = pool_take(&reader->problems->pool, count, sizeof(*names));
    const char *nearest;

    if (names == NULL) {
        return;
    }
    for (size_t i = 0; i < count; i++) {
        names[i] = kinds[i]->name;
    }
    nearest = text_nearest(section->kind, names, count);
    if (nearest != NULL) {
        problem_add(reader->problems, SEVERITY_ERROR, "unknown-section", section->place,
                    "%s is no known section; did you mean '%s'?", section_title(reader, section),
                    nearest);
    } else {
        problem_add(reader->problems, SEVERITY_ERROR, "unknown-section", section->place,
                    "%s is no known section; see the sections in %s",
                    section_title(reader, section),
                    manual_of(reader, (struct kinds){kinds, count}));
    }
}

/* Whether the section may be read as that kind. */
static bool check_head(struct reader *reader, const struct section_kind *kind,
                       const struct ini_section *section) {
    if (kind->home.named && section->name[0] == '\0') {
        problem_add(reader->problems, SEVERITY_ERROR, "section-without-name", section->place,
                    "[%s] has no name; expected one like '[%s NAME]'", kind->name, kind->name);
        return false;
    }
    if (!kind->home.named && section->name[0] != '\0') {
        problem_add(reader->problems, SEVERITY_ERROR, "section-with-name", section->place,
                    "%s has a name; expected only '[%s]'", section_title(reader, section),
                    kind->name);
        return false;
    }
    return true;
}

static size_t *count_of(const struct section_kind *kind, void *whole) {
    return (size_t *)(void *)((char *)whole + kind->home.count_at);
}

/* The array is a pointer to a struct of the kind's own, which is not to be accessed as a pointer to
 * void: its bytes are copied. */
static void set_array(const struct section_kind *kind, void *whole, char *array) {
    memcpy((char *)whole + kind->home.at, &array, sizeof array);
}

static char *array_of(const struct section_kind *kind, const void *whole) {
    char *array;

    memcpy(&array, (const char *)whole + kind->home.at, sizeof array);
    return array;
}

/* Room for the sections of a named kind, their names filled in, so that keys may name sections that
 * stand further down. */
static void collect_names(struct reader *reader, const struct ini *ini,
                          const struct section_kind *kind, void *whole) {
    size_t count = 0;
    char *array;

    for (size_t i = 0; i < ini->count; i++) {
        count += text_same(ini->sections[i].kind, kind->name) ? 1 : 0;
    }
    array = pool_take(reader->pool, count, kind->home.size);
    if (array == NULL) {
        return;
    }
    set_array(kind, whole, array);
    count = 0;
    for (size_t i = 0; i < ini->count; i++) {
        const struct ini_section *section = &ini->sections[i];
        struct text *name = (struct text *)(void *)(array + count * kind->home.size);

        if (text_same(section->kind, kind->name) && section->name[0] != '\0') {
            name->s = pool_text(reader->pool, section->name, strlen(section->name));
            name->place = section->place;
            count += name->s != NULL ? 1 : 0;
        }
    }
    *count_of(kind, whole) = count;
}

/* The struct that a section fills; NULL: memory ran out while names were collected. */
static void *target_of(const struct section_kind *kind, const struct ini_section *section,
                       void *whole) {
    if (!kind->home.named) {
        return (char *)whole + kind->home.at;
    }
    for (size_t i = 0; i < *count_of(kind, whole); i++) {
        char *target = array_of(kind, whole) + i * kind->home.size;

        if (text_same(((struct text *)(void *)target)->s, section->name)) {
            return target;
        }
    }
    return NULL;
}

static void read_section(struct reader *reader, struct kinds kinds, const struct section_kind *kind,
                         const struct ini_section *section, void *whole) {
    void *target = target_of(kind, section, whole);

    if (target == NULL) {
        return;
    }
    read_keys(reader, kinds, kind, section, (char *)target + kind->keys_at);
    if (kind->check != NULL) {
        kind->check(reader, section, target);
    }
}

void settings_make(struct reader *reader, const struct ini *ini, struct settings *settings) {
    const char *const file_name = problems_file_name(reader->problems, ini->file);
    size_t count = 0;

    for (size_t i = 0; i < ini->count; i++) {
        count += ini->sections[i].count;
    }
    *settings = (struct settings){
        .file_name = pool_text(reader->pool, file_name, strlen(file_name)),
        .file = ini->file,
        .list = pool_take(reader->pool, count, sizeof(*settings->list)),
    };
    for (size_t i = 0; i < ini->count && !pool_failed(reader->pool); i++) {
        const struct ini_section *section = &ini->sections[i];
        const char *const kind = pool_text(reader->pool, section->kind, strlen(section->kind));
        const char *const title = pool_words(reader->pool, "%s%s%s", section->kind,
                                             section->name[0] == '\0' ? "" : " ", section->name);
        const char *const head = pool_format(reader->pool, "[%s]", title);

        for (size_t k = 0; head != NULL && k < section->count; k++) {
            const struct ini_key *key = &section->keys[k];

            settings->list[settings->count++] = (struct setting){
                .kind = kind,
                .title = title,
                .section = head,
                .key = pool_text(reader->pool, key->name, strlen(key->name)),
                .line = key->value_place.line,
            };
        }
    }
}

void sections_read(struct reader *reader, const struct ini *ini,
                   const struct section_kind *const *kinds, size_t count, void *whole) {
    for (size_t i = 0; i < count; i++) {
        if (kinds[i]->home.named) {
            collect_names(reader, ini, kinds[i], whole);
        }
    }
    for (size_t i = 0; i < ini->count && !pool_failed(reader->pool); i++) {
        const struct ini_section *section = &ini->sections[i];
        const struct section_kind *kind = find_kind(kinds, count, section->kind);

        if (kind == NULL) {
            report_unknown_section(reader, kinds, count, section);
        } else if (check_head(reader, kind, section)) {
            read_section(reader, (struct kinds){kinds, count}, kind, section, whole);
        }
    }
    for (size_t i = 0; i < count; i++) {
        if (kinds[i]->needed && !ini->stray && section_find(ini, kinds[i]->name) == NULL) {
            problem_add(reader->problems, SEVERITY_ERROR, "missing-section",
                        (struct place){.file = ini->file, .line = 1},
                        "the file lacks the section '[%s%s]'; it is needed", kinds[i]->name,
                        kinds[i]->home.named ? " NAME" : "");
        }
    }
}
