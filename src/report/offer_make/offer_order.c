/* SPDX-License-Identifier: MIT */
/* A change order: what one offer says otherwise than another, in words and amounts of these two. */
#include "report/offer_make/offer_maker.h"

#include <string.h>

struct offer_amount offer_signed(struct offer_maker *m, int64_t amount) {
    return (struct offer_amount){.value = amount,
                                 .decimals = m->e->rates->shop.money_decimals,
                                 .unit = UNIT_MONEY,
                                 .text = offer_sum(m, amount, true)};
}

/* --- the price, before and now --- */

/* Fees of both sorts are one line. */
static int place_of(const struct offer_line *line) {
    return line->kind == OFFER_CARD_OF_PAID ? (int)OFFER_CARD : (int)line->kind;
}

/* Sums between the others say nothing of what changes. */
static bool is_told(const struct offer_line *line) {
    return line->kind != OFFER_AFTER && line->kind != OFFER_TAXED &&
           line->kind != OFFER_BEFORE_CARD;
}

static bool is_same(const struct offer_line *a, const struct offer_line *b) {
    return place_of(a) == place_of(b) &&
           (a->kind != OFFER_CHARGE || strcmp(a->label, b->label) == 0);
}

/* The line of an offer that is the same as `like` of another; of charges of one name the first is
 * the same as the first, the second as the second. */
static const struct offer_line *find_line(const struct offer *o, const struct offer_line *like,
                                          const struct offer *of) {
    size_t before = 0;
    for (const struct offer_line *line = of->lines; line < like; line++) {
        before += is_same(line, like) ? 1 : 0;
    }
    for (size_t i = 0; i < o->line_count; i++) {
        if (is_same(&o->lines[i], like) && before-- == 0) {
            return &o->lines[i];
        }
    }
    return NULL;
}

/* `Tax, 6.25 %, now 7 %`. */
static const char *line_words(struct offer_maker *m, const struct offer_line *older,
                              const struct offer_line *newer) {
    if (older == NULL || newer == NULL || strcmp(older->words, newer->words) == 0) {
        return older == NULL || newer != NULL ? newer->words : older->words;
    }
    return newer->by_percent && strcmp(older->label, newer->label) == 0
               ? pool_words(m->pool, "%s, now %s %%", older->words, newer->percent.text)
               : newer->words;
}

static void compare(struct offer_maker *m, struct offer_changes *c, const struct offer_line *older,
                    const struct offer_line *newer) {
    const struct offer_amount none = {.text = ""};
    const int64_t was = older == NULL ? 0 : older->amount.value;
    const int64_t is = newer == NULL ? 0 : newer->amount.value;
    c->lines[c->line_count++] =
        (struct offer_compared){.words = line_words(m, older, newer),
                                .total = newer != NULL && newer->kind == OFFER_TOTAL,
                                .older = older == NULL ? none : older->amount,
                                .newer = newer == NULL ? none : newer->amount,
                                .difference = offer_signed(m, is - was)};
}

/* What rows of each kind add, and what all others do, as lines that only have a difference. */
static void sum_rows(struct offer_maker *m, struct offer_changes *c, const struct offer *older,
                     const struct offer *newer) {
    static const char *const words[] = {[OFFER_TAKEN_OFF] = "Rows taken off",
                                        [OFFER_CHANGED] = "Rows changed",
                                        [OFFER_ADDED] = "Rows added",
                                        [OFFER_CHANGE_KINDS] = "All other rows"};
    const struct offer_amount none = {.text = ""};
    int64_t sums[OFFER_CHANGE_KINDS + 1] = {0};
    bool any[OFFER_CHANGE_KINDS + 1] = {false};
    for (size_t i = 0; i < newer->door_count; i++) {
        sums[OFFER_CHANGE_KINDS] += newer->doors[i].amount.value;
    }
    for (size_t i = 0; i < older->door_count; i++) {
        sums[OFFER_CHANGE_KINDS] -= older->doors[i].amount.value;
    }
    for (size_t i = 0; i < c->row_count; i++) {
        sums[c->rows[i].kind] += c->rows[i].amount.value;
        sums[OFFER_CHANGE_KINDS] -= c->rows[i].amount.value;
        any[c->rows[i].kind] = true;
    }
    any[OFFER_CHANGE_KINDS] = sums[OFFER_CHANGE_KINDS] != 0;
    for (size_t k = 0; k <= OFFER_CHANGE_KINDS; k++) {
        if (any[k]) {
            c->lines[c->line_count++] =
                (struct offer_compared){.words = words[k],
                                        .older = none,
                                        .newer = none,
                                        .difference = offer_signed(m, sums[k])};
        }
    }
}

/* Both go by the order of their kinds. */
static void compare_lines(struct offer_maker *m, struct offer_changes *c, const struct offer *older,
                          const struct offer *newer) {
    size_t at = 0;
    for (size_t i = 0; i < newer->line_count; i++) {
        const struct offer_line *const line = &newer->lines[i];
        for (; at < older->line_count && place_of(&older->lines[at]) <= place_of(line); at++) {
            const struct offer_line *const gone = &older->lines[at];
            if (is_told(gone) && find_line(newer, gone, older) == NULL) {
                compare(m, c, gone, NULL);
            }
        }
        if (is_told(line)) {
            compare(m, c, find_line(older, line, newer), line);
        }
    }
}

static bool make_changes(struct offer_maker *m, const struct offer *older,
                         const struct offer *newer) {
    struct offer_changes *const c = pool_take(m->pool, 1, sizeof *c);
    if (c == NULL) {
        return false;
    }
    c->each = older->detail == OFFER_EACH && newer->detail == OFFER_EACH;
    c->lines = pool_take(m->pool, older->line_count + newer->line_count + OFFER_CHANGE_KINDS + 1,
                         sizeof *c->lines);
    if (c->lines == NULL || !offer_order_rows(m, c, older, newer)) {
        return false;
    }
    if (c->each) {
        sum_rows(m, c, older, newer);
    }
    compare_lines(m, c, older, newer);
    m->offer->changes = c;
    return true;
}

/* --- the words --- */

static bool has_text(const struct offer_texts *texts, const char *text) {
    for (size_t i = 0; i < texts->count; i++) {
        if (strcmp(texts->text[i], text) == 0) {
            return true;
        }
    }
    return false;
}

/* What `from` says of how doors are made and what is part of it, and `than` does not. The first of
 * what is included counts the doors, which the rows tell. */
static void say_only(struct offer_maker *m, struct offer_texts *to, const struct offer *from,
                     const struct offer *than) {
    for (size_t i = 0; i < from->made.count; i++) {
        offer_add(to, has_text(&than->made, from->made.text[i]) ? NULL : from->made.text[i]);
    }
    for (size_t i = 1; i < from->included.count; i++) {
        offer_add(to, has_text(&than->included, from->included.text[i]) ? NULL
                                                                        : from->included.text[i]);
    }
    for (size_t i = 0; i < from->excluded.count; i++) {
        if (!has_text(&than->excluded, from->excluded.text[i])) {
            offer_add(to, pool_words(m->pool, "Not included: %s", from->excluded.text[i]));
        }
    }
}

static const char *fact_of(const struct offer *o, const char *label) {
    for (size_t i = 0; i < o->fact_count; i++) {
        if (strcmp(o->facts[i].label, label) == 0) {
            return o->facts[i].text;
        }
    }
    return NULL;
}

static int64_t total_of(const struct offer *o) {
    return o->line_count == 0 ? 0 : o->lines[o->line_count - 1].amount.value;
}

static void say_ready(struct offer_maker *m, const struct offer *older, const struct offer *newer) {
    static const char agreed[] = "as agreed with the order";
    const char *const was = fact_of(older, "Ready");
    const char *const is = fact_of(newer, "Ready");
    const char *const before = was == NULL ? agreed : was;
    const char *const now = is == NULL ? agreed : is;
    offer_add(&m->offer->statements,
              strcmp(before, now) == 0
                  ? pool_words(m->pool, "When the doors will be ready stays as it was: %s.", now)
                  : pool_words(m->pool, "Ready: %s; it was: %s.", now, before));
}

static bool same_texts(const struct offer_texts *a, const struct offer_texts *b) {
    for (size_t i = 0; a->count == b->count && i < a->count; i++) {
        if (strcmp(a->text[i], b->text[i]) != 0) {
            return false;
        }
    }
    return a->count == b->count;
}

static void say_order(struct offer_maker *m, const struct offer *older, const struct offer *newer) {
    struct offer *const o = m->offer;
    const char *const dated = fact_of(older, "Date");
    const char *const number = fact_of(older, "Number");
    const char *const revision = fact_of(older, "Revision");
    const int64_t more = total_of(newer) - total_of(older);
    const bool card = newer->other_total[0] != '\0';
    if (o->mark[0] != '\0') {
        offer_add(&o->statements, "Example prices, made up: this paper shows how a change order "
                                  "reads, and changes nothing.");
    }
    offer_add(
        &o->statements,
        pool_words(m->pool,
                   "This changes the quote%s%s%s%s of %s. What it does not name stays as it was "
                   "there, the terms included.",
                   number == NULL ? "" : " ", number == NULL ? "" : number,
                   revision == NULL ? "" : ", revision ", revision == NULL ? "" : revision, dated));
    offer_add(&o->statements,
              more == 0 ? "The total stays as it was."
                        : pool_words(m->pool, "In all %s %s %s, with all discounts and taxes.",
                                     offer_sum(m, more < 0 ? -more : more, false), o->currency,
                                     more < 0 ? "less" : "more"));
    say_ready(m, older, newer);
    say_only(m, &o->included, newer, older);
    say_only(m, &o->excluded, older, newer);
    o->total_label = pool_words(m->pool, "New t%s", newer->total_label + 1);
    o->pay_label = "Before this change";
    o->pay_words = older->total_words;
    o->sign_head = "Agreed";
    o->agreed = pool_words(m->pool, "To these changes, and to the new total of %s%s%s%s.",
                           o->total_words, card ? " (" : "", newer->other_total, card ? ")" : "");
}

/* --- all of it --- */

/* Lists of its own that hold whatever the two offers say. */
static bool make_room(struct offer_maker *m, const struct offer *older, const struct offer *newer) {
    enum { LISTS = 3, OTHERS = 8 };
    struct offer_texts *const lists[LISTS] = {&m->offer->statements, &m->offer->included,
                                              &m->offer->excluded};
    const size_t room = OTHERS + older->made.count + older->included.count + older->excluded.count +
                        newer->made.count + newer->included.count + newer->excluded.count;
    for (size_t i = 0; i < LISTS; i++) {
        *lists[i] = (struct offer_texts){.text = pool_take(m->pool, room, sizeof *lists[i]->text),
                                         .room = room};
    }
    m->offer->made = (struct offer_texts){0};
    if (same_texts(&older->terms, &newer->terms)) {
        m->offer->terms = (struct offer_texts){0};
    }
    if (same_texts(&older->notes, &newer->notes)) {
        m->offer->notes = (struct offer_texts){0};
    }
    return !pool_failed(m->pool);
}

bool offer_order_make(struct offer *o, const struct offer *older, const struct offer *newer,
                      const struct estimate *newer_estimate) {
    struct offer_maker m = {.offer = o, .pool = &o->pool, .e = newer_estimate};
    *o = *newer;
    pool_init(&o->pool);
    o->paper = "Change order";
    o->kind_count = o->door_count = o->room_count = o->line_count = o->option_count = 0;
    o->reference = pool_words(m.pool, "%s%s", o->paper, newer->reference + strlen(newer->paper));
    if (!make_room(&m, older, newer) || !make_changes(&m, older, newer)) {
        return false;
    }
    say_order(&m, older, newer);
    return !pool_failed(m.pool);
}
