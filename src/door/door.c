/* SPDX-License-Identifier: MIT */
/* From a row to its parts.  The frame is divided first (frame.c); then each piece is noted once a
 * size, so that a door with two equal mid rails has one part of two pieces. */
#include "door/door.h"

#include "door/frame.h"
#include "door/leaf.h"

#include <assert.h>

/* Stile, two rails, mid rail, and a mid stile, panel or pane for each opening: more sizes than that
 * a leaf has not. */
#define MOST_PARTS (5 + 2 * FRAME_MOST_ROWS * 2)

struct maker {
    const struct rates *rates;
    enum length_unit unit;
    struct problems *problems;
    struct pool *pool;
};

bool door_is_see_through(const struct door *door) {
    return door->form == FORM_GLASS || door->form == FORM_OPEN;
}

bool part_is_frame(enum part_kind kind) {
    return kind <= PART_MID_STILE;
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
    assert(door->part_count < MOST_PARTS);
    door->parts[door->part_count++] = *part;
}

static void add_frame_part(const struct maker *maker, struct door *door, enum part_kind kind,
                           int32_t count, length along, length width) {
    const struct saw *const saw = &maker->rates->saw;
    const struct part part = {
        .kind = kind,
        .stuff = STUFF_LUMBER,
        .material = door->make.frame.index,
        .count = count,
        .length = along,
        .width = width,
        .thickness = door->thickness,
        .rough_length = along + saw->length_allowance.amount,
        .rough_width = width + 2 * saw->edge_allowance.amount,
    };
    add_part(door, &part);
}

/* A panel, pane or slab of width x height as it stands in the door. */
static void add_field(const struct maker *maker, struct door *door, enum part_kind kind,
                      enum stuff stuff, int32_t material, length width, length height) {
    const bool upright = door->style->panel_grain.word == PANEL_GRAIN_VERTICAL;
    struct part part = {
        .kind = kind,
        .stuff = stuff,
        .material = material,
        .count = 1,
        .length = upright ? height : width,
        .width = upright ? width : height,
        .thickness = door->thickness,
        .shown_width = width,
        .shown_height = height,
    };
    part.rough_length = part.length;
    part.rough_width = part.width;
    if (stuff == STUFF_SHEET) {
        part.thickness = maker->rates->sheets[material].thickness.amount;
    } else if (stuff == STUFF_GLASS) {
        part.thickness = maker->rates->glass[material].thickness.amount;
    } else {
        part.rough_length += maker->rates->saw.length_allowance.amount;
        part.rough_width += 2 * maker->rates->saw.edge_allowance.amount;
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
static void fill_opening(const struct maker *maker, struct door *door, length width,
                         length height) {
    const struct style *const style = door->style;
    const length groove = style->groove.amount;
    length more_width = clamp_rabbet(groove, style->panel_clearance.amount);
    length more_height = more_width;
    switch (door->form) {
    case FORM_PANEL:
        add_field(maker, door, PART_PANEL, STUFF_SHEET, door->make.panel.index, width + more_width,
                  height + more_height);
        break;
    case FORM_SOLID:
        if (style->panel_grain.word == PANEL_GRAIN_VERTICAL) {
            more_width = clamp_rabbet(groove, style->clearance_across.amount);
        } else {
            more_height = clamp_rabbet(groove, style->clearance_across.amount);
        }
        add_field(maker, door, PART_PANEL, STUFF_LUMBER, door->make.panel.index, width + more_width,
                  height + more_height);
        break;
    case FORM_GLASS:
        more_width = clamp_rabbet(groove, style->glass_clearance.amount);
        add_field(maker, door, PART_PANE, STUFF_GLASS, door->make.glass.index, width + more_width,
                  height + more_width);
        break;
    case FORM_SLAB:
    case FORM_OPEN:
        break;
    }
}

static void add_frame(const struct maker *maker, struct door *door, const struct frame *frame) {
    const length tongues = 2 * frame->tongue;
    const length between = door->width - 2 * frame->stile + tongues;
    const length rail = frame->mitred ? door->width : between;
    add_frame_part(maker, door, PART_STILE, 2, door->height, frame->stile);
    add_frame_part(maker, door, PART_TOP_RAIL, 1, rail, frame->top_rail);
    add_frame_part(maker, door, PART_BOTTOM_RAIL, 1, rail, frame->bottom_rail);
    if (frame->rows > 1) {
        add_frame_part(maker, door, PART_MID_RAIL, frame->rows - 1, between, frame->mid_rail);
    }
    for (int32_t r = 0; r < frame->rows; r++) {
        if (frame->columns > 1) {
            add_frame_part(maker, door, PART_MID_STILE, frame->columns - 1, frame->row[r] + tongues,
                           frame->mid_stile);
        }
        for (int32_t c = 0; c < frame->columns; c++) {
            add_opening(door, frame->column[c], frame->row[r]);
            fill_opening(maker, door, frame->column[c], frame->row[r]);
        }
    }
    door->joints = 4 + 2 * (frame->rows - 1) + 2 * (frame->columns - 1) * frame->rows;
}

static void tell_frame_fault(const struct maker *maker, const struct door *door,
                             const struct frame *frame, enum frame_fault fault, length space) {
    char size[32];
    char taken[32];
    const char *const id = problem_quote(maker->problems, door->row->id.s);
    const char *const style = problem_quote(maker->problems, door->style->name.s);
    switch (fault) {
    case FRAME_TOO_NARROW:
        problem_add(maker->problems, SEVERITY_ERROR, "door-too-narrow", door->row->width.place,
                    "door '%s' is too narrow: the leaf is %s wide and the stiles of style '%s' "
                    "take %s; expected a wider door, "
                    "fewer mid stiles or narrower stiles",
                    id, length_show(door->width, maker->unit, size, sizeof size), style,
                    length_show(2 * frame->stile + (frame->columns - 1) * frame->mid_stile,
                                maker->unit, taken, sizeof taken));
        break;
    case FRAME_TOO_LOW:
        problem_add(
            maker->problems, SEVERITY_ERROR, "door-too-low", door->row->height.place,
            "door '%s' is too low: the leaf is %s high and the rails of style '%s' take %s; "
            "expected a higher door, fewer "
            "mid rails or narrower rails",
            id, length_show(door->height, maker->unit, size, sizeof size), style,
            length_show(frame->top_rail + frame->bottom_rail + (frame->rows - 1) * frame->mid_rail,
                        maker->unit, taken, sizeof taken));
        break;
    case FRAME_ROWS_DIFFER:
        problem_add(maker->problems, SEVERITY_ERROR, "rows-do-not-add-up",
                    door->row->heights.v[0].place,
                    "the given rows of door '%s' do not add up to the space between its rails; "
                    "expected heights that add up to %s",
                    id, length_show(space, maker->unit, size, sizeof size));
        break;
    case FRAME_MITRE_UNEQUAL:
        problem_add(
            maker->problems, SEVERITY_ERROR, "mitre-unequal", door->style->joint.place,
            "style '%s' is mitred with stiles and rails of different widths; expected equal widths",
            style);
        break;
    case FRAME_OK:
        break;
    }
}

static bool becomes_slab(const struct door *door) {
    const struct style *const style = door->style;
    return style->form.word == FORM_SLAB ||
           (door->row->use.word == USE_DRAWER_FRONT && style->slab_below.set &&
            door->height < style->slab_below.amount);
}

/* What the leaf is filled with must have been named for its form. */
static bool has_material(const struct maker *maker, const struct door *door) {
    static const struct {
        const char *key, *what;
    } needs[] = {
        [FORM_PANEL] = {"panel", "a sheet"},
        [FORM_SOLID] = {"panel", "a lumber"},
        [FORM_SLAB] = {"slab", "a sheet or lumber"},
        [FORM_GLASS] = {"glass", "a glass"},
    };
    const struct make *const make = &door->make;
    bool has = true;
    if (door->form == FORM_PANEL) {
        has = make->panel.kind == STUFF_SHEET;
    } else if (door->form == FORM_SOLID) {
        has = make->panel.kind == STUFF_LUMBER;
    } else if (door->form == FORM_SLAB) {
        has = make->slab.kind == STUFF_SHEET || make->slab.kind == STUFF_LUMBER;
    } else if (door->form == FORM_GLASS) {
        has = make->glass.kind == STUFF_GLASS;
    }
    if (!has) {
        problem_add(maker->problems, SEVERITY_ERROR, "no-material", door->row->place,
                    "door '%s' has no '%s' to be made of; expected %s in [make] or on the row",
                    problem_quote(maker->problems, door->row->id.s), needs[door->form].key,
                    needs[door->form].what);
    }
    if (has && door->form != FORM_SLAB && make->frame.index < 0) {
        problem_add(
            maker->problems, SEVERITY_ERROR, "no-material", door->row->place,
            "door '%s' has no 'frame' to be made of; expected a lumber in [make] or on the row",
            problem_quote(maker->problems, door->row->id.s));
        return false;
    }
    return has;
}

static void make_slab(const struct maker *maker, struct door *door) {
    const struct stuff_reference *const slab = &door->make.slab;
    if (slab->kind == STUFF_SHEET) {
        door->thickness = maker->rates->sheets[slab->index].thickness.amount;
    }
    add_field(maker, door, PART_SLAB, slab->kind, slab->index, door->width, door->height);
}

static void make_parts(const struct maker *maker, struct door *door) {
    struct frame frame;
    length space = 0;
    if (door->form == FORM_SLAB) {
        make_slab(maker, door);
        return;
    }
    const enum frame_fault fault = frame_divide(&frame, door, maker->unit, &space);
    if (fault == FRAME_OK) {
        add_frame(maker, door, &frame);
    } else {
        tell_frame_fault(maker, door, &frame, fault, space);
    }
}

static bool make_door(const struct maker *maker, struct door *door) {
    const struct leaf leaf = leaf_size(door->row, &door->make, maker->unit);
    door->width = leaf.width;
    door->height = leaf.height;
    door->leaves = (int32_t)door->row->leaves.amount;
    if (door->make.style.index < 0) {
        return true; /* the reader has said so */
    }
    door->style = &maker->rates->styles[door->make.style.index];
    door->thickness = door->style->thickness.amount;
    door->form = becomes_slab(door) ? FORM_SLAB : (enum door_form)door->style->form.word;
    door->parts = pool_take(maker->pool, MOST_PARTS, sizeof *door->parts);
    door->openings = pool_take(maker->pool, FRAME_MOST_ROWS * 2, sizeof *door->openings);
    if (door->parts == NULL || door->openings == NULL) {
        return false;
    }
    if (has_material(maker, door)) {
        make_parts(maker, door);
    }
    return true;
}

bool doors_make(struct doors *doors, const struct rates *rates, const struct job *job, int option,
                struct problems *problems) {
    *doors = (struct doors){.count = job->row_count};
    pool_init(&doors->pool);
    const struct maker maker = {
        .rates = rates, .unit = job->unit, .problems = problems, .pool = &doors->pool};
    doors->doors = pool_take(&doors->pool, job->row_count, sizeof *doors->doors);
    if (doors->doors == NULL) {
        return false;
    }
    for (size_t i = 0; i < job->row_count; i++) {
        struct door *const door = &doors->doors[i];
        door->row = &job->rows[i];
        door->make = job_row_make(job, door->row, option);
        if (!make_door(&maker, door)) {
            return false;
        }
    }
    return true;
}

void doors_clear(struct doors *doors) {
    pool_clear(&doors->pool);
    *doors = (struct doors){0};
}
