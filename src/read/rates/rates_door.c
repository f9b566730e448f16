/* SPDX-License-Identifier: MIT */
/* How a style of door is put together, and what its joints and kind ask for. */
#include "read/key/grammar.h"
#include "read/rates/rates_keys.h"

static const struct spelling forms_of_door[] = {
    {"panel", FORM_PANEL}, {"solid", FORM_SOLID}, {"slab", FORM_SLAB},
    {"glass", FORM_GLASS}, {"open", FORM_OPEN},   {NULL, 0},
};
static const struct spelling joints[] = {
    {"cope and stick", JOINT_COPE_AND_STICK},
    {"mortise and tenon", JOINT_MORTISE_AND_TENON},
    {"dowel", JOINT_DOWEL},
    {"loose tenon", JOINT_DOWEL},
    {"miter", JOINT_MITRE},
    {"mitre", JOINT_MITRE},
    {NULL, 0},
};
static const struct spelling grains[] = {
    {"vertical", PANEL_GRAIN_VERTICAL}, {"horizontal", PANEL_GRAIN_HORIZONTAL}, {NULL, 0}};

static const struct form bought_in[] = {
    {"per sqft", UNIT_MONEY_PER_SQFT, 0, 0, NO_LIMIT},
    {"per m2", UNIT_MONEY_PER_M2, 0, 0, NO_LIMIT},
    {"per door", UNIT_MONEY_PER_DOOR, 0, 0, NO_LIMIT},
    {NULL, UNIT_MONEY, 0, 0, 0},
};

#define PART_WIDTH RANGE(NM_PER_INCH / 4, 24 * NM_PER_INCH)
#define SMALL      INCHES(0, 4)

static const struct key door_keys[] = {
    {.name = "words",
     .read = read_text,
     .at = offsetof(struct style, client_name),
     .example = "frame with a flat panel",
     .help = "how the client reads it; absent: the name"},
    {.name = "kind",
     .read = read_choice,
     .at = offsetof(struct style, form),
     .choices = forms_of_door,
     .needed = true,
     .example = "panel",
     .other = "slab",
     .help = "panel (a sheet), solid (a panel of lumber), slab, glass or open"},
    {.name = "joint",
     .read = read_choice,
     .at = offsetof(struct style, joint),
     .choices = joints,
     .example = "cope and stick",
     .other = "mortise and tenon",
     .help =
         "cope and stick, mortise and tenon, dowel, loose tenon or miter; needed but for a slab"},
    {.name = "thickness",
     .read = read_length,
     .at = offsetof(struct style, thickness),
     .range = RANGE(NM_PER_INCH / 8, 4 * NM_PER_INCH),
     .example = "3/4 in",
     .help = "of the finished door; needed but for a slab"},
    {.name = "stile",
     .read = read_length,
     .at = offsetof(struct style, stile),
     .range = PART_WIDTH,
     .example = "2 1/4 in",
     .help = "finished width; needed but for a slab"},
    {.name = "top rail",
     .read = read_length,
     .at = offsetof(struct style, top_rail),
     .range = PART_WIDTH,
     .example = "2 1/4 in",
     .help = "finished width; absent: as the stile"},
    {.name = "bottom rail",
     .read = read_length,
     .at = offsetof(struct style, bottom_rail),
     .range = PART_WIDTH,
     .example = "3 in",
     .help = "finished width; absent: as the stile"},
    {.name = "mid rail",
     .read = read_length,
     .at = offsetof(struct style, mid_rail),
     .range = PART_WIDTH,
     .example = "2 1/4 in",
     .help = "finished width; absent: as the stile"},
    {.name = "mid stile",
     .read = read_length,
     .at = offsetof(struct style, mid_stile),
     .range = PART_WIDTH,
     .example = "2 1/4 in",
     .help = "finished width; absent: as the stile"},
    {.name = "tongue",
     .read = read_length,
     .at = offsetof(struct style, tongue),
     .range = SMALL,
     .example = "3/8 in",
     .help = "adds to a rail, each end; of a mortise and tenon: the tenon"},
    {.name = "groove",
     .read = read_length,
     .at = offsetof(struct style, groove),
     .range = SMALL,
     .example = "3/8 in",
     .help = "depth that takes the panel; the rabbet for glass; with cope and stick as the tongue"},
    {.name = "panel clearance",
     .read = read_length,
     .at = offsetof(struct style, panel_clearance),
     .range = SMALL,
     .example = "1/16 in",
     .help = "between panel and groove, each edge"},
    {.name = "clearance across",
     .read = read_length,
     .at = offsetof(struct style, clearance_across),
     .range = SMALL,
     .example = "1/8 in",
     .help = "of a solid panel across its grain, each edge; absent: as the panel clearance"},
    {.name = "glass clearance",
     .read = read_length,
     .at = offsetof(struct style, glass_clearance),
     .range = SMALL,
     .example = "1/8 in",
     .help = "between pane and rabbet, each edge; absent: as the panel clearance"},
    {.name = "panel grain",
     .read = read_choice,
     .at = offsetof(struct style, panel_grain),
     .choices = grains,
     .example = "vertical",
     .other = "horizontal",
     .help = "of panels and slabs; absent: vertical"},
    {.name = "drawer rail",
     .read = read_length,
     .at = offsetof(struct style, drawer_rail),
     .range = PART_WIDTH,
     .example = "1 1/2 in",
     .help = "width of the rails of drawer and false fronts; absent: as those of doors"},
    {.name = "slab below",
     .read = read_length,
     .at = offsetof(struct style, slab_below),
     .range = INCHES(0, 48),
     .example = "6 1/2 in",
     .help = "a lower drawer or false front is a slab"},
    {.name = "profile extra",
     .read = read_length,
     .at = offsetof(struct style, profile_extra),
     .range = SMALL,
     .example = "1/2 in",
     .help = "width that the profile adds to what is sprayed, along each inner edge"},
    {.name = "panel thickness",
     .read = read_length,
     .at = offsetof(struct style, panel_thickness),
     .range = RANGE(NM_PER_INCH / 8, 4 * NM_PER_INCH),
     .example = "5/8 in",
     .help = "of a solid panel, finished; absent: as the door"},
    {.name = "mean thickness",
     .read = read_length,
     .at = offsetof(struct style, mean_thickness),
     .range = RANGE(NM_PER_INCH / 8, 4 * NM_PER_INCH),
     .example = "1/2 in",
     .help = "of a raised panel, for its weight; absent: its thickness"},
    {.name = "stave",
     .read = read_length,
     .at = offsetof(struct style, stave),
     .range = RANGE(NM_PER_INCH, 24 * NM_PER_INCH),
     .example = "4 1/2 in",
     .help = "solid panels are glued up of staves at most this wide; absent: of one board"},
    {.name = "raised",
     .read = read_flag,
     .at = offsetof(struct style, raised),
     .choices = choices_yes_no,
     .example = "yes",
     .other = "no",
     .help = "whether the edges of a solid panel are raised; absent: no"},
    {.name = "bought in",
     .read = read_measure,
     .at = offsetof(struct style, bought_in),
     .forms = bought_in,
     .example = "24.00 per sqft",
     .other = "55.00 per door",
     .help = "the door is bought as it is, at this price; nothing of it is made"},
    {.name = "operations",
     .read = read_names,
     .at = offsetof(struct style, operations),
     .names = NAME_OPERATION,
     .example = "rough cut, joint, plane, rip, cope",
     .help = "what is done to make it, in order"},
};

static void inherit(struct value *value, const struct value *from) {
    if (!value->set) {
        *value = *from;
    }
}

static void check_joint(struct reader *reader, const struct ini_section *section,
                        struct style *style) {
    switch (style->joint.choice) {
    case JOINT_COPE_AND_STICK:
        /* one cutter makes both: either stands for the other */
        if (!style->groove.set && !section_has(section, "groove")) {
            section_lacks(reader, section, "tongue", "for joint = cope and stick");
        }
        inherit(&style->tongue, &style->groove);
        inherit(&style->groove, &style->tongue);
        break;
    case JOINT_MORTISE_AND_TENON:
        section_lacks(reader, section, "tongue",
                      "for joint = mortise and tenon: the length of the tenon");
        break;
    case JOINT_MITRE:
        if (style->stile.set && (style->stile.amount != style->top_rail.amount ||
                                 style->stile.amount != style->bottom_rail.amount)) {
            problem_add(
                reader->problems, SEVERITY_ERROR, "mitre-widths", style->joint.place,
                "a miter joins parts of equal width, but stile and rails differ; make stile, "
                "top rail and bottom rail equal");
        }
        if (style->stile.set && style->drawer_rail.set &&
            style->stile.amount != style->drawer_rail.amount) {
            problem_add(reader->problems, SEVERITY_ERROR, "mitre-widths", style->drawer_rail.place,
                        "a mitre joins parts of equal width, but the drawer rail is not as wide as "
                        "the stile; make them equal");
        }
        break;
    default:
        break;
    }
}

static void check_form(struct reader *reader, const struct ini_section *section,
                       struct style *style) {
    switch (style->form.choice) {
    case FORM_PANEL:
    case FORM_SOLID:
        if (!style->groove.set) {
            section_lacks(reader, section, "groove", "to hold the panel");
        }
        section_lacks(reader, section, "panel clearance", "for a panel in a groove");
        inherit(&style->clearance_across, &style->panel_clearance);
        break;
    case FORM_GLASS:
        if (!style->groove.set) {
            section_lacks(reader, section, "groove", "as the rabbet for the glass");
        }
        if (!style->panel_clearance.set) {
            section_lacks(reader, section, "glass clearance", "for kind = glass");
        }
        inherit(&style->glass_clearance, &style->panel_clearance);
        break;
    default:
        break;
    }
}

static void check_door(struct reader *reader, const struct ini_section *section, void *target) {
    struct style *style = target;

    if (!style->form.set || style->form.choice == FORM_SLAB || style->bought_in.set) {
        return;
    }
    section_lacks(reader, section, "joint", "for all but a slab");
    section_lacks(reader, section, "thickness", "for all but a slab");
    section_lacks(reader, section, "stile", "for all but a slab");
    inherit(&style->top_rail, &style->stile);
    inherit(&style->bottom_rail, &style->stile);
    inherit(&style->mid_rail, &style->stile);
    inherit(&style->mid_stile, &style->stile);
    if (style->joint.set) {
        check_joint(reader, section, style);
    }
    check_form(reader, section, style);
    if (style->panel_clearance.set && style->groove.set &&
        style->panel_clearance.amount >= style->groove.amount && style->groove.amount > 0) {
        problem_add(
            reader->problems, SEVERITY_ERROR, "clearance-over-groove", style->panel_clearance.place,
            "panel clearance is not less than the groove, the panel would fall out; expected "
            "less than the groove");
    }
}

const struct section_kind section_door = {.name = "door",
                                          .keys = door_keys,
                                          .key_count = COUNT_OF(door_keys),
                                          .named = true,
                                          .at = offsetof(struct rates, styles),
                                          .count_at = offsetof(struct rates, style_count),
                                          .size = sizeof(struct style),
                                          .check = check_door,
                                          .help = "A style of door or front."};
