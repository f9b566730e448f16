/* SPDX-License-Identifier: MIT */
/* Whether what is named for a row is enough to make its door. */
#include "door/door.h"
#include "door/frame.h"
#include "model/construction.h"
#include "read/job/job_keys.h"

/* Of what a part of a door is made. */
struct part_need {
    const char *part;  /* the key */
    const char *words; /* what it must be */
    const struct material_reference *given;
    unsigned material_kind; /* bits 1 << enum material_kind */
};

const struct style *row_style(const struct reader *reader, const struct row *row,
                              const struct construction *construction) {
    return leaf_style(
        reader->rates, &reader->rates->styles[construction->style.index], row,
        leaf_size(row, construction, LEAF_HUNG, size_step_of(&reader->rates->saw, reader->unit))
            .height);
}

/* What a style asks for; the count of needs. */
static size_t needs_of(const struct style *style, const struct construction *construction,
                       struct part_need needs[2]) {
    static const struct {
        const char *part, *words;
        unsigned material_kind;
    } filled[] = {
        [FORM_PANEL] = {"panel", "a sheet for its panel", 1U << MATERIAL_SHEET},
        [FORM_SOLID] = {"panel", "lumber for its panel", 1U << MATERIAL_LUMBER},
        [FORM_GLASS] = {"glass", "glass for its frame", 1U << MATERIAL_GLASS},
    };
    int form = style->form.choice;

    if (form == FORM_SLAB) {
        needs[0] = (struct part_need){"slab", "a sheet or lumber for its slab", &construction->slab,
                                      1U << MATERIAL_SHEET | 1U << MATERIAL_LUMBER};
        return 1;
    }
    needs[0] = (struct part_need){"frame", "lumber for its frame", &construction->frame,
                                  1U << MATERIAL_LUMBER};
    if (form != FORM_PANEL && form != FORM_SOLID && form != FORM_GLASS) {
        return 1;
    }
    needs[1] = (struct part_need){filled[form].part, filled[form].words,
                                  form == FORM_GLASS
                                      ? &construction->glass
                                      : construction_panel(construction, (enum door_form)form),
                                  filled[form].material_kind};
    return 2;
}

const char *option_words(struct reader *reader, const struct option *option) {
    const char *words = option == NULL
                            ? ""
                            : pool_format(&reader->problems->pool, " in option '%s'",
                                          problem_quote(reader->problems, option->name.s));

    return words == NULL ? "" : words;
}

static const char *shown(struct reader *reader, length value) {
    char text[32];
    const char *all = pool_format(&reader->problems->pool, "%s %s",
                                  length_show(value, reader->unit, text, sizeof(text)),
                                  reader->unit == LENGTH_INCH ? "in" : "mm");

    return all == NULL ? "" : all;
}

/* Whether the bars of a row have a size, and leave lights between them in the smallest pane. */
static bool check_bars(struct reader *reader, const struct row *row, const struct style *style,
                       const struct frame *frame, const struct option *option) {
    const struct bars bars = style_bars(style, row);
    const length width = style->bar_width.amount;
    length wide = frame->column[0];
    length high = frame->row[0];

    if (bars.upright + bars.level == 0) {
        return true;
    }
    if (!style->bar_width.set || !style->bar_thickness.set) {
        problem_add(reader->problems, SEVERITY_ERROR, "bars-without-size", row->lights_wide.place,
                    "the row lays bars on its glass and style '%s'%s lacks '%s'; add it there",
                    problem_quote(reader->problems, style->name.s), option_words(reader, option),
                    style->bar_width.set ? "bar thickness" : "bar width");
        return false;
    }
    for (int32_t c = 0; c < frame->columns; c++) {
        wide = frame->column[c] < wide ? frame->column[c] : wide;
    }
    for (int32_t r = 0; r < frame->rows; r++) {
        high = frame->row[r] < high ? frame->row[r] : high;
    }
    if (bars.upright * width < wide && bars.level * width < high) {
        return true;
    }
    problem_add(reader->problems, SEVERITY_ERROR, "bars-too-many", row->lights_wide.place,
                "bars %s wide leave nothing of a pane %s wide and %s high%s; take fewer or "
                "narrower ones",
                shown(reader, width), shown(reader, wide), shown(reader, high),
                option_words(reader, option));
    return false;
}

/* Whether the frame has room in the leaf, and given rows add up to it. */
static bool check_size(struct reader *reader, const struct row *row,
                       const struct construction *construction, enum leaf_role role,
                       const struct style *style, const struct option *option) {
    const struct size_step step = size_step_of(&reader->rates->saw, reader->unit);
    const struct leaf leaf = leaf_size(row, construction, role, step);
    struct frame frame;
    const enum frame_fault fault = frame_divide(&frame, style, row, leaf, step);
    length given = 0;

    switch (fault) {
    case FRAME_OK:
        break;
    case FRAME_TOO_NARROW:
    case FRAME_TOO_LOW:
        problem_add(
            reader->problems, SEVERITY_ERROR, "door-too-small", row->place,
            "the door is %s %s, its frame alone takes %s%s; make it a slab, or of narrower parts",
            shown(reader, fault == FRAME_TOO_NARROW ? leaf.width : leaf.height),
            fault == FRAME_TOO_NARROW ? "wide" : "high",
            shown(reader, fault == FRAME_TOO_NARROW ? frame_across(&frame) : frame_down(&frame)),
            option_words(reader, option));
        break;
    case FRAME_ARCH_MITERED:
        problem_add(
            reader->problems, SEVERITY_ERROR, "arch-mitered", row->arch.place,
            "style '%s' is mitered%s, and a mitered rail takes no arch; take the arch away, "
            "or name a style with rails between its stiles",
            problem_quote(reader->problems, style->name.s), option_words(reader, option));
        break;
    case FRAME_ARCH_HIGH:
        problem_add(reader->problems, SEVERITY_ERROR, "arch-too-high", row->arch.place,
                    "the arch rises %s in an opening %s wide and %s high%s; expected at most half "
                    "the width, and less than the height",
                    shown(reader, row->arch.amount), shown(reader, frame.column[0]),
                    shown(reader, frame.row[0]), option_words(reader, option));
        break;
    case FRAME_ROWS_DIFFER:
        for (size_t i = 0; i < row->heights.count; i++) {
            given += row->heights.v[i].amount;
        }
        problem_add(reader->problems, SEVERITY_ERROR, "rows-and-height", row->heights.v[0].place,
                    "rows and rails are %s high together, but the door is %s%s; expected the same",
                    shown(reader, frame_down(&frame) + given), shown(reader, leaf.height),
                    option_words(reader, option));
        break;
    }
    return fault == FRAME_OK && check_bars(reader, row, style, &frame, option);
}

/* The same for each leaf whose width was read; of leaves that fold only those of a pie-cut pair
 * differ in it. */
static bool check_sizes(struct reader *reader, const struct row *row,
                        const struct construction *construction, const struct style *style,
                        const struct option *option) {
    const enum leaf_role last = row->opens.choice == OPENS_PIE_CUT ? LEAF_FOLDING : LEAF_HUNG;
    bool good = true;
    for (int role = LEAF_HUNG; good && role <= (int)last; role++) {
        good = !leaf_measured(row, (enum leaf_role)role)->set ||
               check_size(reader, row, construction, (enum leaf_role)role, style, option);
    }
    return good;
}

/* What is named for a part, and what the style asks for. */
static bool check_part(struct reader *reader, const struct row *row, const struct style *style,
                       const struct part_need *need, const struct option *option) {
    const struct material_reference *given = need->given;
    struct problems *problems = reader->problems;

    if (given->name.s == NULL && !reader->lacks_known) {
        return false;
    }
    if (given->name.s == NULL) {
        problem_add(problems, SEVERITY_ERROR, "no-material", row->place,
                    "style '%s' needs %s, but none is named%s; add '%s = NAME' to [make] or "
                    "to the row",
                    problem_quote(problems, style->name.s), need->words,
                    option_words(reader, option), need->part);
        return false;
    }
    if (given->index >= 0 && (need->material_kind >> given->kind & 1U) == 0) {
        problem_add(problems, SEVERITY_ERROR, "wrong-material", row->place,
                    "style '%s' takes %s, but '%s'%s is %s; name another %s",
                    problem_quote(problems, style->name.s), need->words,
                    problem_quote(problems, given->name.s), option_words(reader, option),
                    given->kind == MATERIAL_LUMBER ? "lumber" : "a sheet", need->part);
        return false;
    }
    return true;
}

/* A slab of a sheet is as thick as the sheet; one of lumber has to be told. */
static bool check_thickness(struct reader *reader, const struct row *row, const struct style *style,
                            const struct construction *construction, const struct option *option) {
    if (style->form.choice != FORM_SLAB || construction->slab.kind != MATERIAL_LUMBER ||
        style->thickness.set) {
        return true;
    }
    problem_add(
        reader->problems, SEVERITY_ERROR, "slab-thickness", row->place,
        "style '%s' makes a slab of lumber '%s'%s and says no thickness; add 'thickness' to "
        "the style",
        problem_quote(reader->problems, style->name.s),
        problem_quote(reader->problems, construction->slab.name.s), option_words(reader, option));
    return false;
}

bool row_can_be_made(struct reader *reader, const struct row *row,
                     const struct construction *construction, const struct option *option) {
    struct part_need needs[2];
    const struct style *style;
    bool good = true;
    size_t count;

    if (construction->style.name.s == NULL && !reader->lacks_known) {
        return false;
    }
    if (construction->style.name.s == NULL) {
        problem_add(reader->problems, SEVERITY_ERROR, "no-style", row->place,
                    "no style is named%s; add 'style = NAME' to [make] or to the row",
                    option_words(reader, option));
        return false;
    }
    if (construction->style.index < 0) {
        return false; /* reported where it is named */
    }
    if (!row_check_corner(reader, row, construction, option)) {
        return false;
    }
    style = row_style(reader, row, construction);
    if (style->bought_in.set) {
        return true; /* nothing of it is made here */
    }
    count = style->form.set ? needs_of(style, construction, needs) : 0;
    for (size_t i = 0; i < count; i++) {
        good = check_part(reader, row, style, &needs[i], option) && good;
    }
    good = check_thickness(reader, row, style, construction, option) && good;
    if (row->height.set && style->stile.set && style->form.choice != FORM_SLAB) {
        good = check_sizes(reader, row, construction, style, option) && good;
    }
    return good;
}

void row_check_make(struct reader *reader, const struct job *job, const struct row *row) {
    if (!reader->names_known || !row_can_be_made(reader, row, &row->make->whole, NULL)) {
        return;
    }
    row_warn_effect(reader, job, row);
    row_warn_clear(reader, job, row);
    row_warn_woods(reader, job, row);
    for (size_t i = 0; i < job->option_count; i++) {
        struct construction construction = row_construction(job, row, (int)i);

        (void)row_can_be_made(reader, row, &construction, &job->options[i]);
    }
}
