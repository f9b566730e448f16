/* SPDX-License-Identifier: MIT */
/* The reports on the terminal, a function a command.  Each lays out what the tape holds and
 * computes nothing of its own; lines are at most 80 columns where names allow. Memory that runs out
 * fails the page. */
#ifndef DOORCOST_REPORT_TEXT_PRINT_H
#define DOORCOST_REPORT_TEXT_PRINT_H

#include "bridge/bridge.h"
#include "days/work/day_rows.h"
#include "learn/hours_fit.h"
#include "price/chance.h"
#include "price/size_table.h"
#include "price/strike.h"
#include "price/target.h"
#include "price/ways.h"
#include "report/offer/offer.h"
#include "report/text/grid.h"
#include "report/words/caution.h"
#include "together/together.h"
#include "trial/range.h"

/* The head that every report opens with: what it is, the job, whose, when, in which money. */
void head_print(struct page *page, const char *what, const struct estimate *estimate);

/* A screen of it: total, profit, hours, what to buy in short, what is open. The base must be
 * traced, with its purchase. */
void brief_print(struct page *page, const struct estimate *base, const struct estimate *options,
                 size_t option_count, const struct problems *problems);

/* What to do once its files are written. */
void brief_next_print(struct page *page, const struct rates *rates,
                      const struct problems *problems);

/* The quote as the client reads it: doors by room, the foot, what the options come to. */
void quote_print(struct page *page, const struct estimate *base, const struct estimate *options,
                 size_t option_count);
/* What stands below it for the shop: cost, what to buy, hours. */
void shop_print(struct page *page, const struct estimate *estimate);

/* The questions that the job accepts, a line each; nothing where there are none. */
void accepted_print(struct page *page, const struct problems *problems);
/* What the estimate makes of the list. */
struct list_made {
    int64_t doors;       /* and fronts */
    int64_t low_fronts;  /* made as slabs, as they are lower than frames of their style may be */
    int64_t false_pulls; /* false fronts that have a pull because doors have */
};

/* `19 rows, 50 doors and fronts: no errors, 2 warnings`, what a list does not show, and what is
 * accepted. */
void check_print(struct page *page, const struct job *job, struct list_made made,
                 const struct problems *problems);

/* The cautions that the job needs on any of the papers (enum caution_paper), a blank line before
 * them. */
void cautions_print(struct page *page, const struct estimate *estimate, unsigned papers);

/* A price list, of the offer alone. */
void prices_print(struct page *page, const struct offer *offer);

/* The finish to buy, and the numbers that lead there. */
void finish_print(struct page *page, const struct estimate *estimate);

/* Everything to buy, what it costs and what the job is charged of it. The estimate must have been
 * asked for its purchase. together: of several jobs, whose estimate it is, what that saves and each
 * bears in place of what is charged; NULL: of one. */
void buy_print(struct page *page, const struct estimate *estimate, const struct together *together);
/* What buying or cutting several jobs together saves, line by line, and each job's part. */
void together_print(struct page *page, const struct together *together);
/* A part of that list: the containers of finish. */
void products_print(struct page *page, const struct estimate *estimate);
/* A part of it: all below the finish. */
void sundries_print(struct page *page, const struct estimate *estimate);

/* The cutting plans: what to buy, how it is cut, where the waste goes, how near to the least
 * possible that is. */
void plan_print(struct page *page, const struct estimate *estimate);

/* The estimates, made with their purchases, side by side, each against the first. count: 1 or more.
 */
void compare_print(struct page *page, const struct estimate *estimates, size_t count);

/* What happened beside what was estimated. */
void learned_print(struct page *page, const struct estimate *estimate,
                   const struct learned *learned);

/* What the rates should be by what happened. */
void proposals_print(struct page *page, const struct proposals *proposals);

/* Hours of past jobs by doors, area and coats, beside what was estimated; jobs: those that were
 * fitted. */
void hours_fit_print(struct page *page, const struct hours_fit *fit,
                     const struct learned_job *jobs);

/* When all is done, what decides it, what one more of what is scarce would bring, and the work of
 * each day. */
void days_print(struct page *page, const struct day_plan *plan, const struct day_rows *rows);

/* What the job may come to, drawn from the ranges of the rates; nothing of the head. */
void chance_print(struct page *page, const struct estimate *estimate, const struct chance *chance);

/* What rows save and cost, and sizes that might be one. estimate: the job as it stands. */
void strike_print(struct page *page, const struct estimate *estimate, const struct strike *strike);

/* What moved rates change, with bars, and which rates have no range. estimate: the job as it
 * stands, traced. */
void range_print(struct page *page, const struct estimate *estimate, const struct ranges *ranges);

/* Why the price moved from one job to another. newer: the estimate of the newer. */
void bridge_print(struct page *page, const struct estimate *newer, const struct bridge *bridge);

/* What one more door comes to by size and count. estimate: the job as it stands. */
void size_table_print(struct page *page, const struct estimate *estimate,
                      const struct size_table *table);

/* The ways of each row, and what is chosen of them. estimate: the job as it stands. */
void ways_print(struct page *page, const struct estimate *estimate, const struct ways *ways);

/* What would have to be true for a wanted total. estimate: the job as it stands. */
void target_print(struct page *page, const struct estimate *estimate, const struct target *target);

/* What labels came to. */
struct labels_told {
    bool doors; /* one a door, else one a piece of its parts */
    size_t count, sheets;
    size_t next; /* the first label of the last sheet that is left, from 1; 0: none is */
    const struct label_sheet *sheet;
};
void labels_print(struct page *page, const struct estimate *estimate, struct labels_told told);

/* How a figure of a traced estimate came about: lines down to depth, the figure itself being at 0,
 * each figure once. */
void explain_print(struct page *page, const struct estimate *estimate,
                   const struct problems *problems, fig figure, size_t depth);

#endif
