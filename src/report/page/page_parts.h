/* SPDX-License-Identifier: MIT */
/* What the files of the page share, and nobody else. */
#ifndef DOORCOST_REPORT_PAGE_PAGE_PARTS_H
#define DOORCOST_REPORT_PAGE_PAGE_PARTS_H

#include "price/rate_givens.h"
#include "report/html/html.h"
#include "report/page/page.h"
#include "report/words/field.h"

/* A number that the job takes of its own file or of the rates. */
struct view_rate {
    const struct rate_number *number;
    struct rate_givens givens;
    bool moves;               /* else a change of it needs another run */
    uint8_t decimals;         /* that may be written */
    const char *shown, *unit; /* as the box has it, and what follows it there and in the file */
};

/* A page in the making. */
struct view {
    struct html html;
    struct html_table table; /* the one in the making */
    struct view_rate *rates; /* those of the job, of its list, then those of the rates, as they are
                                read */
    size_t rate_count, job_rates, list_rates; /* all; those of the job; with those of its list */
    const struct page_facts *facts;
    const struct estimate *e; /* its base */
    const struct stop *stop;
};

/* How a figure is shown, as bits. */
enum view_how {
    VIEW_UNIT = 1 << 0,  /* its unit behind it; of money nothing */
    VIEW_LESS = 1 << 1,  /* with its sign turned: it is taken off */
    VIEW_SHORT = 1 << 2, /* without noughts at its end */
};

/* A figure as a button that opens how it was made; nothing of none. */
void view_figure(struct view *view, fig figure, unsigned how);
/* The same where people write the value otherwise: `17 3/4`. It does not follow a change. */
void view_figure_as(struct view *view, fig figure, const char *words);

/* A heading of a part of the page, which it begins; id: its place in the page's address. */
void view_section(struct view *view, const char *id, const char *title);
/* Ends the part. */
void view_section_end(struct view *view);

/* The next cell of the table in the making, with a figure; left empty where there is none. */
void view_cell_figure(struct view *view, fig figure, unsigned how);

/* Label, figure with unit, and note of each field with any of these views whose figure is set. */
void view_fields(struct view *view, const char *caption, const struct field_table *fields,
                 unsigned views, const void *thing);

/* --- the parts of the page, in their order --- */

/* Who it is for, the doors with their prices, the lines to the total, options. */
void page_quote(struct view *view);
/* A drawing of each look of a door. */
void page_doors(struct view *view);
/* The cutting plans. */
void page_plans(struct view *view);
/* What to buy, to tick off. */
void page_buy(struct view *view);
/* What is cut, to tick off. */
void page_cut(struct view *view);
/* Hours by operation and by machine. */
void page_work(struct view *view);
/* From cost to price. */
void page_cost(struct view *view);
/* The numbers that the job takes from its files, to be moved. */
void page_rates(struct view *view);
/* The same for the script, and when the choices of containers hold, as JSON. */
void page_rates_data(struct view *view);
/* All figures with how they were made, as JSON in a script; see page_tape.c for its form. */
void page_tape(struct view *view);

#endif
