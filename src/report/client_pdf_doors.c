/* SPDX-License-Identifier: MIT */
/* The doors: each kind drawn once, all rows in a list. */
#include "report/client_pdf_parts.h"
#include "report/draw.h"
#include "report/offer_parts.h"
#include "report/show.h"

#define KINDS_ACROSS 5
#define KIND_HEIGHT  98.0
#define KIND_PICTURE 62.0
#define KIND_WIDTH   84.0
#define ROW_GAP      2.5

/* --- kinds --- */

void client_kinds(struct client_page *p) {
    struct flow *const f = &p->flow;
    const struct offer *const o = p->offer;
    const double width = f->width / KINDS_ACROSS;
    const struct letters letter = {.size = CLIENT_TEXT, .bold = true};
    const struct letters words = {.size = 7.5, .width = width - 20};
    flow_heading(f, "The kinds of doors and fronts (not to one scale)", KIND_HEIGHT);
    for (size_t i = 0; i < o->kind_count; i++) {
        const struct offer_kind *const kind = &o->kinds[i];
        const double x = f->x + (double)(i % KINDS_ACROSS) * width;
        if (i % KINDS_ACROSS == 0) {
            if (i > 0) {
                f->y += KIND_HEIGHT;
            }
            (void)flow_need(f, KIND_HEIGHT);
        }
        draw_elevation(
            f->pdf->cr, &kind->elevation,
            (struct area){.x = x, .y = f->y, .width = KIND_WIDTH, .height = KIND_PICTURE},
            DETAIL_SMALL);
        letters_draw(f->pdf->cr, x, f->y + KIND_PICTURE + 5, kind->letter, &letter);
        letters_draw(f->pdf->cr, x + 12, f->y + KIND_PICTURE + 6, kind->words, &words);
    }
    f->y += KIND_HEIGHT;
}

/* --- the list --- */

enum { AT_ID, AT_KIND, AT_WORDS, AT_SIZE, AT_COUNT, AT_EACH, AT_AMOUNT, AT_END };

/* Left edges as parts of the width; where no prices are shown, the words have their room. */
static const double with_prices[AT_END + 1] = {0, 0.08, 0.14, 0.46, 0.64, 0.755, 0.87, 1};
static const double without_prices[AT_END + 1] = {0, 0.085, 0.14, 0.66, 0.88, 1, 1, 1};

struct list {
    struct client_page *page;
    const double *edges;
    bool priced; /* each door */
};

static void put(const struct list *l, int column, const char *text, bool right, bool bold,
                double grey) {
    const struct flow *const f = &l->page->flow;
    const double from = f->x + l->edges[column] * f->width;
    const double to = f->x + l->edges[column + 1] * f->width;
    const struct letters letters = {.size = 8.5,
                                    .bold = bold,
                                    .grey = grey,
                                    .align = right ? LETTERS_RIGHT : LETTERS_LEFT,
                                    .width = to - from - (right ? 0 : 6)};
    letters_draw(f->pdf->cr, from, f->y, text, &letters);
}

static void heads(const struct list *l) {
    struct flow *const f = &l->page->flow;
    put(l, AT_ID, "No.", false, false, CLIENT_GREY);
    put(l, AT_KIND, "Kind", false, false, CLIENT_GREY);
    put(l, AT_WORDS, "What", false, false, CLIENT_GREY);
    put(l, AT_SIZE,
        l->page->offer->e->job->unit == LENGTH_MM ? "Width x height, mm" : "Width x height, in",
        true, false, CLIENT_GREY);
    put(l, AT_COUNT, "Count", true, false, CLIENT_GREY);
    if (l->priced) {
        put(l, AT_EACH, "Price each", true, false, CLIENT_GREY);
        put(l, AT_AMOUNT, "Amount", true, false, CLIENT_GREY);
    }
    f->y += 13;
    flow_rule(f, 0.7, 0);
    f->y += 4;
}

static double words_height(const struct list *l, const char *text) {
    const struct flow *const f = &l->page->flow;
    const struct letters letters = {
        .size = 8.5, .width = (l->edges[AT_SIZE] - l->edges[AT_WORDS]) * f->width - 6};
    return letters_measure(f->pdf->cr, text, &letters).height;
}

/* `2 x 2`: two openings, a pair each. */
static const char *count_words(struct offer *o, const struct offer_door *door) {
    const struct leaf_figures *const leaf = door->leaf;
    return offer_or_nothing(leaf->door->leaves > 1
                                ? pool_format(&o->pool, "%s x 2", show(o->e, leaf->openings).text)
                                : pool_format(&o->pool, "%s", show(o->e, leaf->openings).text));
}

static void row(const struct list *l, const struct offer_door *door) {
    struct flow *const f = &l->page->flow;
    struct offer *const o = l->page->offer;
    const double height = words_height(l, door->words) + ROW_GAP;
    if (flow_need(f, height)) {
        heads(l);
    }
    const struct door *const d = door->leaf->door;
    put(l, AT_ID, d->row->id.s, false, true, 0);
    put(l, AT_KIND, o->kinds[door->kind].letter, false, false, 0);
    put(l, AT_WORDS, door->words, false, false, 0);
    put(l, AT_SIZE, show_size(d->width, d->height, o->e->job->unit).text, true, false, 0);
    put(l, AT_COUNT, count_words(o, door), true, false, 0);
    if (l->priced) {
        put(l, AT_EACH, offer_money(o, door->price->unit, false), true, false, 0);
        put(l, AT_AMOUNT, offer_money(o, door->price->amount, false), true, false, 0);
    }
    f->y += height;
}

static void room(const struct list *l, const struct offer_room *given) {
    struct flow *const f = &l->page->flow;
    struct offer *const o = l->page->offer;
    const struct letters name = {.size = CLIENT_TEXT, .bold = true, .width = f->width};
    const struct letters sum = {
        .size = CLIENT_TEXT, .bold = true, .width = f->width, .align = LETTERS_RIGHT};
    const bool summed = o->e->job->detail.word != PRICES_SUM;
    if (flow_need(f, 34)) {
        heads(l);
    }
    f->y += 3;
    if (given->name[0] != '\0' || summed) {
        letters_draw(f->pdf->cr, f->x, f->y, given->name[0] == '\0' ? "(no room)" : given->name,
                     &name);
        if (summed) {
            letters_draw(f->pdf->cr, f->x, f->y, offer_money(o, given->amount, false), &sum);
        }
        f->y += 14;
    }
    for (size_t i = 0; i < given->count; i++) {
        row(l, &o->doors[given->first + i]);
    }
    f->y += 3;
}

void client_doors(struct client_page *p) {
    const struct offer *const o = p->offer;
    const bool priced = o->e->job->detail.word == PRICES_EACH;
    const struct list list = {
        .page = p, .edges = priced ? with_prices : without_prices, .priced = priced};
    bool pairs = false;
    flow_heading(&p->flow, "Doors and fronts, by room", 60);
    heads(&list);
    for (size_t i = 0; i < o->room_count; i++) {
        room(&list, &o->rooms[i]);
    }
    for (size_t i = 0; i < o->door_count; i++) {
        pairs = pairs || o->doors[i].leaf->door->leaves > 1;
    }
    flow_rule(&p->flow, 0.7, 0);
    flow_gap(&p->flow, 4);
    flow_text(&p->flow,
              pairs ? "Sizes are finished sizes of one door, width by height. Count 1 x 2: one "
                      "opening with a pair of doors; size and price are of one door of the pair."
                    : "Sizes are finished sizes of one door, width by height.",
              (struct letters){.size = 7.5, .grey = CLIENT_GREY});
}
