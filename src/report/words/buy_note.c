/* SPDX-License-Identifier: MIT */
#include "report/words/buy_note.h"

#include "base/pool.h"

#include <assert.h>
#include <string.h>

void buy_note_add(struct buy_note *note, struct buy_clause clause) {
    const bool never =
        !fig_none(clause.more) && !clause.or_same && fig_same(clause.more, clause.than);
    if (clause.words[0] != '\0' && !never) {
        assert(note->count < BUY_CLAUSES);
        note->clauses[note->count++] = clause;
    }
}

/* --- as words --- */

static bool holds(const struct estimate *e, const struct buy_clause *c) {
    if (fig_none(c->more)) {
        return true;
    }
    const int64_t more = tape_scaled(&e->tape, c->more, 6);
    const int64_t than = fig_none(c->than) ? 0 : tape_scaled(&e->tape, c->than, 6);
    return more > than || (c->or_same && more == than);
}

static bool is_money(const struct estimate *e, fig f) {
    return tape_unit(&e->tape, f) == UNIT_MONEY;
}

/* ` bf`; "" of a plain count. */
static const char *unit_after(struct pool *pool, const struct estimate *e, fig f) {
    const char *const unit = show_unit_name(e, f);
    return unit[0] == '\0' ? "" : pool_words(pool, " %s", unit);
}

/* Whole amounts have no decimals, others these: all programs write that alike, which is not so of
 * noughts left out at the end. */
static uint8_t value_decimals(const struct estimate *e, fig f) {
    return tape_unit(&e->tape, f) == UNIT_M3 ? 4 : 2;
}

static const char *value_words(struct pool *pool, const struct estimate *e, fig f) {
    if (is_money(e, f)) {
        return pool_words(pool, "%s", show_money(e, f).text);
    }
    const uint8_t decimals = value_decimals(e, f);
    const int64_t value = tape_scaled(&e->tape, f, decimals);
    const int64_t whole = tape_scaled(&e->tape, f, 0);
    const bool is_whole = value == whole * (decimals == 4 ? 10000 : 100);
    return pool_words(pool, "%s%s",
                      (is_whole ? show_number(whole, 0) : show_number(value, decimals)).text,
                      unit_after(pool, e, f));
}

const char *buy_note_words(struct pool *pool, const struct estimate *e,
                           const struct buy_note *note) {
    const char *words = "";
    for (size_t i = 0; i < note->count; i++) {
        const struct buy_clause *const c = &note->clauses[i];
        const char *from = holds(e, c) ? c->words : "";
        const char *clause = "";
        for (size_t v = 0; from[0] != '\0';) {
            const size_t plain = strcspn(from, "#");
            clause = pool_words(pool, "%s%.*s%s", clause, (int)plain, from,
                                from[plain] == '#' ? value_words(pool, e, c->values[v++]) : "");
            from += plain + (from[plain] == '#' ? 1 : 0);
        }
        words = pool_words(pool, "%s%s%s", words, words[0] == '\0' || clause[0] == '\0' ? "" : "; ",
                           clause);
    }
    return words;
}

/* --- as a formula --- */

static const char *value_formula(struct pool *pool, const struct estimate *e, fig f) {
    if (is_money(e, f)) {
        return e->tape.money_decimals == 0
                   ? pool_words(pool, "TEXT({%u},\"0\")&\"", f.id)
                   : pool_words(pool, "TEXT({%u},\"0.%0*d\")&\"", f.id, e->tape.money_decimals, 0);
    }
    const int decimals = value_decimals(e, f);
    return pool_words(pool, "TEXT({%u},IF(ROUND({%u},%d)=ROUND({%u},0),\"0\",\"0.%0*d\"))&\"%s",
                      f.id, f.id, decimals, f.id, decimals, 0, unit_after(pool, e, f));
}

/* A clause with the `; ` before it that the formula takes off the first. */
static const char *clause_formula(struct pool *pool, const struct estimate *e,
                                  const struct buy_clause *c) {
    const char *from = c->words;
    const char *text = "\"; ";
    for (size_t v = 0; from[0] != '\0';) {
        const size_t plain = strcspn(from, "#");
        text = pool_words(pool, "%s%.*s", text, (int)plain, from);
        if (from[plain] == '#') {
            text = pool_words(pool, "%s\"&%s", text, value_formula(pool, e, c->values[v++]));
        }
        from += plain + (from[plain] == '#' ? 1 : 0);
    }
    text = pool_words(pool, "%s\"", text);
    if (fig_none(c->more)) {
        return text;
    }
    const char *const than = fig_none(c->than) ? "0" : pool_words(pool, "{%u}", c->than.id);
    return pool_words(pool, "IF({%u}%s%s,%s,\"\")", c->more.id, c->or_same ? ">=" : ">", than,
                      text);
}

const char *buy_note_formula(struct pool *pool, const struct estimate *e,
                             const struct buy_note *note) {
    const char *formula = "";
    bool live = false;
    for (size_t i = 0; i < note->count; i++) {
        const struct buy_clause *const c = &note->clauses[i];
        live = live || !fig_none(c->more) || !fig_none(c->values[0]);
        formula =
            pool_words(pool, "%s%s%s", formula, i == 0 ? "" : "&", clause_formula(pool, e, c));
    }
    return live ? pool_words(pool, "MID(%s,3,500)", formula) : NULL;
}
