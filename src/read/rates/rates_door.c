/* SPDX-License-Identifier: MIT */
/* How a style of door is put together, and what its joints and kind ask for. */
#include "model/size_step.h"
#include "read/key/rows.h"
#include "read/rates/rates_keys.h"

static const struct spelling forms_of_door[] = {
    {"panel", FORM_PANEL}, {"solid", FORM_SOLID}, {"slab", FORM_SLAB},
    {"glass", FORM_GLASS}, {"open", FORM_OPEN},   {0},
};
static const struct spelling joints[] = {
    {"cope and stick", JOINT_COPE_AND_STICK},
    {"mortise and tenon", JOINT_MORTISE_AND_TENON},
    {"dowel", JOINT_DOWEL},
    {"loose tenon", JOINT_DOWEL},
    {"miter", JOINT_MITER},
    {"mitre", JOINT_MITER},
    {0},
};
const struct spelling choices_grain[] = {
    {"vertical", PANEL_GRAIN_VERTICAL}, {"horizontal", PANEL_GRAIN_HORIZONTAL}, {0}};

static const struct spelling bar_faces[] = {{"front", BARS_ON_FRONT}, {"both", BARS_ON_BOTH}, {0}};

static const struct unit_form bought_in[] = {
    {"per sqft", UNIT_MONEY_PER_SQFT, 0, 0, NO_LIMIT},
    {"per m2", UNIT_MONEY_PER_M2, 0, 0, NO_LIMIT},
    {"per door", UNIT_MONEY_PER_DOOR, 0, 0, NO_LIMIT},
    {0},
};

#define PART_WIDTH RANGE(NM_PER_INCH / 4, 24 * NM_PER_INCH)
#define SMALL      INCHES(0, 4)

static const struct key door_keys[] = {
    {"words", AS_TEXT, FIELD(style, client_name), "frame with a flat panel",
     .help = "how the client reads it; absent: the name"},
    {"kind", AS_CHOICE(forms_of_door), FIELD(style, form), "panel", "slab", .needed = true,
     .help = "panel (a sheet), solid (a panel of lumber), slab, glass or open"},
    {"joint", AS_CHOICE(joints), FIELD(style, joint), "cope and stick", "mortise and tenon",
     .help =
         "cope and stick, mortise and tenon, dowel, loose tenon or miter; needed but for a slab"},
    {"thickness", AS_LENGTH(RANGE(NM_PER_INCH / 8, 4 * NM_PER_INCH)), FIELD(style, thickness),
     "3/4 in", .help = "of the finished door; needed but for a slab of a sheet"},
    {"stile", AS_LENGTH(PART_WIDTH), FIELD(style, stile), "2 1/4 in",
     .help = "finished width; needed but for a slab"},
    {"top rail", AS_LENGTH(PART_WIDTH), FIELD(style, top_rail), "2 1/4 in",
     .help = "finished width; absent: as the stile"},
    {"bottom rail", AS_LENGTH(PART_WIDTH), FIELD(style, bottom_rail), "3 in",
     .help = "finished width; absent: as the stile"},
    {"mid rail", AS_LENGTH(PART_WIDTH), FIELD(style, mid_rail), "2 1/4 in",
     .help = "finished width; absent: as the stile"},
    {"mid stile", AS_LENGTH(PART_WIDTH), FIELD(style, mid_stile), "2 1/4 in",
     .help = "finished width; absent: as the stile"},
    {"tongue", AS_LENGTH(SMALL), FIELD(style, tongue), "3/8 in",
     .help = "adds to a rail, each end; of a mortise and tenon: the tenon"},
    {"groove", AS_LENGTH(SMALL), FIELD(style, groove), "3/8 in",
     .help = "depth that takes the panel; the rabbet for glass; with cope and stick as the tongue"},
    {"panel clearance", AS_LENGTH(SMALL), FIELD(style, panel_clearance), "1/16 in",
     .help = "between panel and groove, each edge"},
    {"clearance across", AS_LENGTH(SMALL), FIELD(style, clearance_across), "1/8 in",
     .help = "of a solid panel across its grain, each edge; absent: as the panel clearance"},
    {"glass clearance", AS_LENGTH(SMALL), FIELD(style, glass_clearance), "1/8 in",
     .help = "between pane and rabbet, each edge; absent: as the panel clearance"},
    {"panel grain", AS_CHOICE(choices_grain), FIELD(style, panel_grain), "vertical", "horizontal",
     .help = "of panels and slabs, unless a row says otherwise; absent: vertical"},
    {"bar width", AS_LENGTH(RANGE(NM_PER_INCH / 8, 4 * NM_PER_INCH)), FIELD(style, bar_width),
     "5/8 in", .help = "as seen, of the bars that rows lay on their glass"},
    {"bar thickness", AS_LENGTH(RANGE(NM_PER_INCH / 16, 4 * NM_PER_INCH)),
     FIELD(style, bar_thickness), "1/4 in", .help = "of these bars, off the glass"},
    {"bars on", AS_CHOICE(bar_faces), FIELD(style, bars_on), "front", "both",
     .help = "on which faces of the glass they lie; absent: front"},
    {"drawer rail", AS_LENGTH(PART_WIDTH), FIELD(style, drawer_rail), "1 1/2 in",
     .help = "width of the rails of drawer and false fronts; absent: as those of doors"},
    {"slab below", AS_LENGTH(INCHES(0, 48)), FIELD(style, slab_below), "6 1/2 in",
     .help = "a lower drawer or false front is a slab"},
    {"slab style", AS_NAME(NAME_STYLE), FIELD(style, slab_style), "slab",
     .help = "the [door NAME] of kind slab by which it is made; needed with `slab below`"},
    {"profile extra", AS_LENGTH(SMALL), FIELD(style, profile_extra), "1/2 in",
     .help = "width that the profile adds to what is sprayed, along each inner edge"},
    {"panel thickness", AS_LENGTH(RANGE(NM_PER_INCH / 8, 4 * NM_PER_INCH)),
     FIELD(style, panel_thickness), "5/8 in",
     .help = "of a solid panel, finished; absent: as the door"},
    {"mean thickness", AS_LENGTH(RANGE(NM_PER_INCH / 8, 4 * NM_PER_INCH)),
     FIELD(style, mean_thickness), "1/2 in",
     .help = "of a raised panel, for its weight; absent: its thickness"},
    {"stave", AS_LENGTH(RANGE(NM_PER_INCH, 24 * NM_PER_INCH)), FIELD(style, stave), "4 1/2 in",
     .help = "solid panels are glued up of staves at most this wide; absent: of one board"},
    {"raised", AS_YES_NO, FIELD(style, raised), "yes", "no",
     .help = "whether the edges of a solid panel are raised; absent: no"},
    {"bought in", AS_QUANTITY(bought_in), FIELD(style, bought_in), "24.00 per sqft",
     "55.00 per door", .help = "the door is bought as it is, at this price; nothing of it is made"},
    {"bought as", AS_NAME(NAME_STYLE), FIELD(style, bought_as), "shaker-bought",
     .help = "the [door NAME] bought in that can be had in its place; `ways` weighs it"},
    {"slats", AS_LENGTH(RANGE(NM_PER_INCH / 4, 12 * NM_PER_INCH)), FIELD(style, slats), "1 1/2 in",
     .help = "of a door bought in: drawn so far apart in its frame, for the client to see"},
    {"operations", AS_NAMES(NAME_OPERATION), FIELD(style, operations),
     "rough cut, joint, plane, rip, cope", .help = "what is done to make it, in order"},
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
    case JOINT_MITER:
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

    if (style->slab_below.set) {
        section_lacks(reader, section, "slab style", "for slab below: by which the slab is made");
    }
    if (!style->form.set || style->form.choice == FORM_SLAB) {
        return;
    }
    if (style->slats.set) {
        section_lacks(reader, section, "stile", "for slats: the frame that they are drawn in");
    }
    inherit(&style->top_rail, &style->stile);
    inherit(&style->bottom_rail, &style->stile);
    inherit(&style->mid_rail, &style->stile);
    inherit(&style->mid_stile, &style->stile);
    if (style->bought_in.set) {
        return; /* what it lacks is not drawn */
    }
    section_lacks(reader, section, "joint", "for all but a slab");
    section_lacks(reader, section, "thickness", "for all but a slab");
    section_lacks(reader, section, "stile", "for all but a slab");
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

/* Sizes of frames that lie between the shop's steps: parts are cut to the nearest, and a frame of
 * such parts is off by the difference. */
static void ask_between_steps(struct reader *reader, const struct rates *rates,
                              const struct style *style) {
    const struct size_step step = size_step_of(&rates->saw, reader->unit);
    const struct value *const sizes[] = {
        &style->stile,     &style->top_rail,    &style->bottom_rail, &style->mid_rail,
        &style->mid_stile, &style->drawer_rail, &style->tongue,
    };
    char text[32];
    struct place asked = {0};

    for (size_t i = 0; i < COUNT_OF(sizes); i++) {
        const struct value *const size = sizes[i];
        const bool inherited = size->place.line == asked.line;
        if (!size->set || inherited || size_nearest(step, size->amount) == size->amount) {
            continue;
        }
        asked = size->place;
        problem_add(reader->problems, SEVERITY_WARNING, "between-steps", size->place,
                    "a size of style '%s' lies between steps of %s %s; parts of the frame are cut "
                    "to the nearest, and the frame is off by the rest",
                    problem_quote(reader->problems, style->name.s),
                    length_show(step.step, reader->unit, text, sizeof(text)),
                    reader->unit == LENGTH_INCH ? "in" : "mm");
    }
}

/* What is to be had from others has to be another style, and bought in. */
static void check_bought_as(struct reader *reader, const struct rates *rates,
                            const struct style *style) {
    const struct reference *const named = &style->bought_as;
    if (named->name.s == NULL || named->index < 0) {
        return;
    }
    const struct style *const bought = &rates->styles[named->index];
    if (bought == style || !bought->bought_in.set) {
        problem_add(reader->problems, SEVERITY_ERROR, "made-by-nobody", named->name.place,
                    "style '%s' can be bought as '%s', which is %s; name a [door] that has "
                    "'bought in'",
                    problem_quote(reader->problems, style->name.s),
                    problem_quote(reader->problems, named->name.s),
                    bought == style ? "itself" : "not bought in");
    }
}

/* Once all styles are read, as one may stand behind another that names it. */
void styles_check(struct reader *reader, const struct rates *rates) {
    for (size_t i = 0; i < rates->style_count; i++) {
        check_bought_as(reader, rates, &rates->styles[i]);
        if (rates->saw.size_step.set) {
            ask_between_steps(reader, rates, &rates->styles[i]);
        }
        const struct reference *const named = &rates->styles[i].slab_style;
        const struct choice *const form =
            named->index < 0 ? NULL : &rates->styles[named->index].form;
        if (form != NULL && form->set && form->choice != FORM_SLAB) {
            problem_add(reader->problems, SEVERITY_ERROR, "slab-style-kind", named->name.place,
                        "slab style '%s' is no style of kind slab; name one that is",
                        problem_quote(reader->problems, named->name.s));
        }
        const struct value *const bars = rates->styles[i].bar_width.set
                                             ? &rates->styles[i].bar_width
                                             : &rates->styles[i].bar_thickness;
        if (bars->set && rates->styles[i].form.set && rates->styles[i].form.choice != FORM_GLASS) {
            problem_add(reader->problems, SEVERITY_WARNING, "without-effect", bars->place,
                        "the bars have no effect: only glass takes them, and style '%s' has none; "
                        "take them away",
                        problem_quote(reader->problems, rates->styles[i].name.s));
        }
        const struct value *const slats = &rates->styles[i].slats;
        if (slats->set &&
            (!rates->styles[i].bought_in.set || rates->styles[i].form.choice != FORM_OPEN)) {
            problem_add(reader->problems, SEVERITY_WARNING, "without-effect", slats->place,
                        "slats have no effect in style '%s': they are drawn in doors of kind open "
                        "that are bought in, none are made here; take them away",
                        problem_quote(reader->problems, rates->styles[i].name.s));
        }
        if (named->name.s != NULL && !rates->styles[i].slab_below.set) {
            problem_add(reader->problems, SEVERITY_WARNING, "without-effect", named->name.place,
                        "slab style '%s' has no effect: without 'slab below' no front is made as "
                        "a slab; add it, or take this away",
                        problem_quote(reader->problems, named->name.s));
        }
    }
}

const struct section_kind section_door = {"door",
                                          door_keys,
                                          COUNT_OF(door_keys),
                                          SECTIONS(rates, styles, style_count, style),
                                          .check = check_door,
                                          .help = "A style of door or front."};
