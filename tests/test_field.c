/* SPDX-License-Identifier: MIT */
/* The figures of structs as papers name them: no figure is told twice or nowhere, and the lines
 * from the doors to the total stand in one order under one name on every paper. */
#include "support.h"

#include "report/offer_make/offer_make.h"
#include "report/shop/paper.h"
#include "report/text/print.h"
#include "report/words/compared.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>

#include <cmocka.h>

static const struct {
    const char *name;
    const struct field_table *table;
} tables[] = {
    {"leaf", &fields_leaf},
    {"part", &fields_part},
    {"door price", &fields_door_price},
    {"lumber", &fields_lumber},
    {"lumber way", &fields_lumber_way},
    {"lumber plan", &fields_lumber_plan},
    {"sheet", &fields_sheet},
    {"sheet way", &fields_sheet_way},
    {"sheet job", &fields_sheet_job},
    {"sheet plan", &fields_sheet_plan},
    {"banding", &fields_banding},
    {"glass", &fields_glass},
    {"hardware", &fields_hardware},
    {"spare", &fields_spare},
    {"consumable", &fields_consumable},
    {"coat", &fields_coat},
    {"batch", &fields_batch},
    {"product", &fields_product},
    {"operation", &fields_operation},
    {"labor", &fields_labor},
    {"build-up", &fields_build_up},
    {"costs", &fields_costs},
    {"sale", &fields_sale},
    {"purchase", &fields_purchase},
};

static void wrong(int *faults, const char *table, const struct field *field, const char *what) {
    print_error("%s, '%s': %s\n", table, field_label(field), what);
    (*faults)++;
}

/* Of two fields of a table. */
static void compare(int *faults, const char *name, const struct field *a, const struct field *b) {
    const bool seen_together = (a->views & b->views & ~(unsigned)FIELD_TOTAL) != 0;
    if (a->key != NULL && b->key != NULL && strcmp(a->key, b->key) == 0) {
        wrong(faults, name, b, "its key stands twice");
    }
    if (a->offset == b->offset && (seen_together || (a->key != NULL && b->key != NULL))) {
        wrong(faults, name, b, "its figure stands twice");
    }
    /* lumber is bought by the board foot or by the cubic meter, never by both */
    if (seen_together && strcmp(field_label(a), field_label(b)) == 0 &&
        strcmp(field_label(a), "lumber to buy") != 0) {
        wrong(faults, name, b, "its label stands twice");
    }
}

static void figures_have_one_home(void **state) {
    int faults = 0;
    (void)state;
    for (size_t t = 0; t < COUNT(tables); t++) {
        const struct field_table *const table = tables[t].table;
        assert_true(table->count > 0);
        for (size_t i = 0; i < table->count; i++) {
            const struct field *const field = &table->fields[i];
            if (field->key == NULL && (field->views & ~(unsigned)FIELD_TOTAL) == 0) {
                wrong(&faults, tables[t].name, field, "no paper shows it");
            }
            for (size_t n = i + 1; n < table->count; n++) {
                compare(&faults, tables[t].name, field, &table->fields[n]);
            }
        }
    }
    assert_int_equal(faults, 0);
}

static void places_are_columns(void **state) {
    (void)state;
    assert_int_equal(field_count(&fields_sheet_job, FIELD_SHEET), 2);
    assert_int_equal(field_place(&fields_product, FIELD_MORE, offsetof(struct product, left_over)),
                     1);
    assert_string_equal(
        field_label(field_at(&fields_build_up, offsetof(struct build_up, group[COST_GLASS]))),
        "glass");
    assert_int_equal(field_group(field_at(&fields_build_up, offsetof(struct build_up, direct))),
                     COST_GROUP_COUNT);
}

/* Two parts, one of them of glass: its cost has a column, blanks have none. */
static void empty_columns_go(void **state) {
    const struct part_figures stile = {.width = {1}, .net = {2}};
    const struct part_figures pane = {.width = {3}, .cost = {4}};
    struct field_filled filled = {.from = &fields_part};
    (void)state;
    assert_int_equal(field_only(&filled).count, 0);
    field_fill(&filled, &stile);
    field_fill(&filled, &pane);
    const struct field_table only = field_only(&filled);
    assert_int_equal(only.count, 3);
    assert_string_equal(only.fields[0].key, "width");
    assert_string_equal(only.fields[1].key, "net");
    assert_string_equal(only.fields[2].key, "cost");
}

/* --- the workbook --- */

static void homes(int *faults, const struct book *book, const char *name,
                  const struct field_table *table, unsigned views, const void *thing) {
    for (size_t i = 0; i < table->count; i++) {
        const struct field *const field = &table->fields[i];
        const fig figure = field_figure(field, thing);
        if ((field->views & views) != 0 && !fig_none(figure) && book_home(book, figure) == NULL) {
            wrong(faults, name, field, "no cell of the workbook is its home");
        }
    }
}

static const struct paper_tab any_tab = {.name = "Sheet", .about = "a sheet"};

/* The sheets that are laid out from tables, over the kitchen. */
static void sheets_show_all(void **state) {
    static void (*const sheets[])(const struct paper *, uint16_t) = {
        sheet_doors,  sheet_surfaces, sheet_parts, sheet_panels, sheet_lumber, sheet_sheets,
        sheet_finish, sheet_hardware, sheet_labor, sheet_costs,  sheet_prices,
    };
    const unsigned both = FIELD_SHEET | FIELD_MORE;
    struct bench bench;
    struct book book;
    int faults = 0;
    (void)state;
    bench_open_job(&bench, "samples/kitchen/kitchen.ini");
    const struct estimate *const e = &bench.estimate;
    struct check_list checks = {0};
    struct paper paper = {.book = &book, .base = e, .problems = &bench.problems, .checks = &checks};
    book_init(&book, &e->tape);
    for (size_t i = 0; i < COUNT(sheets); i++) {
        const uint16_t sheet = book_sheet(&book, "Sheet", "Sheet", false);
        paper.tabs[sheet] = &any_tab;
        sheets[i](&paper, sheet);
    }
    book_assign_homes(&book);
    assert_false(book_failed(&book));
    homes(&faults, &book, "leaf", &fields_leaf, both, &e->quantities.leaves[0]);
    homes(&faults, &book, "part", &fields_part, FIELD_SHEET, &e->quantities.leaves[0].parts[0]);
    homes(&faults, &book, "lumber", &fields_lumber, both, &e->lumber.buys[0]);
    homes(&faults, &book, "lumber way", &fields_lumber_way, both, &e->lumber.buys[0].priced);
    homes(&faults, &book, "lumber plan", &fields_lumber_plan, both, &e->lumber.buys[0]);
    homes(&faults, &book, "sheet", &fields_sheet, both, &e->sheets.buys[0]);
    homes(&faults, &book, "sheet way", &fields_sheet_way, both, &e->sheets.buys[0].priced);
    homes(&faults, &book, "sheet job", &fields_sheet_job, both, &e->sheets.buys[0]);
    homes(&faults, &book, "sheet plan", &fields_sheet_plan, both, &e->sheets.buys[0]);
    homes(&faults, &book, "banding", &fields_banding, both, &e->banding.buys[0]);
    homes(&faults, &book, "glass", &fields_glass, both, &e->glass.buys[0]);
    homes(&faults, &book, "hardware", &fields_hardware, both, &e->hardware.buys[0]);
    homes(&faults, &book, "consumable", &fields_consumable, both, &e->costs.consumables[0]);
    homes(&faults, &book, "coat", &fields_coat, both, &e->finish.batches[0].coats[0]);
    homes(&faults, &book, "batch", &fields_batch, both, &e->finish.batches[0]);
    homes(&faults, &book, "product", &fields_product, both, &e->finish.products[0]);
    homes(&faults, &book, "operation", &fields_operation, both, &e->labor.operations[0]);
    homes(&faults, &book, "labor", &fields_labor, both, &e->labor);
    homes(&faults, &book, "build-up", &fields_build_up, both, &e->costs.job);
    homes(&faults, &book, "costs", &fields_costs, both, &e->costs);
    homes(&faults, &book, "door price", &fields_door_price, both, &e->costs.doors[0]);
    homes(&faults, &book, "sale", &fields_sale, both, &e->sale);
    assert_true(checks.choice_count >= e->finish.product_count && !checks.failed);
    check_list_clear(&checks);
    book_clear(&book);
    assert_int_equal(faults, 0);
    assert_int_equal(bench_close(&bench), 0);
}

/* --- one order --- */

/* Everything that a sale can have; 3 sheets of 1,000 doors would be less than the least job. */
static const char *const sold[BENCH_MOST_EDITS] = {
    "make|style = slab",
    "shop|minimum job = 90000.00",
    "sale|discount = 5 %\ntax = 10 %\ntax name = duty\ntax on = selling price\ndelivery = 120.00\n"
    "card fee = 2 % added\ndeposit = 50 %\nstages = 30 % when sprayed\ncharges = 60.00 for samples",
    "option birch|slab = board",
};

/* Its lines as they stand on every paper, then the payments, which options are not compared by. */
static const char *const order[] = {
    "doors and fronts",
    "less discount",
    "after discount",
    "up to the least that a job is done for",
    "samples",
    "delivery",
    "before duty",
    "(of this taxed: all but delivery)",
    "duty",
    "in all, not paid by card",
    "card fee",
    "total, USD",
    "deposit, on order",
    "when sprayed",
    "balance, on delivery",
};
#define TO_TOTAL 12
#define TAXED    7 /* options are not compared by it */

/* What a paper says line by line, to be held against the order. */
struct lines {
    const char *paper;
    size_t next;
    bool compares;
};

static void expect_line(struct lines *lines, const char *text) {
    lines->next += lines->compares && lines->next == TAXED ? 1 : 0;
    const char *const want = lines->next == COUNT(order) ? "nothing"
                             : lines->compares && lines->next == TO_TOTAL - 1
                                 ? "total" /* of which money is said above all */
                                 : order[lines->next];
    if (strcasecmp(text, want) != 0) {
        fail_msg("%s: '%s' where '%s' should stand", lines->paper, text, want);
    }
    lines->next++;
}

static void read_offer(const struct estimate *e, const struct estimate *option) {
    struct lines lines = {.paper = "the client's papers"};
    struct offer offer;
    assert_true(offer_make(&offer, e, option, 1));
    for (size_t i = 0; i < offer.line_count; i++) {
        expect_line(&lines, offer.lines[i].label);
    }
    for (size_t i = 0; i < offer.payment_count; i++) {
        expect_line(&lines, offer.payments[i].label);
    }
    assert_int_equal(lines.next, COUNT(order));
    offer_clear(&offer);
}

/* A sheet: its words of one column, from the first of the lines on. */
static void read_sheet(const struct estimate *e, const struct estimate *option, const char *name,
                       void (*sheet)(const struct paper *, uint16_t), uint16_t column,
                       size_t count) {
    struct lines lines = {.paper = name, .compares = count == TO_TOTAL};
    struct book book;
    struct check_list checks = {0};
    struct paper paper = {
        .book = &book, .base = e, .options = option, .option_count = 1, .checks = &checks};
    bool begun = false;
    book_init(&book, &e->tape);
    paper.tabs[0] = &any_tab;
    sheet(&paper, book_sheet(&book, "Sheet", "Sheet", false));
    for (size_t i = 0; i < book.cell_count && lines.next < count; i++) {
        const struct cell *const cell = book_cell(&book, i);
        if (cell->kind != CELL_TEXT || cell->column != column) {
            continue;
        }
        char text[96];
        (void)snprintf(text, sizeof text, "%s", book_words(&book, cell));
        char *const unit = lines.compares ? strstr(text, ", USD") : NULL;
        if (unit != NULL) {
            *unit = '\0';
        }
        begun = begun || strcmp(text, order[0]) == 0;
        if (begun) {
            expect_line(&lines, text);
        }
    }
    assert_int_equal(lines.next, count);
    check_list_clear(&checks);
    book_clear(&book);
}

/* A text: each line begins with its label, which blanks or the end of the line follow. */
static void read_text(const char *paper, const char *text, size_t count) {
    struct lines lines = {.paper = paper, .compares = count == TO_TOTAL};
    const char *at = strstr(text, order[0]);
    while (at != NULL && lines.next < count) {
        at += strspn(at, " \n");
        char label[96];
        const char *const gap = strstr(at, "  ");
        const size_t line = strcspn(at, "\n");
        const size_t size = gap != NULL && (size_t)(gap - at) < line ? (size_t)(gap - at) : line;
        (void)snprintf(label, sizeof label, "%.*s", (int)size, at);
        if (label[0] != '-') {
            expect_line(&lines, label);
        }
        at = strchr(at, '\n');
    }
    assert_int_equal(lines.next, count);
}

static void read_texts(const struct estimate *estimates) {
    static char text[16384];
    FILE *out = fmemopen(text, sizeof text, "w");
    struct page page = {.out = out};
    assert_non_null(out);
    quote_print(&page, &estimates[0], NULL, 0);
    (void)fclose(out);
    read_text("the quote", strstr(text, "amount"), COUNT(order));
    out = fmemopen(text, sizeof text, "w");
    page.out = out;
    assert_non_null(out);
    compare_print(&page, estimates, 2);
    (void)fclose(out);
    read_text("side by side", text, TO_TOTAL);
    assert_false(page.failed);
}

static void sales_have_one_order(void **state) {
    struct bench bench;
    struct estimate estimates[2];
    (void)state;
    bench_open(&bench, "everything sold", BENCH_INCH, sold, "S1,24,24\n");
    bench_sound(&bench);
    assert_int_equal(bench.job.option_count, 1);
    for (int i = 0; i < 2; i++) {
        assert_int_equal(estimate_make(&estimates[i], &bench.rates, &bench.job,
                                       bench_request(i - 1), &bench.problems),
                         ESTIMATE_OK);
    }
    read_offer(&estimates[0], &estimates[1]);
    read_sheet(&estimates[0], &estimates[1], "the sheet Quote", sheet_quote, 1, COUNT(order));
    read_sheet(&estimates[0], &estimates[1], "the sheet Compare", sheet_compare, 0, TO_TOTAL);
    read_texts(estimates);
    estimate_clear(&estimates[0]);
    estimate_clear(&estimates[1]);
    assert_int_equal(bench_close(&bench), 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(figures_have_one_home), cmocka_unit_test(places_are_columns),
        cmocka_unit_test(empty_columns_go),      cmocka_unit_test(sheets_show_all),
        cmocka_unit_test(sales_have_one_order),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
