/* SPDX-License-Identifier: MIT */
/* What the sheets of the workbook are laid out from, and small helpers that they share.  A sheet
 * has a file of its own and one function here; it adds itself to the book. */
#ifndef DOORCOST_REPORT_SHOP_PAPER_H
#define DOORCOST_REPORT_SHOP_PAPER_H

#include "report/shop/check_list.h"
#include "report/words/caution.h"
#include "report/words/field.h"
#include "report/words/shipped.h"
#include "report/xlsx/book.h"
#include "report/xlsx/book_write.h"

struct paper;

/* A sheet of the book. */
struct paper_tab {
    const char *name;  /* of the tab, and the title of its page; letters only */
    const char *about; /* what it shows, in a few words; begins its note */
    /* Whether the job has it; NULL: each job. */
    bool (*has)(const struct paper *paper);
    /* Lays it out. */
    void (*fill)(const struct paper *paper, uint16_t sheet);
    bool landscape;
    bool printed; /* with the job's papers; the others stay on screen */
    uint8_t turn; /* in which it is laid out, from 0 on: what shows others comes after them */
};

struct paper {
    struct book *book;
    const struct estimate *base;
    const struct estimate *options; /* the job's options, each on a tape of its own */
    size_t option_count;
    const struct problems *problems; /* for the sheet of checks */
    struct check_list *checks;       /* what sheets note for it */
    struct shipped shipped;          /* of the base; nothing where the rates are the shop's own */
    const struct paper_tab *tabs[BOOK_MOST_SHEETS]; /* of each sheet of the book */
};

/* The row of the titles; the one above it leads back to the first sheet. */
#define PAPER_TITLE_ROW ((uint32_t)1)
/* Behind title and note. */
#define PAPER_FIRST_ROW ((uint32_t)4)

/* Where a list goes down a sheet: words in column 0, a figure and its unit right of it, notes. */
struct paper_list {
    uint16_t sheet, figure, note; /* columns of the last two */
    uint32_t row;                 /* of the next line */
};

/* Why the hours by machine add up to less than the hours of work. */
#define PAPER_MACHINE_TIME                                                                         \
    "Time that each is used, by hand too: without second hands and without the allowance for "     \
    "rest and delay, so it adds up to less than the hours of work."

/* Writes label, figure, unit and note of each field with any of these views whose figure is set. */
void paper_lines(const struct paper *paper, struct paper_list *list,
                 const struct field_table *table, unsigned views, const void *thing);

/* The labels of the fields with any of these views as heads, from column on; returns the column
 * after. */
uint16_t paper_columns(const struct paper *paper, uint16_t sheet, uint32_t row, uint16_t column,
                       enum look look, const struct field_table *table, unsigned views);
/* A sum of the job below the column of the field at offset, of those with the view FIELD_SHEET. */
void paper_total(const struct paper *paper, uint16_t sheet, uint32_t row, uint16_t column,
                 const struct field_table *table, size_t offset, fig figure);
/* Their figures below, totals bold. */
void paper_cells(const struct paper *paper, uint16_t sheet, uint32_t row, uint16_t column,
                 const struct field_table *table, unsigned views, const void *thing);

/* The way back to the first sheet, below it the tab's name as the title from column on, and under
 * that what it shows; note: more of it, or NULL.  Returns PAPER_FIRST_ROW. The title is kept in
 * sight, and printed on every page. */
uint32_t paper_title(const struct paper *paper, uint16_t sheet, uint16_t column, const char *note);

/* The row of the heads of a sheet that is one table: they stay in sight below the title, and are
 * printed on every page with it. */
void paper_headings(const struct paper *paper, uint16_t sheet, uint32_t row,
                    uint16_t freeze_column);

/* A row of column headings. */
void paper_heads(const struct paper *paper, uint16_t sheet, uint32_t row, uint16_t column,
                 enum look look, const char *const *heads, size_t count);

/* The head of a sheet that is one table, from its first column on: heads, widths of the columns,
 * and paper_headings. Returns the row after. */
uint32_t paper_table(const struct paper *paper, uint16_t sheet, uint32_t row,
                     const char *const *heads, const double *widths, size_t count);

/* The cautions that the job needs on any of the papers (enum caution_paper), each over the columns
 * 0 to last; returns the row after. */
uint32_t paper_cautions(const struct paper *paper, uint16_t sheet, uint32_t row, uint16_t last,
                        unsigned papers);

/* The name of a file as it stands to the job file: the same from whatever folder a run is begun.
 * Part of name. */
const char *paper_file(const struct paper *paper, const char *name);

/* "in", "mm"; the unit name of money is the currency. */
const char *paper_unit(const struct paper *paper, fig figure);
/* The same of a figure of another estimate. */
const char *paper_unit_of(const struct estimate *estimate, fig figure);

/* "inches", "mm": lengths of the job in words. */
const char *paper_lengths(const struct paper *paper);

/* What a waste percent is a part of: net, or what is bought. */
const char *waste_words(enum waste_as as);

/* What a workbook of the shop tells of itself. Texts in pool, which tells of want of memory. */
struct book_facts paper_facts(struct pool *pool, const struct estimate *base);

/* Each sheet: lays out its columns and figures; a failure sticks to the book.
 * This one: the prices by room, and from the doors to the total. */
void sheet_quote(const struct paper *paper, uint16_t sheet);
/* How the job stands, when all other sheets but the workings are laid out. The estimate must have
 * been asked for its purchase. */
void sheet_job(const struct paper *paper, uint16_t sheet);
/* What to buy, by supplier; the estimate must have been asked for its purchase. */
void sheet_buy(const struct paper *paper, uint16_t sheet);
/* Sizes, weight, hinges and movement of each door. */
void sheet_doors(const struct paper *paper, uint16_t sheet);
/* What is sprayed of each door. */
void sheet_surfaces(const struct paper *paper, uint16_t sheet);
/* What a door takes of each material; after doors and surfaces. */
void sheet_door_materials(const struct paper *paper, uint16_t sheet);
/* The cut list by stop and fence. */
void sheet_cut(const struct paper *paper, uint16_t sheet);
/* What machines are set up for, in the order of the work; after sheet_labor. */
void sheet_setups(const struct paper *paper, uint16_t sheet);
/* The cut list by door. */
void sheet_parts(const struct paper *paper, uint16_t sheet);
/* Whether some panel is solid. */
bool panels_any(const struct paper *paper);
/* Whether it is said of a leaf where its hinges are. */
bool bores_any(const struct paper *paper);
/* Where hinges are bored. */
void sheet_bores(const struct paper *paper, uint16_t sheet);
/* Solid panels with their movement; after sheet_parts. */
void sheet_panels(const struct paper *paper, uint16_t sheet);
/* Lumber by factor and by plan. */
void sheet_lumber(const struct paper *paper, uint16_t sheet);
/* Sheets by factor and by plan, banding and glass. */
void sheet_sheets(const struct paper *paper, uint16_t sheet);
/* The cutting plans as pictures. */
void sheet_plans(const struct paper *paper, uint16_t sheet);
/* Batches, mixes and containers. */
void sheet_finish(const struct paper *paper, uint16_t sheet);
/* Hardware, consumables and doors that are bought in. */
void sheet_hardware(const struct paper *paper, uint16_t sheet);
/* Hours by operation and by machine. */
void sheet_labor(const struct paper *paper, uint16_t sheet);
/* The minutes of each operation at each door. */
void sheet_operations(const struct paper *paper, uint16_t sheet);
/* Cost of the job and of each door by group. */
void sheet_costs(const struct paper *paper, uint16_t sheet);
/* From cost to price. */
void sheet_prices(const struct paper *paper, uint16_t sheet);
/* Whether the job names options. */
bool compare_any(const struct paper *paper);
/* The options side by side. */
void sheet_compare(const struct paper *paper, uint16_t sheet);
/* Where cost and hours go, as charts. */
void sheet_charts(const struct paper *paper, uint16_t sheet);
/* A drawing of each door. */
void sheet_elevations(const struct paper *paper, uint16_t sheet);
/* What was asked about, and formulas that watch inputs, choices and sums; after the sheet Rates. */
void sheet_checks(const struct paper *paper, uint16_t sheet);
/* The rates that the job uses, for changes; after all that mention rates. */
void sheet_rates(const struct paper *paper, uint16_t sheet);
/* The last: gives a home to every figure that has none. */
void sheet_workings(const struct paper *paper, uint16_t sheet);

#endif
