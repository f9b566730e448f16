/* SPDX-License-Identifier: MIT */
/* What the client is told of a job, the same in the PDF and in the workbook: words, amounts and
 * drawings, and nothing else.  Nothing here leads to what the job cost, took or earns, so that
 * neither paper can show it; tests/rooms.sh holds this room and the papers' to that.
 *
 * report/offer_make makes it.  Texts are never NULL where a comment does not say so; they live in
 * its pool or in the inputs. */
#ifndef DOORCOST_REPORT_OFFER_OFFER_H
#define DOORCOST_REPORT_OFFER_OFFER_H

#include "base/pool.h"
#include "figure/unit.h"
#include "report/draw/elevation.h"

/* A number as cells have it, value / 10^decimals of unit, and as people read it. */
struct offer_amount {
    int64_t value;
    uint8_t decimals;
    enum unit unit;
    const char *text; /* without unit; money with separators: `12,345.00` */
};

/* Two words side by side: `Valid until`, `April 1, 2026`. */
struct offer_pair {
    const char *label, *text;
};

/* The shop's picture, a PNG; bytes NULL: there is none. Borrowed. */
struct offer_logo {
    const unsigned char *bytes;
    size_t size;
    int32_t width, height; /* dots, 1 or more */
};

/* Doors that look alike but for their size; the drawing is of the first of them. */
struct offer_kind {
    const char *letter; /* A, B ... Z, AA ... */
    const char *words;
    struct elevation drawing; /* with dashed lines that meet at the hinged edge, where all of the
                                 kind hang alike */
};

struct offer_door {
    const char *id; /* of its row in the door list */
    size_t kind;
    const char *words;                 /* its use, hinge side, note */
    const char *listed;                /* the same as the list has it: behind its room, where rooms
                                          have no lines */
    struct offer_amount width, height; /* finished, of one leaf: `17 3/4` */
    struct offer_amount count, leaves; /* openings; doors in each: 1, or 2 for a pair */
    struct offer_amount price, amount; /* of one leaf; of the row */
};

struct offer_room {
    const char *name;    /* empty: none is given */
    size_t first, count; /* into the doors */
    struct offer_amount amount;
};

/* How far the client sees what the doors cost him. */
enum offer_detail {
    OFFER_SUM,   /* one sum for all */
    OFFER_ROOMS, /* a sum for each room */
    OFFER_EACH,  /* the price of each door, and the rooms' sums */
    OFFER_DETAIL_COUNT
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
    OFFER_BEFORE_CARD,  /* what the card fee is of */
    OFFER_CARD,         /* a percent of the total before it */
    OFFER_CARD_OF_PAID, /* a percent of the total with it */
    OFFER_TOTAL,
    OFFER_DEPOSIT,
    OFFER_STAGE,
    OFFER_BALANCE
};

/* A line of the price. */
struct offer_line {
    enum offer_line_kind kind;
    const char *label;
    const char *words;           /* the label, with the percentage where one makes the amount */
    bool by_percent;             /* of a line above it that is shown */
    struct offer_amount percent; /* meaningful where by_percent */
    struct offer_amount amount;  /* negative where it is taken off */
};

struct offer_option {
    const char *name, *words;
    const char *effect;         /* `replaces the total above`, `takes off the total above` */
    const char *first, *second; /* the same with the amounts, the one to be read first first */
    const char *payments;       /* what is due when with it */
    int64_t total, difference;  /* at the decimals */
    uint8_t decimals;
};

/* --- change orders --- */

enum offer_change_kind { OFFER_TAKEN_OFF, OFFER_CHANGED, OFFER_ADDED, OFFER_CHANGE_KINDS };

/* A row of the list that is not as it was. */
struct offer_change {
    enum offer_change_kind kind;
    const char *id;
    const char *words;          /* what falls away, what was and what is, what is new */
    struct offer_amount amount; /* what it adds to the prices of the doors, with its sign */
};

/* A line of the price, before and now; a text of "" where there was, or is, none of it. */
struct offer_compared {
    const char *words;
    bool total;
    struct offer_amount older, newer;
    struct offer_amount difference; /* with its sign */
};

/* What a change order changes; made from two offers. */
struct offer_changes {
    struct offer_change *rows; /* by kind */
    size_t row_count;
    bool each; /* each row has its amount; else only the sums of the kinds are told */
    struct offer_compared *lines;
    size_t line_count;
};

/* --- price lists --- */

/* Counts that stand side by side in a table. */
#define OFFER_MOST_COUNTS 5

struct offer_size {
    const char *words;                             /* `15 x 30` */
    struct offer_amount prices[OFFER_MOST_COUNTS]; /* of one door; a text of "": it is not made */
};

/* Prices of a style by size and by how many are ordered. */
struct offer_price_table {
    const char *style, *made; /* what it is, and of what; empty: as of the table before it */
    const char *head;         /* `Price of each, ordered alone` */
    const char *counts[OFFER_MOST_COUNTS]; /* `of 10` */
    size_t count;
    struct offer_size *sizes;
    size_t size_count;
};

struct offer_prices {
    struct offer_price_table *tables;
    size_t table_count;
};

struct offer_texts {
    const char **text;
    size_t count, room;
};

#define OFFER_MOST_FACTS 8

struct offer {
    struct pool pool;
    const char *paper; /* "Quote", "Estimate" */
    const char *mark;  /* `example prices`: the price is none; empty: it is one */
    const char *currency;
    const char *title;
    const char *shop;              /* empty where not given */
    struct offer_texts shop_lines; /* address, contact, license */
    struct offer_logo logo;
    const char *client, *client_address; /* empty where not given */
    bool estimate;                       /* no price is agreed on it */
    bool letter;                         /* printed on US letter, else on A4 */
    int32_t year, month, day;            /* of the paper */
    const char *reference;               /* `Quote 0031, revision 2`, for the foot of a page */
    struct offer_pair facts[OFFER_MOST_FACTS]; /* number, date, until when */
    size_t fact_count;
    struct offer_texts statements; /* what the paper is, to whose sizes, until when */
    struct offer_texts made;       /* materials and finish, in words */
    struct offer_texts included, excluded, notes, terms;
    struct offer_kind *kinds;
    size_t kind_count;
    enum offer_detail detail;
    struct offer_door *doors; /* by room */
    size_t door_count;
    bool rooms_beside; /* nearly each door is a room of its own: the list names it beside the door,
                          and there is one room without a name */
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
    const char *payments_head;    /* above the payments; empty: none is needed */
    struct offer_texts pay_notes; /* who pays otherwise than by card, how to pay */
    const char *other_total;      /* the same for the head of the paper; empty: no card fee */
    const char *list_note;        /* below the list of doors */
    const char *terms_head;
    const char *sign_head, *agreed; /* what is signed; the shop signs no estimate */
    /* Of a change order: what it changes, in place of doors, kinds and lines; `included` and
     * `excluded` are then what is said from now on and no longer. NULL: it is no change order. */
    const struct offer_changes *changes;
    /* Of a price list: its tables, in place of all but the head and the statements. NULL: it is
     * none. */
    const struct offer_prices *prices;
};

/* Frees all that the offer's pool holds; an offer of zeros is accepted. */
void offer_clear(struct offer *offer);

/* Whether each room has its sum. */
bool offer_has_sums(const struct offer *offer);

#endif
