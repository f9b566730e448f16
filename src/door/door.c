/* SPDX-License-Identifier: MIT */
/* The doors of a job, a leaf each; rows whose leaves are made alike share their parts. */
#include "door/door.h"

#include "base/index.h"
#include "door/frame.h"
#include "door/pieces.h"
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
    static const char *const names[PART_KIND_COUNT] = {"stile",    "top rail",  "bottom rail",
                                                       "mid rail", "mid stile", "panel",
                                                       "pane",     "slab",      "bar"};
    assert(kind < PART_KIND_COUNT);
    return names[kind];
}

const char *part_full_name(const struct part *part) {
    if (part->rise > 0) {
        return part->kind == PART_PANEL ? "panel, arched" : "top rail, arched";
    }
    return part_kind_name(part->kind);
}

bool part_is_field(enum part_kind kind) {
    return kind == PART_PANEL || kind == PART_PANE || kind == PART_SLAB;
}

struct bars style_bars(const struct style *style, const struct row *row) {
    if (style->form.choice != FORM_GLASS || style->bought_in.set || !row->lights_wide.set) {
        return (struct bars){0};
    }
    return (struct bars){.upright = (int32_t)row->lights_wide.amount - 1,
                         .level = (int32_t)row->lights_high.amount - 1};
}

int32_t door_pieces(const struct door *door, enum part_kind kind) {
    int32_t pieces = 0;
    for (size_t i = 0; i < door->part_count; i++) {
        pieces += door->parts[i].kind == kind ? door->parts[i].count : 0;
    }
    return pieces;
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
    bool *made;                         /* which of these are */
    struct part *parts;                 /* room for those of one leaf, which keeps what it has */
    struct opening *openings;
    struct index leaves; /* of which door each leaf was made first */
};

static void make_leaf(const struct making *m, struct door *door) {
    struct pool *const pool = m->calc->pool;
    door->parts = m->parts;
    door->openings = m->openings;
    if (!door->bought_in) {
        pieces_make(m->calc, door);
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
           a->row->arch.amount == b->row->arch.amount &&
           a->row->lights_wide.amount == b->row->lights_wide.amount &&
           a->row->lights_high.amount == b->row->lights_high.amount &&
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
    door->first = d;
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
    m.made = pool_take(c->pool, job->make_count, sizeof *m.made);
    m.parts = pool_take(c->pool, FRAME_MOST_PARTS, sizeof *m.parts);
    m.openings = pool_take(c->pool, (size_t)2 * FRAME_MOST_ROWS, sizeof *m.openings);
    *doors = (struct doors){0};
    doors->doors = pool_take(c->pool, count_doors(job), sizeof *doors->doors);
    bool held = !pool_failed(c->pool);
    for (size_t r = 0; held && r < job->row_count; r++) {
        const size_t number = job->rows[r].make->number;
        if (!m.made[number]) {
            m.made[number] = true;
            m.constructions[number] = row_construction(job, &job->rows[r], option);
        }
        held = make_row(&m, doors, r) && !pool_failed(c->pool);
    }
    index_clear(&m.leaves);
    return held;
}

length door_hinged_edge(const struct door *door) {
    return row_hangs_level(door->row) ? door->width : door->height;
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
