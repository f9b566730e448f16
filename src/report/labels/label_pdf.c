/* SPDX-License-Identifier: MIT */
/* A label is lines of words, of a part with a picture to their right: the part as it stands in its
 * door, lines along its grain, an arrow to what is up. Words are as large as the label lets them
 * be, down to LABEL_SMALLEST; a line that is too long is broken where letters a little smaller do
 * not help, and where many are, all take letters of one size. No label is larger than most of its
 * paper can be, so that a sheet looks even. */
#include "report/labels/label_pdf.h"

#include "base/text.h"
#include "report/draw/draw.h"
#include "report/draw/pdf.h"
#include "report/draw/tag.h"
#include "report/labels/label_words.h"
#include "report/type/text_style.h"
#include "report/words/show.h"

#include <stdlib.h>

#define LARGEST    14.0 /* of a plain line */
#define STEP       0.25 /* sizes that are tried lie so far apart */
#define WHOLE      0.75 /* of the largest letters: so small they may be for no line to be broken */
#define LIKE       0.9  /* the same of what most labels have */
#define MOST       0.75 /* of all labels: these can have what is the largest of all */
#define PICTURE    0.24 /* of the width of a label, for its picture */
#define WIDEST     80.0 /* of a picture */
#define BESIDE     4.0  /* between words and picture */
#define ARROW      9.0  /* room for it beside the part */
#define LEAST_SIDE 4.0  /* of a part in its picture: a stile is long and thin */
#define GRAIN_GAP  4.0

/* The letters of a label. */
struct letters {
    double size;     /* of a plain line; 0: its words do not fit */
    double unbroken; /* the largest at which no line is broken */
    bool level;      /* all lines are plain */
};

struct labeler {
    const struct estimate *e;
    const struct label_sheet *sheet;
    struct pdf pdf;
    struct pool pool;        /* of one label */
    struct letters *letters; /* of each label */
};

static double points(length nm) {
    return (double)nm * 72 / (double)NM_PER_INCH;
}

/* The label at a place of a sheet, from 0 along rows, without what is kept free within its edges.
 */
static struct area label_area(const struct label_sheet *s, size_t place) {
    const size_t columns = (size_t)s->columns.amount;
    const size_t row = place / columns;
    const double inset = points(s->inset.set ? s->inset.amount : NM_PER_INCH / 16);
    const double across = points(s->width.amount + s->across.amount);
    const double down = points(s->height.amount + s->down.amount);
    return (struct area){.x = points(s->left.amount) + (double)(place % columns) * across + inset,
                         .y = points(s->top.amount) + (double)row * down + inset,
                         .width = points(s->width.amount) - 2 * inset,
                         .height = points(s->height.amount) - 2 * inset};
}

/* --- words --- */

static struct text_style style_of(const struct label_line *line, double size, double width) {
    return (struct text_style){.size = size * line->size, .bold = line->bold, .width = width};
}

static double words_high(cairo_t *cr, const struct label_line *lines, size_t count, double size,
                         double width) {
    double high = 0;
    for (size_t i = 0; i < count; i++) {
        const struct text_style style = style_of(&lines[i], size, width);
        high += text_measure(cr, lines[i].text, &style).height;
    }
    return high;
}

/* The largest size at which the lines fit; 0: they do not at the smallest. */
static double fitting(cairo_t *cr, const struct label_line *lines, size_t count, struct area area) {
    int low = -1; /* steps over the smallest that fit */
    int high = (int)((LARGEST - LABEL_SMALLEST) / STEP) + 1;
    while (high - low > 1) {
        const int middle = (low + high) / 2;
        const double size = LABEL_SMALLEST + middle * STEP;
        if (words_high(cr, lines, count, size, area.width) <= area.height) {
            low = middle;
        } else {
            high = middle;
        }
    }
    return low < 0 ? 0 : LABEL_SMALLEST + low * STEP;
}

static void make_level(struct label_line *lines, size_t count) {
    for (size_t i = 0; i < count; i++) {
        lines[i].size = 1;
    }
}

/* The largest size at which no line is broken. */
static double whole(cairo_t *cr, const struct label_line *lines, size_t count, double width) {
    double widest = 1; /* at LARGEST */
    for (size_t i = 0; i < count; i++) {
        const struct text_style style = style_of(&lines[i], LARGEST, 0);
        const double wide = text_measure(cr, lines[i].text, &style).width;
        widest = wide > widest ? wide : widest;
    }
    return (double)(int)(LARGEST * width / widest / STEP) * STEP;
}

/* The letters that suit the lines, where need be with all of one size. */
static struct letters letters_of(cairo_t *cr, struct label_line *lines, size_t count,
                                 struct area area) {
    struct letters letters = {0};
    if (area.width <= 0 || area.height <= 0) {
        return letters;
    }
    letters.size = fitting(cr, lines, count, area);
    if (letters.size <= 0) {
        letters.level = true;
        make_level(lines, count);
        letters.size = fitting(cr, lines, count, area);
    }
    letters.unbroken = whole(cr, lines, count, area.width);
    return letters;
}

static void draw_words(cairo_t *cr, const struct label_line *lines, size_t count, double size,
                       struct area area) {
    double y = area.y + (area.height - words_high(cr, lines, count, size, area.width)) / 2;
    for (size_t i = 0; i < count; i++) {
        const struct text_style style = style_of(&lines[i], size, area.width);
        y += tag_text(cr, "P", area.x, y, lines[i].text, &style);
    }
}

/* --- the picture of a part --- */

static void stroke(cairo_t *cr, double x1, double y1, double x2, double y2) {
    cairo_move_to(cr, x1, y1);
    cairo_line_to(cr, x2, y2);
    cairo_stroke(cr);
}

static void draw_arrow(cairo_t *cr, double x, double top, double bottom) {
    const double head = ARROW / 2 - 1;
    cairo_set_line_width(cr, 1.6);
    stroke(cr, x, bottom, x, top + head);
    cairo_move_to(cr, x, top);
    cairo_line_to(cr, x - head, top + 1.6 * head);
    cairo_line_to(cr, x + head, top + 1.6 * head);
    cairo_close_path(cr);
    cairo_fill(cr);
}

static void draw_grain(cairo_t *cr, struct area box, enum grain_way grain) {
    const bool upright = grain == GRAIN_UPRIGHT;
    const double across = upright ? box.width : box.height;
    cairo_set_line_width(cr, 0.4);
    const int lines = grain == GRAIN_NONE ? 0 : (int)(across / GRAIN_GAP + 0.5);
    for (int i = 0; i < lines; i++) {
        const double at = (i + 0.5) * across / lines;
        if (upright) {
            stroke(cr, box.x + at, box.y + 2, box.x + at, box.y + box.height - 2);
        } else {
            stroke(cr, box.x + 2, box.y + at, box.x + box.width - 2, box.y + at);
        }
    }
}

/* The part in the middle of the room, to its own proportions; what is very thin is drawn wider. */
static struct area part_box(const struct part *part, struct area room) {
    const bool field = part_is_field(part->kind);
    const bool level = part_is_rail(part->kind);
    const double wide = points(field ? part->shown_width : (level ? part->length : part->width));
    const double high = points(field ? part->shown_height : (level ? part->width : part->length));
    const double scale =
        wide * room.height > high * room.width ? room.width / wide : room.height / high;
    struct area box = {.width = wide * scale, .height = high * scale};
    box.width = box.width < LEAST_SIDE ? LEAST_SIDE : box.width;
    box.height = box.height < LEAST_SIDE ? LEAST_SIDE : box.height;
    box.x = room.x + (room.width - box.width) / 2;
    box.y = room.y + (room.height - box.height) / 2;
    return box;
}

static void draw_picture(cairo_t *cr, const struct estimate *e, const struct label *label,
                         struct area area) {
    const struct part *const part = label->part;
    const bool top = label_has_top(part);
    struct area room = area;
    room.width -= top ? ARROW : 0;
    const struct area box = part_box(part, room);
    cairo_save(cr);
    cairo_set_source_rgb(cr, 0, 0, 0);
    tag_begin(cr, "Figure");
    draw_grain(cr, box, label_grain(e, label->leaf->door, part));
    cairo_set_line_width(cr, 0.9);
    cairo_rectangle(cr, box.x, box.y, box.width, box.height);
    cairo_stroke(cr);
    if (top) {
        const double middle = box.y + box.height / 2;
        const double half = area.height / 2 < 11 ? area.height / 2 : 11;
        draw_arrow(cr, box.x + box.width + ARROW / 2 + 1, middle - half, middle + half);
    }
    tag_end(cr, "Figure");
    cairo_restore(cr);
}

/* --- sheets --- */

/* The room of the picture of a part within its label; *words: what it leaves. */
static struct area picture_area(struct area area, struct area *words) {
    struct area picture = area;
    picture.width = area.width * PICTURE > WIDEST ? WIDEST : area.width * PICTURE;
    picture.x = area.x + area.width - picture.width;
    words->width -= picture.width + BESIDE;
    return picture;
}

/* Finds the letters of a label. */
static void measure_label(struct labeler *l, const struct label *label, struct letters *letters) {
    struct label_line lines[MOST_LABEL_LINES];
    struct area words = label_area(l->sheet, 0);
    const size_t count = label_words(lines, &l->pool, l->e, label);
    if (label->part != NULL) {
        (void)picture_area(words, &words);
    }
    *letters = letters_of(l->pdf.cr, lines, count, words);
}

static void draw_label(struct labeler *l, const struct label *label, struct area area,
                       const struct letters *letters) {
    struct label_line lines[MOST_LABEL_LINES];
    struct area words = area;
    const size_t count = label_words(lines, &l->pool, l->e, label);
    if (letters->level) {
        make_level(lines, count);
    }
    if (label->part != NULL) {
        draw_picture(l->pdf.cr, l->e, label, picture_area(area, &words));
    }
    draw_words(l->pdf.cr, lines, count, letters->size, words);
}

/* The size with lines whole where that is at least `least`, else the largest. */
static double size_or_whole(const struct letters *letters, double least) {
    const bool is_whole = letters->unbroken >= least && letters->unbroken >= LABEL_SMALLEST;
    return is_whole && letters->unbroken < letters->size ? letters->unbroken : letters->size;
}

static int by_size(const void *x, const void *y) {
    const double a = *(const double *)x;
    const double b = *(const double *)y;
    return (a > b) - (a < b);
}

/* Makes no label larger than most can be. false: memory is out. */
static bool make_even(struct letters *letters, size_t count) {
    double *const sizes = calloc(count + 1, sizeof *sizes);
    if (sizes == NULL) {
        return false;
    }
    for (size_t i = 0; i < count; i++) {
        sizes[i] = size_or_whole(&letters[i], letters[i].size * WHOLE);
    }
    qsort(sizes, count, sizeof *sizes, by_size);
    const double most = sizes[(size_t)((double)count * (1 - MOST))];
    for (size_t i = 0; i < count; i++) {
        const double size = size_or_whole(&letters[i], most * LIKE);
        letters[i].size = size > most ? most : size;
    }
    free(sizes);
    return true;
}

/* Finds the letters of all labels. false: memory is out, or it was stopped. */
static bool measure_all(struct labeler *l, const struct label_list *list, const struct stop *stop,
                        struct label_paper *paper) {
    bool held = true;
    for (size_t i = 0; i < list->count && held && paper->tight == NULL; i++) {
        pool_init(&l->pool);
        measure_label(l, &list->labels[i], &l->letters[i]);
        paper->tight = l->letters[i].size > 0 ? NULL : &list->labels[i];
        held = !pool_failed(&l->pool) && !stop_asked(stop);
        pool_clear(&l->pool);
    }
    return held && make_even(l->letters, list->count);
}

static enum label_result draw_all(struct labeler *l, const struct label_list *list, size_t from,
                                  const struct stop *stop, struct label_paper *paper) {
    const size_t each = (size_t)(l->sheet->columns.amount * l->sheet->rows.amount);
    size_t place = from - 1;
    bool held = measure_all(l, list, stop, paper);
    for (size_t i = 0; i < list->count && held && paper->tight == NULL; i++, place++) {
        if (i > 0 && place % each == 0) {
            pdf_page(&l->pdf);
        }
        pool_init(&l->pool);
        draw_label(l, &list->labels[i], label_area(l->sheet, place % each), &l->letters[i]);
        held = !pool_failed(&l->pool) && !stop_asked(stop);
        pool_clear(&l->pool);
    }
    pdf_page(&l->pdf);
    paper->sheets = (place + each - 1) / each;
    paper->next = place % each == 0 ? 0 : place % each + 1;
    return !held ? LABEL_FAILED : (paper->tight != NULL ? LABEL_TIGHT : LABEL_DONE);
}

enum label_result label_pdf_write(const struct estimate *e, const struct label_list *list,
                                  const struct label_sheet *sheet, size_t from, const char *path,
                                  const struct stop *stop, struct label_paper *paper,
                                  struct pool *pool, const char **lacking) {
    const struct job *const job = e->job;
    const struct pdf_facts facts = {.title = job->title.s,
                                    .subject = "labels",
                                    .author = text_or_empty(e->rates->shop.name.s),
                                    .year = job->year,
                                    .month = job->month,
                                    .day = job->day,
                                    .letter = label_on_letter(sheet, &e->rates->shop)};
    struct labeler l = {.e = e, .sheet = sheet};
    *paper = (struct label_paper){0};
    l.letters = calloc(list->count + 1, sizeof *l.letters);
    const bool open = pdf_open(&l.pdf, path, &facts) && l.letters != NULL;
    const enum label_result result = open ? draw_all(&l, list, from, stop, paper) : LABEL_FAILED;
    free(l.letters);
    return pdf_close(&l.pdf, pool, lacking) ? result : LABEL_FAILED;
}
