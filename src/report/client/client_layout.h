/* SPDX-License-Identifier: MIT */
/* What both of the client's papers show of an offer, under which heads and in which order: the PDF
 * draws it, the workbook lays it into cells.  Parts come as they stand here: head, price, options,
 * list, kinds, words, signatures. */
#ifndef DOORCOST_REPORT_CLIENT_CLIENT_LAYOUT_H
#define DOORCOST_REPORT_CLIENT_CLIENT_LAYOUT_H

#include "report/offer/offer.h"

#define CLIENT_PRICE_HEAD   "Price"
#define CLIENT_OPTIONS_HEAD "Options, for the same list"
#define CLIENT_KINDS_HEAD   "The kinds of doors and fronts (not to one scale)"
#define CLIENT_CHANGES_HEAD "What changes"
#define CLIENT_SIZE_HEAD    "Size"
#define CLIENT_NO_ROOM      "(no room)"
#define CLIENT_SIGN_WHO     "signature and name"
#define CLIENT_SIGN_WHEN    "date"

/* --- the list of doors --- */

enum client_column_is {
    CLIENT_ID,
    CLIENT_KIND,
    CLIENT_WHAT,
    CLIENT_WIDTH,
    CLIENT_HEIGHT,
    CLIENT_COUNT,
    CLIENT_LEAVES, /* where an opening has more than one */
    CLIENT_EACH,
    CLIENT_AMOUNT,
    CLIENT_COLUMN_COUNT
};

struct client_column {
    enum client_column_is is;
    const char *head;
    bool number;  /* stands at the right of its column, and is a number in a workbook */
    double width; /* in the paper's own measure */
};

struct client_columns {
    struct client_column list[CLIENT_COLUMN_COUNT];
    size_t count;
};

/* How wide a text runs in a paper's own measure. */
typedef double client_measure(void *paper, const char *text, bool bold);

/* The columns of an offer's list, together `total` wide: those of numbers as wide as they need,
 * with `gap`, the names of rows within reason, and what a door is takes the rest. */
void client_columns_make(struct client_columns *columns, const struct offer *offer,
                         client_measure *measure, void *paper, double total, double gap);
/* What stands in a column; of one that is no number the text alone. */
struct offer_amount client_cell(const struct offer *offer, const struct offer_door *door,
                                enum client_column_is is);
/* What heads the list. Static. */
const char *client_list_head(const struct offer *offer);
/* Whether a room has a line of its own. */
bool client_room_has_head(const struct offer *offer, const struct offer_room *room);

/* --- change orders --- */

/* The head above the rows of a kind: `Taken off`. */
const char *client_change_head(enum offer_change_kind kind);

/* Heads of the amounts of a price before and now. */
enum { CLIENT_WAS, CLIENT_IS, CLIENT_DIFFERENCE, CLIENT_COMPARED };
extern const char *const client_compared_heads[CLIENT_COMPARED];
/* One of these amounts. */
const struct offer_amount *client_compared(const struct offer_compared *line, int column);

/* --- price lists --- */

/* A price, or a dash where the door is not made. Borrowed or static. */
const char *client_price_text(const struct offer_amount *price);

/* --- the words --- */

struct client_words {
    const char *head;
    const struct offer_texts *texts;
    bool numbered;
    bool beside; /* stands right of the list before it */
};

/* Lists of words: what it is made of, what is in and what is not, notes, terms. */
#define CLIENT_WORDS_COUNT 5
void client_words_make(const struct offer *offer, struct client_words lists[CLIENT_WORDS_COUNT]);

/* Who signs, at most two; returns how many. */
size_t client_signers(const struct offer *offer, const char *names[2]);

#endif
