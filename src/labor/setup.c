/* SPDX-License-Identifier: MIT */
/* Each rule turns a part into a number; set-ups are the distinct numbers. */
#include "labor/setup.h"

#include "base/index.h"
#include "base/order.h"
#include "base/pool.h"

#include <stdlib.h>

/* The number that tells set-ups apart, of a part. */
static int64_t part_mark(enum setup_per per, const struct door *door, const struct part *part) {
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
        return (int64_t)(uintptr_t)door->style;
    default:
        return 0;
    }
}

/* The same of a door that is worked on whole. Its material is that of its first part, which is a
 * stile or the slab; false: a door bought in has none. */
static bool door_mark(enum setup_per per, const struct door *door, int64_t *mark) {
    const struct part own = {
        .thickness = door->thickness, .width = door->width, .length = door->height};
    if (per == SETUP_PER_MATERIAL && door->part_count == 0) {
        return false;
    }
    *mark = part_mark(per, door, per == SETUP_PER_MATERIAL ? &door->parts[0] : &own);
    return true;
}

/* Marks, each once. */
struct marks {
    struct index index;
    int64_t *list;
    size_t count, room;
};

static bool same_mark(const void *list, size_t number, const void *mark) {
    return ((const int64_t *)list)[number] == *(const int64_t *)mark;
}

static bool marks_add(struct marks *marks, int64_t mark) {
    bool failed = false;
    marks->list =
        array_grow(marks->list, &marks->room, marks->count + 1, sizeof *marks->list, &failed);
    if (!failed) {
        marks->list[marks->count] = mark;
        marks->count += index_add(&marks->index, hash_word(HASH_START, (uint64_t)mark), same_mark,
                                  marks->list, &mark, marks->count, &failed) == marks->count
                            ? 1
                            : 0;
    }
    return !failed;
}

static bool door_marks(struct marks *marks, const struct operation *op, const struct door *door) {
    const enum driver driver = (enum driver)op->per.choice;
    const enum setup_per per = (enum setup_per)op->setup_per.choice;
    int64_t whole;
    if (driver_is_whole_door(driver)) {
        return !door_mark(per, door, &whole) || marks_add(marks, whole);
    }
    bool held = true;
    for (size_t i = 0; held && i < door->part_count; i++) {
        held = !driver_works_on(driver, &door->parts[i]) ||
               marks_add(marks, part_mark(per, door, &door->parts[i]));
    }
    return held;
}

static int largest_first(const void *x, const void *y) {
    return order_by_number(*(const int64_t *)y, *(const int64_t *)x);
}

/* Keeps the marks with the figures where they are lengths. */
static bool keep_marks(const struct calc *c, struct operation_figures *o, enum setup_per per,
                       struct marks *marks) {
    if (per != SETUP_PER_THICKNESS && per != SETUP_PER_WIDTH && per != SETUP_PER_LENGTH) {
        return true;
    }
    if (marks->count == 0) {
        return true;
    }
    qsort(marks->list, marks->count, sizeof *marks->list, largest_first);
    o->setup_at = pool_copy(c->pool, marks->list, marks->count * sizeof *marks->list);
    o->setup_at_count = marks->count;
    return o->setup_at != NULL;
}

static int64_t distinct_marks(const struct calc *c, struct operation_figures *o,
                              const bool *applies, bool *held) {
    const struct operation *const op = &c->rates->operations[o->operation];
    const struct quantities *const q = c->quantities;
    struct marks marks = {0};
    for (size_t r = 0; *held && r < q->count; r++) {
        *held = !applies[r] || door_marks(&marks, op, q->leaves[r].door);
    }
    *held = *held && keep_marks(c, o, (enum setup_per)op->setup_per.choice, &marks);
    free(marks.list);
    index_clear(&marks.index);
    return *held ? (int64_t)marks.count : 0;
}

static bool batch_applies(const struct finish_list *finish, const struct batch *batch,
                          const bool *applies) {
    for (size_t i = 0; i < batch->row_count; i++) {
        if (applies[finish->rows[batch->first_row + i]]) {
            return true;
        }
    }
    return false;
}

/* A batch whose rows name no color may stand for several, as its mixes do. */
static int64_t count_colors(const struct calc *c, const struct batch *b) {
    const struct value *const colors = &c->rates->finishes[b->finish].colors;
    return b->color == NULL && colors->set ? colors->amount : 1;
}

/* Coats of a batch, each a mix: what is not tinted is mixed once for all colors. mixed: an earlier
 * batch of the same finish, in another color, is worked on too. */
static int64_t count_coats(const struct calc *c, const struct batch *b, bool mixed) {
    const struct finish *const kind = &c->rates->finishes[b->finish];
    int64_t setups = 0;
    for (size_t i = 0; i < kind->coat_count; i++) {
        const bool tinted = c->rates->coatings[kind->coats[i].coating].tinted;
        if (tinted || !mixed) {
            setups += kind->coats[i].times.amount * (tinted ? count_colors(c, b) : 1);
        }
    }
    return setups;
}

static int64_t count_mixes(const struct calc *c, const struct operation *op, const bool *applies,
                           const struct finish_list *finish, bool *held) {
    bool *const mixed = calloc(c->rates->finish_count + 1, sizeof *mixed);
    int64_t setups = 0;
    *held = *held && mixed != NULL;
    for (size_t b = 0; mixed != NULL && b < finish->batch_count; b++) {
        const struct batch *const batch = &finish->batches[b];
        if (batch_applies(finish, batch, applies)) {
            setups += op->setup_per.choice == SETUP_PER_COLOR
                          ? count_colors(c, batch)
                          : count_coats(c, batch, mixed[batch->finish]);
            mixed[batch->finish] = true;
        }
    }
    free(mixed);
    return setups;
}

int64_t setup_count(const struct calc *c, struct operation_figures *o, const bool *applies,
                    const struct finish_list *finish, bool *held) {
    const struct operation *const op = &c->rates->operations[o->operation];
    const enum setup_per per = (enum setup_per)op->setup_per.choice;
    if (per == SETUP_PER_JOB) {
        return 1;
    }
    if (per != SETUP_PER_COAT && per != SETUP_PER_COLOR) {
        return distinct_marks(c, o, applies, held);
    }
    return count_mixes(c, op, applies, finish, held);
}
