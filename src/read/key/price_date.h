/* SPDX-License-Identifier: MIT */
/* What stands behind a price on when it was learned, and by how much it rises a year from then on:
 * `4.10 per bf (on 2026-01-10)`, `4.10 per bf (on 2026-01-10, 4 % a year)`. */
#ifndef DOORCOST_READ_KEY_PRICE_DATE_H
#define DOORCOST_READ_KEY_PRICE_DATE_H

#include "read/key/key.h"

struct price_date {
    struct value on, yearly; /* as in struct rate_number; on unset: nothing is said */
    const char *rise;        /* likewise */
};

/* Takes it off the end of text, a copy of the entry's. false: reported. */
bool price_date_take(struct reader *reader, const struct entry *entry, char *text,
                     struct price_date *date);

/* Says of a date that stands where none has an effect. */
void price_date_report(struct reader *reader, const struct key *key, const struct entry *entry);

#endif
