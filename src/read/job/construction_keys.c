/* SPDX-License-Identifier: MIT */
/* How a door is made: the keys of [make] and [option NAME], which are columns of the door list too.
 */
#include "read/job/job_keys.h"
#include "read/key/grammar.h"
#include "read/key/measure.h"
#include "read/rates/rates_keys.h"

#define OVERLAY_RANGE INCHES(0, 12)

static const struct spelling measures[] = {
    {"opening", MEASURE_OPENING}, {"door", MEASURE_DOOR}, {NULL, 0}};

static void set_fit(struct construction *construction, enum fit fit, struct place place) {
    construction->fit = (struct choice){.place = place, .choice = (int)fit, .set = true};
}

/* `overlay`: on all sides, until one is given by itself. */
static void read_overlay(struct reader *reader, const struct key *key, const struct entry *entry,
                         void *target) {
    struct construction *construction = target;
    struct value value;

    if (length_value(reader, key, entry, key->range, &value)) {
        for (size_t side = 0; side < SIDE_COUNT; side++) {
            construction->overlay[side] = value;
        }
        set_fit(construction, FIT_OVERLAY, entry->place);
    }
}

static void read_side(struct reader *reader, const struct key *key, const struct entry *entry,
                      void *target) {
    if (length_value(reader, key, entry, key->range, key_field(key, target))) {
        set_fit(target, FIT_OVERLAY, entry->place);
    }
}

static void read_reveal(struct reader *reader, const struct key *key, const struct entry *entry,
                        void *target) {
    if (length_value(reader, key, entry, key->range, key_field(key, target))) {
        set_fit(target, FIT_INSET, entry->place);
    }
}

const struct key construction_keys[CONSTRUCTION_KEY_COUNT] = {
    {.name = "style",
     .read = read_name,
     .at = offsetof(struct construction, style),
     .names = NAME_STYLE,
     .example = "shaker",
     .help = "a [door NAME] of the rates"},
    {.name = "frame",
     .read = read_material,
     .at = offsetof(struct construction, frame),
     .material_kind = 1U << MATERIAL_LUMBER,
     .example = "poplar",
     .help = "lumber of stiles and rails"},
    {.name = "panel",
     .read = read_material,
     .at = offsetof(struct construction, panel),
     .material_kind = 1U << MATERIAL_SHEET | 1U << MATERIAL_LUMBER,
     .example = "maple-ply",
     .help = "a sheet; lumber for solid panels"},
    {.name = "solid panel",
     .read = read_material,
     .at = offsetof(struct construction, solid),
     .material_kind = 1U << MATERIAL_LUMBER,
     .example = "poplar",
     .help = "lumber for solid panels, where others are of a sheet; absent: as the panel"},
    {.name = "slab",
     .read = read_material,
     .at = offsetof(struct construction, slab),
     .material_kind = 1U << MATERIAL_SHEET | 1U << MATERIAL_LUMBER,
     .example = "birch-ply-18",
     .help = "a sheet or lumber, for slabs"},
    {.name = "glass",
     .read = read_material,
     .at = offsetof(struct construction, glass),
     .material_kind = 1U << MATERIAL_GLASS,
     .example = "clear",
     .help = "a [glass NAME], for frames for glass"},
    {.name = "finish",
     .read = read_name_none,
     .at = offsetof(struct construction, finish),
     .names = NAME_FINISH,
     .example = "painted",
     .other = "none",
     .help = "a [finish NAME]; none: left bare"},
    {.name = "hinge",
     .read = read_name_none,
     .at = offsetof(struct construction, hinge),
     .names = NAME_HARDWARE,
     .example = "cup-hinge",
     .other = "none",
     .help = "a [hardware NAME]; none: no hinges"},
    {.name = "pull",
     .read = read_name_none,
     .at = offsetof(struct construction, pull),
     .names = NAME_HARDWARE,
     .example = "bar-pull",
     .other = "none",
     .help = "a [hardware NAME], one a leaf or as the column `pulls` says; none: no pulls"},
    {.name = "color",
     .read = read_text,
     .at = offsetof(struct construction, color),
     .example = "sea green",
     .help = "of the finish"},
    {.name = "measure",
     .read = read_choice,
     .at = offsetof(struct construction, measure),
     .choices = measures,
     .example = "opening",
     .other = "door",
     .help = "what width and height are of: the opening, or one finished leaf; absent: opening"},
    {.name = "overlay",
     .read = read_overlay,
     .at = offsetof(struct construction, overlay),
     .range = OVERLAY_RANGE,
     .example = "1/2 in",
     .help = "by which the door covers the cabinet, each side"},
    {.name = "overlay left",
     .read = read_side,
     .at = offsetof(struct construction, overlay[SIDE_LEFT]),
     .range = OVERLAY_RANGE,
     .example = "1/4 in",
     .help = "where it differs"},
    {.name = "overlay right",
     .read = read_side,
     .at = offsetof(struct construction, overlay[SIDE_RIGHT]),
     .range = OVERLAY_RANGE,
     .example = "1/4 in",
     .help = "where it differs"},
    {.name = "overlay top",
     .read = read_side,
     .at = offsetof(struct construction, overlay[SIDE_TOP]),
     .range = OVERLAY_RANGE,
     .example = "1/4 in",
     .help = "where it differs"},
    {.name = "overlay bottom",
     .read = read_side,
     .at = offsetof(struct construction, overlay[SIDE_BOTTOM]),
     .range = OVERLAY_RANGE,
     .example = "1/4 in",
     .help = "where it differs"},
    {.name = "reveal",
     .read = read_reveal,
     .at = offsetof(struct construction, reveal),
     .range = INCHES(0, 2),
     .example = "3/32 in",
     .help = "gap of an inset door to the opening, each side; instead of overlay"},
    {.name = "gap",
     .read = read_length,
     .at = offsetof(struct construction, gap),
     .range = INCHES(0, 2),
     .example = "1/8 in",
     .help = "between the leaves of a pair"},
};

void construction_init(struct construction *construction) {
    *construction = (struct construction){0};
    for (size_t i = 0; i < CONSTRUCTION_KEY_COUNT; i++) {
        key_preset(&construction_keys[i], (struct place){0}, construction);
    }
}

void construction_check(struct reader *reader, const struct construction *construction) {
    bool overlay = false;

    for (size_t side = 0; side < SIDE_COUNT; side++) {
        overlay = overlay || construction->overlay[side].set;
    }
    if (overlay && construction->reveal.set) {
        problem_add(reader->problems, SEVERITY_ERROR, "both-given", construction->reveal.place,
                    "overlay and reveal are both given; keep the one that holds: a door lies over "
                    "its opening or in it");
    }
}
