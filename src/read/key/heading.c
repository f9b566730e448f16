/* SPDX-License-Identifier: MIT */
#include "read/key/heading.h"

#include "base/array.h"
#include "base/text.h"
#include "read/key/grammar.h"

#include <string.h>

#define SIZES                                                                                      \
    "write 'width' and 'height', a column each; whether sizes are of openings or of doors says "   \
    "'measure'"
#define USES                                                                                       \
    "write 'use' over door and drawer front, 'style' over how it is made, 'opens' over how it "    \
    "opens"
#define WOODS                                                                                      \
    "write 'frame' over the lumber of stiles and rails, 'panel' over what fills them, 'slab' "     \
    "over that of slabs"
#define PULLS "write 'pull' over which one, 'pulls' over how many"

static const struct heading_word words[] = {
    {"no", "id", NULL, NULL, NULL, NULL},
    {"nr", "id", NULL, NULL, NULL, NULL},
    {"#", "id", NULL, NULL, NULL, NULL},
    {"number", "id", NULL, NULL, NULL, NULL},
    {"name", "id", NULL, NULL, NULL, NULL},
    {"mark", "id", NULL, NULL, NULL, NULL},
    {"tag", "id", NULL, NULL, NULL, NULL},
    {"door no", "id", NULL, NULL, NULL, NULL},
    {"door nr", "id", NULL, NULL, NULL, NULL},
    {"door #", "id", NULL, NULL, NULL, NULL},
    {"door number", "id", NULL, NULL, NULL, NULL},
    {"door id", "id", NULL, NULL, NULL, NULL},
    {"item", "id", NULL, NULL, "use", NULL},
    {"item no", "id", NULL, NULL, NULL, NULL},
    {"item #", "id", NULL, NULL, NULL, NULL},
    {"item number", "id", NULL, NULL, NULL, NULL},
    {"location", "room", NULL, NULL, NULL, "note"},
    {"place", "room", NULL, NULL, NULL, "note"},
    {"where", "room", NULL, NULL, NULL, "note"},
    {"cabinet", "room", NULL, NULL, NULL, "note"},
    {"qty", "count", NULL, NULL, NULL, NULL},
    {"quantity", "count", NULL, NULL, NULL, NULL},
    {"pcs", "count", NULL, NULL, NULL, NULL},
    {"pieces", "count", NULL, NULL, NULL, NULL},
    {"how many", "count", NULL, NULL, NULL, NULL},
    {"number of doors", "count", NULL, NULL, NULL, NULL},
    {"no of doors", "count", NULL, NULL, NULL, NULL},
    {"# of doors", "count", NULL, NULL, NULL, NULL},
    {"w", "width", NULL, NULL, NULL, NULL},
    {"wide", "width", NULL, NULL, NULL, NULL},
    {"opening width", "width", "opening", NULL, NULL, NULL},
    {"width of opening", "width", "opening", NULL, NULL, NULL},
    {"opening w", "width", "opening", NULL, NULL, NULL},
    {"door width", "width", "door", NULL, NULL, NULL},
    {"width of door", "width", "door", NULL, NULL, NULL},
    {"finished width", "width", "door", NULL, NULL, NULL},
    {"door w", "width", "door", NULL, NULL, NULL},
    {"h", "height", NULL, NULL, NULL, NULL},
    {"ht", "height", NULL, NULL, NULL, NULL},
    {"high", "height", NULL, NULL, NULL, NULL},
    {"opening height", "height", "opening", NULL, NULL, NULL},
    {"height of opening", "height", "opening", NULL, NULL, NULL},
    {"opening h", "height", "opening", NULL, NULL, NULL},
    {"door height", "height", "door", NULL, NULL, NULL},
    {"height of door", "height", "door", NULL, NULL, NULL},
    {"finished height", "height", "door", NULL, NULL, NULL},
    {"door h", "height", "door", NULL, NULL, NULL},
    {"hinged", "hinge side", NULL, NULL, NULL, NULL},
    {"hinging", "hinge side", NULL, NULL, NULL, NULL},
    {"hand", "hinge side", NULL, NULL, NULL, NULL},
    {"handing", "hinge side", NULL, NULL, NULL, NULL},
    {"l/r", "hinge side", NULL, NULL, NULL, NULL},
    {"hinge l/r", "hinge side", NULL, NULL, NULL, NULL},
    {"hinge left/right", "hinge side", NULL, NULL, NULL, NULL},
    {"mid rail", "mid rails", NULL, NULL, NULL, NULL},
    {"mid stile", "mid stiles", NULL, NULL, NULL, NULL},
    {"door style", "style", NULL, NULL, NULL, NULL},
    {"paint color", "color", NULL, NULL, NULL, NULL},
    {"finish color", "color", NULL, NULL, NULL, NULL},
    {"upcharge", "extra charge", NULL, NULL, NULL, NULL},
    {"surcharge", "extra charge", NULL, NULL, NULL, NULL},
    {"notes", "note", NULL, NULL, NULL, NULL},
    {"remarks", "remark", NULL, NULL, NULL, NULL},
    {"comment", "remark", NULL, NULL, NULL, NULL},
    {"comments", "remark", NULL, NULL, NULL, NULL},
    {"shop note", "remark", NULL, NULL, NULL, NULL},
    {"shop notes", "remark", NULL, NULL, NULL, NULL},
    {"size", NULL, NULL, SIZES, NULL, NULL},
    {"sizes", NULL, NULL, SIZES, NULL, NULL},
    {"dimensions", NULL, NULL, SIZES, NULL, NULL},
    {"w x h", NULL, NULL, SIZES, NULL, NULL},
    {"width x height", NULL, NULL, SIZES, NULL, NULL},
    {"size w x h", NULL, NULL, SIZES, NULL, NULL},
    {"opening", NULL, NULL, SIZES, NULL, NULL},
    {"opening size", NULL, NULL, SIZES, NULL, NULL},
    {"door size", NULL, NULL, SIZES, NULL, NULL},
    {"l", NULL, NULL, SIZES, NULL, NULL},
    {"length", NULL, NULL, SIZES, NULL, NULL},
    {"door", NULL, NULL,
     "write 'id' over the name of the row, 'use' over door and drawer front, 'count' over how "
     "many",
     NULL, NULL},
    {"style", "style", NULL, NULL, "use", NULL},
    {"type", NULL, NULL, USES, "use", NULL},
    {"kind", NULL, NULL, USES, "use", NULL},
    {"hinge", "hinge", NULL, NULL, "hinge side", NULL},
    {"hinges", "hinges", NULL, NULL, "hinge side", NULL},
    {"description", NULL, NULL,
     "write 'note' over what the client reads, 'remark' over what the shop alone reads", NULL,
     NULL},
    {"swing", NULL, NULL, "write 'hinge side', and left or right for where the hinges are", NULL,
     NULL},
    {"wood", NULL, NULL, WOODS, NULL, NULL},
    {"species", NULL, NULL, WOODS, NULL, NULL},
    {"material", NULL, NULL, WOODS, NULL, NULL},
    {"handle", NULL, NULL, PULLS, NULL, NULL},
    {"handles", NULL, NULL, PULLS, NULL, NULL},
    {"knobs", NULL, NULL, PULLS, NULL, NULL},
};

const struct heading_word *heading_words(size_t *count) {
    *count = COUNT_OF(words);
    return words;
}

/* --- plain spelling --- */

#define PLAIN_SIZE ((size_t)64)

/* Signs that are written as letters: the inch marks that a length may have, and the cross of sizes.
 */
static const struct {
    const char *sign, *plain;
} signs[] = {{"\"", " in "},
             {"''", " in "},
             {"\xE2\x80\xB3", " in "},             /* double prime */
             {"\xE2\x80\x9D", " in "},             /* closing double quote */
             {"\xE2\x80\xB2\xE2\x80\xB2", " in "}, /* two primes */
             {"\xC3\x97", "x"}};                   /* multiplication sign */

/* Puts a letter, small; a blank only behind another letter. false: there is no room. */
static bool put(char plain[PLAIN_SIZE], size_t *size, char letter) {
    if (letter == ' ' && (*size == 0 || plain[*size - 1] == ' ')) {
        return true;
    }
    if (*size + 1 == PLAIN_SIZE) {
        return false;
    }
    plain[(*size)++] = (char)(letter >= 'A' && letter <= 'Z' ? letter - 'A' + 'a' : letter);
    return true;
}

/* Puts a sign that text begins with. *bytes: how long it is; 0: text begins with none. false: there
 * is no room. */
static bool put_sign(char plain[PLAIN_SIZE], size_t *size, const char *text, size_t *bytes) {
    *bytes = 0;
    for (size_t i = 0; i < COUNT_OF(signs) && *bytes == 0; i++) {
        const bool same = strncmp(text, signs[i].sign, strlen(signs[i].sign)) == 0;

        for (const char *c = signs[i].plain; same && *c != '\0'; c++) {
            if (!put(plain, size, *c)) {
                return false;
            }
        }
        *bytes = same ? strlen(signs[i].sign) : 0;
    }
    return true;
}

/* Writes text plainly, an inch mark as `in`. false: it is longer than any heading that means
 * something. */
static bool make_plain(const char *text, char plain[PLAIN_SIZE]) {
    size_t size = 0;
    size_t sign;
    bool fits = true;

    for (const char *c = text; *c != '\0' && fits; c += sign == 0 ? 1 : sign) {
        fits = put_sign(plain, &size, c, &sign);
        if (fits && sign == 0) {
            const bool blank = strchr(" \t\n\r._-:,;*()[]", *c) != NULL;

            fits = put(plain, &size, (char)(blank ? ' ' : *c));
        }
    }
    size -= size > 0 && plain[size - 1] == ' ' ? 1 : 0;
    plain[size] = '\0';
    return fits && size > 0;
}

/* --- meaning --- */

static bool find_key(struct heading *heading, const char *plain, const struct column_set *sets,
                     size_t count) {
    for (size_t i = 0; i < count; i++) {
        for (size_t k = 0; k < sets[i].count; k++) {
            if (text_same_word(sets[i].keys[k].name, plain)) {
                heading->key = &sets[i].keys[k];
                heading->at = sets[i].at;
                return true;
            }
        }
    }
    return false;
}

/* Whether a list has the columns that an advice names: then it is one of doors. */
static bool is_of_doors(const struct column_set *sets, size_t count) {
    return find_key(&(struct heading){0}, "measure", sets, count);
}

static bool find_word(struct heading *heading, const char *plain, const struct column_set *sets,
                      size_t count) {
    for (size_t i = 0; i < COUNT_OF(words); i++) {
        const struct heading_word *const word = &words[i];

        if (strcmp(word->written, plain) == 0 &&
            ((word->measure == NULL && word->advice == NULL && word->by_cells == NULL) ||
             is_of_doors(sets, count))) {
            heading->measure = word->measure;
            heading->advice = word->advice;
            heading->by_cells = word->by_cells;
            heading->second = word->second;
            return word->column != NULL && find_key(heading, word->column, sets, count);
        }
    }
    return false;
}

/* A unit behind what is meant. */
struct heading_unit {
    const char *written;
    bool known; /* of bare lengths */
    enum length_unit unit;
};

/* Takes a unit from the end of plain; NULL: there is none. */
static const struct heading_unit *take_unit(char *plain) {
    static const struct heading_unit units[] = {
        {"in", true, LENGTH_INCH}, {"inch", true, LENGTH_INCH},      {"inches", true, LENGTH_INCH},
        {"mm", true, LENGTH_MM},   {"millimeters", true, LENGTH_MM}, {"cm", false, LENGTH_MM},
        {"ft", false, LENGTH_INCH}};
    char *const blank = strrchr(plain, ' ');

    for (size_t i = 0; blank != NULL && i < COUNT_OF(units); i++) {
        if (strcmp(blank + 1, units[i].written) == 0) {
            char *const end =
                blank - plain > 3 && strncmp(blank - 3, " in", 3) == 0 ? blank - 3 : blank;
            *end = '\0'; /* `height in mm` */
            return &units[i];
        }
    }
    return NULL;
}

struct heading heading_read(const char *text, const struct column_set *sets, size_t count) {
    struct heading heading = {0};
    char plain[PLAIN_SIZE];

    if (!make_plain(text, plain) || find_word(&heading, plain, sets, count) ||
        find_key(&heading, plain, sets, count) || heading.advice != NULL) {
        return heading;
    }
    const struct heading_unit *const unit = take_unit(plain);
    if (unit == NULL ||
        !(find_key(&heading, plain, sets, count) || find_word(&heading, plain, sets, count))) {
        return heading; /* nothing, or advice */
    }
    if (heading.key->kind.range == NULL) {
        return (struct heading){0};
    }
    heading.has_unit = unit->known;
    heading.unit = unit->unit;
    if (!unit->known) {
        heading.advice = "write sizes in inches or millimeters, or each with its unit and the "
                         "heading without one";
    }
    return heading;
}

/* Whether a column takes the text, as a word of its own or a name of its kind in the rates. */
static bool takes(const struct key *key, const struct rates *rates, const char *text) {
    const struct value_kind *const kind = &key->kind;

    if (kind->read == read_choice) {
        return choice_named(key, text) != NULL;
    }
    if (kind->read == read_name || kind->read == read_name_none) {
        return name_find(rates, kind->names, text) >= 0;
    }
    return false;
}

const struct key *heading_elsewhere(const struct reader *reader, const struct key *key,
                                    const char *text) {
    const struct key *found = NULL;

    for (size_t i = 0; i < reader->column_sets; i++) {
        for (size_t k = 0; k < reader->columns[i].count; k++) {
            const struct key *const other = &reader->columns[i].keys[k];

            if (other != key && takes(other, reader->rates, text)) {
                if (found != NULL) {
                    return NULL; /* `knob` may be a pull or a hinge */
                }
                found = other;
            }
        }
    }
    return found;
}

const char *heading_measure(const char *text) {
    static const struct {
        const char *written, *measure;
    } groups[] = {
        {"opening", "opening"},       {"openings", "opening"},  {"opening size", "opening"},
        {"opening sizes", "opening"}, {"door", "door"},         {"door size", "door"},
        {"door sizes", "door"},       {"finished size", "door"}};
    char plain[PLAIN_SIZE];

    for (size_t i = 0; make_plain(text, plain) && i < COUNT_OF(groups); i++) {
        if (strcmp(groups[i].written, plain) == 0) {
            return groups[i].measure;
        }
    }
    return NULL;
}
