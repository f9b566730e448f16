/* SPDX-License-Identifier: MIT */
#include "report/doors/door_elevation.h"

#include "base/index.h"
#include "door/frame.h"

#include <assert.h>

#define MOST_HINGES     10
#define MOST_STROKES    ((size_t)4)
#define MOST_DIMENSIONS (2 * (FRAME_MOST_ROWS + FRAME_MOST_COLUMNS) + 4)

/* A mark is this long and thick, and stands off its edge. */
#define MARK_LONG (50 * NM_PER_MM)
#define MARK_DEEP (12 * NM_PER_MM)
/* From a corner to the middle of the first mark, at most a fifth of the edge. */
#define MARK_FROM_CORNER (90 * NM_PER_MM)

/* The field of a raised panel is drawn so far within its opening, at most a fifth. */
#define RAISED_IN (38 * NM_PER_MM)

struct maker {
    struct elevation *e;
    const struct door *door;
    struct frame frame;
};

static void add_box(struct elevation *e, enum trait trait, length x, length y, length width,
                    length height) {
    e->boxes[e->box_count++] =
        (struct elevation_box){.trait = trait, .x = x, .y = y, .width = width, .height = height};
}

static void add_stroke(struct elevation *e, length x1, length y1, length x2, length y2) {
    assert(e->stroke_count < 2 * MOST_STROKES);
    e->strokes[e->stroke_count++] =
        (struct elevation_stroke){.x1 = x1, .y1 = y1, .x2 = x2, .y2 = y2};
}

/* --- the leaf --- */

static enum trait filling(enum door_form form) {
    switch (form) {
    case FORM_GLASS:
        return TRAIT_GLASS;
    case FORM_OPEN:
        return TRAIT_OPEN;
    case FORM_PANEL:
    case FORM_SOLID:
    case FORM_SLAB:
        break;
    }
    return TRAIT_PANEL;
}

/* The panel or pane behind an opening: the part whose size is nearest above it. */
static const struct part *part_behind(const struct door *door, length width, length height) {
    const struct part *found = NULL;
    for (size_t i = 0; i < door->part_count; i++) {
        const struct part *const p = &door->parts[i];
        const bool fills = p->kind == PART_PANEL || p->kind == PART_PANE;
        if (fills && p->shown_width >= width && p->shown_height >= height &&
            (found == NULL ||
             p->shown_width + p->shown_height < found->shown_width + found->shown_height)) {
            found = p;
        }
    }
    return found;
}

static void fill(const struct maker *m, length x, length y, length width, length height) {
    const struct part *const part = part_behind(m->door, width, height);
    add_box(m->e, filling(m->door->form), x, y, width, height);
    if (m->door->form == FORM_SOLID && m->door->style->raised) {
        const length side = width < height ? width : height;
        const length in = RAISED_IN < side / 5 ? RAISED_IN : side / 5;
        add_box(m->e, TRAIT_RAISED, x + in, y + in, width - 2 * in, height - 2 * in);
    }
    if (part != NULL) {
        add_box(m->e, TRAIT_HIDDEN, x - (part->shown_width - width) / 2,
                y - (part->shown_height - height) / 2, part->shown_width, part->shown_height);
    }
}

static void draw_row(const struct maker *m, length y, length height) {
    const struct frame *const f = &m->frame;
    length x = f->stile;
    for (int32_t c = 0; c < f->columns; c++) {
        fill(m, x, y, f->column[c], height);
        x += f->column[c];
        if (c + 1 < f->columns) {
            add_box(m->e, TRAIT_STILE, x, y, f->mid_stile, height);
            x += f->mid_stile;
        }
    }
}

static void miter_corners(const struct maker *m) {
    const struct frame *const f = &m->frame;
    const length right = m->door->width;
    const length foot = m->door->height;
    add_stroke(m->e, 0, 0, f->stile, f->top_rail);
    add_stroke(m->e, right, 0, right - f->stile, f->top_rail);
    add_stroke(m->e, 0, foot, f->stile, foot - f->bottom_rail);
    add_stroke(m->e, right, foot, right - f->stile, foot - f->bottom_rail);
}

static void draw_frame(const struct maker *m) {
    const struct frame *const f = &m->frame;
    const length width = m->door->width;
    const length height = m->door->height;
    const length between = width - 2 * f->stile;
    add_box(m->e, TRAIT_STILE, 0, 0, f->stile, height);
    add_box(m->e, TRAIT_STILE, width - f->stile, 0, f->stile, height);
    add_box(m->e, TRAIT_RAIL, f->stile, 0, between, f->top_rail);
    add_box(m->e, TRAIT_RAIL, f->stile, height - f->bottom_rail, between, f->bottom_rail);
    length y = f->top_rail;
    for (int32_t r = 0; r < f->rows; r++) {
        draw_row(m, y, f->row[r]);
        y += f->row[r];
        if (r + 1 < f->rows) {
            add_box(m->e, TRAIT_RAIL, f->stile, y, between, f->mid_rail);
            y += f->mid_rail;
        }
    }
    if (f->mitered) {
        miter_corners(m);
    }
}

/* --- hinges --- */

static enum hinge_edge edge_of(const struct door *door, int32_t hinges) {
    if (hinges <= 0 || door->row->use.choice != USE_DOOR) {
        return EDGE_NONE;
    }
    if (door->leaves > 1) {
        return EDGE_LEFT; /* of the left leaf; the right one is its mirror image */
    }
    switch ((enum hinge_side)door->row->hinge_side.choice) {
    case HINGE_SIDE_LEFT:
    case HINGE_SIDE_PAIR:
        return EDGE_LEFT;
    case HINGE_SIDE_RIGHT:
        return EDGE_RIGHT;
    case HINGE_SIDE_TOP:
        return EDGE_TOP;
    case HINGE_SIDE_BOTTOM:
        return EDGE_BOTTOM;
    case HINGE_SIDE_OPEN:
        break;
    }
    return EDGE_NONE;
}

static void mark_hinges(const struct maker *m) {
    struct elevation *const e = m->e;
    const bool upright = e->edge == EDGE_LEFT || e->edge == EDGE_RIGHT;
    const length along = upright ? m->door->height : m->door->width;
    const length corner = MARK_FROM_CORNER < along / 5 ? MARK_FROM_CORNER : along / 5;
    const length size = MARK_LONG < along / 6 ? MARK_LONG : along / 6;
    const int32_t count = e->hinges < MOST_HINGES ? e->hinges : MOST_HINGES;
    for (int32_t i = 0; e->edge != EDGE_NONE && i < count; i++) {
        const length middle =
            count == 1 ? along / 2 : corner + (along - 2 * corner) * i / (count - 1);
        const length at = middle - size / 2;
        switch (e->edge) {
        case EDGE_LEFT:
            add_box(e, TRAIT_HINGE, -MARK_DEEP, at, MARK_DEEP, size);
            break;
        case EDGE_RIGHT:
            add_box(e, TRAIT_HINGE, m->door->width, at, MARK_DEEP, size);
            break;
        case EDGE_TOP:
            add_box(e, TRAIT_HINGE, at, -MARK_DEEP, size, MARK_DEEP);
            break;
        case EDGE_BOTTOM:
            add_box(e, TRAIT_HINGE, at, m->door->height, size, MARK_DEEP);
            break;
        case EDGE_NONE:
            break;
        }
    }
}

/* --- dimensions --- */

static void add_dimension(struct elevation *e, bool upright, bool whole, length *at, length size) {
    assert(e->dimension_count < MOST_DIMENSIONS);
    e->dimensions[e->dimension_count++] = (struct elevation_dimension){
        .upright = upright, .whole = whole, .from = *at, .to = *at + size};
    *at += size;
}

static void dimension_frame(const struct maker *m) {
    const struct frame *const f = &m->frame;
    length at = 0;
    add_dimension(m->e, false, false, &at, f->stile);
    for (int32_t c = 0; c < f->columns; c++) {
        add_dimension(m->e, false, false, &at, f->column[c]);
        if (c + 1 < f->columns) {
            add_dimension(m->e, false, false, &at, f->mid_stile);
        }
    }
    add_dimension(m->e, false, false, &at, f->stile);
    at = 0;
    add_dimension(m->e, true, false, &at, f->top_rail);
    for (int32_t r = 0; r < f->rows; r++) {
        add_dimension(m->e, true, false, &at, f->row[r]);
        if (r + 1 < f->rows) {
            add_dimension(m->e, true, false, &at, f->mid_rail);
        }
    }
    add_dimension(m->e, true, false, &at, f->bottom_rail);
}

static void dimension_leaf(const struct maker *m) {
    length at = 0;
    add_dimension(m->e, false, true, &at, m->door->width);
    at = 0;
    add_dimension(m->e, true, true, &at, m->door->height);
}

/* --- the whole --- */

/* The second leaf of a pair: the first one's mirror image, beside the gap. */
static void mirror(struct elevation *e, length gap) {
    const length right = 2 * e->width + gap;
    const size_t boxes = e->box_count;
    const size_t strokes = e->stroke_count;
    for (size_t i = 0; i < boxes; i++) {
        const struct elevation_box b = e->boxes[i];
        add_box(e, b.trait, right - b.x - b.width, b.y, b.width, b.height);
    }
    for (size_t i = 0; i < strokes; i++) {
        const struct elevation_stroke s = e->strokes[i];
        add_stroke(e, right - s.x1, s.y1, right - s.x2, s.y2);
    }
    e->width = right;
}

/* That a door is bought as it is, that a panel is of solid wood: lines don't tell. */
static void note(struct elevation *e, const struct door *door) {
    if (door->bought_in) {
        e->note = "bought in";
        e->note_on = TRAIT_LEAF;
    } else if (door->form == FORM_SOLID) {
        e->note = "solid";
        e->note_on = TRAIT_PANEL;
    }
}

bool door_elevation_make(struct door_elevation *made, struct pool *pool, const struct door *door,
                         int32_t hinges, enum length_unit unit) {
    struct elevation *const e = &made->drawing;
    made->door = door;
    struct maker m = {.e = e, .door = door};
    *e = (struct elevation){
        .unit = unit,
        .width = door->width,
        .height = door->height,
        .hinges = hinges,
        .edge = edge_of(door, hinges),
    };
    note(e, door);
    const struct leaf leaf = {.width = door->width, .height = door->height};
    /* What is bought in may have no frame that its style tells of: then its outline is drawn. */
    const bool told = door->form != FORM_SLAB && (!door->bought_in || door->style->stile.set);
    const bool framed =
        told && frame_divide(&m.frame, door->style, door->row, leaf, unit) == FRAME_OK;
    const size_t openings = framed ? (size_t)(m.frame.rows * m.frame.columns) : 0;
    const size_t boxes = 8 + MOST_HINGES + (framed ? (size_t)m.frame.rows : 0) + 4 * openings;
    e->boxes = pool_take(pool, 2 * boxes, sizeof *e->boxes);
    e->strokes = pool_take(pool, 2 * MOST_STROKES, sizeof *e->strokes);
    e->dimensions = pool_take(pool, MOST_DIMENSIONS, sizeof *e->dimensions);
    if (e->boxes == NULL || e->strokes == NULL || e->dimensions == NULL) {
        return false;
    }
    if (framed) {
        draw_frame(&m);
        dimension_frame(&m);
    } else {
        add_box(e, TRAIT_SLAB, 0, 0, door->width, door->height);
    }
    add_box(e, TRAIT_LEAF, 0, 0, door->width, door->height);
    dimension_leaf(&m);
    mark_hinges(&m);
    if (door->leaves > 1) {
        const struct value *const gap = &door->construction->gap;
        mirror(e, gap->set && gap->amount > 0 ? gap->amount : 3 * NM_PER_MM);
    }
    return true;
}

static bool parts_same(const struct door *a, const struct door *b) {
    bool same = a->part_count == b->part_count;
    for (size_t i = 0; same && i < a->part_count; i++) {
        const struct part *const p = &a->parts[i];
        const struct part *const q = &b->parts[i];
        same = p->kind == q->kind && p->material_kind == q->material_kind &&
               p->material == q->material && p->count == q->count && p->length == q->length &&
               p->width == q->width && p->thickness == q->thickness;
    }
    return same;
}

/* Doors of the same parts may still have them in another order. */
static bool dimensions_same(const struct elevation *a, const struct elevation *b) {
    for (size_t i = 0; i < a->dimension_count; i++) {
        if (a->dimensions[i].to != b->dimensions[i].to) {
            return false;
        }
    }
    return true;
}

bool door_elevation_same(const struct door_elevation *of_a, const struct door_elevation *of_b) {
    const struct elevation *const a = &of_a->drawing;
    const struct elevation *const b = &of_b->drawing;
    return door_kind_same(of_a->door, of_b->door) && a->width == b->width &&
           a->height == b->height && a->hinges == b->hinges && a->edge == b->edge &&
           a->dimension_count == b->dimension_count && parts_same(of_a->door, of_b->door) &&
           dimensions_same(a, b);
}

uint64_t door_elevation_hash(const struct door_elevation *of) {
    const struct elevation *const e = &of->drawing;
    uint64_t hash = hash_word(HASH_START, (uint64_t)e->width);
    hash = hash_word(hash, (uint64_t)e->height);
    hash = hash_word(hash, (uint64_t)e->hinges << 16 | (uint64_t)e->edge << 8 | of->door->form);
    for (size_t i = 0; i < e->dimension_count; i++) {
        hash = hash_word(hash, (uint64_t)e->dimensions[i].to);
    }
    return hash;
}

bool door_kind_same(const struct door *a, const struct door *b) {
    return a->style == b->style && a->form == b->form && a->leaves == b->leaves &&
           a->row->use.choice == b->row->use.choice &&
           a->row->mid_rails.amount == b->row->mid_rails.amount &&
           a->row->mid_stiles.amount == b->row->mid_stiles.amount &&
           a->row->heights.count == b->row->heights.count &&
           a->construction->glass.index * (a->form == FORM_GLASS) ==
               b->construction->glass.index * (b->form == FORM_GLASS);
}
