/* SPDX-License-Identifier: MIT */
#include "read/key/day.h"

bool date_value(struct reader *reader, const struct entry *entry, struct date *date) {
    if (!date_read(entry->text, date)) {
        problem_add(reader->problems, SEVERITY_ERROR, "bad-date", entry->place,
                    "date '%s' is no day of the calendar; expected year, month and day like "
                    "'2026-03-02'",
                    problem_quote(reader->problems, entry->text));
        return false;
    }
    return true;
}
