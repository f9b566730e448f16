/* SPDX-License-Identifier: MIT */
#include "report/text/reason.h"

#include "base/order.h"
#include "figure/unit.h"

#include <stdlib.h>

#define MOST_TERMS 6

static const char *number(const struct tape *tape, fig f, struct pool *pool) {
    char text[32];
    return pool_format(pool, "%s", tape_text(tape, f, text, sizeof text));
}

/* Terms or factors one after another; `plus` and `minus` are put before all but the first. */
static const char *chain(const struct tape *tape, fig f, struct pool *pool, const char *plus,
                         const char *minus) {
    const char *text = "";
    const size_t count = tape_operands(tape, f);
    for (size_t i = 0; i < count && text != NULL; i++) {
        const struct operand o = tape_operand(tape, f, i);
        const char *const value = number(tape, o.f, pool);
        const char *const sign = o.minus ? minus : (i == 0 ? "" : plus);
        text = value == NULL ? NULL : pool_format(pool, "%s%s%s", text, sign, value);
    }
    return text;
}

static const char *total(const struct tape *tape, fig f, struct pool *pool) {
    const char *text = "";
    for (size_t i = 0; i + 1 < tape_operands(tape, f) && text != NULL; i += 2) {
        const char *const count = number(tape, tape_operand(tape, f, i).f, pool);
        const char *const each = number(tape, tape_operand(tape, f, i + 1).f, pool);
        text = count == NULL || each == NULL
                   ? NULL
                   : pool_format(pool, "%s%s%s x %s", text, i == 0 ? "" : " + ", count, each);
    }
    return text;
}

static const char *pair(const struct tape *tape, fig f, struct pool *pool, const char *format_words,
                        const char *between) {
    const char *const a = number(tape, tape_operand(tape, f, 0).f, pool);
    const char *const b = number(tape, tape_operand(tape, f, 1).f, pool);
    return a == NULL || b == NULL ? NULL
                                  : pool_format(pool, "%s%s%s%s", format_words, a, between, b);
}

static const char *up(const struct tape *tape, fig f, struct pool *pool) {
    const fig step = tape_operand(tape, f, 1).f;
    if (tape_amount(tape, step) != 1 || tape_decimals(tape, step) != 0) {
        return pair(tape, f, pool, "", " up to a multiple of ");
    }
    return pool_format(pool, "%s up to a whole", number(tape, tape_operand(tape, f, 0).f, pool));
}

/* The formula of a figure over its operands' values, without units; a sum of more than six terms is
 * told by their number, what can't be said in a line in words. The text lives in pool; NULL when
 * memory is out. */
static const char *reason_text(const struct tape *tape, fig f, struct pool *pool) {
    const enum figure_op op = tape_op(tape, f);
    const size_t count = tape_operands(tape, f);
    switch (op) {
    case OP_SUM:
        return count > MOST_TERMS ? pool_format(pool, "sum of %zu", count)
                                  : chain(tape, f, pool, " + ", " - ");
    case OP_TOTAL:
        return count > MOST_TERMS ? pool_format(pool, "sum of %zu products", count / 2)
                                  : total(tape, f, pool);
    case OP_RATIO:
        return chain(tape, f, pool, " x ", " / ");
    case OP_LARGER:
        return pair(tape, f, pool, "the larger of ", " and ");
    case OP_SMALLER:
        return pair(tape, f, pool, "the smaller of ", " and ");
    case OP_UP:
        return up(tape, f, pool);
    case OP_PICK_UPTO:
    case OP_PICK_FROM:
        return pool_format(pool, "from a table, by %s",
                           number(tape, tape_operand(tape, f, 0).f, pool));
    case OP_CHOSEN:
        return "chosen";
    case OP_GIVEN:
    case OP_COUNT:
        break;
    }
    return "given";
}

/* The figures of a chain; there are a few dozen. */
struct links {
    uint32_t *ids;
    size_t count, room;
    bool failed;
};

/* Whether f is new to the chain and now in it; not what lies at or behind `start`. */
static bool link_in(struct links *links, const struct tape *tape, fig start, fig f) {
    if (fig_none(f) || f.id == start.id || tape_op(tape, f) == OP_GIVEN) {
        return false;
    }
    for (size_t i = 0; i < links->count; i++) {
        if (links->ids[i] == f.id) {
            return false;
        }
    }
    links->ids =
        array_grow(links->ids, &links->room, links->count + 1, sizeof *links->ids, &links->failed);
    if (!links->failed) {
        links->ids[links->count++] = f.id;
    }
    return !links->failed;
}

/* Takes in what f was made from, but for what is of another subject than `start`: it has a table of
 * its own. */
static void follow(struct links *links, const struct tape *tape, fig start, fig f) {
    for (size_t i = 0; i < tape_operands(tape, f); i++) {
        const fig from = tape_operand(tape, f, i).f;
        if (tape_subject(tape, from) == tape_subject(tape, start) &&
            link_in(links, tape, start, from)) {
            follow(links, tape, start, from);
        }
    }
}

static int by_id(const void *x, const void *y) {
    return order_by_number(*(const uint32_t *)x, *(const uint32_t *)y);
}

void reason_chain(struct grid *grid, const struct tape *tape, fig start, const fig *ends,
                  size_t count) {
    struct links links = {0};
    for (size_t i = 0; i < count; i++) {
        if (link_in(&links, tape, start, ends[i])) {
            follow(&links, tape, start, ends[i]);
        }
    }
    grid->failed = grid->failed || links.failed;
    if (links.count > 1) {
        qsort(links.ids, links.count, sizeof *links.ids, by_id);
    }
    for (size_t i = 0; i < links.count; i++) {
        const fig f = {links.ids[i]};
        char value[32];
        const char *const formula = reason_text(tape, f, &grid->pool);
        const char *const unit = unit_name(tape_unit(tape, f));
        grid_put(grid, "%s", tape_label(tape, f));
        grid_put(grid, "%s", formula == NULL ? "" : formula);
        grid_put(grid, "%s%s%s", tape_text(tape, f, value, sizeof value),
                 unit[0] == '\0' ? "" : " ", unit);
    }
    free(links.ids);
}
