/* SPDX-License-Identifier: MIT */
/* The members of a group are cut off one after the other, the widest first, so that what is left
 * over lies together; a part is trimmed out of its region by the cut that leaves the larger
 * offcut. */
#include "cut/sheet/sheet_layout.h"

#include <assert.h>
#include <stdlib.h>

struct region {
    int64_t x, y, length, width;
};

struct layout {
    struct sheet_plan *plan; /* has room for all nodes and parts */
    const struct cut_model *model;
    const struct cut_job *job;
    const struct sheet_tree *tree;
    int32_t *order; /* a stack of members to sort */
    size_t order_top;
};

static int64_t real_length(const struct layout *layout, int64_t length) {
    return length * layout->model->length_unit - layout->job->kerf;
}

static int64_t real_width(const struct layout *layout, int64_t width) {
    return width * layout->model->width_unit - layout->job->kerf;
}

static size_t add_node(struct layout *layout, struct region region) {
    size_t at = layout->plan->node_count++;
    layout->plan->nodes[at] = (struct sheet_node){.use = SHEET_OFFCUT,
                                                  .x = region.x,
                                                  .y = region.y,
                                                  .length = region.length,
                                                  .width = region.width,
                                                  .first = SHEET_NONE,
                                                  .second = SHEET_NONE,
                                                  .part = SHEET_NONE};
    return at;
}

/* Cuts `size` off the near side of a node. *second SHEET_NONE: nothing is left beyond the blade. */
static void cut(struct layout *layout, size_t at, bool along_x, int64_t size, size_t *second) {
    const struct sheet_node node = layout->plan->nodes[at];
    struct region near = {node.x, node.y, node.length, node.width};
    struct region far = near;
    int64_t skip = size + layout->job->kerf;
    *(along_x ? &near.length : &near.width) = size;
    *(along_x ? &far.x : &far.y) += skip;
    *(along_x ? &far.length : &far.width) -= skip;
    size_t first = add_node(layout, near);
    bool rest = (along_x ? far.length : far.width) > 0;
    *second = rest ? add_node(layout, far) : SHEET_NONE;
    struct sheet_node *changed = &layout->plan->nodes[at];
    changed->use = along_x ? SHEET_CUT_X : SHEET_CUT_Y;
    changed->position = (along_x ? node.x : node.y) + size;
    changed->first = first;
    changed->second = *second;
}

static void draw_part(struct layout *layout, size_t at, const struct tree_node *part) {
    int64_t length = real_length(layout, part->length);
    int64_t width = real_width(layout, part->width);
    for (;;) {
        struct sheet_node *node = &layout->plan->nodes[at];
        int64_t more_length = node->length - length;
        int64_t more_width = node->width - width;
        assert(more_length >= 0 && more_width >= 0);
        if (more_length == 0 && more_width == 0) {
            node->use = SHEET_PIECE;
            node->part = layout->plan->part_count;
            layout->plan->parts[layout->plan->part_count++] =
                (struct sheet_part){(size_t)part->kind, node->x, node->y, part->turned};
            return;
        }
        bool along_x =
            (double)more_length * (double)node->width > (double)more_width * (double)node->length;
        size_t rest = SHEET_NONE;
        cut(layout, at, along_x, along_x ? length : width, &rest);
        at = layout->plan->nodes[at].first;
    }
}

/* Pushes the members of a group, widest across first; returns how many. */
static size_t sort_members(struct layout *layout, const struct tree_node *group) {
    const struct tree_node *nodes = layout->tree->nodes;
    int32_t *order = layout->order + layout->order_top;
    size_t count = 0;
    for (int32_t m = group->child; m != TREE_NONE; m = nodes[m].next) {
        int64_t across = group->along_x ? nodes[m].width : nodes[m].length;
        size_t at = count++;
        while (at > 0 && (group->along_x ? nodes[order[at - 1]].width
                                         : nodes[order[at - 1]].length) < across) {
            order[at] = order[at - 1];
            at--;
        }
        order[at] = m;
    }
    return count;
}

static void draw(struct layout *layout, size_t at, int32_t number) {
    const struct tree_node *node = &layout->tree->nodes[number];
    if (node->kind != TREE_GROUP) {
        draw_part(layout, at, node);
        return;
    }
    size_t base = layout->order_top;
    size_t count = sort_members(layout, node);
    layout->order_top += count;
    for (size_t i = 0; i < count; i++) {
        int32_t member = layout->order[base + i];
        const struct tree_node *box = &layout->tree->nodes[member];
        int64_t size =
            node->along_x ? real_length(layout, box->length) : real_width(layout, box->width);
        const struct sheet_node *region = &layout->plan->nodes[at];
        if ((node->along_x ? region->length : region->width) == size) {
            draw(layout, at, member);
            break;
        }
        size_t rest = SHEET_NONE;
        cut(layout, at, node->along_x, size, &rest);
        draw(layout, layout->plan->nodes[at].first, member);
        at = rest;
    }
    layout->order_top = base;
}

static bool plan_grow(struct sheet_plan *plan, size_t nodes, size_t parts) {
    struct sheet_node *node = realloc(plan->nodes, (plan->node_count + nodes) * sizeof *node);
    if (node == NULL) {
        return false;
    }
    plan->nodes = node;
    struct sheet_part *part = realloc(plan->parts, (plan->part_count + parts) * sizeof *part);
    if (part == NULL) {
        return false;
    }
    plan->parts = part;
    struct sheet_sheet *sheet = realloc(plan->sheets, (plan->sheet_count + 1) * sizeof *sheet);
    if (sheet == NULL) {
        return false;
    }
    plan->sheets = sheet;
    return true;
}

bool sheet_layout_add(struct sheet_plan *plan, const struct cut_model *model,
                      const struct cut_job *job, const struct sheet_tree *tree) {
    size_t parts = (size_t)tree->parts;
    struct layout layout = {.plan = plan, .model = model, .job = job, .tree = tree};
    /* Each part is cut off its group and then out of its region in two cuts at most. */
    layout.order = calloc((size_t)tree->node_count + 1, sizeof *layout.order);
    bool ok = layout.order != NULL && plan_grow(plan, 8 * parts + 8, parts);
    if (ok) {
        size_t stock = model->bins[tree->bin].stock;
        struct region whole = {job->trim, job->trim, job->stocks[stock].length - 2 * job->trim,
                               job->stocks[stock].width - 2 * job->trim};
        struct sheet_sheet *sheet = &plan->sheets[plan->sheet_count++];
        *sheet = (struct sheet_sheet){stock, plan->node_count, 0, plan->part_count, 0};
        draw(&layout, add_node(&layout, whole), tree->root);
        sheet->node_count = plan->node_count - sheet->first_node;
        sheet->part_count = plan->part_count - sheet->first_part;
        assert(sheet->part_count == parts && sheet->node_count <= 8 * parts + 8);
    }
    free(layout.order);
    return ok;
}
