/* SPDX-License-Identifier: MIT */
/* How a figure came about: a numbered list, each figure once, that a pocket calculator can follow.
 * A line names what it was made from, with the numbers of the lines that make these in turn. */
#include "report/text/print.h"

#include "base/text.h"
#include "report/words/show.h"

#include <stdlib.h>
#include <string.h>

/* Operands that stand in one sentence; more of them stand a line each. Of a choice so many are
 * told. */
enum { FEW = 4, MOST_OF_CHOICE = 12 };

struct teller {
    struct page *page;
    const struct estimate *e;
    const struct problems *problems;
    struct pool *pool;
    uint32_t *number; /* by figure: its line, 0: it has none */
    uint32_t *order;  /* figures in the order of their lines */
    size_t *depth;    /* of each line */
    size_t count;
    size_t most; /* depth of lines */
};

/* --- which figures have lines --- */

static bool is_made(const struct teller *t, fig f) {
    return tape_operands(&t->e->tape, f) > 0;
}

static void take_line(struct teller *t, fig f, size_t depth) {
    if (fig_none(f) || t->number[f.id] != 0) {
        return;
    }
    t->order[t->count] = f.id;
    t->depth[t->count++] = depth;
    t->number[f.id] = (uint32_t)t->count;
}

/* Level by level, so that what is asked for most stands first. */
static void number_lines(struct teller *t, fig root) {
    take_line(t, root, 0);
    for (size_t i = 0; i < t->count; i++) {
        const fig f = {t->order[i]};
        for (size_t o = 0; t->depth[i] < t->most && o < tape_operands(&t->e->tape, f); o++) {
            const fig operand = tape_operand(&t->e->tape, f, o).f;
            if (!fig_none(operand)) {
                take_line(t, operand, t->depth[i] + 1);
            }
        }
    }
}

/* --- words --- */

/* Lengths have more decimals than anybody reads. */
static const char *value_of(const struct teller *t, fig f) {
    const enum unit unit = tape_unit(&t->e->tape, f);
    const char *const words = show_unit_name(t->e, f);
    struct shown value = show_exact(t->e, f);
    size_t size = strlen(value.text);
    if ((unit == UNIT_IN || unit == UNIT_MM) && strchr(value.text, '.') != NULL) {
        while (value.text[size - 1] == '0') {
            size--;
        }
        size -= value.text[size - 1] == '.' ? 1 : 0;
    }
    return pool_words(t->pool, "%.*s%s%s", (int)size, value.text, words[0] == '\0' ? "" : " ",
                      words);
}

static const char *name_of(const struct teller *t, fig f) {
    const char *const subject = tape_subject_name(&t->e->tape, f);
    return pool_words(t->pool, "%s%s%s", tape_label(&t->e->tape, f), subject[0] == '\0' ? "" : ", ",
                      subject);
}

/* An operand: its name, its value, and the line that makes it. */
static const char *operand_words(const struct teller *t, fig f) {
    const uint32_t number = t->number[f.id];
    return number == 0 ? pool_words(t->pool, "%s %s", name_of(t, f), value_of(t, f))
                       : pool_words(t->pool, "%s %s [%u]", name_of(t, f), value_of(t, f), number);
}

/* --- how a figure was made --- */

/* Operands that are below the line, or not, joined by ` x `. */
static const char *product_words(const struct teller *t, fig f, bool under) {
    const char *words = "";
    for (size_t i = 0; i < tape_operands(&t->e->tape, f); i++) {
        const struct operand o = tape_operand(&t->e->tape, f, i);
        if (o.minus == under) {
            words = pool_words(t->pool, "%s%s%s", words, words[0] == '\0' ? "" : " x ",
                               operand_words(t, o.f));
        }
    }
    return words;
}

static void tell_ratio(const struct teller *t, fig f) {
    const char *const over = product_words(t, f, false);
    const char *const under = product_words(t, f, true);
    if (under[0] == '\0') {
        say_wrapped(t->page, "    = ", 6, "%s", over);
    } else {
        say_wrapped(t->page, "    = ", 6, "%s / (%s)", over, under);
    }
}

static void tell_terms(const struct teller *t, fig f, size_t stride) {
    const size_t count = tape_operands(&t->e->tape, f);
    const char *words = "";
    for (size_t i = 0; i + stride <= count; i += stride) {
        const struct operand o = tape_operand(&t->e->tape, f, i);
        const char *const sign = o.minus ? "- " : i == 0 ? "" : "+ ";
        const char *const term =
            stride == 1 ? pool_words(t->pool, "%s%s", sign, operand_words(t, o.f))
                        : pool_words(t->pool, "%s%s x %s", sign, operand_words(t, o.f),
                                     operand_words(t, tape_operand(&t->e->tape, f, i + 1).f));
        if (count > FEW * stride) {
            say_wrapped(t->page, i == 0 ? "    = " : "      ", 8, "%s", term);
        } else {
            words = pool_words(t->pool, "%s%s%s", words, words[0] == '\0' ? "" : " ", term);
        }
    }
    if (count <= FEW * stride) {
        say_wrapped(t->page, "    = ", 6, "%s", words);
    }
}

static const char *both_words(const struct teller *t, fig f) {
    return pool_words(t->pool, "%s and %s", operand_words(t, tape_operand(&t->e->tape, f, 0).f),
                      operand_words(t, tape_operand(&t->e->tape, f, 1).f));
}

/* A table: limit and value by turns behind what picks. */
static void tell_pick(const struct teller *t, fig f, const char *rule) {
    const struct tape *const tape = &t->e->tape;
    say_wrapped(t->page, "    ", 6, "by %s: the value beside %s",
                operand_words(t, tape_operand(tape, f, 0).f), rule);
    for (size_t i = 1; i + 1 < tape_operands(tape, f); i += 2) {
        say_wrapped(t->page, "      ", 8, "%s: %s", value_of(t, tape_operand(tape, f, i).f),
                    value_of(t, tape_operand(tape, f, i + 1).f));
    }
}

static void tell_chosen(const struct teller *t, fig f) {
    const struct tape *const tape = &t->e->tape;
    uint32_t output = 0;
    const struct chooser *const chooser = tape_chooser(tape, f, &output);
    const size_t count = tape_operands(tape, f);
    say_wrapped(t->page, "    ", 6, "chosen by '%s' (its result %u) from %zu values%s",
                chooser->name, output + 1, count, count > MOST_OF_CHOICE ? "" : ":");
    for (size_t i = 0; count <= MOST_OF_CHOICE && i < count; i++) {
        say_wrapped(t->page, "      ", 8, "%s", operand_words(t, tape_operand(tape, f, i).f));
    }
}

static void tell_given(const struct teller *t, fig f) {
    const struct origin origin = tape_origin(&t->e->tape, f);
    if (origin.source != NULL) {
        say_wrapped(t->page, "    ", 6, "source: %s", origin.source);
        return;
    }
    const struct setting *const setting = show_setting(t->e, f);
    if (origin.place.file == 0) {
        say_wrapped(t->page, "    ", 6, "read off the drawing of the door");
    } else if (setting == NULL) {
        say_wrapped(t->page, "    ", 6,
                    origin.worked ? "worked out from %s%s, its style and how it fits" : "from %s%s",
                    problems_file_name(t->problems, origin.place.file),
                    problems_place(t->problems, origin.place).text);
    } else {
        const struct shown learned = show_learned(t->e, f);
        say_wrapped(t->page, "    ", 6, "from %s:%u, %s %s%s%s",
                    problems_file_name(t->problems, origin.place.file), origin.place.line,
                    setting->section, setting->key, *learned.text == '\0' ? "" : ", learned ",
                    learned.text);
    }
}

static void tell_making(const struct teller *t, fig f) {
    switch (tape_op(&t->e->tape, f)) {
    case OP_SUM:
        tell_terms(t, f, 1);
        break;
    case OP_TOTAL:
        tell_terms(t, f, 2);
        break;
    case OP_RATIO:
        tell_ratio(t, f);
        break;
    case OP_LARGER:
        say_wrapped(t->page, "    ", 6, "the larger of %s", both_words(t, f));
        break;
    case OP_SMALLER:
        say_wrapped(t->page, "    ", 6, "the smaller of %s", both_words(t, f));
        break;
    case OP_UP:
        say_wrapped(t->page, "    ", 6, "%s up to a multiple of %s",
                    operand_words(t, tape_operand(&t->e->tape, f, 0).f),
                    operand_words(t, tape_operand(&t->e->tape, f, 1).f));
        break;
    case OP_PICK_UPTO:
        tell_pick(t, f, "the first limit that is not less; past the last, the last");
        break;
    case OP_PICK_FROM:
        tell_pick(t, f, "the last limit that is not more; below the first, the first");
        break;
    case OP_CHOSEN:
        tell_chosen(t, f);
        break;
    case OP_GIVEN:
    case OP_COUNT:
    default:
        tell_given(t, f);
        break;
    }
}

/* --- all of it --- */

static void tell_lines(struct teller *t) {
    bool cut = false;
    for (size_t i = 0; i < t->count; i++) {
        const fig f = {t->order[i]};
        say_wrapped(t->page, pool_words(t->pool, "[%zu] ", i + 1), 4, "%s: %s", name_of(t, f),
                    value_of(t, f));
        tell_making(t, f);
        cut = cut || (t->depth[i] == t->most && is_made(t, f));
    }
    say(t->page, "%s", "");
    say_wrapped(t->page, "", 0,
                "Each line is rounded to the decimals that it shows, half away from zero.%s",
                cut ? " What has no number here is made up of more: --depth tells how far down "
                      "lines go."
                    : "");
}

void explain_print(struct page *page, const struct estimate *e, const struct problems *problems,
                   fig figure, size_t depth) {
    struct pool pool;
    struct teller t = {.page = page, .e = e, .problems = problems, .pool = &pool, .most = depth};
    pool_init(&pool);
    t.number = pool_take(&pool, e->tape.count, sizeof *t.number);
    t.order = pool_take(&pool, e->tape.count, sizeof *t.order);
    t.depth = pool_take(&pool, e->tape.count, sizeof *t.depth);
    if (!pool_failed(&pool)) {
        number_lines(&t, figure);
        tell_lines(&t);
    }
    page->failed = page->failed || pool_failed(&pool);
    pool_clear(&pool);
}
