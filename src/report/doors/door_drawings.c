/* SPDX-License-Identifier: MIT */
#include "report/doors/door_drawings.h"

#include "base/array.h"
#include "base/text.h"
#include "model/construction.h"
#include "model/name.h"
#include "report/doors/door_elevation.h"
#include "report/draw/draw.h"
#include "report/draw/pdf.h"
#include "report/type/text_style.h"
#include "report/words/door_words.h"
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

/* fold_hinges: between two leaves that fold. */
static const char *hinge_words(struct drawings *w, const struct door_elevation *e,
                               int32_t fold_hinges) {
    static const char *const edges[] = {
        [EDGE_NONE] = "hinge side not said", [EDGE_LEFT] = "on the left",
        [EDGE_RIGHT] = "on the right",       [EDGE_TOP] = "at the top",
        [EDGE_BOTTOM] = "at the bottom",
    };
    const int hinges = (int)e->drawing.hinges;
    const bool outer = e->door->leaves > 1 && !row_hangs_level(e->door->row);
    if (hinges <= 0 && fold_hinges <= 0) {
        return "no hinges";
    }
    const char *const hung =
        outer ? pool_format(&w->pool, "%d hinges a leaf, on the outer sides", hinges)
              : pool_format(&w->pool, "%d hinge%s, %s", hinges, hinges == 1 ? "" : "s",
                            edges[e->drawing.edge]);
    const bool corner = e->door->row->opens.choice == OPENS_PIE_CUT;
    return e->door->beside == NULL
               ? hung
               : pool_format(&w->pool, "%s, and %d between the leaves%s", text_or_empty(hung),
                             (int)fold_hinges, corner ? "; the angle marks the corner" : "");
}

/* `top rail 13 x 2 1/4, poplar`. */
static const char *part_words(struct drawings *w, const struct part *part) {
    const enum length_unit unit = w->e->job->unit;
    char thick[32];
    const bool field = part_is_field(part->kind);
    const struct shown size = field ? show_size(part->shown_width, part->shown_height, unit)
                                    : show_size(part->length, part->width, unit);
    char rise[32];
    return pool_format(&w->pool, "%d  %s%s%s  %s x %s  %s", (int)part->count, part_full_name(part),
                       part->rise > 0 ? " " : "",
                       part->rise > 0 ? length_show(part->rise, unit, rise, sizeof rise) : "",
                       size.text, length_show(part->thickness, unit, thick, sizeof thick),
                       material_name(w->e->rates, part->material_kind, part->material));
}

/* --- a cell --- */

/* The words above a drawing; returns how high they are. fold_hinges: as of hinge_words. */
static double draw_head(struct drawings *w, const struct door_elevation *e, int32_t fold_hinges,
                        double x, double y, double width) {
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
    const struct hardware_items *const other = row_hardware(door->row, door->construction);
    double at = y;
    text_draw(cr, x, at, row->id.s, &id_style);
    text_draw(cr, x + width * 0.38, at + 4, text_or_empty(row->room.s), &gray);
    at += 19;
    const char *const count = pool_format(
        &w->pool, "%d x %s, %s each", (int)row->count.amount, show_opening(&w->pool, door),
        text_or_empty(show_leaf_sizes(&w->pool, door, e->drawing.unit)));
    at += text_draw(cr, x, at, text_or_empty(count), &line_style) + 1;
    const char *const made = pool_format(
        &w->pool, "%s%s; %s%s%s; %s%s%s", show_style(door),
        grain != NULL && strcmp(grain, "horizontal") == 0 ? ", grain horizontal" : "",
        finish == NULL
            ? "bare"
            : text_or_empty(finish->client_name.s != NULL ? finish->client_name.s : finish->name.s),
        color[0] == '\0' ? "" : ", ", color, text_or_empty(hinge_words(w, e, fold_hinges)),
        other->count == 0 ? "" : "; ", other->count == 0 ? "" : other->written.s);
    at += text_draw(cr, x, at, text_or_empty(made), &small);
    const char *const more[] = {row->note.s, row->remark.s, row->extra_words.s};
    for (size_t i = 0; i < COUNT_OF(more); i++) {
        if (more[i] != NULL && more[i][0] != '\0') {
            at += text_draw(cr, x, at, more[i], &small);
        }
    }
    return at - y;
}

/* What stands above the parts of a leaf; NULL: nothing needs to. */
static const char *parts_head(const struct door *door) {
    if (door->beside != NULL && door->width != door->beside->width) {
        return show_leaf(door);
    }
    return door->leaves > 1 || door->beside != NULL ? "parts of one leaf" : NULL;
}

/* The parts of a leaf, standing on `foot`; returns how high they are. */
static double draw_leaf_parts(struct drawings *w, const struct door *door, double x, double foot,
                              double width) {
    const struct text_style small = {.size = TEXT, .width = width, .cut = true};
    const struct text_style bold = {.size = TEXT, .bold = true, .width = width, .cut = true};
    const double line = TEXT * 1.28;
    const char *const head = door->part_count > 0 ? parts_head(door) : NULL;
    const size_t count =
        (door->part_count > 0 ? door->part_count : 1) + (head == NULL ? (size_t)0 : 1);
    double y = foot - line * (double)count;
    if (head != NULL) {
        text_draw(w->pdf.cr, x, y, head, &bold);
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

/* The parts of all that is drawn. */
static double draw_parts(struct drawings *w, const struct door *door, double x, double foot,
                         double width) {
    const struct door *const other = door->beside;
    double high = 0;
    if (other != NULL && !door->bought_in && !door_is_twin(other)) {
        high = draw_leaf_parts(w, other, x, foot, width);
    }
    return high + draw_leaf_parts(w, door, x, foot - high, width);
}

static bool draw_cell(struct drawings *w, size_t row, struct area area) {
    const struct leaf_figures *const leaf = &w->e->quantities.leaves[row];
    const bool folds = leaf->door->beside != NULL;
    const int32_t fold_hinges = folds ? (int32_t)tape_scaled(&w->e->tape, leaf[1].hinges, 0) : 0;
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
    const double head = draw_head(w, &e, fold_hinges, x, area.y + inset, width);
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
                    "number, not their place; dashed lines meet at the hinged edge."
                  : "Finished sizes in inches, seen from the front. Hinge marks show side and "
                    "number, not their place; dashed lines meet at the hinged edge.",
              &foot);
    text_draw(w->pdf.cr, MARGIN, low,
              text_or_empty(pool_format(&w->pool, "page %zu of %zu", page + 1, w->pages)), &number);
}

/* From a leaf on, the next one that has a drawing of its own; their count: none. */
static size_t next_drawn(const struct estimate *e, size_t from) {
    const struct quantities *const q = &e->quantities;
    while (from < q->count && door_drawn(q->leaves[from].door) != q->leaves[from].door) {
        from++;
    }
    return from;
}

/* Draws a page; *next: its first drawing, set to that of the page after it. */
static bool draw_page(struct drawings *w, size_t page, size_t *next) {
    const double width = (w->pdf.width - 2 * MARGIN - GAP * (COLUMNS - 1)) / COLUMNS;
    const double height = (w->pdf.height - 2 * MARGIN - HEAD - FOOT - GAP * (ROWS - 1)) / ROWS;
    draw_margins(w, page);
    for (size_t i = 0; i < EACH_PAGE && *next < w->e->quantities.count; i++) {
        const size_t down = i / COLUMNS;
        const struct area area = {
            .x = MARGIN + (double)(i % COLUMNS) * (width + GAP),
            .y = MARGIN + HEAD + (double)down * (height + GAP),
            .width = width,
            .height = height,
        };
        if (!draw_cell(w, *next, area)) {
            return false;
        }
        *next = next_drawn(w->e, *next + 1);
    }
    pdf_page(&w->pdf);
    return true;
}

bool door_drawings_write(const struct estimate *e, const char *path, const struct stop *stop) {
    size_t drawn = 0;
    size_t next = next_drawn(e, 0);
    for (size_t at = next; at < e->quantities.count; at = next_drawn(e, at + 1)) {
        drawn++;
    }
    struct drawings w = {.e = e, .pages = (drawn + EACH_PAGE - 1) / EACH_PAGE};
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
        done = !stop_asked(stop) && draw_page(&w, page, &next);
        pool_clear(&w.pool);
    }
    return pdf_close(&w.pdf) && done;
}
