/* SPDX-License-Identifier: MIT */
/* What the sheets of the workbook are laid out from, and small helpers that they share.  A sheet
 * has a file of its own and one function here; it adds itself to the book. */
#ifndef DOORCOST_REPORT_SHOP_PAPER_H
#define DOORCOST_REPORT_SHOP_PAPER_H

#include "report/words/caution.h"
#include "report/words/field.h"
#include "report/words/shipped.h"
#include "report/xlsx/book.h"

struct paper {
    struct book *book;
    const struct estimate *base;
    const struct estimate *options; /* the job's options, each on a tape of its own */
    size_t option_count;
    const struct problems *problems; /* for the sheet of checks */
    struct shipped shipped;          /* of the base; nothing where the rates are the shop's own */
    uint16_t job_sheet;              /* the first, filled when the others are laid out */
};

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

/* Title and a note under it; returns the row after a gap. */
uint32_t paper_title(const struct paper *paper, uint16_t sheet, const char *title,
                     const char *note);

/* A row of column headings. */
void paper_heads(const struct paper *paper, uint16_t sheet, uint32_t row, uint16_t column,
                 enum look look, const char *const *heads, size_t count);

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

/* Each sheet: adds itself to the book, its columns and figures; a failure sticks to the book.
 * This one: the prices by room, as the client has them, and from the doors to the total. */
void sheet_quote(struct paper *paper);
/* The first sheet: its tab. */
void sheet_job(struct paper *paper);
/* What it tells: how the job stands; when all other sheets but the workings are laid out. The
 * estimate must have been asked for its purchase. */
void sheet_job_fill(struct paper *paper);
/* What to buy, by supplier; the estimate must have been asked for its purchase. */
void sheet_buy(struct paper *paper);
/* Sizes, weight, hinges and movement of each door. */
void sheet_doors(struct paper *paper);
/* What is sprayed of each door. */
void sheet_surfaces(struct paper *paper);
/* What a door takes of each material; after doors and surfaces. */
void sheet_door_materials(struct paper *paper);
/* The cut list. */
void sheet_parts(struct paper *paper);
/* Solid panels with their movement; none where no panel is solid; after sheet_parts. */
void sheet_panels(struct paper *paper);
/* Lumber by factor and by plan. */
void sheet_lumber(struct paper *paper);
/* Sheets by factor and by plan, banding and glass. */
void sheet_sheets(struct paper *paper);
/* The cutting plans as pictures. */
void sheet_plans(struct paper *paper);
/* Batches, mixes and containers. */
void sheet_finish(struct paper *paper);
/* Hardware, consumables and doors that are bought in. */
void sheet_hardware(struct paper *paper);
/* Hours by operation and by machine. */
void sheet_labor(struct paper *paper);
/* The minutes of each operation at each door. */
void sheet_operations(struct paper *paper);
/* Cost of the job and of each door by group. */
void sheet_costs(struct paper *paper);
/* From cost to price. */
void sheet_prices(struct paper *paper);
/* The options side by side; none where the job names none. */
void sheet_compare(struct paper *paper);
/* Where cost and hours go, as charts. */
void sheet_charts(struct paper *paper);
/* A drawing of each door. */
void sheet_elevations(struct paper *paper);
/* What was asked about, and formulas that watch the inputs. */
void sheet_checks(struct paper *paper);
/* The rates that the job uses, for changes; after all that mention rates. */
void sheet_rates(struct paper *paper);
/* The last: gives a home to every figure that has none. */
void sheet_workings(struct paper *paper);

#endif
