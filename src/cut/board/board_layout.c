/* SPDX-License-Identifier: MIT */
#include "cut/board/board_layout.h"

#include "base/pool.h"
#include "cut/common/cut_area.h"

#include <stdlib.h>
#include <string.h>

/* A layout in the making; failure sticks. */
struct bench {
    struct board_layout *l;
    const struct board_job *job;
    const struct board_plan *plan;
    struct offcut_rule keep;
    int64_t clear; /* x where the share kept for defects begins */
    bool failed;
};

static int64_t least(int64_t a, int64_t b) {
    return a < b ? a : b;
}

static int64_t most(int64_t a, int64_t b) {
    return a > b ? a : b;
}

static void add_cut(struct bench *b, struct board_cut cut) {
    struct board_layout *const l = b->l;
    l->cuts = array_grow(l->cuts, &l->cut_room, l->cut_count + 1, sizeof *l->cuts, &b->failed);
    if (!b->failed) {
        l->cuts[l->cut_count++] = cut;
    }
}

static void add_piece(struct bench *b, struct board_piece piece) {
    struct board_layout *const l = b->l;
    l->pieces =
        array_grow(l->pieces, &l->piece_room, l->piece_count + 1, sizeof *l->pieces, &b->failed);
    if (!b->failed) {
        l->pieces[l->piece_count++] = piece;
    }
}

/* What lies between a cut and the end of the board: first what is sure to be clear, then the share
 * kept for defects. */
static void add_rest(struct bench *b, struct board_box box) {
    struct board_layout *const l = b->l;
    const int64_t end = box.x + box.length;
    const int64_t from = most(box.x, b->clear);
    if (from > box.x) {
        const struct board_offcut offcut = {.box = {box.x, box.y, from - box.x, box.width},
                                            .keep = from - box.x >= b->keep.length &&
                                                    box.width >= b->keep.board_width};
        l->offcuts = array_grow(l->offcuts, &l->offcut_room, l->offcut_count + 1,
                                sizeof *l->offcuts, &b->failed);
        if (!b->failed) {
            l->offcuts[l->offcut_count++] = offcut;
        }
    }
    if (end > from) {
        l->reserves = array_grow(l->reserves, &l->reserve_room, l->reserve_count + 1,
                                 sizeof *l->reserves, &b->failed);
        if (!b->failed) {
            l->reserves[l->reserve_count++] =
                (struct board_box){from, box.y, end - from, box.width};
        }
    }
}

static void trim(struct bench *b, const struct cut_stock *stock) {
    const struct board_box *const sawn = &b->l->sawn;
    const int64_t end = b->job->end_trim;
    const int64_t edge = b->job->edge;
    if (end > 0) {
        add_cut(b, (struct board_cut){.kind = BOARD_CUT_END, .box = {0, 0, end, stock->width}});
        add_cut(b, (struct board_cut){.kind = BOARD_CUT_END,
                                      .box = {stock->length - end, 0, end, stock->width}});
    }
    if (edge > 0) {
        add_cut(
            b, (struct board_cut){.kind = BOARD_CUT_EDGE, .box = {sawn->x, 0, sawn->length, edge}});
        add_cut(b, (struct board_cut){.kind = BOARD_CUT_EDGE,
                                      .box = {sawn->x, stock->width - edge, sawn->length, edge}});
    }
}

/* The rips; what is left beside the last strip. */
static void rip(struct bench *b, const struct board_use *use) {
    const struct board_box sawn = b->l->sawn;
    const int64_t top = sawn.y + sawn.width;
    int64_t y = sawn.y;
    for (size_t s = 0; s < use->count; s++) {
        const int64_t width = b->plan->strips[use->first + s].width;
        const int64_t kerf = least(b->job->kerf, top - y - width);
        y += width;
        if (y < top) {
            add_cut(b, (struct board_cut){.kind = BOARD_CUT_RIP,
                                          .box = {sawn.x, y, sawn.length, kerf},
                                          .size = width,
                                          .strip = s});
        }
        y += kerf;
    }
    if (y < top) {
        add_rest(b, (struct board_box){sawn.x, y, sawn.length, top - y});
    }
}

static void crosscut(struct bench *b, const struct board_strip *strip, size_t number, int64_t y) {
    const struct board_box sawn = b->l->sawn;
    const int64_t end = sawn.x + sawn.length;
    int64_t x = sawn.x;
    for (size_t i = 0; i < strip->count; i++) {
        const size_t item = b->plan->pieces[strip->first + i];
        const int64_t along = b->job->items[item].length;
        const int64_t kerf = least(b->job->kerf, end - x - along);
        add_piece(b, (struct board_piece){
                         .item = item, .strip = number, .box = {x, y, along, strip->width}});
        x += along;
        if (x < end) {
            add_cut(b, (struct board_cut){.kind = BOARD_CUT_CROSS,
                                          .box = {x, y, kerf, strip->width},
                                          .size = along,
                                          .strip = number});
        }
        x += kerf;
    }
    if (x < end) {
        add_rest(b, (struct board_box){x, y, end - x, strip->width});
    }
}

bool board_layout_make(struct board_layout *layout, const struct board_job *job,
                       const struct board_plan *plan, size_t board, struct offcut_rule keep) {
    const struct board_use *const use = &plan->boards[board];
    const struct cut_stock *const stock = &job->stocks[use->stock];
    struct bench b = {.l = layout,
                      .job = job,
                      .plan = plan,
                      .keep = keep,
                      .clear = job->end_trim + board_usable_length(job, use->stock)};
    layout->cut_count = 0;
    layout->piece_count = 0;
    layout->offcut_count = 0;
    layout->reserve_count = 0;
    layout->sawn = (struct board_box){job->end_trim, job->edge, stock->length - 2 * job->end_trim,
                                      stock->width - 2 * job->edge};
    trim(&b, stock);
    rip(&b, use);
    int64_t y = layout->sawn.y;
    for (size_t s = 0; s < use->count; s++) {
        const struct board_strip *const strip = &plan->strips[use->first + s];
        crosscut(&b, strip, s, y);
        y += strip->width + job->kerf;
    }
    return !b.failed;
}

void board_layout_clear(struct board_layout *layout) {
    free(layout->cuts);
    free(layout->pieces);
    free(layout->offcuts);
    free(layout->reserves);
    *layout = (struct board_layout){0};
}

bool board_same(const struct board_plan *plan, size_t a, size_t b) {
    const struct board_use *const x = &plan->boards[a];
    const struct board_use *const y = &plan->boards[b];
    if (x->stock != y->stock || x->count != y->count) {
        return false;
    }
    for (size_t s = 0; s < x->count; s++) {
        const struct board_strip *const p = &plan->strips[x->first + s];
        const struct board_strip *const q = &plan->strips[y->first + s];
        if (p->width != q->width || p->count != q->count ||
            memcmp(&plan->pieces[p->first], &plan->pieces[q->first],
                   p->count * sizeof *plan->pieces) != 0) {
            return false;
        }
    }
    return true;
}

/* --- totals --- */

static int128 area(const struct board_box *box) {
    return (int128)box->length * box->width;
}

bool board_totals_make(struct board_totals *totals, const struct board_job *job,
                       const struct board_plan *plan, struct offcut_rule keep) {
    struct board_layout l = {0};
    int128 boards = 0, sawn = 0, parts = 0, kerf = 0, defects = 0, offcuts = 0, kept = 0;
    bool held = true;
    *totals = (struct board_totals){0};
    for (size_t b = 0; b < plan->board_count && held; b++) {
        const struct cut_stock *const stock = &job->stocks[plan->boards[b].stock];
        held = board_layout_make(&l, job, plan, b, keep);
        boards += (int128)stock->length * stock->width;
        sawn += area(&l.sawn);
        totals->cuts += (int64_t)l.cut_count;
        for (size_t i = 0; i < l.piece_count; i++) {
            parts += area(&l.pieces[i].box);
        }
        for (size_t i = 0; i < l.cut_count; i++) {
            const bool saw = l.cuts[i].kind == BOARD_CUT_RIP || l.cuts[i].kind == BOARD_CUT_CROSS;
            kerf += saw ? area(&l.cuts[i].box) : 0;
        }
        for (size_t i = 0; i < l.reserve_count; i++) {
            defects += area(&l.reserves[i]);
        }
        for (size_t i = 0; i < l.offcut_count; i++) {
            offcuts += area(&l.offcuts[i].box);
            kept += l.offcuts[i].keep ? area(&l.offcuts[i].box) : 0;
        }
    }
    totals->parts = cut_area_hundredths(parts);
    totals->trim = cut_area_hundredths(boards - sawn);
    totals->kerf = cut_area_hundredths(kerf);
    totals->defects = cut_area_hundredths(defects);
    totals->offcuts = cut_area_hundredths(offcuts);
    totals->keep = cut_area_hundredths(kept);
    board_layout_clear(&l);
    return held;
}
