/* SPDX-License-Identifier: MIT */
#include "door/leaf.h"

bool row_folds(const struct row *row) {
    return row->opens.choice == OPENS_BI_FOLD || row->opens.choice == OPENS_PIE_CUT;
}

bool row_hangs_level(const struct row *row) {
    const int opens = row->opens.choice;
    return opens == OPENS_LIFT_UP || opens == OPENS_TILT_OUT || opens == OPENS_DROP_DOWN;
}

bool row_is_hinged(const struct row *row) {
    return row->use.choice == USE_DOOR ||
           (row->use.choice == USE_FALSE_FRONT && row_hangs_level(row));
}

/* Of a pie-cut pair: on which face of the corner. The leaf that hangs is on its hinge side. */
static bool is_left_face(const struct row *row, enum leaf_role role) {
    return (role == LEAF_HUNG) != (row->hinge_side.choice == HINGE_SIDE_RIGHT);
}

const struct value *leaf_measured(const struct row *row, enum leaf_role role) {
    return row->opens.choice == OPENS_PIE_CUT && !is_left_face(row, role) ? &row->second_width
                                                                          : &row->width;
}

/* By how much an opening's door is larger at a side; less than 0: inset. */
static length side_over(const struct construction *construction, enum side side) {
    return construction->fit.choice == FIT_INSET ? -construction->reveal.amount
                                                 : construction->overlay[side].amount;
}

static length opening_to_width(const struct row *row, const struct construction *construction,
                               enum leaf_role role) {
    const length measured = leaf_measured(row, role)->amount;
    const length left = side_over(construction, SIDE_LEFT);
    const length right = side_over(construction, SIDE_RIGHT);
    const int64_t leaves = row->leaves.amount;
    if (row->opens.choice == OPENS_PIE_CUT) {
        return measured + (is_left_face(row, role) ? left : right) - construction->corner.amount;
    }
    if (leaves < 2) {
        return measured + left + right;
    }
    /* to the nearest nm, or half a 64th would be cut as less than half */
    const length all = measured + left + right - (leaves - 1) * construction->gap.amount;
    return (2 * all + leaves) / (2 * leaves);
}

struct leaf leaf_size(const struct row *row, const struct construction *construction,
                      enum leaf_role role, struct size_step step) {
    length width = leaf_measured(row, role)->amount;
    length height = row->height.amount;
    if (construction->size_is.choice == MEASURE_OPENING) {
        width = opening_to_width(row, construction, role);
        height += side_over(construction, SIDE_TOP) + side_over(construction, SIDE_BOTTOM);
    }
    return (struct leaf){.width = size_down(step, length_cut(width, step.unit)),
                         .height = size_down(step, length_cut(height, step.unit))};
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
