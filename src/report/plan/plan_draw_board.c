/* SPDX-License-Identifier: MIT */
/* A board with its strips, or segments, and parts.  It is drawn wider than it is long by the same
 * scale, so that what stands in them can be read. */
#include "report/plan/plan_draw.h"

#include "base/text.h"

#define SIDE  28.0  /* beside the board: numbers and a dimension */
#define ABOVE 16.0  /* numbers of the end trims */
#define BELOW 34.0  /* dimension, grain */
#define TALL  200.0 /* of the drawn board, at most */
#define LABEL 9.0

struct board_page {
    struct sketch *s;
    const struct lumber_plan *p;
    const struct board_use *use;
    const struct cut_stock *stock;
    struct board_layout l;
    bool segments; /* crosscut first: its strips are segments */
    struct cut_step *steps;
    size_t step_count;
};

/* --- the drawing --- */

static struct patch patch_of(const struct board_page *b, const struct board_box *box) {
    return sketch_patch(b->s, box->x, box->y, box->length, box->width);
}

static void draw_boxes(const struct board_page *b) {
    const struct sketch *const s = b->s;
    const struct board_layout *const l = &b->l;
    sketch_fill(s, sketch_patch(s, 0, 0, b->stock->length, b->stock->width), TONE_PART);
    for (size_t i = 0; i < l->cut_count; i++) {
        const bool saw = l->cuts[i].kind == BOARD_CUT_RIP || l->cuts[i].kind == BOARD_CUT_CROSS;
        struct patch p = patch_of(b, &l->cuts[i].box);
        p.width = p.width < 0.8 ? 0.8 : p.width;
        p.height = p.height < 0.8 ? 0.8 : p.height;
        sketch_fill(s, p, saw ? TONE_KERF : TONE_TRIM);
    }
    for (size_t i = 0; i < l->reserve_count; i++) {
        const struct patch p = patch_of(b, &l->reserves[i]);
        sketch_fill(s, p, TONE_RESERVE);
    }
    for (size_t i = 0; i < l->offcut_count; i++) {
        const struct board_box *const box = &l->offcuts[i].box;
        const struct patch p = patch_of(b, box);
        sketch_fill(s, p, TONE_OFFCUT);
        sketch_label(s, sketch_inside(p), LABEL - 1, l->offcuts[i].keep ? "keep" : "offcut",
                     plan_show_size(s->e, box->width, box->length).text);
    }
    for (size_t i = 0; i < l->piece_count; i++) {
        const struct board_box *const box = &l->pieces[i].box;
        const struct patch p = patch_of(b, box);
        sketch_fill(s, p, TONE_PART);
        sketch_label(s, sketch_inside(p), LABEL,
                     plan_part_name(s->pool, &b->p->parts[l->pieces[i].item]),
                     plan_show_size(s->e, box->width, box->length).text);
    }
}

static void draw_numbers(const struct board_page *b) {
    const struct patch board = sketch_patch(b->s, 0, 0, b->stock->length, b->stock->width);
    for (size_t i = 0; i < b->l.cut_count; i++) {
        const struct board_cut *const cut = &b->l.cuts[i];
        const struct patch p = patch_of(b, &cut->box);
        const double middle_x = p.x + p.width / 2;
        const double middle_y = p.y + p.height / 2;
        switch (cut->kind) {
        case BOARD_CUT_END:
            sketch_number(b->s, middle_x, board.y - 8, i + 1);
            break;
        case BOARD_CUT_EDGE:
            sketch_number(b->s, b->segments ? p.x + p.width - 7 : board.x + board.width + 8,
                          middle_y, i + 1);
            break;
        case BOARD_CUT_RIP:
            sketch_number(b->s, b->segments ? p.x + 7 : board.x - 9, middle_y, i + 1);
            break;
        case BOARD_CUT_CROSS:
            sketch_number(b->s, middle_x, b->segments ? board.y - 8 : p.y + 7, i + 1);
            break;
        }
    }
}

/* --- the list --- */

static void add_step(struct board_page *b, const char *text, bool heading) {
    b->steps[b->step_count++] = (struct cut_step){.text = text, .heading = heading};
}

static const char *cut_words(const struct board_page *b, size_t i) {
    const struct board_cut *const cut = &b->l.cuts[i];
    struct pool *const pool = b->s->pool;
    const struct estimate *const e = b->s->e;
    if (cut->kind == BOARD_CUT_END) {
        return pool_format(pool, "%zu  trim %s off %s end", i + 1,
                           plan_show(e, cut->box.length).text,
                           cut->box.x == 0 ? "one" : "the other");
    }
    if (cut->kind == BOARD_CUT_EDGE) {
        return pool_format(pool, "%zu  straighten %s edge, %s off", i + 1,
                           cut->box.y == 0 ? "one" : "the other",
                           plan_show(e, cut->box.width).text);
    }
    return pool_format(pool, cut->kind == BOARD_CUT_RIP ? "%zu  rip to %s" : "%zu  crosscut to %s",
                       i + 1, plan_show(e, cut->size).text);
}

/* The crosscuts of a strip, or the edges and rips of a segment: runs of one item are one line. */
static void list_strip(struct board_page *b, size_t strip, size_t *cut) {
    const struct board_layout *const l = &b->l;
    struct pool *const pool = b->s->pool;
    const char *const verb = b->segments ? "rip" : "crosscut";
    add_step(b,
             pool_format(pool, b->segments ? "segment %zu, %s long" : "strip %zu, %s wide",
                         strip + 1,
                         plan_show(b->s->e, b->p->plan->strips[b->use->first + strip].width).text),
             true);
    for (; *cut < l->cut_count && l->cuts[*cut].kind == BOARD_CUT_EDGE; (*cut)++) {
        add_step(b, cut_words(b, *cut), false);
    }
    for (size_t i = 0, run; i < l->piece_count; i += run) {
        const struct board_piece *const piece = &l->pieces[i];
        run = 1;
        if (piece->strip != strip) {
            continue;
        }
        while (i + run < l->piece_count && l->pieces[i + run].strip == strip &&
               l->pieces[i + run].item == piece->item) {
            run++;
        }
        const size_t first = *cut;
        while (*cut < l->cut_count && *cut - first < run && l->cuts[*cut].strip == strip) {
            (*cut)++;
        }
        const char *const name = plan_part_name(pool, &b->p->parts[piece->item]);
        const struct shown size =
            plan_show(b->s->e, b->segments ? piece->box.width : piece->box.length);
        const char *const times = run == 1 ? "" : text_or_empty(pool_format(pool, "%zu x ", run));
        const char *const words = pool_format(pool, "%s: %s%s", size.text, times, name);
        if (*cut > first + 1) {
            add_step(
                b,
                pool_format(pool, "%zu to %zu  %s %s", first + 1, *cut, verb, text_or_empty(words)),
                false);
        } else if (*cut > first) {
            add_step(b, pool_format(pool, "%zu  %s %s", first + 1, verb, text_or_empty(words)),
                     false);
        } else {
            add_step(b, pool_format(pool, "what is left, %s", text_or_empty(words)), false);
        }
    }
}

/* Whether a cut is made in a strip, or in a segment, that is free already. */
static bool is_of_strip(const struct board_page *b, const struct board_cut *cut) {
    return b->segments ? cut->kind == BOARD_CUT_RIP || cut->kind == BOARD_CUT_EDGE
                       : cut->kind == BOARD_CUT_CROSS;
}

static void list_steps(struct board_page *b) {
    size_t cut = 0;
    add_step(b, b->segments ? "before ripping" : "before crosscutting", true);
    for (; cut < b->l.cut_count && !is_of_strip(b, &b->l.cuts[cut]); cut++) {
        add_step(b, cut_words(b, cut), false);
    }
    for (size_t s = 0; s < b->use->count; s++) {
        list_strip(b, s, &cut);
    }
    bool any = false;
    for (size_t i = 0; i < b->l.offcut_count; i++) {
        const struct board_offcut *const offcut = &b->l.offcuts[i];
        /* a splinter that is no wider than two cuts is not worth a line */
        if (offcut->box.width < 2 * b->p->job.kerf || offcut->box.length < 2 * b->p->job.kerf) {
            continue;
        }
        if (!any) {
            add_step(b, "left over", true);
        }
        any = true;
        add_step(b,
                 pool_format(b->s->pool, "%s %s", offcut->keep ? "keep" : "offcut",
                             plan_show_size(b->s->e, offcut->box.width, offcut->box.length).text),
                 false);
    }
}

bool draw_board_page(struct sketch *s, const struct lumber_buy *buy, const struct alike *alike,
                     struct patch patch) {
    const struct lumber_plan *const p = &buy->plan;
    struct board_page b = {
        .s = s, .p = p, .use = &p->plan->boards[alike->first], .segments = p->job.crosscut_first};
    b.stock = &p->job.stocks[b.use->stock];
    bool held = board_layout_make(&b.l, &p->job, p->plan, alike->first, p->keep);
    /* a line a cut at most, two headings and a line a strip, the offcuts */
    b.steps =
        held ? pool_take(s->pool,
                         b.l.cut_count + b.l.piece_count + 2 * b.use->count + b.l.offcut_count + 4,
                         sizeof *b.steps)
             : NULL;
    if (b.steps == NULL) {
        board_layout_clear(&b.l);
        return false;
    }
    s->x = patch.x + SIDE;
    s->y = patch.y + ABOVE;
    s->along = (patch.width - 2 * SIDE) / (double)b.stock->length;
    s->across = TALL / (double)b.stock->width;
    const struct patch board = sketch_patch(s, 0, 0, b.stock->length, b.stock->width);
    draw_boxes(&b);
    draw_numbers(&b);
    sketch_dimension(s, board.x, board.y + board.height + 10, board.width, false,
                     plan_show(s->e, b.stock->length).text);
    sketch_dimension(s, board.x + board.width + 20, board.y, board.height, true,
                     plan_show(s->e, b.stock->width).text);
    sketch_grain(s, board.x, board.y + board.height + 24, true);
    const struct text_style note = {.size = 7.5, .gray = 0.3};
    const struct shown kerf = plan_show(s->e, p->job.kerf);
    const char *const words = pool_format(s->pool,
                                          "Drawn wider than it is long. Black: kerf of %s. Gray "
                                          "and dashed: left over. Crossed: trimmed "
                                          "off. Hatched: kept for defects, wherever they are.",
                                          kerf.text);
    text_draw(s->cr, board.x + 110, board.y + board.height + 19, text_or_empty(words), &note);
    list_steps(&b);
    const double top = board.y + board.height + BELOW + 8;
    sketch_steps(s, (struct patch){patch.x, top, patch.width, patch.y + patch.height - top},
                 b.steps, b.step_count);
    held = !pool_failed(s->pool);
    board_layout_clear(&b.l);
    return held;
}
