/* SPDX-License-Identifier: MIT */
/* Boxes are kept from the leaves up, spare room from the root down. Members of a group have no
 * order, and no group is the member of a group of the same direction. */
#include "cut/sheet/sheet_tree.h"

#include <stdlib.h>
#include <string.h>

void sheet_tree_reset(struct sheet_tree *tree, const struct cut_model *model, size_t bin) {
    tree->bin = bin;
    tree->length = model->bins[bin].length;
    tree->width = model->bins[bin].width;
    tree->root = TREE_NONE;
    tree->parts = 0;
    tree->area = 0.0;
    tree->node_count = 0;
    tree->unused = TREE_NONE;
    tree->gap_count = TREE_NONE;
}

void sheet_tree_clear(struct sheet_tree *tree) {
    free(tree->nodes);
    *tree = (struct sheet_tree){0};
}

bool sheet_tree_copy(struct sheet_tree *to, const struct sheet_tree *from) {
    if (to->node_room < from->node_count) {
        struct tree_node *nodes = calloc((size_t)from->node_room, sizeof *nodes);
        if (nodes == NULL) {
            return false;
        }
        free(to->nodes);
        to->nodes = nodes;
        to->node_room = from->node_room;
    }
    struct tree_node *nodes = to->nodes;
    int32_t node_room = to->node_room;
    *to = *from;
    to->nodes = nodes;
    to->node_room = node_room;
    if (from->node_count > 0) {
        memcpy(to->nodes, from->nodes, (size_t)from->node_count * sizeof *nodes);
    }
    return true;
}

/* Room for two more nodes. */
static bool reserve(struct sheet_tree *tree) {
    if (tree->node_count + 2 <= tree->node_room) {
        return true;
    }
    int32_t room = 2 * tree->node_room + 16;
    struct tree_node *nodes = realloc(tree->nodes, (size_t)room * sizeof *nodes);
    if (nodes == NULL) {
        return false;
    }
    tree->nodes = nodes;
    tree->node_room = room;
    return true;
}

static int32_t take_node(struct sheet_tree *tree) {
    int32_t node = tree->unused;
    if (node != TREE_NONE) {
        tree->unused = tree->nodes[node].next;
    } else {
        node = tree->node_count++;
    }
    return node;
}

static void drop_node(struct sheet_tree *tree, int32_t node) {
    tree->nodes[node].next = tree->unused;
    tree->unused = node;
}

static void measure_group(struct sheet_tree *tree, int32_t group) {
    struct tree_node *box = &tree->nodes[group];
    int64_t sum = 0;
    int64_t most = 0;
    double area = 0.0;
    for (int32_t at = box->child; at != TREE_NONE; at = tree->nodes[at].next) {
        const struct tree_node *member = &tree->nodes[at];
        int64_t across = box->along_x ? member->width : member->length;
        sum += box->along_x ? member->length : member->width;
        most = across > most ? across : most;
        area += member->area;
    }
    box->area = area;
    box->length = box->along_x ? sum : most;
    box->width = box->along_x ? most : sum;
}

/* A shade more than exact, so that rounding never hides a perfect fit. */
static void measure_spare_area(struct tree_node *node) {
    double box =
        (double)(node->length + node->spare_length) * (double)(node->width + node->spare_width);
    node->spare_area = box * (1.0 + 1e-12) - node->area;
}

static void measure_spare(struct sheet_tree *tree, int32_t at) {
    struct tree_node *const node = &tree->nodes[at];
    if (at == tree->root) {
        node->spare_length = tree->length - node->length;
        node->spare_width = tree->width - node->width;
    } else {
        const struct tree_node *const up = &tree->nodes[node->parent];
        node->spare_length = up->spare_length + (up->along_x ? 0 : up->length - node->length);
        node->spare_width = up->spare_width + (up->along_x ? up->width - node->width : 0);
    }
    measure_spare_area(node);
}

/* Boxes from a group, TREE_NONE: the root, up; then spare room down from the highest box that is
 * another, as it stays what it was beside and above that one. */
static void measure(struct sheet_tree *tree, int32_t group) {
    tree->gap_count = TREE_NONE;
    if (tree->root == TREE_NONE) {
        return;
    }
    struct tree_node *const nodes = tree->nodes;
    int32_t top = group != TREE_NONE ? group : tree->root;
    for (int32_t at = group; at != TREE_NONE; at = nodes[at].parent) {
        const int64_t length = nodes[at].length;
        const int64_t width = nodes[at].width;
        measure_group(tree, at);
        top = nodes[at].length != length || nodes[at].width != width ? at : top;
        measure_spare_area(&nodes[at]);
    }
    int32_t at = top;
    while (at != TREE_NONE) {
        measure_spare(tree, at);
        at = nodes[at].kind == TREE_GROUP ? nodes[at].child : sheet_tree_after(tree, top, at);
    }
}

void sheet_tree_move(struct sheet_tree *tree, const struct cut_model *model, size_t bin) {
    tree->bin = bin;
    tree->length = model->bins[bin].length;
    tree->width = model->bins[bin].width;
    measure(tree, TREE_NONE);
}

/* Puts `fresh` where `old` hangs; old's own links are left as they are. */
static void replace(struct sheet_tree *tree, int32_t old, int32_t fresh) {
    struct tree_node *nodes = tree->nodes;
    int32_t parent = nodes[old].parent;
    nodes[fresh].parent = parent;
    nodes[fresh].next = nodes[old].next;
    if (parent == TREE_NONE) {
        tree->root = fresh;
        return;
    }
    int32_t *link = &nodes[parent].child;
    while (*link != old) {
        link = &nodes[*link].next;
    }
    *link = fresh;
}

static void add_member(struct sheet_tree *tree, int32_t group, int32_t node) {
    tree->nodes[node].parent = group;
    tree->nodes[node].next = tree->nodes[group].child;
    tree->nodes[group].child = node;
}

bool sheet_tree_insert(struct sheet_tree *tree, const struct cut_kind *kind, int32_t number,
                       const struct tree_place *place) {
    if (!reserve(tree)) {
        return false;
    }
    int32_t part = take_node(tree);
    tree->nodes[part] = (struct tree_node){
        .length = place->turned ? kind->width : kind->length,
        .width = place->turned ? kind->length : kind->width,
        .parent = TREE_NONE,
        .child = TREE_NONE,
        .next = TREE_NONE,
        .kind = number,
        .turned = place->turned,
        .area = (double)kind->length * (double)kind->width,
    };
    tree->parts++;
    tree->area += (double)kind->length * (double)kind->width;
    if (place->node == TREE_NONE) {
        tree->root = part;
        measure(tree, TREE_NONE);
        return true;
    }
    int32_t group = place->node;
    if (place->wrap) {
        group = take_node(tree);
        tree->nodes[group] =
            (struct tree_node){.child = TREE_NONE, .kind = TREE_GROUP, .along_x = place->along_x};
        replace(tree, place->node, group);
        add_member(tree, group, place->node);
    }
    add_member(tree, group, part);
    measure(tree, group);
    return true;
}

/* A group with one member becomes that member; a member that is a group of the direction above it
 * gives its members to the group above. */
static int32_t collapse(struct sheet_tree *tree, int32_t group) {
    struct tree_node *nodes = tree->nodes;
    int32_t only = nodes[group].child;
    int32_t up = nodes[group].parent;
    replace(tree, group, only);
    drop_node(tree, group);
    if (up == TREE_NONE || nodes[only].kind != TREE_GROUP) {
        return up;
    }
    /* Directions alternate: below and above a group they are the same. */
    int32_t *link = &nodes[up].child;
    while (*link != only) {
        link = &nodes[*link].next;
    }
    *link = nodes[only].child;
    int32_t last = nodes[only].child;
    for (int32_t at = last; at != TREE_NONE; at = nodes[at].next) {
        nodes[at].parent = up;
        last = at;
    }
    nodes[last].next = nodes[only].next;
    drop_node(tree, only);
    return up;
}

void sheet_tree_remove(struct sheet_tree *tree, int32_t node) {
    struct tree_node *nodes = tree->nodes;
    int32_t group = nodes[node].parent;
    tree->parts--;
    tree->area -= (double)nodes[node].length * (double)nodes[node].width;
    if (group == TREE_NONE) {
        tree->root = TREE_NONE;
        drop_node(tree, node);
        return;
    }
    int32_t *link = &nodes[group].child;
    while (*link != node) {
        link = &nodes[*link].next;
    }
    *link = nodes[node].next;
    drop_node(tree, node);
    if (nodes[nodes[group].child].next == TREE_NONE) {
        group = collapse(tree, group);
    }
    measure(tree, group);
}
