/* SPDX-License-Identifier: MIT */
#include "report/doors/door_elevation.h"

#include "base/index.h"
#include "door/frame.h"
#include "report/doors/door_hung.h"

#include <assert.h>
#include <math.h>

/* Of a leaf. */
#define MOST_DIMENSIONS (2 * (FRAME_MOST_ROWS + FRAME_MOST_COLUMNS) + 4)

/* The field of a raised panel is drawn so far within its opening, at most a fifth. */
#define RAISED_IN (38 * NM_PER_MM)

struct maker {
    struct elevation *e;
    const struct door *door;
    struct frame frame;
};

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

/* The panel or pane behind an opening: the part whose size is nearest above it, and of panels that
 * which is cut to its arch. */
static const struct part *part_behind(const struct door *door, const struct elevation_box *box) {
    const struct part *found = NULL;
    for (size_t i = 0; i < door->part_count; i++) {
        const struct part *const p = &door->parts[i];
        const bool fills = p->kind == PART_PANE || (p->kind == PART_PANEL && p->rise == box->rise);
        if (fills && p->shown_width >= box->width && p->shown_height >= box->height &&
            (found == NULL ||
             p->shown_width + p->shown_height < found->shown_width + found->shown_height)) {
            found = p;
        }
    }
    return found;
}

/* How far the top of an arch is below its crown, at so far from its middle; 0: it is straight. */
static length arch_drop(const struct elevation_box *box, length from_middle) {
    const double half = (double)box->width / 2;
    const double rise = (double)box->rise;
    if (box->rise <= 0) {
        return 0;
    }
    const double radius = (half * half + rise * rise) / (2 * rise);
    const double aside = (double)from_middle;
    return (length)(radius - sqrt(radius * radius - aside * aside));
}

static bool has_slats(const struct door *door) {
    return door->bought_in && door->style->slats.set && door->form == FORM_OPEN;
}

/* Bars at equal distances; upright ones end at the arch. */
static void lay_bars(const struct maker *m, const struct elevation_box *glass) {
    const struct bars bars = style_bars(m->door->style, m->door->row);
    const length wide = m->door->style->bar_width.amount;
    for (int32_t i = 1; i <= bars.upright; i++) {
        const length x = glass->width * i / (bars.upright + 1) - wide / 2;
        const length drop = arch_drop(glass, x + wide / 2 - glass->width / 2);
        elevation_add_box(m->e, TRAIT_BAR, glass->x + x, glass->y + drop, wide,
                          glass->height - drop);
    }
    for (int32_t i = 1; i <= bars.level; i++) {
        const length y = glass->height * i / (bars.level + 1) - wide / 2;
        elevation_add_box(m->e, TRAIT_BAR, glass->x, glass->y + y, glass->width, wide);
    }
}

/* Slats from the top of an opening to its foot; the last may be cut off. */
static void lay_slats(const struct maker *m, const struct elevation_box *opening) {
    const length each = m->door->style->slats.amount;
    const length foot = opening->y + opening->height;
    for (length y = opening->y + opening->rise; y < foot; y += each) {
        elevation_add_box(m->e, TRAIT_SLAT, opening->x, y, opening->width,
                          y + each < foot ? each : foot - y);
    }
}

/* box: an opening, of whatever trait. */
static void fill(const struct maker *m, struct elevation_box box) {
    const struct part *const part = part_behind(m->door, &box);
    const length x = box.x;
    const length y = box.y;
    const length width = box.width;
    const length height = box.height;
    box.trait = filling(m->door->form);
    elevation_put_box(m->e, box);
    lay_bars(m, &box);
    if (has_slats(m->door)) {
        lay_slats(m, &box);
    }
    if (m->door->form == FORM_SOLID && m->door->style->raised) {
        const length side = width < height ? width : height;
        const length in = RAISED_IN < side / 5 ? RAISED_IN : side / 5;
        elevation_put_box(m->e,
                          (struct elevation_box){.trait = TRAIT_RAISED,
                                                 .x = x + in,
                                                 .y = y + in,
                                                 .width = width - 2 * in,
                                                 .height = height - 2 * in,
                                                 .rise = box.rise * (width - 2 * in) / width});
    }
    if (part != NULL) {
        elevation_put_box(m->e, (struct elevation_box){.trait = TRAIT_HIDDEN,
                                                       .x = x - (part->shown_width - width) / 2,
                                                       .y = y - (part->shown_height - height) / 2,
                                                       .width = part->shown_width,
                                                       .height = part->shown_height,
                                                       .rise = part->rise});
    }
}

static void draw_row(const struct maker *m, length y, length height, length rise) {
    const struct frame *const f = &m->frame;
    length x = f->stile;
    for (int32_t c = 0; c < f->columns; c++) {
        fill(m, (struct elevation_box){
                    .x = x, .y = y, .width = f->column[c], .height = height, .rise = rise});
        x += f->column[c];
        if (c + 1 < f->columns) {
            elevation_add_box(m->e, TRAIT_STILE, x, y + rise, f->mid_stile, height - rise);
            x += f->mid_stile;
        }
    }
}

static void miter_corners(const struct maker *m) {
    const struct frame *const f = &m->frame;
    const length right = m->door->width;
    const length foot = m->door->height;
    elevation_add_stroke(m->e, STROKE_MITER, 0, 0, f->stile, f->top_rail);
    elevation_add_stroke(m->e, STROKE_MITER, right, 0, right - f->stile, f->top_rail);
    elevation_add_stroke(m->e, STROKE_MITER, 0, foot, f->stile, foot - f->bottom_rail);
    elevation_add_stroke(m->e, STROKE_MITER, right, foot, right - f->stile, foot - f->bottom_rail);
}

static void draw_frame(const struct maker *m) {
    const struct frame *const f = &m->frame;
    const length width = m->door->width;
    const length height = m->door->height;
    const length between = width - 2 * f->stile;
    elevation_add_box(m->e, TRAIT_STILE, 0, 0, f->stile, height);
    elevation_add_box(m->e, TRAIT_STILE, width - f->stile, 0, f->stile, height);
    elevation_add_box(m->e, TRAIT_RAIL, f->stile, 0, between, f->top_rail + f->rise);
    elevation_add_box(m->e, TRAIT_RAIL, f->stile, height - f->bottom_rail, between, f->bottom_rail);
    length y = f->top_rail;
    for (int32_t r = 0; r < f->rows; r++) {
        draw_row(m, y, f->row[r], r == 0 ? f->rise : 0);
        y += f->row[r];
        if (r + 1 < f->rows) {
            elevation_add_box(m->e, TRAIT_RAIL, f->stile, y, between, f->mid_rail);
            y += f->mid_rail;
        }
    }
    if (f->mitered) {
        miter_corners(m);
    }
}

/* --- dimensions --- */

static void add_dimension(struct elevation *e, bool upright, bool whole, length *at, length size) {
    assert(e->dimension_count < (size_t)2 * MOST_DIMENSIONS);
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

/* Whether a frame is drawn: what is bought in may have none that its style tells of, then its
 * outline is. */
static bool leaf_is_framed(const struct door *door) {
    return door->form != FORM_SLAB && (!door->bought_in || door->style->stile.set);
}

/* A leaf with its dimensions, at the left of the drawing. */
static void draw_leaf(struct maker *m) {
    const struct door *const door = m->door;
    const struct leaf leaf = {.width = door->width, .height = door->height};
    if (leaf_is_framed(door) &&
        frame_divide(&m->frame, door->style, door->row, leaf, door->step) == FRAME_OK) {
        draw_frame(m);
        dimension_frame(m);
    } else {
        elevation_add_box(m->e, TRAIT_SLAB, 0, 0, door->width, door->height);
    }
    elevation_add_box(m->e, TRAIT_LEAF, 0, 0, door->width, door->height);
    dimension_leaf(m);
}

/* The most boxes of a leaf. */
static size_t most_boxes(const struct door *door) {
    const size_t rows = (size_t)door->row->mid_rails.amount + 1;
    const size_t columns = (size_t)door->row->mid_stiles.amount + 1;
    const struct bars bars = style_bars(door->style, door->row);
    const size_t slats =
        has_slats(door) ? (size_t)(door->height / door->style->slats.amount) + 1 : 0;
    const size_t each = 4 + (size_t)(bars.upright + bars.level) + slats;
    return 8 + 2 * MOST_HINGE_MARKS + (leaf_is_framed(door) ? rows + each * rows * columns : 0);
}

static bool take_room(struct elevation *e, struct pool *pool, const struct door *door) {
    const size_t leaves = (size_t)(door->leaves > 1 ? 2 : 1) * (door->beside != NULL ? 2 : 1);
    e->boxes = pool_take(pool, leaves * most_boxes(door), sizeof *e->boxes);
    e->strokes = pool_take(pool, leaves * MOST_STROKES, sizeof *e->strokes);
    e->dimensions = pool_take(pool, (size_t)2 * MOST_DIMENSIONS, sizeof *e->dimensions);
    return e->boxes != NULL && e->strokes != NULL && e->dimensions != NULL;
}

struct hung_on hung_on_of(const struct estimate *e, const struct leaf_figures *leaf) {
    const int32_t hinge = door_hinge(leaf->door)->index;
    const struct hardware *const on = hinge < 0 ? NULL : &e->rates->hardware[hinge];
    struct hung_on hung = {.count = (int32_t)tape_scaled(&e->tape, leaf->hinges, 0),
                           .at = leaf->hinge_at};
    if (on != NULL && on->cup.set) {
        hung.cup = on->cup.amount;
        hung.cup_center = on->cup_center.amount;
    }
    return hung;
}

bool door_elevation_make(struct door_elevation *made, struct pool *pool, const struct door *door,
                         struct hung_on on, enum length_unit unit) {
    struct elevation *const e = &made->drawing;
    const struct value *const given = &door->construction->gap;
    const length gap = given->set && given->amount > 0 ? given->amount : 3 * NM_PER_MM;
    made->door = door;
    *e = (struct elevation){
        .unit = unit,
        .width = door->width,
        .height = door->height,
        .hinges = on.count,
        .hinge_at = on.at,
        .cup = on.cup,
        .cup_center = on.cup_center,
        .edge = hung_edge(door, on.count),
    };
    note(e, door);
    if (!take_room(e, pool, door)) {
        return false;
    }
    struct maker m = {.e = e, .door = door};
    draw_leaf(&m);
    hung_mark(e);
    if (door->beside != NULL) {
        struct elevation hung = *e;
        struct maker other = {.e = e, .door = door->beside};
        e->width = door->beside->width;
        draw_leaf(&other);
        hung_beside(e, &hung, gap);
        if (door->row->opens.choice == OPENS_PIE_CUT) {
            hung_corner(e, hung.width + gap / 2);
        }
    }
    if (door->leaves > 1) {
        hung_mirror(e, gap);
    } else if (door->beside != NULL && door->row->hinge_side.choice == HINGE_SIDE_RIGHT) {
        hung_turn(e, door->beside->width != door->width);
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

static bool hinges_same(const struct elevation *a, const struct elevation *b) {
    bool same = a->hinges == b->hinges && a->edge == b->edge && a->cup == b->cup &&
                a->cup_center == b->cup_center && (a->hinge_at == NULL) == (b->hinge_at == NULL);
    for (int32_t i = 0; same && a->hinge_at != NULL && i < a->hinges; i++) {
        same = a->hinge_at[i] == b->hinge_at[i];
    }
    return same;
}

bool door_elevation_same(const struct door_elevation *of_a, const struct door_elevation *of_b) {
    const struct elevation *const a = &of_a->drawing;
    const struct elevation *const b = &of_b->drawing;
    return door_kind_same(of_a->door, of_b->door) && a->width == b->width &&
           a->height == b->height && hinges_same(a, b) &&
           of_a->door->row->arch.amount == of_b->door->row->arch.amount &&
           a->box_count == b->box_count && a->dimension_count == b->dimension_count &&
           parts_same(of_a->door, of_b->door) &&
           (of_a->door->beside == NULL || parts_same(of_a->door->beside, of_b->door->beside)) &&
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
           a->row->opens.choice == b->row->opens.choice &&
           (!row_folds(a->row) || a->row->hinge_side.choice == b->row->hinge_side.choice) &&
           a->row->mid_rails.amount == b->row->mid_rails.amount &&
           a->row->mid_stiles.amount == b->row->mid_stiles.amount &&
           (a->row->arch.amount > 0) == (b->row->arch.amount > 0) &&
           style_bars(a->style, a->row).upright == style_bars(b->style, b->row).upright &&
           style_bars(a->style, a->row).level == style_bars(b->style, b->row).level &&
           a->row->heights.count == b->row->heights.count &&
           a->construction->glass.index * (a->form == FORM_GLASS) ==
               b->construction->glass.index * (b->form == FORM_GLASS);
}
