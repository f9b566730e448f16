/* SPDX-License-Identifier: MIT */
#include "model/rack.h"

#include "base/text.h"

static bool same_color(const char *a, const char *b) {
    return a == b || (a != NULL && b != NULL && text_same(a, b));
}

const struct rack_item *rack_find(const struct rack *rack, int kind, int32_t index,
                                  const char *color) {
    for (size_t i = 0; i < rack->count; i++) {
        const struct rack_item *const item = &rack->items[i];
        if (item->kind == kind && item->index == index && same_color(item->color.s, color)) {
            return item;
        }
    }
    return NULL;
}
