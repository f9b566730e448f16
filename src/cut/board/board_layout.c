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
    size_t stock;
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

/* What lies behind the last strip or part: first what is sure to be clear, then the share kept for
 * defects. */
static void add_rest(struct bench *b, struct board_box box, bool rough) {
    struct board_layout *const l = b->l;
    const int64_t end = box.x + box.length;
    const int64_t from = least(end, most(box.x, b->clear));
    if (from > box.x) {
        const struct board_offcut offcut = {.box = {box.x, box.y, from - box.x, box.width},
                                            .keep = from - box.x >= b->keep.length &&
                                                    box.width >= b->keep.board_width,
                                            .rough = rough};
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

static void trim_ends(struct bench *b, const struct cut_stock *stock) {
    const int64_t end = board_end_trim(b->job, b->stock);
    if (end > 0) {
        add_cut(b, (struct board_cut){.kind = BOARD_CUT_END, .box = {0, 0, end, stock->width}});
        add_cut(b, (struct board_cut){.kind = BOARD_CUT_END,
                                      .box = {stock->length - end, 0, end, stock->width}});
    }
}

/* Takes both edges off a region, which a strip of that number is or which all strips share. */
static struct board_box straighten(struct bench *b, struct board_box region, size_t strip) {
    const int64_t edge = board_edge(b->job, b->stock);
    if (edge > 0) {
        struct board_cut cut = {.kind = BOARD_CUT_EDGE, .box = region, .strip = strip};
        cut.box.width = edge;
        add_cut(b, cut);
        cut.box.y = region.y + region.width - edge;
        add_cut(b, cut);
    }
    region.y += edge;
    region.width -= 2 * edge;
    return region;
}

/* Takes `size` off the low end of a region, along it by a crosscut, across it by a rip. The cut
 * lies behind, none where it ends flush. What was taken; the region becomes what is left. */
static struct board_box take(struct bench *b, struct board_box *from, enum board_cut_kind kind,
                             int64_t size, size_t strip) {
    const bool cross = kind == BOARD_CUT_CROSS;
    const int64_t room = cross ? from->length : from->width;
    const int64_t kerf = least(b->job->kerf, room - size);
    struct board_box taken = *from;
    struct board_cut cut = {.kind = kind, .box = *from, .size = size, .strip = strip};
    if (cross) {
        taken.length = size;
        cut.box.x += size;
        cut.box.length = kerf;
        from->x += size + kerf;
        from->length -= size + kerf;
    } else {
        taken.width = size;
        cut.box.y += size;
        cut.box.width = kerf;
        from->y += size + kerf;
        from->width -= size + kerf;
    }
    if (size < room) {
        add_cut(b, cut);
    }
    return taken;
}

/* The cuts that free the strips; what is left behind the last one, which of segments still has the
 * edges of the board. */
static void cut_strips(struct bench *b, const struct board_use *use, struct board_box region,
                       enum board_cut_kind kind) {
    for (size_t s = 0; s < use->count; s++) {
        (void)take(b, &region, kind, b->plan->strips[use->first + s].width, s);
    }
    if (region.length > 0 && region.width > 0) {
        add_rest(b, region, kind == BOARD_CUT_CROSS && board_edge(b->job, b->stock) > 0);
    }
}

/* The cuts that free the parts of a strip, which fills the region. */
static void cut_parts(struct bench *b, const struct board_strip *strip, size_t number,
                      struct board_box region, enum board_cut_kind kind) {
    for (size_t i = 0; i < strip->count; i++) {
        const size_t item = b->plan->pieces[strip->first + i];
        const struct cut_item *const part = &b->job->items[item];
        const int64_t size = kind == BOARD_CUT_CROSS ? part->length : part->width;
        add_piece(b, (struct board_piece){.item = item,
                                          .strip = number,
                                          .box = take(b, &region, kind, size, number)});
    }
    if (region.length > 0 && region.width > 0) {
        add_rest(b, region, false);
    }
}

bool board_layout_make(struct board_layout *layout, const struct board_job *job,
                       const struct board_plan *plan, size_t board, struct offcut_rule keep) {
    const struct board_use *const use = &plan->boards[board];
    const struct cut_stock *const stock = &job->stocks[use->stock];
    const bool crosscut_first = job->crosscut_first;
    const int64_t end = board_end_trim(job, use->stock);
    struct bench b = {.l = layout,
                      .job = job,
                      .plan = plan,
                      .stock = use->stock,
                      .keep = keep,
                      .clear = end + board_usable_length(job, use->stock)};
    struct board_box region = {end, 0, stock->length - 2 * end, stock->width};
    layout->cut_count = 0;
    layout->piece_count = 0;
    layout->offcut_count = 0;
    layout->reserve_count = 0;
    trim_ends(&b, stock);
    if (!crosscut_first) {
        region = straighten(&b, region, 0);
    }
    cut_strips(&b, use, region, crosscut_first ? BOARD_CUT_CROSS : BOARD_CUT_RIP);
    for (size_t s = 0; s < use->count; s++) {
        const struct board_strip *const strip = &plan->strips[use->first + s];
        struct board_box box = region;
        if (crosscut_first) {
            box.length = strip->width;
            region.x += strip->width + job->kerf;
            cut_parts(&b, strip, s, straighten(&b, box, s), BOARD_CUT_RIP);
        } else {
            box.width = strip->width;
            region.y += strip->width + job->kerf;
            cut_parts(&b, strip, s, box, BOARD_CUT_CROSS);
        }
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
    int128 parts = 0, trim = 0, kerf = 0, defects = 0, offcuts = 0, kept = 0;
    bool held = true;
    *totals = (struct board_totals){0};
    for (size_t b = 0; b < plan->board_count && held; b++) {
        held = board_layout_make(&l, job, plan, b, keep);
        totals->cuts += (int64_t)l.cut_count;
        for (size_t i = 0; i < l.piece_count; i++) {
            parts += area(&l.pieces[i].box);
        }
        for (size_t i = 0; i < l.cut_count; i++) {
            const bool saw = l.cuts[i].kind == BOARD_CUT_RIP || l.cuts[i].kind == BOARD_CUT_CROSS;
            *(saw ? &kerf : &trim) += area(&l.cuts[i].box);
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
    totals->trim = cut_area_hundredths(trim);
    totals->kerf = cut_area_hundredths(kerf);
    totals->defects = cut_area_hundredths(defects);
    totals->offcuts = cut_area_hundredths(offcuts);
    totals->keep = cut_area_hundredths(kept);
    board_layout_clear(&l);
    return held;
}
