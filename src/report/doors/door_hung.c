/* SPDX-License-Identifier: MIT */
#include "report/doors/door_hung.h"

/* A mark is this long and thick, and stands off its edge. */
#define MARK_LONG (50 * NM_PER_MM)
#define MARK_DEEP (12 * NM_PER_MM)
/* From a corner to the middle of the first mark, at most a fifth of the edge. */
#define MARK_FROM_CORNER (90 * NM_PER_MM)
/* The mark of an inner corner, as it is seen from above, stands so far below the upper edge and
 * runs so far to each side, at most a fifth of the leaf. */
#define CORNER_MARK (40 * NM_PER_MM)

void elevation_put_box(struct elevation *e, struct elevation_box box) {
    e->boxes[e->box_count++] = box;
}

void elevation_add_box(struct elevation *e, enum trait trait, length x, length y, length width,
                       length height) {
    elevation_put_box(e, (struct elevation_box){
                             .trait = trait, .x = x, .y = y, .width = width, .height = height});
}

void elevation_add_stroke(struct elevation *e, enum stroke_kind kind, length x1, length y1,
                          length x2, length y2) {
    e->strokes[e->stroke_count++] =
        (struct elevation_stroke){.kind = kind, .x1 = x1, .y1 = y1, .x2 = x2, .y2 = y2};
}

enum hinge_edge hung_edge(const struct door *door, int32_t hinges) {
    const struct row *const row = door->row;
    if (row_hangs_level(row)) {
        return row->opens.choice == OPENS_LIFT_UP ? EDGE_TOP : EDGE_BOTTOM;
    }
    if (!row_is_hinged(row) || (hinges <= 0 && door->beside == NULL)) {
        return EDGE_NONE;
    }
    if (door->leaves > 1) {
        return EDGE_LEFT;
    }
    switch ((enum hinge_side)row->hinge_side.choice) {
    case HINGE_SIDE_LEFT:
    case HINGE_SIDE_PAIR:
        return EDGE_LEFT;
    case HINGE_SIDE_RIGHT:
        return door->beside == NULL ? EDGE_RIGHT : EDGE_LEFT;
    case HINGE_SIDE_OPEN:
        break;
    }
    return EDGE_NONE;
}

/* From the far corners of a leaf to the middle of its hinged edge. */
static void mark_opening(struct elevation *e, enum hinge_edge edge) {
    const length w = e->width;
    const length h = e->height;
    const struct {
        length x, y, x1, y1, x2, y2; /* the middle of the edge, the corners */
    } lines[] = {
        [EDGE_LEFT] = {0, h / 2, w, 0, w, h},
        [EDGE_RIGHT] = {w, h / 2, 0, 0, 0, h},
        [EDGE_TOP] = {w / 2, 0, 0, h, w, h},
        [EDGE_BOTTOM] = {w / 2, h, 0, 0, w, 0},
    };
    if (edge == EDGE_NONE) {
        return;
    }
    elevation_add_stroke(e, STROKE_OPENING, lines[edge].x1, lines[edge].y1, lines[edge].x,
                         lines[edge].y);
    elevation_add_stroke(e, STROKE_OPENING, lines[edge].x2, lines[edge].y2, lines[edge].x,
                         lines[edge].y);
}

/* The cup of a hinge, seen from behind the leaf. */
static void mark_bore(struct elevation *e, length middle) {
    const length near = e->cup_center - e->cup / 2;
    const length along = middle - e->cup / 2;
    const bool upright = e->edge == EDGE_LEFT || e->edge == EDGE_RIGHT;
    const length across = e->edge == EDGE_LEFT || e->edge == EDGE_TOP
                              ? near
                              : (upright ? e->width : e->height) - near - e->cup;
    elevation_add_box(e, TRAIT_BORE, upright ? across : along, upright ? along : across, e->cup,
                      e->cup);
}

static void mark_hinges(struct elevation *e) {
    const bool upright = e->edge == EDGE_LEFT || e->edge == EDGE_RIGHT;
    const length along = upright ? e->height : e->width;
    const length corner = MARK_FROM_CORNER < along / 5 ? MARK_FROM_CORNER : along / 5;
    const length size = MARK_LONG < along / 6 ? MARK_LONG : along / 6;
    const int32_t count = e->hinges < MOST_HINGE_MARKS ? e->hinges : MOST_HINGE_MARKS;
    for (int32_t i = 0; e->edge != EDGE_NONE && i < count; i++) {
        const length middle = e->hinge_at != NULL ? e->hinge_at[i]
                              : count == 1        ? along / 2
                                                  : corner + (along - 2 * corner) * i / (count - 1);
        const length at = middle - size / 2;
        if (e->hinge_at != NULL && e->cup > 0) {
            mark_bore(e, middle);
        }
        switch (e->edge) {
        case EDGE_LEFT:
            elevation_add_box(e, TRAIT_HINGE, -MARK_DEEP, at, MARK_DEEP, size);
            break;
        case EDGE_RIGHT:
            elevation_add_box(e, TRAIT_HINGE, e->width, at, MARK_DEEP, size);
            break;
        case EDGE_TOP:
            elevation_add_box(e, TRAIT_HINGE, at, -MARK_DEEP, size, MARK_DEEP);
            break;
        case EDGE_BOTTOM:
            elevation_add_box(e, TRAIT_HINGE, at, e->height, size, MARK_DEEP);
            break;
        case EDGE_NONE:
            break;
        }
    }
}

void hung_mark(struct elevation *e) {
    mark_hinges(e);
    mark_opening(e, e->edge);
}

void hung_beside(struct elevation *e, const struct elevation *hung, length gap) {
    const length by = hung->width + gap;
    size_t kept = hung->dimension_count;
    mark_opening(e, EDGE_LEFT);
    for (size_t i = hung->box_count; i < e->box_count; i++) {
        e->boxes[i].x += by;
    }
    for (size_t i = hung->stroke_count; i < e->stroke_count; i++) {
        e->strokes[i].x1 += by;
        e->strokes[i].x2 += by;
    }
    for (size_t i = kept; e->width != hung->width && i < e->dimension_count; i++) {
        if (!e->dimensions[i].upright) {
            e->dimensions[kept] = e->dimensions[i];
            e->dimensions[kept].from += by;
            e->dimensions[kept++].to += by;
        }
    }
    e->dimension_count = kept;
    e->width += by;
}

void hung_corner(struct elevation *e, length x) {
    const length most = e->height / 5;
    const length by = CORNER_MARK < most ? CORNER_MARK : most;
    elevation_add_stroke(e, STROKE_CORNER, x - by, 2 * by, x, by);
    elevation_add_stroke(e, STROKE_CORNER, x, by, x + by, 2 * by);
}

/* A box and a stroke as a mirror shows them that stands at x = right / 2. */
static struct elevation_box box_in_mirror(struct elevation_box b, length right) {
    b.x = right - b.x - b.width;
    return b;
}

static struct elevation_stroke stroke_in_mirror(struct elevation_stroke s, length right) {
    s.x1 = right - s.x1;
    s.x2 = right - s.x2;
    return s;
}

void hung_mirror(struct elevation *e, length gap) {
    const length right = 2 * e->width + gap;
    const size_t boxes = e->box_count;
    const size_t strokes = e->stroke_count;
    for (size_t i = 0; i < boxes; i++) {
        e->boxes[e->box_count++] = box_in_mirror(e->boxes[i], right);
    }
    for (size_t i = 0; i < strokes; i++) {
        e->strokes[e->stroke_count++] = stroke_in_mirror(e->strokes[i], right);
    }
    e->width = right;
}

/* Level dimensions ascend in the mirror, too, when their order is turned. */
static void turn_dimensions(struct elevation *e) {
    size_t low = 0;
    size_t high = e->dimension_count;
    for (size_t i = 0; i < e->dimension_count; i++) {
        struct elevation_dimension *const d = &e->dimensions[i];
        const length from = d->from;
        d->from = d->upright ? from : e->width - d->to;
        d->to = d->upright ? d->to : e->width - from;
    }
    while (low < high) {
        if (e->dimensions[low].upright) {
            low++;
        } else if (e->dimensions[high - 1].upright) {
            high--;
        } else {
            const struct elevation_dimension swapped = e->dimensions[low];
            e->dimensions[low++] = e->dimensions[high - 1];
            e->dimensions[--high] = swapped;
        }
    }
}

void hung_turn(struct elevation *e, bool dimensions) {
    for (size_t i = 0; i < e->box_count; i++) {
        e->boxes[i] = box_in_mirror(e->boxes[i], e->width);
    }
    for (size_t i = 0; i < e->stroke_count; i++) {
        e->strokes[i] = stroke_in_mirror(e->strokes[i], e->width);
    }
    if (dimensions) {
        turn_dimensions(e);
    }
    e->edge = e->edge == EDGE_LEFT ? EDGE_RIGHT : e->edge;
}
