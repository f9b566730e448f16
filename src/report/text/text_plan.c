/* SPDX-License-Identifier: MIT */
/* The cutting plans on the terminal: what to buy, how it is cut, where the waste goes. */
#include "report/text/print.h"

#include "base/text.h"
#include "report/words/plan_words.h"
#include "report/words/planned.h"

#include <string.h>

struct teller {
    struct page *page;
    const struct estimate *e;
    struct pool pool;
};

/* text, with `more` behind it after a comma. */
static const char *join(struct teller *t, const char *text, const char *more) {
    return pool_format(&t->pool, "%s%s%s", text, text[0] == '\0' ? "" : ", ", text_or_empty(more));
}

/* --- both ways side by side --- */

static const struct grid_column way_columns[] = {
    {"", GRID_LEFT, true}, {"by factor", GRID_RIGHT, false}, {"by plan", GRID_RIGHT, false}};

static void put_way(struct grid *grid, const char *what, struct shown factor, struct shown plan) {
    grid_put(grid, "%s", what);
    grid_put(grid, "%s", factor.text);
    grid_put(grid, "%s", plan.text);
}

static void print_ways(struct teller *t, const struct planned *p) {
    const struct estimate *const e = t->e;
    struct grid grid;
    grid_init(&grid, way_columns, 3, 2);
    for (size_t i = 0; i < p->way->count; i++) {
        const struct field *const field = &p->way->fields[i];
        const fig by_factor = field_figure(field, p->by_factor);
        const fig by_plan = field_figure(field, p->by_plan);
        if ((field->views & FIELD_WAYS) != 0 &&
            (tape_amount(&e->tape, by_factor) != 0 || tape_amount(&e->tape, by_plan) != 0)) {
            put_way(&grid, field_label(field), show_amount(e, by_factor), show_amount(e, by_plan));
        }
    }
    grid_print(&grid, t->page);
    grid_clear(&grid);
    say_wrapped(t->page, "", 2, "%s %s %s",
                plan_asks(e, p->implied_waste, p->waste, p->waste_as).text, plan_prices(p->planned),
                plan_short(e, p->short_of_plan).text);
}

/* --- where it goes --- */

static void print_split(struct teller *t, const struct planned *p) {
    static const struct grid_column columns[] = {{NULL, GRID_LEFT, true},
                                                 {NULL, GRID_RIGHT, false}};
    const struct estimate *const e = t->e;
    struct grid grid;
    grid_init(&grid, columns, 2, 2);
    for (size_t i = 0; i < p->plan->count; i++) {
        const struct field *const field = &p->plan->fields[i];
        const fig figure = field_figure(field, p->buy);
        const bool total = (field->views & FIELD_TOTAL) != 0;
        if ((field->views & FIELD_SPLIT) == 0 || (tape_amount(&e->tape, figure) == 0 && !total)) {
            continue;
        }
        if (total) {
            grid_rule(&grid);
        }
        grid_put(&grid, "%s", field_label(field));
        grid_put(&grid, "%s", total ? show_unit(e, figure).text : show(e, figure).text);
    }
    say(t->page, "%s", "");
    grid_print(&grid, t->page);
    grid_clear(&grid);
    if (tape_amount(&e->tape, p->keep_worth) > 0) {
        say_wrapped(t->page, "", 2, "of the offcuts, worth keeping: %s",
                    show_unit(e, p->keep_worth).text);
    }
}

/* --- how it is cut --- */

/* `2 3/8: 2 x D01 stile 31, D02 rail 15 1/4`: one strip; `31 long: 2 x D01 stile 2 3/8`: a segment.
 */
static const char *strip_words(struct teller *t, const struct lumber_plan *p,
                               const struct board_strip *strip) {
    const bool segment = p->job.crosscut_first;
    const char *words = "";
    for (size_t i = 0, run; i < strip->count; i += run) {
        const size_t item = p->plan->pieces[strip->first + i];
        for (run = 1; i + run < strip->count && p->plan->pieces[strip->first + i + run] == item;) {
            run++;
        }
        const char *const name = plan_part_name(&t->pool, &p->parts[item]);
        const struct cut_item *const part = &p->job.items[item];
        const struct shown size = plan_show(t->e, segment ? part->width : part->length);
        const char *const one = run == 1
                                    ? pool_format(&t->pool, "%s %s", name, size.text)
                                    : pool_format(&t->pool, "%zu x %s %s", run, name, size.text);
        words = text_or_empty(join(t, words, one));
    }
    return pool_format(&t->pool, "%s%s: %s", plan_show(t->e, strip->width).text,
                       segment ? " long" : "", words);
}

static bool print_board(struct teller *t, const struct lumber_plan *p, const struct alike *alike) {
    const struct estimate *const e = t->e;
    const struct board_use *const use = &p->plan->boards[alike->first];
    const struct cut_stock *const stock = &p->job.stocks[use->stock];
    struct board_layout layout = {0};
    const char *words = "";
    for (size_t s = 0; s < use->count; s++) {
        const char *const strip = strip_words(t, p, &p->plan->strips[use->first + s]);
        words = text_or_empty(
            pool_format(&t->pool, "%s%s%s", words, s == 0 ? "" : " | ", text_or_empty(strip)));
    }
    const bool held = board_layout_make(&layout, &p->job, p->plan, alike->first, p->keep);
    const char *keep = "";
    for (size_t i = 0; held && i < layout.offcut_count; i++) {
        if (layout.offcuts[i].keep) {
            const struct board_box *const box = &layout.offcuts[i].box;
            keep = text_or_empty(
                join(t, keep,
                     pool_format(&t->pool, "%s", plan_show_left(e, box->width, box->length).text)));
        }
    }
    const char *const first = pool_format(
        &t->pool, "  %s, %s: ", plan_numbers(alike, plan_board_noun(p, use->stock)).text,
        plan_show_size(e, stock->width, stock->length).text);
    say_wrapped(t->page, text_or_empty(first), 4, "%s%s%s", words, keep[0] == '\0' ? "" : "; keep ",
                keep);
    board_layout_clear(&layout);
    return held;
}

/* Boards by size: `22 of 5 x 96, 1 of 7 x 96`; nothing where there are none. */
static void print_board_sizes(struct teller *t, const char *head, const struct cut_stock *stocks,
                              const fig *counts, size_t count) {
    const char *words = "";
    for (size_t s = 0; s < count; s++) {
        if (tape_amount(&t->e->tape, counts[s]) > 0) {
            words = text_or_empty(
                join(t, words,
                     pool_format(&t->pool, "%s of %s", show(t->e, counts[s]).text,
                                 plan_show_size(t->e, stocks[s].width, stocks[s].length).text)));
        }
    }
    if (words[0] != '\0') {
        say_wrapped(t->page, head, 4, "%s", words);
    }
}

/* What it is, and what there is to say of its plan as a whole. */
static void print_planned(struct teller *t, const struct planned *p, struct shown proof) {
    say(t->page, "%s", "");
    say_wrapped(t->page, p->name, 0, "%s%s", p->thickness == NULL ? "" : " ",
                text_or_empty(p->thickness));
    if (p->no_plan_reason != NULL) {
        say_wrapped(t->page, "", 2, "no plan: %s", p->no_plan_reason);
        return;
    }
    say_wrapped(t->page, "", 2, "%s", proof.text);
    print_ways(t, p);
    print_split(t, p);
    say(t->page, "%s", "");
}

static bool print_boards(struct teller *t, const struct lumber_plan *p) {
    print_board_sizes(t, "  boards to buy: ", p->job.stocks, p->counts, p->sold);
    print_board_sizes(t, "  from the rack: ", p->job.stocks + p->sold, p->rack.taken,
                      p->rack.count);
    if (p->job.crosscut_first) {
        say(t->page, "  crosscut into segments first, each then ripped into its parts");
    }
    size_t count = 0;
    const struct alike *const list = plan_alike_boards(&t->pool, p->plan, &count);
    bool held = list != NULL;
    for (size_t i = 0; held && i < count; i++) {
        held = print_board(t, p, &list[i]);
    }
    return held;
}

/* `3 x D01 panel 13 15/16 x 29 1/16`, ...: the parts of a sheet, each item once. */
static const char *sheet_words(struct teller *t, const struct sheets_plan *p,
                               const struct sheet_sheet *sheet) {
    int64_t *const counts = pool_take(&t->pool, p->job.item_count, sizeof *counts);
    const char *words = "";
    for (size_t i = 0; counts != NULL && i < sheet->part_count; i++) {
        counts[p->plan->parts[sheet->first_part + i].item]++;
    }
    for (size_t i = 0; counts != NULL && i < p->job.item_count; i++) {
        const struct cut_item *const item = &p->job.items[i];
        const char *const name = plan_part_name(&t->pool, &p->parts[i]);
        const struct shown size = plan_show_size(t->e, item->width, item->length);
        if (counts[i] == 1) {
            words = text_or_empty(join(t, words, pool_format(&t->pool, "%s %s", name, size.text)));
        } else if (counts[i] > 1) {
            words = text_or_empty(
                join(t, words,
                     pool_format(&t->pool, "%lld x %s %s", (long long)counts[i], name, size.text)));
        }
    }
    return words;
}

static void print_one_sheet(struct teller *t, const struct sheets_plan *p,
                            const struct alike *alike) {
    const struct estimate *const e = t->e;
    const struct sheet_sheet *const sheet = &p->plan->sheets[alike->first];
    const struct cut_stock *const stock = &p->job.stocks[sheet->stock];
    const char *keep = "";
    for (size_t i = 0; i < sheet->node_count; i++) {
        const struct sheet_node *const n = &p->plan->nodes[sheet->first_node + i];
        if (n->use == SHEET_OFFCUT && sheet_keeps(p->keep, n->length, n->width)) {
            keep = text_or_empty(join(
                t, keep, pool_format(&t->pool, "%s", plan_show_left(e, n->width, n->length).text)));
        }
    }
    const char *const first = pool_format(
        &t->pool, "  %s, %s: ", plan_numbers(alike, plan_sheet_noun(p, sheet->stock)).text,
        plan_show_size(e, stock->width, stock->length).text);
    say_wrapped(t->page, text_or_empty(first), 4, "%s%s%s", sheet_words(t, p, sheet),
                keep[0] == '\0' ? "" : "; keep ", keep);
}

static bool print_sheets(struct teller *t, const struct sheets_plan *p) {
    size_t count = 0;
    const struct alike *const list = plan_alike_sheets(&t->pool, p->plan, &count);
    for (size_t i = 0; list != NULL && i < count; i++) {
        print_one_sheet(t, p, &list[i]);
    }
    return list != NULL;
}

static bool print_lumber(struct teller *t, size_t i) {
    const struct lumber_buy *const b = &t->e->lumber.buys[i];
    const struct planned planned = planned_lumber(t->e, i);
    print_planned(t, &planned, plan_proof_boards(t->e, b));
    return planned.no_plan_reason != NULL || print_boards(t, &b->plan);
}

static bool print_sheet(struct teller *t, size_t i) {
    const struct sheet_buy *const b = &t->e->sheets.buys[i];
    const struct planned planned = planned_sheet(t->e, i);
    print_planned(t, &planned, plan_proof_sheets(t->e, b));
    return planned.no_plan_reason != NULL || print_sheets(t, &b->plan);
}

/* Prints each of count materials with memory of its own. */
static bool print_each(struct teller *t, size_t count, bool (*print)(struct teller *, size_t)) {
    bool held = true;
    for (size_t i = 0; held && i < count; i++) {
        pool_init(&t->pool);
        held = print(t, i) && !pool_failed(&t->pool);
        pool_clear(&t->pool);
    }
    return held;
}

void plan_print(struct page *page, const struct estimate *e) {
    struct teller t = {.page = page, .e = e};
    head_print(page, "Cutting plans", e);
    const bool held = print_each(&t, e->lumber.count, print_lumber) &&
                      print_each(&t, e->sheets.count, print_sheet);
    if (e->lumber.count + e->sheets.count == 0) {
        say(page, "nothing to cut in this job");
    }
    page->failed = page->failed || !held;
    if (e->lumber.count + e->sheets.count > 0) {
        cautions_print(page, e, CAUTION_PLAN);
    }
}
