/* SPDX-License-Identifier: MIT */
/* The parts of one sheet as a tree of groups: the parts of a group lie side by side, along x or
 * along y in turn from level to level. Any layout for edge-to-edge cuts is such a tree.
 *
 * A group is as small as its members allow, so nothing says where within the sheet the free room
 * lies until the sheet is drawn (sheet_layout.h): a group may grow later as long as the sheet
 * holds it. Sizes are the reduced ones of cut_model.h: kerf is part of them. */
#ifndef DOORCOST_CUT_SHEET_SHEET_TREE_H
#define DOORCOST_CUT_SHEET_SHEET_TREE_H

#include "cut/common/cut_model.h"

/* No node; a node that is a group. */
#define TREE_NONE  ((int32_t)-1)
#define TREE_GROUP ((int32_t)-1)

struct tree_node {
    int64_t length, width;             /* the least box around it */
    int64_t spare_length, spare_width; /* by so much it alone may grow within the sheet */
    double area;                       /* of its parts */
    double spare_area;                 /* free at most, within the box it can grow to */
    int32_t parent, child, next;       /* child: the first member; next: the next one beside it */
    int32_t kind;                      /* of a part, or TREE_GROUP */
    bool along_x;                      /* a group: its members lie side by side along x */
    bool turned;                       /* a part: its length lies along y */
};

/* Free room beside a node: it holds what is no longer and no wider. */
struct tree_gap {
    int64_t length, width;
};

/* The most gaps kept of a tree; two are taken for one that holds both where there are more. */
#define TREE_GAPS 16

struct sheet_tree {
    size_t bin;            /* of the model */
    int64_t length, width; /* of the bin */
    int32_t root;          /* TREE_NONE: an empty sheet */
    int32_t parts;
    double area;                           /* of its parts */
    int32_t node_count, node_room, unused; /* unused: first of a list linked by next */
    struct tree_node *nodes;
    int32_t gap_count; /* TREE_NONE: not known since the tree has changed */
    struct tree_gap gaps[TREE_GAPS];
};

/* Where a part would go: beside the members of a group, or beside one node, with which it makes a
 * new group. */
struct tree_place {
    int32_t node; /* TREE_NONE: the empty sheet itself */
    bool wrap;    /* a new group around node and part */
    bool along_x; /* wrap: how the two lie */
    bool turned;
    double score; /* lower is better */
};

/* How places are judged: weights of what a place wastes, all shares of the part's area. */
struct tree_weights {
    double strip;  /* the strip beside the shorter of part and neighbor */
    double growth; /* by how much the box around all parts grows */
    double rest;   /* what remains of the free room next to it */
};

/* Empties a tree for a bin; what it owns is kept. Start from an all-zero tree. */
void sheet_tree_reset(struct sheet_tree *tree, const struct cut_model *model, size_t bin);
/* Frees what a tree holds and empties it. */
void sheet_tree_clear(struct sheet_tree *tree);

/* Moves a tree that is not empty to another bin, which its box must fit. */
void sheet_tree_move(struct sheet_tree *tree, const struct cut_model *model, size_t bin);

/* Makes `to` equal to `from`. false: an allocation failed, `to` is as before. */
__attribute__((warn_unused_result)) bool sheet_tree_copy(struct sheet_tree *to,
                                                         const struct sheet_tree *from);

/* Finds the gaps of a tree that is not empty; least: the area of the smallest part there is, none
 * smaller is kept. Gives the area of the largest; how many nodes were looked at is added to
 * *looked. */
double sheet_tree_gaps(struct sheet_tree *tree, double least, int64_t *looked);

/* The node after all that is below `at`, which is not above `top`; TREE_NONE: below top that was
 * the last. */
static inline int32_t sheet_tree_after(const struct sheet_tree *tree, int32_t top, int32_t at) {
    while (at != top && tree->nodes[at].next == TREE_NONE) {
        at = tree->nodes[at].parent;
    }
    return at == top ? TREE_NONE : tree->nodes[at].next;
}

enum tree_answer {
    TREE_NO_PLACE,  /* the part fits nowhere */
    TREE_NO_BETTER, /* it fits, but at no better place than the one given */
    TREE_BETTER     /* *place is a better one */
};

/* The best place for a part of the kind on a tree that is empty or whose gaps are known; *place is
 * changed only when one is better than its score. Every place is judged with a little chance: noise
 * times a number below 1 from *seed is added. How many places were looked at is added to *looked.
 */
enum tree_answer sheet_tree_find(const struct sheet_tree *tree, const struct cut_kind *kind,
                                 const struct tree_weights *weights, double noise, uint64_t *seed,
                                 struct tree_place *place, int64_t *looked);

/* Puts a part of kind number `number` at a place that sheet_tree_find gave for this very tree.
 * false: an allocation failed, the tree is as before. */
__attribute__((warn_unused_result)) bool sheet_tree_insert(struct sheet_tree *tree,
                                                           const struct cut_kind *kind,
                                                           int32_t number,
                                                           const struct tree_place *place);

/* Takes a part (a node that is no group) off the tree. */
void sheet_tree_remove(struct sheet_tree *tree, int32_t node);

#endif
