/* SPDX-License-Identifier: MIT */
/* The client's page and workbook of small jobs, read back by a parser of XML: each line of the
 * offer and each row of its list stands there once and in its order, formulas come to what is
 * stored, nothing on the page is fetched or run. */
#include "support.h"

#include "base/text.h"
#include "markup_read.h"
#include "report/client/client_book.h"
#include "report/client/client_layout.h"
#include "report/client/client_page.h"
#include "report/offer_make/offer_make.h"
#include "xlsx_read.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include <cmocka.h>

#define PAGE "test-client-papers.html"
#define BOOK "test-client-papers.xlsx"

#define SOLD "sale|tax = 8.25 %\ntax on = selling price\ndiscount = 5 %\ndeposit = 40 %"
#define ROOMS                                                                                      \
    "id,count,width,height,room,note\nA,5,15,30,galley,by the "                                    \
    "sink\nB,2,18,40,galley,\nC,1,12,24,,<odd> & \"true\"\n"

static const struct bench_job cases[] = {
    {"the barest", BENCH_INCH, {NULL}, "A,15,30\n"},
    {"each door", BENCH_INCH, {"job|detail = each", SOLD, NULL}, ROOMS},
    {"a sum for each room", BENCH_INCH, {"job|detail = rooms", SOLD, NULL}, ROOMS},
    {"one sum", BENCH_INCH, {"job|detail = sum", SOLD, NULL}, ROOMS},
    {"delivery and charges",
     BENCH_INCH,
     {"job|detail = each", SOLD "\ndelivery = 120.00\ncharges = 80.00 for samples, 45.50 for trips",
      NULL},
     ROOMS},
    {"a card fee on top",
     BENCH_INCH,
     {"job|detail = each", SOLD "\ncard fee = 2.9 % added", NULL},
     ROOMS},
    {"a card fee of what is paid",
     BENCH_INCH,
     {"job|detail = rooms", SOLD "\ncard fee = 2.9 % of what is paid", NULL},
     ROOMS},
    {"a card fee without tax",
     BENCH_INCH,
     {"job|detail = each", "sale|card fee = 2.9 % added\ndiscount = 5 %", NULL},
     ROOMS},
    {"a minimum", BENCH_INCH, {"job|detail = each", SOLD, "shop|minimum job = 900", NULL}, ROOMS},
    {"stages", BENCH_INCH, {SOLD "\nstages = 30 % when the doors are glued up", NULL}, ROOMS},
    {"pairs",
     BENCH_INCH,
     {"job|detail = each", NULL},
     "id,count,width,height,leaves\nA,2,18,30,2\nB,1,15,30,1\n"},
    {"tax on materials",
     BENCH_INCH,
     {"sale|tax = 6 %\ntax on = materials at cost\ndelivery = 3 %", NULL},
     ROOMS},
};

/* --- the page --- */

static const struct markup_element *body_row(const struct markup *page, const char *caption,
                                             size_t row, size_t *first) {
    size_t at = 0;
    while (at < page->count && (strcmp(page->elements[at].name, "caption") != 0 ||
                                strcmp(page->elements[at].text, caption) != 0)) {
        at++;
    }
    /* behind the caption come the head's row, then those of the body */
    for (size_t rows = 0; at < page->count; at++) {
        if (strcmp(page->elements[at].name, "tr") == 0) {
            if (rows++ == row + 1) {
                *first = at + 1;
                return &page->elements[at];
            }
        } else if (rows > 0 && strcmp(page->elements[at].name, "table") == 0) {
            return NULL;
        }
    }
    return NULL;
}

static void check_lines(struct bench *bench, const struct markup *page, const char *caption,
                        const struct offer_line *lines, size_t count) {
    size_t first = 0;
    for (size_t i = 0; i < count; i++) {
        const struct markup_element *const row = body_row(page, caption, i, &first);
        if (row == NULL || strcmp(page->elements[first].text, lines[i].words) != 0 ||
            strcmp(page->elements[first + 1].text, lines[i].amount.text) != 0) {
            bench_wrong(bench, "line '%s' is not in its place", lines[i].words);
        }
    }
    if (body_row(page, caption, count, &first) != NULL) {
        bench_wrong(bench, "'%s' has more lines", caption);
    }
}

static double no_measure(void *paper, const char *text, bool bold) {
    (void)paper;
    (void)text;
    (void)bold;
    return 1;
}

/* Room by room; a room with a line of its own has it above its doors. */
static void check_list(struct bench *bench, const struct markup *page, const struct offer *o) {
    struct client_columns columns;
    size_t row = 0;
    size_t first = 0;
    client_columns_make(&columns, o, no_measure, NULL, 100, 0);
    for (size_t r = 0; r < o->room_count; r++) {
        if (client_room_has_head(o, &o->rooms[r])) {
            const struct markup_element *const head =
                body_row(page, "Each row of the list", row++, &first);
            const char *const name =
                o->rooms[r].name[0] == '\0' ? CLIENT_NO_ROOM : o->rooms[r].name;
            if (head == NULL || strncmp(head->text, name, strlen(name)) != 0 ||
                (offer_has_sums(o) && strstr(head->text, o->rooms[r].amount.text) == NULL)) {
                bench_wrong(bench, "room '%s' is not in its place", name);
            }
        }
        for (size_t i = 0; i < o->rooms[r].count; i++) {
            const struct offer_door *const door = &o->doors[o->rooms[r].first + i];
            if (body_row(page, "Each row of the list", row++, &first) == NULL) {
                bench_wrong(bench, "row '%s' lacks", door->id);
                continue;
            }
            for (size_t c = 0; c < columns.count; c++) {
                /* of a room's sum alone the rows have no amount */
                const char *const text =
                    text_or_empty(client_cell(o, door, columns.list[c].is).text);
                if (strcmp(page->elements[first + c].text, text) != 0) {
                    bench_wrong(bench, "row '%s': '%s' is not '%s'", door->id,
                                page->elements[first + c].text, text);
                }
            }
        }
    }
    if (body_row(page, "Each row of the list", row, &first) != NULL) {
        bench_wrong(bench, "the list has more rows");
    }
}

/* Nothing is fetched: pictures are in the page; there is no script and no link. */
static void check_quiet(struct bench *bench, const struct markup *page) {
    static const char *const asking[] = {"script", "link", "a", "iframe", "form", "object"};
    for (size_t i = 0; i < COUNT(asking); i++) {
        if (markup_count(page, asking[i], NULL) > 0) {
            bench_wrong(bench, "the page has <%s>", asking[i]);
        }
    }
    for (size_t i = 0; i < page->count; i++) {
        const char *const from = markup_value(&page->elements[i], "src");
        if (from != NULL && strncmp(from, "data:", 5) != 0) {
            bench_wrong(bench, "the page fetches %s", from);
        }
    }
}

static void check_page(struct bench *bench, const struct offer *o) {
    struct markup page;
    size_t words = 0;
    struct client_words lists[CLIENT_WORDS_COUNT];
    assert_true(client_page_write(o, PAGE));
    markup_read_page(&page, PAGE);
    assert_int_equal(unlink(PAGE), 0);
    check_quiet(bench, &page);
    check_lines(bench, &page, "From the doors to the total", o->lines, o->line_count);
    check_lines(bench, &page, o->payments_head[0] != '\0' ? o->payments_head : "What is due when",
                o->payments, o->payment_count);
    check_list(bench, &page, o);
    client_words_make(o, lists);
    for (size_t i = 0; i < CLIENT_WORDS_COUNT; i++) {
        for (size_t n = 0; n < lists[i].texts->count; n++) {
            const struct markup_element *const item = markup_find(&page, "li", NULL, words++);
            if (item == NULL || strcmp(item->text, lists[i].texts->text[n]) != 0) {
                bench_wrong(bench, "'%s' is not in its place", lists[i].texts->text[n]);
            }
        }
    }
    if (markup_count(&page, "li", NULL) != words || markup_count(&page, "h1", NULL) != 1 ||
        markup_count(&page, "figure", NULL) != o->kind_count ||
        markup_count(&page, "svg", "door") != o->kind_count) {
        bench_wrong(bench, "more or less than the offer has");
    }
    const struct markup_element *const strong = markup_find(&page, "strong", NULL, 0);
    if (strong == NULL || strcmp(strong->text, o->total_words) != 0) {
        bench_wrong(bench, "the total does not stand above");
    }
    markup_clear(&page);
}

/* --- the workbook --- */

static double amount_of(const struct offer_amount *amount) {
    return (double)amount->value / pow(10, amount->decimals);
}

/* Of every line a number stands in the first sheet, in its order. */
static void check_amounts(struct bench *bench, const struct xlsx *read, const struct offer *o) {
    size_t at = 0;
    for (size_t i = 0; i < o->line_count; i++) {
        const double wanted = amount_of(&o->lines[i].amount);
        while (at < read->count &&
               (read->cells[at].sheet != 0 || read->cells[at].value.kind != XLSX_NUMBER ||
                fabs(read->cells[at].value.number - wanted) > 1e-6)) {
            at++;
        }
        if (at++ >= read->count) {
            bench_wrong(bench, "'%s' is in no cell behind those before it", o->lines[i].words);
            return;
        }
    }
}

static void check_book(struct bench *bench, const struct offer *o) {
    struct xlsx read;
    size_t formulas = 0;
    assert_true(client_book_write(o, BOOK, NULL));
    xlsx_read(&read, BOOK);
    assert_int_equal(unlink(BOOK), 0);
    check_amounts(bench, &read, o);
    for (size_t i = 0; i < read.count; i++) {
        struct xlsx_cell *const cell = &read.cells[i];
        if (cell->formula == NULL) {
            continue;
        }
        const double stored = cell->value.number;
        const struct xlsx_value found = xlsx_work_out(&read, cell);
        formulas++;
        if (found.kind != XLSX_NUMBER || fabs(found.number - stored) > 1e-6) {
            bench_wrong(bench, "row %u, column %u is %.4f and works out to %.4f: =%s",
                        (unsigned)cell->row + 1, cell->column, stored, found.number, cell->formula);
        }
    }
    if (formulas == 0 && o->line_count > 2) {
        bench_wrong(bench, "there are no formulas");
    }
    xlsx_clear(&read);
}

static int check_papers(struct bench *bench) {
    struct offer offer;
    assert_true(offer_make(&offer, &bench->estimate, NULL, 0));
    check_page(bench, &offer);
    check_book(bench, &offer);
    offer_clear(&offer);
    return bench_close(bench);
}

static void test_papers(void **state) {
    (void)state;
    bench_each(cases, COUNT(cases), check_papers);
}

/* The kitchen with one of its options: what it is, and what comes of it. */
static void test_option(void **state) {
    struct bench bench;
    struct estimate option = {0};
    struct offer offer;
    struct markup page;
    (void)state;
    bench_open_job(&bench, "samples/kitchen/kitchen.ini");
    assert_true(bench.job.option_count > 0);
    assert_int_equal(
        estimate_make(&option, &bench.rates, &bench.job, bench_request(0), &bench.problems),
        ESTIMATE_OK);
    assert_true(offer_make(&offer, &bench.estimate, &option, 1));
    check_page(&bench, &offer);
    check_book(&bench, &offer);
    assert_true(client_page_write(&offer, PAGE));
    markup_read_page(&page, PAGE);
    assert_int_equal(unlink(PAGE), 0);
    const struct markup_element *const head = markup_find(&page, "h3", NULL, 0);
    const struct markup_element *const first = markup_find(&page, "strong", NULL, 1);
    assert_int_equal(offer.option_count, 1);
    assert_int_equal(markup_count(&page, "h3", NULL), 1);
    if (head != NULL && first != NULL) {
        assert_string_equal(head->text, offer.options[0].name);
        assert_string_equal(first->text, offer.options[0].first);
    }
    assert_true(head != NULL && first != NULL);
    assert_string_equal(markup_find(&page, "p", "mark", 0)->text, "example prices");
    markup_clear(&page);
    offer_clear(&offer);
    estimate_clear(&option);
    assert_int_equal(bench_close(&bench), 0);
}

/* What is told of whom it is for: facts that have words, each once. */
static void test_facts(void **state) {
    static const char *const edits[] = {"job|client = C. Client\naddress = 3 Elm Street\n"
                                        "number = 0042",
                                        NULL};
    (void)state;
    for (int told = 0; told < 2; told++) {
        struct bench bench;
        struct offer offer;
        struct markup page;
        bench_open(&bench, "facts", BENCH_INCH, told == 0 ? NULL : edits, "A,15,30\n");
        assert_true(offer_make(&offer, &bench.estimate, NULL, 0));
        assert_true(client_page_write(&offer, PAGE));
        markup_read_page(&page, PAGE);
        assert_int_equal(unlink(PAGE), 0);
        size_t facts = told == 0 ? 0 : 2;
        for (size_t i = 0; i < offer.fact_count; i++) {
            facts += offer.facts[i].text[0] != '\0' ? 1 : 0;
        }
        assert_int_equal(markup_count(&page, "dt", NULL), facts);
        assert_int_equal(markup_count(&page, "dd", NULL), facts);
        if (told == 1) {
            assert_string_equal(markup_find(&page, "dd", NULL, 0)->text, "C. Client");
            assert_string_equal(markup_find(&page, "dd", NULL, 1)->text, "3 Elm Street");
        }
        assert_int_equal(markup_count(&page, "p", "mark"), 0);
        markup_clear(&page);
        offer_clear(&offer);
        assert_int_equal(bench_close(&bench), 0);
    }
}

static void test_samples(void **state) {
    static const char *const jobs[] = {"samples/kitchen/kitchen.ini",
                                       "samples/metric/tea-kitchen.ini",
                                       "samples/old-house/old-house.ini"};
    (void)state;
    bench_each_job(jobs, COUNT(jobs), check_papers);
}

/* --- columns of the list --- */

static double letters(void *paper, const char *text, bool bold) {
    ++*(size_t *)paper;
    return (double)strlen(text) * (bold ? 1.1 : 1);
}

/* Each column of numbers holds the widest of its cells and its head, with a gap; names of rows are
 * held to a fifth; what a door is has the rest, or a fifth where that is more. */
static void test_columns(void **state) {
    static const struct {
        const char *detail, *doors;
        double total;
    } rows[] = {
        {"job|detail = each", ROOMS, 100},
        {"job|detail = each", "id,width,height\nA,15,30\nthe first of all the doors,15,30\n", 90},
        {"job|detail = sum", "id,count,width,height,leaves\nA,9999,15 13/16,30 1/32,2\n", 60},
        {"job|detail = rooms", ROOMS, 40}, /* there is no room for what a door is */
    };
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(rows); i++) {
        const char *const edits[] = {rows[i].detail, NULL};
        const double gap = 1.5;
        struct bench bench;
        struct offer o;
        struct client_columns columns;
        size_t measured = 0;
        double sum = 0;
        double what = 0;
        bench_open(&bench, rows[i].detail, BENCH_INCH, edits, rows[i].doors);
        bench_sound(&bench);
        assert_true(offer_make(&o, &bench.estimate, NULL, 0));
        client_columns_make(&columns, &o, letters, &measured, rows[i].total, gap);
        for (size_t c = 0; c < columns.count; c++) {
            const struct client_column *const column = &columns.list[c];
            double widest = 0;
            sum += column->width;
            what = column->is == CLIENT_WHAT ? column->width : what;
            for (size_t d = 0; d < o.door_count; d++) {
                const double wide =
                    (double)strlen(text_or_empty(client_cell(&o, &o.doors[d], column->is).text));
                widest = wide > widest ? wide : widest;
            }
            if (column->is == CLIENT_ID) {
                widest = fmin(widest * 1.1 + gap, rows[i].total / 5) - gap;
            }
            if (column->is != CLIENT_WHAT && column->width < widest + gap - 1e-9) {
                bench_wrong(&bench, "'%s' is %.2f wide, its cells %.2f", column->head,
                            column->width, widest);
            }
        }
        const double fifth = rows[i].total / 5;
        if (what < fifth - 1e-9 || (what > fifth + 1e-9 && fabs(sum - rows[i].total) > 1e-9)) {
            bench_wrong(&bench, "columns are %.2f wide, expected %.2f", sum, rows[i].total);
        }
        assert_true(measured > 0);
        offer_clear(&o);
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_papers),  cmocka_unit_test(test_samples),
        cmocka_unit_test(test_columns), cmocka_unit_test(test_option),
        cmocka_unit_test(test_facts),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
