/* SPDX-License-Identifier: MIT */
/* Shared by the files that make an offer, and by nobody else. */
#ifndef DOORCOST_REPORT_OFFER_OFFER_PARTS_H
#define DOORCOST_REPORT_OFFER_OFFER_PARTS_H

#include "report/offer/offer.h"

/* Puts a text at the end of a list; a list that is full takes no more.  NULL (memory is out) is
 * passed over. */
void offer_add(struct offer_texts *texts, const char *text);

/* The text with a capital at its head, where that is a plain letter. In the pool, never NULL. */
const char *offer_capital(struct offer *offer, const char *text);

/* What an input gives, or "". */
const char *offer_or_nothing(const char *text);

/* What a door is made of, in the order in which papers say it. */
enum offer_made {
    OFFER_STYLE,
    OFFER_FRAMES,
    OFFER_PANELS,
    OFFER_SLABS,
    OFFER_GLASS,
    OFFER_FINISH,
    OFFER_HINGES,
    OFFER_PULLS,
    OFFER_SIZES,
    OFFER_MADE_COUNT
};

/* offer_made.c: from frames to finish, each with the rows that it is of. */
void offer_say_made(struct offer *offer);
/* What an option makes otherwise, its exceptions named: `Panels: maple plywood; for G08, W05: hard
 * maple.` In the pool, never NULL. */
const char *offer_changes(struct offer *offer, const struct estimate *option);
/* The rows of the doors that are in, in the order of the offer: `G01 to G05, G08`. in: one a door.
 * In the pool, never NULL. */
const char *offer_ids(struct offer *offer, const bool *in);
/* A material, style or piece of hardware as the client reads it. Borrowed. */
const char *offer_material(const struct rates *rates, enum material_kind material_kind,
                           int32_t material);
const char *offer_style(const struct door *door);
const char *offer_hardware(const struct rates *rates, int32_t hardware);

/* offer_words.c: statements, what is included and what is not, what is signed. */
void offer_say(struct offer *offer);

/* offer_lines.c: the lines of the price and the payments. false: memory is out. */
bool offer_price(struct offer *offer);
/* Money of an option's tape, as offer_money. In the pool, never NULL. */
const char *offer_money_of(struct offer *offer, const struct estimate *e, fig amount, bool less);

/* offer_options.c: the options of the job. false: memory is out. */
bool offer_options(struct offer *offer, const struct estimate *options, size_t option_count);

/* `March 2, 2026` for a shop in inches, `2 March 2026` for one in millimeters. In pool. */
const char *offer_date(struct pool *pool, int32_t year, int32_t month, int32_t day, bool metric);

#endif
