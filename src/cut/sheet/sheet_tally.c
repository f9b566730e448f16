/* SPDX-License-Identifier: MIT */
#include "cut/sheet/sheet_tally.h"

#include "cut/common/cut_area.h"

size_t sheet_trims(const struct cut_job *job, size_t stock) {
    return cut_sheet_trim(job, stock) > 0 ? 4 : 0;
}

int64_t sheet_kerf(const struct cut_job *job, const struct sheet_node *cut) {
    const int64_t end = cut->use == SHEET_CUT_X ? cut->x + cut->length : cut->y + cut->width;
    return end - cut->position < job->kerf ? end - cut->position : job->kerf;
}

bool sheet_keeps(struct offcut_rule keep, int64_t along, int64_t across) {
    const int64_t longer = along > across ? along : across;
    const int64_t shorter = along > across ? across : along;
    return longer >= keep.length && shorter >= keep.sheet_width;
}

void sheet_order(const struct sheet_plan *plan, size_t sheet, size_t *order, size_t *work) {
    const struct sheet_sheet *const s = &plan->sheets[sheet];
    size_t waiting = 0;
    size_t done = 0;
    if (s->node_count > 0) {
        work[waiting++] = s->first_node;
    }
    while (waiting > 0) {
        const size_t at = work[--waiting];
        const struct sheet_node *const n = &plan->nodes[at];
        order[done++] = at;
        if (n->use == SHEET_CUT_X || n->use == SHEET_CUT_Y) {
            if (n->second != SHEET_NONE) {
                work[waiting++] = n->second;
            }
            work[waiting++] = n->first;
        }
    }
}

static bool same_node(const struct sheet_plan *plan, const struct sheet_sheet *x,
                      const struct sheet_sheet *y, size_t i) {
    const struct sheet_node *const p = &plan->nodes[x->first_node + i];
    const struct sheet_node *const q = &plan->nodes[y->first_node + i];
    if (p->use != q->use || p->x != q->x || p->y != q->y || p->length != q->length ||
        p->width != q->width) {
        return false;
    }
    if (p->use == SHEET_PIECE) {
        return plan->parts[p->part].item == plan->parts[q->part].item;
    }
    return p->use == SHEET_OFFCUT || p->position == q->position;
}

bool sheet_same(const struct sheet_plan *plan, size_t a, size_t b) {
    const struct sheet_sheet *const x = &plan->sheets[a];
    const struct sheet_sheet *const y = &plan->sheets[b];
    bool same = x->stock == y->stock && x->node_count == y->node_count;
    for (size_t i = 0; same && i < x->node_count; i++) {
        same = same_node(plan, x, y, i);
    }
    return same;
}

void sheet_totals_make(struct sheet_totals *totals, const struct cut_job *job,
                       const struct sheet_plan *plan, struct offcut_rule keep) {
    int128 trim = 0, parts = 0, kerf = 0, offcuts = 0, kept = 0;
    int64_t cuts = 0;
    for (size_t s = 0; s < plan->sheet_count; s++) {
        const struct sheet_sheet *const sheet = &plan->sheets[s];
        const struct cut_stock *const stock = &job->stocks[sheet->stock];
        const int64_t edge = cut_sheet_trim(job, sheet->stock);
        trim += (int128)stock->length * stock->width -
                (int128)(stock->length - 2 * edge) * (stock->width - 2 * edge);
        cuts += (int64_t)sheet_trims(job, sheet->stock);
        for (size_t i = 0; i < sheet->node_count; i++) {
            const struct sheet_node *const n = &plan->nodes[sheet->first_node + i];
            const int128 area = (int128)n->length * n->width;
            if (n->use == SHEET_PIECE) {
                parts += area;
            } else if (n->use == SHEET_OFFCUT) {
                offcuts += area;
                kept += sheet_keeps(keep, n->length, n->width) ? area : 0;
            } else {
                kerf += (int128)sheet_kerf(job, n) * (n->use == SHEET_CUT_X ? n->width : n->length);
                cuts++;
            }
        }
    }
    *totals = (struct sheet_totals){.cuts = cuts,
                                    .parts = cut_area_hundredths(parts),
                                    .trim = cut_area_hundredths(trim),
                                    .kerf = cut_area_hundredths(kerf),
                                    .offcuts = cut_area_hundredths(offcuts),
                                    .keep = cut_area_hundredths(kept)};
}
