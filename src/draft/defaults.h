/* SPDX-License-Identifier: MIT */
/* What is offered as the answer to a question, and whether it is asked; for src/draft only. Texts
 * are in the draft's pool or the rates; NULL: nothing is offered. */
#ifndef DOORCOST_DRAFT_DEFAULTS_H
#define DOORCOST_DRAFT_DEFAULTS_H

#include "draft/draft.h"

/* The name of the file in words: `smith-kitchen.ini`, Smith kitchen. */
const char *default_title(const struct draft *draft);
/* The next number that no job of the folder has; 0001 where there is no job. */
const char *default_number(const struct draft *draft);
/* Today. */
const char *default_date(const struct draft *draft);
/* 30 days. */
const char *default_valid(const struct draft *draft);
/* That of the rates. */
const char *default_unit(const struct draft *draft);
/* The first of the folder in the unit, else the first, the shop's own before all; else where those
 * that ship go. */
const char *default_rates(const struct draft *draft);
/* The first list of the folder; else that of the old job that was asked for. */
const char *default_doors(const struct draft *draft);

/* Headings of the list that are like no column. */
const char *default_own_columns(const struct draft *draft);

/* The first style that is made, not bought in. */
const char *default_style(const struct draft *draft);
/* That of the frame, where one was named; else the first. */
const char *default_lumber(const struct draft *draft);
/* The first sheet that goes into a groove of the style; of a solid panel, or without one, lumber.
 */
const char *default_panel(const struct draft *draft);
/* The first sheet as thick as the style's doors, else lumber. */
const char *default_slab(const struct draft *draft);
/* The first. */
const char *default_glass(const struct draft *draft);
/* The first; `none` where there are none. */
const char *default_finish(const struct draft *draft);
/* The first piece of hardware that tells which overlays it fits; `none`. */
const char *default_hinge(const struct draft *draft);
/* The first piece of hardware that is called a pull, a knob or a handle; `none`. */
const char *default_pull(const struct draft *draft);
/* What the headings of the list say; openings. */
const char *default_measure(const struct draft *draft);
/* Half an inch or 15 mm where the hinge takes it, else the least that it takes; NULL: it is for
 * inset doors. */
const char *default_overlay(const struct draft *draft);
/* 3/32 in or 2 mm. */
const char *default_reveal(const struct draft *draft);
/* 1/8 in or 3 mm. */
const char *default_gap(const struct draft *draft);

/* Whether no rates are there or named: those that ship are taken, and the unit is asked for. */
bool lacks_rates(const struct draft *draft);
/* Whether there are several rates. */
bool wants_rates(const struct draft *draft);
/* Whether the list has such headings. */
bool wants_own_columns(const struct draft *draft);
/* Whether the finish is mixed to a color. */
bool wants_color(const struct draft *draft);
/* Whether openings were measured. */
bool wants_overlay(const struct draft *draft);
/* Whether they were, and no overlay is given. */
bool wants_reveal(const struct draft *draft);

#endif
