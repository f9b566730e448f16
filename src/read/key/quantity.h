/* SPDX-License-Identifier: MIT */
/* Numbers with their units, as keys and cells give them: `4.10 per bf (3.80 to 4.60)`, `12 %
 * added`, `2 1/4 in`, `6 fl oz`.
 *
 * Each reads entry for key, reports what is wrong to the reader's problems, and returns whether
 * value was set. */
#ifndef DOORCOST_READ_KEY_QUANTITY_H
#define DOORCOST_READ_KEY_QUANTITY_H

#include "read/key/key.h"

/* A number whose suffix is one of forms. *choice: what the form means, as struct unit_form has it;
 * may be NULL. */
bool quantity_value(struct reader *reader, const struct key *key, const struct entry *entry,
                    const struct unit_form *forms, struct value *value, int *choice);
/* The same with the range that may follow, `60 % (55 to 65)`; range: not set where none does, may
 * be NULL. Its ends are values that the forms allow, too. */
bool quantity_ranged(struct reader *reader, const struct key *key, const struct entry *entry,
                     const struct unit_form *forms, struct value *value, int *choice,
                     struct range *range);

/* A length within range (NULL: any). */
bool length_value(struct reader *reader, const struct key *key, const struct entry *entry,
                  const struct length_range *range, struct value *value);

/* An amount of liquid, in US gallons where the file is in inches, else in litres, with as many
 * decimals as it needs, at most 6 (rounded half away from zero), above 0 unless the key's kind says
 * nought. per: what must follow (`mix`), or NULL. */
bool volume_value(struct reader *reader, const struct key *key, const struct entry *entry,
                  const char *per, struct value *value);

/* Says that a comma stands in a number, and how it is written. */
void comma_report(struct reader *reader, const struct key *key, const struct entry *entry);

/* The number of a value without needless zeros, `0.5`; its unit is left out. In the problems' pool;
 * "" when memory is out. */
const char *quantity_text(struct reader *reader, const struct value *value);

/* 1 US gallon is 231 cubic inches, 3.785411784 L exactly: 473176473 / 125000000. */
#define LITRES_PER_GALLON_OVER  ((int64_t)473176473)
#define LITRES_PER_GALLON_UNDER ((int64_t)125000000)

#endif
