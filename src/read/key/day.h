/* SPDX-License-Identifier: MIT */
/* Days of the calendar in keys and cells. */
#ifndef DOORCOST_READ_KEY_DAY_H
#define DOORCOST_READ_KEY_DAY_H

#include "base/date.h"
#include "read/key/key.h"

/* Year, month and day of an entry, written 2026-03-02. false: it is no day, reported. */
bool date_value(struct reader *reader, const struct entry *entry, struct date *date);

#endif
