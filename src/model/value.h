/* SPDX-License-Identifier: MIT */
/* What the input files give, each with its file and line.
 *
 * All texts and arrays live in the pool of the struct that holds them; nothing here is freed
 * singly. */
#ifndef DOORCOST_MODEL_VALUE_H
#define DOORCOST_MODEL_VALUE_H

#include "base/length.h"
#include "base/problem.h"
#include "figure/unit.h"

/* A number as written: amount / 10^decimals of unit. A length has unit UNIT_NM, decimals 0, amount
 * in nm.  A range that follows, `4.10 per bf (3.80 to 4.60)`, holds it: the reader has looked.
 * Where a count is absent, amount is its default and set is false. */
struct value {
    int64_t amount;
    struct place place;
    uint8_t unit, decimals; /* unit: enum unit */
    bool set;
    bool dated; /* of a price: it is said when it was learned; model/price_age.h */
};

/* The ends of a range that follows a value and holds it, in its unit. For the keys whose ranges
 * something is made of. */
struct range {
    struct value low, high;
    bool set;
};

/* A text as the user spelled it; s is NULL where the key is absent. */
struct text {
    const char *s;
    struct place place;
};

struct texts {
    struct text *t;
    size_t count;
};

/* One of a fixed set (an enum of ours). Where the key is absent, choice is the default and set
 * is false. */
struct choice {
    struct place place;
    int choice;
    bool set;
};

/* The amounts of two values of one unit at as many decimals. Both below 10^12. */
static inline void value_even(const struct value *a, const struct value *b, int64_t *left,
                              int64_t *right) {
    *left = a->amount;
    *right = b->amount;
    for (unsigned i = a->decimals; i < b->decimals; i++) {
        *left *= 10;
    }
    for (unsigned i = b->decimals; i < a->decimals; i++) {
        *right *= 10;
    }
}

/* Whether a is more than b: of one unit, not always of the same decimals. Both below 10^12. */
static inline bool value_above(const struct value *a, const struct value *b) {
    int64_t left;
    int64_t right;
    value_even(a, b, &left, &right);
    return left > right;
}

/* Its amount at `decimals`, no fewer than it has. */
static inline int64_t value_at(const struct value *value, uint8_t decimals) {
    int64_t amount = value->amount;
    for (uint8_t d = value->decimals; d < decimals; d++) {
        amount *= 10;
    }
    return amount;
}

/* Takes away decimals that say nothing, down to `least`: 20.00 is 20. */
static inline void value_drop_zeros(struct value *value, uint8_t least) {
    while (value->decimals > least && value->amount % 10 == 0) {
        value->amount /= 10;
        value->decimals--;
    }
}

struct named_value {
    struct text name;
    struct value value;
};

struct values {
    struct value *v;
    size_t count;
};

/* A name that stands for a section of the rates: index into that kind's array, -1 where absent. */
struct reference {
    struct text name;
    int32_t index;
};

struct references {
    struct reference *r;
    size_t count;
};

/* One row of a table `limit: value` (hinges by height, price breaks, sizes of a container). */
struct step {
    struct value limit, value;
    const char *words; /* the limit as written: '4 fl oz' */
};

struct steps {
    struct step *s;
    size_t count;
};

#endif
