/* SPDX-License-Identifier: MIT */
/* Columns run down pages: a box to tick, what, size, how many, and the money where it is asked
 * for. */
#include "report/order/order_pdf.h"

#include "base/text.h"
#include "report/draw/flow.h"
#include "report/draw/tag.h"
#include "report/words/buy_list.h"
#include "together/joined_job.h"

#define MARGIN 54.0
#define FOOT   40.0
#define TEXT   9.5
#define SMALL  8.0
#define GRAY   0.35
#define BOX    8.0
#define GAP    3.5
#define KEPT   6   /* lines of one thing that stay together */
#define WHOLE  0.3 /* of a page: a table as low as this is not parted */

/* Left edges of the columns, as parts of the width; the last is the right end. */
enum { AT_BOX, AT_WHAT, AT_SIZE, AT_COUNT, AT_PRICE, AT_COST, AT_END };
static const double with_prices[] = {0, 0.035, 0.40, 0.58, 0.76, 0.87, 1};
static const double without_prices[] = {0, 0.035, 0.50, 0.78, 1, 1, 1};

struct order {
    const struct estimate *e;
    const struct together *together; /* NULL: of one job */
    const struct buy_list *list;
    const double *edges;
    bool prices;
    struct flow flow;
    struct pool pool;
    size_t pages; /* in all; 0 while they are counted */
};

static void draw_margins(void *what, struct flow *f) {
    struct order *const o = what;
    const struct shop *const shop = &o->e->rates->shop;
    const struct job *const job = o->e->job;
    flow_foot(f, FOOT, SMALL,
              pool_words(&o->pool, "%s  |  %s  |  %s", text_or_empty(shop->name.s),
                         text_or_empty(job->number.s), job->date.s),
              o->pages);
}

/* --- a table row --- */

static struct text_style style_of(const struct order *o, int column, bool bold) {
    const bool right = column >= AT_COUNT;
    return (struct text_style){.size = TEXT,
                               .bold = bold,
                               .align = right ? ALIGN_RIGHT : ALIGN_LEFT,
                               .width = (o->edges[column + 1] - o->edges[column]) * o->flow.width -
                                        (right ? 0 : 6)};
}

/* Draws a text in a column, or only measures it; returns its height. */
static double put(const struct order *o, int column, const char *text, bool bold, bool draw) {
    const struct flow *const f = &o->flow;
    const struct text_style style = style_of(o, column, bold);
    if (text[0] == '\0' || style.width <= 0) {
        return 0;
    }
    return draw ? tag_text(f->pdf->cr, bold ? "TH" : "TD", f->x + o->edges[column] * f->width, f->y,
                           text, &style)
                : text_measure(f->pdf->cr, text, &style).height;
}

static double larger(double a, double b) {
    return a > b ? a : b;
}

static const char *money(struct order *o, fig f) {
    return fig_none(f) ? "" : pool_words(&o->pool, "%s", show_money(o->e, f).text);
}

static double put_line(struct order *o, const struct buy_line *line, bool draw) {
    const char *const name = o->prices ? line->what : line->ordered;
    const char *const what = line->part ? pool_words(&o->pool, "    %s", name) : name;
    const char *const count = o->prices ? line->how_many : line->ordered_many;
    double height = put(o, AT_WHAT, what, false, draw);
    height = larger(height, put(o, AT_SIZE, line->size, false, draw));
    height = larger(height, put(o, AT_COUNT, count, false, draw));
    if (o->prices) {
        height = larger(height, put(o, AT_PRICE, money(o, line->price), false, draw));
        height = larger(height, put(o, AT_COST, money(o, line->cost), false, draw));
    }
    return height;
}

static void draw_box(const struct flow *f, double y) {
    cairo_t *const cr = f->pdf->cr;
    cairo_save(cr);
    cairo_set_line_width(cr, 0.8);
    cairo_rectangle(cr, f->x + 0.5, y + 2, BOX, BOX);
    cairo_stroke(cr);
    cairo_restore(cr);
}

static void draw_heads(struct order *o) {
    static const char *const heads[] = {
        [AT_BOX] = "",           [AT_WHAT] = "What",   [AT_SIZE] = "Size",
        [AT_COUNT] = "How many", [AT_PRICE] = "Price", [AT_COST] = "Cost"};
    tag_begin(o->flow.pdf->cr, "TR");
    for (int c = AT_WHAT; c <= (o->prices ? AT_COST : AT_COUNT); c++) {
        put(o, c, heads[c], true, true);
    }
    tag_end(o->flow.pdf->cr, "TR");
    o->flow.y += TEXT * 1.4;
    flow_rule(&o->flow, 0.7, 0);
    o->flow.y += GAP;
}

/* The sum of a group does not stand alone at the top of a page. */
static double sum_height(const struct order *o, size_t next, size_t end) {
    return o->prices && next == end ? 3 * TEXT : 0;
}

/* How high the lines are that tell what the line at `first` is made up of, a few of them, and the
 * sum that follows the last. */
static double parts_height(struct order *o, size_t first, size_t end) {
    double height = 0;
    size_t i = first;
    for (; i < end && i < first + KEPT && o->list->lines[i].part; i++) {
        height += put_line(o, &o->list->lines[i], false) + GAP;
    }
    return height + sum_height(o, i, end);
}

/* The note of a line is of the shop's own: a supplier does not read it. */
static double note_height(const struct order *o, const struct buy_line *line,
                          struct text_style *style) {
    *style = (struct text_style){
        .size = SMALL, .gray = GRAY, .width = (1 - o->edges[AT_WHAT]) * o->flow.width};
    return line->note[0] != '\0' && o->prices
               ? text_measure(o->flow.pdf->cr, line->note, style).height
               : 0;
}

/* A line with its note below it; it does not stand at the foot of a page without what it is made up
 * of. */
static void draw_line(struct order *o, const struct buy_group *group, size_t at) {
    struct flow *const f = &o->flow;
    const size_t end = group->first + group->count;
    const struct buy_line *const line = &o->list->lines[at];
    struct text_style note;
    const double under = note_height(o, line, &note);
    const double height = put_line(o, line, false);
    const double below = line->part ? sum_height(o, at + 1, end) : parts_height(o, at + 1, end);
    if (flow_need(f, height + under + GAP + below)) {
        const struct text_style title = {.size = TEXT + 1.5, .bold = true, .width = f->width};
        f->y += GAP + text_draw(f->pdf->cr, f->x, f->y,
                                pool_words(&o->pool, "%s, continued", group->title), &title);
        draw_heads(o);
    }
    if (!line->part) {
        draw_box(f, f->y);
    }
    tag_begin(f->pdf->cr, "TR");
    put_line(o, line, true);
    f->y += height;
    if (under > 0) {
        tag_text(f->pdf->cr, "TD", f->x + o->edges[AT_WHAT] * f->width, f->y, line->note, &note);
        f->y += under;
    }
    tag_end(f->pdf->cr, "TR");
    flow_gap(f, GAP);
}

/* --- the paper --- */

static bool listed(const struct order *o, const struct buy_line *line) {
    return o->prices || !line->by_others;
}

/* How high heads, lines and sum of a group are. */
static double group_height(struct order *o, const struct buy_group *group) {
    double height = TEXT * 1.4 + GAP + (o->prices ? GAP + TEXT * 1.4 : 0);
    for (size_t i = group->first; i < group->first + group->count; i++) {
        struct text_style note;
        const struct buy_line *const line = &o->list->lines[i];
        if (listed(o, line)) {
            height += put_line(o, line, false) + note_height(o, line, &note) + GAP * o->flow.spread;
        }
    }
    return height;
}

static void draw_group(struct order *o, const struct buy_group *group) {
    struct flow *const f = &o->flow;
    const double height = group_height(o, group);
    const bool whole = height <= WHOLE * (f->bottom - f->top);
    flow_heading(f, group->title, whole ? height : 5 * TEXT);
    tag_begin(f->pdf->cr, "Table");
    draw_heads(o);
    for (size_t i = group->first; i < group->first + group->count; i++) {
        if (listed(o, &o->list->lines[i])) {
            draw_line(o, group, i);
        }
    }
    if (o->prices) {
        (void)flow_need(f, 2 * TEXT);
        flow_rule(f, 0.4, GRAY);
        f->y += GAP;
        tag_begin(f->pdf->cr, "TR");
        put(o, AT_WHAT, "together", true, true);
        put(o, AT_COST, money(o, group->total), true, true);
        tag_end(f->pdf->cr, "TR");
        f->y += TEXT * 1.4;
    }
    tag_end(f->pdf->cr, "Table");
    flow_gap(f, 8);
}

/* Small supplies come from the shop's shelf, and what others make is ordered from them. */
static bool for_suppliers(const struct order *o, const struct buy_group *group) {
    return o->prices || group->group < COST_CONSUMABLES;
}

static void draw_head(struct order *o) {
    struct flow *const f = &o->flow;
    const struct shop *const shop = &o->e->rates->shop;
    const struct job *const job = o->e->job;
    const struct text_style title = {.size = 16, .bold = true, .width = f->width};
    const struct text_style text = {.size = TEXT, .width = f->width};
    const char *const agreed = show_agreed(&o->pool, o->e);
    const char *const sizes = job->unit == LENGTH_MM ? "mm" : "inches";
    flow_title(f, o->prices ? "What to buy" : "Order", title);
    flow_gap(f, 3);
    flow_text(f, text_or_empty(shop->name.s), text);
    if (!o->prices) {
        flow_text(f, text_or_empty(shop->address.s), text);
        flow_text(f, text_or_empty(shop->contact.s), text);
    }
    flow_text(f,
              pool_words(&o->pool, "%s%s%s%s, sizes in %s", o->prices ? job->title.s : "job",
                         job->number.s == NULL ? ""
                         : job->joined != NULL ? "; "
                         : o->prices           ? ", "
                                               : " ",
                         text_or_empty(job->number.s), pool_words(&o->pool, ", %s", job->date.s),
                         sizes),
              text);
    if (o->prices && agreed != NULL) {
        flow_text(f, pool_words(&o->pool, "agreed: %s", agreed), text);
    }
    flow_gap(f, 12);
}

static const char *plain_money(struct order *o, int64_t amount) {
    return pool_words(&o->pool, "%s", show_number(amount, o->together->money_decimals).text);
}

/* A job, what it costs alone, its part, what it saves; bold: the heads or the sum. */
static void draw_part(struct order *o, const char *job, const char *alone, const char *part,
                      const char *saves, bool bold) {
    struct flow *const f = &o->flow;
    const double height = larger(put(o, AT_WHAT, job, bold, false), TEXT * 1.4);
    (void)flow_need(f, height + GAP);
    tag_begin(f->pdf->cr, "TR");
    put(o, AT_WHAT, job, bold, true);
    put(o, AT_COUNT, alone, bold, true);
    put(o, AT_PRICE, part, bold, true);
    put(o, AT_COST, saves, bold, true);
    tag_end(f->pdf->cr, "TR");
    f->y += height + GAP;
}

/* What each job bears of what is bought for all. */
static void draw_parts(struct order *o) {
    const struct together *const t = o->together;
    struct flow *const f = &o->flow;
    flow_gap(f, 8);
    flow_heading(f, "Each job's part", 5 * TEXT);
    tag_begin(f->pdf->cr, "Table");
    draw_part(o, "Job", "Alone", "Part", "Saves", true);
    for (size_t i = 0; i < t->count; i++) {
        const char *const title =
            pool_words(&o->pool, "%s  %s", joined_letter(i), t->jobs[i].alone->job->title.s);
        draw_part(o, title, plain_money(o, t->all.alone_of[i]), plain_money(o, t->all.part_of[i]),
                  plain_money(o, t->all.alone_of[i] - t->all.part_of[i]), false);
    }
    draw_part(o, "together", plain_money(o, t->all.alone), plain_money(o, t->all.together),
              plain_money(o, together_saves(&t->all)), true);
    tag_end(f->pdf->cr, "Table");
}

static void draw_all(struct order *o) {
    draw_head(o);
    for (size_t g = 0; g < o->list->group_count; g++) {
        if (for_suppliers(o, &o->list->groups[g])) {
            draw_group(o, &o->list->groups[g]);
        }
    }
    if (o->prices) {
        const char *const all = pool_words(&o->pool, "In all, %s: %s", o->e->rates->shop.currency.s,
                                           show_money(o->e, o->list->total).text);
        flow_text(
            &o->flow, all,
            (struct text_style){
                .size = TEXT + 1, .bold = true, .align = ALIGN_RIGHT, .width = o->flow.width});
    }
    if (o->prices && o->together != NULL) {
        draw_parts(o);
    }
    flow_end(&o->flow);
}

static bool draw(void *what, struct pdf *pdf, double spread, size_t *pages) {
    struct order *const o = what;
    o->pages = *pages;
    o->flow = (struct flow){.pdf = pdf,
                            .x = MARGIN,
                            .width = pdf->width - 2 * MARGIN,
                            .top = MARGIN - 6,
                            .bottom = pdf->height - FOOT - 14,
                            .y = MARGIN - 6,
                            .spread = spread,
                            .margins = draw_margins,
                            .what = o};
    draw_all(o);
    *pages = o->flow.page;
    return !pool_failed(&o->pool);
}

bool order_pdf_write(const struct estimate *estimate, const struct together *together, bool prices,
                     const char *path, struct pool *pool, const char **lacking) {
    const struct job *const job = estimate->job;
    const struct pdf_facts facts = {.title = prices ? "What to buy" : "Order",
                                    .subject = text_or_empty(job->number.s),
                                    .author = text_or_empty(estimate->rates->shop.name.s),
                                    .year = job->year,
                                    .month = job->month,
                                    .day = job->day,
                                    .letter = show_on_letter(estimate)};
    struct buy_list list;
    struct order o = {.e = estimate,
                      .together = together,
                      .list = &list,
                      .edges = prices ? with_prices : without_prices,
                      .prices = prices};
    pool_init(&o.pool);
    const bool done = buy_list_make(&list, &o.pool, estimate) &&
                      flow_write(draw, &o, &facts, path, pool, lacking);
    buy_list_clear(&list);
    pool_clear(&o.pool);
    return done;
}
