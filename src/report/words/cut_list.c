/* SPDX-License-Identifier: MIT */
/* All parts, sorted so that what is cut alike stands together; then one pass a table. */
#include "report/words/cut_list.h"

#include "base/order.h"
#include "base/pool.h"
#include "report/words/door_names.h"

#include <stdlib.h>
#include <string.h>

/* A part of a door, and how many of it the job has. */
struct piece {
    const struct part *part;
    const struct door *door;
    int64_t pieces;
    int64_t spares; /* rails beside these */
    length strip;   /* what a saw's fence is set to for it, or for a stave of it */
    int64_t strips; /* how many of these */
    size_t place;   /* in the list */
};

struct lister {
    const struct estimate *e;
    struct pool *pool;
    struct piece *pieces;
    size_t count;
};

static int by_stock(const struct part *a, const struct part *b) {
    const int kind = order_by_number(a->material_kind, b->material_kind);
    const int material = order_by_number(a->material, b->material);
    return kind != 0       ? kind
           : material != 0 ? material
                           : order_by_number(b->thickness, a->thickness);
}

static int by_width(const struct part *a, const struct part *b) {
    const int width = order_by_number(b->width, a->width);
    return width != 0 ? width : order_by_number(b->rough_width, a->rough_width);
}

static int by_length(const struct part *a, const struct part *b) {
    const int along = order_by_number(b->length, a->length);
    return along != 0 ? along : order_by_number(b->rough_length, a->rough_length);
}

static int for_fences(const void *x, const void *y) {
    const struct piece *const a = x;
    const struct piece *const b = y;
    const int stock = by_stock(a->part, b->part);
    const int strip = order_by_number(b->strip, a->strip);
    return stock != 0   ? stock
           : strip != 0 ? strip
                        : order_by_number((int64_t)a->place, (int64_t)b->place);
}

int cut_order(const struct part *a, const struct part *b) {
    const int stock = by_stock(a, b);
    const int along = by_length(a, b);
    return stock != 0 ? stock : along != 0 ? along : by_width(a, b);
}

static int for_stops(const void *x, const void *y) {
    const struct piece *const a = x;
    const struct piece *const b = y;
    const int order = cut_order(a->part, b->part);
    return order != 0 ? order : order_by_number((int64_t)a->place, (int64_t)b->place);
}

/* A length of the tape in nm: sizes that are cut are whole there. */
static length length_of(const struct estimate *e, fig figure) {
    return length_of_millionths(tape_scaled(&e->tape, figure, 6), e->units.lengths);
}

static struct piece make_piece(const struct estimate *e, const struct leaf_figures *leaf, size_t i,
                               size_t place) {
    const struct part_figures *const f = &leaf->parts[i];
    const struct part *const part = &leaf->door->parts[i];
    struct piece piece = {.part = part,
                          .door = leaf->door,
                          .pieces = tape_amount(&e->tape, f->pieces),
                          .spares = spares_count(&e->spares, leaf, i),
                          .strip = part->rough_width,
                          .place = place};
    piece.strips = piece.pieces + piece.spares;
    if (!fig_none(f->stave_width)) {
        piece.strip = length_of(e, f->stave_width);
        piece.strips = tape_amount(&e->tape, f->staves);
    }
    return piece;
}

/* false: out of memory. */
static bool gather(struct lister *l) {
    const struct quantities *const q = &l->e->quantities;
    size_t most = 0;
    for (size_t r = 0; r < q->count; r++) {
        most += q->leaves[r].door->part_count;
    }
    l->pieces = calloc(most + 1, sizeof *l->pieces);
    for (size_t r = 0; l->pieces != NULL && r < q->count; r++) {
        const struct door *const door = q->leaves[r].door;
        for (size_t i = 0; i < door->part_count; i++) {
            if (door->parts[i].material_kind == MATERIAL_GLASS ||
                door->parts[i].material_kind == MATERIAL_NONE) {
                continue;
            }
            l->pieces[l->count] = make_piece(l->e, &q->leaves[r], i, l->count);
            l->count++;
        }
    }
    return l->pieces != NULL;
}

/* How many pieces from `first` on are alike. */
static size_t alike(const struct lister *l, size_t first,
                    int (*differ)(const struct part *, const struct part *)) {
    size_t end = first + 1;
    while (end < l->count && by_stock(l->pieces[first].part, l->pieces[end].part) == 0 &&
           differ(l->pieces[first].part, l->pieces[end].part) == 0) {
        end++;
    }
    return end - first;
}

static int by_size(const struct part *a, const struct part *b) {
    const int along = by_length(a, b);
    return along != 0 ? along : by_width(a, b);
}

static int never(const struct part *a, const struct part *b) {
    (void)a;
    (void)b;
    return 0;
}

/* --- words --- */

static const char *part_words(struct lister *l, const struct piece *pieces, size_t count) {
    bool named[PART_KIND_COUNT] = {false};
    const char *words = "";
    for (size_t i = 0; i < count; i++) {
        const enum part_kind kind = pieces[i].part->kind;
        if (!named[kind]) {
            words = pool_words(l->pool, "%s%s%s", words, words[0] == '\0' ? "" : ", ",
                               part_kind_name(kind));
        }
        named[kind] = true;
    }
    return words;
}

/* Two parts of a door that are cut alike, as top and bottom rail, are named as one. */
static const char *door_words(struct lister *l, const struct piece *pieces, size_t count) {
    struct door_names names = {0};
    int64_t spares = 0;
    for (size_t i = 0; i < count;) {
        int64_t of_door = 0;
        size_t end = i;
        for (; end < count && pieces[end].door == pieces[i].door; end++) {
            of_door += pieces[end].pieces;
            spares += pieces[end].spares;
        }
        door_names_add(&names, l->pool, pieces[i].door->name, of_door);
        i = end;
    }
    const char *const words = door_names_end(&names, l->pool);
    return spares == 0 ? words : pool_words(l->pool, "%s, %lld spare", words, (long long)spares);
}

/* --- tables --- */

static bool make_fences(struct lister *l, struct cut_run *stock, size_t first, size_t count) {
    struct cut_fence *const fences = pool_take(l->pool, count, sizeof *fences);
    for (size_t i = first; fences != NULL && i < first + count;) {
        struct cut_fence *const fence = &fences[stock->fence_count++];
        *fence = (struct cut_fence){.width = l->pieces[i].strip};
        for (; i < first + count && l->pieces[i].strip == fence->width; i++) {
            fence->strips += l->pieces[i].strips;
            fence->run += l->pieces[i].strips * l->pieces[i].part->rough_length;
        }
    }
    stock->fences = fences;
    return fences != NULL;
}

static bool make_gangs(struct lister *l, struct cut_run *stock, size_t first, size_t count) {
    struct cut_gang *const gangs = pool_take(l->pool, count, sizeof *gangs);
    for (size_t i = first; gangs != NULL && i < first + count;) {
        const struct part *const part = l->pieces[i].part;
        const size_t same = alike(l, i, by_size);
        struct cut_gang *const gang = &gangs[stock->gang_count++];
        *gang =
            (struct cut_gang){.width = part->width,
                              .length = part->length,
                              .rough_width = part->rough_width,
                              .rough_length = part->rough_length,
                              .parts = part_words(l, &l->pieces[i], same),
                              .doors = door_words(l, &l->pieces[i], same),
                              .stop = i == first || by_length(l->pieces[i - 1].part, part) != 0};
        for (const size_t end = i + same; i < end; i++) {
            gang->pieces += l->pieces[i].pieces + l->pieces[i].spares;
        }
    }
    stock->gangs = gangs;
    return gangs != NULL;
}

bool cut_list_make(struct cut_list *list, struct pool *pool, const struct estimate *estimate) {
    struct lister l = {.e = estimate, .pool = pool};
    *list = (struct cut_list){0};
    bool held = gather(&l);
    struct cut_run *const stocks = pool_take(pool, l.count + 1, sizeof *stocks);
    held = held && stocks != NULL;
    for (int pass = 0; held && pass < 2; pass++) {
        qsort(l.pieces, l.count, sizeof *l.pieces, pass == 0 ? for_fences : for_stops);
        size_t at = 0;
        for (size_t i = 0; held && i < l.count; at++) {
            const size_t same = alike(&l, i, never);
            const struct part *const part = l.pieces[i].part;
            stocks[at].kind = part->material_kind;
            stocks[at].material = part->material;
            stocks[at].thickness = part->thickness;
            held = pass == 0 ? make_fences(&l, &stocks[at], i, same)
                             : make_gangs(&l, &stocks[at], i, same);
            i += same;
        }
        list->count = at;
    }
    list->stocks = stocks;
    free(l.pieces);
    return held && !pool_failed(pool);
}
