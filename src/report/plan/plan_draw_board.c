/* SPDX-License-Identifier: MIT */
/* A board with its strips, or segments, and parts.  It is drawn wider than it is long by the same
 * scale, and no part smaller than its number needs. */
#include "report/plan/plan_draw.h"
#include "report/plan/plan_ruler.h"

#define SIDE       16.0 /* beside the board: numbers of rips and edges */
#define ABOVE      11.0 /* numbers of crosscuts of the whole board, above and below it */
#define CLOSE      2.0
#define WIDER      1.6  /* than it is long */
#define TALL       84.0 /* the strips may need more */
#define TWO_LINES  20.6
#define ONE_LINE   11.6
#define MANY       5    /* strips; so many do with one line each */
#define SEGMENT    46.0 /* how long one is at least */
#define KERF_LEAST 1.0
#define TRIM_LEAST 1.6
#define END_LEAST  11.0 /* an end with the number of its cut */

struct board_drawing {
    struct sketch *s;
    const struct plan_stack *stack;
    const struct lumber_plan *p;
    const struct board_use *use;
    const struct cut_stock *stock;
    struct board_layout l;
    bool segments;       /* crosscut first: its strips are segments */
    struct ruler strips; /* from one strip to the next: across the board, of segments along it */
    struct ruler other;  /* the other way, of what lies in no strip */
    struct ruler *parts; /* the other way in each strip */
    struct patch board;
};

struct stretch {
    int64_t from, to;
};

/* A box from strip to strip, and the other way. */
static struct stretch over_strips(const struct board_drawing *b, const struct board_box *box) {
    return b->segments ? (struct stretch){box->x, box->x + box->length}
                       : (struct stretch){box->y, box->y + box->width};
}

static struct stretch over_parts(const struct board_drawing *b, const struct board_box *box) {
    return b->segments ? (struct stretch){box->y, box->y + box->width}
                       : (struct stretch){box->x, box->x + box->length};
}

static bool parts_strips(const struct board_drawing *b, enum board_cut_kind kind) {
    return kind == (b->segments ? BOARD_CUT_CROSS : BOARD_CUT_RIP);
}

/* Whether a trim is made while the board is whole, in no strip. */
static bool is_of_board(const struct board_drawing *b, enum board_cut_kind kind) {
    return kind == BOARD_CUT_END || (kind == BOARD_CUT_EDGE && !b->segments) ||
           parts_strips(b, kind);
}

/* How high the line of a part is drawn at least, where `count` lie above each other. */
static double line_least(size_t count) {
    return count <= MANY ? TWO_LINES : ONE_LINE;
}

static void measure_cut(struct board_drawing *b, const struct board_cut *cut) {
    const struct stretch strip = over_strips(b, &cut->box);
    const struct stretch part = over_parts(b, &cut->box);
    if (parts_strips(b, cut->kind)) {
        ruler_add(&b->strips, strip.from, strip.to, KERF_LEAST);
    } else if (!is_of_board(b, cut->kind)) {
        const bool kerf = cut->kind != BOARD_CUT_EDGE;
        ruler_add(&b->parts[cut->strip], part.from, part.to, kerf ? KERF_LEAST : TRIM_LEAST);
    } else if ((cut->kind == BOARD_CUT_END) == b->segments) {
        ruler_add(&b->strips, strip.from, strip.to,
                  cut->kind == BOARD_CUT_END ? END_LEAST : TRIM_LEAST);
    } else {
        ruler_add(&b->other, part.from, part.to,
                  cut->kind == BOARD_CUT_END ? END_LEAST : TRIM_LEAST);
    }
}

static void measure_piece(struct board_drawing *b, const struct board_piece *piece) {
    const struct stretch strip = over_strips(b, &piece->box);
    const struct stretch part = over_parts(b, &piece->box);
    const size_t in_strip = b->p->plan->strips[b->use->first + piece->strip].count;
    const double wide = sketch_least(b->s, b->stack->numbers[piece->item]).width;
    ruler_add(&b->strips, strip.from, strip.to, b->segments ? SEGMENT : line_least(b->use->count));
    ruler_add(&b->parts[piece->strip], part.from, part.to,
              b->segments ? line_least(in_strip) : wide);
}

/* All sizes of the board with the room that they need. false: out of memory. */
static bool measure(struct board_drawing *b, struct sketch *s, const struct plan_stack *stack,
                    size_t group) {
    const struct lumber_plan *const p = &s->e->lumber.buys[stack->buy].plan;
    const size_t board = stack->groups[group].first;
    *b = (struct board_drawing){.s = s,
                                .stack = stack,
                                .p = p,
                                .use = &p->plan->boards[board],
                                .segments = p->job.crosscut_first};
    b->stock = &p->job.stocks[b->use->stock];
    b->parts = pool_take(s->pool, b->use->count, sizeof *b->parts);
    if (!board_layout_make(&b->l, &p->job, p->plan, board, p->keep) || b->parts == NULL) {
        return false;
    }
    const size_t most = b->l.cut_count + b->l.piece_count + 1;
    const int64_t along = b->stock->length;
    const int64_t across = b->stock->width;
    b->strips = ruler_make(s->pool, most);
    b->other = ruler_make(s->pool, most);
    ruler_add(&b->strips, 0, b->segments ? along : across, 0);
    ruler_add(&b->other, 0, b->segments ? across : along, 0);
    for (size_t i = 0; i < b->use->count; i++) {
        const int64_t end = b->segments ? 0 : board_end_trim(&p->job, b->use->stock);
        b->parts[i] = ruler_make(s->pool, most);
        ruler_add(&b->parts[i], end, (b->segments ? across : along) - end, 0);
    }
    for (size_t i = 0; i < b->l.cut_count; i++) {
        measure_cut(b, &b->l.cuts[i]);
    }
    for (size_t i = 0; i < b->l.piece_count; i++) {
        measure_piece(b, &b->l.pieces[i]);
    }
    return !pool_failed(s->pool);
}

static double largest(double a, double b) {
    return a > b ? a : b;
}

double board_picture_height(struct sketch *s, const struct plan_stack *stack, size_t group,
                            double width) {
    struct board_drawing b;
    double least = 0;
    if (measure(&b, s, stack, group)) {
        const double same = width * (double)b.stock->width / (double)b.stock->length * WIDER;
        least = same < TALL ? same : TALL;
        for (size_t i = 0; b.segments && i < b.use->count; i++) {
            least = largest(least, ruler_least(&b.parts[i]));
        }
        least = b.segments ? least : largest(least, ruler_least(&b.strips));
    }
    board_layout_clear(&b.l);
    return least + 2 * (b.segments ? ABOVE : CLOSE);
}

/* --- the drawing --- */

static void lay(struct board_drawing *b) {
    const struct patch board = b->board;
    ruler_lay(&b->strips, b->segments ? board.x : board.y,
              b->segments ? board.x + board.width : board.y + board.height);
    ruler_lay(&b->other, b->segments ? board.y : board.x,
              b->segments ? board.y + board.height : board.x + board.width);
    for (size_t i = 0; i < b->use->count; i++) {
        const int64_t end = b->segments ? 0 : board_end_trim(&b->p->job, b->use->stock);
        const int64_t far = (b->segments ? b->stock->width : b->stock->length) - end;
        ruler_lay(&b->parts[i], ruler_place(&b->other, end), ruler_place(&b->other, far));
    }
}

/* The ruler along the parts where a box lies: of its strip, or of the board. */
static const struct ruler *ruler_of(const struct board_drawing *b, const struct board_box *box) {
    const struct stretch at = over_strips(b, box);
    for (size_t i = 0; i < b->l.piece_count; i++) {
        const struct stretch strip = over_strips(b, &b->l.pieces[i].box);
        if (at.from >= strip.from && at.to <= strip.to) {
            return &b->parts[b->l.pieces[i].strip];
        }
    }
    return &b->other;
}

static struct patch patch_of(const struct board_drawing *b, const struct board_box *box) {
    const struct ruler *const along = b->segments ? &b->strips : ruler_of(b, box);
    const struct ruler *const across = b->segments ? ruler_of(b, box) : &b->strips;
    const double x = ruler_place(along, box->x);
    const double y = ruler_place(across, box->y);
    return (struct patch){x, y, ruler_place(along, box->x + box->length) - x,
                          ruler_place(across, box->y + box->width) - y};
}

static void draw_boxes(const struct board_drawing *b) {
    const struct sketch *const s = b->s;
    const struct board_layout *const l = &b->l;
    sketch_fill(s, b->board, TONE_PART);
    for (size_t i = 0; i < l->reserve_count; i++) {
        sketch_fill(s, patch_of(b, &l->reserves[i]), TONE_RESERVE);
    }
    for (size_t i = 0; i < l->offcut_count; i++) {
        sketch_fill(s, patch_of(b, &l->offcuts[i].box), TONE_OFFCUT);
    }
    for (size_t i = 0; i < l->piece_count; i++) {
        sketch_fill(s, patch_of(b, &l->pieces[i].box), TONE_PART);
    }
    for (size_t i = 0; i < l->cut_count; i++) {
        const bool saw = l->cuts[i].kind == BOARD_CUT_RIP || l->cuts[i].kind == BOARD_CUT_CROSS;
        sketch_fill(s, patch_of(b, &l->cuts[i].box), saw ? TONE_KERF : TONE_TRIM);
    }
}

static void draw_numbers(const struct board_drawing *b) {
    const struct patch board = b->board;
    for (size_t i = 0; i < b->l.cut_count; i++) {
        const struct board_cut *const cut = &b->l.cuts[i];
        const struct patch p = patch_of(b, &cut->box);
        const double x = p.x + p.width / 2;
        const double y = p.y + p.height / 2;
        const bool upper = y < board.y + board.height / 2;
        if (cut->kind == BOARD_CUT_END || (cut->kind == BOARD_CUT_CROSS && !b->segments)) {
            sketch_mark(b->s, x, y, i + 1);
        } else if (cut->kind == BOARD_CUT_CROSS) {
            sketch_mark(b->s, x, board.y - 6, i + 1);
        } else if (cut->kind == BOARD_CUT_EDGE && b->segments) {
            sketch_mark(b->s, x, upper ? board.y - 6 : board.y + board.height + 6, i + 1);
        } else if (cut->kind == BOARD_CUT_EDGE) {
            sketch_mark(b->s, board.x + board.width + SIDE / 2, y + (upper ? 3 : -3), i + 1);
        } else if (b->segments) {
            sketch_mark_on(b->s, p.x, y, p.width, false, i + 1);
        } else {
            sketch_mark(b->s, board.x - SIDE / 2, y, i + 1);
        }
    }
}

static void draw_labels(const struct board_drawing *b) {
    struct sketch *const s = b->s;
    for (size_t i = 0; i < b->l.offcut_count; i++) {
        const struct board_box *const box = &b->l.offcuts[i].box;
        if (b->l.offcuts[i].keep) {
            sketch_words(s, patch_of(b, box), "keep",
                         plan_show_left(s->e, box->width, box->length).text);
        }
    }
    for (size_t i = 0; i < b->l.piece_count; i++) {
        const struct board_piece *const piece = &b->l.pieces[i];
        sketch_part(s, patch_of(b, &piece->box), b->stack->numbers[piece->item],
                    plan_part_name(s->pool, &b->p->parts[piece->item]),
                    plan_show_size(s->e, piece->box.width, piece->box.length).text);
    }
}

bool board_picture(struct sketch *s, const struct plan_stack *stack, size_t group,
                   struct patch patch) {
    struct board_drawing b;
    bool held = measure(&b, s, stack, group);
    if (held) {
        const double above = b.segments ? ABOVE : CLOSE;
        b.board = (struct patch){patch.x + SIDE, patch.y + above, patch.width - 2 * SIDE,
                                 patch.height - 2 * above};
        lay(&b);
        s->mark_count = 0;
        s->mark_room = b.l.cut_count;
        s->marks = pool_take(s->pool, s->mark_room, sizeof *s->marks);
        held = s->marks != NULL;
    }
    if (held) {
        draw_boxes(&b);
        draw_numbers(&b);
        draw_labels(&b);
    }
    board_layout_clear(&b.l);
    return held && !pool_failed(s->pool);
}
