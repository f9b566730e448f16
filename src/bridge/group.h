/* SPDX-License-Identifier: MIT */
/* The groups of inputs by which the way from one job to another is told, in the order of its steps.
 *
 * Every key of rates and job is in exactly one; so are rows. */
#ifndef DOORCOST_BRIDGE_GROUP_H
#define DOORCOST_BRIDGE_GROUP_H

#include <stdbool.h>
#include <stddef.h>

enum bridge_group {
    BRIDGE_ROWS_OFF,
    BRIDGE_NAMED, /* named sections that are new: nothing uses them yet */
    BRIDGE_ROWS_CHANGED,
    BRIDGE_ROWS_ADDED,
    BRIDGE_MATERIALS, /* of what and how doors are made */
    BRIDGE_YIELDS,
    BRIDGE_PRICES,
    BRIDGE_LABOR,
    BRIDGE_PROFIT,
    BRIDGE_TERMS,
    BRIDGE_TAX,
    BRIDGE_REST, /* words, questions, and named sections that nothing uses any more */
    BRIDGE_GROUP_COUNT
};

/* What the step of a group is called: `Rows taken off`. */
const char *bridge_group_name(enum bridge_group group);

/* Keys of one kind of section that are in one group. */
struct bridge_keys {
    const char *kind;
    enum bridge_group group;
    const char *keys; /* with ", " between them */
};

/* All of them; *count: how many. Static. */
const struct bridge_keys *bridge_keys(size_t *count);

/* The group of a key of a kind of section; BRIDGE_REST for one that no row has. */
enum bridge_group bridge_group_of(const char *kind, const char *key);

/* The group of a named section that only one of two files has. gone: only the older has it. */
enum bridge_group bridge_group_of_section(const char *kind, bool gone);

#endif
