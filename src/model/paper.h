/* SPDX-License-Identifier: MIT */
/* The paper that is printed on, upright: US letter or A4 (ISO 216). Lengths in nm. */
#ifndef DOORCOST_MODEL_PAPER_H
#define DOORCOST_MODEL_PAPER_H

#include "base/length.h"

/* Of what is printed; as usual: letter where rates are in inches, A4 where in millimeters. */
enum paper_size { PAPER_AS_USUAL, PAPER_LETTER, PAPER_A4 };

/* Whether a paper size is letter in a shop that measures in unit; else it is A4. size: enum
 * paper_size. */
static inline bool paper_is_letter(int size, enum length_unit unit) {
    return size == PAPER_LETTER || (size == PAPER_AS_USUAL && unit == LENGTH_INCH);
}

/* 8 1/2 in, 210 mm. */
static inline length paper_width(bool letter) {
    return letter ? 17 * NM_PER_INCH / 2 : 210 * NM_PER_MM;
}
/* 11 in, 297 mm. */
static inline length paper_height(bool letter) {
    return letter ? 11 * NM_PER_INCH : 297 * NM_PER_MM;
}

#endif
