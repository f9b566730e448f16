/* SPDX-License-Identifier: MIT */
#include "report/client/client_layout.h"

#include <string.h>

#define ID_MOST    0.2 /* of all columns: longer names are broken into lines */
#define WHAT_LEAST 0.2

/* least: the widest line of the head, which may be broken at blanks. */
static const struct {
    const char *head, *least;
    bool number;
} kinds[CLIENT_COLUMN_COUNT] = {
    [CLIENT_ID] = {"No.", "No.", false},
    [CLIENT_KIND] = {"Kind", "Kind", false},
    [CLIENT_WHAT] = {"What", "What", false},
    [CLIENT_WIDTH] = {"Width", "Width", true},
    [CLIENT_HEIGHT] = {"Height", "Height", true},
    [CLIENT_COUNT] = {"Count", "Count", true},
    [CLIENT_LEAVES] = {"Doors in each", "Doors in", true},
    [CLIENT_EACH] = {"Price each", "Price", true},
    [CLIENT_AMOUNT] = {"Amount", "Amount", true},
};

struct offer_amount client_cell(const struct offer *o, const struct offer_door *door,
                                enum client_column_is is) {
    switch (is) {
    case CLIENT_ID:
        return (struct offer_amount){.text = door->id};
    case CLIENT_KIND:
        return (struct offer_amount){.text = o->kinds[door->kind].letter};
    case CLIENT_WHAT:
        return (struct offer_amount){.text = door->listed};
    case CLIENT_WIDTH:
        return door->width;
    case CLIENT_HEIGHT:
        return door->height;
    case CLIENT_COUNT:
        return door->count;
    case CLIENT_LEAVES:
        return door->leaves;
    case CLIENT_EACH:
        return door->price;
    case CLIENT_AMOUNT:
    case CLIENT_COLUMN_COUNT:
        break;
    }
    return door->amount;
}

static bool is_shown(const struct offer *o, enum client_column_is is) {
    if (is == CLIENT_EACH) {
        return o->detail == OFFER_EACH;
    }
    if (is == CLIENT_AMOUNT) {
        return offer_has_sums(o);
    }
    for (size_t d = 0; is == CLIENT_LEAVES && d < o->door_count; d++) {
        if (strcmp(o->doors[d].leaves.text, "1") != 0) {
            return true;
        }
    }
    return is != CLIENT_LEAVES;
}

/* Most texts are told apart by their length: those far shorter than the longest are not measured.
 */
static double widest(const struct offer *o, enum client_column_is is, client_measure *measure,
                     void *paper) {
    double most = measure(paper, kinds[is].least, true);
    size_t longest = 0;
    for (size_t d = 0; d < o->door_count && (is != CLIENT_AMOUNT || o->detail == OFFER_EACH); d++) {
        const char *const text = client_cell(o, &o->doors[d], is).text;
        const size_t size = strlen(text);
        const double wide = 2 * size > longest ? measure(paper, text, is == CLIENT_ID) : 0;
        most = wide > most ? wide : most;
        longest = size > longest ? size : longest;
    }
    for (size_t r = 0; is == CLIENT_AMOUNT && r < o->room_count; r++) {
        const double wide = measure(paper, o->rooms[r].amount.text, true);
        most = wide > most ? wide : most;
    }
    return most;
}

void client_columns_make(struct client_columns *c, const struct offer *o, client_measure *measure,
                         void *paper, double total, double gap) {
    double left = total;
    size_t what = 0;
    c->count = 0;
    for (int i = CLIENT_ID; i < CLIENT_COLUMN_COUNT; i++) {
        const enum client_column_is is = (enum client_column_is)i;
        if (!is_shown(o, is)) {
            continue;
        }
        const double needed = is == CLIENT_WHAT ? 0 : widest(o, is, measure, paper) + gap;
        const bool long_id = is == CLIENT_ID && needed > ID_MOST * total;
        what = is == CLIENT_WHAT ? c->count : what;
        c->list[c->count] = (struct client_column){.is = is,
                                                   .head = kinds[is].head,
                                                   .number = kinds[is].number,
                                                   .width = long_id ? ID_MOST * total : needed};
        left -= c->list[c->count++].width;
    }
    c->list[what].width = left > WHAT_LEAST * total ? left : WHAT_LEAST * total;
}

bool client_room_has_head(const struct offer *o, const struct offer_room *room) {
    return !o->rooms_beside && (room->name[0] != '\0' || offer_has_sums(o));
}

const char *client_list_head(const struct offer *o) {
    const bool one = o->room_count == 1 && o->rooms[0].name[0] == '\0'; /* none is told */
    return o->rooms_beside || one ? "Doors and fronts" : "Doors and fronts, by room";
}

const char *client_change_head(enum offer_change_kind kind) {
    static const char *const heads[OFFER_CHANGE_KINDS] = {
        [OFFER_TAKEN_OFF] = "Taken off", [OFFER_CHANGED] = "Changed", [OFFER_ADDED] = "Added"};
    return heads[kind];
}

const char *const client_compared_heads[CLIENT_COMPARED] = {
    [CLIENT_WAS] = "Before", [CLIENT_IS] = "Now", [CLIENT_DIFFERENCE] = "Difference"};

const struct offer_amount *client_compared(const struct offer_compared *line, int column) {
    return column == CLIENT_WAS ? &line->older
                                : (column == CLIENT_IS ? &line->newer : &line->difference);
}

const char *client_price_text(const struct offer_amount *price) {
    return price->text[0] == '\0' ? "-" : price->text;
}

void client_words_make(const struct offer *o, struct client_words lists[CLIENT_WORDS_COUNT]) {
    const bool order = o->changes != NULL;
    const struct client_words words[CLIENT_WORDS_COUNT] = {
        {"Wood, panels and finish", &o->made, false, false},
        {order ? "From now on" : "Included", &o->included, false, false},
        {order ? "No longer" : "Not included", &o->excluded, false, true},
        {"Notes", &o->notes, false, false},
        {o->terms_head, &o->terms, true, false},
    };
    memcpy(lists, words, sizeof words);
}

size_t client_signers(const struct offer *o, const char *names[2]) {
    names[0] = o->client[0] == '\0' ? "For the client" : o->client;
    names[1] = o->shop[0] == '\0' ? "For the shop" : o->shop;
    return o->estimate ? 1 : 2; /* the shop signs no estimate */
}
