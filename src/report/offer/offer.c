/* SPDX-License-Identifier: MIT */
#include "report/offer/offer.h"

#include "base/date.h"
#include "report/offer/offer_parts.h"
#include "report/words/show.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

const char *offer_or_nothing(const char *text) {
    return text == NULL ? "" : text;
}

void offer_add(struct offer_texts *texts, const char *text) {
    if (text != NULL && text[0] != '\0' && texts->count < texts->room) {
        texts->text[texts->count++] = text;
    }
}

const char *offer_capital(struct offer *offer, const char *text) {
    if (text == NULL) {
        return "";
    }
    char *const copy = pool_text(&offer->pool, text, strlen(text));
    if (copy != NULL && copy[0] >= 'a' && copy[0] <= 'z') {
        copy[0] = (char)(copy[0] - 'a' + 'A');
    }
    return offer_or_nothing(copy);
}

const char *offer_date(struct pool *pool, int32_t year, int32_t month, int32_t day, bool metric) {
    static const char *const months[] = {"January",   "February", "March",    "April",
                                         "May",       "June",     "July",     "August",
                                         "September", "October",  "November", "December"};
    assert(month >= 1 && month <= 12);
    const char *const name = months[month - 1];
    return offer_or_nothing(metric ? pool_format(pool, "%d %s %d", (int)day, name, (int)year)
                                   : pool_format(pool, "%s %d, %d", name, (int)day, (int)year));
}

/* --- doors, kinds, rooms --- */

/* `pair of doors, frame with a flat panel, 2 panels high`. */
static const char *kind_words(struct offer *o, const struct door *door) {
    const enum use use = (enum use)door->row->use.choice;
    const bool pair = door->leaves > 1;
    const bool glass = door->form == FORM_GLASS;
    return offer_or_nothing(pool_format(
        &o->pool, "%s%s, %s%s%s", pair ? "pair of " : "",
        pair && use == USE_DOOR ? "doors" : show_use(use), offer_style(door), glass ? ", " : "",
        glass ? offer_material(o->e->rates, MATERIAL_GLASS, door->construction.glass.index) : ""));
}

static void name_kind(struct offer_kind *kind, size_t number) {
    if (number < 26) {
        kind->letter[0] = (char)('A' + number);
        return;
    }
    kind->letter[0] = (char)('A' + (number / 26 - 1) % 26);
    kind->letter[1] = (char)('A' + number % 26);
}

/* The kind of a door, a new one where it is the first. false: memory is out. */
static bool find_kind(struct offer *o, const struct leaf_figures *leaf, size_t *kind) {
    for (*kind = 0; *kind < o->kind_count; (*kind)++) {
        if (elevation_kind_same(o->kinds[*kind].elevation.door, leaf->door)) {
            return true;
        }
    }
    struct offer_kind *const made = &o->kinds[o->kind_count++];
    name_kind(made, *kind);
    made->words = kind_words(o, leaf->door);
    return elevation_make(&made->elevation, &o->pool, leaf->door, 0, o->e->job->unit);
}

/* Where a door is hung, as seen from the front; "": it has no hinges. */
static const char *hinge_words(const struct leaf_figures *leaf) {
    if (fig_none(leaf->hinges)) {
        return "";
    }
    switch ((enum hinge_side)leaf->door->row->hinge_side.choice) {
    case HINGE_SIDE_TOP:
        return "; hinges at the top";
    case HINGE_SIDE_BOTTOM:
        return "; hinges at the bottom";
    case HINGE_SIDE_LEFT:
        return leaf->door->leaves > 1 ? "; hinges left and right" : "; hinges left";
    case HINGE_SIDE_RIGHT:
        return leaf->door->leaves > 1 ? "; hinges left and right" : "; hinges right";
    case HINGE_SIDE_PAIR:
    case HINGE_SIDE_OPEN:
        break;
    }
    return leaf->door->leaves > 1 ? "; hinges left and right" : "; hinge side still to be agreed";
}

/* The words of a row beside its kind: its use, where its hinges are, what is noted of it, what an
 * extra charge is for. */
static const char *door_words(struct offer *o, const struct leaf_figures *leaf) {
    const struct row *const row = leaf->door->row;
    const char *const note = offer_or_nothing(row->note.s);
    const char *const extra = offer_or_nothing(row->extra_words.s);
    return offer_or_nothing(pool_format(
        &o->pool, "%s%s%s%s%s%s", show_use((enum use)row->use.choice), hinge_words(leaf),
        note[0] == '\0' ? "" : "; ", note, extra[0] == '\0' ? "" : "; ", extra));
}

static bool put_doors(struct offer *o) {
    const struct quantities *const q = &o->e->quantities;
    const struct sale_figures *const sale = &o->e->sale;
    o->doors = pool_take(&o->pool, q->count, sizeof *o->doors);
    o->kinds = pool_take(&o->pool, q->count, sizeof *o->kinds);
    o->rooms = pool_take(&o->pool, sale->room_count, sizeof *o->rooms);
    size_t *const room_of = pool_take(&o->pool, q->count, sizeof *room_of);
    if (pool_failed(&o->pool)) {
        return false;
    }
    for (size_t r = 0; r < q->count; r++) {
        room_of[r] = sale_room_of(sale, q->leaves[r].door->row);
    }
    for (size_t i = 0; i < sale->room_count; i++) {
        struct offer_room *const room = &o->rooms[o->room_count++];
        *room = (struct offer_room){
            .name = sale->rooms[i].room, .first = o->door_count, .amount = sale->rooms[i].amount};
        for (size_t r = 0; r < q->count; r++) {
            if (room_of[r] != i) {
                continue;
            }
            struct offer_door *const door = &o->doors[o->door_count++];
            door->row = r;
            door->leaf = &q->leaves[r];
            door->price = &o->e->costs.doors[r];
            door->words = door_words(o, &q->leaves[r]);
            if (!find_kind(o, door->leaf, &door->kind)) {
                return false;
            }
        }
        room->count = o->door_count - room->first;
    }
    return true;
}

/* --- the head --- */

static void add_fact(struct offer *o, const char *label, const char *text) {
    if (text != NULL && text[0] != '\0') {
        o->facts[o->fact_count++] = (struct offer_pair){.label = label, .text = text};
    }
}

/* The last day on which the prices hold; "" where the job does not say. */
static const char *valid_until(struct offer *o) {
    const struct job *const job = o->e->job;
    char date[16];
    if (!job->valid.set) {
        return "";
    }
    (void)date_after(job->year, job->month, job->day, (int32_t)job->valid.amount, date,
                     sizeof date);
    return offer_date(&o->pool, (int32_t)strtol(date, NULL, 10),
                      (int32_t)strtol(date + 5, NULL, 10), (int32_t)strtol(date + 8, NULL, 10),
                      o->e->measures.metric);
}

static void head(struct offer *o) {
    const struct job *const job = o->e->job;
    const struct shop *const shop = &o->e->rates->shop;
    o->estimate = job->paper.choice == PAPER_ESTIMATE;
    o->paper = show_paper(job);
    o->currency = offer_or_nothing(shop->currency.s);
    o->title = offer_or_nothing(job->title.s);
    o->shop = offer_or_nothing(shop->name.s);
    o->shop_address = offer_or_nothing(shop->address.s);
    o->shop_contact = offer_or_nothing(shop->contact.s);
    o->client = offer_or_nothing(job->client.s);
    o->client_address = offer_or_nothing(job->address.s);
    add_fact(o, "Number", job->number.s);
    if (job->revision.set) {
        add_fact(o, "Revision", pool_format(&o->pool, "%d", (int)job->revision.amount));
    }
    if (o->e->option >= 0) {
        add_fact(o, "Made as", estimate_name(o->e));
    }
    add_fact(o, "Date",
             offer_date(&o->pool, job->year, job->month, job->day, o->e->measures.metric));
    add_fact(o, o->estimate ? "Prices until" : "Valid until", valid_until(o));
    add_fact(o, "Ready", o->estimate ? NULL : job->ready.s);
    o->reference = offer_or_nothing(
        job->revision.set
            ? pool_format(&o->pool, "%s %s, revision %d", o->paper, offer_or_nothing(job->number.s),
                          (int)job->revision.amount)
            : pool_format(&o->pool, "%s %s", o->paper, offer_or_nothing(job->number.s)));
}

/* So many texts that no list is cut short: each row may be of something of its own. */
static bool make_room(struct offer *o) {
    enum { LISTS = 6, OTHERS = 24 };
    struct offer_texts *const lists[LISTS] = {&o->statements, &o->made,  &o->included,
                                              &o->excluded,   &o->notes, &o->terms};
    const size_t room = OTHERS + OFFER_MADE_COUNT * o->e->quantities.count + o->e->hardware.count +
                        o->e->sale.charge_count + o->e->rates->shop.term_count;
    for (size_t i = 0; i < LISTS; i++) {
        lists[i]->text = pool_take(&o->pool, room, sizeof *lists[i]->text);
        lists[i]->room = room;
    }
    return !pool_failed(&o->pool);
}

bool offer_make(struct offer *o, const struct estimate *estimate, const struct estimate *options,
                size_t option_count) {
    *o = (struct offer){.e = estimate};
    pool_init(&o->pool);
    if (!make_room(o)) {
        return false;
    }
    head(o);
    if (!put_doors(o) || !offer_price(o) || !offer_options(o, options, option_count)) {
        return false;
    }
    offer_say(o);
    return !pool_failed(&o->pool);
}

void offer_clear(struct offer *o) {
    pool_clear(&o->pool);
    *o = (struct offer){0};
}
