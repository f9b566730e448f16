/* SPDX-License-Identifier: MIT */
#include "door/leaf.h"

struct leaf leaf_size(const struct row *row, const struct make *make, enum length_unit unit) {
    length width = row->width.amount;
    length height = row->height.amount;
    if (make->measure.word == MEASURE_OPENING) {
        if (make->fit.word == FIT_INSET) {
            width -= 2 * make->reveal.amount;
            height -= 2 * make->reveal.amount;
        } else {
            width += make->overlay[SIDE_LEFT].amount + make->overlay[SIDE_RIGHT].amount;
            height += make->overlay[SIDE_TOP].amount + make->overlay[SIDE_BOTTOM].amount;
        }
        const int64_t leaves = row->leaves.amount;
        if (leaves > 1) {
            /* to the nearest nm, or half a 64th would be cut as less than half */
            width = (2 * (width - (leaves - 1) * make->gap.amount) + leaves) / (2 * leaves);
        }
    }
    return (struct leaf){.width = length_cut(width, unit), .height = length_cut(height, unit)};
}

bool leaf_is_front(const struct row *row) {
    return row->use.word == USE_DRAWER_FRONT || row->use.word == USE_FALSE_FRONT;
}

bool leaf_is_slab(const struct style *style, const struct row *row, length height) {
    return style->form.word == FORM_SLAB ||
           (leaf_is_front(row) && style->slab_below.set && height < style->slab_below.amount);
}
