/* SPDX-License-Identifier: MIT */
/* Lengths: whole nanometers, so that 1/64 in (396 875 nm) and 0.01 mm are both exact.
 *
 * A length is a plain integer under its own name: lengths add and subtract as they are.
 * Nothing here allocates. */
#ifndef DOORCOST_BASE_LENGTH_H
#define DOORCOST_BASE_LENGTH_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

typedef int64_t length;

#define NM_PER_MM ((length)1000000)
#define NM_PER_UM ((length)1000)
/* Exact: 1 in = 25.4 mm (international inch, 1959). */
#define NM_PER_INCH ((length)25400000)
#define NM_PER_FOOT (12 * NM_PER_INCH)
#define NM_PER_MIL  ((length)25400)
/* What is cut is rounded to these. */
#define NM_PER_64TH     ((length)396875)
#define NM_PER_TENTH_MM ((length)100000)

/* The two ways in which bare lengths are meant and lengths are shown. */
enum length_unit { LENGTH_INCH, LENGTH_MM };

/* A length in millionths of an inch or of a mm, half away from zero: 64ths and nm are exact. */
int64_t length_millionths(length value, enum length_unit unit);
/* What so many millionths of an inch or of a mm are, a part of a nm dropped. */
static inline length length_of_millionths(int64_t millionths, enum length_unit unit) {
    return unit == LENGTH_INCH ? millionths / 10 * 254 + millionths % 10 * 254 / 10 : millionths;
}

/* Why a text is no length. */
enum length_fault {
    LENGTH_OK,
    LENGTH_UNREADABLE, /* not a number at all */
    LENGTH_OTHER_UNIT, /* a number with a unit that is no length: '3 lb', '4 gal' */
    LENGTH_DATE,       /* '2-Jan', '2026-01-02': a spreadsheet made a date of a fraction */
    LENGTH_FRACTION,   /* a fraction that is one or more: '145/8', '14 9/8' */
    LENGTH_TOO_LARGE,  /* over 1 km either way, an absurd door in any unit */
};

/* The day and month of a text that a spreadsheet made of a fraction, `2-Jan`; false: it is no date
 * with both, as `01/02/2026`, whose numbers may stand either way. */
bool length_date(const char *text, int *day, int *month);

/* Reads a length as people write it: `23 7/16`, `23-7/16`, `23 7/16"`, `23.4375 in`, `1' 11 7/16"`,
 * `8 ft`, `595 mm`, `59.5 cm`, `2.4 m`, `4 mil`, `100 um`; a bare number is in `bare`.  Both ends
 * may carry blanks.  A fraction of a nanometer is rounded half away from zero (1/3 in).  A fraction
 * that is one or more is a fault: a blank or a digit is wrong in it.  A leading minus is read:
 * whether it makes sense is for the caller to say. text: UTF-8, NUL-terminated; the unicode primes
 * and fractions (1/2 as one character) are read too. out: set only when the result is LENGTH_OK. */
enum length_fault length_read(const char *text, enum length_unit bare, length *out);

/* Rounds to what a shop can cut: 1/64 in or 0.1 mm, half away from zero. */
length length_cut(length value, enum length_unit unit);

/* Writes a length for people into text (size bytes, always terminated; 32 are enough for any
 * length): inches as a fraction in lowest terms to 1/64 without a unit mark (`23 7/16`, `-1/2`,
 * `0`), millimeters with at most one decimal (`595`, `595.5`).  A value between steps is shown
 * rounded half away from zero. Returns text. */
char *length_show(length value, enum length_unit unit, char *text, size_t size);

/* A length as it is noted of what is left and not measured again: no finer than a tape shows it,
 * 1/32 in or 1 mm, and never more than there is. Of less than that, the length itself. */
length length_by_tape(length value, enum length_unit unit);

#endif
