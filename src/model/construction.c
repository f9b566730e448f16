/* SPDX-License-Identifier: MIT */
#include "model/construction.h"

#include <stddef.h>
#include <string.h>

/* What begins a field and tells whether it is set. */
enum begins_with { WITH_TEXT, WITH_VALUE, WITH_WORD };

static const struct field {
    size_t at, size;
    enum begins_with begins;
} fields[] = {
    {offsetof(struct make, style), sizeof(struct reference), WITH_TEXT},
    {offsetof(struct make, frame), sizeof(struct stuff_reference), WITH_TEXT},
    {offsetof(struct make, panel), sizeof(struct stuff_reference), WITH_TEXT},
    {offsetof(struct make, solid), sizeof(struct stuff_reference), WITH_TEXT},
    {offsetof(struct make, slab), sizeof(struct stuff_reference), WITH_TEXT},
    {offsetof(struct make, glass), sizeof(struct stuff_reference), WITH_TEXT},
    {offsetof(struct make, finish), sizeof(struct reference), WITH_TEXT},
    {offsetof(struct make, hinge), sizeof(struct reference), WITH_TEXT},
    {offsetof(struct make, pull), sizeof(struct reference), WITH_TEXT},
    {offsetof(struct make, color), sizeof(struct text), WITH_TEXT},
    {offsetof(struct make, measure), sizeof(struct word), WITH_WORD},
    {offsetof(struct make, overlay[SIDE_LEFT]), sizeof(struct value), WITH_VALUE},
    {offsetof(struct make, overlay[SIDE_RIGHT]), sizeof(struct value), WITH_VALUE},
    {offsetof(struct make, overlay[SIDE_TOP]), sizeof(struct value), WITH_VALUE},
    {offsetof(struct make, overlay[SIDE_BOTTOM]), sizeof(struct value), WITH_VALUE},
    {offsetof(struct make, reveal), sizeof(struct value), WITH_VALUE},
    {offsetof(struct make, gap), sizeof(struct value), WITH_VALUE},
    {offsetof(struct make, fit), sizeof(struct word), WITH_WORD},
};

static bool is_set(const struct field *field, const struct make *make) {
    const void *start = (const char *)make + field->at;

    switch (field->begins) {
    case WITH_TEXT:
        return ((const struct text *)start)->s != NULL;
    case WITH_VALUE:
        return ((const struct value *)start)->set;
    case WITH_WORD:
    default:
        return ((const struct word *)start)->set;
    }
}

void make_apply(struct make *base, const struct make *over) {
    if (over->fit.set && over->fit.word == FIT_OVERLAY) {
        base->reveal = (struct value){0};
    } else if (over->fit.set) {
        memset(base->overlay, 0, sizeof(base->overlay));
    }
    for (size_t i = 0; i < sizeof fields / sizeof fields[0]; i++) {
        if (is_set(&fields[i], over)) {
            memcpy((char *)base + fields[i].at, (const char *)over + fields[i].at, fields[i].size);
        }
    }
}

const struct stuff_reference *make_panel(const struct make *make, enum door_form form) {
    return form == FORM_SOLID && make->solid.name.s != NULL ? &make->solid : &make->panel;
}

struct make job_row_make(const struct job *job, const struct row *row, int option) {
    struct make make = job->make;

    if (option >= 0 && (size_t)option < job->option_count) {
        make_apply(&make, &job->options[option].changes);
    }
    make_apply(&make, &row->own);
    return make;
}
