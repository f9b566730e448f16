/* SPDX-License-Identifier: MIT */
#include "report/shop/workbook.h"

#include "report/shop/paper.h"
#include "report/words/show.h"
#include "report/xlsx/book_write.h"

#include <stdlib.h>
#include <string.h>
#include <strings.h>

/* The tabs: how the job stands; what it was figured from; how; what came of it.  The workings are
 * laid out last: they take in what has no home yet. */
static const struct paper_tab tabs[] = {
    {"Job", "How the job stands", NULL, sheet_job, false, true, 3},
    {"Rates", "What this estimate took from its files", NULL, sheet_rates, false, false, 1},
    {"Doors", "Doors as made", NULL, sheet_doors, true, false, 0},
    {"Surfaces", "What is sprayed of one leaf", NULL, sheet_surfaces, true, false, 0},
    {"Materials", "What one leaf takes", NULL, sheet_door_materials, true, false, 0},
    {"Parts", "Cut list by door", NULL, sheet_parts, true, false, 0},
    {"Panels", "Solid panels", panels_any, sheet_panels, true, false, 0},
    {"Lumber", "Lumber by waste factor and by cutting plan", NULL, sheet_lumber, false, false, 0},
    {"Sheets", "Sheets, banding and glass", NULL, sheet_sheets, false, false, 0},
    {"Finish", "Finish to spray and to buy", NULL, sheet_finish, true, false, 0},
    {"Hardware", "Hardware, small things, work put out, doors bought in", NULL, sheet_hardware,
     true, false, 0},
    {"Operations", "Operations of each door", NULL, sheet_operations, true, false, 0},
    {"Labor", "Labor by operation and machine", NULL, sheet_labor, false, false, 0},
    {"Costs", "From materials to price", NULL, sheet_costs, false, false, 0},
    {"Prices", "Cost and price of each door", NULL, sheet_prices, true, false, 0},
    {"Workings", "Steps in between", NULL, sheet_workings, false, false, 4},
    {"Quote", "What the client is asked for", NULL, sheet_quote, false, true, 0},
    {"Buy", "What to buy, by supplier", NULL, sheet_buy, false, true, 0},
    {"Cut", "Cut list for the saw, by stop and fence", NULL, sheet_cut, false, true, 0},
    {"Setups", "What machines are set up for", NULL, sheet_setups, false, true, 0},
    {"Bores", "Where hinges are bored", bores_any, sheet_bores, false, true, 0},
    {"Plans", "Cutting plans", NULL, sheet_plans, false, false, 0},
    {"Elevations", "Doors drawn", NULL, sheet_elevations, false, false, 0},
    {"Compare", "Options side by side", compare_any, sheet_compare, false, false, 0},
    {"Charts", "Where cost and hours go", NULL, sheet_charts, false, false, 0},
    {"Checks", "Questions and cautions", NULL, sheet_checks, false, false, 2},
};
#define TABS  (sizeof tabs / sizeof *tabs)
#define TURNS 5

struct shop_book {
    struct book book;
    struct book_facts facts;
};

/* Adds the sheets that the job has, empty. */
static void add_tabs(struct paper *paper) {
    for (size_t i = 0; i < TABS; i++) {
        const struct paper_tab *const tab = &tabs[i];
        if (tab->has != NULL && !tab->has(paper)) {
            continue;
        }
        const uint16_t sheet = book_sheet(paper->book, tab->name, tab->name, tab->landscape);
        paper->tabs[sheet] = tab;
        if (tab->printed) {
            book_print_rows(paper->book, sheet, PAPER_TITLE_ROW, 0);
        } else {
            book_on_screen(paper->book, sheet);
        }
        if (tab->fill == sheet_workings) {
            paper->book->spare_sheet = sheet;
        }
    }
}

struct shop_book *shop_book_new(const struct estimate *base, const struct estimate *options,
                                size_t option_count, const struct problems *problems,
                                const struct stop *stop) {
    struct shop_book *const workbook = calloc(1, sizeof *workbook);
    if (workbook == NULL) {
        return NULL;
    }
    struct book *const book = &workbook->book;
    book_init(book, &base->tape);
    workbook->facts = paper_facts(&book->pool, base);
    book->protect = true;
    book->stop = stop;
    struct check_list checks = {0};
    struct paper paper = {.book = book,
                          .base = base,
                          .options = options,
                          .option_count = option_count,
                          .problems = problems,
                          .checks = &checks};
    if (shipped_example(base)) {
        paper.shipped = shipped_of(base, &book->pool);
    }
    add_tabs(&paper);
    for (uint8_t turn = 0; turn < TURNS; turn++) {
        for (uint16_t i = 0; i < book->sheet_count && !book_failed(book); i++) {
            if (paper.tabs[i]->turn == turn) {
                paper.tabs[i]->fill(&paper, i);
                book->failed = book->failed || stop_asked(stop);
            }
        }
    }
    book->failed = book->failed || checks.failed;
    check_list_clear(&checks);
    if (book_failed(book)) {
        shop_book_free(workbook);
        return NULL;
    }
    return workbook;
}

fig shop_book_figure(const struct shop_book *workbook, const char *cell) {
    const struct book *const book = &workbook->book;
    const char *const mark = strrchr(cell, '!');
    const size_t size = mark == NULL ? 0 : (size_t)(mark - cell);
    for (uint16_t s = 0; mark != NULL && s < book->sheet_count; s++) {
        const char *const name = book->sheets[s].name;
        if (strlen(name) == size && strncasecmp(name, cell, size) == 0) {
            return book_figure_at(book, s, mark + 1);
        }
    }
    return (fig){0};
}

void shop_book_free(struct shop_book *workbook) {
    if (workbook != NULL) {
        book_clear(&workbook->book);
        free(workbook);
    }
}

bool shop_book_write(struct shop_book *workbook, const char *path) {
    return book_write(&workbook->book, &workbook->facts, path);
}
