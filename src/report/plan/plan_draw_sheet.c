/* SPDX-License-Identifier: MIT */
/* A sheet with its parts; the cuts are numbered in the order in which a saw can make them. */
#include "report/plan/plan_draw.h"

#include "base/text.h"

#define SIDE  26.0
#define BELOW 34.0
#define LABEL 10.0
/* The drawing takes this share of the page's height; the list of cuts the rest. */
#define SHARE 0.66

struct sheet_page {
    struct sketch *s;
    const struct sheets_plan *p;
    const struct sheet_sheet *sheet;
    const struct cut_stock *stock;
    size_t *order; /* its nodes as they are cut */
    struct cut_step *steps;
    size_t step_count;
};

static const struct sheet_node *node_at(const struct sheet_page *b, size_t i) {
    return &b->p->plan->nodes[i];
}

static bool is_cut(const struct sheet_node *n) {
    return n->use == SHEET_CUT_X || n->use == SHEET_CUT_Y;
}

/* What the name of a part is on the drawing; `turned` where its grain would lie across. */
static const char *part_name(const struct sheet_page *b, const struct sheet_node *n) {
    return plan_part_name(b->s->pool, &b->p->parts[b->p->plan->parts[n->part].item]);
}

static void draw_trim(const struct sheet_page *b) {
    const int64_t trim = b->p->job.trim;
    const struct patch whole = sketch_patch(b->s, 0, 0, b->stock->length, b->stock->width);
    sketch_fill(b->s, whole, trim > 0 ? TONE_TRIM : TONE_PART);
    for (size_t i = 0; i < sheet_trims(&b->p->job); i++) {
        const double middle_x = whole.x + whole.width / 2;
        const double middle_y = whole.y + whole.height / 2;
        const double xs[] = {middle_x, middle_x, whole.x, whole.x + whole.width};
        const double ys[] = {whole.y, whole.y + whole.height, middle_y, middle_y};
        sketch_number(b->s, xs[i] + (i == 2 ? -7.0 : (i == 3 ? 7.0 : 0.0)),
                      ys[i] + (i == 0 ? -7.0 : (i == 1 ? 7.0 : 0.0)), i + 1);
    }
}

static void draw_nodes(const struct sheet_page *b) {
    const struct estimate *const e = b->s->e;
    for (size_t i = 0; i < b->sheet->node_count; i++) {
        const struct sheet_node *const n = node_at(b, b->order[i]);
        const struct patch p = sketch_patch(b->s, n->x, n->y, n->length, n->width);
        if (n->use == SHEET_PIECE) {
            const struct cut_item *const item = &b->p->job.items[b->p->plan->parts[n->part].item];
            sketch_fill(b->s, p, TONE_PART);
            sketch_label(b->s, sketch_inside(p), LABEL, part_name(b, n),
                         plan_show_size(e, item->width, item->length).text);
        } else if (n->use == SHEET_OFFCUT) {
            const bool keep = sheet_keeps(b->p->keep, n->length, n->width);
            sketch_fill(b->s, p, TONE_OFFCUT);
            sketch_label(b->s, sketch_inside(p), LABEL - 2, keep ? "keep" : "offcut",
                         plan_show_size(e, n->width, n->length).text);
        } else {
            const int64_t kerf = sheet_kerf(&b->p->job, n);
            struct patch k = n->use == SHEET_CUT_X
                                 ? sketch_patch(b->s, n->position, n->y, kerf, n->width)
                                 : sketch_patch(b->s, n->x, n->position, n->length, kerf);
            k.width = k.width < 0.8 ? 0.8 : k.width;
            k.height = k.height < 0.8 ? 0.8 : k.height;
            sketch_fill(b->s, k, TONE_KERF);
        }
    }
}

/* Numbers last, over all; each near the end of its cut where fewest others start. */
static void draw_numbers(const struct sheet_page *b) {
    size_t number = sheet_trims(&b->p->job);
    for (size_t i = 0; i < b->sheet->node_count; i++) {
        const struct sheet_node *const n = node_at(b, b->order[i]);
        if (!is_cut(n)) {
            continue;
        }
        const int64_t half = sheet_kerf(&b->p->job, n) / 2;
        const struct patch p = n->use == SHEET_CUT_X
                                   ? sketch_patch(b->s, n->position + half, n->y, 0, n->width)
                                   : sketch_patch(b->s, n->x, n->position + half, n->length, 0);
        sketch_number(b->s, p.x + (p.width > 24 ? 9.0 : p.width / 2),
                      p.y + (p.height > 24 ? 9.0 : p.height / 2), ++number);
    }
}

/* --- the list --- */

static void add_step(struct sheet_page *b, const char *text, bool heading) {
    b->steps[b->step_count++] = (struct cut_step){.text = text, .heading = heading};
}

/* What a region is once it is free: a part by name, else nothing said. */
static const char *freed(const struct sheet_page *b, size_t node) {
    const struct sheet_node *const n = node == SHEET_NONE ? NULL : node_at(b, node);
    return n != NULL && n->use == SHEET_PIECE ? part_name(b, n) : "";
}

static void list_cut(struct sheet_page *b, const struct sheet_node *n, size_t number) {
    const bool rip = n->use == SHEET_CUT_Y;
    const int64_t set = rip ? n->position - n->y : n->position - n->x;
    const char *const first = freed(b, n->first);
    const char *const second = freed(b, n->second);
    const bool both = first[0] != '\0' && second[0] != '\0';
    const bool any = first[0] != '\0' || second[0] != '\0';
    add_step(b,
             pool_format(b->s->pool, "%zu  %s %s to %s%s%s%s%s", number, rip ? "rip" : "crosscut",
                         plan_show_size(b->s->e, n->width, n->length).text,
                         plan_show(b->s->e, set).text, any ? ": " : "", first, both ? " and " : "",
                         second),
             false);
}

static void list_steps(struct sheet_page *b) {
    const size_t trims = sheet_trims(&b->p->job);
    size_t number = trims;
    add_step(b, "cuts, width x length of the piece in hand", true);
    if (trims > 0) {
        add_step(b,
                 pool_format(b->s->pool, "1 to %zu  trim %s off each edge", trims,
                             plan_show(b->s->e, b->p->job.trim).text),
                 false);
    }
    for (size_t i = 0; i < b->sheet->node_count; i++) {
        const struct sheet_node *const n = node_at(b, b->order[i]);
        if (is_cut(n)) {
            list_cut(b, n, ++number);
        }
    }
}

static void draw_margin_words(const struct sheet_page *b, bool grain) {
    const struct sketch *const s = b->s;
    const struct patch whole = sketch_patch(s, 0, 0, b->stock->length, b->stock->width);
    sketch_dimension(s, whole.x, whole.y + whole.height + 18, whole.width, false,
                     plan_show(s->e, b->stock->length).text);
    sketch_dimension(s, whole.x + whole.width + 20, whole.y, whole.height, true,
                     plan_show(s->e, b->stock->width).text);
    sketch_grain(s, whole.x, whole.y + whole.height + 32, grain);
    const struct text_style note = {.size = 7.5, .gray = 0.3};
    text_draw(s->cr, whole.x + 110, whole.y + whole.height + 27,
              text_or_empty(pool_format(s->pool,
                                        "Black: kerf of %s. Gray and dashed: left over. Crossed: "
                                        "trimmed off.",
                                        plan_show(s->e, b->p->job.kerf).text)),
              &note);
}

bool draw_sheet_page(struct sketch *s, const struct sheet_buy *buy, const struct alike *alike,
                     struct patch patch) {
    const struct sheets_plan *const p = &buy->plan;
    struct sheet_page b = {.s = s, .p = p, .sheet = &p->plan->sheets[alike->first]};
    b.stock = &p->job.stocks[b.sheet->stock];
    b.steps = pool_take(s->pool, b.sheet->node_count + 3, sizeof *b.steps);
    b.order = pool_take(s->pool, 2 * b.sheet->node_count, sizeof *b.order);
    if (pool_failed(s->pool)) {
        return false;
    }
    sheet_order(p->plan, alike->first, b.order, b.order + b.sheet->node_count);
    const double wide = (patch.width - 2 * SIDE) / (double)b.stock->length;
    const double high = (patch.height * SHARE - BELOW) / (double)b.stock->width;
    s->along = wide < high ? wide : high;
    s->across = s->along;
    s->x = patch.x + SIDE;
    s->y = patch.y + 14;
    draw_trim(&b);
    draw_nodes(&b);
    draw_numbers(&b);
    draw_margin_words(&b, s->e->rates->sheets[buy->material].grain);
    list_steps(&b);
    const struct patch whole = sketch_patch(s, 0, 0, b.stock->length, b.stock->width);
    const double top = whole.y + whole.height + BELOW + 8;
    const double side = whole.x + whole.width + 44;
    const double room_beside = patch.x + patch.width - side;
    if (room_beside > patch.width * 0.42) {
        sketch_steps(s, (struct patch){side, patch.y, room_beside, patch.height}, b.steps,
                     b.step_count);
    } else {
        sketch_steps(s, (struct patch){patch.x, top, patch.width, patch.y + patch.height - top},
                     b.steps, b.step_count);
    }
    return !pool_failed(s->pool);
}
