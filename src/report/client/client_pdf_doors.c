/* SPDX-License-Identifier: MIT */
/* The doors: each kind drawn once, all rows in a list. */
#include "report/client/client_pdf_parts.h"
#include "report/draw/draw.h"

#include <string.h>

#define KINDS_ACROSS 5
#define KIND_HEIGHT  88.0 /* and a gap */
#define KIND_GAP     10.0
#define KIND_PICTURE 62.0
#define KIND_WIDTH   84.0
#define ROW_GAP      2.5

/* --- kinds --- */

void client_kinds(struct client_page *p) {
    struct flow *const f = &p->flow;
    const struct offer *const o = p->offer;
    const double width = f->width / KINDS_ACROSS;
    const double height = KIND_HEIGHT + KIND_GAP * f->spread;
    const struct text_style letter = {.size = CLIENT_TEXT, .bold = true};
    const struct text_style words = {.size = 7.5, .width = width - 20};
    flow_heading(f, "The kinds of doors and fronts (not to one scale)", height);
    for (size_t i = 0; i < o->kind_count; i++) {
        const struct offer_kind *const kind = &o->kinds[i];
        const double x = f->x + (double)(i % KINDS_ACROSS) * width;
        if (i % KINDS_ACROSS == 0) {
            if (i > 0) {
                f->y += height;
            }
            (void)flow_need(f, height);
        }
        draw_elevation(
            f->pdf->cr, &kind->drawing,
            (struct area){.x = x, .y = f->y, .width = KIND_WIDTH, .height = KIND_PICTURE},
            DETAIL_SMALL);
        text_draw(f->pdf->cr, x, f->y + KIND_PICTURE + 5, kind->letter, &letter);
        text_draw(f->pdf->cr, x + 12, f->y + KIND_PICTURE + 6, kind->words, &words);
    }
    f->y += height;
}

/* --- the list --- */

enum { AT_ID, AT_KIND, AT_WORDS, AT_SIZE, AT_COUNT, AT_EACH, AT_AMOUNT, AT_END };

/* Left edges as parts of the width, by the detail of the price; where no prices are shown, the
 * words have their room.  That of the kinds moves with the longest name of a row. */
static const double edges_of[][AT_END + 1] = {
    [OFFER_SUM] = {0, 0.085, 0.14, 0.70, 0.91, 1, 1, 1},
    [OFFER_ROOMS] = {0, 0.085, 0.14, 0.60, 0.80, 0.88, 0.88, 1},
    [OFFER_EACH] = {0, 0.08, 0.14, 0.49, 0.67, 0.765, 0.88, 1},
};
#define ID_MOST    0.2 /* of the width */
#define KIND_WIDE  0.055
#define TEXT_SIZE  8.5
#define HEADS_HIGH 17.0
#define ROOM_HIGH  14.0

struct list {
    struct client_page *page;
    double edges[AT_END + 1];
    bool priced; /* each door */
    bool summed; /* each room */
};

static struct text_style style_of(const struct list *l, int column, bool right, bool bold) {
    const struct flow *const f = &l->page->flow;
    return (struct text_style){.size = TEXT_SIZE,
                               .bold = bold,
                               .align = right ? ALIGN_RIGHT : ALIGN_LEFT,
                               .width = (l->edges[column + 1] - l->edges[column]) * f->width -
                                        (right ? 0 : 6)};
}

static void put(const struct list *l, int column, const char *text, bool right, bool bold,
                double gray) {
    const struct flow *const f = &l->page->flow;
    struct text_style style = style_of(l, column, right, bold);
    style.gray = gray;
    text_draw(f->pdf->cr, f->x + l->edges[column] * f->width, f->y, text, &style);
}

/* Sees that the longest name of a row has room in its column, within reason: longer ones are
 * broken. */
static void fit_ids(struct list *l) {
    const struct flow *const f = &l->page->flow;
    const struct offer *const o = l->page->offer;
    const struct text_style style = {.size = TEXT_SIZE, .bold = true};
    double widest = l->edges[AT_KIND];
    for (size_t i = 0; i < o->door_count; i++) {
        const char *const id = o->doors[i].id;
        const double wide = (text_measure(f->pdf->cr, id, &style).width + 8) / f->width;
        widest = wide > widest ? wide : widest;
    }
    l->edges[AT_KIND] = widest > ID_MOST ? ID_MOST : widest;
    if (l->edges[AT_WORDS] < l->edges[AT_KIND] + KIND_WIDE) {
        l->edges[AT_WORDS] = l->edges[AT_KIND] + KIND_WIDE;
    }
}

static void heads(const struct list *l) {
    struct flow *const f = &l->page->flow;
    put(l, AT_ID, "No.", false, false, CLIENT_GRAY);
    put(l, AT_KIND, "Kind", false, false, CLIENT_GRAY);
    put(l, AT_WORDS, "What", false, false, CLIENT_GRAY);
    put(l, AT_SIZE, l->page->offer->size_head, true, false, CLIENT_GRAY);
    put(l, AT_COUNT, "Count", true, false, CLIENT_GRAY);
    if (l->priced) {
        put(l, AT_EACH, "Price each", true, false, CLIENT_GRAY);
    }
    if (l->summed) {
        put(l, AT_AMOUNT, "Amount", true, false, CLIENT_GRAY);
    }
    f->y += 13;
    flow_rule(f, 0.7, 0);
    f->y += HEADS_HIGH - 13;
}

static double row_height(const struct list *l, const struct offer_door *door) {
    cairo_t *const cr = l->page->flow.pdf->cr;
    const struct text_style words = style_of(l, AT_WORDS, false, false);
    const struct text_style id = style_of(l, AT_ID, false, true);
    const double one = text_measure(cr, door->words, &words).height;
    const double other = text_measure(cr, door->id, &id).height;
    return (one > other ? one : other) + ROW_GAP * l->page->flow.spread;
}

static void row(const struct list *l, const struct offer_door *door, double height) {
    struct flow *const f = &l->page->flow;
    const struct offer *const o = l->page->offer;
    put(l, AT_ID, door->id, false, true, 0);
    put(l, AT_KIND, o->kinds[door->kind].letter, false, false, 0);
    put(l, AT_WORDS, door->words, false, false, 0);
    put(l, AT_SIZE, door->size, true, false, 0);
    put(l, AT_COUNT, door->count_words, true, false, 0);
    if (l->priced) {
        put(l, AT_EACH, door->price.text, true, false, 0);
        put(l, AT_AMOUNT, door->amount.text, true, false, 0);
    }
    f->y += height;
}

/* The name of a room, with its sum where it begins. */
static void room_head(const struct list *l, const struct offer_room *room, bool goes_on) {
    struct flow *const f = &l->page->flow;
    const struct text_style name = {.size = CLIENT_TEXT, .bold = true, .width = f->width};
    const struct text_style sum = {
        .size = CLIENT_TEXT, .bold = true, .width = f->width, .align = ALIGN_RIGHT};
    if (room->name[0] == '\0' && !l->summed) {
        return;
    }
    text_draw(f->pdf->cr, f->x, f->y,
              pool_words(l->page->pool, "%s%s", room->name[0] == '\0' ? "(no room)" : room->name,
                         goes_on ? ", continued" : ""),
              &name);
    if (l->summed && !goes_on) {
        text_draw(f->pdf->cr, f->x, f->y, room->amount.text, &sum);
    }
    f->y += ROOM_HIGH;
}

/* A room begins with two rows at least, and goes on with two. */
static void room(const struct list *l, const struct offer_room *given) {
    struct flow *const f = &l->page->flow;
    const struct offer_door *const doors = &l->page->offer->doors[given->first];
    for (size_t i = 0; i < given->count; i++) {
        const double height = row_height(l, &doors[i]);
        const bool with_next = i + 1 < given->count && (i == 0 || i + 2 == given->count);
        const bool begun = flow_need(f, height + (i == 0 ? ROOM_HIGH + 3 : 0) +
                                            (with_next ? row_height(l, &doors[i + 1]) : 0));
        if (begun) {
            heads(l);
        }
        if (i == 0) {
            flow_gap(f, 3);
        }
        if (i == 0 || begun) {
            room_head(l, given, i > 0);
        }
        row(l, &doors[i], height);
    }
    flow_gap(f, 3);
}

void client_doors(struct client_page *p) {
    const struct offer *const o = p->offer;
    struct list list = {.page = p, .priced = o->detail == OFFER_EACH, .summed = offer_has_sums(o)};
    memcpy(list.edges, edges_of[o->detail], sizeof list.edges);
    fit_ids(&list);
    flow_heading(&p->flow, "Doors and fronts, by room", HEADS_HIGH + ROOM_HIGH + 3 + 2 * 13);
    heads(&list);
    for (size_t i = 0; i < o->room_count; i++) {
        room(&list, &o->rooms[i]);
    }
    flow_rule(&p->flow, 0.7, 0);
    flow_gap(&p->flow, 4);
    flow_text(&p->flow, o->list_note, (struct text_style){.size = 7.5, .gray = CLIENT_GRAY});
}
