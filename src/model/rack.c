/* SPDX-License-Identifier: MIT */
#include "model/rack.h"

#include "base/text.h"

static bool same_color(const char *a, const char *b) {
    return a == b || (a != NULL && b != NULL && text_same(a, b));
}

size_t rack_next(const struct rack *rack, int kind, int32_t index, size_t from) {
    size_t i = from;
    while (i < rack->count && (rack->items[i].kind != kind || rack->items[i].index != index)) {
        i++;
    }
    return i;
}

const struct rack_item *rack_find(const struct rack *rack, int kind, int32_t index,
                                  const char *color) {
    for (size_t i = 0; (i = rack_next(rack, kind, index, i)) < rack->count; i++) {
        if (same_color(rack->items[i].color.s, color)) {
            return &rack->items[i];
        }
    }
    return NULL;
}

bool rack_has(const struct rack *rack, int kind, int32_t index) {
    size_t i = rack_next(rack, kind, index, 0);
    while (i < rack->count && rack->items[i].left.amount == 0) {
        i = rack_next(rack, kind, index, i + 1);
    }
    return i < rack->count;
}

static bool same_side(const struct value *a, const struct value *b) {
    return a->set == b->set && (!a->set || a->amount == b->amount);
}

const struct rack_item *rack_same(const struct rack *rack, const struct rack_item *item) {
    for (size_t i = 0; (i = rack_next(rack, item->kind, item->index, i)) < rack->count; i++) {
        const struct rack_item *const other = &rack->items[i];
        if (same_color(other->color.s, item->color.s) && same_side(&other->width, &item->width) &&
            same_side(&other->length, &item->length) && other->sawn == item->sawn) {
            return other;
        }
    }
    return NULL;
}
