/* SPDX-License-Identifier: MIT */
#include "model/construction.h"

#include "base/index.h"

#include <stddef.h>
#include <string.h>

/* What begins a field and tells whether it is set. */
enum begins_with { WITH_TEXT, WITH_VALUE, WITH_WORD };

static const struct field {
    size_t at, size;
    enum begins_with begins;
} fields[] = {
    {offsetof(struct construction, style), sizeof(struct reference), WITH_TEXT},
    {offsetof(struct construction, frame), sizeof(struct material_reference), WITH_TEXT},
    {offsetof(struct construction, panel), sizeof(struct material_reference), WITH_TEXT},
    {offsetof(struct construction, solid), sizeof(struct material_reference), WITH_TEXT},
    {offsetof(struct construction, slab), sizeof(struct material_reference), WITH_TEXT},
    {offsetof(struct construction, glass), sizeof(struct material_reference), WITH_TEXT},
    {offsetof(struct construction, finish), sizeof(struct reference), WITH_TEXT},
    {offsetof(struct construction, hinge), sizeof(struct reference), WITH_TEXT},
    {offsetof(struct construction, pull), sizeof(struct reference), WITH_TEXT},
    {offsetof(struct construction, fold_hinge), sizeof(struct reference), WITH_TEXT},
    {offsetof(struct construction, hardware), sizeof(struct hardware_items), WITH_TEXT},
    {offsetof(struct construction, color), sizeof(struct text), WITH_TEXT},
    {offsetof(struct construction, grain), sizeof(struct choice), WITH_WORD},
    {offsetof(struct construction, size_is), sizeof(struct choice), WITH_WORD},
    {offsetof(struct construction, overlay[SIDE_LEFT]), sizeof(struct value), WITH_VALUE},
    {offsetof(struct construction, overlay[SIDE_RIGHT]), sizeof(struct value), WITH_VALUE},
    {offsetof(struct construction, overlay[SIDE_TOP]), sizeof(struct value), WITH_VALUE},
    {offsetof(struct construction, overlay[SIDE_BOTTOM]), sizeof(struct value), WITH_VALUE},
    {offsetof(struct construction, reveal), sizeof(struct value), WITH_VALUE},
    {offsetof(struct construction, gap), sizeof(struct value), WITH_VALUE},
    {offsetof(struct construction, corner), sizeof(struct value), WITH_VALUE},
    {offsetof(struct construction, fit), sizeof(struct choice), WITH_WORD},
};

static bool is_set(const struct field *field, const struct construction *construction) {
    const void *start = (const char *)construction + field->at;

    switch (field->begins) {
    case WITH_TEXT:
        return ((const struct text *)start)->s != NULL;
    case WITH_VALUE:
        return ((const struct value *)start)->set;
    case WITH_WORD:
    default:
        return ((const struct choice *)start)->set;
    }
}

/* Changes base by what over says. */
static void construction_apply(struct construction *base, const struct construction *over) {
    if (over->fit.set && over->fit.choice == FIT_OVERLAY) {
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

/* What is said of a field, as a number; texts apart. A material's kind and index follow from its
 * name, as a reference's do. */
static uint64_t said(const struct field *field, const struct construction *construction) {
    const void *start = (const char *)construction + field->at;

    switch (field->begins) {
    case WITH_TEXT:
        return 0;
    case WITH_VALUE:
        return (uint64_t)((const struct value *)start)->amount;
    case WITH_WORD:
    default:
        return (uint64_t)((const struct choice *)start)->choice;
    }
}

static const char *text_of(const struct field *field, const struct construction *construction) {
    const void *start = (const char *)construction + field->at;

    return field->begins == WITH_TEXT ? ((const struct text *)start)->s : NULL;
}

bool construction_same(const struct construction *a, const struct construction *b) {
    for (size_t i = 0; i < sizeof fields / sizeof fields[0]; i++) {
        const char *left = text_of(&fields[i], a);
        const char *right = text_of(&fields[i], b);

        if (is_set(&fields[i], a) != is_set(&fields[i], b) ||
            said(&fields[i], a) != said(&fields[i], b) ||
            (left != NULL && strcmp(left, right) != 0)) {
            return false;
        }
    }
    return true;
}

uint64_t construction_hash(const struct construction *construction) {
    uint64_t hash = HASH_START;

    for (size_t i = 0; i < sizeof fields / sizeof fields[0]; i++) {
        if (is_set(&fields[i], construction)) {
            hash = hash_word(hash, i << 48 ^ said(&fields[i], construction));
            hash = hash_text(hash, text_of(&fields[i], construction));
        }
    }
    return hash;
}

const struct material_reference *construction_panel(const struct construction *construction,
                                                    enum door_form form) {
    return form == FORM_SOLID && construction->solid.name.s != NULL ? &construction->solid
                                                                    : &construction->panel;
}

struct construction row_construction(const struct job *job, const struct row *row, int option) {
    struct construction construction = job->construction;

    if (option >= 0 && (size_t)option < job->option_count) {
        construction_apply(&construction, &job->options[option].changes);
    }
    construction_apply(&construction, &row->make->own);
    if (row->make->end_panel) {
        construction.size_is =
            (struct choice){.place = row->use.place, .choice = MEASURE_DOOR, .set = true};
    }
    return construction;
}

const struct hardware_items *row_hardware(const struct row *row,
                                          const struct construction *construction) {
    return row->use.choice == USE_DOOR ? &construction->hardware : &row->make->own.hardware;
}

const struct row *job_row_at(const struct job *job, struct place place) {
    size_t low = 0;
    size_t high = job->row_count;
    if (high == 0 || place.file != job->rows[0].place.file) {
        return NULL;
    }
    while (low < high) {
        const size_t middle = low + (high - low) / 2;
        if (job->rows[middle].place.line <= place.line) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    return low == 0 ? NULL : &job->rows[low - 1];
}

const char *job_accept_item(const struct job *job, const struct problem *question,
                            struct pool *pool) {
    const struct row *const row = job_row_at(job, question->place);
    return row == NULL || row->id.s == NULL || question->more_count > 0
               ? question->id
               : pool_words(pool, "%s %s", question->id, row->id.s);
}
