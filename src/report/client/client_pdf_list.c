/* SPDX-License-Identifier: MIT */
/* The doors: all rows in a list, each kind drawn once. */
#include "report/client/client_pdf_parts.h"
#include "report/draw/draw.h"
#include "report/draw/tag.h"

#define TEXT_SIZE 8.5
#define GAP       9.0 /* between columns */
#define ROW_GAP   2.5

struct list {
    struct client_page *page;
    struct client_columns columns;
};

static double measure(void *paper, const char *text, bool bold) {
    const struct client_page *const p = paper;
    const struct text_style style = {.size = TEXT_SIZE, .bold = bold};
    return text_measure(p->flow.pdf->cr, text, &style).width;
}

static double larger(double a, double b) {
    return a > b ? a : b;
}

/* Draws a text in its column, x from its left edge, or only measures it; returns its height. */
static double put(const struct list *l, const struct client_column *column, double x,
                  const char *text, double gray, bool draw) {
    const struct flow *const f = &l->page->flow;
    const struct text_style style = {.size = TEXT_SIZE,
                                     .bold = column->is == CLIENT_ID && gray == 0,
                                     .gray = gray,
                                     .align = column->number ? ALIGN_RIGHT : ALIGN_LEFT,
                                     .width = column->width - GAP};
    return draw ? tag_text(f->pdf->cr, gray == 0 ? "TD" : "TH", x + (column->number ? GAP : 0),
                           f->y, text, &style)
                : text_measure(f->pdf->cr, text, &style).height;
}

/* A row, of the heads where door is NULL; returns the height of its highest cell. */
static double put_row(const struct list *l, const struct offer_door *door, bool draw) {
    const struct offer *const o = l->page->offer;
    cairo_t *const cr = l->page->flow.pdf->cr;
    double x = l->page->flow.x;
    double height = 0;
    if (draw) {
        tag_begin(cr, "TR");
    }
    for (size_t c = 0; c < l->columns.count; c++) {
        const struct client_column *const column = &l->columns.list[c];
        const char *const text =
            door == NULL ? column->head : client_cell(o, door, column->is).text;
        if (draw || !column->number || door == NULL) { /* numbers stand on one line */
            height = larger(height, put(l, column, x, text == NULL ? "" : text,
                                        door == NULL ? CLIENT_GRAY : 0, draw));
        }
        x += column->width;
    }
    if (draw) {
        tag_end(cr, "TR");
    }
    return height;
}

static double row_height(const struct list *l, const struct offer_door *door) {
    return put_row(l, door, false) + ROW_GAP * l->page->flow.spread;
}

static double heads_height(const struct list *l) {
    return put_row(l, NULL, false) + 5;
}

static void heads(const struct list *l) {
    struct flow *const f = &l->page->flow;
    f->y += put_row(l, NULL, true) + 1;
    flow_rule(f, 0.7, 0);
    f->y += 4;
}

/* The name of a room, with its sum where it begins; or only its height. */
static double room_head(const struct list *l, const struct offer_room *room, bool goes_on,
                        bool draw) {
    struct flow *const f = &l->page->flow;
    const bool summed = offer_has_sums(l->page->offer);
    const struct text_style name = {
        .size = CLIENT_TEXT, .bold = true, .width = f->width * (summed ? 0.8 : 1)};
    const struct text_style sum = {
        .size = CLIENT_TEXT, .bold = true, .width = f->width, .align = ALIGN_RIGHT};
    const char *const text =
        pool_words(l->page->pool, "%s%s", room->name[0] == '\0' ? CLIENT_NO_ROOM : room->name,
                   goes_on ? ", continued" : "");
    if (!client_room_has_head(l->page->offer, room)) {
        return 0;
    }
    if (draw) {
        tag_begin(f->pdf->cr, "TR");
        tag_text(f->pdf->cr, "TH", f->x, f->y, text, &name);
        if (summed && !goes_on) {
            tag_text(f->pdf->cr, "TD", f->x, f->y, room->amount.text, &sum);
        }
        tag_end(f->pdf->cr, "TR");
    }
    return text_measure(f->pdf->cr, text, &name).height + 3;
}

/* What a room begins with: its head and two rows, or the one that it has. */
static double room_start(const struct list *l, const struct offer_room *room) {
    const struct offer_door *const doors = &l->page->offer->doors[room->first];
    return 3 + room_head(l, room, false, false) + row_height(l, &doors[0]) +
           (room->count > 1 ? row_height(l, &doors[1]) : 0);
}

/* A room begins with two rows at least, and goes on with two. */
static void put_room(const struct list *l, const struct offer_room *room) {
    struct flow *const f = &l->page->flow;
    const struct offer_door *const doors = &l->page->offer->doors[room->first];
    for (size_t i = 0; i < room->count; i++) {
        const double height = row_height(l, &doors[i]);
        const double next = i + 2 == room->count ? row_height(l, &doors[i + 1]) : 0;
        const bool begun = flow_need(f, i == 0 ? room_start(l, room) : height + next);
        if (begun) {
            heads(l);
        }
        if (i == 0) {
            flow_gap(f, 3);
        }
        if (i == 0 || begun) {
            f->y += room_head(l, room, i > 0, true);
        }
        put_row(l, &doors[i], true);
        f->y += height;
    }
    flow_gap(f, 3);
}

void client_pdf_list(struct client_page *p) {
    struct flow *const f = &p->flow;
    const struct offer *const o = p->offer;
    struct list list = {.page = p};
    client_columns_make(&list.columns, o, measure, p, f->width, GAP);
    flow_heading(f, client_list_head(o), heads_height(&list) + room_start(&list, &o->rooms[0]));
    tag_begin(f->pdf->cr, "Table");
    heads(&list);
    for (size_t i = 0; i < o->room_count; i++) {
        put_room(&list, &o->rooms[i]);
    }
    tag_end(f->pdf->cr, "Table");
    flow_rule(f, 0.7, 0);
    flow_gap(f, 4);
    flow_text(f, o->list_note, (struct text_style){.size = 7.5, .gray = CLIENT_GRAY});
}

/* --- kinds --- */

#define ACROSS       6
#define PICTURE_HIGH 60.0
#define PICTURE_WIDE 70.0
#define LETTER_WIDE  12.0
#define KIND_GAP     8.0

/* A row of drawings; or only its height, which is that of the longest words below them. */
static double kinds_row(const struct client_page *p, size_t first, bool draw) {
    const struct flow *const f = &p->flow;
    const struct offer *const o = p->offer;
    const double width = f->width / ACROSS;
    const double y = f->y + PICTURE_HIGH + 4;
    const struct text_style letter = {.size = CLIENT_TEXT, .bold = true};
    const struct text_style words = {.size = 7.5, .width = width - LETTER_WIDE - 6};
    double height = 0;
    for (size_t i = first; i < o->kind_count && i < first + ACROSS; i++) {
        const struct offer_kind *const kind = &o->kinds[i];
        const double x = f->x + (double)(i - first) * width;
        const double in =
            larger(LETTER_WIDE, 4 + text_measure(f->pdf->cr, kind->letter, &letter).width);
        height = larger(height, text_measure(f->pdf->cr, kind->words, &words).height);
        if (draw) {
            const struct area area = {
                .x = x, .y = f->y, .width = PICTURE_WIDE, .height = PICTURE_HIGH};
            tag_begin(f->pdf->cr, "Figure");
            draw_elevation(f->pdf->cr, &kind->drawing, area, DETAIL_SMALL);
            tag_end(f->pdf->cr, "Figure");
            tag_begin(f->pdf->cr, "P");
            text_draw(f->pdf->cr, x, y, kind->letter, &letter);
            text_draw(f->pdf->cr, x + in, y + 1, kind->words, &words);
            tag_end(f->pdf->cr, "P");
        }
    }
    return PICTURE_HIGH + 5 + height + KIND_GAP * f->spread;
}

void client_pdf_kinds(struct client_page *p) {
    struct flow *const f = &p->flow;
    flow_heading(f, CLIENT_KINDS_HEAD, kinds_row(p, 0, false));
    for (size_t i = 0; i < p->offer->kind_count; i += ACROSS) {
        if (flow_need(f, kinds_row(p, i, false))) {
            flow_heading(f, CLIENT_KINDS_HEAD ", continued", kinds_row(p, i, false));
        }
        f->y += kinds_row(p, i, true);
    }
}
