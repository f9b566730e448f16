/* SPDX-License-Identifier: MIT */
#include "door/frame.h"

#include <assert.h>

/* Shares space among count openings; each is cut to the unit's step, the last takes what remains.
 */
static void share(length space, int32_t count, enum length_unit unit, length *out) {
    const length each = length_cut(space / count, unit);
    for (int32_t i = 0; i + 1 < count; i++) {
        out[i] = each;
    }
    out[count - 1] = space - each * (count - 1);
}

static void set_widths(struct frame *frame, const struct door *door) {
    const struct style *const style = door->style;
    const bool front = door->row->use.word == USE_DRAWER_FRONT && style->drawer_rail.set;
    *frame = (struct frame){
        .stile = style->stile.amount,
        .top_rail = front ? style->drawer_rail.amount : style->top_rail.amount,
        .bottom_rail = front ? style->drawer_rail.amount : style->bottom_rail.amount,
        .mid_rail = style->mid_rail.amount,
        .mid_stile = style->mid_stile.amount,
        .mitred = style->joint.word == JOINT_MITRE,
        .tongue = style->joint.word == JOINT_DOWEL ? 0 : style->tongue.amount,
        .rows = (int32_t)door->row->mid_rails.amount + 1,
        .columns = (int32_t)door->row->mid_stiles.amount + 1,
    };
    if (door->row->heights.count > 0) {
        frame->rows = (int32_t)door->row->heights.count;
    }
}

enum frame_fault frame_divide(struct frame *frame, const struct door *door, enum length_unit unit,
                              length *space) {
    set_widths(frame, door);
    assert(frame->rows <= FRAME_MOST_ROWS && frame->columns <= FRAME_MOST_COLUMNS);
    if (frame->mitred && (frame->stile != frame->top_rail || frame->stile != frame->bottom_rail)) {
        return FRAME_MITRE_UNEQUAL;
    }
    const length across = door->width - 2 * frame->stile - (frame->columns - 1) * frame->mid_stile;
    const length down =
        door->height - frame->top_rail - frame->bottom_rail - (frame->rows - 1) * frame->mid_rail;
    *space = down;
    if (across <= 0) {
        return FRAME_TOO_NARROW;
    }
    if (down <= 0) {
        return FRAME_TOO_LOW;
    }
    share(across, frame->columns, unit, frame->column);
    if (door->row->heights.count == 0) {
        share(down, frame->rows, unit, frame->row);
    } else {
        length given = 0;
        for (int32_t i = 0; i < frame->rows; i++) {
            frame->row[i] = door->row->heights.v[i].amount;
            given += frame->row[i];
        }
        if (given != down) {
            return FRAME_ROWS_DIFFER;
        }
    }
    /* A door so small that a rounded share ate the last opening. */
    if (frame->column[frame->columns - 1] <= 0) {
        return FRAME_TOO_NARROW;
    }
    return frame->row[frame->rows - 1] <= 0 ? FRAME_TOO_LOW : FRAME_OK;
}
