/* SPDX-License-Identifier: MIT */
/* Shared by the files that make an offer, and by nobody else. Texts returned live in the offer's
 * pool or in the inputs, and are never NULL where a comment does not say so. */
#ifndef DOORCOST_REPORT_OFFER_MAKE_OFFER_MAKER_H
#define DOORCOST_REPORT_OFFER_MAKE_OFFER_MAKER_H

#include "base/date.h"
#include "report/offer_make/offer_make.h"

/* The doors of a kind. */
struct kind_doors {
    const struct door *door; /* that it is drawn of */
    bool alike;              /* all hang on hinges at the same side */
};

struct offer_maker {
    struct offer *offer;
    struct pool *pool; /* the offer's */
    const struct estimate *e;
    size_t *rows; /* of the door list, by door of the offer */
    struct kind_doors *kinds;
    const char *until; /* when the prices end; empty: not said */
};

/* The figures of a door of the offer. */
const struct leaf_figures *offer_leaf(const struct offer_maker *m, size_t door);

/* Puts a text at the end of a list; one that is empty or NULL (out of memory) is passed over. */
void offer_add(struct offer_texts *texts, const char *text);

/* The text with a capital at its head, where that is a plain letter; NULL: "". */
const char *offer_capital(struct offer_maker *m, const char *text);

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
    OFFER_HARDWARE,
    OFFER_SIZES,
    OFFER_MADE_COUNT
};

/* offer_doors.c: doors, kinds and rooms. false: out of memory. */
bool offer_doors(struct offer_maker *m);
/* Whether a leaf hangs on hinges and nobody said at which side. */
bool offer_lacks_side(const struct leaf_figures *leaf);

/* offer_made.c: from frames to finish, each with the rows that it is of. */
void offer_say_made(struct offer_maker *m);
/* What an option makes otherwise, its exceptions named: `Panels: maple plywood; for G08, W05: hard
 * maple.` */
const char *offer_changes(struct offer_maker *m, const struct estimate *option);
/* offer_ids.c: the rows of the doors that are in, in the order of the offer: `G01 to G05, G08`;
 * many by their kinds, where they are all of these: `kinds A, C`. in: one a door. most: runs that
 * are named, `G01, G08 and 30 more`: for what is counted beside it; OFFER_EVERY_ID where the words
 * tell what a door is made of. */
#define OFFER_EVERY_ID SIZE_MAX
#define OFFER_FEW_IDS  ((size_t)12)
const char *offer_ids(struct offer_maker *m, const bool *in, size_t most);
/* A material as the client reads it; index below 0: "". Borrowed. */
const char *offer_material(const struct rates *rates, enum material_kind material_kind,
                           int32_t material);
/* A style as the client reads it. Borrowed. */
const char *offer_style(const struct door *door);
/* A finish with its color and faces, as the client reads it. */
const char *offer_finish(struct offer_maker *m, const struct construction *construction);
/* A piece of hardware as the client reads it; index below 0: "". Borrowed. */
const char *offer_hardware(const struct rates *rates, int32_t hardware);

/* offer_words.c: statements, what is included and what is not, what is signed. */
void offer_say(struct offer_maker *m);

/* offer_amount.c: figures as the offer holds them. */
struct offer_amount offer_amount(struct offer_maker *m, fig figure);
/* With the other sign: what is taken off. */
struct offer_amount offer_amount_less(struct offer_maker *m, fig figure);
/* Money of an estimate's tape with separators: `12,345.00`. less: with the other sign. */
const char *offer_money(struct offer_maker *m, const struct estimate *e, fig amount, bool less);
/* The same of an amount at the currency's decimals; plus: with a sign before it. */
const char *offer_sum(struct offer_maker *m, int64_t amount, bool plus);
/* `6.25 %`. */
const char *offer_percent(struct offer_maker *m, fig percent);

/* offer_lines.c: the lines of the price and the payments. false: out of memory. */
bool offer_price(struct offer_maker *m);

/* offer_options.c: the options of the job. false: out of memory. */
bool offer_options(struct offer_maker *m, const struct estimate *options, size_t option_count);

/* offer_order_rows.c: the rows that are not the same in two offers. false: out of memory. */
bool offer_order_rows(struct offer_maker *m, struct offer_changes *changes,
                      const struct offer *older, const struct offer *newer);
/* offer_order.c: money at the decimals of a currency, with its sign. */
struct offer_amount offer_signed(struct offer_maker *m, int64_t amount);

/* offer_words.c: when the doors will be ready: the day by the plan, which holds if work begins in
 * time, or the job's words; NULL: not said. */
const char *offer_ready(struct offer_maker *m);

/* `March 2, 2026` for a shop in inches, `2 March 2026` for one in millimeters. */
const char *offer_date(struct pool *pool, struct date date, bool metric);

#endif
