/* SPDX-License-Identifier: MIT */
#include "cut/sheet/sheet_ruin.h"

/* A step ruins up to so many sheets, each up to so many times. */
#define RUIN_SHEETS 3
#define RUIN_TIMES  2

/* The most parts taken off with a group. */
#define RUIN_PARTS ((size_t)64)

/* Chance that a ruined sheet is emptied. */
#define RUIN_ALL 0.02

size_t sheet_ruin_slot(const struct sheet_state *state, struct cut_random *random) {
    for (int tries = 0; tries < 50; tries++) {
        size_t slot = cut_random_below(random, state->slot_count);
        if (state->slots[slot].parts > 0) {
            return slot;
        }
    }
    return SIZE_MAX;
}

/* A part of a tree, going down by chance. */
static int32_t choose_part(const struct sheet_tree *tree, struct cut_random *random) {
    int32_t at = tree->root;
    while (tree->nodes[at].kind == TREE_GROUP) {
        size_t members = 0;
        for (int32_t m = tree->nodes[at].child; m != TREE_NONE; m = tree->nodes[m].next) {
            members++;
        }
        size_t skip = cut_random_below(random, members);
        at = tree->nodes[at].child;
        while (skip-- > 0) {
            at = tree->nodes[at].next;
        }
    }
    return at;
}

/* Lists the parts of a tree below a node, up to RUIN_PARTS; parts keep their numbers when others
 * are taken off. */
static size_t list_parts(const struct sheet_tree *tree, int32_t node, int32_t *parts,
                         size_t count) {
    if (tree->nodes[node].kind != TREE_GROUP) {
        parts[count] = node;
        return count + 1;
    }
    for (int32_t at = tree->nodes[node].child; at != TREE_NONE && count < RUIN_PARTS;
         at = tree->nodes[at].next) {
        count = list_parts(tree, at, parts, count);
    }
    return count;
}

/* Takes a part off a sheet with all of its group. */
static void take_group(struct sheet_state *state, size_t slot, int32_t part) {
    const struct sheet_tree *tree = &state->slots[slot];
    int32_t group = tree->nodes[part].parent;
    int32_t parts[RUIN_PARTS];
    size_t count = list_parts(tree, group != TREE_NONE ? group : part, parts, 0);
    for (size_t i = 0; i < count; i++) {
        sheet_state_take_out(state, slot, parts[i]);
    }
}

void sheet_ruin(struct sheet_state *state, struct cut_random *random) {
    size_t sheets = 1 + cut_random_below(random, RUIN_SHEETS);
    for (size_t n = 0; n < sheets; n++) {
        size_t slot = sheet_ruin_slot(state, random);
        if (slot == SIZE_MAX) {
            return;
        }
        if (cut_random_share(random) < RUIN_ALL) {
            sheet_state_empty(state, slot);
            continue;
        }
        bool groups = cut_random_below(random, 2) == 0;
        size_t times = 1 + cut_random_below(random, RUIN_TIMES);
        for (size_t i = 0; i < times && state->slots[slot].parts > 0; i++) {
            int32_t part = choose_part(&state->slots[slot], random);
            if (groups && cut_random_below(random, 2) == 0) {
                take_group(state, slot, part);
            } else {
                sheet_state_take_out(state, slot, part);
            }
        }
    }
}
