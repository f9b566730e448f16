/* SPDX-License-Identifier: MIT */
/* The names that the sections of the rates define, and how they are looked up: ASCII case does not
 * matter. */
#ifndef DOORCOST_MODEL_NAME_H
#define DOORCOST_MODEL_NAME_H

#include "model/job.h"

enum name_kind {
    NAME_LUMBER,
    NAME_SHEET,
    NAME_GLASS,
    NAME_BANDING,
    NAME_STYLE,
    NAME_OPERATION,
    NAME_MACHINE,
    NAME_ADDITIVE,
    NAME_COATING,
    NAME_SPRAY,
    NAME_FINISH,
    NAME_HARDWARE,
    NAME_CONSUMABLE,
    NAME_WOOD,
    NAME_KIND_COUNT
};

/* What such a section is called in the file: `door` for NAME_STYLE. */
const char *name_section(enum name_kind kind);

/* The index of that name in the array of its kind; else of the only one that differs from it in
 * hyphens, blanks and underscores alone (`hard maple`, `hard-maple`); -1: no section defines it. */
int32_t name_find(const struct rates *rates, enum name_kind kind, const char *name);

/* The name at an index. */
const char *name_at(const struct rates *rates, enum name_kind kind, size_t index);
/* How many names of that kind the rates hold. */
size_t name_count(const struct rates *rates, enum name_kind kind);

/* The nearest name among the kinds whose bit (1 << kind) is set, or else one that stands in it as a
 * whole word (`Shaker door`); NULL: there is neither. pool: for the comparison. */
const char *name_nearest(const struct rates *rates, unsigned kinds, const char *name,
                         struct pool *pool);

/* How many lumbers, sheets and glasses, of those kinds whose bit is set, have all words of text
 * among those of their name and of what the client reads: `maple plywood`, `ply maple`. Blanks,
 * hyphens, underscores and commas stand between words. *kind, *index: the last of them. *all: those
 * that fit, `'maple-ply' or 'maple-ply-slab'`, in pool. */
size_t name_by_words(const struct rates *rates, unsigned kinds, const char *text,
                     enum name_kind *kind, int32_t *index, const char **all, struct pool *pool);

/* What the rates have of the kinds whose bit is set: `their [sheet NAME] are 'mdf-slab',
 * 'birch-core' and 3 more`. In pool; "" when memory is out. */
const char *name_list(const struct rates *rates, unsigned kinds, struct pool *pool);

/* The shop's name of a material: lumber, sheet or glass at that index of the rates; "" where the
 * index is below 0 or there is none. Borrowed. */
const char *material_name(const struct rates *rates, enum material_kind material_kind,
                          int32_t material);

/* Whether a list of names holds that index. */
bool references_hold(const struct references *list, int32_t index);

#endif
