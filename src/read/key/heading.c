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
    {.written = "no", .column = "id"},
    {.written = "nr", .column = "id"},
    {.written = "#", .column = "id"},
    {.written = "number", .column = "id"},
    {.written = "name", .column = "id"},
    {.written = "mark", .column = "id"},
    {.written = "tag", .column = "id"},
    {.written = "door no", .column = "id"},
    {.written = "door nr", .column = "id"},
    {.written = "door #", .column = "id"},
    {.written = "door number", .column = "id"},
    {.written = "door id", .column = "id"},
    {.written = "item", .column = "id", .by_cells = "use"},
    {.written = "item no", .column = "id"},
    {.written = "item #", .column = "id"},
    {.written = "item number", .column = "id"},
    {.written = "location", .column = "room", .second = "note"},
    {.written = "place", .column = "room", .second = "note"},
    {.written = "where", .column = "room", .second = "note"},
    {.written = "cabinet", .column = "room", .second = "note"},
    {.written = "qty", .column = "count"},
    {.written = "quantity", .column = "count"},
    {.written = "pcs", .column = "count"},
    {.written = "pieces", .column = "count"},
    {.written = "how many", .column = "count"},
    {.written = "number of doors", .column = "count"},
    {.written = "no of doors", .column = "count"},
    {.written = "# of doors", .column = "count"},
    {.written = "w", .column = "width"},
    {.written = "wide", .column = "width"},
    {.written = "opening width", .column = "width", .measure = "opening"},
    {.written = "width of opening", .column = "width", .measure = "opening"},
    {.written = "opening w", .column = "width", .measure = "opening"},
    {.written = "door width", .column = "width", .measure = "door"},
    {.written = "width of door", .column = "width", .measure = "door"},
    {.written = "finished width", .column = "width", .measure = "door"},
    {.written = "door w", .column = "width", .measure = "door"},
    {.written = "h", .column = "height"},
    {.written = "ht", .column = "height"},
    {.written = "high", .column = "height"},
    {.written = "opening height", .column = "height", .measure = "opening"},
    {.written = "height of opening", .column = "height", .measure = "opening"},
    {.written = "opening h", .column = "height", .measure = "opening"},
    {.written = "door height", .column = "height", .measure = "door"},
    {.written = "height of door", .column = "height", .measure = "door"},
    {.written = "finished height", .column = "height", .measure = "door"},
    {.written = "door h", .column = "height", .measure = "door"},
    {.written = "hinged", .column = "hinge side"},
    {.written = "hinging", .column = "hinge side"},
    {.written = "hand", .column = "hinge side"},
    {.written = "handing", .column = "hinge side"},
    {.written = "l/r", .column = "hinge side"},
    {.written = "hinge l/r", .column = "hinge side"},
    {.written = "hinge left/right", .column = "hinge side"},
    {.written = "mid rail", .column = "mid rails"},
    {.written = "mid stile", .column = "mid stiles"},
    {.written = "door style", .column = "style"},
    {.written = "paint color", .column = "color"},
    {.written = "finish color", .column = "color"},
    {.written = "upcharge", .column = "extra charge"},
    {.written = "surcharge", .column = "extra charge"},
    {.written = "notes", .column = "note"},
    {.written = "remarks", .column = "remark"},
    {.written = "comment", .column = "remark"},
    {.written = "comments", .column = "remark"},
    {.written = "shop note", .column = "remark"},
    {.written = "shop notes", .column = "remark"},
    {.written = "size", .advice = SIZES},
    {.written = "sizes", .advice = SIZES},
    {.written = "dimensions", .advice = SIZES},
    {.written = "w x h", .advice = SIZES},
    {.written = "width x height", .advice = SIZES},
    {.written = "size w x h", .advice = SIZES},
    {.written = "opening", .advice = SIZES},
    {.written = "opening size", .advice = SIZES},
    {.written = "door size", .advice = SIZES},
    {.written = "l", .advice = SIZES},
    {.written = "length", .advice = SIZES},
    {.written = "door",
     .advice =
         "write 'id' over the name of the row, 'use' over door and drawer front, 'count' over how "
         "many"},
    {.written = "style", .column = "style", .by_cells = "use"},
    {.written = "type", .advice = USES, .by_cells = "use"},
    {.written = "kind", .advice = USES, .by_cells = "use"},
    {.written = "hinge", .column = "hinge", .by_cells = "hinge side"},
    {.written = "hinges", .column = "hinges", .by_cells = "hinge side"},
    {.written = "description",
     .advice = "write 'note' over what the client reads, 'remark' over what the shop alone reads"},
    {.written = "swing",
     .advice = "write 'hinge side', and left or right for where the hinges are"},
    {.written = "wood", .advice = WOODS},
    {.written = "species", .advice = WOODS},
    {.written = "material", .advice = WOODS},
    {.written = "handle", .advice = PULLS},
    {.written = "handles", .advice = PULLS},
    {.written = "knobs", .advice = PULLS},
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
