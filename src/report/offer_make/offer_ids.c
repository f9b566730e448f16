/* SPDX-License-Identifier: MIT */
/* How papers name some rows of the list: runs of them by their ends, and many by their kinds. */
#include "base/joined.h"
#include "base/text.h"
#include "report/offer_make/offer_maker.h"

/* More of them than these read worse than the kinds of doors that they are. */
#define MOST_RUNS 3

static void add_id(const struct offer_maker *m, struct joined *ids, const char *between, size_t d) {
    joined_add(ids, ids->size == 0 ? "" : between);
    joined_add(ids, m->offer->doors[d].id);
}

/* Whether a row is among them, by a leaf that hangs on the cabinet or by the one that hangs on it,
 * which follows. */
static bool holds_row(const struct offer_maker *m, const bool *in, size_t d) {
    return in[d] || (offer_leaf(m, d)->door->beside != NULL && in[d + 1]);
}

/* Of the rows of a room that begin with door d, the last one that is among them without a gap; how
 * many these are. */
static size_t last_of_run(const struct offer_maker *m, const bool *in, size_t d, size_t end,
                          size_t *rows) {
    size_t last = d;
    *rows = 1;
    for (size_t k = d + 1; k < end; k++) {
        if (offer_leaf(m, k)->door->role == LEAF_FOLDING) {
            continue;
        }
        if (!holds_row(m, in, k)) {
            break;
        }
        last = k;
        (*rows)++;
    }
    return last;
}

/* `kind B`, `kinds B, D`: where the rows are all that there are of these; NULL: they are not. */
static const char *kinds_of(struct offer_maker *m, const bool *in) {
    const size_t count = m->offer->kind_count;
    bool *const held = pool_take(m->pool, count, sizeof *held);
    bool *const left = pool_take(m->pool, count, sizeof *left);
    const char *text = "";
    size_t kinds = 0;
    for (size_t d = 0; held != NULL && left != NULL && d < m->offer->door_count; d++) {
        if (offer_leaf(m, d)->door->role != LEAF_FOLDING) {
            (holds_row(m, in, d) ? held : left)[m->offer->doors[d].kind] = true;
        }
    }
    for (size_t k = 0; held != NULL && left != NULL && k < count; k++) {
        if (held[k] && left[k]) {
            return NULL;
        }
        if (held[k]) {
            text = pool_words(m->pool, "%s%s%s", text, kinds++ == 0 ? "" : ", ",
                              m->offer->kinds[k].letter);
        }
    }
    return pool_words(m->pool, kinds == 1 ? "kind %s" : "kinds %s", text);
}

const char *offer_ids(struct offer_maker *m, const bool *in, size_t most) {
    struct joined ids = {0};
    size_t runs = 0;
    size_t more = 0; /* rows that are not named */
    for (size_t r = 0; r < m->offer->room_count; r++) {
        const size_t end = m->offer->rooms[r].first + m->offer->rooms[r].count;
        for (size_t d = m->offer->rooms[r].first; d < end; d++) {
            if (offer_leaf(m, d)->door->role == LEAF_FOLDING || !holds_row(m, in, d)) {
                continue;
            }
            size_t rows;
            const size_t last = last_of_run(m, in, d, end, &rows);
            if (runs < most) {
                add_id(m, &ids, ", ", d);
            } else {
                more += rows;
            }
            if (rows > 1 && runs < most) {
                add_id(m, &ids, rows > 2 ? " to " : ", ", last);
            }
            d = last;
            runs++;
        }
    }
    const char *const text = text_or_empty(joined_take(&ids, m->pool));
    const char *const kinds = runs > MOST_RUNS ? kinds_of(m, in) : NULL;
    if (kinds != NULL || more == 0) {
        return kinds != NULL ? kinds : text;
    }
    return pool_words(m->pool, "%s and %zu more", text, more);
}
