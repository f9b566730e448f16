/* SPDX-License-Identifier: MIT */
#include "door/frame.h"

#include <assert.h>

/* Shares space among count openings; each is rounded to the step, the last takes what remains. */
static void share(length space, int32_t count, struct size_step step, length *out) {
    const length each = size_nearest(step, length_cut(space / count, step.unit));
    for (int32_t i = 0; i + 1 < count; i++) {
        out[i] = each;
    }
    out[count - 1] = space - each * (count - 1);
}

static void set_widths(struct frame *frame, const struct style *style, const struct row *row) {
    const bool front = leaf_is_front(row) && style->drawer_rail.set;
    *frame = (struct frame){
        .stile = style->stile.amount,
        .top_rail = front ? style->drawer_rail.amount : style->top_rail.amount,
        .bottom_rail = front ? style->drawer_rail.amount : style->bottom_rail.amount,
        .mid_rail = style->mid_rail.amount,
        .mid_stile = style->mid_stile.amount,
        .rise = row->arch.amount,
        .mitered = style->joint.choice == JOINT_MITER,
        .tongue = style->joint.choice == JOINT_DOWEL ? 0 : style->tongue.amount,
        .rows = row->heights.count > 0 ? (int32_t)row->heights.count
                                       : (int32_t)row->mid_rails.amount + 1,
        .columns = (int32_t)row->mid_stiles.amount + 1,
    };
    assert(frame->rows <= FRAME_MOST_ROWS && frame->columns <= FRAME_MOST_COLUMNS);
}

length frame_across(const struct frame *frame) {
    return 2 * frame->stile + (frame->columns - 1) * frame->mid_stile;
}

length frame_down(const struct frame *frame) {
    return frame->top_rail + frame->bottom_rail + (frame->rows - 1) * frame->mid_rail;
}

/* Given heights, the last with what they miss of the space: less than a step, by which sizes were
 * rounded. */
static bool take_given(struct frame *frame, const struct values *heights, length space,
                       struct size_step step) {
    const length cut = step.unit == LENGTH_INCH ? NM_PER_64TH : NM_PER_TENTH_MM;
    const length off = step.step > cut ? step.step : cut;
    length rest = space;
    for (int32_t i = 0; i < frame->rows; i++) {
        frame->row[i] = heights->v[i].amount;
        rest -= frame->row[i];
    }
    frame->row[frame->rows - 1] += rest;
    return rest < off && rest > -off;
}

/* Whether the arches of the top row can be cut, of a frame that is divided. */
static enum frame_fault arch_fault(const struct frame *frame) {
    if (frame->rise == 0) {
        return FRAME_OK;
    }
    if (frame->mitered) {
        return FRAME_ARCH_MITERED;
    }
    for (int32_t c = 0; c < frame->columns; c++) {
        if (2 * frame->rise > frame->column[c]) {
            return FRAME_ARCH_HIGH;
        }
    }
    return frame->rise >= frame->row[0] ? FRAME_ARCH_HIGH : FRAME_OK;
}

enum frame_fault frame_divide(struct frame *frame, const struct style *style, const struct row *row,
                              struct leaf leaf, struct size_step step) {
    set_widths(frame, style, row);
    const length across = leaf.width - frame_across(frame);
    const length down = leaf.height - frame_down(frame);
    if (across <= 0) {
        return FRAME_TOO_NARROW;
    }
    if (down <= 0) {
        return FRAME_TOO_LOW;
    }
    share(across, frame->columns, step, frame->column);
    if (row->heights.count == 0) {
        share(down, frame->rows, step, frame->row);
    } else if (!take_given(frame, &row->heights, down, step)) {
        return FRAME_ROWS_DIFFER;
    }
    /* A leaf so small that a share was rounded to nothing, or ate the last opening. */
    if (frame->column[0] <= 0 || frame->column[frame->columns - 1] <= 0) {
        return FRAME_TOO_NARROW;
    }
    return frame->row[0] <= 0 || frame->row[frame->rows - 1] <= 0 ? FRAME_TOO_LOW
                                                                  : arch_fault(frame);
}
