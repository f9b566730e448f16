/* SPDX-License-Identifier: MIT */
/* Lists of lines in columns, or in rows.  Lines run down the first column, then the next; a heading
 * goes to the next column with the line that follows it.  In rows each heading begins one, and what
 * it heads follows it along the row. */
#include "base/text.h"
#include "report/draw/tag.h"
#include "report/plan/plan_draw.h"

#define GAP        14.0 /* between columns */
#define LEAD_GAP   5.0
#define NUMBER_GAP 3.0
#define BOX        6.0
#define BOX_ROOM   10.0
#define HEAD_ABOVE 3.0
#define LINE_HIGH  (LINE_SIZE * 1.2)

static const struct text_style plain = {.size = LINE_SIZE};
static const struct text_style bold = {.size = LINE_SIZE, .bold = true};

void plan_box(cairo_t *cr, double x, double y) {
    cairo_save(cr);
    cairo_set_source_rgb(cr, 0, 0, 0);
    cairo_set_line_width(cr, 0.7);
    cairo_rectangle(cr, x + 0.5, y + 1.5, BOX, BOX);
    cairo_stroke(cr);
    cairo_restore(cr);
}

static bool has_lead(const struct plan_line *line) {
    return line->lead != NULL && line->lead[0] != '\0';
}

/* How far the text of a line stands in from the edge of its column. */
static double indent(const struct plan_line *line, double lead) {
    return (line->box ? BOX_ROOM : 0) + (has_lead(line) ? lead + LEAD_GAP : 0);
}

static double line_height(cairo_t *cr, const struct plan_line *line, double width, double lead) {
    struct text_style style = line->heading ? bold : plain;
    const char *const text = text_or_empty(line->text);
    const double room = width - indent(line, lead);
    double height = LINE_HIGH;
    if (text_measure(cr, text, &style).width > room) {
        style.width = room > LINE_SIZE ? room : LINE_SIZE;
        height = text_measure(cr, text, &style).height;
        height = height < LINE_HIGH ? LINE_HIGH : height;
    }
    return height;
}

/* What a heading keeps free above it, where it does not begin its column. */
static double above(const struct plan_line *line, double y) {
    return line->heading && y > 0 ? HEAD_ABOVE : 0;
}

/* Whether line i, `high` with what it has to keep by it, begins a new column below y. A line stays
 * with its heading. */
static bool breaks(const struct plan_columns *c, size_t i, double y, double high, double height) {
    return y > 0 && y + high > height + 0.01 && !c->lines[i - 1].heading;
}

/* Fills columns of a height; returns the first line that has no room. *high: the highest column. */
static size_t fill(const double *heights, const struct plan_columns *c, double height,
                   double *high) {
    size_t column = 0;
    double y = 0;
    *high = 0;
    for (size_t i = c->from; i < c->to; i++) {
        const bool heads = c->lines[i].heading && i + 1 < c->to;
        const double need =
            above(&c->lines[i], y) + heights[i - c->from] + (heads ? heights[i + 1 - c->from] : 0);
        if (breaks(c, i, y, need, height)) {
            if (++column == c->columns) {
                return i;
            }
            y = 0;
        }
        y += above(&c->lines[i], y) + heights[i - c->from];
        *high = y > *high ? y : *high;
    }
    return c->to;
}

/* The lowest height at which all lines stand in so many columns; more than `most`: they do not. */
static double lowest(const double *heights, const struct plan_columns *c, double most) {
    double high = 0;
    double total = 0;
    for (size_t i = c->from; i < c->to; i++) {
        total += heights[i - c->from];
    }
    double height = total / (double)c->columns;
    while (height <= most && fill(heights, c, height, &high) < c->to) {
        height += LINE_HIGH / 2;
    }
    return height <= most ? high : height;
}

static double widest_lead(cairo_t *cr, const struct plan_line *lines, size_t from, size_t count) {
    double wide = 0;
    for (size_t i = from; i < count; i++) {
        if (has_lead(&lines[i])) {
            const double w = text_measure(cr, lines[i].lead, &bold).width;
            wide = w > wide ? w : wide;
        }
    }
    return wide;
}

struct plan_columns plan_columns_make(cairo_t *cr, struct pool *pool, const struct plan_line *lines,
                                      size_t from, size_t count, size_t most, double width,
                                      double height) {
    struct plan_columns best = {.lines = lines, .from = from, .to = from};
    /* more have no room; a long list is not measured to its end for each page */
    const double room = (height / LINE_HIGH + 2) * (double)most;
    count = (double)(count - from) > room ? from + (size_t)room : count;
    double *const heights = pool_take(pool, count - from + 1, sizeof *heights);
    const double lead = widest_lead(cr, lines, from, count);
    double best_high = 0;
    for (size_t n = 1; heights != NULL && n <= most; n++) {
        struct plan_columns c = {
            .lines = lines, .from = from, .to = count, .columns = n, .lead = lead};
        c.width = (width + GAP) / (double)n - GAP;
        for (size_t i = from; i < count; i++) {
            heights[i - from] = line_height(cr, &lines[i], c.width, lead);
        }
        const double high = lowest(heights, &c, height);
        if (high > height) {
            c.to = fill(heights, &c, height, &c.height);
        } else {
            c.height = high;
        }
        const bool more = c.to > best.to;
        if (n == 1 || more || (c.to == best.to && c.height < best_high * 0.93)) {
            best = c;
            best_high = c.height;
        }
    }
    return best;
}

static void draw_line(cairo_t *cr, const struct plan_line *line, double x, double y, double width,
                      double lead) {
    struct text_style style = line->heading ? bold : plain;
    const char *const text = text_or_empty(line->text);
    const double in = indent(line, lead);
    if (line->box) {
        plan_box(cr, x, y);
    }
    tag_begin(cr, line->heading ? "H3" : "P");
    if (has_lead(line)) {
        text_draw(cr, x + (line->box ? BOX_ROOM : 0), y, line->lead, &bold);
    }
    if (text_measure(cr, text, &style).width > width - in) {
        style.width = width - in > LINE_SIZE ? width - in : LINE_SIZE;
    }
    text_draw(cr, x + in, y, text, &style);
    tag_end(cr, line->heading ? "H3" : "P");
}

/* --- rows --- */

/* Where lines stand in rows: where the next goes, and the height of the row that it is in. */
struct row_at {
    double x, y, high;
};

static double text_room(const struct plan_columns *c) {
    return c->width - c->lead - LEAD_GAP;
}

/* Puts a line behind the one before it where it has room, else below; draws it where asked to, its
 * rows from x, y on. */
static void put_in_row(cairo_t *cr, const struct plan_columns *c, const struct plan_line *line,
                       struct row_at *at, const struct row_at *from) {
    const char *const text = text_or_empty(line->text);
    const double in = c->lead + LEAD_GAP;
    if (line->heading) {
        *at = (struct row_at){.x = in, .y = at->y + at->high, .high = LINE_HIGH};
        if (from != NULL) {
            tag_text(cr, "H3", from->x, from->y + at->y, text, &bold);
        }
        return;
    }
    const double number =
        has_lead(line) ? text_measure(cr, line->lead, &bold).width + NUMBER_GAP : 0;
    const double wide = number + text_measure(cr, text, &plain).width;
    struct text_style style = plain;
    if (at->x > in && at->x + wide > c->width) {
        at->y += at->high;
        at->x = in;
        at->high = LINE_HIGH;
    }
    if (wide > text_room(c)) {
        style.width = text_room(c) - number;
        at->high = text_measure(cr, text, &style).height;
    }
    if (from != NULL) {
        tag_begin(cr, "P");
        if (has_lead(line)) {
            text_draw(cr, from->x + at->x, from->y + at->y, line->lead, &bold);
        }
        text_draw(cr, from->x + at->x + number, from->y + at->y, text, &style);
        tag_end(cr, "P");
    }
    at->x += wide + GAP;
}

struct plan_columns plan_rows_make(cairo_t *cr, const struct plan_line *lines, size_t from,
                                   size_t count, double width, double height) {
    struct plan_columns c = {
        .lines = lines, .from = from, .to = from, .width = width, .rows = true};
    struct row_at at = {0};
    for (size_t i = 0; i < count; i++) {
        if (lines[i].heading) {
            const double w = text_measure(cr, lines[i].text, &bold).width;
            c.lead = w > c.lead ? w : c.lead;
        }
    }
    at.x = c.lead + LEAD_GAP;
    for (size_t i = from; i < count; i++) {
        put_in_row(cr, &c, &lines[i], &at, NULL);
        if (at.y + at.high > height && c.to > from) {
            break;
        }
        c.to = i + 1;
        c.height = at.y + at.high;
    }
    return c;
}

static void draw_rows(cairo_t *cr, const struct plan_columns *c, double x, double y) {
    const struct row_at from = {.x = x, .y = y};
    struct row_at at = {.x = c->lead + LEAD_GAP};
    for (size_t i = c->from; i < c->to; i++) {
        put_in_row(cr, c, &c->lines[i], &at, &from);
    }
}

void plan_columns_draw(cairo_t *cr, const struct plan_columns *c, double x, double y) {
    size_t column = 0;
    double down = 0;
    if (c->rows) {
        draw_rows(cr, c, x, y);
        return;
    }
    for (size_t i = c->from; i < c->to; i++) {
        const double high = line_height(cr, &c->lines[i], c->width, c->lead);
        const bool heads = c->lines[i].heading && i + 1 < c->to;
        const double need = above(&c->lines[i], down) + high +
                            (heads ? line_height(cr, &c->lines[i + 1], c->width, c->lead) : 0);
        if (column + 1 < c->columns && breaks(c, i, down, need, c->height)) {
            column++;
            down = 0;
        }
        down += above(&c->lines[i], down);
        draw_line(cr, &c->lines[i], x + (double)column * (c->width + GAP), y + down, c->width,
                  c->lead);
        down += high;
    }
}
