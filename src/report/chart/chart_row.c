/* SPDX-License-Identifier: MIT */
/* Within a day what is done stands one below the other, as it begins: its name, and below that a
 * bar from when to when. A name begins with its bar, or as far to the left as it needs, so short
 * bars have names as well; what fits behind the end of all that stands on a line stays on that
 * line. */
#include "report/chart/chart_parts.h"

#include "report/draw/tag.h"
#include "report/words/day_words.h"
#include "together/joined_job.h"

#include <string.h>

#define PAD   2.0  /* within a day, left and right */
#define GAP   3.0  /* between lines, as the flow spreads them */
#define APART 3.0  /* between what stands on one line */
#define BAR   2.2  /* height of a bar */
#define BELOW 3.2  /* what a bar takes below its name */
#define LEAST 1.0  /* width of a bar */
#define WORK  0.35 /* gray of a bar */
#define DAYS  7    /* of a week */
#define WHOLE 0.5  /* of a page: a row up to that is not parted */

/* A bar with its name. */
struct item {
    const struct day_entry *entry;
    const char *words;
    size_t line;        /* of its day */
    double x, height;   /* of its name */
    double left, right; /* of bar and name */
    struct text_style style;
};

/* The bars of a row in a week. */
struct layout {
    struct item *items;
    /* Of each day: those that are not drawn yet. */
    struct {
        size_t next, end;
    } days[DAYS];
};

/* --- laying out --- */

static double minute_x(const struct chart *c, const struct day_entry *entry, int32_t minute) {
    return chart_day_x(c, entry->day) + PAD +
           minute * (c->day - 2 * PAD) / (double)c->plan->day_minutes;
}

static const struct day_stretch *last_span(const struct chart *c, const struct day_entry *entry) {
    return &c->rows->spans[entry->first_span + entry->span_count - 1];
}

static double gap(const struct chart *c) {
    return GAP * c->flow.spread;
}

/* How long the name of the finish is before the coat; 0: it is of no coat, or there is one finish.
 */
static size_t finish_length(const struct day_entry *entry) {
    const size_t before = entry->coat == NULL ? 0 : (size_t)(entry->coat - entry->what);
    return before == 0 ? 0 : before - strlen(DAY_BEFORE_COAT);
}

const char *chart_only_finish(const struct day_rows *rows, struct pool *pool) {
    const char *only = "";
    for (size_t i = 0; i < rows->entry_count; i++) {
        const struct day_entry *const entry = &rows->entries[i];
        const size_t size = finish_length(entry);
        const bool same = strlen(only) == size && strncmp(only, entry->what, size) == 0;
        if (size > 0 && only[0] != '\0' && !same) {
            return "";
        }
        only = size > 0 && !same ? pool_words(pool, "%.*s", (int)size, entry->what) : only;
    }
    return only;
}

/* `topcoat, coat 3 of 4` of the only finish, whose name stands in the head. */
static const char *short_what(const struct chart *c, const struct day_entry *entry) {
    if (c->finish[0] == '\0') {
        return entry->what;
    }
    return entry->coat != NULL                   ? entry->coat
           : strcmp(entry->what, c->finish) == 0 ? ""
                                                 : entry->what;
}

/* `A  spray: topcoat, coat 3 of 4, 1.2 h`; `joint, 15 min`. */
static const char *words_of(struct chart *c, const struct day_entry *entry) {
    const bool several = c->plan->job_count > 1;
    struct day_entry shorter = *entry;
    shorter.what = short_what(c, entry);
    const char *const words = day_entry_words(c->rates, c->rows, &shorter, &c->pool);
    const char *const time =
        entry->minutes < 60 ? pool_words(&c->pool, "%lld\u00a0min", (long long)entry->minutes)
                            : pool_words(&c->pool, "%s\u00a0h", show_hours(entry->minutes).text);
    return pool_words(&c->pool, "%s%s%s, %s", several ? joined_letter(entry->job) : "",
                      several ? "  " : "", words, time);
}

static struct item item_of(struct chart *c, const struct day_entry *entry) {
    const double left = chart_day_x(c, entry->day) + PAD;
    const double room = c->day - 2 * PAD;
    struct item item = {.entry = entry,
                        .words = words_of(c, entry),
                        .left = minute_x(c, entry, c->rows->spans[entry->first_span].from),
                        .right = minute_x(c, entry, last_span(c, entry)->to),
                        .style = {.size = CHART_TEXT}};
    struct text_box box = text_measure(c->flow.pdf->cr, item.words, &item.style);
    if (box.width > room - 2) { /* a little smaller on one line, else on several */
        item.style.size = CHART_SMALL;
        box = text_measure(c->flow.pdf->cr, item.words, &item.style);
    }
    if (box.width > room - 2) {
        item.style.size = CHART_TEXT;
        item.style.width = room - 2;
        box = text_measure(c->flow.pdf->cr, item.words, &item.style);
        box.width = room - 2;
    }
    item.x = item.left + 1;
    if (item.x + box.width > left + room - 1) {
        item.x = left + room - 1 - box.width;
    }
    item.left = item.x - 1 < item.left ? item.x - 1 : item.left;
    item.right = item.x + box.width > item.right ? item.x + box.width : item.right;
    item.height = box.height;
    return item;
}

static bool in_week(const struct chart *c, const struct day_entry *entry) {
    return entry->day >= c->first_day && entry->day < c->first_day + c->day_count;
}

/* false: out of memory. */
static bool lay_out(struct layout *layout, struct chart *c, const struct day_row *row) {
    size_t count = 0;
    *layout =
        (struct layout){.items = pool_take(&c->pool, row->entry_count, sizeof *layout->items)};
    for (size_t i = 0; i < row->entry_count && layout->items != NULL; i++) {
        const struct day_entry *const entry = &c->rows->entries[row->first_entry + i];
        if (!in_week(c, entry)) {
            continue;
        }
        const size_t day = entry->day - c->first_day;
        struct item item = item_of(c, entry);
        if (layout->days[day].end == 0) {
            layout->days[day].next = count;
        } else {
            const struct item *const before = &layout->items[count - 1];
            item.line = before->right + APART <= item.left ? before->line : before->line + 1;
        }
        layout->items[count++] = item;
        layout->days[day].end = count;
    }
    return layout->items != NULL;
}

/* --- drawing --- */

static void draw_bars(const struct chart *c, const struct item *item, double y) {
    cairo_t *const cr = c->flow.pdf->cr;
    cairo_save(cr);
    cairo_set_line_width(cr, 0.5);
    for (size_t s = 0; s < item->entry->span_count; s++) {
        const struct day_stretch *const span = &c->rows->spans[item->entry->first_span + s];
        const double from = minute_x(c, item->entry, span->from);
        const double width = minute_x(c, item->entry, span->to) - from;
        cairo_rectangle(cr, from, y, width < LEAST ? LEAST : width, BAR);
    }
    if (item->entry->waits) {
        cairo_stroke(cr);
    } else {
        cairo_set_source_rgb(cr, WORK, WORK, WORK);
        cairo_fill(cr);
    }
    cairo_restore(cr);
}

/* How many of the items in [next, end) stand on one line, and how high that is with its bars. */
static size_t line_of(const struct layout *layout, size_t next, size_t end, double *height) {
    size_t count = 0;
    *height = 0;
    while (next + count < end && layout->items[next + count].line == layout->items[next].line) {
        const double of = layout->items[next + count].height + BELOW;
        *height = of > *height ? of : *height;
        count++;
    }
    return count;
}

/* What the next lines of all days need. */
static double next_height(const struct layout *layout) {
    double most = 0;
    for (size_t d = 0; d < DAYS; d++) {
        double height = 0;
        (void)line_of(layout, layout->days[d].next, layout->days[d].end, &height);
        most = height > most ? height : most;
    }
    return most;
}

/* What all lines of the row need. */
static double all_height(const struct chart *c, const struct layout *layout) {
    double most = 0;
    for (size_t d = 0; d < DAYS; d++) {
        double high = 0;
        for (size_t i = layout->days[d].next; i < layout->days[d].end;) {
            double height = 0;
            i += line_of(layout, i, layout->days[d].end, &height);
            high += height + gap(c);
        }
        most = high > most ? high : most;
    }
    return most;
}

/* Draws of a day what the page has room for, the first line in any case; where that ends. */
static double draw_day(const struct chart *c, struct layout *layout, size_t day) {
    double y = c->flow.y;
    while (layout->days[day].next < layout->days[day].end) {
        double height = 0;
        const size_t first = layout->days[day].next;
        const size_t count = line_of(layout, first, layout->days[day].end, &height);
        if (y > c->flow.y && y + height + gap(c) > c->flow.bottom) {
            break;
        }
        for (size_t i = first; i < first + count; i++) {
            const struct item *const item = &layout->items[i];
            draw_bars(c, item, y + height - BAR);
            tag_text(c->flow.pdf->cr, "TD", item->x, y + height - BELOW - item->height, item->words,
                     &item->style);
        }
        layout->days[day].next = first + count;
        y += height + gap(c);
    }
    return y;
}

static bool is_drawn(const struct layout *layout) {
    for (size_t d = 0; d < DAYS; d++) {
        if (layout->days[d].next < layout->days[d].end) {
            return false;
        }
    }
    return true;
}

/* The edges of the days beside what was drawn from a height on, and the line below it. */
static void close_row(struct chart *c, double from) {
    struct flow *const f = &c->flow;
    cairo_t *const cr = f->pdf->cr;
    cairo_save(cr);
    cairo_set_line_width(cr, 0.3);
    cairo_set_source_rgb(cr, 0.6, 0.6, 0.6);
    for (size_t d = 0; d <= c->day_count; d++) {
        const double x = chart_day_x(c, c->first_day + d);
        cairo_move_to(cr, x, from);
        cairo_line_to(cr, x, f->y);
    }
    cairo_move_to(cr, f->x, f->y);
    cairo_line_to(cr, chart_day_x(c, c->first_day + c->day_count), f->y);
    cairo_stroke(cr);
    cairo_restore(cr);
}

bool chart_row_shows(const struct chart *c, const struct day_row *row) {
    for (size_t i = 0; i < row->entry_count; i++) {
        if (in_week(c, &c->rows->entries[row->first_entry + i])) {
            return true;
        }
    }
    return false;
}

void chart_row(struct chart *c, const struct day_row *row) {
    struct flow *const f = &c->flow;
    const struct text_style style = {.size = CHART_TEXT, .bold = true, .width = c->names - 4};
    const char *name = day_row_name(c->rates, row, &c->pool);
    struct layout layout;
    if (!lay_out(&layout, c, row)) {
        return; /* the pool tells */
    }
    const double all = all_height(c, &layout);
    const bool whole = all < (f->bottom - f->top) * WHOLE;
    while (!is_drawn(&layout)) {
        const double named = text_measure(f->pdf->cr, name, &style).height;
        const double first = whole ? all : next_height(&layout);
        if (flow_need(f, gap(c) + (first > named ? first : named) + gap(c))) {
            chart_heads(c);
        }
        const double top = f->y;
        f->y += gap(c);
        tag_begin(f->pdf->cr, "TR");
        double below = f->y + tag_text(f->pdf->cr, "TH", f->x, f->y, name, &style);
        for (size_t d = 0; d < c->day_count; d++) {
            const double ends = draw_day(c, &layout, d);
            below = ends > below ? ends : below;
        }
        tag_end(f->pdf->cr, "TR");
        f->y = below;
        close_row(c, top);
        name = pool_words(&c->pool, "%s, continued", day_row_name(c->rates, row, &c->pool));
        f->y = is_drawn(&layout) ? f->y : f->bottom; /* the rest begins a page */
    }
}
