/* SPDX-License-Identifier: MIT */
/* The page that an estimate is looked into: its tape as JSON (RFC 8259), read back figure by
 * figure; each number of the page as its figure has it; what the page says where it leads to is
 * there. */
#include "support.h"

#include "case.h"
#include "json_read.h"
#include "markup_read.h"
#include "report/page/page.h"
#include "report/words/show.h"

#include <inttypes.h>
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include <cmocka.h>

#define PAGE "test-page.html"

struct page {
    struct bench *bench;
    struct markup markup;
    struct json_node *data;
};

/* What stands in the script that holds the data. */
static struct json_node *read_data(const char *path) {
    static const char begins[] = "<script type=\"application/json\" id=\"data\">";
    size_t bad;
    char *const text = case_load(path, NULL);
    assert_non_null(text);
    const char *const at = strstr(text, begins);
    assert_non_null(at);
    const char *const from = at + strlen(begins);
    const char *const end = strstr(from, "</script>");
    assert_non_null(end);
    struct json_node *const node = json_read(from, (size_t)(end - from), &bad);
    if (node == NULL) {
        fail_msg("no JSON from here on: %.60s", from + bad);
    }
    free(text);
    return node;
}

static void open_page(struct page *p, struct bench *bench) {
    const struct page_facts facts = {.base = &bench->estimate, .problems = &bench->problems};
    *p = (struct page){.bench = bench};
    assert_true(page_write(&facts, PAGE, NULL));
    markup_read_page(&p->markup, PAGE);
    p->data = read_data(PAGE);
    assert_int_equal(unlink(PAGE), 0);
}

static int close_page(struct page *p) {
    markup_clear(&p->markup);
    json_free(p->data);
    return bench_close(p->bench);
}

/* --- the tape --- */

static const struct json_node *item(const struct json_node *list, size_t at) {
    const struct json_node *node = list == NULL ? NULL : list->first;
    for (; node != NULL && at > 0; at--) {
        node = node->next;
    }
    return node;
}

static int64_t whole(const struct json_node *node) {
    return node == NULL || node->kind != NODE_NUMBER ? INT64_MIN : strtoll(node->text, NULL, 10);
}

static bool is_text(const struct page *p, const struct json_node *number, const char *wanted) {
    const struct json_node *const text = item(json_get(p->data, "texts"), (size_t)whole(number));
    return text != NULL && text->kind == NODE_TEXT &&
           strcmp(text->text, wanted == NULL ? "" : wanted) == 0;
}

/* The operands stand last: each so far before the figure, below nothing where it is taken away. */
static void check_operands(struct page *p, fig f, const struct json_node *figure) {
    const struct tape *const tape = &p->bench->estimate.tape;
    const size_t count = tape_operands(tape, f);
    const size_t all = json_length(figure);
    for (size_t i = 0; i < count; i++) {
        const struct operand o = tape_operand(tape, f, i);
        const int64_t back = (int64_t)(f.id - o.f.id);
        if (all < count || whole(item(figure, all - count + i)) != (o.minus ? -back : back)) {
            bench_wrong(p->bench, "figure %u has another operand %zu", (unsigned)f.id, i);
            return;
        }
    }
}

/* Where a given comes from: its source, or file and line and, of a sheet, the cell; what a choice
 * is chosen by. All that stands in a figure's list is looked at. */
static void check_origin(struct page *p, fig f, const struct json_node *figure) {
    const struct tape *const tape = &p->bench->estimate.tape;
    const struct origin origin = tape_origin(tape, f);
    size_t more = 0;
    bool good = true;
    if (tape_op(tape, f) == OP_CHOSEN) {
        uint32_t output = 0;
        const struct chooser *const chooser = tape_chooser(tape, f, &output);
        more = 2;
        good = is_text(p, item(figure, 3), chooser->name) && whole(item(figure, 4)) == output;
    } else if (tape_op(tape, f) == OP_GIVEN && origin.source != NULL) {
        more = 1;
        good = is_text(p, item(figure, 3), origin.source);
    } else if (tape_op(tape, f) == OP_GIVEN && origin.place.file != 0) {
        more = 3; /* no sheet is read here */
        good = is_text(p, item(figure, 3),
                       problems_file_name(&p->bench->problems, origin.place.file)) &&
               whole(item(figure, 4)) == origin.place.line &&
               (whole(item(figure, 5)) == -1) == origin.worked;
    }
    if (!good || json_length(figure) != 3 + more + tape_operands(tape, f)) {
        bench_wrong(p->bench, "figure %u comes from elsewhere", (unsigned)f.id);
    }
}

static void check_tape(struct page *p) {
    const struct tape *const tape = &p->bench->estimate.tape;
    const struct json_node *node = json_get(p->data, "figures");
    const struct json_node *const kinds = json_get(p->data, "kinds");
    assert_non_null(node);
    assert_int_equal(json_length(node), tape->count);
    assert_int_equal(whole(json_get(p->data, "total")), p->bench->estimate.sale.total.id);
    assert_int_equal(whole(json_get(p->data, "money")), tape->money_decimals);
    node = node->first->next;
    for (uint32_t id = 1; id < tape->count && node != NULL; id++, node = node->next) {
        const fig f = {id};
        const struct json_node *const kind = item(kinds, (size_t)whole(node->first));
        if (whole(item(kind, 0)) != (int64_t)tape_op(tape, f) ||
            !is_text(p, item(kind, 1), show_unit_name(&p->bench->estimate, f)) ||
            whole(item(kind, 2)) != tape_decimals(tape, f) ||
            !is_text(p, item(kind, 3), tape_label(tape, f))) {
            bench_wrong(p->bench, "figure %u is of another kind", (unsigned)id);
        }
        if (!is_text(p, item(node, 1), tape_subject_name(tape, f)) ||
            whole(item(node, 2)) != tape_amount(tape, f)) {
            bench_wrong(p->bench, "figure %u is of something else", (unsigned)id);
        }
        check_operands(p, f, node);
        check_origin(p, f, node);
    }
}

/* Two texts are never the same, nor two kinds. */
static void check_once(struct page *p) {
    static const char *const lists[] = {"texts", "kinds"};
    for (size_t l = 0; l < COUNT(lists); l++) {
        const struct json_node *const list = json_get(p->data, lists[l]);
        for (const struct json_node *a = list->first; a != NULL; a = a->next) {
            for (const struct json_node *b = a->next; b != NULL; b = b->next) {
                bool same = l == 0 ? strcmp(a->text, b->text) == 0 : true;
                for (size_t i = 0; l == 1 && i < 4; i++) {
                    same = same && whole(item(a, i)) == whole(item(b, i));
                }
                if (same) {
                    bench_wrong(p->bench, "%s stand there twice", lists[l]);
                    return;
                }
            }
        }
    }
}

/* --- what is shown --- */

/* Each number on the page is that of its figure, money to its cents. */
static void check_shown(struct page *p) {
    const struct estimate *const e = &p->bench->estimate;
    size_t shown = 0;
    for (size_t i = 0; i < p->markup.count; i++) {
        const struct markup_element *const b = &p->markup.elements[i];
        const char *const of = markup_value(b, "data-f");
        if (of == NULL || markup_value(b, "data-as") != NULL) {
            continue;
        }
        const uint32_t id = (uint32_t)strtoul(of, NULL, 10);
        assert_true(id > 0 && id < e->tape.count);
        const fig f = {id};
        const bool less = markup_value(b, "data-less") != NULL;
        char *end;
        const double found = strtod(b->text, &end);
        const double wanted = less ? -tape_real(&e->tape, f) : tape_real(&e->tape, f);
        shown++;
        if (*end != '\0' || fabs(found - wanted) > 1e-9 * fmax(1, fabs(wanted))) {
            bench_wrong(p->bench, "'%s' is not figure %u, %.9g", b->text, (unsigned)id, wanted);
        }
    }
    if (shown < 30) {
        bench_wrong(p->bench, "%zu numbers are shown", shown);
    }
}

/* The table that an element stands in. */
static size_t table_of(const struct page *p, size_t at) {
    while (at > 0 && strcmp(p->markup.elements[at].name, "table") != 0) {
        at = p->markup.elements[at].parent;
    }
    return at;
}

/* A bar is as long as its figure is of the largest of its table, which has all of the width; below
 * nothing there is none. */
static void check_bars(struct page *p) {
    const struct tape *const tape = &p->bench->estimate.tape;
    size_t bars = 0;
    for (size_t i = 0; i < p->markup.count; i++) {
        const char *const of = markup_value(&p->markup.elements[i], "data-bar");
        double most = 0;
        if (of == NULL) {
            continue;
        }
        for (size_t k = 0; k < p->markup.count; k++) {
            const char *const other = markup_value(&p->markup.elements[k], "data-bar");
            if (other != NULL && table_of(p, k) == table_of(p, i)) {
                most = fmax(most, tape_real(tape, (fig){(uint32_t)strtoul(other, NULL, 10)}));
            }
        }
        const double is = tape_real(tape, (fig){(uint32_t)strtoul(of, NULL, 10)});
        const char *const style = markup_value(&p->markup.elements[i], "style");
        const double wide = style == NULL ? -1 : strtod(style + strlen("width:"), NULL);
        const double wanted = is > 0 && most > 0 ? 100 * is / most : 0;
        bars++;
        if (fabs(wide - wanted) > 0.0501 || wide > 100) {
            bench_wrong(p->bench, "a bar is %.1f %% wide, expected %.1f %%", wide, wanted);
        }
    }
    if (bars == 0) {
        bench_wrong(p->bench, "there are no bars");
    }
}

/* What stays in sight: the total, what it leaves, the hours. */
static void check_state(struct page *p) {
    const struct estimate *const e = &p->bench->estimate;
    const fig wanted[] = {e->sale.total, e->sale.profit_left, e->labor.hours};
    size_t at = 0;
    for (size_t i = 0; i < p->markup.count && at < COUNT(wanted); i++) {
        const char *const of = markup_value(&p->markup.elements[i], "data-f");
        if (of != NULL) {
            if (strtoul(of, NULL, 10) != wanted[at].id) {
                bench_wrong(p->bench, "number %zu in sight is another", at + 1);
            }
            at++;
        }
    }
}

static bool is_there(const struct page *p, const char *id) {
    size_t found = 0;
    for (size_t i = 0; i < p->markup.count; i++) {
        const char *const is = markup_value(&p->markup.elements[i], "id");
        found += is != NULL && strcmp(is, id) == 0 ? 1 : 0;
    }
    return found == 1;
}

/* Links lead into the page, labels to their boxes, headings to their parts; no id stands twice. */
static void check_links(struct page *p) {
    for (size_t i = 0; i < p->markup.count; i++) {
        const struct markup_element *const e = &p->markup.elements[i];
        const char *const href = markup_value(e, "href");
        const char *const of[] = {markup_value(e, "for"), markup_value(e, "aria-labelledby"),
                                  markup_value(e, "id"),
                                  href == NULL || href[0] != '#' ? NULL : href + 1};
        if (href != NULL && href[0] != '#') {
            bench_wrong(p->bench, "a link leads to %s", href);
        }
        for (size_t k = 0; k < COUNT(of); k++) {
            if (of[k] != NULL && !is_there(p, of[k])) {
                bench_wrong(p->bench, "'%s' is not there once", of[k]);
            }
        }
        const char *const src = markup_value(e, "src");
        if (src != NULL && strncmp(src, "data:image/png;base64,", 22) != 0) {
            bench_wrong(p->bench, "a picture is fetched from %.40s", src);
        }
        if (strcmp(e->name, "img") == 0 && markup_value(e, "alt")[0] == '\0') {
            bench_wrong(p->bench, "a picture without words");
        }
    }
}

/* Rates that may be moved name givens of the tape. */
static void check_rates(struct page *p) {
    const struct tape *const tape = &p->bench->estimate.tape;
    size_t moved = 0;
    const struct json_node *const rates = json_get(p->data, "rates");
    assert_non_null(rates);
    for (const struct json_node *r = rates->first; r != NULL; r = r->next) {
        const struct json_node *const givens = json_get(r, "givens");
        if (r->kind != NODE_OBJECT) {
            continue;
        }
        moved++;
        if (givens == NULL || json_length(givens) == 0 || json_get(r, "key") == NULL) {
            bench_wrong(p->bench, "a rate moves nothing");
            continue;
        }
        for (const struct json_node *g = givens->first; g != NULL; g = g->next) {
            const fig f = {(uint32_t)whole(g)};
            if (f.id == 0 || f.id >= tape->count || tape_op(tape, f) != OP_GIVEN) {
                bench_wrong(p->bench, "a rate moves figure %u, which is no given", (unsigned)f.id);
            }
        }
    }
    if (moved < 5) {
        bench_wrong(p->bench, "%zu rates move", moved);
    }
}

static int check_page(struct bench *bench) {
    struct page p;
    open_page(&p, bench);
    check_tape(&p);
    check_once(&p);
    check_shown(&p);
    check_bars(&p);
    check_state(&p);
    check_links(&p);
    check_rates(&p);
    return close_page(&p);
}

static void test_jobs(void **state) {
    static const struct bench_job rows[] = {
        {"the barest", BENCH_INCH, {"operation work|per = door\nminutes = 10", NULL}, "A,15,30\n"},
        {"in millimeters", BENCH_MM, {NULL}, "A,400,700\nB,300,600\n"},
        {"names that look like markup",
         BENCH_INCH,
         {"job|title = </script><b> & \"odd\" 'title'\nnote = <i>note</i>",
          "shop|overhead = 14.00 per hour\nprofit = 15 % markup", NULL},
         "id,width,height,room,note\nA,15,30,<td>,\"a \"\"b\"\" & c\"\nB,18,40,,]]>\n"},
        {"finish, tax and discount",
         BENCH_INCH,
         {"make|finish = painted\nhinge = hinge", "operation work|per = door\nminutes = 7.5",
          "door plain|operations = work",
          "sale|tax = 8.25 %\ntax on = selling price\ndiscount = 5 %\ndeposit = 50 %", NULL},
         "id,count,width,height\nA,5,15,30\n"},
    };
    (void)state;
    bench_each(rows, COUNT(rows), check_page);
}

static void test_sample(void **state) {
    static const char *const jobs[] = {"samples/metric/tea-kitchen.ini"};
    (void)state;
    bench_each_job(jobs, COUNT(jobs), check_page);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_jobs),
        cmocka_unit_test(test_sample),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
