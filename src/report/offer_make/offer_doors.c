/* SPDX-License-Identifier: MIT */
/* The doors of an offer by room, and the kinds that they are of. */
#include "base/text.h"
#include "report/doors/door_elevation.h"
#include "report/offer_make/offer_maker.h"
#include "report/words/door_words.h"
#include "report/words/show.h"

#include <string.h>

/* So few have lines in any list. */
#define MOST_FEW_ROOMS 3

const struct leaf_figures *offer_leaf(const struct offer_maker *m, size_t door) {
    return &m->e->quantities.leaves[m->rows[door]];
}

/* A door bought in may be told to be arched, too, where its frame is told. */
static bool is_arched(const struct door *door) {
    return door->arches > 0 ||
           (door->bought_in && door->style->stile.set && door->row->arch.amount > 0);
}

/* `pair of doors, frame with a flat panel, 2 panels high`. */
static const char *kind_words(struct offer_maker *m, const struct door *door) {
    const bool glass = door->form == FORM_GLASS;
    const struct bars bars = style_bars(door->style, door->row);
    const char *const lights =
        bars.upright + bars.level == 0
            ? ""
            : pool_words(m->pool, ", %d x %d lights", (int)bars.upright + 1, (int)bars.level + 1);
    const bool outline = door->bought_in && !door->style->stile.set;
    return pool_words(
        m->pool, "%s, %s%s%s%s%s%s", show_opening(m->pool, door), offer_style(door),
        is_arched(door) ? ", arched top" : "", glass ? ", " : "",
        glass ? offer_material(m->e->rates, MATERIAL_GLASS, door->construction->glass.index) : "",
        lights, outline ? ", bought in, no drawing" : "");
}

/* A to Z, AA to ZZ, AAA ... : as the columns of a spreadsheet are called. */
static const char *kind_letter(struct offer_maker *m, size_t number) {
    char letters[16] = "";
    size_t first = sizeof letters - 1;
    for (size_t left = number + 1; left > 0; left = (left - 1) / 26) {
        letters[--first] = (char)('A' + (left - 1) % 26);
    }
    return pool_words(m->pool, "%s", letters + first);
}

/* The kind of a door, a new one where it is the first. */
static size_t find_kind(struct offer_maker *m, const struct leaf_figures *leaf) {
    struct offer *const o = m->offer;
    const struct door *const door = door_drawn(leaf->door);
    size_t kind = 0;
    while (kind < o->kind_count && !door_kind_same(m->kinds[kind].door, door)) {
        kind++;
    }
    if (kind == o->kind_count) {
        m->kinds[kind] = (struct kind_doors){.door = door, .alike = true};
        o->kinds[o->kind_count++] = (struct offer_kind){
            .letter = kind_letter(m, kind),
            .words = kind_words(m, door),
        };
    }
    const char *const first = show_hung(m->kinds[kind].door);
    const char *const this = show_hung(door);
    m->kinds[kind].alike =
        m->kinds[kind].alike && !fig_none(leaf->hinges) &&
        (first == NULL || this == NULL ? first == this : strcmp(first, this) == 0);
    return kind;
}

/* How its doors open is drawn where all of a kind hang alike. false: out of memory. */
static bool draw_kinds(struct offer_maker *m) {
    for (size_t k = 0; k < m->offer->kind_count; k++) {
        const struct kind_doors *const of = &m->kinds[k];
        struct door_elevation elevation;
        if (!door_elevation_make(&elevation, m->pool, of->door,
                                 (struct hung_on){.count = of->alike ? 1 : 0}, m->e->job->unit)) {
            return false;
        }
        m->offer->kinds[k].drawing = elevation.drawing;
    }
    return true;
}

bool offer_lacks_side(const struct leaf_figures *leaf) {
    return !fig_none(leaf->hinges) && leaf->door->role != LEAF_FOLDING &&
           show_hung(leaf->door) == NULL;
}

/* Where a door is hung, as seen from the front; "": it has no hinges, or nobody said. */
static const char *hinge_words(struct offer_maker *m, const struct leaf_figures *leaf) {
    const struct door *const door = leaf->door;
    const char *const hung = show_hung(door);
    if (fig_none(leaf->hinges) || offer_lacks_side(leaf)) {
        return "";
    }
    if (door->role == LEAF_FOLDING) {
        return "; hinged to the hung leaf";
    }
    if (row_hangs_level(door->row)) {
        return pool_words(m->pool, "; hinges at the %s", hung);
    }
    return door->leaves > 1 ? "; hinges left and right" : pool_words(m->pool, "; hinges %s", hung);
}

/* What a door's lights are made by: the glass is whole. "": it has no bars. */
static const char *bar_words(const struct door *door) {
    const struct bars bars = style_bars(door->style, door->row);
    if (bars.upright + bars.level == 0) {
        return "";
    }
    return door->style->bars_on.choice == BARS_ON_BOTH ? "; bars on both faces of the glass"
                                                       : "; bars on the front of the glass";
}

/* The words of a row beside its kind: its use, where its hinges are, what is noted of it, what an
 * extra charge is for. */
static const char *door_words(struct offer_maker *m, const struct leaf_figures *leaf) {
    const struct row *const row = leaf->door->row;
    const char *const note = show_note(leaf->door);
    const char *const extra = text_or_empty(row->extra_words.s);
    return pool_words(m->pool, "%s%s%s%s%s%s%s", show_door(leaf->door), hinge_words(m, leaf),
                      bar_words(leaf->door), note[0] == '\0' ? "" : "; ", note,
                      extra[0] == '\0' ? "" : "; ", extra);
}

/* A size as a tape has it; millimeters without zeros behind their point. */
static struct offer_amount size_amount(struct offer_maker *m, fig size, length given) {
    struct offer_amount amount = offer_amount(m, size);
    char text[32];
    while (m->e->job->unit == LENGTH_MM && amount.decimals > 0 && amount.value % 10 == 0) {
        amount.value /= 10;
        amount.decimals--;
    }
    amount.text = pool_words(m->pool, "%s", length_show(given, m->e->job->unit, text, sizeof text));
    return amount;
}

/* Prices go only where the client is to see them. */
static void put_door(struct offer_maker *m, size_t row) {
    const struct leaf_figures *const leaf = &m->e->quantities.leaves[row];
    const struct door_price *const price = &m->e->costs.doors[row];
    const struct door *const door = leaf->door;
    struct offer *const o = m->offer;
    struct offer_door *const made = &o->doors[o->door_count];
    m->rows[o->door_count++] = row;
    const char *const words = door_words(m, leaf);
    const char *const room = o->rooms_beside ? text_or_empty(door->row->room.s) : "";
    *made = (struct offer_door){
        .id = text_or_empty(door->row->id.s),
        .words = words,
        .listed = room[0] == '\0' ? words : pool_words(m->pool, "%s: %s", room, words),
        .width = size_amount(m, leaf->width, door->width),
        .height = size_amount(m, leaf->height, door->height),
        .count = offer_amount(m, leaf->openings),
        .leaves = offer_amount(m, leaf->leaves),
    };
    if (o->detail == OFFER_EACH) {
        made->price = offer_amount(m, price->unit);
        made->amount = offer_amount(m, price->amount);
    }
    made->kind = find_kind(m, leaf);
}

static bool make_room(struct offer_maker *m) {
    const size_t count = m->e->quantities.count;
    struct offer *const o = m->offer;
    m->rows = pool_take(m->pool, count, sizeof *m->rows);
    m->kinds = pool_take(m->pool, count, sizeof *m->kinds);
    o->doors = pool_take(m->pool, count, sizeof *o->doors);
    o->kinds = pool_take(m->pool, count, sizeof *o->kinds);
    o->rooms = pool_take(m->pool, m->e->sale.room_count, sizeof *o->rooms);
    return !pool_failed(m->pool);
}

/* A line above nearly every door is none that helps: the list named places, not rooms. Sums that
 * are asked for by room have their lines. */
static bool has_rooms_beside(const struct offer_maker *m) {
    const size_t rooms = m->e->sale.room_count;
    return m->offer->detail != OFFER_ROOMS && rooms > MOST_FEW_ROOMS &&
           2 * rooms > m->e->quantities.count;
}

/* Rooms of one name each, or one without. */
static void put_rooms(struct offer_maker *m) {
    const struct sale_figures *const sale = &m->e->sale;
    struct offer *const o = m->offer;
    if (o->rooms_beside) {
        o->rooms[o->room_count++] = (struct offer_room){
            .name = "", .count = m->e->quantities.count, .amount = {.text = ""}};
    }
    for (size_t i = 0; i < sale->room_count && !o->rooms_beside; i++) {
        const struct room_sum *const sum = &sale->rooms[i];
        struct offer_room *const room = &o->rooms[o->room_count++];
        *room = (struct offer_room){.name = sum->room, .first = sum->first, .count = sum->count};
        if (offer_has_sums(o)) {
            room->amount = offer_amount(m, sum->amount);
        }
    }
}

bool offer_doors(struct offer_maker *m) {
    if (!make_room(m)) {
        return false;
    }
    m->offer->rooms_beside = has_rooms_beside(m);
    put_rooms(m);
    for (size_t i = 0; i < m->e->quantities.count; i++) {
        put_door(m, m->e->sale.by_room[i]);
    }
    return draw_kinds(m);
}
