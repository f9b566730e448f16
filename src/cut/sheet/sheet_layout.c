/* SPDX-License-Identifier: MIT */
/* The members of a group come off the widest first. Of the orders of cuts that take no more cuts
 * than any other, each region takes the one that leaves the largest offcut in one piece. */
#include "cut/sheet/sheet_layout.h"

#include "cut/sheet/sheet_tally.h"

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
    struct offcut_rule keep;
    int32_t *order; /* a stack of members to sort */
    size_t order_top;
    int64_t cuts; /* so far */
};

static int64_t real_length(const struct layout *layout, int64_t grown) {
    return grown * layout->model->length_unit - layout->job->kerf;
}

static int64_t real_width(const struct layout *layout, int64_t grown) {
    return grown * layout->model->width_unit - layout->job->kerf;
}

/* A sheet without its edges. */
static struct region whole_of(const struct cut_job *job, size_t stock) {
    const int64_t trim = cut_sheet_trim(job, stock);
    return (struct region){trim, trim, job->stocks[stock].length - 2 * trim,
                           job->stocks[stock].width - 2 * trim};
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
    layout->cuts++;
}

/* How far a member reaches along or across its group. */
static int64_t member_size(const struct layout *layout, int32_t member, bool along_x) {
    const struct tree_node *node = &layout->tree->nodes[member];
    return along_x ? real_length(layout, node->length) : real_width(layout, node->width);
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

/* Members of a group that are cut out of one region, the widest across first. */
struct row {
    bool along_x;
    const int32_t *members;
    size_t count;
};

/* A way to begin: what it leaves as one offcut. */
struct beginning {
    bool any;
    size_t kept;  /* members cut off before it, as one piece */
    bool end;     /* the offcut lies behind all members; else beside those after `kept` */
    int64_t size; /* where the cut goes, from the near side */
    double worth; /* area of the offcut, above all others where it is worth keeping */
};

static void look_at(const struct layout *layout, struct beginning *best, struct beginning way,
                    int64_t along, int64_t across) {
    const double area = (double)(along > 0 ? along : 0) * (double)(across > 0 ? across : 0);
    way.any = true;
    way.worth = sheet_keeps(layout->keep, along, across) ? area : -1.0 / (1.0 + area);
    if (!best->any || way.worth > best->worth) {
        *best = way;
    }
}

/* The beginning that leaves the largest offcut, of those that take no more cuts than any other: a
 * cut for each member but the last, one for each width across but the region's, one for the end.
 * What stands as wide as the region is cut off first, in one piece; what is less wide lies beyond,
 * and the offcut beside it. */
static struct beginning choose_beginning(const struct layout *layout, const struct row *row,
                                         int64_t along, int64_t across) {
    struct beginning best = {false, 0, false, 0, 0.0};
    const int64_t kerf = layout->job->kerf;
    int64_t used = -kerf;
    for (size_t i = 0; i < row->count; i++) {
        used += kerf + member_size(layout, row->members[i], row->along_x);
    }
    if (along > used) {
        look_at(layout, &best, (struct beginning){.end = true, .size = used}, along - used - kerf,
                across);
    }
    int64_t before = -kerf;
    int64_t last = INT64_MAX;
    for (size_t i = 0; i < row->count; i++) {
        const int64_t width = member_size(layout, row->members[i], !row->along_x);
        if (width < last && width < across) {
            const int64_t size = i > 0 ? before : width;
            look_at(layout, &best, (struct beginning){.kept = i, .size = size},
                    along - before - kerf, across - width - kerf);
        }
        last = width;
        before += kerf + member_size(layout, row->members[i], row->along_x);
    }
    return best;
}

static void draw(struct layout *layout, size_t at, int32_t number);

/* One member in a region that it may not fill. */
static bool draw_single(struct layout *layout, size_t at, int32_t number) {
    const struct tree_node *node = &layout->tree->nodes[number];
    if (node->kind == TREE_GROUP) {
        draw(layout, at, number);
        return true;
    }
    struct sheet_node *region = &layout->plan->nodes[at];
    if (region->length != real_length(layout, node->length) ||
        region->width != real_width(layout, node->width)) {
        return false;
    }
    region->use = SHEET_PIECE;
    region->part = layout->plan->part_count;
    layout->plan->parts[layout->plan->part_count++] =
        (struct sheet_part){(size_t)node->kind, region->x, region->y, node->turned};
    return true;
}

/* Cuts the members of a row out of a region that holds them. */
static void draw_row(struct layout *layout, size_t at, struct row row) {
    while (row.count > 1 || !draw_single(layout, at, row.members[0])) {
        const struct sheet_node *region = &layout->plan->nodes[at];
        const int64_t along = row.along_x ? region->length : region->width;
        const int64_t across = row.along_x ? region->width : region->length;
        struct beginning way = choose_beginning(layout, &row, along, across);
        size_t rest = SHEET_NONE;
        if (way.any && way.kept == 0) {
            cut(layout, at, way.end ? row.along_x : !row.along_x, way.size, &rest);
            at = layout->plan->nodes[at].first;
            continue;
        }
        /* Where nothing is left over, the members come off one by one. */
        way.kept = way.any ? way.kept : 1;
        way.size = way.any ? way.size : member_size(layout, row.members[0], row.along_x);
        cut(layout, at, row.along_x, way.size, &rest);
        draw_row(layout, layout->plan->nodes[at].first,
                 (struct row){row.along_x, row.members, way.kept});
        row.members += way.kept;
        row.count -= way.kept;
        at = rest;
    }
}

static void draw(struct layout *layout, size_t at, int32_t number) {
    const struct tree_node *node = &layout->tree->nodes[number];
    if (node->kind != TREE_GROUP) {
        draw_row(layout, at, (struct row){true, &number, 1});
        return;
    }
    const size_t base = layout->order_top;
    const size_t count = sort_members(layout, node);
    layout->order_top += count;
    draw_row(layout, at, (struct row){node->along_x, layout->order + base, count});
    layout->order_top = base;
}

/* Cuts that part the members of a group in a region as large as it is: one a member but the last,
 * and one for each width across that is less than the widest. */
static int64_t cuts_of_group(const struct sheet_tree *tree, const struct tree_node *group) {
    const struct tree_node *const nodes = tree->nodes;
    int64_t cuts = -2;
    for (int32_t m = group->child; m != TREE_NONE; m = nodes[m].next) {
        int32_t like = group->child;
        while (group->along_x ? nodes[like].width != nodes[m].width
                              : nodes[like].length != nodes[m].length) {
            like = nodes[like].next;
        }
        cuts += like == m ? 2 : 1;
    }
    return cuts;
}

int64_t sheet_layout_cuts(const struct cut_model *model, const struct cut_job *job,
                          const struct sheet_tree *tree) {
    const struct layout layout = {.model = model, .job = job, .tree = tree};
    const struct tree_node *const root = &tree->nodes[tree->root];
    const struct region whole = whole_of(job, model->bins[tree->bin].stock);
    int64_t cuts = (real_length(&layout, root->length) < whole.length ? 1 : 0) +
                   (real_width(&layout, root->width) < whole.width ? 1 : 0);
    int32_t at = tree->root;
    while (at != TREE_NONE) {
        const bool group = tree->nodes[at].kind == TREE_GROUP;
        cuts += group ? cuts_of_group(tree, &tree->nodes[at]) : 0;
        at = group ? tree->nodes[at].child : sheet_tree_after(tree, tree->root, at);
    }
    return cuts;
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
                      const struct cut_job *job, struct offcut_rule keep,
                      const struct sheet_tree *tree) {
    size_t parts = (size_t)tree->parts;
    struct layout layout = {.plan = plan, .model = model, .job = job, .tree = tree, .keep = keep};
    /* Each part is cut off its group and then out of its region in two cuts at most. */
    layout.order = calloc((size_t)tree->node_count + 1, sizeof *layout.order);
    bool ok = layout.order != NULL && plan_grow(plan, 8 * parts + 8, parts);
    if (ok) {
        size_t stock = model->bins[tree->bin].stock;
        struct sheet_sheet *sheet = &plan->sheets[plan->sheet_count++];
        *sheet = (struct sheet_sheet){stock, plan->node_count, 0, plan->part_count, 0};
        draw(&layout, add_node(&layout, whole_of(job, stock)), tree->root);
        sheet->node_count = plan->node_count - sheet->first_node;
        sheet->part_count = plan->part_count - sheet->first_part;
        assert(sheet->part_count == parts && sheet->node_count <= 8 * parts + 8);
        assert(layout.cuts == sheet_layout_cuts(model, job, tree));
    }
    free(layout.order);
    return ok;
}
