/* SPDX-License-Identifier: MIT */
/* Figures, values and names as people read them, the same on every paper.
 *
 * Each gives a text by value, to be used within one expression: `show(e, f).text`.  Numbers keep
 * the decimals that were counted with; money has at least two. Nothing here allocates. */
#ifndef DOORCOST_REPORT_WORDS_SHOW_H
#define DOORCOST_REPORT_WORDS_SHOW_H

#include "price/estimate.h"

struct shown {
    char text[136]; /* the longest: plan_proof_sheets of the largest amounts */
};

/* The number alone, with the decimals that a person reads; `-` for none. */
struct shown show(const struct estimate *estimate, fig f);
/* The same with all its decimals: for other programs, and where one works with it. */
struct shown show_exact(const struct estimate *estimate, fig f);
/* That without noughts at its end: `8`, where others have 8.0000. */
struct shown show_short(const struct estimate *estimate, fig f);
/* With at most two decimals, of cubic meters four, and without noughts at its end: on a list that
 * nobody figures with. */
struct shown show_few(const struct estimate *estimate, fig f);
/* With its unit: `4 mil`, `97.1234 bf`. */
struct shown show_unit(const struct estimate *estimate, fig f);
/* As money where it is money, else with its unit. */
struct shown show_amount(const struct estimate *estimate, fig f);
/* What its unit is called; of money the currency. Borrowed. */
const char *show_unit_name(const struct estimate *estimate, fig f);
/* The settings of the file that a place is of: rates or job; NULL: neither. Borrowed. */
const struct settings *show_settings(const struct estimate *estimate, struct place place);
/* The section and key of rates or job that gave a figure of a traced tape; NULL: it is of neither
 * file. Borrowed. */
const struct setting *show_setting(const struct estimate *estimate, fig f);
/* When a price that a figure is given by was learned, `2026-01-10`; "" where that is not said. Of a
 * traced tape. */
struct shown show_learned(const struct estimate *estimate, fig f);
/* `3 errors`, `1 warning`, `no errors`: a count and its noun, which takes an s. */
struct shown show_count(size_t count, const char *noun);
/* `50 doors and fronts`, `1 door or front`. */
struct shown show_doors(int64_t count);
/* Money: no currency, at least the decimals that it has. */
struct shown show_money(const struct estimate *estimate, fig f);
/* A number at `decimals`, plain. */
struct shown show_number(int64_t value, uint8_t decimals);
/* The same with a plus before what is above 0: a difference. */
struct shown show_more(int64_t value, uint8_t decimals);
/* A value of an input with its unit, a length in `lengths`; empty where it is not set. */
struct shown show_value(const struct value *value, enum length_unit lengths);

/* Width x height: `17 3/4 x 23 3/4`. */
struct shown show_size(length width, length height, enum length_unit lengths);

/* A size that stays on one line where words around it are broken: between 24 and 1/8 stands a blank
 * that no program breaks at. text: of size bytes, 64 or more; returns it. */
char *show_unbroken(length value, enum length_unit lengths, char *text, size_t size);

/* What the percent of waste is of: `45 % added to net (x 1.45)`, `31 % lost of what is bought
 * (/ 0.69)`. */
struct shown show_waste(const struct value *waste, enum waste_as as);

/* Whether a figure is a value of an input (the same unit understood). */
bool value_is(const struct tape *tape, fig f, const struct value *value);

/* Sheets to buy: `5 sheets`, `1 sheet and a half`, `a half sheet`. */
struct shown show_sheets(const struct estimate *estimate, const struct sheet_purchase_by *bought);

/* Until when the job's price stands, YYYY-MM-DD; empty where the job does not say. */
struct shown show_valid_until(const struct job *job);

/* How far the total of one estimate is from that of the first, in money and percent, with a sign;
 * percent `-` where the first is nothing. */
struct shown_difference {
    struct shown money, percent;
};
/* How far the total of one estimate is from that of the first. */
struct shown_difference show_difference(const struct estimate *first, const struct estimate *other);

/* The color of a door in its finish; "" where it has none, or where no coat of the finish is mixed
 * to a color. Borrowed. */
const char *show_color(const struct rates *rates, const struct construction *construction);

/* Whether the shop prints on letter paper; else on A4. */
bool show_on_letter(const struct estimate *e);

/* What the client took and when, `maple, 2026-03-09`, and where this estimate is of something else,
 * that it is; NULL: nothing is agreed yet. In pool; "" when memory is out. */
const char *show_agreed(struct pool *pool, const struct estimate *e);

/* When the doors will be ready, as the job says it, with the day by the plan where it is planned,
 * `2026-03-27, planned from 2026-03-16`; NULL: it is not said. In pool or borrowed; "" when memory
 * is out. */
const char *show_ready(struct pool *pool, const struct estimate *e);

/* What the client's papers are called: "Quote", "Estimate"; static. */
const char *show_paper(const struct job *job);

/* The color of a batch; empty where its finish shows none, unless that parts it from another of the
 * same finish. */
const char *show_batch_color(const struct estimate *e, const struct batch *batch);

/* How the grain of a door's panels or slab runs, "vertical" or "horizontal"; static. NULL: they
 * have none that shows, as glass, MDF, or what is bought in. */
const char *show_grain(const struct rates *rates, const struct door *door);
/* What a piece of hardware is on a door as: "hinge", "pull" or "other"; static. */
const char *show_role(enum hardware_role role);
/* The style by which a door is made: of a low front the slab style of the one that it names.
 * Borrowed. */
const char *show_style(const struct door *door);

#endif
