/* SPDX-License-Identifier: MIT */
/* Whether what is named for a row is enough to make its door. */
#include "read/job_keys.h"

/* Of what a part of a door is made. */
struct part_need {
    const char *part;  /* the key */
    const char *words; /* what it must be */
    const struct stuff_reference *given;
    unsigned stuff; /* bits 1 << enum stuff */
};

/* Height of the leaf. */
static length leaf_height(const struct row *row, const struct make *make) {
    length height = row->height.amount;

    if (make->measure.word == MEASURE_DOOR || !make->fit.set) {
        return height;
    }
    if (make->fit.word == FIT_INSET) {
        return height - 2 * make->reveal.amount;
    }
    return height + make->overlay[SIDE_TOP].amount + make->overlay[SIDE_BOTTOM].amount;
}

static bool is_slab(const struct style *style, const struct row *row, const struct make *make) {
    return style->form.word == FORM_SLAB ||
           (row->use.word == USE_DRAWER_FRONT && style->slab_below.set &&
            leaf_height(row, make) < style->slab_below.amount);
}

/* What a style asks for; the count of needs. */
static size_t needs_of(const struct style *style, const struct row *row, const struct make *make,
                       struct part_need needs[2]) {
    static const struct {
        const char *part, *words;
        unsigned stuff;
    } filled[] = {
        [FORM_PANEL] = {"panel", "a sheet", 1U << STUFF_SHEET},
        [FORM_SOLID] = {"panel", "lumber", 1U << STUFF_LUMBER},
        [FORM_GLASS] = {"glass", "glass", 1U << STUFF_GLASS},
    };
    int form = style->form.word;

    if (is_slab(style, row, make)) {
        needs[0] = (struct part_need){"slab", "a sheet or lumber", &make->slab,
                                      1U << STUFF_SHEET | 1U << STUFF_LUMBER};
        return 1;
    }
    needs[0] = (struct part_need){"frame", "lumber", &make->frame, 1U << STUFF_LUMBER};
    if (form != FORM_PANEL && form != FORM_SOLID && form != FORM_GLASS) {
        return 1;
    }
    needs[1] =
        (struct part_need){filled[form].part, filled[form].words,
                           form == FORM_GLASS ? &make->glass : &make->panel, filled[form].stuff};
    return 2;
}

/* ` of option 'maple'`, or nothing for the base job. */
static const char *option_words(struct reader *reader, const struct option *option) {
    const char *words = option == NULL
                            ? ""
                            : pool_format(&reader->problems->pool, " in option '%s'",
                                          problem_quote(reader->problems, option->name.s));

    return words == NULL ? "" : words;
}

/* true: the door can be made. */
static bool check_make(struct reader *reader, const struct row *row, const struct make *make,
                       const struct option *option) {
    struct problems *problems = reader->problems;
    struct part_need needs[2];
    const struct style *style;
    bool good = true;
    size_t count;

    if (make->style.name.s == NULL) {
        problem_add(problems, SEVERITY_ERROR, "no-style", row->place,
                    "no style is named%s; add 'style = ...' to [make] or to the row",
                    option_words(reader, option));
        return false;
    }
    if (make->style.index < 0) {
        return false; /* reported where it is named */
    }
    style = &reader->rates->styles[make->style.index];
    count = style->form.set ? needs_of(style, row, make, needs) : 0;
    for (size_t i = 0; i < count; i++) {
        const struct stuff_reference *given = needs[i].given;

        if (given->name.s == NULL) {
            problem_add(problems, SEVERITY_ERROR, "no-material", row->place,
                        "style '%s' needs a %s, but none is named%s; add '%s = ...' (%s) to [make] "
                        "or to the row",
                        problem_quote(problems, style->name.s), needs[i].part,
                        option_words(reader, option), needs[i].part, needs[i].words);
            good = false;
        } else if (given->index >= 0 && (needs[i].stuff >> given->kind & 1U) == 0) {
            problem_add(problems, SEVERITY_ERROR, "wrong-material", row->place,
                        "style '%s' takes %s as its %s, but '%s'%s is %s; name another %s",
                        problem_quote(problems, style->name.s), needs[i].words, needs[i].part,
                        problem_quote(problems, given->name.s), option_words(reader, option),
                        given->kind == STUFF_LUMBER ? "lumber" : "a sheet", needs[i].part);
            good = false;
        }
    }
    return good;
}

void row_check_make(struct reader *reader, const struct job *job, const struct row *row) {
    if (!reader->names_known || !check_make(reader, row, &row->make, NULL)) {
        return;
    }
    for (size_t i = 0; i < job->option_count; i++) {
        struct make make = job_row_make(job, row, (int)i);

        (void)check_make(reader, row, &make, &job->options[i]);
    }
}
