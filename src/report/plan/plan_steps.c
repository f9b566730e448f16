/* SPDX-License-Identifier: MIT */
/* The cuts of a board, or of a sheet, in words: numbered in the order in which they are made, each
 * with the size that fence or stop is set to.  Equal cuts in a row are one line. */
#include "base/text.h"
#include "report/plan/plan_draw.h"

struct teller {
    const struct sketch *s;
    const struct plan_stack *stack;
    struct plan_line *lines;
    size_t count;
};

static void add(struct teller *t, const char *lead, const char *text, bool heading) {
    t->lines[t->count++] = (struct plan_line){.lead = lead, .text = text, .heading = heading};
}

/* `7`, `7-9`: cuts first to last. */
static const char *numbers(const struct teller *t, size_t first, size_t last) {
    return first == last ? pool_words(t->s->pool, "%zu", first)
                         : pool_words(t->s->pool, "%zu-%zu", first, last);
}

static const char *parts(const struct teller *t, size_t item, size_t pieces) {
    return plan_part_words(t->s->pool, t->s->e, t->stack, item, pieces);
}

/* --- boards --- */

struct board_teller {
    struct teller t;
    const struct lumber_plan *p;
    const struct board_use *use;
    struct board_layout l;
    bool segments;
};

/* What a cut is set to: what it takes off, or the size of what it frees. */
static int64_t set_of(const struct board_cut *cut) {
    switch (cut->kind) {
    case BOARD_CUT_END:
        return cut->box.length;
    case BOARD_CUT_EDGE:
        return cut->box.width;
    case BOARD_CUT_RIP:
    case BOARD_CUT_CROSS:
        break;
    }
    return cut->size;
}

static void tell_run(struct board_teller *b, size_t first, size_t last) {
    struct pool *const pool = b->t.s->pool;
    const struct board_cut *const cut = &b->l.cuts[first];
    const struct shown size = plan_show(b->t.s->e, set_of(cut));
    const char *const each = first == last ? "one" : "each";
    const char *text = "";
    switch (cut->kind) {
    case BOARD_CUT_END:
        text = pool_words(pool, "trim %s off %s end", size.text, each);
        break;
    case BOARD_CUT_EDGE:
        text = pool_words(pool, "straighten %s edge, %s off", each, size.text);
        break;
    case BOARD_CUT_RIP:
    case BOARD_CUT_CROSS:
        text = pool_words(pool, "%s to %s", cut->kind == BOARD_CUT_RIP ? "rip" : "crosscut",
                          size.text);
        break;
    }
    add(&b->t, numbers(&b->t, first + 1, last + 1), text, false);
}

/* Whether a cut is made in a strip, or in a segment, that is free already. */
static bool is_of_strip(const struct board_teller *b, const struct board_cut *cut) {
    return b->segments ? cut->kind == BOARD_CUT_RIP || cut->kind == BOARD_CUT_EDGE
                       : cut->kind == BOARD_CUT_CROSS;
}

/* The last of the cuts from `first` on that are the same. */
static size_t run_end(const struct board_teller *b, size_t first) {
    const struct board_cut *const cuts = b->l.cuts;
    size_t last = first;
    while (last + 1 < b->l.cut_count && cuts[last + 1].kind == cuts[first].kind &&
           cuts[last + 1].strip ==
               (is_of_strip(b, &cuts[first]) ? cuts[first].strip : cuts[last + 1].strip) &&
           set_of(&cuts[last + 1]) == set_of(&cuts[first])) {
        last++;
    }
    return last;
}

/* The parts of a strip from `piece` on that are of one item, with their cuts. */
static size_t tell_pieces(struct board_teller *b, size_t piece, size_t *cut) {
    const struct board_layout *const l = &b->l;
    const struct board_piece *const first = &l->pieces[piece];
    size_t count = 1;
    while (piece + count < l->piece_count && l->pieces[piece + count].strip == first->strip &&
           l->pieces[piece + count].item == first->item) {
        count++;
    }
    const size_t from = *cut;
    while (*cut < l->cut_count && *cut - from < count && l->cuts[*cut].strip == first->strip) {
        (*cut)++;
    }
    const bool left = *cut == from;
    const struct shown size =
        plan_show(b->t.s->e, b->segments ? first->box.width : first->box.length);
    add(&b->t, left ? "" : numbers(&b->t, from + 1, *cut),
        pool_words(b->t.s->pool, "%s%s: %s", left ? "what is left, " : "to ", size.text,
                   parts(&b->t, first->item, count)),
        false);
    return count;
}

static void tell_strip(struct board_teller *b, size_t strip, size_t *cut) {
    const struct board_layout *const l = &b->l;
    const int64_t size = b->p->plan->strips[b->use->first + strip].width;
    add(&b->t, "",
        pool_words(b->t.s->pool,
                   b->segments ? "rip segment %zu, %s long" : "crosscut strip %zu, %s wide",
                   strip + 1, plan_show(b->t.s->e, size).text),
        true);
    while (*cut < l->cut_count && l->cuts[*cut].kind == BOARD_CUT_EDGE) {
        const size_t last = run_end(b, *cut);
        tell_run(b, *cut, last);
        *cut = last + 1;
    }
    for (size_t i = 0; i < l->piece_count;) {
        i += l->pieces[i].strip == strip ? tell_pieces(b, i, cut) : 1;
    }
}

/* Adds what is kept, where there is any, as a line behind the cuts. */
static void tell_kept(struct teller *t, const char *words) {
    if (words[0] != '\0') {
        add(t, "keep", words, false);
    }
}

/* Adds a size that is kept to the words that tell them. */
static const char *join_kept(const struct teller *t, const char *words, int64_t across,
                             int64_t along) {
    return pool_words(t->s->pool, "%s%s%s", words, words[0] == '\0' ? "" : "; ",
                      plan_show_left(t->s->e, across, along).text);
}

static const char *board_kept(const struct board_teller *b) {
    const char *words = "";
    for (size_t i = 0; i < b->l.offcut_count; i++) {
        const struct board_box *const box = &b->l.offcuts[i].box;
        if (b->l.offcuts[i].keep) {
            words = join_kept(&b->t, words, box->width, box->length);
        }
    }
    return words;
}

const struct plan_line *board_steps(const struct sketch *s, const struct plan_stack *stack,
                                    size_t group, size_t *count) {
    const struct lumber_plan *const p = &s->e->lumber.buys[stack->buy].plan;
    const size_t board = stack->groups[group].first;
    struct board_teller b = {.t = {.s = s, .stack = stack},
                             .p = p,
                             .use = &p->plan->boards[board],
                             .segments = p->job.crosscut_first};
    if (board_layout_make(&b.l, &p->job, p->plan, board, p->keep)) {
        /* a line a cut or part at most, a heading a strip, what is kept */
        b.t.lines = pool_take(s->pool, b.l.cut_count + b.l.piece_count + b.use->count + 2,
                              sizeof *b.t.lines);
    }
    size_t cut = 0;
    if (b.t.lines != NULL) {
        add(&b.t, "", b.segments ? "trim and crosscut" : "trim and rip", true);
        while (cut < b.l.cut_count && !is_of_strip(&b, &b.l.cuts[cut])) {
            const size_t last = run_end(&b, cut);
            tell_run(&b, cut, last);
            cut = last + 1;
        }
        for (size_t i = 0; i < b.use->count; i++) {
            tell_strip(&b, i, &cut);
        }
        tell_kept(&b.t, board_kept(&b));
    }
    board_layout_clear(&b.l);
    *count = b.t.count;
    return pool_failed(s->pool) ? NULL : b.t.lines;
}

/* --- sheets --- */

struct sheet_teller {
    struct teller t;
    const struct sheets_plan *p;
    const size_t *order; /* its nodes as they are cut */
    size_t nodes;
};

static const struct sheet_node *node_at(const struct sheet_teller *b, size_t i) {
    return i == SHEET_NONE ? NULL : &b->p->plan->nodes[i];
}

static bool is_cut(const struct sheet_node *n) {
    return n != NULL && (n->use == SHEET_CUT_X || n->use == SHEET_CUT_Y);
}

/* The item of a node that is a part; else SHEET_NONE. */
static size_t item_of(const struct sheet_teller *b, size_t node) {
    const struct sheet_node *const n = node_at(b, node);
    return n != NULL && n->use == SHEET_PIECE ? b->p->plan->parts[n->part].item : SHEET_NONE;
}

static int64_t fence(const struct sheet_node *n) {
    return n->position - (n->use == SHEET_CUT_Y ? n->y : n->x);
}

/* The cut after n that is the same once more: what n leaves, cut alike into the same part. */
static size_t again(const struct sheet_teller *b, const struct sheet_node *n) {
    const struct sheet_node *const next = node_at(b, n->second);
    const size_t item = item_of(b, n->first);
    const bool same = item != SHEET_NONE && is_cut(next) && next->use == n->use &&
                      fence(next) == fence(n) && item_of(b, next->first) == item;
    return same ? n->second : SHEET_NONE;
}

/* Tells the cut at `at` of the order, and those after it that are the same; returns how many. */
static size_t tell_cut(struct sheet_teller *b, size_t at, size_t number) {
    struct pool *const pool = b->t.s->pool;
    const struct sheet_node *const n = node_at(b, b->order[at]);
    const size_t item = item_of(b, n->first);
    size_t times = 1;
    const struct sheet_node *last = n;
    for (size_t next = again(b, n); next != SHEET_NONE; next = again(b, last)) {
        last = node_at(b, next);
        times++;
    }
    const size_t rest = item_of(b, last->second);
    const bool alike = item != SHEET_NONE && rest == item;
    const char *const first = item == SHEET_NONE ? "" : parts(&b->t, item, times + (alike ? 1 : 0));
    const char *const second = rest == SHEET_NONE || alike ? "" : parts(&b->t, rest, 1);
    const bool both = first[0] != '\0' && second[0] != '\0';
    const bool any = first[0] != '\0' || second[0] != '\0';
    const char *const repeated = times == 1 ? "" : pool_words(pool, ", %zu times", times);
    add(&b->t, numbers(&b->t, number + 1, number + times),
        pool_words(pool, "%s %s to %s%s%s%s%s%s", n->use == SHEET_CUT_Y ? "rip" : "crosscut",
                   plan_show_left(b->t.s->e, n->width, n->length).text,
                   plan_show(b->t.s->e, fence(n)).text, repeated, any ? ": " : "", first,
                   both ? " and " : "", second),
        false);
    return times;
}

static const char *sheet_kept(const struct sheet_teller *b) {
    const char *words = "";
    for (size_t i = 0; i < b->nodes; i++) {
        const struct sheet_node *const n = node_at(b, b->order[i]);
        if (n->use == SHEET_OFFCUT && sheet_keeps(b->p->keep, n->length, n->width)) {
            words = join_kept(&b->t, words, n->width, n->length);
        }
    }
    return words;
}

const struct plan_line *sheet_steps(const struct sketch *s, const struct plan_stack *stack,
                                    size_t group, size_t *count) {
    const struct sheets_plan *const p = &s->e->sheets.buys[stack->buy].plan;
    const size_t sheet = stack->groups[group].first;
    struct sheet_teller b = {.t = {.s = s, .stack = stack}, .p = p};
    b.nodes = p->plan->sheets[sheet].node_count;
    size_t *const order = pool_take(s->pool, 2 * b.nodes, sizeof *order);
    b.t.lines = pool_take(s->pool, b.nodes + 3, sizeof *b.t.lines);
    if (pool_failed(s->pool)) {
        return NULL;
    }
    b.order = order;
    sheet_order(p->plan, sheet, order, order + b.nodes);
    size_t number = sheet_trims(&p->job, p->plan->sheets[sheet].stock);
    add(&b.t, "", "width x length in hand, and what it is cut to", true);
    if (number > 0) {
        add(&b.t, numbers(&b.t, 1, number),
            pool_words(s->pool, "trim %s off each edge", plan_show(s->e, p->job.trim).text), false);
    }
    for (size_t i = 0; i < b.nodes; i++) {
        const size_t cuts = is_cut(node_at(&b, order[i])) ? tell_cut(&b, i, number) : 0;
        number += cuts;
        i += cuts > 1 ? 2 * (cuts - 1) : 0; /* each is followed by the part that it frees */
    }
    tell_kept(&b.t, sheet_kept(&b));
    *count = b.t.count;
    return pool_failed(s->pool) ? NULL : b.t.lines;
}
