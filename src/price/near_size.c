/* SPDX-License-Identifier: MIT */
#include "price/near_size.h"

#include "base/order.h"

#include <stdlib.h>

/* What overlay hinges and the eye forgive: common practice, no source. */
#define NEAR_INCH (NM_PER_INCH / 4)
#define NEAR_MM   (6 * NM_PER_MM)

/* A leaf beside others, by the side that is compared. */
struct sized {
    const struct door *leaf;
    length size;
};

/* By all that must be alike. */
static int by_kind(const struct door *a, const struct door *b) {
    const struct row *const x = a->row;
    const struct row *const y = b->row;
    const int order[] = {
        order_by_number(a->construction->style.index, b->construction->style.index),
        order_by_number(a->form, b->form),
        order_by_number(x->use.choice, y->use.choice),
        order_by_number(x->mid_rails.amount, y->mid_rails.amount),
        order_by_number(x->mid_stiles.amount, y->mid_stiles.amount),
        order_by_number(x->lights_wide.amount, y->lights_wide.amount),
        order_by_number(x->lights_high.amount, y->lights_high.amount),
    };
    for (size_t i = 0; i < sizeof order / sizeof *order; i++) {
        if (order[i] != 0) {
            return order[i];
        }
    }
    return 0;
}

static bool is_plain(const struct door *leaf, bool width) {
    return !leaf->bought_in && !row_folds(leaf->row) && leaf->row->arch.amount == 0 &&
           leaf->construction->fit.choice != FIT_INSET && (width || leaf->row->heights.count == 0);
}

bool near_size_kind_same(const struct door *a, const struct door *b, bool width) {
    return is_plain(a, width) && is_plain(b, width) && by_kind(a, b) == 0;
}

/* Leaves of one kind and size stand as in the list. */
static int by_size(const void *x, const void *y) {
    const struct sized *const a = x;
    const struct sized *const b = y;
    const int kind = by_kind(a->leaf, b->leaf);
    const int size = kind != 0 ? kind : order_by_number(a->size, b->size);
    return size != 0 ? size : place_order(a->leaf->row->place, b->leaf->row->place);
}

static void find(struct near_sizes *near, bool width, length most, const struct sized *sized,
                 size_t count) {
    const struct sized *first = sized; /* of its size */
    for (size_t i = 1; i < count; i++) {
        const struct sized *const next = &sized[i];
        const bool one_kind = by_kind(first->leaf, next->leaf) == 0;
        if (one_kind && first->size == next->size) {
            continue;
        }
        if (one_kind && next->size - first->size <= most) {
            near->list[near->count++] = (struct near_size){.width = width,
                                                           .size = {first->size, next->size},
                                                           .leaves = {first->leaf, next->leaf}};
        }
        first = next;
    }
}

bool near_sizes_find(struct near_sizes *near, const struct doors *doors, enum length_unit unit,
                     struct pool *pool) {
    struct sized *const sized = calloc(doors->count, sizeof *sized);
    *near = (struct near_sizes){.list = pool_take(pool, 2 * doors->count, sizeof *near->list)};
    const bool held = sized != NULL && near->list != NULL;
    for (int side = 0; side < 2 && held; side++) {
        const bool width = side == 0;
        size_t count = 0;
        for (size_t d = 0; d < doors->count; d++) {
            const struct door *const leaf = &doors->doors[d];
            if (is_plain(leaf, width)) {
                sized[count++] = (struct sized){leaf, width ? leaf->width : leaf->height};
            }
        }
        qsort(sized, count, sizeof *sized, by_size);
        find(near, width, unit == LENGTH_MM ? NEAR_MM : NEAR_INCH, sized, count);
    }
    free(sized);
    return held;
}
