/* SPDX-License-Identifier: MIT */
/* Each rule turns a part into a number; set-ups are the distinct numbers. */
#include "labor/setup.h"

#include "base/pool.h"

#include <stdlib.h>

/* A panel or slab of lumber. */
static bool is_solid(const struct part *part) {
    return part->material_kind == MATERIAL_LUMBER && !part_is_frame(part->kind);
}

bool driver_works_on(enum driver driver, const struct part *part) {
    switch (driver) {
    case DRIVER_STILE:
        return part->kind == PART_STILE || part->kind == PART_MID_STILE;
    case DRIVER_RAIL:
        return part->kind == PART_TOP_RAIL || part->kind == PART_BOTTOM_RAIL ||
               part->kind == PART_MID_RAIL;
    case DRIVER_JOINT:
        return part_is_frame(part->kind) && part->kind != PART_STILE;
    case DRIVER_FRAME_RUN:
        return part_is_frame(part->kind);
    case DRIVER_PANEL:
        return !part_is_frame(part->kind);
    case DRIVER_LUMBER:
        return part->material_kind == MATERIAL_LUMBER;
    case DRIVER_SHEET:
        return part->material_kind == MATERIAL_SHEET;
    case DRIVER_PANE:
        return part->material_kind == MATERIAL_GLASS;
    case DRIVER_SOLID_PANEL:
    case DRIVER_SOLID_AREA:
        return is_solid(part);
    case DRIVER_GLUE_LINE:
        return is_solid(part) && part->staves > 1;
    case DRIVER_RAISED_RUN:
        return part->raised;
    case DRIVER_BANDED_RUN:
        return part->kind == PART_SLAB && part->material_kind == MATERIAL_SHEET;
    default:
        return true;
    }
}

/* The number that tells set-ups apart. */
static int64_t mark(enum setup_per per, const struct door *door, const struct part *part) {
    switch (per) {
    case SETUP_PER_MATERIAL:
        return (int64_t)part->material_kind << 32 | part->material;
    case SETUP_PER_THICKNESS:
        return part->thickness;
    case SETUP_PER_WIDTH:
        return part->width;
    case SETUP_PER_LENGTH:
        return part->length;
    case SETUP_PER_STYLE:
        return door->construction.style.index;
    default:
        return 0;
    }
}

static int by_value(const void *a, const void *b) {
    const int64_t x = *(const int64_t *)a;
    const int64_t y = *(const int64_t *)b;
    return x < y ? -1 : (x > y ? 1 : 0);
}

static int64_t distinct_marks(const struct operation *op, const struct quantities *q,
                              const bool *applies, bool *held) {
    int64_t *marks = NULL;
    size_t room = 0;
    size_t count = 0;
    for (size_t r = 0; r < q->count; r++) {
        const struct door *const door = q->leaves[r].door;
        for (size_t i = 0; applies[r] && i < door->part_count; i++) {
            if (!driver_works_on((enum driver)op->per.choice, &door->parts[i])) {
                continue;
            }
            if (!array_grow((void **)&marks, &room, count + 1, sizeof *marks)) {
                *held = false;
                free(marks);
                return 0;
            }
            marks[count++] = mark((enum setup_per)op->setup_per.choice, door, &door->parts[i]);
        }
    }
    if (count > 0) {
        qsort(marks, count, sizeof *marks, by_value);
    }
    int64_t distinct = count > 0 ? 1 : 0;
    for (size_t i = 1; i < count; i++) {
        distinct += marks[i] != marks[i - 1] ? 1 : 0;
    }
    free(marks);
    return distinct;
}

static bool batch_applies(const struct finish_list *finish, size_t batch,
                          const struct quantities *q, const bool *applies) {
    for (size_t r = 0; r < q->count; r++) {
        if (applies[r] && finish->batch_of[r] == batch) {
            return true;
        }
    }
    return false;
}

int64_t setup_count(const struct operation *op, const struct quantities *q, const bool *applies,
                    const struct finish_list *finish, const struct rates *rates, bool *held) {
    const enum setup_per per = (enum setup_per)op->setup_per.choice;
    if (per == SETUP_PER_JOB) {
        return 1;
    }
    if (per != SETUP_PER_COAT && per != SETUP_PER_COLOR) {
        return distinct_marks(op, q, applies, held);
    }
    int64_t setups = 0;
    for (size_t b = 0; b < finish->batch_count; b++) {
        if (!batch_applies(finish, b, q, applies)) {
            continue;
        }
        const struct finish *const kind = &rates->finishes[finish->batches[b].finish];
        /* a batch whose rows name no color may stand for several, as its mixes do */
        const int64_t colors =
            finish->batches[b].color == NULL && kind->colors.set ? kind->colors.amount : 1;
        for (size_t c = 0; per == SETUP_PER_COAT && c < kind->coat_count; c++) {
            setups += kind->coats[c].times.amount * colors;
        }
        setups += per == SETUP_PER_COLOR ? colors : 0;
    }
    return setups;
}
