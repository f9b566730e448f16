/* SPDX-License-Identifier: MIT */
/* Charts of the job, each beside the small table that it is drawn from.  The tables point at the
 * cells of the other sheets. */
#include "report/shop/check_cell.h"
#include "report/shop/paper.h"

#include <stdio.h>
#include <string.h>

#define TABLE_WORDS 0
#define TABLE_FIRST 1
#define CHART_AT    4
#define ROW_HEIGHT  12.75 /* of a row, at the least */
/* Columns of the sheet Compare with a single letter: more options a chart could not show. */
#define MOST_OPTIONS 12

static const char *machine_words(const struct rates *rates, int32_t machine) {
    return machine < 0 ? "by hand" : rates->machines[machine].name.s;
}

/* Puts the chart beside the table that ends before row; returns the row of the next table. */
static uint32_t close_table(const struct paper *paper, struct book_chart *chart, uint32_t row) {
    const uint32_t head = chart->first - 1;
    chart->column = CHART_AT;
    chart->row = head;
    chart->words = TABLE_WORDS;
    chart->last = row - 1;
    if (chart->last >= chart->first) {
        book_chart(paper->book, chart);
    }
    const uint32_t high = (uint32_t)(book_chart_height(chart) / ROW_HEIGHT) + 1;
    book_keep(paper->book, chart->sheet, head, head + high - 1);
    return (row > head + high ? row : head + high) + 1;
}

static uint32_t put_cost(const struct paper *paper, uint16_t sheet, uint32_t row) {
    const struct build_up *const job = &paper->base->costs.job;
    struct book *const book = paper->book;
    struct book_chart chart = {
        .sheet = sheet,
        .kind = CHART_BARS,
        .title = "Cost by group",
        .axis = paper->base->rates->shop.currency.s,
        .alt = "Bars: what each group of cost comes to, from lumber to overhead; the numbers stand "
               "in the table beside it",
        .series = 1,
        .first = row + 1,
    };
    book_text(book, sheet, row, TABLE_WORDS, LOOK_HEAD, "group");
    book_text(book, sheet, row++, TABLE_FIRST, LOOK_HEAD, "cost");
    for (size_t i = 0; fields_build_up.fields[i].offset != offsetof(struct build_up, full); i++) {
        const struct field *const field = &fields_build_up.fields[i];
        const fig cost = field_figure(field, job);
        if ((field->views & (FIELD_LINE | FIELD_TOTAL)) == FIELD_LINE && !fig_none(cost)) {
            book_text(book, sheet, row, TABLE_WORDS, LOOK_PLAIN, field_label(field));
            book_mention(book, sheet, row++, TABLE_FIRST, LOOK_PLAIN, cost);
        }
    }
    return close_table(paper, &chart, row);
}

static uint32_t put_hours(const struct paper *paper, uint16_t sheet, uint32_t row) {
    const struct labor *const labor = &paper->base->labor;
    struct book *const book = paper->book;
    struct book_chart chart = {
        .sheet = sheet,
        .kind = CHART_BARS,
        .title = "Hours by machine",
        .axis = "hours",
        .alt = "Bars: hours at each machine and by hand; the numbers stand in the table beside it",
        .series = 1,
        .first = row + 1,
    };
    book_text(book, sheet, row, TABLE_WORDS, LOOK_HEAD, "machine");
    book_text(book, sheet, row++, TABLE_FIRST, LOOK_HEAD, "hours");
    for (size_t i = 0; i < labor->machine_count; i++) {
        book_text(book, sheet, row, TABLE_WORDS, LOOK_PLAIN,
                  machine_words(paper->base->rates, labor->machines[i].machine));
        book_mention(book, sheet, row++, TABLE_FIRST, LOOK_PLAIN, labor->machines[i].hours);
    }
    book_span(book, sheet, row, TABLE_WORDS, TABLE_FIRST + 1, LOOK_WRAP, PAPER_MACHINE_TIME);
    return close_table(paper, &chart, row);
}

/* The row of the sheet Compare that begins with these words, from 1; 0: there is none. */
static unsigned compare_row(const struct book *book, const char *words) {
    for (size_t i = 0; i < book->cell_count; i++) {
        const struct cell *const cell = book_cell(book, i);
        if (cell->kind == CELL_TEXT && cell->column == 0 &&
            strncmp(book_words(book, cell), words, strlen(words)) == 0 &&
            strcmp(book->sheets[cell->sheet].name, "Compare") == 0) {
            return cell->row + 1;
        }
    }
    return 0;
}

/* The figure of estimate i: the base's points at its home, an option's at the sheet Compare. */
static void put_money(const struct paper *paper, uint16_t sheet, uint32_t row, uint16_t column,
                      size_t i, const char *words, fig figure) {
    const unsigned from = compare_row(paper->book, words);
    char formula[32];
    if (i == 0) {
        book_mention(paper->book, sheet, row, column, LOOK_PLAIN, figure);
    } else if (from > 0) {
        const struct tape *const tape = &paper->options[i - 1].tape;
        (void)snprintf(formula, sizeof formula, "Compare!%c%u", (char)('B' + (int)i), from);
        book_formula(paper->book, sheet, row, column, LOOK_PLAIN, tape_unit(tape, figure),
                     tape_decimals(tape, figure), tape_amount(tape, figure), formula);
    }
}

static void put_options(const struct paper *paper, uint16_t sheet, uint32_t row) {
    const char *const sold =
        field_label(field_at(&fields_sale, offsetof(struct sale_figures, sold)));
    const char *const full =
        field_label(field_at(&fields_build_up, offsetof(struct build_up, full)));
    struct book *const book = paper->book;
    struct book_chart chart = {
        .sheet = sheet,
        .kind = CHART_COLUMNS,
        .title = "Options side by side: sold and cost",
        .axis = paper->base->rates->shop.currency.s,
        .alt = "Columns: what the doors are sold for, before tax and delivery, and their cost with "
               "overhead, of the job as listed and of each option; the numbers stand in the table "
               "beside it",
        .series = 2,
        .first = row + 1,
    };
    book_text(book, sheet, row, TABLE_WORDS, LOOK_HEAD, "option");
    book_text(book, sheet, row, TABLE_FIRST, LOOK_HEAD, sold);
    book_text(book, sheet, row++, TABLE_FIRST + 1, LOOK_HEAD, full);
    for (size_t i = 0; i <= paper->option_count && i <= MOST_OPTIONS; i++) {
        const struct estimate *const e = i == 0 ? paper->base : &paper->options[i - 1];
        book_text(book, sheet, row, TABLE_WORDS, LOOK_PLAIN, estimate_name(e));
        put_money(paper, sheet, row, TABLE_FIRST, i, sold, e->sale.sold);
        put_money(paper, sheet, row++, TABLE_FIRST + 1, i, full, e->costs.job.full);
    }
    check_options(paper, sheet, row, TABLE_WORDS);
    book_text(book, sheet, row + 1, TABLE_WORDS, LOOK_NOTE, "the gap is the profit left");
    close_table(paper, &chart, row);
}

void sheet_charts(const struct paper *paper, uint16_t sheet) {
    uint32_t row = paper_title(paper, sheet, 0,
                               "Each is drawn from the table beside it, which points at the other "
                               "sheets.");
    book_width(paper->book, sheet, TABLE_WORDS, 20);
    book_width(paper->book, sheet, TABLE_FIRST, 10);
    book_width(paper->book, sheet, TABLE_FIRST + 1, 10);
    book_width(paper->book, sheet, CHART_AT - 1, 3);
    row = put_cost(paper, sheet, row);
    row = put_hours(paper, sheet, row);
    if (paper->option_count > 0) {
        put_options(paper, sheet, row);
    }
}
