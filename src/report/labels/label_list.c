/* SPDX-License-Identifier: MIT */
#include "report/labels/label_list.h"

#include "base/order.h"
#include "report/words/cut_list.h"

#include <stdlib.h>

/* What labels are listed from. */
struct lister {
    const struct estimate *e;
    const size_t *rows;
    size_t row_count;
    struct label_list *list;
};

static bool is_wanted(const struct lister *l, const struct door *door) {
    const size_t row = (size_t)(door->row - l->e->job->rows);
    bool wanted = l->row_count == 0;
    for (size_t i = 0; i < l->row_count && !wanted; i++) {
        wanted = l->rows[i] == row;
    }
    return wanted;
}

static int64_t pieces_of(const struct lister *l, fig figure) {
    return tape_amount(&l->e->tape, figure);
}

/* How many labels a leaf of the list takes. */
static int64_t count_leaf(const struct lister *l, const struct leaf_figures *leaf) {
    int64_t count = 0;
    if (l->list->of == LABEL_OF_DOORS) {
        return pieces_of(l, leaf->pieces);
    }
    for (size_t i = 0; i < leaf->door->part_count; i++) {
        count += pieces_of(l, leaf->parts[i].pieces);
    }
    return count;
}

/* The labels of one opening's leaf. */
static void add_leaf(struct label_list *list, struct label label) {
    const struct door *const door = label.leaf->door;
    if (list->of == LABEL_OF_DOORS) {
        list->labels[list->count++] = label;
        return;
    }
    for (size_t i = 0; i < door->part_count; i++) {
        label.part = &door->parts[i];
        for (label.piece = 1; label.piece <= label.part->count; label.piece++) {
            list->labels[list->count++] = label;
        }
    }
}

static int by_cutting(const void *x, const void *y) {
    const struct label *const a = x;
    const struct label *const b = y;
    const int order = cut_order(a->part, b->part);
    const int number = order_by_number(a->number, b->number);
    const int part =
        order_by_number(a->part - a->leaf->door->parts, b->part - b->leaf->door->parts);
    return order != 0    ? order
           : number != 0 ? number
           : part != 0   ? part
                         : order_by_number(a->piece, b->piece);
}

static void add_all(struct lister *l) {
    const struct quantities *const q = &l->e->quantities;
    int32_t number = 0;
    for (size_t r = 0; r < q->count; r++) {
        const struct door *const door = q->leaves[r].door;
        const bool wanted = is_wanted(l, door);
        struct label label = {.leaf = &q->leaves[r]};
        for (label.opening = 1; label.opening <= door->row->count.amount; label.opening++) {
            for (label.hung = 1; label.hung <= door->leaves; label.hung++) {
                label.number = ++number;
                if (wanted) {
                    add_leaf(l->list, label);
                }
            }
        }
    }
}

bool label_list_make(struct label_list *list, struct pool *pool, const struct estimate *e,
                     enum label_of of, const size_t *rows, size_t row_count) {
    struct lister l = {.e = e, .rows = rows, .row_count = row_count, .list = list};
    *list = (struct label_list){.of = of};
    for (size_t r = 0; r < e->quantities.count; r++) {
        if (is_wanted(&l, e->quantities.leaves[r].door)) {
            list->wanted += count_leaf(&l, &e->quantities.leaves[r]);
        }
    }
    if (list->wanted > MOST_LABELS) {
        return true;
    }
    list->labels = pool_take(pool, (size_t)list->wanted, sizeof *list->labels);
    if (list->labels == NULL) {
        return false;
    }
    add_all(&l);
    if (of == LABEL_OF_PARTS) {
        qsort(list->labels, list->count, sizeof *list->labels, by_cutting);
    }
    return true;
}
