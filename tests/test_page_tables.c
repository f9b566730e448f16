/* SPDX-License-Identifier: MIT */
/* The tables of the page that an estimate is looked into, against the lists that they are of: each
 * line once, in its place, with its words and its figures; boxes to tick that are told apart. */
#include "support.h"

#include "base/text.h"
#include "markup_read.h"
#include "model/name.h"
#include "report/page/page.h"
#include "report/words/buy_list.h"
#include "report/words/cut_list.h"
#include "report/words/field.h"
#include "report/words/sale_line.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include <cmocka.h>

#define PAGE "test-page-tables.html"

struct page {
    struct bench *bench;
    const struct estimate *e;
    struct pool pool;
    struct markup markup;
    size_t table, row; /* that are looked at */
};

static const struct markup_element *at(const struct page *p, size_t i) {
    return &p->markup.elements[i];
}

/* Goes to a table by its caption. */
static void go_to(struct page *p, const char *caption) {
    for (size_t i = 0; i < p->markup.count; i++) {
        if (strcmp(at(p, i)->name, "caption") == 0 && strcmp(at(p, i)->text, caption) == 0) {
            p->table = at(p, i)->parent;
            p->row = i;
            while (strcmp(at(p, p->row)->name, "tr") != 0) { /* that of the heads */
                p->row++;
            }
            return;
        }
    }
    fail_msg("there is no table '%s'", caption);
}

/* Goes to the next row of the table; false: there is none. */
static bool next(struct page *p) {
    for (size_t i = p->row + 1; i < p->markup.count; i++) {
        if (strcmp(at(p, i)->name, "table") == 0) {
            return false;
        }
        if (strcmp(at(p, i)->name, "tr") == 0) {
            p->row = i;
            return true;
        }
    }
    return false;
}

/* Cell `k` of the row; 0: it has none. */
static size_t cell(const struct page *p, size_t k) {
    for (size_t i = p->row + 1; i < p->markup.count; i++) {
        if (at(p, i)->parent == p->row && k-- == 0) {
            return i;
        }
    }
    return 0;
}

static void want_text(struct page *p, size_t k, const char *text) {
    const size_t i = cell(p, k);
    if (i == 0 || strcmp(at(p, i)->text, text) != 0) {
        bench_wrong(p->bench, "cell %zu is '%s', expected '%s'", k,
                    i == 0 ? "none" : at(p, i)->text, text);
    }
}

/* The cell holds the figure, or nothing where that is none. */
static void want_figure(struct page *p, size_t k, fig figure) {
    const size_t i = cell(p, k);
    unsigned long id = 0;
    for (size_t n = i + 1; i > 0 && n < p->markup.count && at(p, n)->parent >= i; n++) {
        const char *const of = markup_value(at(p, n), "data-f");
        id = of != NULL && id == 0 ? strtoul(of, NULL, 10) : id;
    }
    if (id != figure.id) {
        bench_wrong(p->bench, "cell %zu of '%s' has figure %lu, expected %u", k,
                    at(p, p->row)->text, id, (unsigned)figure.id);
    }
}

static void want_class(struct page *p, const char *class) {
    if (strcmp(text_or_empty(markup_value(at(p, p->row), "class")), class) != 0) {
        bench_wrong(p->bench, "'%s' is not of class '%s'", at(p, p->row)->text, class);
    }
}

static void want_row(struct page *p) {
    if (!next(p)) {
        bench_wrong(p->bench, "a row lacks");
    }
}

static void want_end(struct page *p) {
    if (next(p)) {
        bench_wrong(p->bench, "there are more rows: %s", at(p, p->row)->text);
    }
}

/* --- the tables --- */

static void check_doors(struct page *p) {
    const struct sale_figures *const sale = &p->e->sale;
    go_to(p, "Doors and fronts, by room");
    for (size_t r = 0; r < sale->room_count; r++) {
        const char *const room = sale->rooms[r].room;
        want_row(p);
        want_text(p, 0, room[0] == '\0' ? "no room named" : room);
        for (size_t i = 0; i < sale->rooms[r].count; i++) {
            const size_t at_door = sale->by_room[sale->rooms[r].first + i];
            const struct leaf_figures *const leaf = &p->e->quantities.leaves[at_door];
            char size[32];
            want_row(p);
            want_text(p, 0, leaf->door->row->id.s);
            want_text(p, 2, length_show(leaf->door->width, p->e->job->unit, size, sizeof size));
            want_figure(p, 2, leaf->width);
            want_text(p, 3, length_show(leaf->door->height, p->e->job->unit, size, sizeof size));
            want_figure(p, 3, leaf->height);
            want_figure(p, 4, leaf->openings);
            want_figure(p, 5, leaf->leaves);
            want_figure(p, 6, p->e->costs.doors[at_door].unit);
            want_figure(p, 7, p->e->costs.doors[at_door].amount);
        }
    }
    want_end(p);
}

static void check_sale(struct page *p) {
    const struct sale_lines sale = sale_lines_make(&p->pool, p->e);
    const char *const exempt = sale_exempt(&p->pool, p->e);
    go_to(p, "From the doors to the total, and what is due when");
    for (size_t i = 0; i < sale.count; i++) {
        const struct sale_line *const line = &sale.lines[i];
        const bool total = sale_line_is(line, offsetof(struct sale_figures, total));
        const bool doors = sale_line_is(line, offsetof(struct sale_figures, doors));
        if (total && exempt != NULL) {
            want_row(p);
            want_text(p, 0, exempt);
        }
        if (!line->asked) {
            continue;
        }
        want_row(p);
        want_class(p, total                                                            ? "sum grand"
                      : line->field != NULL && (line->field->views & FIELD_TOTAL) != 0 ? "sum"
                                                                                       : "");
        want_text(p, 0, line->label);
        want_figure(p, 1, doors ? p->e->quantities.all_leaves : line->rate);
        want_figure(p, 2, line->money);
    }
    want_end(p);
}

static void check_buy(struct page *p) {
    struct buy_list list;
    assert_true(buy_list_make(&list, &p->pool, p->e));
    go_to(p, "What to buy, by supplier");
    for (size_t g = 0; g < list.group_count; g++) {
        want_row(p);
        want_text(p, 0, list.groups[g].title);
        for (size_t i = 0; i < list.groups[g].count; i++) {
            const struct buy_line *const line = &list.lines[list.groups[g].first + i];
            want_row(p);
            want_class(p, line->part ? "of" : "");
            if (!line->part) { /* behind the box, a blank */
                char words[300];
                (void)snprintf(words, sizeof words, " %s",
                               line->what[0] == '\0' ? line->size : line->what);
                want_text(p, 0, words);
            }
            want_text(p, 1, line->size);
            if (fig_none(line->count)) {
                want_text(p, 2, line->how_many);
            } else {
                want_figure(p, 2, line->count);
            }
            want_figure(p, 3, line->price);
            want_figure(p, 4, line->cost);
            want_text(p, 5, line->note);
        }
        want_row(p);
        want_class(p, "sum");
        want_text(p, 0, "together");
        want_figure(p, 4, list.groups[g].total);
    }
    want_row(p);
    want_class(p, "sum grand");
    want_figure(p, 4, list.total);
    want_end(p);
    buy_list_clear(&list);
}

static void check_cut(struct page *p) {
    struct cut_list list;
    assert_true(cut_list_make(&list, &p->pool, p->e));
    for (size_t i = 0; i < list.count; i++) {
        const struct cut_run *const run = &list.stocks[i];
        const enum length_unit unit = p->e->job->unit;
        char thick[32];
        go_to(p, pool_words(&p->pool, "%s, %s thick",
                            material_name(p->e->rates, run->kind, run->material),
                            length_show(run->thickness, unit, thick, sizeof thick)));
        for (size_t g = 0; g < run->gang_count; g++) {
            const struct cut_gang *const gang = &run->gangs[g];
            char sides[4][32];
            (void)length_show(gang->width, unit, sides[0], sizeof sides[0]);
            (void)length_show(gang->length, unit, sides[1], sizeof sides[1]);
            (void)length_show(gang->rough_width, unit, sides[2], sizeof sides[2]);
            (void)length_show(gang->rough_length, unit, sides[3], sizeof sides[3]);
            want_row(p);
            want_text(p, 0,
                      pool_words(&p->pool, " %lld x %s x %s", (long long)gang->pieces, sides[0],
                                 sides[1]));
            want_text(p, 1,
                      run->kind != MATERIAL_LUMBER
                          ? ""
                          : pool_words(&p->pool, "%s x %s", sides[2], sides[3]));
            want_text(p, 2, gang->parts);
            want_text(p, 3, gang->doors);
        }
        want_end(p);
    }
}

/* What was ticked is found again by the words of its line: no two lines have the same. */
static void check_ticks(struct page *p) {
    size_t ticks = 0;
    for (size_t i = 0; i < p->markup.count; i++) {
        const char *const tick = markup_value(at(p, i), "data-tick");
        for (size_t k = 0; tick != NULL && k < i; k++) {
            const char *const other = markup_value(at(p, k), "data-tick");
            if (other != NULL && strcmp(tick, other) == 0) {
                bench_wrong(p->bench, "two boxes are of '%s'", tick);
            }
        }
        ticks += tick != NULL ? 1 : 0;
    }
    if (ticks == 0) {
        bench_wrong(p->bench, "there is nothing to tick");
    }
}

static int check_page(struct bench *bench) {
    const struct page_facts facts = {.base = &bench->estimate, .problems = &bench->problems};
    struct page p = {.bench = bench, .e = &bench->estimate};
    pool_init(&p.pool);
    assert_true(page_write(&facts, PAGE, NULL));
    markup_read_page(&p.markup, PAGE);
    assert_int_equal(unlink(PAGE), 0);
    check_doors(&p);
    check_sale(&p);
    check_buy(&p);
    check_cut(&p);
    check_ticks(&p);
    markup_clear(&p.markup);
    pool_clear(&p.pool);
    return bench_close(bench);
}

static void test_samples(void **state) {
    static const char *const jobs[] = {"samples/metric/tea-kitchen.ini",
                                       "samples/old-house/old-house.ini",
                                       "samples/kitchen/kitchen.ini"};
    (void)state;
    bench_each_job(jobs, COUNT(jobs), check_page);
}

static void test_jobs(void **state) {
    static const struct bench_job rows[] = {
        {"exempt from tax",
         BENCH_INCH,
         {"sale|tax on = none\nexempt = 12-345\ndiscount = 5 %\nstages = 30 % when glued up", NULL},
         "id,width,height,room\nA,15,30,galley\nB,15,30,\nC,12,24,galley\n"},
        {"all lines",
         BENCH_INCH,
         {"sale|tax = 8 %\ntax on = selling price\ndiscount = 5 %\ndeposit = 40 %\n"
          "card fee = 3 % added\ndelivery = 120.00\ncharges = 80.00 for samples",
          "make|finish = painted\nhinge = hinge\npull = pull", NULL},
         "id,count,width,height,style\nA,2,15,30,plain\nB,1,18,40,glazed\nC,3,18,10,slab\n"},
    };
    (void)state;
    bench_each(rows, COUNT(rows), check_page);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_samples),
        cmocka_unit_test(test_jobs),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
