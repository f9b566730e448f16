/* SPDX-License-Identifier: MIT */
#include "report/words/bore_list.h"

#include "base/order.h"
#include "base/pool.h"
#include "report/words/door_names.h"
#include "report/words/show.h"

#include <stdlib.h>

/* A leaf that is bored, and where it stands among them. */
struct bored {
    const struct leaf_figures *leaf;
    int64_t count; /* hinges of it */
    size_t place;
};

/* Whether bores of leaves are alike; else in which order they are listed. */
static int by_bores(const struct bored *a, const struct bored *b) {
    const struct door *const x = a->leaf->door;
    const struct door *const y = b->leaf->door;
    const int hinge = order_by_number(door_hinge(x)->index, door_hinge(y)->index);
    const int level = order_by_number(row_hangs_level(x->row), row_hangs_level(y->row));
    const int edge = order_by_number(door_hinged_edge(y), door_hinged_edge(x));
    const int count = order_by_number(a->count, b->count);
    int order = hinge != 0 ? hinge : level != 0 ? level : edge != 0 ? edge : count;
    for (int64_t i = 0; order == 0 && i < a->count; i++) {
        order = order_by_number(a->leaf->hinge_at[i], b->leaf->hinge_at[i]);
    }
    return order;
}

static int in_order(const void *x, const void *y) {
    const struct bored *const a = x;
    const struct bored *const b = y;
    const int order = by_bores(a, b);
    return order != 0 ? order : order_by_number((int64_t)a->place, (int64_t)b->place);
}

static const char *places_of(struct pool *pool, const struct estimate *e,
                             const struct bored *bored) {
    const char *words = "";
    for (int64_t i = 0; i < bored->count; i++) {
        char at[64];
        words =
            pool_words(pool, "%s%s%s", words, i == 0 ? "" : ", ",
                       show_unbroken(bored->leaf->hinge_at[i], e->units.lengths, at, sizeof at));
    }
    return words;
}

static struct bored bored_of(const struct estimate *e, const struct leaf_figures *leaf,
                             size_t place) {
    return (struct bored){leaf, tape_amount(&e->tape, leaf->hinges), place};
}

/* All leaves from `bored` on that are alike, count of them, as one group. */
static struct bore_group group_of(struct pool *pool, const struct estimate *e,
                                  const struct bored *bored, size_t count) {
    const struct door *const door = bored->leaf->door;
    struct bore_group group = {.hinge = door_hinge(door)->index,
                               .level = row_hangs_level(door->row),
                               .edge = door_hinged_edge(door),
                               .places = places_of(pool, e, bored)};
    struct door_names names = {0};
    for (size_t i = 0; i < count; i++) {
        const int64_t leaves = tape_amount(&e->tape, bored[i].leaf->pieces);
        group.hinges += leaves * bored[i].count;
        door_names_add(&names, pool, bored[i].leaf->door->name, leaves);
    }
    group.doors = door_names_end(&names, pool);
    return group;
}

bool bore_list_make(struct bore_list *list, struct pool *pool, const struct estimate *e) {
    const struct quantities *const q = &e->quantities;
    struct bored *const bored = calloc(q->count + 1, sizeof *bored);
    struct bore_group *const groups = pool_take(pool, q->count + 1, sizeof *groups);
    size_t count = 0;
    *list = (struct bore_list){.groups = groups};
    for (size_t r = 0; bored != NULL && r < q->count; r++) {
        if (q->leaves[r].hinge_at != NULL) {
            bored[count] = bored_of(e, &q->leaves[r], count);
            count++;
        }
    }
    if (bored != NULL && groups != NULL) {
        qsort(bored, count, sizeof *bored, in_order);
        for (size_t i = 0; i < count;) {
            size_t end = i + 1;
            while (end < count && by_bores(&bored[i], &bored[end]) == 0) {
                end++;
            }
            groups[list->count++] = group_of(pool, e, &bored[i], end - i);
            i = end;
        }
    }
    const bool held = bored != NULL && !pool_failed(pool);
    free(bored);
    return held;
}

const char *bore_places(struct pool *pool, const struct estimate *e,
                        const struct leaf_figures *leaf) {
    const struct bored bored = bored_of(e, leaf, 0);
    return leaf->hinge_at == NULL
               ? ""
               : pool_words(pool, "%s from the %s end", places_of(pool, e, &bored),
                            row_hangs_level(leaf->door->row) ? "left" : "upper");
}

static const char *tenths(length value, char *text, size_t size) {
    return show_unbroken(value, value % (NM_PER_MM / 10) == 0 ? LENGTH_MM : LENGTH_INCH, text,
                         size);
}

static const char *unit_of(length value) {
    return value % (NM_PER_MM / 10) == 0 ? "mm" : "in";
}

const char *bore_cup(struct pool *pool, const struct hardware *hinge) {
    const length cup = hinge->cup.amount;
    const length center = hinge->cup_center.amount;
    char texts[2][64];
    return !hinge->cup.set ? ""
                           : pool_words(pool, "cup %s %s, center %s %s from the edge",
                                        tenths(cup, texts[0], sizeof texts[0]), unit_of(cup),
                                        tenths(center, texts[1], sizeof texts[1]), unit_of(center));
}
