/* SPDX-License-Identifier: MIT */
/* The numbers of cuts and the labels of parts.  Numbers are placed first; a label then takes the
 * part of its patch that they leave free, and shows as much as fits there: name and size, number
 * and size, the number. */
#include "base/array.h"
#include "report/plan/plan_draw.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#define MARK_HIGH 9.4
#define MARK_ROOM 3.6 /* of its ring beside the number */
#define RING      0.6 /* how thick it is */
#define BESIDE    1.2 /* a label keeps so far from lines */
#define APART     2.4 /* and from rings */
#define STEP      3.0

static const double sizes[] = {8.5, 7.75, SMALLEST};

/* --- the numbers of cuts --- */

static double mark_width(const struct sketch *s, const char *number) {
    const struct text_style style = {.size = SMALLEST, .bold = true};
    const double width = text_measure(s->cr, number, &style).width + MARK_ROOM;
    return width < MARK_HIGH ? MARK_HIGH : width;
}

/* How wide such a number is. */
static double sketch_mark_width(const struct sketch *s, size_t number) {
    char text[24];
    (void)snprintf(text, sizeof text, "%zu", number);
    return mark_width(s, text);
}

static bool meet(struct patch a, struct patch b) {
    return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height &&
           b.y < a.y + a.height;
}

static bool is_clear(const struct sketch *s, struct patch p) {
    for (size_t i = 0; i < s->mark_count; i++) {
        if (meet(p, s->marks[i])) {
            return false;
        }
    }
    return true;
}

static struct patch mark_patch(double x, double y, double width) {
    return (struct patch){x - width / 2, y - MARK_HIGH / 2, width, MARK_HIGH};
}

void sketch_mark(struct sketch *s, double x, double y, size_t number) {
    char text[24];
    (void)snprintf(text, sizeof text, "%zu", number);
    const struct text_style style = {.size = SMALLEST, .bold = true, .align = ALIGN_CENTER};
    const struct patch p = mark_patch(x, y, mark_width(s, text));
    const double r = MARK_HIGH / 2;
    cairo_t *const cr = s->cr;
    cairo_save(cr);
    /* black, and white within: half the work of a line around */
    for (int white = 0; white < 2; white++) {
        const double radius = r + (white == 0 ? RING / 2 : -RING / 2);
        cairo_new_path(cr);
        cairo_arc(cr, p.x + r, y, radius, M_PI_2, 3 * M_PI_2);
        cairo_arc(cr, p.x + p.width - r, y, radius, -M_PI_2, M_PI_2);
        cairo_set_source_rgb(cr, white, white, white);
        cairo_fill(cr);
    }
    text_draw(cr, x, y - text_measure(cr, text, &style).height / 2, text, &style);
    cairo_restore(cr);
    if (s->mark_count < s->mark_room) {
        s->marks[s->mark_count++] = p;
    }
}

void sketch_mark_on(struct sketch *s, double x, double y, double run, bool upright, size_t number) {
    const double width = sketch_mark_width(s, number);
    const double half = (upright ? MARK_HIGH : width) / 2;
    const double first = run < 2 * half + 4 ? run / 2 : half + 2;
    double at = first;
    const size_t tries = run > first + half ? (size_t)((run - first - half) / STEP) + 1 : 0;
    for (size_t i = 0; i < tries; i++) {
        const double far = first + (double)i * STEP;
        const struct patch p =
            upright ? mark_patch(x, y + far, width) : mark_patch(x + far, y, width);
        if (is_clear(s, p)) {
            at = far;
            break;
        }
    }
    sketch_mark(s, upright ? x : x + at, upright ? y + at : y, number);
}

/* --- labels --- */

struct label {
    const char *top, *low; /* low: may be empty */
    bool broken;           /* the upper one may take several lines */
};

/* Where a label may stand, largest first. */
struct places {
    struct patch at[16];
    size_t count;
};

static void add_place(struct places *list, struct patch p) {
    size_t i = list->count++;
    for (; i > 0 && list->at[i - 1].width * list->at[i - 1].height < p.width * p.height - 0.01;
         i--) {
        list->at[i] = list->at[i - 1];
    }
    list->at[i] = p;
}

/* The patch itself, and without those of its edges on which numbers stand. */
static struct places find_places(const struct sketch *s, struct patch p) {
    struct patch near[4] = {{0}}; /* what numbers take of the left, right, upper, lower edge */
    double take[4] = {BESIDE, BESIDE, BESIDE, BESIDE};
    for (size_t i = 0; i < s->mark_count; i++) {
        const struct patch m = s->marks[i];
        if (!meet(p, m)) {
            continue;
        }
        const double from[4] = {m.x + m.width - p.x, p.x + p.width - m.x, m.y + m.height - p.y,
                                p.y + p.height - m.y};
        const double most[4] = {p.width / 2, p.width / 2, p.height / 2, p.height / 2};
        for (size_t e = 0; e < 4; e++) {
            if (from[e] <= most[e] && from[e] + APART > take[e]) {
                take[e] = from[e] + APART;
                near[e] = m;
            }
        }
    }
    struct places list = {.count = 0};
    for (size_t mix = 0; mix < 16; mix++) {
        double in[4];
        bool useless = false;
        for (size_t e = 0; e < 4; e++) {
            in[e] = (mix >> e & 1) != 0 ? take[e] : BESIDE;
            useless = useless || ((mix >> e & 1) != 0 && near[e].width <= 0);
        }
        const struct patch place = {p.x + in[0], p.y + in[2], p.width - in[0] - in[1],
                                    p.height - in[2] - in[3]};
        if (!useless && place.width > 0 && place.height > 0 && is_clear(s, place)) {
            add_place(&list, place);
        }
    }
    return list;
}

/* Whether a label of a size has room in width x height; *box: the room of its upper text. */
static bool fits(const struct sketch *s, const struct label *l, double size, double width,
                 double height, struct text_box *box, bool *broken) {
    struct text_style bold = {.size = size, .bold = true};
    const struct text_style plain = {.size = size};
    const struct text_box low =
        l->low[0] == '\0' ? (struct text_box){0, 0} : text_measure(s->cr, l->low, &plain);
    *box = text_measure(s->cr, l->top, &bold);
    *broken = l->broken && box->width > width && width > 6 * size;
    if (*broken) {
        bold.width = width;
        *box = text_measure(s->cr, l->top, &bold);
    }
    return box->width <= width && low.width <= width && box->height + low.height <= height;
}

static void write(const struct sketch *s, const struct label *l, double size, struct patch p,
                  bool turned, struct text_box box, bool broken) {
    struct text_style bold = {.size = size, .bold = true, .align = ALIGN_CENTER};
    const struct text_style plain = {.size = size, .align = ALIGN_CENTER};
    const double low = l->low[0] == '\0' ? 0 : text_measure(s->cr, l->low, &plain).height;
    const double width = turned ? p.height : p.width;
    bold.width = broken ? width : 0;
    cairo_save(s->cr);
    cairo_translate(s->cr, p.x + p.width / 2, p.y + p.height / 2);
    if (turned) {
        cairo_rotate(s->cr, -M_PI_2);
    }
    text_draw(s->cr, broken ? -width / 2 : 0, -(box.height + low) / 2, l->top, &bold);
    if (l->low[0] != '\0') {
        text_draw(s->cr, 0, (box.height - low) / 2, l->low, &plain);
    }
    cairo_restore(s->cr);
}

/* Writes one label where it fits, flat before turned, as large as it can be; false: nowhere. */
static bool put_label(const struct sketch *s, const struct label *l, const struct places *places) {
    for (int turned = 0; turned < 2; turned++) {
        for (size_t z = l->broken ? 1 : 0; z < COUNT_OF(sizes); z++) {
            for (size_t i = 0; i < places->count; i++) {
                const struct patch p = places->at[i];
                struct text_box box;
                bool broken = false;
                if (fits(s, l, sizes[z], turned != 0 ? p.height : p.width,
                         turned != 0 ? p.width : p.height, &box, &broken)) {
                    write(s, l, sizes[z], p, turned != 0, box, broken);
                    return true;
                }
            }
        }
    }
    return false;
}

static bool put_first(const struct sketch *s, struct patch p, const struct label *labels,
                      size_t count) {
    const struct places places = find_places(s, p);
    for (size_t i = 0; i < count; i++) {
        if (put_label(s, &labels[i], &places)) {
            return true;
        }
    }
    return false;
}

/* The last that can be done: the number alone, wherever it has room beside the numbers of cuts. */
static bool put_anywhere(const struct sketch *s, struct patch p, const char *number) {
    const struct text_style style = {.size = SMALLEST, .bold = true};
    const struct text_box box = text_measure(s->cr, number, &style);
    const struct label label = {number, "", false};
    for (int turned = 0; turned < 2; turned++) {
        struct patch at = {.width = turned != 0 ? box.height : box.width,
                           .height = turned != 0 ? box.width : box.height};
        const double room = p.width - at.width;
        const double room_up = p.height - at.height;
        const size_t columns = room > 0 ? (size_t)room + 1 : 0;
        const size_t rows = room_up > 0 ? (size_t)room_up + 1 : 0;
        for (size_t i = 0; i < rows * columns; i++) {
            const size_t row = i / columns;
            at.x = p.x + (double)(i % columns);
            at.y = p.y + (double)row;
            if (is_clear(s, at)) {
                write(s, &label, SMALLEST, at, turned != 0, box, false);
                return true;
            }
        }
    }
    return false;
}

void sketch_part(struct sketch *s, struct patch p, size_t number, const char *name,
                 const char *size) {
    const char *const alone = pool_words(s->pool, "#%zu", number);
    const char *const named = pool_words(s->pool, "#%zu %s", number, name);
    const struct label labels[] = {
        {named, size, false},
        {named, size, true},
        {pool_words(s->pool, "#%zu %s  %s", number, name, size), "", false},
        {named, "", false},
        {alone, size, false},
        {pool_words(s->pool, "#%zu  %s", number, size), "", false},
        {alone, "", false},
    };
    const bool put = put_first(s, p, labels, COUNT_OF(labels)) || put_anywhere(s, p, alone);
    s->unnamed += put ? 0 : 1;
}

void sketch_words(struct sketch *s, struct patch p, const char *top, const char *low) {
    const char *const by = strstr(low, " x ");
    const int across = by == NULL ? 0 : (int)(by - low);
    const struct label labels[] = {
        {top, low, false},
        {pool_words(s->pool, "%s  %s", top, low), "", false},
        {pool_words(s->pool, "%s %.*s", top, across, low), by == NULL ? low : by + 1, false},
        {top, "", false}};
    (void)put_first(s, p, labels, COUNT_OF(labels));
}

struct patch sketch_least(const struct sketch *s, size_t number) {
    const struct text_style style = {.size = SMALLEST, .bold = true};
    const double width = text_measure(s->cr, pool_words(s->pool, "#%zu", number), &style).width;
    return (struct patch){.width = width + MARK_HIGH / 2 + 2 * BESIDE,
                          .height = MARK_HIGH + MARK_HIGH / 2 + 2 * BESIDE};
}
