/* SPDX-License-Identifier: MIT */
/* One function an operation, each from operands to a 128-bit value at the result's decimals.  A
 * product of three values under 10^12 fits 128 bits with room for the powers of ten that line the
 * decimals up; where it would not, the overflow check says so rather than wrap. */
#include "figure/operation.h"

#include "base/int128.h"
#include "figure/tape_parts.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

#define VALUE_LIMIT                                                                                \
    ((int128)1000000000000) /* doubles hold such a value and its rounding exactly                  \
                             */

/* An operand: its value at its decimals. */
struct number {
    int64_t value;
    uint8_t decimals;
};

static struct number operand_of(const struct tape *tape, const struct figure *made, uint32_t i) {
    assert(i < made->operands);
    const uint64_t packed = tape->values[tape->words[made->first + i] & ~TAPE_MINUS_BIT];
    return (struct number){.value = value_amount(packed), .decimals = value_decimals(packed)};
}

static bool operand_minus(const struct tape *tape, const struct figure *made, uint32_t i) {
    return (tape->words[made->first + i] & TAPE_MINUS_BIT) != 0;
}

/* Of a figure: unit_decimals gives 6 at the most, and so does a file. */
#define MOST_DECIMALS 6

static const int64_t powers_of_ten[] = {
    1,           10,           100,           1000,           10000,
    100000,      1000000,      10000000,      100000000,      1000000000,
    10000000000, 100000000000, 1000000000000, 10000000000000, 100000000000000,
};
#define MOST_POWER ((int)(sizeof powers_of_ten / sizeof *powers_of_ten) - 1)

/* a x 10^power; false when it does not fit. */
static bool scale_up(int128 *a, int power) {
    for (; power > MOST_POWER; power -= MOST_POWER) {
        if (__builtin_mul_overflow(*a, (int128)powers_of_ten[MOST_POWER], a)) {
            return false;
        }
    }
    return power <= 0 || !__builtin_mul_overflow(*a, (int128)powers_of_ten[power], a);
}

/* A value of decimals `from` at decimals `to`. */
static bool rescale(int128 value, uint8_t from, uint8_t to, int128 *out) {
    if (to >= from) {
        *out = value;
        return scale_up(out, to - from);
    }
    int128 step = 1;
    if (!scale_up(&step, from - to)) {
        return false;
    }
    *out = int128_round(value, step);
    return true;
}

static enum tape_fault keep(int128 value, int64_t *out) {
    if (value >= VALUE_LIMIT || value <= -VALUE_LIMIT) {
        return TAPE_TOO_LARGE;
    }
    *out = (int64_t)value;
    return TAPE_OK;
}

static enum tape_fault sum(const struct tape *tape, const struct figure *made, int64_t *value) {
    int128 all = 0;
    for (uint32_t i = 0; i < made->operands; i++) {
        const struct number f = operand_of(tape, made, i);
        int128 term;
        if (!rescale(f.value, f.decimals, made->decimals, &term)) {
            return TAPE_TOO_LARGE;
        }
        all += operand_minus(tape, made, i) ? -term : term;
    }
    return keep(all, value);
}

/* Products are added up apart by their decimals and brought to the most that any has in the end,
 * so that the one rounding is the last step, and every operand is looked at once. */
static enum tape_fault total(const struct tape *tape, const struct figure *made, int64_t *value) {
    int128 sums[2 * MOST_DECIMALS + 1] = {0};
    int most = made->decimals;
    for (uint32_t i = 0; i + 1 < made->operands; i += 2) {
        const struct number count = operand_of(tape, made, i);
        const struct number each = operand_of(tape, made, i + 1);
        const int decimals = count.decimals + each.decimals;
        assert(decimals <= 2 * MOST_DECIMALS);
        most = decimals > most ? decimals : most;
        sums[decimals] += (int128)count.value * each.value; /* 10^24 at most, of 2^32 */
    }
    int128 all = 0;
    for (int decimals = 0; decimals <= 2 * MOST_DECIMALS && decimals <= most; decimals++) {
        if (!scale_up(&sums[decimals], most - decimals) ||
            __builtin_add_overflow(all, sums[decimals], &all)) {
            return TAPE_TOO_LARGE;
        }
    }
    int128 rounded;
    if (!rescale(all, (uint8_t)most, made->decimals, &rounded)) {
        return TAPE_TOO_LARGE;
    }
    return keep(rounded, value);
}

/* over / under x 10^power, rounded, all in 64 bits, as nearly every ratio is; false where it does
 * not fit or under is 0. */
static bool small_ratio(int64_t over, int64_t under, int power, int64_t *value) {
    if (abs(power) > MOST_POWER || under == 0) {
        return false;
    }
    int64_t *const side = power > 0 ? &over : &under;
    if (__builtin_mul_overflow(*side, powers_of_ten[abs(power)], side) || over == INT64_MIN ||
        under == INT64_MIN) {
        return false;
    }
    const int64_t rest = llabs(over % under);
    const int64_t more = (over < 0) == (under < 0) ? 1 : -1;
    *value = over / under + (rest >= llabs(under) - rest ? more : 0);
    return true;
}

static enum tape_fault large_ratio(const struct tape *tape, const struct figure *made, int power,
                                   int64_t *value) {
    int128 over = 1;
    int128 under = 1;
    for (uint32_t i = 0; i < made->operands; i++) {
        int128 *const side = operand_minus(tape, made, i) ? &under : &over;
        if (__builtin_mul_overflow(*side, (int128)operand_of(tape, made, i).value, side)) {
            return TAPE_TOO_LARGE;
        }
    }
    if (under == 0) {
        *value = 0;
        return over == 0 ? TAPE_OK : TAPE_DIVISION;
    }
    if (under < 0) {
        under = -under;
        over = -over;
    }
    if (!scale_up(power > 0 ? &over : &under, abs(power))) {
        return TAPE_TOO_LARGE;
    }
    return keep(int128_round(over, under), value);
}

static enum tape_fault ratio(const struct tape *tape, const struct figure *made, int64_t *value) {
    int64_t over = 1;
    int64_t under = 1;
    int power = made->decimals;
    bool small = true;
    for (uint32_t i = 0; i < made->operands; i++) {
        const struct number f = operand_of(tape, made, i);
        const bool below = operand_minus(tape, made, i);
        int64_t *const side = below ? &under : &over;
        power += below ? f.decimals : -(int)f.decimals;
        small = small && !__builtin_mul_overflow(*side, f.value, side);
    }
    if (small && small_ratio(over, under, power, &over)) {
        return keep(over, value);
    }
    return large_ratio(tape, made, power, value);
}

bool operation_short_ratio(const struct tape *tape, uint8_t decimals, const figs *over,
                           const figs *under, int64_t *value) {
    int64_t top = 1;
    int64_t bottom = 1;
    int power = decimals;
    for (size_t i = 0; i < 3; i++) {
        const uint64_t above = tape_packed(tape, over->f[i]);
        const uint64_t below = tape_packed(tape, under->f[i]);
        if (!fig_none(over->f[i])) {
            power -= value_decimals(above);
            if (__builtin_mul_overflow(top, value_amount(above), &top)) {
                return false;
            }
        }
        if (!fig_none(under->f[i])) {
            power += value_decimals(below);
            if (__builtin_mul_overflow(bottom, value_amount(below), &bottom)) {
                return false;
            }
        }
    }
    return small_ratio(top, bottom, power, value) && keep(*value, value) == TAPE_OK;
}

bool operation_short_sum(const struct tape *tape, uint8_t decimals, const fig *terms, size_t count,
                         int64_t *value) {
    int64_t all = 0;
    for (size_t i = 0; i < count; i++) {
        const bool minus = (terms[i].id & TAPE_MINUS_BIT) != 0;
        const uint64_t packed = tape_packed(tape, terms[i]);
        if ((terms[i].id & ~TAPE_MINUS_BIT) == 0) {
            continue;
        }
        const int64_t term = minus ? -value_amount(packed) : value_amount(packed);
        if (value_decimals(packed) != decimals || __builtin_add_overflow(all, term, &all)) {
            return false;
        }
    }
    return keep(all, value) == TAPE_OK;
}

bool operation_short_total(const struct tape *tape, uint8_t decimals, const fig *counts,
                           const fig *each, size_t count, int64_t *value) {
    int128 all = 0;
    int common = -1;
    for (size_t i = 0; i < count; i++) {
        if (fig_none(counts[i]) || fig_none(each[i])) {
            continue;
        }
        const uint64_t a = tape_packed(tape, counts[i]);
        const uint64_t b = tape_packed(tape, each[i]);
        const int both = value_decimals(a) + value_decimals(b);
        if (both != common && common >= 0) {
            return false;
        }
        common = both;
        all += (int128)value_amount(a) * value_amount(b); /* 10^24 at most, of 2^32 */
    }
    return rescale(all, common < 0 ? decimals : (uint8_t)common, decimals, &all) &&
           keep(all, value) == TAPE_OK;
}

/* -1, 0, 1 as a is less, equal, more than b, whatever their decimals. */
static int compare(struct number a, struct number b) {
    int128 x = a.value;
    int128 y = b.value;
    const bool fits = scale_up(a.decimals < b.decimals ? &x : &y, abs(a.decimals - b.decimals));
    assert(fits); /* 10^12 x 10^6 */
    (void)fits;
    return (x > y) - (x < y);
}

static enum tape_fault copy_of(struct number f, const struct figure *made, int64_t *value) {
    int128 same;
    if (!rescale(f.value, f.decimals, made->decimals, &same)) {
        return TAPE_TOO_LARGE;
    }
    return keep(same, value);
}

static enum tape_fault extreme(const struct tape *tape, const struct figure *made, int64_t *value) {
    const struct number a = operand_of(tape, made, 0);
    const struct number b = operand_of(tape, made, 1);
    const bool first = made->op == OP_LARGER ? compare(a, b) >= 0 : compare(a, b) <= 0;
    return copy_of(first ? a : b, made, value);
}

static enum tape_fault up(const struct tape *tape, const struct figure *made, int64_t *value) {
    const struct number a = operand_of(tape, made, 0);
    const struct number step = operand_of(tape, made, 1);
    if (step.value <= 0) {
        return TAPE_DIVISION;
    }
    int128 x = a.value;
    int128 y = step.value;
    if (!scale_up(a.decimals < step.decimals ? &x : &y, abs(a.decimals - step.decimals))) {
        return TAPE_TOO_LARGE;
    }
    int128 steps = x / y; /* toward zero: already up for what is negative */
    if (x > 0 && x % y != 0) {
        steps++;
    }
    int128 raised;
    if (!rescale(steps * step.value, step.decimals, made->decimals, &raised)) {
        return TAPE_TOO_LARGE;
    }
    return keep(raised, value);
}

static enum tape_fault pick(const struct tape *tape, const struct figure *made, int64_t *value) {
    const struct number by = operand_of(tape, made, 0);
    const uint32_t rows = (made->operands - 1) / 2;
    assert(rows > 0);
    uint32_t row = made->op == OP_PICK_UPTO ? rows - 1 : 0;
    for (uint32_t i = 0; i < rows; i++) {
        const int side = compare(by, operand_of(tape, made, 1 + 2 * i));
        if (made->op == OP_PICK_UPTO && side <= 0) {
            row = i;
            break;
        }
        if (made->op == OP_PICK_FROM && side >= 0) {
            row = i;
        }
    }
    return copy_of(operand_of(tape, made, 2 + 2 * row), made, value);
}

/* Operands of a chosen figure at 6 decimals, which leaves them under 10^18; they follow the word
 * that names the chooser. */
static void scale_operands(const struct tape *tape, const struct figure *made, int64_t *in) {
    for (uint32_t i = 0; i + 1 < made->operands; i++) {
        const struct number f = operand_of(tape, made, i + 1);
        assert(f.decimals <= MOST_DECIMALS);
        in[i] = f.value * powers_of_ten[MOST_DECIMALS - f.decimals];
    }
}

/* All outputs of a chooser share their operands: the first asks it, the others take what it gave.
 */
static enum tape_fault choose_all(const struct tape *tape, const struct figure *made) {
    struct chosen_last *const last = tape->last;
    const struct chooser *const chooser = tape->choosers[tape->words[made->first]];
    const size_t count = made->operands - 1;
    int64_t *const in = calloc(count + 1, sizeof *in);
    if (in == NULL) {
        return TAPE_MEMORY;
    }
    last->key = 0;
    memset(last->out, 0, sizeof last->out);
    scale_operands(tape, made, in);
    const bool answered = chooser->choose(in, count, last->out, CHOOSER_MOST_OUTPUTS);
    free(in);
    last->key = answered ? made->first + 1 : 0;
    return answered ? TAPE_OK : TAPE_DIVISION;
}

static enum tape_fault chosen(const struct tape *tape, const struct figure *made, int64_t *value) {
    if (tape->last->key != made->first + 1) {
        const enum tape_fault fault = choose_all(tape, made);
        if (fault != TAPE_OK) {
            return fault;
        }
    }
    return keep(tape->last->out[made->output], value);
}

enum tape_fault operation_value(const struct tape *tape, const struct figure *made,
                                int64_t *value) {
    switch ((enum figure_op)made->op) {
    case OP_GIVEN:
        return keep(made->value, value);
    case OP_SUM:
        return sum(tape, made, value);
    case OP_TOTAL:
        return total(tape, made, value);
    case OP_RATIO:
        return ratio(tape, made, value);
    case OP_LARGER:
    case OP_SMALLER:
        return extreme(tape, made, value);
    case OP_UP:
        return up(tape, made, value);
    case OP_PICK_UPTO:
    case OP_PICK_FROM:
        return pick(tape, made, value);
    case OP_CHOSEN:
        return chosen(tape, made, value);
    case OP_COUNT:
        break;
    }
    return TAPE_DIVISION;
}
