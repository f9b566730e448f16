/* SPDX-License-Identifier: MIT */
#include "read/key/grammar.h"

#include "base/array.h"
#include "base/text.h"
#include "read/file/source.h"
#include "read/key/heading.h"
#include "read/key/quantity.h"
#include "read/key/unit_suffix.h"

#include <string.h>

struct text entry_text(struct reader *reader, const struct entry *entry) {
    return (struct text){.s = pool_text(reader->pool, entry->text, strlen(entry->text)),
                         .place = entry->place};
}

struct entry entry_part(struct reader *reader, const struct entry *entry, const char *from,
                        const char *to) {
    struct entry part = {.place = entry->place};

    const char *const behind = text_skip_blanks(from);

    from = behind < to ? behind : to;
    to = text_trim_end(from, to);
    part.text = pool_text(&reader->problems->pool, from, (size_t)(to - from));
    part.text = part.text == NULL ? "" : part.text;
    part.place.column = (uint16_t)(entry->place.column + (from - entry->text));
    part.place.width = (uint16_t)(to - from);
    return part;
}

void read_text(struct reader *reader, const struct key *key, const struct entry *entry,
               void *target) {
    *(struct text *)key_field(key, target) = entry_text(reader, entry);
    if (entry->cut) {
        problem_add(reader->problems, SEVERITY_WARNING, "text-cut", entry->place,
                    "%s ends at the ';', where a comment starts; put the text in double quotes to "
                    "keep all of it, or a blank before the comment",
                    key->name);
    }
}

void read_path(struct reader *reader, const struct key *key, const struct entry *entry,
               void *target) {
    struct text *field = key_field(key, target);

    field->s = source_beside(reader->pool, reader->path, entry->text);
    field->place = entry->place;
}

bool spelling_is_first(const struct spelling *choices, const struct spelling *one) {
    for (const struct spelling *s = choices; s < one; s++) {
        if (s->choice == one->choice) {
            return false;
        }
    }
    return true;
}

/* `'door', 'drawer front' or 'false front'`: of what is spelled in several ways the first. */
static const char *choices_text(struct reader *reader, const struct key *key) {
    const struct spelling *last = NULL;
    const char *all = "";

    for (const struct spelling *s = key->kind.choices; s->text != NULL; s++) {
        last = spelling_is_first(key->kind.choices, s) ? s : last;
    }
    for (const struct spelling *s = key->kind.choices; s->text != NULL && all != NULL; s++) {
        const char *between = all[0] == '\0' ? "" : (s == last ? " or " : ", ");

        if (spelling_is_first(key->kind.choices, s)) {
            all = pool_format(&reader->problems->pool, "%s%s'%s'", all, between, s->text);
        }
    }
    return all == NULL ? "" : all;
}

const struct spelling *choice_named(const struct key *key, const char *text) {
    char suffix[UNIT_SUFFIX_SIZE];
    char known[UNIT_SUFFIX_SIZE];

    for (const struct spelling *spelling = key->kind.choices; spelling->text != NULL; spelling++) {
        if (text_same_word(spelling->text, text)) {
            return spelling;
        }
    }
    const bool plain = unit_suffix_plain(text, suffix);
    for (const struct spelling *spelling = key->kind.choices; plain && spelling->text != NULL;
         spelling++) {
        if (unit_suffix_plain(spelling->text, known) && strcmp(suffix, known) == 0) {
            return spelling;
        }
    }
    return NULL;
}

/* `write it under 'use'`, where another column takes what stands under this one; else "". */
static const char *elsewhere_words(struct reader *reader, const struct key *key,
                                   const struct entry *entry) {
    const struct key *const other = heading_elsewhere(reader, key, entry->text);

    return other == NULL ? ""
                         : pool_words(&reader->problems->pool, "write it under '%s'", other->name);
}

const struct spelling *choice_find(struct reader *reader, const struct key *key,
                                   const struct entry *entry) {
    const struct spelling *const found = choice_named(key, entry->text);
    const char *names[32] = {0};
    size_t count = 0;
    size_t choices = 0;

    if (found != NULL) {
        return found;
    }
    for (const struct spelling *s = key->kind.choices; s->text != NULL && count < COUNT_OF(names);
         s++) {
        names[count++] = s->text;
        choices += spelling_is_first(key->kind.choices, s) ? 1 : 0;
    }
    const char *const nearest = text_nearest(entry->text, names, count);
    const char *const elsewhere = elsewhere_words(reader, key, entry);
    if (elsewhere[0] != '\0') {
        problem_add(reader->problems, SEVERITY_ERROR, "unknown-word", entry->place,
                    "%s '%s' is not known; %s", key->name, entry_quote(reader, entry), elsewhere);
    } else if (nearest != NULL && choices > 6) {
        problem_add(reader->problems, SEVERITY_ERROR, "unknown-word", entry->place,
                    "%s '%s' is not known; did you mean '%s'?", key->name,
                    entry_quote(reader, entry), nearest);
    } else {
        problem_add(reader->problems, SEVERITY_ERROR, "unknown-word", entry->place,
                    "%s '%s' is not known; expected %s", key->name, entry_quote(reader, entry),
                    choices_text(reader, key));
    }
    return NULL;
}

void read_choice(struct reader *reader, const struct key *key, const struct entry *entry,
                 void *target) {
    const struct spelling *spelling = choice_find(reader, key, entry);
    struct choice *field = key_field(key, target);

    field->place = entry->place;
    if (spelling != NULL) {
        field->choice = spelling->choice;
        field->set = true;
    }
}

void read_flag(struct reader *reader, const struct key *key, const struct entry *entry,
               void *target) {
    const struct spelling *spelling = choice_find(reader, key, entry);

    if (spelling != NULL) {
        *(bool *)key_field(key, target) = spelling->choice != 0;
    }
}

void read_unit(struct reader *reader, const struct key *key, const struct entry *entry,
               void *target) {
    const struct spelling *spelling = choice_find(reader, key, entry);

    if (spelling != NULL) {
        *(enum length_unit *)key_field(key, target) =
            spelling->choice == LENGTH_MM ? LENGTH_MM : LENGTH_INCH;
    }
}

static void *beside(const struct key *key, void *target) {
    return (char *)target + key->field.beside;
}

void read_ranged(struct reader *reader, const struct key *key, const struct entry *entry,
                 void *target) {
    (void)quantity_ranged(reader, key, entry, key->kind.forms, key_field(key, target), NULL,
                          beside(key, target));
}

void read_quantity(struct reader *reader, const struct key *key, const struct entry *entry,
                   void *target) {
    struct value *field = key_field(key, target);
    int choice = 0;

    if (quantity_value(reader, key, entry, key->kind.forms, field, &choice) &&
        key->field.beside != 0) {
        *(struct choice *)beside(key, target) =
            (struct choice){.place = entry->place, .choice = choice, .set = true};
    }
    if (!field->set) {
        field->place = entry->place; /* so that nobody says more of it */
    }
}

void read_length(struct reader *reader, const struct key *key, const struct entry *entry,
                 void *target) {
    (void)length_value(reader, key, entry, key->kind.range, key_field(key, target));
}

void read_volume(struct reader *reader, const struct key *key, const struct entry *entry,
                 void *target) {
    (void)volume_value(reader, key, entry, key->kind.per, key_field(key, target));
}

/* `5/4` is 1 1/4 in however it is meant in the file: quarters are a trade measure. */
void read_quarters(struct reader *reader, const struct key *key, const struct entry *entry,
                   void *target) {
    struct value *field = key_field(key, target);
    struct text *written = beside(key, target);
    size_t digits = strspn(entry->text, "0123456789");
    int64_t quarters = 0;
    uint8_t decimals = 0;

    *written = entry_text(reader, entry);
    if (digits > 0 && digits < 3 && strcmp(entry->text + digits, "/4") == 0 &&
        text_decimal(entry->text, digits, &quarters, &decimals)) {
        if (quarters < 3 || quarters > 24) {
            problem_add(reader->problems, SEVERITY_ERROR, "out-of-range", entry->place,
                        "%s '%s' is out of range; expected 3/4 to 24/4", key->name,
                        entry_quote(reader, entry));
            return;
        }
        *field = (struct value){.amount = quarters * (NM_PER_INCH / 4),
                                .place = entry->place,
                                .unit = UNIT_NM,
                                .set = true};
        return;
    }
    (void)length_value(reader, key, entry, key->kind.range, field);
}

/* A name that the rates lack; kinds: bits of what it may be. */
static void report_unknown(struct reader *reader, const struct key *key, const struct entry *entry,
                           const char *id, unsigned kinds) {
    struct pool *const pool = &reader->problems->pool;
    const char *const nearest = name_nearest(reader->rates, kinds, entry->text, pool);
    const char *const elsewhere = elsewhere_words(reader, key, entry);

    if (elsewhere[0] != '\0') {
        problem_add(reader->problems, SEVERITY_ERROR, id, entry->place,
                    "%s '%s' is not in the rates; %s", key->name, entry_quote(reader, entry),
                    elsewhere);
    } else if (nearest != NULL) {
        problem_add(reader->problems, SEVERITY_ERROR, id, entry->place,
                    "%s '%s' is not in the rates; did you mean '%s'?", key->name,
                    entry_quote(reader, entry), nearest);
    } else {
        problem_add(reader->problems, SEVERITY_ERROR, id, entry->place,
                    "%s '%s' is not in the rates; %s", key->name, entry_quote(reader, entry),
                    name_list(reader->rates, kinds, pool));
    }
}

/* The name as the rates have it, where it is written with other blanks and hyphens. */
static struct text told_text(struct reader *reader, const struct entry *entry, enum name_kind kind,
                             int32_t index) {
    const char *const known = index < 0 ? entry->text : name_at(reader->rates, kind, (size_t)index);
    struct entry told = *entry;

    told.text = text_same(known, entry->text) ? entry->text : known;
    return entry_text(reader, &told);
}

int32_t name_resolve(struct reader *reader, const struct key *key, const struct entry *entry) {
    int32_t index = name_find(reader->rates, key->kind.names, entry->text);

    if (index < 0 && reader->names_known) {
        report_unknown(reader, key, entry, "unknown-name", 1U << (unsigned)key->kind.names);
    }
    return index;
}

void read_name(struct reader *reader, const struct key *key, const struct entry *entry,
               void *target) {
    struct reference *field = key_field(key, target);

    field->index = name_resolve(reader, key, entry);
    field->name = told_text(reader, entry, key->kind.names, field->index);
}

void read_name_none(struct reader *reader, const struct key *key, const struct entry *entry,
                    void *target) {
    struct reference *field = key_field(key, target);

    if (text_same(entry->text, "none")) {
        *field = (struct reference){
            .name = {.s = pool_text(reader->pool, "none", 4), .place = entry->place}, .index = -1};
    } else {
        read_name(reader, key, entry, target);
    }
}

void read_index(struct reader *reader, const struct key *key, const struct entry *entry,
                void *target) {
    const int32_t index = name_resolve(reader, key, entry);

    *(int32_t *)key_field(key, target) = index;
    if (key->field.beside != 0) {
        *(struct text *)beside(key, target) = told_text(reader, entry, key->kind.names, index);
    }
}

static const struct {
    enum material_kind material_kind;
    enum name_kind kind;
    const char *words;
} material_kinds[] = {
    {MATERIAL_LUMBER, NAME_LUMBER, "lumber"},
    {MATERIAL_SHEET, NAME_SHEET, "a sheet"},
    {MATERIAL_GLASS, NAME_GLASS, "glass"},
};

static const char *allowed_text(struct reader *reader, unsigned allowed) {
    const char *all = "";

    for (size_t i = 0; i < COUNT_OF(material_kinds) && all != NULL; i++) {
        if ((allowed >> material_kinds[i].material_kind & 1U) != 0) {
            all = pool_format(&reader->problems->pool, "%s%s%s", all, *all == '\0' ? "" : " or ",
                              material_kinds[i].words);
        }
    }
    return all == NULL ? "" : all;
}

/* Kinds of names that a material of that key may have, as bits. */
static unsigned material_names(const struct key *key) {
    unsigned kinds = 0;

    for (size_t i = 0; i < COUNT_OF(material_kinds); i++) {
        kinds |= (key->kind.material_kinds >> material_kinds[i].material_kind & 1U)
                 << (unsigned)material_kinds[i].kind;
    }
    return kinds;
}

/* Fills the field with what its entry names: number `index` of material_kinds[kind]. */
static void take_material(struct reader *reader, const struct entry *entry, size_t kind,
                          int32_t index, struct material_reference *field) {
    field->kind = material_kinds[kind].material_kind;
    field->index = index;
    field->name = told_text(reader, entry, material_kinds[kind].kind, index);
}

/* The material that alone has the words, where none has the name. */
static void read_by_words(struct reader *reader, const struct key *key, const struct entry *entry,
                          struct material_reference *field) {
    const unsigned kinds = material_names(key);
    enum name_kind kind = NAME_LUMBER;
    int32_t index = -1;
    const char *all = "";
    const size_t found = name_by_words(reader->rates, kinds, entry->text, &kind, &index, &all,
                                       &reader->problems->pool);

    for (size_t i = 0; found == 1 && i < COUNT_OF(material_kinds); i++) {
        if (material_kinds[i].kind == kind) {
            take_material(reader, entry, i, index, field);
        }
    }
    if (found > 1 && reader->names_known) {
        problem_add(reader->problems, SEVERITY_ERROR, "several-materials", entry->place,
                    "%s '%s' may be %s; write which", key->name, entry_quote(reader, entry), all);
    } else if (found == 0 && reader->names_known) {
        report_unknown(reader, key, entry, "unknown-material", kinds);
    }
}

void read_material(struct reader *reader, const struct key *key, const struct entry *entry,
                   void *target) {
    struct material_reference *field = key_field(key, target);

    *field = (struct material_reference){.name = entry_text(reader, entry), .index = -1};
    for (size_t i = 0; i < COUNT_OF(material_kinds); i++) {
        int32_t index = name_find(reader->rates, material_kinds[i].kind, entry->text);

        if (index < 0) {
            continue;
        }
        if ((key->kind.material_kinds >> material_kinds[i].material_kind & 1U) == 0) {
            problem_add(reader->problems, SEVERITY_ERROR, "wrong-material", entry->place,
                        "%s '%s' is %s; expected %s", key->name, entry_quote(reader, entry),
                        material_kinds[i].words, allowed_text(reader, key->kind.material_kinds));
            return;
        }
        take_material(reader, entry, i, index, field);
        return;
    }
    read_by_words(reader, key, entry, field);
}
