/* SPDX-License-Identifier: MIT */
/* A sheet with its parts; the cuts are numbered in the order in which a saw can make them.  It is
 * drawn to scale, but no part smaller than its number needs: both sides of a cut get what they ask
 * for before they share the rest by size. */
#include "report/plan/plan_draw.h"

#include <math.h>

#define BEFORE     15.0  /* beside and above the sheet: numbers of the trims */
#define BEHIND     28.0  /* beside and below it: these and a dimension */
#define WIDE       400.0 /* of a sheet with few parts */
#define HIGH       208.0
#define HIGH_UP    290.0  /* of one that stands */
#define PART_AREA  1150.0 /* square points for a part with its label */
#define KERF_LEAST 1.0
#define REST_LEAST 4.0

struct sheet_drawing {
    struct sketch *s;
    const struct plan_stack *stack;
    const struct sheets_plan *p;
    const struct sheet_sheet *sheet;
    const struct cut_stock *stock;
    const size_t *order; /* its nodes as they are cut, and how many */
    struct patch *least; /* of each node: width and height that it needs */
    struct patch *at;    /* of each node: its place on paper */
    struct patch whole;
    double scale;
};

static const struct sheet_node *node_at(const struct sheet_drawing *b, size_t i) {
    return &b->p->plan->nodes[i];
}

static bool is_cut(const struct sheet_node *n) {
    return n->use == SHEET_CUT_X || n->use == SHEET_CUT_Y;
}

static double largest(double a, double b) {
    return a > b ? a : b;
}

/* --- room --- */

static size_t number_of(const struct sheet_drawing *b, const struct sheet_node *n) {
    return b->stack->numbers[b->p->plan->parts[n->part].item];
}

/* What a node needs, from the parts up: a node stands before those that it is cut into. */
static void measure(struct sheet_drawing *b) {
    const size_t base = b->sheet->first_node;
    for (size_t i = b->sheet->node_count; i-- > 0;) {
        const struct sheet_node *const n = node_at(b, base + i);
        struct patch need = {.width = REST_LEAST, .height = REST_LEAST};
        if (n->use == SHEET_PIECE) {
            need = sketch_least(b->s, number_of(b, n));
        } else if (is_cut(n)) {
            const struct patch none = {.width = 0};
            const struct patch a = n->first == SHEET_NONE ? none : b->least[n->first - base];
            const struct patch c = n->second == SHEET_NONE ? none : b->least[n->second - base];
            const bool x = n->use == SHEET_CUT_X;
            need.width = x ? a.width + KERF_LEAST + c.width : largest(a.width, c.width);
            need.height = x ? largest(a.height, c.height) : a.height + KERF_LEAST + c.height;
        }
        b->least[i] = need;
    }
}

static bool begin(struct sheet_drawing *b, struct sketch *s, const struct plan_stack *stack,
                  size_t group) {
    const struct sheets_plan *const p = &s->e->sheets.buys[stack->buy].plan;
    const size_t sheet = stack->groups[group].first;
    *b = (struct sheet_drawing){.s = s, .stack = stack, .p = p, .sheet = &p->plan->sheets[sheet]};
    const size_t nodes = b->sheet->node_count;
    size_t *const order = pool_take(s->pool, 2 * nodes, sizeof *order);
    b->stock = &p->job.stocks[b->sheet->stock];
    b->least = pool_take(s->pool, nodes, sizeof *b->least);
    b->at = pool_take(s->pool, nodes, sizeof *b->at);
    b->order = order;
    if (pool_failed(s->pool)) {
        return false;
    }
    sheet_order(p->plan, sheet, order, order + nodes);
    measure(b);
    return true;
}

struct patch sheet_picture_size(struct sketch *s, const struct plan_stack *stack, size_t group,
                                struct patch most) {
    struct sheet_drawing b;
    if (!begin(&b, s, stack, group)) {
        return most;
    }
    const double along = (double)b.stock->length;
    const double across = (double)b.stock->width;
    const double high = along > across ? HIGH : HIGH_UP;
    double scale = WIDE / along < high / across ? WIDE / along : high / across;
    scale = largest(scale, sqrt(PART_AREA * (double)b.sheet->part_count / (along * across)));
    scale = largest(scale, largest(b.least[0].width / along, b.least[0].height / across));
    const double room = (most.width - BEFORE - BEHIND) / along;
    const double room_up = (most.height - BEFORE - BEHIND) / across;
    scale = scale < room ? scale : room;
    scale = scale < room_up ? scale : room_up;
    return (struct patch){.width = along * scale + BEFORE + BEHIND,
                          .height = across * scale + BEFORE + BEHIND};
}

/* Parts a stretch of paper at a cut: by size, but each side as much as it needs; where both need
 * more than there is, by their needs. */
static double part_at(double whole, double kerf, double share, double first, double second) {
    const double room = whole - kerf;
    if (first + second > room) {
        return room * first / (first + second);
    }
    const double at = room * share;
    return at < first ? first : (at > room - second ? room - second : at);
}

/* The places of both sides of a cut, from that of the whole. */
static void place_sides(struct sheet_drawing *b, size_t node) {
    const size_t base = b->sheet->first_node;
    const struct sheet_node *const n = node_at(b, node);
    const struct patch p = b->at[node - base];
    const bool x = n->use == SHEET_CUT_X;
    const bool both = n->second != SHEET_NONE;
    const int64_t kerf = sheet_kerf(&b->p->job, n);
    const double size = (double)((x ? n->length : n->width) - kerf);
    const double set = (double)(n->position - (x ? n->x : n->y));
    const double blade = largest((double)kerf * b->scale, KERF_LEAST);
    const struct patch first = b->least[n->first - base];
    const struct patch second = both ? b->least[n->second - base] : (struct patch){.width = 0};
    const double at = part_at(x ? p.width : p.height, blade, size > 0 ? set / size : 1,
                              x ? first.width : first.height, x ? second.width : second.height);
    struct patch *const a = &b->at[n->first - base];
    *a = p;
    *(x ? &a->width : &a->height) = at;
    if (both) {
        struct patch *const c = &b->at[n->second - base];
        *c = p;
        *(x ? &c->x : &c->y) += at + blade;
        *(x ? &c->width : &c->height) -= at + blade;
    }
}

/* --- the drawing --- */

static void place_all(struct sheet_drawing *b) {
    const size_t base = b->sheet->first_node;
    const struct sheet_node *const top = node_at(b, base);
    b->at[0] = (struct patch){b->whole.x + (double)top->x * b->scale,
                              b->whole.y + (double)top->y * b->scale,
                              (double)top->length * b->scale, (double)top->width * b->scale};
    for (size_t i = 0; i < b->sheet->node_count; i++) {
        if (is_cut(node_at(b, base + i))) {
            place_sides(b, base + i);
        }
    }
}

/* The line of a cut: its width or height is the blade's. */
static struct patch cut_line(const struct sheet_drawing *b, size_t node) {
    const struct sheet_node *const n = node_at(b, node);
    const struct patch p = b->at[node - b->sheet->first_node];
    const struct patch a = b->at[n->first - b->sheet->first_node];
    const double blade = largest((double)sheet_kerf(&b->p->job, n) * b->scale, KERF_LEAST);
    return n->use == SHEET_CUT_X ? (struct patch){p.x + a.width, p.y, blade, p.height}
                                 : (struct patch){p.x, p.y + a.height, p.width, blade};
}

static void fill_nodes(const struct sheet_drawing *b) {
    sketch_fill(b->s, b->whole,
                sheet_trims(&b->p->job, b->sheet->stock) > 0 ? TONE_TRIM : TONE_PART);
    for (size_t i = 0; i < b->sheet->node_count; i++) {
        const struct sheet_node *const n = node_at(b, b->order[i]);
        const struct patch p = b->at[b->order[i] - b->sheet->first_node];
        if (is_cut(n)) {
            sketch_fill(b->s, cut_line(b, b->order[i]), TONE_KERF);
        } else {
            sketch_fill(b->s, p, n->use == SHEET_PIECE ? TONE_PART : TONE_OFFCUT);
        }
    }
}

static void mark_cuts(const struct sheet_drawing *b) {
    const struct patch w = b->whole;
    const double xs[] = {w.x + w.width / 2, w.x + w.width / 2, w.x - 7, w.x + w.width + 7};
    const double ys[] = {w.y - 7, w.y + w.height + 7, w.y + w.height / 2, w.y + w.height / 2};
    const size_t trims = sheet_trims(&b->p->job, b->sheet->stock);
    size_t number = 0;
    for (; number < trims; number++) {
        sketch_mark(b->s, xs[number], ys[number], number + 1);
    }
    for (size_t i = 0; i < b->sheet->node_count; i++) {
        const struct sheet_node *const n = node_at(b, b->order[i]);
        if (!is_cut(n)) {
            continue;
        }
        const struct patch line = cut_line(b, b->order[i]);
        const bool upright = n->use == SHEET_CUT_X;
        sketch_mark_on(b->s, upright ? line.x + line.width / 2 : line.x,
                       upright ? line.y : line.y + line.height / 2,
                       upright ? line.height : line.width, upright, ++number);
    }
}

static void label_nodes(const struct sheet_drawing *b) {
    const struct estimate *const e = b->s->e;
    for (size_t i = 0; i < b->sheet->node_count; i++) {
        const struct sheet_node *const n = node_at(b, b->order[i]);
        const struct patch p = b->at[b->order[i] - b->sheet->first_node];
        if (n->use == SHEET_PIECE) {
            const size_t at = b->p->plan->parts[n->part].item;
            const struct cut_item *const item = &b->p->job.items[at];
            sketch_part(b->s, p, b->stack->numbers[at],
                        plan_part_name(b->s->pool, &b->p->parts[at]),
                        plan_show_size(e, item->width, item->length).text);
        } else if (n->use == SHEET_OFFCUT && sheet_keeps(b->p->keep, n->length, n->width)) {
            sketch_words(b->s, p, "keep", plan_show_left(e, n->width, n->length).text);
        }
    }
}

bool sheet_picture(struct sketch *s, const struct plan_stack *stack, size_t group,
                   struct patch patch) {
    struct sheet_drawing b;
    if (!begin(&b, s, stack, group)) {
        return false;
    }
    const size_t marks = b.sheet->node_count + sheet_trims(&b.p->job, b.sheet->stock);
    s->mark_count = 0;
    s->mark_room = marks;
    s->marks = pool_take(s->pool, marks, sizeof *s->marks);
    if (s->marks == NULL) {
        return false;
    }
    b.whole = (struct patch){patch.x + BEFORE, patch.y + BEFORE, patch.width - BEFORE - BEHIND,
                             patch.height - BEFORE - BEHIND};
    b.scale = b.whole.width / (double)b.stock->length;
    place_all(&b);
    fill_nodes(&b);
    mark_cuts(&b);
    label_nodes(&b);
    const double foot = b.whole.y + b.whole.height + 18;
    sketch_dimension(s, b.whole.x, foot, b.whole.width, false,
                     plan_show(s->e, b.stock->length).text);
    sketch_dimension(s, b.whole.x + b.whole.width + 19, b.whole.y, b.whole.height, true,
                     plan_show(s->e, b.stock->width).text);
    return !pool_failed(s->pool);
}
