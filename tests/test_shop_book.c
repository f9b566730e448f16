/* SPDX-License-Identifier: MIT */
/* The shop's workbook of small jobs, of a sample and of all ways to open, read back and
 * recalculated by a reader that knows neither tape nor library: every cell that is made of others
 * works out to what is stored, each figure stands in its cell, all checks hold; and a rate that is
 * typed over in its cell makes the total of an estimate with that rate in its file. */
#include "support.h"

#include "report/shop/workbook.h"
#include "xlsx_read.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include <cmocka.h>

#define PATH "test-shop-book.xlsx"

/* `C7` of a cell. */
static const char *reference(const struct xlsx *read, const struct xlsx_cell *cell, char *text,
                             size_t size) {
    char letters[8];
    size_t at = sizeof letters - 1;
    letters[at] = '\0';
    for (int column = cell->column; column >= 0; column = column / 26 - 1) {
        letters[--at] = (char)('A' + column % 26);
    }
    (void)snprintf(text, size, "%s!%s%u", read->names[cell->sheet], &letters[at],
                   (unsigned)cell->row + 1);
    return text;
}

/* The book as it was laid out, to be asked for its figures; it was written once more, and read. */
static struct shop_book *open_book(const struct bench *bench, struct xlsx *read) {
    struct shop_book *const written =
        shop_book_new(&bench->estimate, NULL, 0, &bench->problems, NULL);
    assert_non_null(written);
    assert_true(shop_book_write(written, PATH));
    shop_book_free(written);
    xlsx_read(read, PATH);
    assert_int_equal(unlink(PATH), 0);
    struct shop_book *const book = shop_book_new(&bench->estimate, NULL, 0, &bench->problems, NULL);
    assert_non_null(book);
    return book;
}

static bool same(double found, double wanted) {
    return fabs(found - wanted) <= 1e-9 * fmax(1, fabs(wanted));
}

/* The number in a cell of a figure is that of the tape, as it is stored and as it works out. Checks
 * are words, which other programs work out. */
static void check_figures(struct bench *bench, const struct shop_book *book, struct xlsx *read) {
    const struct tape *const tape = &bench->estimate.tape;
    size_t figures = 0;
    size_t formulas = 0;
    for (size_t i = 0; i < read->count; i++) {
        struct xlsx_cell *const cell = &read->cells[i];
        char at[80];
        const fig figure = shop_book_figure(book, reference(read, cell, at, sizeof at));
        if (fig_none(figure) || cell->value.kind != XLSX_NUMBER) {
            continue;
        }
        /* what is taken off shows a figure below nothing */
        const bool less = cell->formula != NULL && cell->formula[0] == '-';
        const double wanted = less ? -tape_real(tape, figure) : tape_real(tape, figure);
        const struct xlsx_value found = xlsx_work_out(read, cell);
        figures++;
        formulas += cell->formula != NULL ? 1 : 0;
        if (!same(cell->value.number, wanted)) {
            bench_wrong(bench, "%s is %.9g, its figure %.9g", at, cell->value.number, wanted);
        }
        if (found.kind != XLSX_NUMBER || !same(found.number, wanted)) {
            bench_wrong(bench, "%s works out to %.9g, its figure is %.9g: =%s", at, found.number,
                        wanted, cell->formula == NULL ? "" : cell->formula);
        }
    }
    if (read->fault != NULL || figures < 150 || formulas < 80) {
        bench_wrong(bench, "%zu figures, %zu formulas, %s", figures, formulas,
                    read->fault == NULL ? "too few" : read->fault);
    }
}

/* What says whether the job is as planned says so, in the words that are stored. */
static void check_words(struct bench *bench, const struct xlsx *read) {
    size_t words = 0;
    for (size_t i = 0; i < read->count; i++) {
        const struct xlsx_cell *const cell = &read->cells[i];
        char at[80];
        if (cell->formula == NULL || cell->value.kind == XLSX_NUMBER) {
            continue;
        }
        words += cell->value.kind == XLSX_TEXT ? 1 : 0;
        if (cell->value.kind == XLSX_ERROR ||
            (cell->value.kind == XLSX_TEXT && (strstr(cell->value.text, "again") != NULL ||
                                               strstr(cell->value.text, "wrong") != NULL))) {
            bench_wrong(bench, "%s says %s", reference(read, cell, at, sizeof at),
                        cell->value.text);
        }
    }
    if (words == 0) {
        bench_wrong(bench, "nothing is checked");
    }
}

static void check_names(struct bench *bench, const struct xlsx *read) {
    for (size_t i = 0; i < read->sheet_count; i++) {
        if (strlen(read->names[i]) > 31) { /* the most that the format takes */
            bench_wrong(bench, "'%s' is too long", read->names[i]);
        }
        for (size_t k = 0; k < i; k++) {
            if (strcasecmp(read->names[i], read->names[k]) == 0) {
                bench_wrong(bench, "two sheets are called '%s'", read->names[i]);
            }
        }
    }
}

static int check_book(struct bench *bench) {
    struct xlsx read;
    struct shop_book *const book = open_book(bench, &read);
    check_names(bench, &read);
    check_figures(bench, book, &read);
    check_words(bench, &read);
    shop_book_free(book);
    xlsx_clear(&read);
    return bench_close(bench);
}

static void test_samples(void **state) {
    static const char *const jobs[] = {"samples/metric/tea-kitchen.ini", "tests/data/opens.ini"};
    (void)state;
    bench_each_job(jobs, COUNT(jobs), check_book);
}

/* What no sample has, or has all at once. */
static void test_kinds(void **state) {
    static const struct bench_job rows[] = {
        {"the barest job", BENCH_INCH, {NULL}, "A,15,30\n"},
        {"in millimeters", BENCH_MM, {NULL}, "A,400,700\n"},
        {"waste that is lost, by plan",
         BENCH_INCH,
         {"lumber poplar|waste = 25 % lost\nboard widths = 6, 8\nboard lengths = 8 ft",
          "shop|price lumber by = plan\nprice sheets by = plan", NULL},
         "id,count,width,height\nA,5,15,30\n"},
        {"crosscut first",
         BENCH_INCH,
         {"lumber poplar|board widths = 6, 8\nboard lengths = 8 ft", "shop|price lumber by = plan",
          "saw|first cut = crosscut", NULL},
         "id,count,width,height\nA,5,15,30\n"},
        {"price breaks and a minimum",
         BENCH_INCH,
         {"lumber poplar|price from = 10 bf at 3.50 per bf, 100 bf at 3.00 per bf\nminimum = 8 bf",
          "shop|minimum job = 900", NULL},
         "id,count,width,height\nA,5,15,30\n"},
        {"tax, discounts, stages, a card",
         BENCH_INCH,
         {"sale|tax = 8.25 %\ntax on = selling price\ndiscount = 5 %\ndeposit = 40 %\n"
          "card fee = 3 % added\ndelivery = 120.00\ncharges = 80.00 for samples",
          "shop|profit = 20 % markup\noverhead = 14.00 per hour\ncontingency = 3 %", NULL},
         "id,count,width,height\nA,5,15,30\n"},
        {"every kind of door, finish, glass and hardware",
         BENCH_INCH,
         {"make|finish = painted\nhinge = hinge\npull = pull",
          "operation work|per = door\nminutes = 7.5\nmachine = sander",
          "door plain|operations = work", "shop|remakes = 2 % of doors", NULL},
         "id,count,width,height,style,leaves\nA,2,15,30,plain,1\nB,1,18,30,glazed,2\n"
         "D,1,18,40,open,1\nE,3,18,10,slab,1\nF,1,15,30,mitred,1\n"},
    };
    (void)state;
    bench_each(rows, COUNT(rows), check_book);
}

/* --- rates typed over --- */

#define WORK  "operation work|per = door\nminutes = 10\nmachine = sander"
#define WORKS "door plain|operations = work"
#define SHOP  "shop|profit = 20 % markup\noverhead = 14.00 per hour"
#define SALE_ "sale|tax = 8 %\ntax on = selling price\ndiscount = 5 %"
#define ROWS  "id,count,width,height\nA,12,15,30\nB,3,18,40\n"

static void open_moved(struct bench *bench, const char *name, const char *edit) {
    const char *const edits[] = {WORK, WORKS, SHOP, SALE_, edit, NULL};
    bench_open(bench, name, BENCH_INCH, edits, ROWS);
    bench_sound(bench);
}

/* The cell of the number that stands at a place of the files, which is made of nothing. */
static struct xlsx_cell *cell_of(const struct bench *bench, const struct shop_book *book,
                                 struct xlsx *read, const char *section, const char *key) {
    const struct tape *const tape = &bench->estimate.tape;
    struct xlsx_cell *found = NULL;
    for (size_t i = 0; i < read->count; i++) {
        struct xlsx_cell *const cell = &read->cells[i];
        char at[80];
        const fig figure = shop_book_figure(book, reference(read, cell, at, sizeof at));
        if (fig_none(figure) || cell->formula != NULL || tape_op(tape, figure) != OP_GIVEN) {
            continue;
        }
        const struct setting *const rates =
            setting_at(&bench->rates.settings, tape_origin(tape, figure).place);
        const struct setting *const job =
            setting_at(&bench->job.settings, tape_origin(tape, figure).place);
        const struct setting *const of = rates != NULL ? rates : job;
        if (of != NULL && strcmp(of->title, section) == 0 && strcmp(of->key, key) == 0) {
            found = found == NULL ? cell : found;
        }
    }
    return found;
}

static double total_of(struct bench *bench, const struct shop_book *book, struct xlsx *read) {
    for (size_t i = 0; i < read->count; i++) {
        char at[80];
        const fig figure = shop_book_figure(book, reference(read, &read->cells[i], at, sizeof at));
        if (!fig_none(figure) && figure.id == bench->estimate.sale.total.id) {
            return xlsx_work_out(read, &read->cells[i]).number;
        }
    }
    bench_wrong(bench, "the total is in no cell");
    return 0;
}

static void test_typed_over(void **state) {
    static const struct {
        const char *section, *key;
        double value;
        const char *edit;
    } rows[] = {
        {"shop", "labor rate", 72, "shop|labor rate = 72.00 per hour"},
        {"shop", "profit", 35, "shop|profit = 35 % markup"},
        {"shop", "overhead", 9.5, "shop|overhead = 9.50 per hour"},
        {"lumber poplar", "price", 5.25, "lumber poplar|price = 5.25 per bf"},
        {"lumber poplar", "waste", 40, "lumber poplar|waste = 40 % added"},
        {"sheet ply", "price", 61, "sheet ply|price = 61.00 per sheet"},
        {"operation work", "minutes", 12.5, "operation work|minutes = 12.5"},
        {"machine sander", "rate", 30, "machine sander|rate = 30.00 per hour"},
        {"sale", "tax", 6.25, "sale|tax = 6.25 %"},
        {"sale", "discount", 10, "sale|discount = 10 %"},
    };
    struct bench bench;
    struct xlsx read;
    (void)state;
    open_moved(&bench, "as it is", NULL);
    struct shop_book *const book = open_book(&bench, &read);
    for (size_t i = 0; i < COUNT(rows); i++) {
        struct bench edited;
        struct xlsx_cell *const cell = cell_of(&bench, book, &read, rows[i].section, rows[i].key);
        if (cell == NULL) {
            bench_wrong(&bench, "[%s] %s is in no cell", rows[i].section, rows[i].key);
            continue;
        }
        const double was = cell->value.number;
        open_moved(&edited, rows[i].key, rows[i].edit);
        cell->value.number = rows[i].value;
        xlsx_forget(&read);
        const double total = total_of(&bench, book, &read);
        const double wanted = tape_real(&edited.estimate.tape, edited.estimate.sale.total);
        if (fabs(total - wanted) > 0.001) {
            bench_wrong(&bench, "[%s] %s: the book comes to %.4f, the estimate to %.4f",
                        rows[i].section, rows[i].key, total, wanted);
        }
        cell->value.number = was;
        xlsx_forget(&read);
        bench.wrong += bench_close(&edited);
    }
    assert_true(same(total_of(&bench, book, &read),
                     tape_real(&bench.estimate.tape, bench.estimate.sale.total)));
    shop_book_free(book);
    xlsx_clear(&read);
    assert_int_equal(bench_close(&bench), 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_samples),
        cmocka_unit_test(test_kinds),
        cmocka_unit_test(test_typed_over),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
