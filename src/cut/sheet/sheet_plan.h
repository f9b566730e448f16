/* SPDX-License-Identifier: MIT */
/* Which sheets to buy and how to cut each by edge-to-edge cuts, of any number of stages: least
 * cost, with a proven lower bound. Of plans that cost the same, the one of the fewest cuts that the
 * search has seen, and of these the one with the largest offcut worth keeping.
 * Units, ranges and ownership: cut_stock.h. Method: docs/cutting.md.
 *
 * Places are counted from the sheet's corner, trim included: x along its length, y along its width.
 * A part that is not turned lies with its length along x; a turned one with its width along x. */
#ifndef DOORCOST_CUT_SHEET_SHEET_PLAN_H
#define DOORCOST_CUT_SHEET_SHEET_PLAN_H

#include "cut/common/cut_stock.h"
#include "cut/common/offcut_rule.h"

/* No node, no part. */
#define SHEET_NONE SIZE_MAX

struct sheet_part {
    size_t item; /* of the job */
    int64_t x, y;
    bool turned;
};

enum sheet_use {
    SHEET_CUT_X, /* the saw parts the region at x = position: the blade takes position to
                    position + kerf */
    SHEET_CUT_Y, /* the same at y = position */
    SHEET_PIECE, /* the region is a part, exactly */
    SHEET_OFFCUT /* the region is left over */
};

/* A region of a sheet, and what becomes of it. */
struct sheet_node {
    enum sheet_use use;
    int64_t x, y, length, width; /* length along x, width along y, both above 0 */
    int64_t position;            /* of a cut */
    size_t first, second;        /* nodes of the plan on both sides of a cut; second is SHEET_NONE
                                    when the blade takes all that is left */
    size_t part;                 /* of a piece: in plan->parts */
};

/* One sheet. Its nodes are plan->nodes[first_node ...], the first of them the whole trimmed sheet,
 * each cut before what it parts: the order in which a saw can cut them. */
struct sheet_sheet {
    size_t stock; /* in the job's list */
    size_t first_node, node_count;
    size_t first_part, part_count;
};

struct sheet_plan {
    size_t sheet_count;
    struct sheet_sheet *sheets;
    size_t node_count;
    struct sheet_node *nodes;
    size_t part_count;
    struct sheet_part *parts;
    int64_t cost;  /* prices of all sheets */
    int64_t bound; /* no plan costs less, however cut; cost == bound: none is better */
    int64_t spent; /* effort used */
};

/* Plans the sheets of a job. keep: which offcuts are worth a place in the rack. effort: units of
 * work to spend at most on the cost, 0 or more, and up to a twentieth of it, or a thousandth of a
 * second, more on cuts and offcuts; the quickest plan is always made, and a plan that reaches its
 * bound ends the search for a cheaper one. Gives CUT_DONE and *plan (owned), or another status and
 * *plan NULL. No demand: an empty plan. */
__attribute__((warn_unused_result)) enum cut_status sheet_plan_make(const struct cut_job *job,
                                                                    struct offcut_rule keep,
                                                                    int64_t effort,
                                                                    struct sheet_plan **plan);

/* Frees a plan with all that it holds; NULL is accepted. */
void sheet_plan_free(struct sheet_plan *plan);

#endif
