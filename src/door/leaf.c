/* SPDX-License-Identifier: MIT */
#include "door/leaf.h"

struct leaf leaf_size(const struct row *row, const struct construction *construction,
                      enum length_unit unit) {
    length width = row->width.amount;
    length height = row->height.amount;
    if (construction->size_is.choice == MEASURE_OPENING) {
        if (construction->fit.choice == FIT_INSET) {
            width -= 2 * construction->reveal.amount;
            height -= 2 * construction->reveal.amount;
        } else {
            width +=
                construction->overlay[SIDE_LEFT].amount + construction->overlay[SIDE_RIGHT].amount;
            height +=
                construction->overlay[SIDE_TOP].amount + construction->overlay[SIDE_BOTTOM].amount;
        }
        const int64_t leaves = row->leaves.amount;
        if (leaves > 1) {
            /* to the nearest nm, or half a 64th would be cut as less than half */
            width = (2 * (width - (leaves - 1) * construction->gap.amount) + leaves) / (2 * leaves);
        }
    }
    return (struct leaf){.width = length_cut(width, unit), .height = length_cut(height, unit)};
}

bool leaf_is_front(const struct row *row) {
    return row->use.choice == USE_DRAWER_FRONT || row->use.choice == USE_FALSE_FRONT;
}

const struct style *leaf_style(const struct rates *rates, const struct style *style,
                               const struct row *row, length height) {
    const bool slab = leaf_is_front(row) && style->slab_below.set && style->slab_style.index >= 0 &&
                      height < style->slab_below.amount;
    return slab ? &rates->styles[style->slab_style.index] : style;
}
