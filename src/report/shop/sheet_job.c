/* SPDX-License-Identifier: MIT */
/* The first sheet: how the job stands, what is open, what to do next, and the way to every other
 * sheet.  Its tab comes first; what it tells is known when the others are laid out. */
#include "base/text.h"
#include "report/shop/check_cell.h"
#include "report/words/show.h"

#define JOB_SHEET 0 /* the first */

enum { COLUMN_WORDS, COLUMN_FIGURE, COLUMN_UNIT, COLUMN_NOTE };

/* --- figures --- */

static void put_fields(const struct paper *paper, struct paper_list *list, const char *heading,
                       const struct field_table *table, const void *thing) {
    const uint32_t first = list->row;
    book_text(paper->book, list->sheet, list->row++, COLUMN_WORDS, LOOK_SECTION, heading);
    paper_lines(paper, list, table, FIELD_JOB, thing);
    book_keep(paper->book, list->sheet, first, list->row);
    list->row++;
}

/* --- what is open --- */

static uint32_t put_words(const struct paper *paper, uint32_t row, const char *words) {
    book_span(paper->book, JOB_SHEET, row, COLUMN_WORDS, COLUMN_NOTE, LOOK_WRAP, words);
    return row + 1;
}

static uint32_t put_open(const struct paper *paper, uint32_t row, size_t asked) {
    struct book *const book = paper->book;
    const size_t accepted = problems_count(paper->problems, SEVERITY_ACCEPTED);
    book_text(book, JOB_SHEET, row++, COLUMN_WORDS, LOOK_SECTION, "What is open");
    row = put_words(paper, row,
                    pool_words(&book->pool, "%s about the list and the rates%s",
                               show_count(asked, "question").text,
                               asked > 0 ? "; see the sheet Checks" : ""));
    if (accepted > 0) {
        row = put_words(paper, row,
                        pool_words(&book->pool, "%s accepted in the job; see Checks",
                                   show_count(accepted, "question").text));
    }
    if (shipped_example(paper->base)) {
        row = put_words(paper, row,
                        pool_words(&book->pool,
                                   "%s of the rates still as shipped: made up, so prices are "
                                   "examples",
                                   show_count(paper->shipped.left, "number").text));
    }
    return row + 1;
}

/* --- what to do next --- */

static uint32_t put_step(const struct paper *paper, uint32_t row, const char *words) {
    return put_words(paper, row, pool_words(&paper->book->pool, "[  ]  %s", words));
}

static uint32_t put_steps(const struct paper *paper, uint32_t row, size_t asked) {
    struct book *const book = paper->book;
    const uint32_t first = row;
    book_text(book, JOB_SHEET, row++, COLUMN_WORDS, LOOK_SECTION, "What to do next");
    if (asked > 0) {
        row = put_step(paper, row,
                       "answer the questions on Checks: mend the list or the rates, or accept them "
                       "in the job; then run again");
    }
    if (paper->shipped.left > 0) {
        row =
            put_step(paper, row,
                     "put your own numbers in place of those that are made up, the largest first: "
                     "labor rate, lumber, minutes");
    }
    row = put_step(paper, row, "read the client's papers, then send them");
    row = put_step(paper, row,
                   "when it is ordered: buy by the sheet Buy, cut by Cut and by the paper of the "
                   "plans ('doorcost plan -o')");
    book_keep(book, JOB_SHEET, first, row);
    return row + 1;
}

/* --- the way to the others --- */

static void put_links(const struct paper *paper, uint32_t row) {
    struct book *const book = paper->book;
    book_text(book, JOB_SHEET, row++, COLUMN_WORDS, LOOK_SECTION, "The sheets");
    for (uint16_t s = 0; s < book->sheet_count; s++) {
        if (s != JOB_SHEET) {
            book_link(book, JOB_SHEET, row, COLUMN_WORDS, s);
            book_text(book, JOB_SHEET, row++, COLUMN_FIGURE, LOOK_PLAIN, paper->tabs[s]->about);
        }
    }
}

/* `Printed are Job, Quote and Buy; ...`: the sheets with a print area. */
static const char *printed_words(const struct paper *paper) {
    struct book *const book = paper->book;
    uint16_t last = JOB_SHEET;
    for (uint16_t s = 0; s < book->sheet_count; s++) {
        last = paper->tabs[s]->printed ? s : last;
    }
    const char *words = paper->tabs[JOB_SHEET]->name;
    for (uint16_t s = JOB_SHEET + 1; s <= last; s++) {
        if (paper->tabs[s]->printed) {
            words = pool_words(&book->pool, "%s%s%s", words, s == last ? " and " : ", ",
                               paper->tabs[s]->name);
        }
    }
    return pool_words(&book->pool, "Printed are %s; the other sheets are for the screen.", words);
}

static uint32_t put_title(const struct paper *paper) {
    struct book *const book = paper->book;
    const struct job *const job = paper->base->job;
    const char *const number = text_or_empty(job->number.s);
    const char *const agreed = show_agreed(&book->pool, paper->base);
    book_span(book, JOB_SHEET, PAPER_TITLE_ROW, COLUMN_WORDS, COLUMN_NOTE, LOOK_TITLE,
              pool_words(&book->pool, "%s: %s", paper->tabs[JOB_SHEET]->name,
                         text_or_empty(job->title.s)));
    book_span(book, JOB_SHEET, PAPER_TITLE_ROW + 1, COLUMN_WORDS, COLUMN_NOTE, LOOK_NOTE,
              pool_words(&book->pool, "%s%s%s, made %s; %s%s%s", number,
                         number[0] == '\0' ? "" : ", ", job->date.s, estimate_name(paper->base),
                         text_or_empty(job->client.s),
                         agreed == NULL ? "" : "; agreed: ", text_or_empty(agreed)));
    book_headings(book, JOB_SHEET, PAPER_TITLE_ROW, PAPER_TITLE_ROW, 0);
    check_all(paper, JOB_SHEET, PAPER_FIRST_ROW, COLUMN_WORDS, LOOK_STATE);
    book_text(book, JOB_SHEET, PAPER_FIRST_ROW, COLUMN_FIGURE, LOOK_UNIT,
              "what all checks of the sheet Checks come to");
    book_text(book, JOB_SHEET, PAPER_FIRST_ROW + 1, COLUMN_WORDS, LOOK_NOTE,
              "Computed percents are shown with two decimals at most, cubic meters with four: the "
              "cells hold "
              "all that were computed.");
    book_text(book, JOB_SHEET, PAPER_FIRST_ROW + 2, COLUMN_WORDS, LOOK_NOTE, printed_words(paper));
    return PAPER_FIRST_ROW + 4;
}

void sheet_job(const struct paper *paper, uint16_t sheet) {
    struct book *const book = paper->book;
    const struct estimate *const e = paper->base;
    const size_t asked = problems_count(paper->problems, SEVERITY_WARNING);
    struct paper_list list = {.sheet = sheet, .figure = COLUMN_FIGURE, .note = COLUMN_NOTE};
    book_few_decimals(book, JOB_SHEET);
    book_width(book, JOB_SHEET, COLUMN_WORDS, 32);
    book_width(book, JOB_SHEET, COLUMN_FIGURE, 14);
    book_width(book, JOB_SHEET, COLUMN_NOTE, 40);
    list.row = put_title(paper);
    put_fields(paper, &list, "Price and profit", &fields_sale, &e->sale);
    put_fields(paper, &list, "Cost", &fields_build_up, &e->costs.job);
    put_fields(paper, &list, "Cash", &fields_purchase, &e->purchase);
    put_fields(paper, &list, "Work", &fields_labor, &e->labor);
    list.row = put_open(paper, list.row, asked);
    list.row = put_steps(paper, list.row, asked);
    book_print_rows(book, sheet, PAPER_TITLE_ROW, list.row);
    put_links(paper, list.row);
}
