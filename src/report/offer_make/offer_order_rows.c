/* SPDX-License-Identifier: MIT */
/* Rows of a change order: those of two offers that are not the same to the client, by their ids. */
#include "base/index.h"
#include "report/offer_make/offer_maker.h"

#include <stdlib.h>
#include <string.h>

/* The doors of one row of the list, which stand behind each other. */
struct run {
    const struct offer *offer;
    size_t first, count;
};

static struct run run_at(const struct offer *o, size_t first) {
    struct run run = {.offer = o, .first = first, .count = 1};
    while (first + run.count < o->door_count &&
           strcmp(o->doors[first].id, o->doors[first + run.count].id) == 0) {
        run.count++;
    }
    return run;
}

static const struct offer_door *door_of(const struct run *run, size_t i) {
    return &run->offer->doors[run->first + i];
}

static const char *kind_of(const struct run *run, size_t i) {
    return run->offer->kinds[door_of(run, i)->kind].words;
}

static int64_t amount_of(const struct run *run) {
    int64_t amount = 0;
    for (size_t i = 0; i < run->count; i++) {
        amount += door_of(run, i)->amount.value;
    }
    return amount;
}

/* `2 of 16 13/16 x 17 1/2`, of all doors of the row. */
static const char *size_words(struct offer_maker *m, const struct run *run) {
    const char *all = "";
    for (size_t i = 0; i < run->count; i++) {
        const struct offer_door *const d = door_of(run, i);
        all = pool_words(m->pool, "%s%s%s of %s x %s", all, i == 0 ? "" : " and ", d->count.text,
                         d->width.text, d->height.text);
    }
    return all;
}

static const char *whole_words(struct offer_maker *m, const struct run *run) {
    const char *const kind = kind_of(run, 0);
    const char *more = door_of(run, 0)->words;
    const size_t use = strcspn(more, ";");
    if (use > 0 && strncmp(kind, more, use) == 0) { /* `door`, which the kind begins with */
        more += use;
        more += strspn(more, "; ");
    }
    return pool_words(m->pool, "%s: %s%s%s", size_words(m, run), kind, more[0] == '\0' ? "" : "; ",
                      more);
}

/* Puts `was, now is` behind what is said already, where these differ. */
static const char *say_otherwise(struct offer_maker *m, const char *said, const char *was,
                                 const char *is) {
    if (strcmp(was, is) == 0) {
        return said;
    }
    return pool_words(m->pool, "%s%s%s, now %s", said, said[0] == '\0' ? "" : "; ",
                      was[0] == '\0' ? "nothing said" : was, is[0] == '\0' ? "nothing said" : is);
}

/* `2 doors in each`: of each opening. */
static const char *leaves_words(struct offer_maker *m, const struct run *run) {
    const char *const leaves = door_of(run, 0)->leaves.text;
    return pool_words(m->pool, "%s door%s in each", leaves, strcmp(leaves, "1") == 0 ? "" : "s");
}

/* What is otherwise; "": nothing is. */
static const char *change_words(struct offer_maker *m, const struct run *older,
                                const struct run *newer) {
    const char *words = say_otherwise(m, "", size_words(m, older), size_words(m, newer));
    words = say_otherwise(m, words, leaves_words(m, older), leaves_words(m, newer));
    words = say_otherwise(m, words, kind_of(older, 0), kind_of(newer, 0));
    return say_otherwise(m, words, door_of(older, 0)->words, door_of(newer, 0)->words);
}

static bool is_id(const void *list, size_t number, const void *thing) {
    return strcmp(((const char *const *)list)[number], thing) == 0;
}

struct rows {
    struct offer_maker *m;
    struct offer_changes *changes;
    const char **ids; /* of doors of the older offer, then of the newer */
    size_t *newer_at; /* where the older's row begins in the newer; SIZE_MAX: nowhere */
    size_t *older_at; /* likewise */
};

static void add(struct rows *r, enum offer_change_kind kind, const struct run *run,
                const char *words, int64_t amount) {
    r->changes->rows[r->changes->row_count++] =
        (struct offer_change){.kind = kind,
                              .id = door_of(run, 0)->id,
                              .words = words,
                              .amount = offer_signed(r->m, amount)};
}

/* Where rows of the same id begin in both. */
static bool find_rows(struct rows *r, const struct offer *older, const struct offer *newer) {
    struct index index = {0};
    bool failed = false;
    for (size_t n = 0; n < older->door_count + newer->door_count; n++) {
        const bool old = n < older->door_count;
        const size_t at = old ? n : n - older->door_count;
        r->ids[n] = (old ? older : newer)->doors[at].id;
        const size_t found = index_add(&index, hash_name(HASH_START, r->ids[n]), is_id, r->ids,
                                       r->ids[n], n, &failed);
        (old ? r->newer_at : r->older_at)[at] = SIZE_MAX;
        if (!old && found < older->door_count) {
            r->older_at[at] = found;
            r->newer_at[found] = r->newer_at[found] == SIZE_MAX ? at : r->newer_at[found];
        }
    }
    index_clear(&index);
    return !failed;
}

static void take_off(struct rows *r, const struct offer *older) {
    for (size_t i = 0; i < older->door_count;) {
        const struct run run = run_at(older, i);
        if (r->newer_at[i] == SIZE_MAX) {
            add(r, OFFER_TAKEN_OFF, &run, whole_words(r->m, &run), -amount_of(&run));
        }
        i += run.count;
    }
}

/* Rows that are changed, or those that are added. */
static void put_newer(struct rows *r, const struct offer *older, const struct offer *newer,
                      bool added) {
    for (size_t i = 0; i < newer->door_count;) {
        const struct run run = run_at(newer, i);
        const bool is_new = r->older_at[i] == SIZE_MAX;
        if (is_new && added) {
            add(r, OFFER_ADDED, &run, whole_words(r->m, &run), amount_of(&run));
        } else if (!is_new && !added) {
            const struct run was = run_at(older, r->older_at[i]);
            const char *const words = change_words(r->m, &was, &run);
            if (words[0] != '\0') {
                add(r, OFFER_CHANGED, &run, words, amount_of(&run) - amount_of(&was));
            }
        }
        i += run.count;
    }
}

bool offer_order_rows(struct offer_maker *m, struct offer_changes *changes,
                      const struct offer *older, const struct offer *newer) {
    const size_t all = older->door_count + newer->door_count;
    struct rows rows = {
        .m = m,
        .changes = changes,
        .ids = pool_take(m->pool, all, sizeof *rows.ids),
        .newer_at = pool_take(m->pool, older->door_count, sizeof *rows.newer_at),
        .older_at = pool_take(m->pool, newer->door_count, sizeof *rows.older_at),
    };
    changes->rows = pool_take(m->pool, all, sizeof *changes->rows);
    if (pool_failed(m->pool) || !find_rows(&rows, older, newer)) {
        return false;
    }
    take_off(&rows, older);
    put_newer(&rows, older, newer, false);
    put_newer(&rows, older, newer, true);
    return !pool_failed(m->pool);
}
