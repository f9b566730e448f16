/* SPDX-License-Identifier: MIT */
#include "report/doors/door_drawings.h"

#include "base/array.h"
#include "base/text.h"
#include "model/construction.h"
#include "model/name.h"
#include "report/doors/door_elevation.h"
#include "report/draw/draw.h"
#include "report/draw/pdf.h"
#include "report/draw/tag.h"
#include "report/type/text_style.h"
#include "report/words/bore_list.h"
#include "report/words/door_words.h"
#include "report/words/show.h"

#include <stdio.h>
#include <string.h>

#define MARGIN    34.0
#define HEAD      22.0 /* for the head of a page */
#define FOOT      16.0
#define GAP       9.0 /* between cells */
#define EACH_PAGE 3   /* cells */
#define INSET     8.0
#define ID        0.6  /* of the width of the words, at most: what a row is called */
#define WORDS     0.47 /* of the width of a cell: its words, left of the drawing */
#define TEXT      10.0
#define SMALL     8.0 /* of a room with a long name */
#define SMALLEST  7.0 /* of the parts, where there are many */
#define LINE      1.25
#define BELOW     4.0 /* free between words and parts */

struct drawings {
    const struct estimate *e;
    struct pdf pdf;
    struct pool pool;
    size_t pages;      /* in all; 0 while they are counted */
    size_t pages_done; /* drawn */
    bool places;       /* of all hinges it is said where they are */
};

/* --- words --- */

/* `cup-hinge`, as the rates name it. */
static const char *named(const struct drawings *w, const struct reference *hardware) {
    return hardware->index < 0 ? "not named" : w->e->rates->hardware[hardware->index].name.s;
}

/* fold_hinges: between two leaves that fold. */
static const char *hinge_words(struct drawings *w, const struct door_elevation *e,
                               int32_t fold_hinges) {
    static const char *const edges[] = {
        [EDGE_NONE] = "side not said",   [EDGE_LEFT] = "on the left",
        [EDGE_RIGHT] = "on the right",   [EDGE_TOP] = "at the top",
        [EDGE_BOTTOM] = "at the bottom",
    };
    const struct construction *const c = e->door->construction;
    const int hinges = (int)e->drawing.hinges;
    const bool outer = e->door->leaves > 1 && !row_hangs_level(e->door->row);
    if (hinges <= 0 && fold_hinges <= 0) {
        return "No hinges";
    }
    const char *const hung =
        hinges <= 0 ? "Hinges: none on the cabinet"
                    : pool_words(&w->pool, "Hinges: %d %s%s, %s", hinges, named(w, &c->hinge),
                                 outer ? " a leaf" : "",
                                 outer ? "on the outer sides" : edges[e->drawing.edge]);
    const bool corner = e->door->row->opens.choice == OPENS_PIE_CUT;
    return e->door->beside == NULL
               ? hung
               : pool_words(&w->pool, "%s; %d %s between the leaves%s", hung, (int)fold_hinges,
                            named(w, &c->fold_hinge), corner ? "; the angle marks the corner" : "");
}

/* What else is fitted: `Pull knob: 1 a leaf. Also: 1 lock`. pulls: of a leaf. */
static const char *pull_words(struct drawings *w, const struct door *door, int32_t pulls) {
    const struct hardware_items *const other = row_hardware(door->row, door->construction);
    const char *const pull = pulls <= 0 ? "No pull"
                                        : pool_words(&w->pool, "Pull: %d %s%s", (int)pulls,
                                                     named(w, &door->construction->pull),
                                                     door->leaves > 1 ? " a leaf" : "");
    return other->count == 0 ? pull : pool_words(&w->pool, "%s; also %s", pull, other->written.s);
}

/* A drawing with its words. */
struct cell {
    struct door_elevation elevation;
    const struct leaf_figures *leaf;
    int32_t fold_hinges; /* between two leaves that fold */
    int32_t pulls;       /* of a leaf, of two that fold together */
};

/* Where the hinges of a leaf are and how they are let in, or room to write it. */
static const char *hinge_bores(struct drawings *w, const char *what,
                               const struct leaf_figures *leaf) {
    const char *const places = bore_places(&w->pool, w->e, leaf);
    const int32_t hinge = door_hinge(leaf->door)->index;
    const char *const cup = hinge < 0 ? "" : bore_cup(&w->pool, &w->e->rates->hardware[hinge]);
    return pool_words(&w->pool, "%s %s%s%s", what, places[0] == '\0' ? "______" : places,
                      cup[0] == '\0' ? "" : "\n", cup);
}

/* Where a leaf is bored, a line each; room to write what nobody says, from the near end and edge.
 * Of leaves that fold both, the hung one first. */
static const char *bore_words(struct drawings *w, const struct cell *c) {
    const struct leaf_figures *const leaf = c->leaf;
    const bool folds = leaf->door->beside != NULL && leaf[1].hinge_at != NULL;
    const char *const hung =
        c->elevation.drawing.hinges <= 0 ? "" : hinge_bores(w, "Hinges at", leaf);
    const char *const between = folds ? hinge_bores(w, "Between the leaves at", &leaf[1]) : "";
    const char *const pull = c->pulls <= 0 ? "" : "Pull at ______ x ______";
    return pool_words(&w->pool, "%s%s%s%s%s", hung, hung[0] != '\0' && folds ? "\n" : "", between,
                      (hung[0] != '\0' || folds) && c->pulls > 0 ? "\n" : "", pull);
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

/* Sets a text or only measures it; returns its height. type: as tags have it. */
static double put(const struct drawings *w, const char *type, double x, double y, const char *text,
                  const struct text_style *style, bool draw) {
    return draw ? tag_text(w->pdf.cr, type, x, y, text, style)
                : text_measure(w->pdf.cr, text, style).height;
}

/* `shaker, grain horizontal; painted, lamp white`. */
static const char *made_words(struct drawings *w, const struct door *door) {
    const struct finish *const finish =
        door->construction->finish.index < 0
            ? NULL
            : &w->e->rates->finishes[door->construction->finish.index];
    const char *const color = show_color(w->e->rates, door->construction);
    const char *const grain = show_grain(w->e->rates, door);
    return pool_words(
        &w->pool, "%s%s; %s%s%s", show_style(door),
        grain != NULL && strcmp(grain, "horizontal") == 0 ? ", grain horizontal" : "",
        finish == NULL
            ? "bare"
            : text_or_empty(finish->client_name.s != NULL ? finish->client_name.s : finish->name.s),
        color[0] == '\0' ? "" : ", ", color);
}

/* What a row is called, and beside it its room; returns how high they are. */
static double put_names(struct drawings *w, const struct row *row, double x, double y, double width,
                        bool draw) {
    const char *const room = text_or_empty(row->room.s);
    const double share = room[0] != '\0' ? ID : 1;
    const struct text_style id = {.size = 16, .bold = true, .width = width * share};
    const double rest = width - GAP - text_measure(w->pdf.cr, text_or_empty(row->id.s), &id).width;
    struct text_style gray = {.size = TEXT, .gray = 0.3, .width = rest, .align = ALIGN_RIGHT};
    const double high = put(w, "H2", x, y, text_or_empty(row->id.s), &id, draw);
    gray.size = put(w, "P", 0, 0, room, &gray, false) > high ? SMALL : TEXT;
    const double low = share < 1 ? 4 + put(w, "P", x + width - rest, y + 4, room, &gray, draw) : 0;
    return low > high ? low : high;
}

/* The words beside a drawing; returns how high they are. draw: else they are only measured. */
static double put_head(struct drawings *w, const struct cell *c, double x, double y, double width,
                       bool draw) {
    const struct door *const door = c->elevation.door;
    const struct row *const row = door->row;
    const struct text_style line = {.size = TEXT + 1, .bold = true, .width = width};
    const struct text_style small = {.size = TEXT, .width = width};
    double at = y + 2 + put_names(w, row, x, y, width, draw);
    const char *const count = pool_words(
        &w->pool, "%d x %s, %s each", (int)row->count.amount, show_opening(&w->pool, door),
        text_or_empty(show_leaf_sizes(&w->pool, door, c->elevation.drawing.unit)));
    at += put(w, "P", x, at, count, &line, draw) + 1;
    const char *const more[] = {made_words(w, door),
                                hinge_words(w, &c->elevation, c->fold_hinges),
                                pull_words(w, door, c->pulls),
                                bore_words(w, c),
                                row->note.s,
                                row->remark.s,
                                row->extra_words.s};
    for (size_t i = 0; i < COUNT_OF(more); i++) {
        if (more[i] != NULL && more[i][0] != '\0') {
            at += put(w, "P", x, at, more[i], &small, draw);
        }
    }
    return at - y + BELOW;
}

/* What stands above the parts of a leaf; NULL: nothing needs to. */
static const char *parts_head(const struct door *door) {
    if (door->beside != NULL && door->width != door->beside->width) {
        return show_leaf(door);
    }
    return door->leaves > 1 || door->beside != NULL ? "parts of one leaf" : NULL;
}

/* How many lines the parts of a leaf take. */
static size_t leaf_lines(const struct door *door) {
    const size_t head = door->part_count > 0 && parts_head(door) != NULL ? 1 : 0;
    return (door->part_count > 0 ? door->part_count : 1) + head;
}

/* Draws the parts of a leaf from y down; returns where they end. */
static double draw_leaf_parts(struct drawings *w, const struct door *door, double x, double y,
                              double width, double size) {
    const struct text_style plain = {.size = size, .width = width, .cut = true};
    const struct text_style bold = {.size = size, .bold = true, .width = width, .cut = true};
    const char *const head = door->part_count > 0 ? parts_head(door) : NULL;
    const double line = size * LINE;
    if (head != NULL) {
        tag_text(w->pdf.cr, "H3", x, y, head, &bold);
        y += line;
    }
    if (door->bought_in) {
        tag_text(w->pdf.cr, "P", x, y, "bought in as it is", &plain);
    }
    for (size_t i = 0; i < door->part_count; i++) {
        tag_text(w->pdf.cr, "P", x, y, text_or_empty(part_words(w, &door->parts[i])), &plain);
        y += line;
    }
    return y;
}

/* Whether the leaf that a door is hinged to has parts of its own to tell. */
static bool tells_both(const struct door *door) {
    return door->beside != NULL && !door->bought_in && !door_is_twin(door->beside);
}

static double all_lines(const struct door *door) {
    return (double)(leaf_lines(door) + (tells_both(door) ? leaf_lines(door->beside) : 0));
}

/* The parts of all that is drawn, in an area that they stand at the foot of; smaller where they are
 * many. */
static void draw_parts(struct drawings *w, const struct door *door, struct area area) {
    const double lines = all_lines(door);
    const double most = area.height / (lines * LINE);
    const double size = most > TEXT ? TEXT : (most < SMALLEST ? SMALLEST : most);
    double y = area.y + area.height - lines * size * LINE;
    y = draw_leaf_parts(w, door, area.x, y, area.width, size);
    if (tells_both(door)) {
        (void)draw_leaf_parts(w, door->beside, area.x, y, area.width, size);
    }
}

/* Makes what a cell shows. false: out of memory. */
static bool make_cell(struct drawings *w, size_t row, struct cell *c) {
    const struct leaf_figures *const leaf = &w->e->quantities.leaves[row];
    const struct tape *const tape = &w->e->tape;
    const bool folds = leaf->door->beside != NULL;
    *c = (struct cell){
        .leaf = leaf,
        .fold_hinges = folds ? (int32_t)tape_scaled(tape, leaf[1].hinges, 0) : 0,
        .pulls = (int32_t)(tape_scaled(tape, leaf->pulls, 0) +
                           (folds ? tape_scaled(tape, leaf[1].pulls, 0) : 0)),
    };
    return door_elevation_make(&c->elevation, &w->pool, leaf->door, hung_on_of(w->e, leaf),
                               w->e->job->unit);
}

/* How high a cell is: a third of a page, more where its words ask for it. */
static double cell_height(struct drawings *w, const struct cell *c) {
    const double high = w->pdf.height - 2 * MARGIN - HEAD - FOOT;
    const double usual = (high - GAP * (EACH_PAGE - 1)) / EACH_PAGE;
    const double width = (w->pdf.width - 2 * MARGIN) * WORDS - INSET;
    const double words = put_head(w, c, 0, 0, width, false) +
                         all_lines(c->elevation.door) * SMALLEST * LINE + 2 * INSET;
    return words > high ? high : (words > usual ? words : usual);
}

static void draw_cell(struct drawings *w, const struct cell *c, struct area area) {
    cairo_t *const cr = w->pdf.cr;
    cairo_save(cr);
    cairo_set_line_width(cr, 0.5);
    cairo_set_source_rgb(cr, 0.55, 0.55, 0.55);
    cairo_rectangle(cr, area.x, area.y, area.width, area.height);
    cairo_stroke(cr);
    cairo_restore(cr);
    const double width = area.width * WORDS - INSET;
    struct area words = {area.x + INSET, area.y + INSET, width, area.height - 2 * INSET};
    const struct area room = {.x = words.x + width + INSET,
                              .y = words.y,
                              .width = area.width - width - 3 * INSET,
                              .height = words.height};
    const double head = put_head(w, c, words.x, words.y, width, true);
    words.y += head;
    words.height -= head;
    draw_parts(w, c->elevation.door, words);
    tag_begin(cr, "Figure");
    draw_elevation(cr, &c->elevation.drawing, room, DETAIL_WALL);
    tag_end(cr, "Figure");
}

/* --- pages --- */

static void draw_margins(struct drawings *w, size_t page) {
    const struct job *const job = w->e->job;
    const double width = w->pdf.width - 2 * MARGIN;
    const struct text_style title = {.size = 12, .bold = true, .width = width * 0.72, .cut = true};
    const struct text_style right = {.size = 10, .width = width * 0.27, .align = ALIGN_RIGHT};
    const struct text_style foot = {.size = 7.5, .gray = 0.3, .width = width * 0.88, .cut = true};
    const struct text_style number = {
        .size = 7.5, .gray = 0.3, .width = width, .align = ALIGN_RIGHT};
    const double low = w->pdf.height - MARGIN - 9;
    if (page == 0) {
        tag_text(w->pdf.cr, "H1", MARGIN, MARGIN, text_or_empty(job->title.s), &title);
    } else { /* said again on the pages that follow: no piece of its own */
        text_draw(w->pdf.cr, MARGIN, MARGIN, text_or_empty(job->title.s), &title);
    }
    text_draw(w->pdf.cr, MARGIN + width * 0.73, MARGIN + 3,
              pool_words(&w->pool, "%s%s%s", text_or_empty(job->number.s),
                         job->number.s == NULL ? "" : ", ", job->date.s),
              &right);
    text_draw(w->pdf.cr, MARGIN, low,
              pool_words(&w->pool,
                         "Finished sizes in %s, seen from the front. Hinge marks %s; dashed lines "
                         "meet at the hinged edge.",
                         job->unit == LENGTH_MM ? "mm" : "inches",
                         w->places ? "stand in place, cups (dashed) behind"
                                   : "show side and number, not their place"),
              &foot);
    text_draw(w->pdf.cr, MARGIN, low, pool_words(&w->pool, "page %zu of %zu", page + 1, w->pages),
              &number);
}

/* From a leaf on, the next one that has a drawing of its own; their count: none. */
static size_t next_drawn(const struct estimate *e, size_t from) {
    const struct quantities *const q = &e->quantities;
    while (from < q->count && door_drawn(q->leaves[from].door) != q->leaves[from].door) {
        from++;
    }
    return from;
}

/* Puts all cells on pages; *pages: how many. draw: else they are only counted. */
static bool put_pages(struct drawings *w, const struct stop *stop, bool draw, size_t *pages) {
    const double bottom = w->pdf.height - MARGIN - FOOT;
    const double top = MARGIN + HEAD;
    bool held = true;
    double y = bottom;
    *pages = 0;
    for (size_t at = next_drawn(w->e, 0); held && at < w->e->quantities.count;
         at = next_drawn(w->e, at + 1)) {
        struct cell cell;
        pool_init(&w->pool);
        held = !stop_asked(stop) && make_cell(w, at, &cell);
        const double high = held ? cell_height(w, &cell) : 0;
        if (y + high > bottom + 0.01) {
            if (draw && *pages > 0) {
                pdf_page(&w->pdf);
            }
            if (draw) {
                draw_margins(w, *pages);
            }
            (*pages)++;
            y = top;
        }
        if (held && draw) {
            draw_cell(w, &cell, (struct area){MARGIN, y, w->pdf.width - 2 * MARGIN, high});
        }
        y += high + GAP;
        held = held && !pool_failed(&w->pool);
        pool_clear(&w->pool);
    }
    if (draw && *pages > 0) {
        pdf_page(&w->pdf);
    }
    return held;
}

bool door_drawings_write(const struct estimate *e, const char *path, const struct stop *stop,
                         struct pool *pool, const char **lacking) {
    struct drawings w = {.e = e, .places = true};
    const struct pdf_facts facts = {
        .title = e->job->title.s,
        .subject = "door elevations",
        .author = e->rates->shop.name.s,
        .year = e->job->year,
        .month = e->job->month,
        .day = e->job->day,
        .letter = show_on_letter(e),
    };
    for (size_t i = 0; i < e->quantities.count; i++) {
        const struct leaf_figures *const leaf = &e->quantities.leaves[i];
        w.places = w.places && (leaf->hinge_at != NULL || fig_none(leaf->hinges));
    }
    const bool done = pdf_open(&w.pdf, path, &facts) && put_pages(&w, stop, false, &w.pages) &&
                      put_pages(&w, stop, true, &w.pages_done);
    return pdf_close(&w.pdf, pool, lacking) && done;
}
