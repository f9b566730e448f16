/* SPDX-License-Identifier: MIT */
/* What papers say of draws: how they were made, what was taken for granted, what a job risks.
 * Texts in pool are "" when memory is out. */
#ifndef DOORCOST_REPORT_WORDS_CHANCE_WORDS_H
#define DOORCOST_REPORT_WORDS_CHANCE_WORDS_H

#include "price/chance.h"

/* How shares of the spread are counted; follows `goes with,`. */
#define CHANCE_SHARE_WORDS "by squared rank correlation, made to add up to 100 %"

/* What may go wrong with a price. */
enum chance_risk { CHANCE_UNDER_DIRECT, CHANCE_UNDER_FULL, CHANCE_UNDER_WANTED, CHANCE_RISKS };

/* `the job loses money: ...`; static. */
const char *chance_risk_words(enum chance_risk risk);
/* Its key of JSON; static. */
const char *chance_risk_key(enum chance_risk risk);
/* In tenths of a percent of the draws. */
int32_t chance_risk(enum chance_risk risk, const struct chance *chance);

/* `[lumber poplar] price`, with what of a list it is, and the group that it moves with. */
const char *chance_input_words(const struct chance_input *input, struct pool *pool);

/* `10000 draws of 4 ranges at once, by PERT, seed 1; taken as independent: ...` */
const char *chance_drawn_words(const struct chance *chance, const struct rates *rates,
                               struct pool *pool);

/* The contingency for the confidence, and that of the rates. */
const char *chance_contingency_words(const struct chance *chance, const struct estimate *estimate,
                                     struct pool *pool);

/* What was held or is without effect, and what ranges are; NULL ends the list. In pool; NULL when
 * memory is out. */
const char *const *chance_notes(const struct chance *chance, struct pool *pool);

#endif
