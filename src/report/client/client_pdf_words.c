/* SPDX-License-Identifier: MIT */
/* Lists of words, and what is signed below them. */
#include "report/client/client_pdf_parts.h"
#include "report/draw/tag.h"

/* Points: lists that are lower than this are not parted. */
#define KEPT_WHOLE 130.0
#define COLUMN_GAP 24.0

static double larger(double a, double b) {
    return a > b ? a : b;
}

/* --- two lists beside each other --- */

/* Draws the text of a list in its column, or only measures it; returns its height. */
static double item(const struct client_page *p, const struct client_words *list, size_t i,
                   bool right, bool draw) {
    const struct flow *const f = &p->flow;
    const double width = (f->width - COLUMN_GAP) / 2;
    const double x = f->x + (right ? width + COLUMN_GAP : 0);
    const struct text_style text = {.size = CLIENT_TEXT, .width = width - 10};
    const struct text_style dash = {.size = CLIENT_TEXT};
    if (i >= list->texts->count) {
        return 0;
    }
    if (draw) {
        tag_begin(f->pdf->cr, "LI");
        tag_text(f->pdf->cr, "Lbl", x, f->y, "\xE2\x80\x93", &dash);
        tag_text(f->pdf->cr, "LBody", x + 10, f->y, list->texts->text[i], &text);
        tag_end(f->pdf->cr, "LI");
    }
    return text_measure(f->pdf->cr, list->texts->text[i], &text).height + 2 * f->spread;
}

static double column_height(const struct client_page *p, const struct client_words *list,
                            bool right) {
    double height = 0;
    for (size_t i = 0; i < list->texts->count; i++) {
        height += item(p, list, i, right, false);
    }
    return height;
}

/* Items of a column from *at on, as many as the page holds; at least one where it is begun. */
static void column_part(struct client_page *p, const struct client_words *list, size_t *at,
                        bool right) {
    struct flow *const f = &p->flow;
    const double top = f->y;
    if (*at >= list->texts->count) {
        return;
    }
    tag_begin(f->pdf->cr, "L");
    while (*at < list->texts->count) {
        const double height = item(p, list, *at, right, false);
        if (f->y + height > f->bottom && f->y > top) {
            break;
        }
        item(p, list, (*at)++, right, true);
        f->y += height;
    }
    tag_end(f->pdf->cr, "L");
}

static void side_by_side(struct client_page *p, const struct client_words *left,
                         const struct client_words *right) {
    struct flow *const f = &p->flow;
    const struct text_style bold = {.size = 11, .bold = true};
    const double high = larger(column_height(p, left, false), column_height(p, right, true));
    const double page = f->bottom - f->top - 30;
    size_t at[2] = {0, 0};
    flow_heading(f, left->head, high < page ? high : 60);
    bool headed = false; /* the right column: its head comes behind the texts of the left one */
    while (at[0] < left->texts->count || at[1] < right->texts->count) {
        const double top = f->y;
        column_part(p, left, &at[0], false);
        const double end = f->y;
        f->y = top;
        if (!headed) {
            tag_text(f->pdf->cr, "H2", f->x + (f->width + COLUMN_GAP) / 2,
                     top - 4 * f->spread - text_measure(f->pdf->cr, left->head, &bold).height,
                     right->head, &bold);
            headed = true;
        }
        column_part(p, right, &at[1], true);
        f->y = larger(f->y, end);
        if (at[0] < left->texts->count || at[1] < right->texts->count) {
            (void)flow_need(f, f->bottom - f->top);
        }
    }
}

/* --- a list over the whole width --- */

/* Paragraphs of a numbered list are set so far in. */
static double paragraph(struct client_page *p, const struct client_words *list, size_t i,
                        bool draw) {
    struct flow *const f = &p->flow;
    const double in = list->numbered ? 18 : 0;
    const struct text_style text = {.size = CLIENT_TEXT - 0.5, .width = f->width - in};
    const struct text_style number = {.size = CLIENT_TEXT - 0.5, .gray = CLIENT_GRAY};
    if (!draw) {
        return text_measure(f->pdf->cr, list->texts->text[i], &text).height + 3 * f->spread;
    }
    tag_begin(f->pdf->cr, "LI");
    if (list->numbered) {
        tag_text(f->pdf->cr, "Lbl", f->x, f->y, pool_words(p->pool, "%zu", i + 1), &number);
    }
    const double high = tag_text(f->pdf->cr, "LBody", f->x + in, f->y, list->texts->text[i], &text);
    tag_end(f->pdf->cr, "LI");
    return high + 3 * f->spread;
}

/* A short list is not parted; of a longer one at least two paragraphs stand together, the last two
 * with what comes `after` it. */
static void paragraphs(struct client_page *p, const struct client_words *list, double after) {
    struct flow *const f = &p->flow;
    const size_t count = list->texts->count;
    double whole = 0;
    double least = 0;
    for (size_t i = 0; i < count; i++) {
        whole += paragraph(p, list, i, false);
        least = i < 2 ? whole : least;
    }
    if (count == 0) {
        return;
    }
    const bool kept = whole + after < KEPT_WHOLE || count < 4;
    flow_heading(f, list->head, kept ? whole + after : least);
    tag_begin(f->pdf->cr, "L");
    for (size_t i = 0; i < count; i++) {
        double needed = paragraph(p, list, i, false);
        if (i + 2 == count) {
            needed += paragraph(p, list, i + 1, false) + after;
        }
        (void)flow_need(f, kept || i + 1 == count ? 0 : needed);
        f->y += paragraph(p, list, i, true);
    }
    tag_end(f->pdf->cr, "L");
}

/* --- signatures --- */

#define SIGN_HIGH 66.0 /* below the highest name */
#define SIGN_GAP  30.0

static void sign_line(struct client_page *p, double x, double width) {
    cairo_t *const cr = p->flow.pdf->cr;
    const struct text_style small = {.size = 7.5, .gray = CLIENT_GRAY};
    const double line = p->flow.y + 32;
    cairo_save(cr);
    cairo_set_line_width(cr, 0.6);
    cairo_move_to(cr, x, line);
    cairo_line_to(cr, x + width * 0.66, line);
    cairo_move_to(cr, x + width * 0.72, line);
    cairo_line_to(cr, x + width, line);
    cairo_stroke(cr);
    cairo_restore(cr);
    tag_text(cr, "P", x, line + 3, CLIENT_SIGN_WHO, &small);
    tag_text(cr, "P", x + width * 0.72, line + 3, CLIENT_SIGN_WHEN, &small);
}

/* The signatures with all that stands above them; or only their height. */
static double sign(struct client_page *p, bool draw) {
    struct flow *const f = &p->flow;
    const struct offer *const o = p->offer;
    const double width = (f->width - SIGN_GAP) / 2;
    const struct text_style agreed = {.size = CLIENT_TEXT, .width = f->width};
    const struct text_style bold = {.size = CLIENT_TEXT, .bold = true, .width = width};
    const char *names[2];
    const size_t count = client_signers(o, names);
    double high = 0;
    for (size_t i = 0; i < count; i++) {
        high = larger(high, text_measure(f->pdf->cr, names[i], &bold).height);
    }
    if (draw) {
        flow_heading(f, o->sign_head, 80);
        flow_text(f, o->agreed, agreed);
        flow_gap(f, 8);
        for (size_t i = 0; i < count; i++) {
            tag_text(f->pdf->cr, "P", f->x + (double)i * (width + SIGN_GAP), f->y, names[i], &bold);
        }
        f->y += high;
        for (size_t i = 0; i < count; i++) {
            sign_line(p, f->x + (double)i * (width + SIGN_GAP), width);
        }
        f->y += SIGN_HIGH - 20;
    }
    return text_measure(f->pdf->cr, o->agreed, &agreed).height + high + SIGN_HIGH + 34;
}

/* What is signed never stands on a page of its own: the last of the words goes with it. */
void client_pdf_words(struct client_page *p) {
    struct client_words lists[CLIENT_WORDS_COUNT];
    client_words_make(p->offer, lists);
    const double signs = sign(p, false);
    for (size_t i = 0; i < CLIENT_WORDS_COUNT; i++) {
        const bool two = i + 1 < CLIENT_WORDS_COUNT && lists[i + 1].beside;
        bool last = true; /* none of those behind it has a word */
        for (size_t k = i + 1; k < CLIENT_WORDS_COUNT; k++) {
            last = last && lists[k].texts->count == 0;
        }
        if (two && lists[i].texts->count + lists[i + 1].texts->count == 0) {
            continue;
        }
        if (two) {
            side_by_side(p, &lists[i], &lists[i + 1]);
        } else if (!lists[i].beside) {
            paragraphs(p, &lists[i], last ? signs : 0);
        }
    }
    sign(p, true);
}
