/* SPDX-License-Identifier: MIT */
/* The tables that describe the input files. A row says what a key (or a column of a list) is
 * called, how its text is read, where the result goes and what is expected, so that the same row
 * reads, checks the unit, words the message and is compared with the docs. */
#ifndef DOORCOST_READ_KEY_KEY_H
#define DOORCOST_READ_KEY_KEY_H

#include "model/name.h"
#include "model/rates.h"
#include "read/file/ini.h"

struct column_set;

/* What readers work with. */
struct reader {
    struct pool *pool; /* what is read lives here */
    struct problems *problems;
    const char *path;          /* of the file being read: names of files are resolved against it */
    const struct rates *rates; /* where names are looked up */
    enum length_unit unit;     /* of bare lengths */
    uint8_t money_decimals;    /* most that an amount of money has */
    struct rate_numbers *numbers; /* where numbers are kept; NULL: nowhere */
    bool ranged; /* of the rates: a range and a day behind a number have an effect */
    const struct ini_key *written;     /* the key that is being read; NULL: no key is */
    const struct ini_section *section; /* of that key */
    bool names_known;                  /* false: the rates could not be read, names go unchecked */
    const struct column_set *columns;  /* of the list that is being read; NULL: none is */
    size_t column_sets;
    bool lacks_known; /* false: something before the rows could not be read; what a row
                         lacks may stand there, and is not asked for */
};

/* A text to be read: the value of a key, a cell, an item of a list. */
struct entry {
    const char *text; /* trimmed, not empty */
    struct place place;
    bool cut;   /* as in struct ini_key */
    bool fixed; /* a limit, or an end of what is usual: no rate, and takes no range */
};

/* One way to write a number with what follows it. Tables end with one whose suffix is NULL. */
struct unit_form {
    const char
        *suffix; /* in the plain spelling of read/key/unit_suffix.h: `per hour`, `% of cost` */
    enum unit unit;
    int choice;        /* what the suffix means, for the choice beside the value */
    int32_t low, high; /* in whole units, both allowed */
};
#define NO_LIMIT RATE_NO_LIMIT /* of high */

/* How one choice of a set is spelled. Tables end with one whose text is NULL. */
struct spelling {
    const char *text;
    int choice;
};

/* Between which lengths a length must lie, both allowed. */
struct length_range {
    length low, high; /* nm */
};

struct key;
typedef void key_read(struct reader *reader, const struct key *key, const struct entry *entry,
                      void *target);

/* How a value is read and what it may be; of the fields, those that its reader needs. */
struct value_kind {
    key_read *read;
    const struct unit_form *forms;
    const struct unit_form *limit_forms; /* of the limit in `limit: value`, `limit at value` */
    const struct spelling *choices;
    const struct length_range *range;
    const char *per;         /* of a volume: what must follow, `mix`; NULL: nothing may */
    bool nought;             /* of a volume: 0 is one too */
    enum name_kind names;    /* where a name is looked up */
    unsigned material_kinds; /* which materials may be named: bits 1 << enum material_kind */
    int preset;              /* of a count that is absent */
    size_t most;             /* items of a list: model/limits.h; 0: what a line holds */
};

/* Where a value goes: offsets in the struct that a section or a row fills. */
struct key_field {
    size_t at;
    size_t beside; /* of what its reader fills as well: the choice that a suffix decides, a count,
                      the text as written; 0: nothing */
};

/* Rows are written with the words of read/key/rows.h. */
struct key {
    const char *name;
    struct value_kind kind;
    struct key_field field;
    const char *example, *other; /* how it is written; other may be NULL */
    bool needed;
    const char *help; /* one line on what it means */
};

/* Where sections of a kind go: offsets in the file's struct. */
struct section_home {
    size_t at;       /* of the struct; if named: of the pointer to the array */
    size_t count_at; /* if named: of the array's count */
    size_t size;     /* if named: of one; its first field is its struct text name */
    bool named;      /* any number of it, each with a name; else at most one */
};

/* A kind of section: `[shop]`, `[lumber NAME]`. */
struct section_kind {
    const char *name;
    const struct key *keys;
    size_t key_count;
    struct section_home home;
    size_t keys_at;              /* offset of the struct that the keys fill, within that one */
    const struct key *more_keys; /* beside those, where a table serves more than one kind */
    size_t more_key_count;
    bool needed; /* the file must have one */
    /* What must hold between keys; after all keys of the section were read; NULL: nothing. */
    void (*check)(struct reader *reader, const struct ini_section *section, void *target);
    const char *help;
};

/* Reads all sections of ini into the file's struct: kinds unknown, named or not, given or needed;
 * then every key by its row. */
void sections_read(struct reader *reader, const struct ini *ini,
                   const struct section_kind *const *kinds, size_t count, void *whole);

/* Fills in which section and key each value of the file is given by. All lives in the reader's
 * pool, whose failure tells of want of memory. */
void settings_make(struct reader *reader, const struct ini *ini, struct settings *settings);

/* The section of a kind without a name; NULL: the file has none. */
const struct ini_section *section_find(const struct ini *ini, const char *kind);

/* The text of a key of that section, for what has to be known before the section is read; "" where
 * it is absent. */
const char *text_before(const struct ini *ini, const char *kind, const char *key);

/* The `unit` of that section, read before all else because bare lengths depend on it; inches where
 * it is absent or wrong. */
enum length_unit unit_before(const struct ini *ini, const char *kind);

/* Whether a key of that name stands in the section, be it right or wrong. */
bool section_has(const struct ini_section *section, const char *key);

/* Says that section needs a key, and why. because: "for kind = panel". */
void section_lacks(struct reader *reader, const struct ini_section *section, const char *key,
                   const char *because);

/* The row of that name, NULL: none. */
const struct key *key_find(const struct key *keys, size_t count, const char *name);

/* What is expected of a key: `'14.00 per hour' or '18 % of cost'`. In the problems' pool. */
const char *key_expected(struct reader *reader, const struct key *key);

/* The field of target that a row describes. */
void *key_field(const struct key *key, void *target);

/* Fills in what a row says of an absent key. */
void key_preset(const struct key *key, struct place place, void *target);

/* The text of an entry as messages show it: problem_quote. */
const char *entry_quote(struct reader *reader, const struct entry *entry);

#endif
