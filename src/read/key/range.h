/* SPDX-License-Identifier: MIT */
/* The range that may stand behind a number, `4.10 per bf (3.80 to 4.60)`, and the numbers of the
 * rates kept with theirs. */
#ifndef DOORCOST_READ_KEY_RANGE_H
#define DOORCOST_READ_KEY_RANGE_H

#include "read/key/price_date.h"

/* Takes ` (LOW to HIGH)` off the end of text, a copy of the entry's; low and high then point into
 * it, else are NULL. false: reported. */
bool range_take(struct reader *reader, const struct entry *entry, char *text, char **low,
                char **high);

/* Says that a range cannot be read. */
void range_unread(struct reader *reader, const struct entry *entry);

/* Says that a range does not hold its value. */
void range_report(struct reader *reader, const struct key *key, const struct entry *entry);

/* Asks about a range that nothing is made of. */
void range_ask(struct reader *reader, const struct key *key, const struct entry *entry);

/* A number as it was read of an entry. */
struct number_written {
    struct value value;
    struct range ends;      /* set where it has a range */
    const char *text;       /* without the range, which range_take took off */
    const char *low, *high; /* what range_take gave */
    struct price_date date;
    const char *unit; /* what follows a bare end, and any other number */
    uint8_t most_decimals;
    int32_t least, most; /* that the key takes, in its unit; most RATE_NO_LIMIT: any */
};

/* Keeps a number with its place in the value of its key and the comment of its line
 * (model/rate_number.h), one of the rates with its range and its day too. Whether these have an
 * effect: false where it is none of the rates, or the entry is fixed. */
bool number_keep(struct reader *reader, const struct key *key, const struct entry *entry,
                 const struct number_written *written);

#endif
