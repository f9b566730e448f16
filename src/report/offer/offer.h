/* SPDX-License-Identifier: MIT */
/* What the client is told of a job, the same in the PDF and in the workbook: words and amounts, and
 * nothing else.  What it cost, took and earns is not in here, so that neither paper can show it. */
#ifndef DOORCOST_REPORT_OFFER_OFFER_H
#define DOORCOST_REPORT_OFFER_OFFER_H

#include "price/estimate.h"
#include "report/draw/elevation.h"

/* Two words side by side: `Valid until`, `April 1, 2026`. */
struct offer_pair {
    const char *label, *text;
};

/* Doors that look alike but for their size; the drawing is of the first of them. */
struct offer_kind {
    char letter[4]; /* A, B ... Z, AA ... */
    const char *words;
    struct elevation elevation;
};

struct offer_door {
    size_t row; /* of the door list */
    const struct leaf_figures *leaf;
    const struct door_price *price;
    size_t kind;
    const char *words;
};

struct offer_room {
    const char *name;
    size_t first, count; /* into the doors */
    fig amount;
};

enum offer_line_kind {
    OFFER_DOORS,
    OFFER_DISCOUNT,
    OFFER_AFTER,   /* doors less discount */
    OFFER_MINIMUM, /* up to the least that a job is sold for */
    OFFER_CHARGE,
    OFFER_DELIVERY,
    OFFER_BEFORE_TAX,
    OFFER_TAXED, /* for information: the part of it that is taxed */
    OFFER_TAX,
    OFFER_BEFORE_CARD, /* what the card fee is of */
    OFFER_CARD,
    OFFER_TOTAL,
    OFFER_DEPOSIT,
    OFFER_STAGE,
    OFFER_BALANCE
};

/* A line of the price. */
struct offer_line {
    enum offer_line_kind kind;
    const char *label;
    fig percent; /* that makes it; none: it is no percentage */
    fig amount;
    bool less; /* taken off: shown with a minus */
};

struct offer_option {
    const char *name, *words;
    const char *effect;         /* `replaces the total above`, `takes off the total above` */
    const char *first, *second; /* the same with the amounts, the one to be read first first */
    const char *payments;       /* what is due when with it */
    int64_t total, difference;  /* in hundredths */
};

struct offer_texts {
    const char **text;
    size_t count, room;
};

struct offer {
    struct pool pool;
    const struct estimate *e;
    const char *paper; /* "Quote", "Estimate" */
    const char *currency;
    const char *title;
    const char *shop, *shop_address, *shop_contact; /* empty where not given */
    const char *client, *client_address;
    bool estimate;              /* no price is agreed on it */
    const char *reference;      /* `Quote 0031, revision 2`, for the foot of a page */
    struct offer_pair facts[8]; /* number, date, until when */
    size_t fact_count;
    struct offer_texts statements; /* what the paper is, to whose sizes, until when */
    struct offer_texts made;       /* materials and finish, in words */
    struct offer_texts included, excluded, notes, terms;
    struct offer_kind *kinds;
    size_t kind_count;
    struct offer_door *doors; /* by room */
    size_t door_count;
    struct offer_room *rooms;
    size_t room_count;
    struct offer_line *lines; /* of the price, to the total */
    size_t line_count;
    struct offer_line *payments; /* of the total */
    size_t payment_count;
    struct offer_option *options;
    size_t option_count;
    const char *total_words; /* `6,743.10 USD` */
    const char *total_label; /* `Total, tax included` */
    const char *pay_words;   /* what is due when, for the head of the paper */
    const char *pay_label;
    const char *payments_head; /* above the payments; empty: none is needed */
    const char *other_payer;   /* who pays otherwise than by card; empty: no card fee */
    const char *list_note;     /* below the list of doors */
    const char *terms_head;
    const char *sign_head, *agreed; /* what is signed; the shop signs no estimate */
};

/* Makes the offer of an estimate; options: of the same job.  All texts live in its pool or in the
 * inputs. offer: always left so that offer_clear may be called. true: memory held. */
bool offer_make(struct offer *offer, const struct estimate *estimate,
                const struct estimate *options, size_t option_count)
    __attribute__((warn_unused_result));
void offer_clear(struct offer *offer);

/* Money of the offer's tape with separators: `12,345.00`; in its pool, never NULL. */
const char *offer_money(struct offer *offer, fig amount, bool less);
/* The same of an amount in hundredths; plus: with a sign before it. */
const char *offer_hundredths(struct offer *offer, int64_t amount, bool plus);

/* `6.25 %`. In the pool, never NULL. */
const char *offer_percent(struct offer *offer, fig percent);

#endif
