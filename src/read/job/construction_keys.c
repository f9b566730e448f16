/* SPDX-License-Identifier: MIT */
/* How a door is made: the keys of [make] and [option NAME], which are columns of the door list too.
 */
#include "read/job/hardware_items.h"
#include "read/job/job_keys.h"
#include "read/key/quantity.h"
#include "read/key/rows.h"
#include "read/rates/rates_keys.h"

#define OVERLAY_RANGE INCHES(0, 12)

static const struct spelling measures[] = {
    {"opening", MEASURE_OPENING}, {"door", MEASURE_DOOR}, {0}};

static void set_fit(struct construction *construction, enum fit fit, struct place place) {
    construction->fit = (struct choice){.place = place, .choice = (int)fit, .set = true};
}

/* `overlay`: on all sides, until one is given by itself. */
static void read_overlay(struct reader *reader, const struct key *key, const struct entry *entry,
                         void *target) {
    struct construction *construction = target;
    struct value value;

    if (length_value(reader, key, entry, key->kind.range, &value)) {
        for (size_t side = 0; side < SIDE_COUNT; side++) {
            construction->overlay[side] = value;
        }
        set_fit(construction, FIT_OVERLAY, entry->place);
    }
}

static void read_side(struct reader *reader, const struct key *key, const struct entry *entry,
                      void *target) {
    if (length_value(reader, key, entry, key->kind.range, key_field(key, target))) {
        set_fit(target, FIT_OVERLAY, entry->place);
    }
}

static void read_reveal(struct reader *reader, const struct key *key, const struct entry *entry,
                        void *target) {
    if (length_value(reader, key, entry, key->kind.range, key_field(key, target))) {
        set_fit(target, FIT_INSET, entry->place);
    }
}

const struct key construction_keys[CONSTRUCTION_KEY_COUNT] = {
    {"style", AS_NAME(NAME_STYLE), FIELD(construction, style), "shaker",
     .help = "a [door NAME] of the rates"},
    {"frame", AS_MATERIAL(1U << MATERIAL_LUMBER), FIELD(construction, frame), "poplar",
     .help = "lumber of stiles and rails"},
    {"panel", AS_MATERIAL(1U << MATERIAL_SHEET | 1U << MATERIAL_LUMBER), FIELD(construction, panel),
     "maple-ply", .help = "a sheet; lumber for solid panels"},
    {"solid panel", AS_MATERIAL(1U << MATERIAL_LUMBER), FIELD(construction, solid), "poplar",
     .help = "lumber for solid panels, where others are of a sheet; absent: as the panel"},
    {"slab", AS_MATERIAL(1U << MATERIAL_SHEET | 1U << MATERIAL_LUMBER), FIELD(construction, slab),
     "birch-ply-18", .help = "a sheet or lumber, for slabs"},
    {"glass", AS_MATERIAL(1U << MATERIAL_GLASS), FIELD(construction, glass), "clear",
     .help = "a [glass NAME], for frames for glass"},
    {"finish", AS_NAME_OR_NONE(NAME_FINISH), FIELD(construction, finish), "painted", "none",
     .help = "a [finish NAME]; none: left bare"},
    {"hinge", AS_NAME_OR_NONE(NAME_HARDWARE), FIELD(construction, hinge), "cup-hinge", "none",
     .help = "a [hardware NAME]; none: no hinges"},
    {"pull", AS_NAME_OR_NONE(NAME_HARDWARE), FIELD(construction, pull), "bar-pull", "none",
     .help = "a [hardware NAME], one a leaf or as the column `pulls` says; none: no pulls"},
    {"fold hinge", AS_NAME_OR_NONE(NAME_HARDWARE), FIELD(construction, fold_hinge), "fold-hinge",
     "none", .help = "a [hardware NAME] between leaves that fold; none: they are joined by others"},
    {"hardware", AS_OWN(read_hardware_items, .names = NAME_HARDWARE), FIELD(construction, hardware),
     "1 catch, 2 bumper", "1 lock per opening",
     .help = "other [hardware NAME]s and how many of each on a leaf, or for an opening; none"},
    {"color", AS_TEXT, FIELD(construction, color), "sea green", .help = "of the finish"},
    {"grain", AS_CHOICE(choices_grain), FIELD(construction, grain), "horizontal", "vertical",
     .help = "of panels and slabs; absent: the `panel grain` of the style"},
    {"measure", AS_CHOICE(measures), FIELD(construction, size_is), "opening", "door",
     .help = "what width and height are of: the opening, or one finished leaf; absent: opening"},
    {"overlay", AS_OWN(read_overlay, .range = OVERLAY_RANGE), FIELD(construction, overlay),
     "1/2 in", .help = "by which the door covers the cabinet, each side"},
    {"overlay left", AS_OWN(read_side, .range = OVERLAY_RANGE),
     FIELD(construction, overlay[SIDE_LEFT]), "1/4 in", .help = "where it differs"},
    {"overlay right", AS_OWN(read_side, .range = OVERLAY_RANGE),
     FIELD(construction, overlay[SIDE_RIGHT]), "1/4 in", .help = "where it differs"},
    {"overlay top", AS_OWN(read_side, .range = OVERLAY_RANGE),
     FIELD(construction, overlay[SIDE_TOP]), "1/4 in", .help = "where it differs"},
    {"overlay bottom", AS_OWN(read_side, .range = OVERLAY_RANGE),
     FIELD(construction, overlay[SIDE_BOTTOM]), "1/4 in", .help = "where it differs"},
    {"reveal", AS_OWN(read_reveal, .range = INCHES(0, 2)), FIELD(construction, reveal), "3/32 in",
     .help = "gap of an inset door to the opening, each side; instead of overlay"},
    {"gap", AS_LENGTH(INCHES(0, 2)), FIELD(construction, gap), "1/8 in",
     .help = "between the leaves of a pair"},
    {"corner", AS_LENGTH(INCHES(0, 6)), FIELD(construction, corner), "7/8 in",
     .help = "by which each leaf of a pie-cut pair ends before the corner"},
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
