/* SPDX-License-Identifier: MIT */
#include "report/doors/door_looks.h"

#include "base/index.h"
#include "base/joined.h"
#include "base/text.h"
#include "model/name.h"
#include "report/words/door_words.h"
#include "report/words/show.h"

#define NOT_DRAWN SIZE_MAX

struct gathering {
    struct door_looks *looks;
    const struct estimate *e;
    struct pool *pool;
    struct index index; /* of the looks */
    size_t *of;         /* which of them each row has; NOT_DRAWN: it is seen in another's drawing */
};

static bool same_look(const void *list, size_t number, const void *elevation) {
    return door_elevation_same(&((const struct door_look *)list)[number].elevation, elevation);
}

/* Finds the look of a row among those before it, or adds it. */
static bool add_look(struct gathering *g, size_t row) {
    const struct leaf_figures *const leaf = &g->e->quantities.leaves[row];
    const struct hung_on on = hung_on_of(g->e, leaf);
    struct door_elevation elevation;
    struct pool scratch;
    size_t same = 0;
    bool failed = false;
    if (door_drawn(leaf->door) != leaf->door) {
        g->of[row] = NOT_DRAWN;
        return true;
    }
    pool_init(&scratch);
    bool held = door_elevation_make(&elevation, &scratch, leaf->door, on, g->e->job->unit);
    if (held) {
        same = index_add(&g->index, door_elevation_hash(&elevation), same_look, g->looks->list,
                         &elevation, g->looks->count, &failed);
    }
    pool_clear(&scratch);
    held = held && !failed;
    if (held && same == g->looks->count) {
        held = door_elevation_make(&g->looks->list[g->looks->count++].elevation, g->pool,
                                   leaf->door, on, g->e->job->unit);
    }
    g->of[row] = same;
    return held;
}

/* What is seen of a door that its lines don't tell: the material of its panel or slab. */
static const char *panel_words(const struct gathering *g, const struct door *door) {
    if (door->bought_in) {
        return ", bought in";
    }
    for (size_t i = 0; i < door->part_count; i++) {
        const struct part *const part = &door->parts[i];
        if (part_is_field(part->kind) && part->material_kind != MATERIAL_GLASS) {
            return pool_words(g->pool, ", %s %s", part_full_name(part),
                              material_name(g->e->rates, part->material_kind, part->material));
        }
    }
    return "";
}

static bool name_look(const struct gathering *g, size_t number) {
    struct door_look *const look = &g->looks->list[number];
    const struct door *const door = look->elevation.door;
    struct joined ids = {0};
    for (size_t r = 0; r < g->e->quantities.count; r++) {
        if (g->of[r] == number) {
            joined_add(&ids, ids.size == 0 ? "" : ", ");
            joined_add(&ids, text_or_empty(g->e->quantities.leaves[r].door->row->id.s));
        }
    }
    look->ids = joined_take(&ids, g->pool);
    const char *const opening = show_opening(g->pool, door);
    const char *const size =
        text_or_empty(show_leaf_sizes(g->pool, door, look->elevation.drawing.unit));
    look->words =
        pool_words(g->pool, "%s, %s; %s%s", opening, show_style(door), size, panel_words(g, door));
    look->alt = pool_words(g->pool, "Elevation of %s: %s %s, %s, with dimensions",
                           text_or_empty(look->ids), opening, size, show_style(door));
    return look->ids != NULL && !pool_failed(g->pool);
}

bool door_looks_make(struct door_looks *looks, const struct estimate *e, size_t named,
                     struct pool *pool) {
    const size_t rows = e->quantities.count;
    struct gathering g = {.looks = looks, .e = e, .pool = pool};
    *looks = (struct door_looks){.list = pool_take(pool, rows, sizeof *looks->list)};
    g.of = pool_take(pool, rows, sizeof *g.of);
    bool held = !pool_failed(pool);
    for (size_t r = 0; held && r < rows; r++) {
        held = add_look(&g, r);
    }
    for (size_t i = 0; held && i < looks->count && i < named; i++) {
        held = name_look(&g, i);
    }
    index_clear(&g.index);
    return held;
}
