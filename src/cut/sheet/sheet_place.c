/* SPDX-License-Identifier: MIT */
/* Where in a tree a part can go, and how good each place is. */
#include "cut/sheet/sheet_tree.h"

/* A part as it would lie, and how it is judged. */
struct candidate {
    const struct sheet_tree *tree;
    const struct tree_weights *weights;
    double length, width, area;
    int64_t whole_length, whole_width;
    bool turned;
    double noise;
    uint64_t *seed;
    int64_t looked;
    struct tree_place *place;
    enum tree_answer answer;
};

static double chance(uint64_t *seed) {
    *seed ^= *seed << 13;
    *seed ^= *seed >> 7;
    *seed ^= *seed << 17;
    return (double)(*seed >> 11) * 0x1p-53;
}

/* How much larger the box around all parts becomes when a node grows. */
static double root_growth(const struct sheet_tree *tree, int32_t at, int64_t more_length,
                          int64_t more_width) {
    const struct tree_node *nodes = tree->nodes;
    while (at != tree->root && (more_length > 0 || more_width > 0)) {
        const struct tree_node *up = &nodes[nodes[at].parent];
        if (up->along_x) {
            more_width -= up->width - nodes[at].width;
            more_width = more_width > 0 ? more_width : 0;
        } else {
            more_length -= up->length - nodes[at].length;
            more_length = more_length > 0 ? more_length : 0;
        }
        at = nodes[at].parent;
    }
    const struct tree_node *root = &nodes[tree->root];
    return (double)(root->length + more_length) * (double)(root->width + more_width) -
           (double)root->length * (double)root->width;
}

/* Judges the part beside node (or beside the members of the group that node is), along x or y. */
static void judge(struct candidate *part, int32_t at, bool along_x, bool wrap) {
    const struct tree_node *node = &part->tree->nodes[at];
    int64_t more_length = part->whole_length - (along_x ? 0 : node->length);
    int64_t more_width = part->whole_width - (along_x ? node->width : 0);
    part->looked++;
    if (more_length > node->spare_length || more_width > node->spare_width) {
        return;
    }
    part->answer = part->answer == TREE_NO_PLACE ? TREE_NO_BETTER : part->answer;
    double strip;
    double rest;
    if (along_x) {
        strip = more_width > 0 ? (double)more_width * (double)node->length
                               : (double)-more_width * part->length;
        more_width = more_width > 0 ? more_width : 0;
        rest = (double)(node->spare_length - more_length);
    } else {
        strip = more_length > 0 ? (double)more_length * (double)node->width
                                : (double)-more_length * part->width;
        more_length = more_length > 0 ? more_length : 0;
        rest = (double)(node->spare_width - more_width);
    }
    const struct tree_weights *weights = part->weights;
    rest *= along_x ? part->width : part->length;
    double score = weights->strip * strip + weights->rest * rest;
    if (weights->growth > 0.0) {
        score += weights->growth * root_growth(part->tree, at, more_length, more_width);
    }
    score = score / part->area + part->noise * chance(part->seed);
    if (score < part->place->score) {
        *part->place = (struct tree_place){at, wrap, along_x, part->turned, score};
        part->answer = TREE_BETTER;
    }
}

/* Nodes with too little room around and within them are passed over with all below them. */
static void judge_all(struct candidate *part) {
    const struct sheet_tree *tree = part->tree;
    int32_t at = tree->root;
    for (;;) {
        const struct tree_node *node = &tree->nodes[at];
        part->looked++;
        const bool enough = node->spare_area >= part->area &&
                            node->length + node->spare_length >= part->whole_length &&
                            node->width + node->spare_width >= part->whole_width;
        bool group = node->kind == TREE_GROUP;
        if (!enough) {
            group = false;
        } else if (group) {
            judge(part, at, node->along_x, false);
        }
        if (enough && at == tree->root) {
            if (!group || !node->along_x) {
                judge(part, at, true, true);
            }
            if (!group || node->along_x) {
                judge(part, at, false, true);
            }
        } else if (enough && !group) {
            judge(part, at, !tree->nodes[node->parent].along_x, true);
        }
        if (group) {
            at = node->child;
            continue;
        }
        at = sheet_tree_after(tree, tree->root, at);
        if (at == TREE_NONE) {
            return;
        }
    }
}

static void add_gap(struct sheet_tree *tree, double least, int64_t length, int64_t width) {
    if ((double)length * (double)width < least) {
        return;
    }
    struct tree_gap *const gaps = tree->gaps;
    int32_t count = 0;
    for (int32_t i = 0; i < tree->gap_count; i++) {
        if (gaps[i].length >= length && gaps[i].width >= width) {
            return;
        }
    }
    for (int32_t i = 0; i < tree->gap_count; i++) {
        if (gaps[i].length > length || gaps[i].width > width) {
            gaps[count++] = gaps[i];
        }
    }
    if (count == TREE_GAPS) {
        struct tree_gap *const last = &gaps[count - 1];
        last->length = length > last->length ? length : last->length;
        last->width = width > last->width ? width : last->width;
    } else {
        gaps[count++] = (struct tree_gap){length, width};
    }
    tree->gap_count = count;
}

/* What may lie beside a node, along x or y. */
static void add_beside(struct sheet_tree *tree, double least, const struct tree_node *node,
                       bool along_x) {
    add_gap(tree, least, node->spare_length + (along_x ? 0 : node->length),
            node->spare_width + (along_x ? node->width : 0));
}

double sheet_tree_gaps(struct sheet_tree *tree, double least, int64_t *looked) {
    const struct tree_node *const nodes = tree->nodes;
    int32_t at = tree->root;
    tree->gap_count = 0;
    add_beside(tree, least, &nodes[at], false);
    add_beside(tree, least, &nodes[at], true);
    while (at != TREE_NONE) {
        const bool group = nodes[at].kind == TREE_GROUP;
        ++*looked;
        const bool enough = nodes[at].spare_area >= least;
        if (enough && at != tree->root) {
            add_beside(tree, least, &nodes[at],
                       group ? nodes[at].along_x : !nodes[nodes[at].parent].along_x);
        }
        at = group && enough ? nodes[at].child : sheet_tree_after(tree, tree->root, at);
    }
    double most = 0.0;
    for (int32_t i = 0; i < tree->gap_count; i++) {
        const double area = (double)tree->gaps[i].length * (double)tree->gaps[i].width;
        most = area > most ? area : most;
    }
    return most;
}

/* Whether a part of these sides may have a place. */
static bool may_hold(const struct sheet_tree *tree, int64_t length, int64_t width) {
    if (tree->root == TREE_NONE) {
        return length <= tree->length && width <= tree->width;
    }
    for (int32_t i = 0; i < tree->gap_count; i++) {
        if (length <= tree->gaps[i].length && width <= tree->gaps[i].width) {
            return true;
        }
    }
    return false;
}

enum tree_answer sheet_tree_find(const struct sheet_tree *tree, const struct cut_kind *kind,
                                 const struct tree_weights *weights, double noise, uint64_t *seed,
                                 struct tree_place *place, int64_t *looked) {
    const bool holds[] = {may_hold(tree, kind->length, kind->width),
                          kind->turn && may_hold(tree, kind->width, kind->length)};
    if (!holds[0] && !holds[1]) {
        return TREE_NO_PLACE;
    }
    struct candidate part = {
        .tree = tree, .weights = weights, .noise = noise, .seed = seed, .place = place};
    for (int turned = 0; turned <= 1; turned++) {
        if (!holds[turned]) {
            continue;
        }
        part.turned = turned == 1;
        part.whole_length = part.turned ? kind->width : kind->length;
        part.whole_width = part.turned ? kind->length : kind->width;
        part.length = (double)part.whole_length;
        part.width = (double)part.whole_width;
        part.area = part.length * part.width;
        if (tree->root != TREE_NONE) {
            judge_all(&part);
            continue;
        }
        double score = noise * chance(seed);
        part.looked++;
        if (score < place->score) {
            *place = (struct tree_place){TREE_NONE, false, false, part.turned, score};
            part.answer = TREE_BETTER;
        }
    }
    *looked += part.looked;
    return part.answer;
}
