/* SPDX-License-Identifier: MIT */
/* Two looks at a sheet. First only at where the parts lie: inside, apart, and to be freed by
 * edge-to-edge cuts, which are found anew. Then at the tree of cuts: it must give just these
 * parts. */
#include "cut/check/plan_check_sheet.h"

#include <stdlib.h>

/* A part as a rectangle. */
struct box {
    int64_t x, y, length, width;
};

static struct box box_of(const struct cut_job *job, const struct sheet_part *part) {
    const struct cut_item *item = &job->items[part->item];
    return (struct box){part->x, part->y, part->turned ? item->width : item->length,
                        part->turned ? item->length : item->width};
}

static int compare_x(const void *left, const void *right) {
    const struct box *a = left;
    const struct box *b = right;
    return (a->x > b->x) - (a->x < b->x);
}

static int compare_y(const void *left, const void *right) {
    const struct box *a = left;
    const struct box *b = right;
    return (a->y > b->y) - (a->y < b->y);
}

/* The sheet of a stock without what is trimmed off its edges. */
static struct box trimmed(const struct cut_job *job, size_t at) {
    const struct cut_stock *const stock = &job->stocks[at];
    const int64_t trim = at >= job->stock_count - job->sawn_count ? 0 : job->trim;
    return (struct box){trim, trim, stock->length - 2 * trim, stock->width - 2 * trim};
}

static bool inside(const struct box *box, const struct box *whole) {
    return box->x >= whole->x && box->y >= whole->y &&
           box->x <= whole->x + whole->length - box->length &&
           box->y <= whole->y + whole->width - box->width;
}

/* Whether two boxes, grown by a margin at their far ends, meet. */
static bool meet(const struct box *a, const struct box *b, int64_t margin) {
    return a->x < b->x + b->length + margin && b->x < a->x + a->length + margin &&
           a->y < b->y + b->width + margin && b->y < a->y + a->width + margin;
}

/* Boxes sorted by x: each is compared with those that begin before it ends. */
static enum plan_fault check_apart(const struct box *boxes, size_t count, int64_t kerf) {
    for (size_t i = 0; i < count; i++) {
        for (size_t j = i + 1; j < count && boxes[j].x < boxes[i].x + boxes[i].length + kerf; j++) {
            if (meet(&boxes[i], &boxes[j], 0)) {
                return PLAN_OVERLAP;
            }
            if (meet(&boxes[i], &boxes[j], kerf)) {
                return PLAN_NO_KERF;
            }
        }
    }
    return PLAN_GOOD;
}

/* Sorts the boxes along one direction and gives the first place where a blade passes through all of
 * them: how many lie before it. count: no such place. */
static size_t part_boxes(struct box *boxes, size_t count, int64_t kerf, bool along_x) {
    qsort(boxes, count, sizeof *boxes, along_x ? compare_x : compare_y);
    int64_t end = 0;
    for (size_t i = 0; i < count; i++) {
        int64_t from = along_x ? boxes[i].x : boxes[i].y;
        int64_t size = along_x ? boxes[i].length : boxes[i].width;
        if (i > 0 && from >= end + kerf) {
            return i;
        }
        end = i == 0 || from + size > end ? from + size : end;
    }
    return count;
}

/* Whether edge-to-edge cuts can free every box. A cut that is possible never makes a later one
 * impossible, so any will do; the smaller side is looked at by recursion, which keeps it shallow.
 */
static bool cuttable(struct box *boxes, size_t count, int64_t kerf) {
    while (count > 1) {
        size_t before = part_boxes(boxes, count, kerf, true);
        if (before == count) {
            before = part_boxes(boxes, count, kerf, false);
        }
        if (before == count) {
            return false;
        }
        struct box *smaller = before <= count - before ? boxes : boxes + before;
        struct box *larger = smaller == boxes ? boxes + before : boxes;
        size_t few = smaller == boxes ? before : count - before;
        if (!cuttable(smaller, few, kerf)) {
            return false;
        }
        boxes = larger;
        count -= few;
    }
    return true;
}

static enum plan_fault check_places(const struct cut_job *job, const struct sheet_plan *plan,
                                    const struct sheet_sheet *sheet, struct box *boxes) {
    const struct box whole = trimmed(job, sheet->stock);
    for (size_t i = 0; i < sheet->part_count; i++) {
        boxes[i] = box_of(job, &plan->parts[sheet->first_part + i]);
        if (!inside(&boxes[i], &whole)) {
            return PLAN_OUTSIDE;
        }
    }
    qsort(boxes, sheet->part_count, sizeof *boxes, compare_x);
    enum plan_fault fault = check_apart(boxes, sheet->part_count, job->kerf);
    if (fault == PLAN_GOOD && !cuttable(boxes, sheet->part_count, job->kerf)) {
        fault = PLAN_NOT_CUTTABLE;
    }
    return fault;
}

static bool same_region(const struct sheet_node *node, struct box box) {
    return node->x == box.x && node->y == box.y && node->length == box.length &&
           node->width == box.width;
}

/* Checks that a cut's two sides are the regions it leaves, and counts them as seen. */
static bool check_cut(const struct cut_job *job, const struct sheet_plan *plan,
                      const struct sheet_sheet *sheet, size_t at, bool *seen) {
    const struct sheet_node *node = &plan->nodes[at];
    bool along_x = node->use == SHEET_CUT_X;
    int64_t from = along_x ? node->x : node->y;
    int64_t size = along_x ? node->length : node->width;
    int64_t before = node->position - from;
    int64_t after = size - before - job->kerf;
    struct box whole = {node->x, node->y, node->length, node->width};
    size_t end = sheet->first_node + sheet->node_count;
    if (before <= 0 || before >= size || node->first <= at || node->first >= end ||
        (after > 0) != (node->second != SHEET_NONE)) {
        return false;
    }
    struct box near = whole;
    *(along_x ? &near.length : &near.width) = before;
    if (!same_region(&plan->nodes[node->first], near) || seen[node->first - sheet->first_node]) {
        return false;
    }
    seen[node->first - sheet->first_node] = true;
    if (after <= 0) {
        return true;
    }
    struct box far = whole;
    *(along_x ? &far.x : &far.y) = node->position + job->kerf;
    *(along_x ? &far.length : &far.width) = after;
    if (node->second <= at || node->second >= end || seen[node->second - sheet->first_node] ||
        !same_region(&plan->nodes[node->second], far)) {
        return false;
    }
    seen[node->second - sheet->first_node] = true;
    return true;
}

/* seen: for each node whether a cut led to it, then for each part whether a node is it. */
static bool check_tree(const struct cut_job *job, const struct sheet_plan *plan,
                       const struct sheet_sheet *sheet, bool *seen) {
    size_t parts = 0;
    const struct box whole = trimmed(job, sheet->stock);
    if (!same_region(&plan->nodes[sheet->first_node], whole)) {
        return false;
    }
    seen[0] = true;
    for (size_t i = 0; i < sheet->node_count; i++) {
        const struct sheet_node *node = &plan->nodes[sheet->first_node + i];
        if (!seen[i]) {
            return false;
        }
        if (node->use == SHEET_PIECE) {
            size_t part = node->part - sheet->first_part;
            if (part >= sheet->part_count || seen[sheet->node_count + part] ||
                !same_region(node, box_of(job, &plan->parts[node->part]))) {
                return false;
            }
            seen[sheet->node_count + part] = true;
            parts++;
        } else if (node->use != SHEET_OFFCUT &&
                   !check_cut(job, plan, sheet, sheet->first_node + i, seen)) {
            return false;
        }
    }
    return parts == sheet->part_count;
}

enum plan_fault plan_check_layout(const struct cut_job *job, const struct sheet_plan *plan,
                                  const struct sheet_sheet *sheet) {
    enum plan_fault fault = PLAN_NO_MEMORY;
    struct box *boxes = calloc(sheet->part_count, sizeof *boxes);
    bool *seen = calloc(sheet->node_count + sheet->part_count, sizeof *seen);
    if (boxes == NULL || seen == NULL) {
        goto done;
    }
    fault = check_places(job, plan, sheet, boxes);
    if (fault == PLAN_GOOD && !check_tree(job, plan, sheet, seen)) {
        fault = PLAN_WRONG_CUT;
    }
done:
    free(seen);
    free(boxes);
    return fault;
}
