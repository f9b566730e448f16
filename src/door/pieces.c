/* SPDX-License-Identifier: MIT */
/* From a leaf to its parts.  The frame is divided first (frame.c); then each piece is noted once a
 * size, so that a door with two equal mid rails has one part of two pieces. */
#include "door/pieces.h"

#include "door/arch.h"
#include "door/frame.h"
#include "model/construction.h"

#include <assert.h>

/* Notes pieces of a size: with a part of the same kind and size if there is one. */
static void add_part(struct door *door, const struct part *part) {
    for (size_t i = 0; i < door->part_count; i++) {
        struct part *const old = &door->parts[i];
        if (old->kind == part->kind && old->length == part->length && old->width == part->width &&
            old->rise == part->rise) {
            old->count += part->count;
            return;
        }
    }
    assert(door->part_count < FRAME_MOST_PARTS);
    door->parts[door->part_count++] = *part;
}

/* A part of the frame, cut to the nearest step; its width is that of the blank, from which an arch
 * of `rise` is cut. */
static void add_frame_part(const struct calc *c, struct door *door, enum part_kind kind,
                           int32_t count, length along_exact, length width_exact, length rise) {
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
        .rise = rise,
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
 * it goes in; to be cut to an arch of `rise`. */
static void add_field(const struct calc *c, struct door *door, enum part_kind kind,
                      enum material_kind material_kind, int32_t material, length most_width,
                      length most_height, length rise) {
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
        .rise = rise,
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

/* Bars as long as the opening, halved where they cross: ripped off the edge of a board that is as
 * thick as they are wide. */
static void add_bars(const struct calc *c, struct door *door, int32_t count, length along) {
    const struct style *const style = door->style;
    const struct saw *const saw = &c->rates->saw;
    if (count == 0) {
        return;
    }
    const length cut = size_down(door->step, along);
    const length thick = size_nearest(door->step, style->bar_thickness.amount);
    const struct part part = {
        .kind = PART_BAR,
        .material_kind = MATERIAL_LUMBER,
        .material = door->construction->frame.index,
        .count = count * (style->bars_on.choice == BARS_ON_BOTH ? 2 : 1),
        .length = cut,
        .width = thick,
        .thickness = style->bar_width.amount,
        .rough_length = size_up(door->step, cut + saw->length_allowance.amount),
        .rough_width = size_up(door->step, thick + 2 * saw->edge_allowance.amount),
        .weight_thickness = style->bar_width.amount,
        .staves = 1,
    };
    add_part(door, &part);
}

static void add_opening(struct door *door, length width, length height, length rise,
                        enum length_unit unit) {
    const length top = rise > 0 ? arch_length(width, rise, unit) - 2 * rise : width;
    door->stuck_edge += width + 2 * height + top;
    door->arches += rise > 0 ? 1 : 0;
    for (size_t i = 0; i < door->opening_count; i++) {
        struct opening *const old = &door->openings[i];
        if (old->width == width && old->height == height && old->rise == rise) {
            old->count++;
            return;
        }
    }
    door->openings[door->opening_count++] =
        (struct opening){.width = width, .height = height, .rise = rise, .count = 1};
}

static length clamp_rabbet(length depth, length clearance) {
    return 2 * (depth - clearance);
}

/* What fills one opening: a sheet or solid panel in the grooves, cut to the arch; a pane in the
 * rabbet, a rectangle behind it; or nothing. */
static void fill_opening(const struct calc *c, struct door *door, length width, length height,
                         length rise) {
    const struct style *const style = door->style;
    const length groove = style->groove.amount;
    length more_width = clamp_rabbet(groove, style->panel_clearance.amount);
    length more_height = more_width;
    switch (door->form) {
    case FORM_PANEL:
        add_field(c, door, PART_PANEL, MATERIAL_SHEET,
                  construction_panel(door->construction, door->form)->index, width + more_width,
                  height + more_height, rise);
        break;
    case FORM_SOLID:
        if (door_grain(door) == PANEL_GRAIN_VERTICAL) {
            more_width = clamp_rabbet(groove, style->clearance_across.amount);
        } else {
            more_height = clamp_rabbet(groove, style->clearance_across.amount);
        }
        add_field(c, door, PART_PANEL, MATERIAL_LUMBER,
                  construction_panel(door->construction, door->form)->index, width + more_width,
                  height + more_height, rise);
        break;
    case FORM_GLASS:
        more_width = clamp_rabbet(groove, style->glass_clearance.amount);
        add_field(c, door, PART_PANE, MATERIAL_GLASS, door->construction->glass.index,
                  width + more_width, height + more_width, 0);
        add_bars(c, door, style_bars(style, door->row).upright, height);
        add_bars(c, door, style_bars(style, door->row).level, width);
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
    add_frame_part(c, door, PART_STILE, 2, door->height, frame->stile, 0);
    add_frame_part(c, door, PART_TOP_RAIL, 1, rail, frame->top_rail + frame->rise, frame->rise);
    add_frame_part(c, door, PART_BOTTOM_RAIL, 1, rail, frame->bottom_rail, 0);
    if (frame->rows > 1) {
        add_frame_part(c, door, PART_MID_RAIL, frame->rows - 1, between, frame->mid_rail, 0);
    }
    for (int32_t r = 0; r < frame->rows; r++) {
        const length rise = r == 0 ? frame->rise : 0;
        if (frame->columns > 1) { /* those of the top row end where the arches spring */
            add_frame_part(c, door, PART_MID_STILE, frame->columns - 1,
                           frame->row[r] - rise + tongues, frame->mid_stile, 0);
        }
        for (int32_t k = 0; k < frame->columns; k++) {
            add_opening(door, frame->column[k], frame->row[r], rise, c->units->lengths);
            fill_opening(c, door, frame->column[k], frame->row[r], rise);
        }
    }
    door->joints = 4 + 2 * (frame->rows - 1) + 2 * (frame->columns - 1) * frame->rows;
}

static void make_slab(const struct calc *c, struct door *door) {
    const struct material_reference *const slab = &door->construction->slab;
    if (slab->kind == MATERIAL_SHEET) {
        door->thickness = c->rates->sheets[slab->index].thickness.amount;
    }
    add_field(c, door, PART_SLAB, slab->kind, slab->index, door->width, door->height, 0);
}

void pieces_make(const struct calc *c, struct door *door) {
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
