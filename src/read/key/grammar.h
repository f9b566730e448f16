/* SPDX-License-Identifier: MIT */
/* How the text of a key is read into its field: the functions that rows of struct key point to.
 * Each reports what is wrong; the field then stays unset. */
#ifndef DOORCOST_READ_KEY_GRAMMAR_H
#define DOORCOST_READ_KEY_GRAMMAR_H

#include "read/key/key.h"

/* One value; the field's type stands beside each. */
key_read read_text;   /* struct text */
key_read read_path;   /* struct text: a file, resolved against the folder of the file being read */
key_read read_choice; /* struct choice, one of kind.choices */
key_read read_flag;   /* bool, one of kind.choices */
key_read read_unit;   /* enum length_unit: in, mm */
key_read read_quantity; /* struct value, and the struct choice beside it */
key_read read_ranged;   /* struct value, and the struct range beside it */
key_read read_length;   /* struct value, within kind.range */
key_read read_volume;   /* struct value, `per` what kind.per says */
key_read read_quarters; /* struct value: `4/4` or a length; struct text beside it */

/* Lists, their items between commas. */
key_read read_choices; /* unsigned: bits of kind.choices, or the last of these alone: none */
key_read read_lengths; /* struct values, ascending */
key_read read_steps;   /* struct steps: `40 in: 2, 60 in: 3` */
key_read read_breaks;  /* struct steps: `100 bf at 3.75 per bf, ...` */
key_read read_sizes;   /* struct steps: `1 qt at 27.00, 1 gal at 84.00`, by volume */
key_read read_stages;  /* struct named_value *, size_t beside it: `40 % when sprayed, ...` */

key_read read_groups; /* the same, name first: `operation minutes at 0.6, ...` */

/* Names of other sections. */
key_read read_names;     /* struct references, of kind.names */
key_read read_name;      /* struct reference, of kind.names */
key_read read_name_none; /* struct reference, `none` allowed */
key_read read_index;     /* int32_t, struct text beside it (if any) */
key_read read_material;  /* struct material_reference, of the kinds in kind.material_kinds */

/* Looks a name up and reports one that nothing defines; -1: not found. */
int32_t name_resolve(struct reader *reader, const struct key *key, const struct entry *entry);

/* A copy of the entry's text. */
struct text entry_text(struct reader *reader, const struct entry *entry);

/* Whether a list of so many items is within the limit of its key (model/limits.h); else it is
 * reported. */
bool list_fits(struct reader *reader, const struct key *key, const struct entry *entry,
               size_t count);

/* Splits at commas into trimmed, non-empty items, *items in the reader's pool. numbers: a comma
 * right between two digits is reported, as is a list over the limit of its key. false: reported, or
 * memory is out. */
bool list_split(struct reader *reader, const struct key *key, const struct entry *entry,
                bool numbers, struct entry **items, size_t *count);

/* The part [from, to) of an entry, trimmed, with its own place. */
struct entry entry_part(struct reader *reader, const struct entry *entry, const char *from,
                        const char *to);

/* The choice of a key that text names, case, hyphens and units in other spellings ignored; NULL:
 * none. */
const struct spelling *choice_named(const struct key *key, const char *text);
/* Whether no spelling before this one means the same: messages and lists show that alone. */
bool spelling_is_first(const struct spelling *choices, const struct spelling *one);

/* The choice that entry's text names; NULL: reported. */
const struct spelling *choice_find(struct reader *reader, const struct key *key,
                                   const struct entry *entry);

#endif
