/* SPDX-License-Identifier: MIT */
/* Numbers of cells as texts: a workbook holds a number and a format that says how it is shown. */
#ifndef DOORCOST_READ_SHEET_NUMBER_H
#define DOORCOST_READ_SHEET_NUMBER_H

#include "base/pool.h"

#include <stdbool.h>
#include <stddef.h>

enum number_kind { NUMBER_PLAIN, NUMBER_FRACTION, NUMBER_PERCENT, NUMBER_DATE, NUMBER_TIME };

struct number_form {
    enum number_kind kind;
    const char *suffix; /* what the format puts behind: " mm"; NULL: nothing */
};

/* The form that a format code gives, as ECMA-376 part 1, 18.8.31, has them: `# ??/??`, `0" mm"`.
 * The suffix is in pool. */
struct number_form number_form_of(const char *code, struct pool *pool);

/* The form of a code that is not written out, as 18.8.30 lists them by number. */
struct number_form number_form_built_in(unsigned id);

/* Bytes that hold each number but for its suffix, and each suffix. */
#define NUMBER_TEXT   64
#define NUMBER_SUFFIX 32

/* Writes the number, given as decimal text, into room of NUMBER_TEXT bytes; returns room, or value
 * where it is no number. A date is a count of days (from_1904: from 1904 on, else from 1900), which
 * gives YYYY-MM-DD; a time is a part of a day. A number that does not end within 9 decimals is
 * rounded to so many. */
const char *number_text(char *room, const char *value, struct number_form form, bool from_1904);

/* Puts what is shown behind a number behind its text; room: of NUMBER_TEXT and NUMBER_SUFFIX bytes.
 * For one of NUMBER_SUFFIX bytes or more words stand that no unit has. */
void number_suffix(char *room, const char *suffix);

#endif
