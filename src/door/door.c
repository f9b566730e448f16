/* SPDX-License-Identifier: MIT */
/* From a row to its parts.  The frame is divided first (frame.c); then each piece is noted once a
 * size, so that a door with two equal mid rails has one part of two pieces. */
#include "door/door.h"

#include "base/index.h"
#include "door/frame.h"
#include "model/construction.h"

#include <assert.h>

bool door_is_see_through(const struct door *door) {
    return door->form == FORM_GLASS || door->form == FORM_OPEN;
}

enum panel_grain door_grain(const struct door *door) {
    const struct choice *const said = &door->construction->grain;
    return (enum panel_grain)(said->set ? said->choice : door->style->panel_grain.choice);
}

bool part_is_frame(enum part_kind kind) {
    return kind <= PART_MID_STILE;
}

bool part_is_rail(enum part_kind kind) {
    return kind == PART_TOP_RAIL || kind == PART_BOTTOM_RAIL || kind == PART_MID_RAIL;
}

const char *part_kind_name(enum part_kind kind) {
    static const char *const names[PART_KIND_COUNT] = {
        "stile", "top rail", "bottom rail", "mid rail", "mid stile", "panel", "pane", "slab"};
    assert(kind < PART_KIND_COUNT);
    return names[kind];
}

int32_t door_pieces(const struct door *door, enum part_kind kind) {
    int32_t pieces = 0;
    for (size_t i = 0; i < door->part_count; i++) {
        pieces += door->parts[i].kind == kind ? door->parts[i].count : 0;
    }
    return pieces;
}

/* Notes pieces of a size: with a part of the same kind and size if there is one. */
static void add_part(struct door *door, const struct part *part) {
    for (size_t i = 0; i < door->part_count; i++) {
        struct part *const old = &door->parts[i];
        if (old->kind == part->kind && old->length == part->length && old->width == part->width) {
            old->count += part->count;
            return;
        }
    }
    assert(door->part_count < FRAME_MOST_PARTS);
    door->parts[door->part_count++] = *part;
}

/* A part of the frame, cut to the nearest step. */
static void add_frame_part(const struct calc *c, struct door *door, enum part_kind kind,
                           int32_t count, length along_exact, length width_exact) {
    const struct saw *const saw = &c->rates->saw;
    const struct size_step step = door->step;
    const length along = size_nearest(step, along_exact);
    const length width = size_nearest(step, width_exact);
    const struct part part = {
        .kind = kind,
        .material_kind = MATERIAL_LUMBER,
        .material = door->construction->frame.index,
        .count = count,
        .length = along,
        .width = width,
        .thickness = door->thickness,
        .rough_length = size_up(step, along + saw->length_allowance.amount),
        .rough_width = size_up(step, width + 2 * saw->edge_allowance.amount),
        .weight_thickness = door->thickness,
        .staves = 1,
    };
    add_part(door, &part);
}

/* A solid panel or slab: as thick as its style says, glued up of staves that each lose both edges
 * when they are straightened. */
static void make_solid(const struct calc *c, const struct door *door, struct part *part) {
    const struct style *const style = door->style;
    const bool panel = part->kind == PART_PANEL;
    if (panel && style->panel_thickness.set) {
        part->thickness = style->panel_thickness.amount;
    }
    part->weight_thickness =
        panel && style->mean_thickness.set ? style->mean_thickness.amount : part->thickness;
    part->raised = panel && style->raised;
    if (style->stave.set) {
        part->staves = (int32_t)((part->width + style->stave.amount - 1) / style->stave.amount);
    }
    part->rough_length = size_up(door->step, part->length + c->rates->saw.length_allowance.amount);
    part->rough_width = size_up(door->step, part->width + 2 * (int64_t)part->staves *
                                                              c->rates->saw.edge_allowance.amount);
}

/* A panel, pane or slab of width x height at most, as it stands in the door: rounded down, so that
 * it goes in. */
static void add_field(const struct calc *c, struct door *door, enum part_kind kind,
                      enum material_kind material_kind, int32_t material, length most_width,
                      length most_height) {
    const length width = size_down(door->step, most_width);
    const length height = size_down(door->step, most_height);
    const bool upright =
        material_kind == MATERIAL_GLASS || door_grain(door) == PANEL_GRAIN_VERTICAL;
    struct part part = {
        .kind = kind,
        .material_kind = material_kind,
        .material = material,
        .count = 1,
        .length = upright ? height : width,
        .width = upright ? width : height,
        .thickness = door->thickness,
        .shown_width = width,
        .shown_height = height,
        .staves = 1,
    };
    part.rough_length = part.length;
    part.rough_width = part.width;
    if (material_kind == MATERIAL_SHEET) {
        part.thickness = c->rates->sheets[material].thickness.amount;
        part.weight_thickness = part.thickness;
    } else if (material_kind == MATERIAL_GLASS) {
        part.thickness = c->rates->glass[material].thickness.amount;
        part.weight_thickness = part.thickness;
    } else {
        make_solid(c, door, &part);
    }
    add_part(door, &part);
}

static void add_opening(struct door *door, length width, length height) {
    door->stuck_edge += 2 * (width + height);
    for (size_t i = 0; i < door->opening_count; i++) {
        struct opening *const old = &door->openings[i];
        if (old->width == width && old->height == height) {
            old->count++;
            return;
        }
    }
    door->openings[door->opening_count++] =
        (struct opening){.width = width, .height = height, .count = 1};
}

static length clamp_rabbet(length depth, length clearance) {
    return 2 * (depth - clearance);
}

/* What fills one opening: a sheet or solid panel in the grooves, a pane in the rabbet, or nothing.
 */
static void fill_opening(const struct calc *c, struct door *door, length width, length height) {
    const struct style *const style = door->style;
    const length groove = style->groove.amount;
    length more_width = clamp_rabbet(groove, style->panel_clearance.amount);
    length more_height = more_width;
    switch (door->form) {
    case FORM_PANEL:
        add_field(c, door, PART_PANEL, MATERIAL_SHEET,
                  construction_panel(door->construction, door->form)->index, width + more_width,
                  height + more_height);
        break;
    case FORM_SOLID:
        if (door_grain(door) == PANEL_GRAIN_VERTICAL) {
            more_width = clamp_rabbet(groove, style->clearance_across.amount);
        } else {
            more_height = clamp_rabbet(groove, style->clearance_across.amount);
        }
        add_field(c, door, PART_PANEL, MATERIAL_LUMBER,
                  construction_panel(door->construction, door->form)->index, width + more_width,
                  height + more_height);
        break;
    case FORM_GLASS:
        more_width = clamp_rabbet(groove, style->glass_clearance.amount);
        add_field(c, door, PART_PANE, MATERIAL_GLASS, door->construction->glass.index,
                  width + more_width, height + more_width);
        break;
    case FORM_SLAB:
    case FORM_OPEN:
        break;
    }
}

static void add_frame(const struct calc *c, struct door *door, const struct frame *frame) {
    const length tongues = 2 * frame->tongue;
    const length between = door->width - 2 * frame->stile + tongues;
    const length rail = frame->mitered ? door->width : between;
    add_frame_part(c, door, PART_STILE, 2, door->height, frame->stile);
    add_frame_part(c, door, PART_TOP_RAIL, 1, rail, frame->top_rail);
    add_frame_part(c, door, PART_BOTTOM_RAIL, 1, rail, frame->bottom_rail);
    if (frame->rows > 1) {
        add_frame_part(c, door, PART_MID_RAIL, frame->rows - 1, between, frame->mid_rail);
    }
    for (int32_t r = 0; r < frame->rows; r++) {
        if (frame->columns > 1) {
            add_frame_part(c, door, PART_MID_STILE, frame->columns - 1, frame->row[r] + tongues,
                           frame->mid_stile);
        }
        for (int32_t k = 0; k < frame->columns; k++) {
            add_opening(door, frame->column[k], frame->row[r]);
            fill_opening(c, door, frame->column[k], frame->row[r]);
        }
    }
    door->joints = 4 + 2 * (frame->rows - 1) + 2 * (frame->columns - 1) * frame->rows;
}

static void make_slab(const struct calc *c, struct door *door) {
    const struct material_reference *const slab = &door->construction->slab;
    if (slab->kind == MATERIAL_SHEET) {
        door->thickness = c->rates->sheets[slab->index].thickness.amount;
    }
    add_field(c, door, PART_SLAB, slab->kind, slab->index, door->width, door->height);
}

static void make_parts(const struct calc *c, struct door *door) {
    if (door->form == FORM_SLAB) {
        make_slab(c, door);
        return;
    }
    struct frame frame;
    const struct leaf leaf = {.width = door->width, .height = door->height};
    const enum frame_fault fault = frame_divide(&frame, door->style, door->row, leaf, door->step);
    assert(fault == FRAME_OK); /* the reader has checked every row under every option */
    (void)fault;
    add_frame(c, door, &frame);
}

/* A leaf of a row, without its parts. */
static struct door begin_door(const struct calc *c, const struct row *row,
                              const struct construction *construction, enum leaf_role role) {
    assert(construction->style.index >= 0);
    const struct size_step step = size_step_of(&c->rates->saw, c->units->lengths);
    const struct leaf leaf = leaf_size(row, construction, role, step);
    const struct style *const style =
        leaf_style(c->rates, &c->rates->styles[construction->style.index], row, leaf.height);
    const bool folds = row_folds(row);
    return (struct door){
        .row = row,
        .name = folds ? pool_format(c->pool, "%s %s leaf", row->id.s,
                                    role == LEAF_HUNG ? "hung" : "folding")
                      : row->id.s,
        .role = role,
        .construction = construction,
        .style = style,
        .form = (enum door_form)style->form.choice,
        .width = leaf.width,
        .height = leaf.height,
        .thickness = style->thickness.amount,
        .leaves = (int32_t)row->leaves.amount / (folds ? 2 : 1),
        .step = step,
        .bought_in = style->bought_in.set,
    };
}

/* What doors are made with. */
struct making {
    const struct calc *calc;
    struct construction *constructions; /* of each make of the job, under the option */
    size_t made;                        /* of these */
    struct part *parts;                 /* room for those of one leaf, which keeps what it has */
    struct opening *openings;
    struct index leaves; /* of which door each leaf was made first */
};

static void make_leaf(const struct making *m, struct door *door) {
    struct pool *const pool = m->calc->pool;
    door->parts = m->parts;
    door->openings = m->openings;
    if (!door->bought_in) {
        make_parts(m->calc, door);
    }
    door->parts = pool_copy(pool, door->parts, door->part_count * sizeof *door->parts);
    door->openings = pool_copy(pool, door->openings, door->opening_count * sizeof *door->openings);
}

static bool same_heights(const struct values *a, const struct values *b) {
    bool same = a->count == b->count;
    for (size_t i = 0; same && i < a->count; i++) {
        same = a->v[i].amount == b->v[i].amount;
    }
    return same;
}

/* Whether the leaves of two rows are made alike, of the same parts. */
static bool same_leaf(const void *list, size_t number, const void *thing) {
    const struct door *const a = &((const struct door *)list)[number];
    const struct door *const b = thing;
    return a->construction == b->construction && a->width == b->width && a->height == b->height &&
           a->row->use.choice == b->row->use.choice &&
           a->row->mid_rails.amount == b->row->mid_rails.amount &&
           a->row->mid_stiles.amount == b->row->mid_stiles.amount &&
           same_heights(&a->row->heights, &b->row->heights);
}

static uint64_t leaf_hash(const struct door *door) {
    uint64_t hash = hash_word(HASH_START, (uint64_t)door->width);
    hash = hash_word(hash, (uint64_t)door->height);
    return hash_word(hash, door->row->make->number);
}

/* Makes a leaf of row r as the next of the doors, with the parts of an earlier one where it is the
 * same. */
static bool make_door(struct making *m, struct doors *doors, size_t r, enum leaf_role role) {
    const struct row *const row = &m->calc->job->rows[r];
    const size_t d = doors->count++;
    struct door *const door = &doors->doors[d];
    bool failed = false;
    *door = begin_door(m->calc, row, &m->constructions[row->make->number], role);
    const size_t first =
        index_add(&m->leaves, leaf_hash(door), same_leaf, doors->doors, door, d, &failed);
    if (first < d) {
        const struct door begun = *door;
        *door = doors->doors[first];
        door->row = row;
        door->name = begun.name;
        door->role = role;
        door->beside = NULL;
        door->leaves = begun.leaves;
    } else {
        make_leaf(m, door);
    }
    return !failed;
}

/* Makes what row r is of: a leaf, or the two that fold. */
static bool make_row(struct making *m, struct doors *doors, size_t r) {
    struct door *const hung = &doors->doors[doors->count];
    if (!make_door(m, doors, r, LEAF_HUNG)) {
        return false;
    }
    if (!row_folds(hung->row)) {
        return true;
    }
    if (!make_door(m, doors, r, LEAF_FOLDING)) {
        return false;
    }
    hung[0].beside = &hung[1];
    hung[1].beside = &hung[0];
    return true;
}

static size_t count_doors(const struct job *job) {
    size_t count = job->row_count;
    for (size_t r = 0; r < job->row_count; r++) {
        count += row_folds(&job->rows[r]) ? 1 : 0;
    }
    return count;
}

bool doors_make(struct doors *doors, const struct calc *c, int option) {
    const struct job *const job = c->job;
    struct making m = {.calc = c};
    m.constructions = pool_take(c->pool, job->make_count, sizeof *m.constructions);
    m.parts = pool_take(c->pool, FRAME_MOST_PARTS, sizeof *m.parts);
    m.openings = pool_take(c->pool, (size_t)2 * FRAME_MOST_ROWS, sizeof *m.openings);
    *doors = (struct doors){0};
    doors->doors = pool_take(c->pool, count_doors(job), sizeof *doors->doors);
    bool held = !pool_failed(c->pool);
    for (size_t r = 0; held && r < job->row_count; r++) {
        if (job->rows[r].make->number == m.made) { /* they are numbered as rows come */
            m.constructions[m.made++] = row_construction(job, &job->rows[r], option);
        }
        held = make_row(&m, doors, r) && !pool_failed(c->pool);
    }
    index_clear(&m.leaves);
    return held;
}

const struct reference *door_hinge(const struct door *door) {
    return door->role == LEAF_FOLDING ? &door->construction->fold_hinge
                                      : &door->construction->hinge;
}

const struct door *door_drawn(const struct door *door) {
    return door->role == LEAF_FOLDING ? door->beside : door;
}

bool door_is_twin(const struct door *door) {
    return door->role == LEAF_FOLDING && door->width == door->beside->width;
}
