/* SPDX-License-Identifier: MIT */
/* Shared by the files that make an offer, and by nobody else. */
#ifndef DOORCOST_REPORT_OFFER_PARTS_H
#define DOORCOST_REPORT_OFFER_PARTS_H

#include "report/offer.h"

/* Room for the texts of a list. */
#define OFFER_MOST_TEXTS ((size_t)64)

/* Puts a text at the end of a list; a list that is full takes no more.  NULL (memory is out) is
 * passed over. */
void offer_add(struct offer_texts *texts, const char *text);

/* The text with a capital at its head, where that is a plain letter. In the pool, never NULL. */
const char *offer_capital(struct offer *offer, const char *text);

/* What an input gives, or "". */
const char *offer_or_nothing(const char *text);

/* offer_words.c: statements, materials, finish, what is included and what is not. */
void offer_say(struct offer *offer);

/* offer_lines.c: the lines of the price, payments and options. false: memory is out. */
bool offer_price(struct offer *offer, const struct estimate *options, size_t option_count);

/* A material as the client reads it. Borrowed. */
const char *offer_material(const struct rates *rates, enum stuff stuff, int32_t material);

/* `March 2, 2026` for a shop in inches, `2 March 2026` for one in millimetres. In pool. */
const char *offer_date(struct pool *pool, int32_t year, int32_t month, int32_t day, bool metric);

#endif
