/* SPDX-License-Identifier: MIT */
#include "report/doors/door_drawings.h"

#include "base/text.h"
#include "model/name.h"
#include "report/doors/door_elevation.h"
#include "report/draw/draw.h"
#include "report/draw/pdf.h"
#include "report/type/text_style.h"
#include "report/words/show.h"

#include <stdio.h>
#include <string.h>

#define MARGIN    36.0
#define HEAD      34.0 /* for the head of a page */
#define FOOT      24.0
#define GAP       18.0 /* between cells */
#define COLUMNS   2
#define ROWS      2
#define EACH_PAGE ((size_t)(COLUMNS * ROWS))
#define TEXT      7.5

struct drawings {
    const struct estimate *e;
    struct pdf pdf;
    struct pool pool;
    size_t pages;
};

static const struct text_style id_style = {.size = 14, .bold = true};
static const struct text_style line_style = {.size = 9, .bold = true};

/* --- words --- */

static const char *hinge_words(struct drawings *w, const struct door_elevation *e) {
    static const char *const edges[] = {
        [EDGE_NONE] = "hinge side not said", [EDGE_LEFT] = "on the left",
        [EDGE_RIGHT] = "on the right",       [EDGE_TOP] = "at the top",
        [EDGE_BOTTOM] = "at the bottom",
    };
    if (e->drawing.hinges <= 0) {
        return "no hinges";
    }
    if (e->door->leaves > 1) {
        return pool_format(&w->pool, "%d hinges a leaf, on the outer sides",
                           (int)e->drawing.hinges);
    }
    return pool_format(&w->pool, "%d hinge%s, %s", (int)e->drawing.hinges,
                       e->drawing.hinges == 1 ? "" : "s", edges[e->drawing.edge]);
}

/* `top rail 13 x 2 1/4, poplar`. */
static const char *part_words(struct drawings *w, const struct part *part) {
    const enum length_unit unit = w->e->job->unit;
    char thick[32];
    const bool field = !part_is_frame(part->kind);
    const struct shown size = field ? show_size(part->shown_width, part->shown_height, unit)
                                    : show_size(part->length, part->width, unit);
    return pool_format(&w->pool, "%d  %s  %s x %s  %s", (int)part->count,
                       part_kind_name(part->kind), size.text,
                       length_show(part->thickness, unit, thick, sizeof thick),
                       material_name(w->e->rates, part->material_kind, part->material));
}

/* --- a cell --- */

/* The words above a drawing; returns how high they are. */
static double draw_head(struct drawings *w, const struct door_elevation *e, double x, double y,
                        double width) {
    cairo_t *const cr = w->pdf.cr;
    const struct door *const door = e->door;
    const struct row *const row = door->row;
    const struct finish *const finish =
        door->construction->finish.index < 0
            ? NULL
            : &w->e->rates->finishes[door->construction->finish.index];
    const struct text_style gray = {
        .size = 9, .gray = 0.3, .width = width * 0.62, .cut = true, .align = ALIGN_RIGHT};
    const struct text_style small = {.size = 8, .width = width};
    const char *const color = show_color(w->e->rates, door->construction);
    const char *const grain = show_grain(w->e->rates, door);
    double at = y;
    text_draw(cr, x, at, row->id.s, &id_style);
    text_draw(cr, x + width * 0.38, at + 4, text_or_empty(row->room.s), &gray);
    at += 19;
    const char *const count =
        pool_format(&w->pool, "%d x %s, %s each", (int)row->count.amount,
                    door->leaves > 1 ? "pair of leaves" : show_use((enum use)row->use.choice),
                    show_size(door->width, door->height, e->drawing.unit).text);
    at += text_draw(cr, x, at, text_or_empty(count), &line_style) + 1;
    const char *const made = pool_format(
        &w->pool, "%s%s; %s%s%s; %s", show_style(door),
        grain != NULL && strcmp(grain, "horizontal") == 0 ? ", grain horizontal" : "",
        finish == NULL
            ? "bare"
            : text_or_empty(finish->client_name.s != NULL ? finish->client_name.s : finish->name.s),
        color[0] == '\0' ? "" : ", ", color, text_or_empty(hinge_words(w, e)));
    at += text_draw(cr, x, at, text_or_empty(made), &small);
    if (row->note.s != NULL && row->note.s[0] != '\0') {
        at += text_draw(cr, x, at, row->note.s, &small);
    }
    if (row->extra_words.s != NULL && row->extra_words.s[0] != '\0') {
        at += text_draw(cr, x, at, row->extra_words.s, &small);
    }
    return at - y;
}

/* The parts below it, standing on `foot`; returns how high they are. */
static double draw_parts(struct drawings *w, const struct door *door, double x, double foot,
                         double width) {
    const struct text_style small = {.size = TEXT, .width = width, .cut = true};
    const double line = TEXT * 1.28;
    const bool pair = door->leaves > 1 && door->part_count > 0;
    const size_t count = (door->part_count > 0 ? door->part_count : 1) + (pair ? 1 : 0);
    double y = foot - line * (double)count;
    if (pair) {
        const struct text_style bold = {.size = TEXT, .bold = true, .width = width, .cut = true};
        text_draw(w->pdf.cr, x, y, "parts of one leaf", &bold);
        y += line;
    }
    if (door->bought_in) {
        text_draw(w->pdf.cr, x, y, "bought in as it is", &small);
    }
    for (size_t i = 0; i < door->part_count; i++) {
        text_draw(w->pdf.cr, x, y, text_or_empty(part_words(w, &door->parts[i])), &small);
        y += line;
    }
    return line * (double)count;
}

static bool draw_cell(struct drawings *w, size_t row, struct area area) {
    const struct leaf_figures *const leaf = &w->e->quantities.leaves[row];
    struct door_elevation e;
    if (!door_elevation_make(&e, &w->pool, leaf->door,
                             (int32_t)tape_scaled(&w->e->tape, leaf->hinges, 0), w->e->job->unit)) {
        return false;
    }
    cairo_t *const cr = w->pdf.cr;
    cairo_save(cr);
    cairo_set_line_width(cr, 0.5);
    cairo_set_source_rgb(cr, 0.55, 0.55, 0.55);
    cairo_rectangle(cr, area.x, area.y, area.width, area.height);
    cairo_stroke(cr);
    cairo_restore(cr);
    const double inset = 8;
    const double x = area.x + inset;
    const double width = area.width - 2 * inset;
    const double head = draw_head(w, &e, x, area.y + inset, width);
    const double parts = draw_parts(w, leaf->door, x, area.y + area.height - inset, width);
    const struct area room = {
        .x = x,
        .y = area.y + inset + head + 6,
        .width = width,
        .height = area.height - 2 * inset - head - parts - 14,
    };
    draw_elevation(cr, &e.drawing, room, DETAIL_FULL);
    return !pool_failed(&w->pool);
}

/* --- pages --- */

static void draw_margins(struct drawings *w, size_t page) {
    const struct job *const job = w->e->job;
    const double width = w->pdf.width - 2 * MARGIN;
    const struct text_style title = {.size = 12, .bold = true, .width = width * 0.72, .cut = true};
    const struct text_style right = {.size = 9, .width = width * 0.27, .align = ALIGN_RIGHT};
    const struct text_style foot = {.size = 7.5, .gray = 0.3, .width = width * 0.85, .cut = true};
    const struct text_style number = {
        .size = 7.5, .gray = 0.3, .width = width, .align = ALIGN_RIGHT};
    const double low = w->pdf.height - MARGIN - 9;
    text_draw(w->pdf.cr, MARGIN, MARGIN, text_or_empty(job->title.s), &title);
    text_draw(w->pdf.cr, MARGIN + width * 0.73, MARGIN + 3,
              text_or_empty(pool_format(&w->pool, "%s%s%s", text_or_empty(job->number.s),
                                        job->number.s == NULL ? "" : ", ", job->date.s)),
              &right);
    text_draw(w->pdf.cr, MARGIN, low,
              w->e->job->unit == LENGTH_MM
                  ? "Finished sizes in mm, seen from the front. Hinge marks show side and "
                    "number, not their place."
                  : "Finished sizes in inches, seen from the front. Hinge marks show side and "
                    "number, not their place.",
              &foot);
    text_draw(w->pdf.cr, MARGIN, low,
              text_or_empty(pool_format(&w->pool, "page %zu of %zu", page + 1, w->pages)), &number);
}

static bool draw_page(struct drawings *w, size_t page) {
    const size_t count = w->e->quantities.count;
    const double width = (w->pdf.width - 2 * MARGIN - GAP * (COLUMNS - 1)) / COLUMNS;
    const double height = (w->pdf.height - 2 * MARGIN - HEAD - FOOT - GAP * (ROWS - 1)) / ROWS;
    draw_margins(w, page);
    for (size_t i = 0; i < EACH_PAGE && page * EACH_PAGE + i < count; i++) {
        const size_t down = i / COLUMNS;
        const struct area area = {
            .x = MARGIN + (double)(i % COLUMNS) * (width + GAP),
            .y = MARGIN + HEAD + (double)down * (height + GAP),
            .width = width,
            .height = height,
        };
        if (!draw_cell(w, page * EACH_PAGE + i, area)) {
            return false;
        }
    }
    pdf_page(&w->pdf);
    return true;
}

bool door_drawings_write(const struct estimate *e, const char *path) {
    struct drawings w = {.e = e, .pages = (e->quantities.count + EACH_PAGE - 1) / EACH_PAGE};
    const struct pdf_facts facts = {
        .title = e->job->title.s,
        .subject = "door elevations",
        .author = e->rates->shop.name.s,
        .year = e->job->year,
        .month = e->job->month,
        .day = e->job->day,
        .letter = show_on_letter(e),
    };
    bool done = pdf_open(&w.pdf, path, &facts);
    for (size_t page = 0; done && page < w.pages; page++) {
        pool_init(&w.pool);
        done = draw_page(&w, page);
        pool_clear(&w.pool);
    }
    return pdf_close(&w.pdf) && done;
}
