/* SPDX-License-Identifier: MIT */
/* The words in which tables of keys are written. A row of struct key is
 *
 *     {"contingency", AS_PERCENT(0, 100), FIELD(shop, contingency), "3 %",
 *      .help = "of direct cost, for what goes wrong"},
 *
 * its name, how its value is read, the field, one or two examples, and what it means. */
#ifndef DOORCOST_READ_KEY_ROWS_H
#define DOORCOST_READ_KEY_ROWS_H

#include "base/array.h"
#include "model/limits.h"
#include "read/key/grammar.h"

/* The field of a struct; a field and the one beside it, as in struct key_field. */
#define FIELD(of, field)                                                                           \
    { offsetof(struct of, field), 0 }
#define FIELDS(of, field, at_side)                                                                 \
    { offsetof(struct of, field), offsetof(struct of, at_side) }

/* Where sections go: the field of the file's struct for a section without a name; for those with
 * names the pointer to their array, its count, and the struct of one. */
#define SECTION(of, field)                                                                         \
    { .at = offsetof(struct of, field) }
#define SECTIONS(of, field, count, one)                                                            \
    { offsetof(struct of, field), offsetof(struct of, count), sizeof(struct one), true }

/* A range of lengths: both ends in nm, or in whole inches. */
#define RANGE(low_nm, high_nm)      (&(const struct length_range){(low_nm), (high_nm)})
#define INCHES(low_inch, high_inch) RANGE((low_inch)*NM_PER_INCH, (high_inch)*NM_PER_INCH)

/* A table of one form. */
#define FORM(suffix, unit, low, high)                                                              \
    ((const struct unit_form[]){{suffix, unit, 0, low, high}, {0}})

/* How a value is read; the field's type stands in read/key/grammar.h. */
#define AS(reader)                                                                                 \
    { .read = (reader) }
#define AS_OWN(reader, ...)                                                                        \
    { .read = (reader), __VA_ARGS__ }
#define AS_TEXT AS(read_text)
#define AS_PATH AS(read_path)
#define AS_UNIT                                                                                    \
    { .read = read_unit, .choices = choices_unit }
#define AS_YES_NO                                                                                  \
    { .read = read_flag, .choices = choices_yes_no }
#define AS_FLAG(spellings)                                                                         \
    { .read = read_flag, .choices = (spellings) }
#define AS_CHOICE(spellings)                                                                       \
    { .read = read_choice, .choices = (spellings) }
#define AS_CHOICES(spellings)                                                                      \
    { .read = read_choices, .choices = (spellings) }
#define AS_QUANTITY(allowed)                                                                       \
    { .read = read_quantity, .forms = (allowed) }
#define AS_MONEY              AS_QUANTITY(forms_money)
#define AS_PERCENT(low, high) AS_QUANTITY(FORM("%", UNIT_PERCENT, low, high))
#define AS_COUNT(low, high, absent)                                                                \
    { .read = read_quantity, .forms = FORM("", UNIT_COUNT, low, high), .preset = (absent) }
#define AS_LENGTH(within)                                                                          \
    { .read = read_length, .range = (within) }
#define AS_LENGTHS(within)                                                                         \
    { .read = read_lengths, .range = (within) }
#define AS_VOLUME_PER(what)                                                                        \
    { .read = read_volume, .per = (what) }
#define AS_NAME(section)                                                                           \
    { .read = read_name, .names = (section) }
#define AS_NAME_OR_NONE(section)                                                                   \
    { .read = read_name_none, .names = (section) }
#define AS_NAMES(section)                                                                          \
    { .read = read_names, .names = (section) }
#define AS_INDEX(section)                                                                          \
    { .read = read_index, .names = (section) }
#define AS_MATERIAL(kinds)                                                                         \
    { .read = read_material, .material_kinds = (kinds) }

/* Forms and choices that tables of more than one file need. */
extern const struct unit_form forms_money[], forms_percent[];
extern const struct spelling choices_yes_no[], choices_unit[];

#endif
