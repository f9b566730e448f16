/* SPDX-License-Identifier: MIT */
#include "bridge/group.h"

#include "base/array.h"
#include "base/text.h"

#include <string.h>

#define MAKE_KEYS                                                                                  \
    "style, frame, panel, solid panel, slab, glass, finish, hinge, pull, fold hinge, hardware, "   \
    "color, grain, measure, overlay, overlay left, overlay right, overlay top, overlay bottom, "   \
    "reveal, gap, corner"

/* By section, as docs/formats.md has them. Keys that only hold together, as `reducer` of a coating
 * and of what it is a part, are in one group where that can be. */
static const struct bridge_keys rows[] = {
    {"shop", BRIDGE_MATERIALS, "woods, stock"},
    {"shop", BRIDGE_YIELDS,
     ("remakes, spare rails, price lumber by, price sheets by, charge finish, charge sheets, "
      "charge banding, "
      "charge hardware")},
    {"shop", BRIDGE_PRICES, "tax on purchases"},
    {"shop", BRIDGE_LABOR, "labor rate, allowance, hours per day, operations"},
    {"shop", BRIDGE_PROFIT,
     ("overhead, contingency, profit, minimum job, minimum door, round price to")},
    {"shop", BRIDGE_TERMS, "payment, warranty, terms file"},
    {"shop", BRIDGE_REST,
     ("name, address, contact, license, logo, paper size, currency, unit, invented, own")},
    {"limits", BRIDGE_REST, "widest leaf, highest panel, dry film, price age"},
    {"climate", BRIDGE_REST, "driest, wettest, moisture"},
    {"chance", BRIDGE_REST, "ranges, confidence, together"},
    {"markup", BRIDGE_PROFIT,
     ("lumber, sheets, glass, finish, hardware, consumables, bought in, labor")},
    {"lumber", BRIDGE_MATERIALS, "species, thickness"},
    {"lumber", BRIDGE_YIELDS, "waste, board widths, board lengths, end trim, defects"},
    {"lumber", BRIDGE_PRICES, "price, price from, minimum"},
    {"lumber", BRIDGE_LABOR, "work"},
    {"lumber", BRIDGE_REST, "words"},
    {"sheet", BRIDGE_MATERIALS, "thickness, size, grain, density, banding"},
    {"sheet", BRIDGE_YIELDS, "edge trim, waste"},
    {"sheet", BRIDGE_PRICES, "price, half sheet"},
    {"sheet", BRIDGE_REST, "words"},
    {"banding", BRIDGE_YIELDS, "waste"},
    {"banding", BRIDGE_PRICES, "price, roll"},
    {"glass", BRIDGE_MATERIALS, "thickness, density, safety, lead"},
    {"glass", BRIDGE_PRICES, "price, minimum, round up, stops"},
    {"glass", BRIDGE_REST, "words"},
    {"saw", BRIDGE_MATERIALS, "round sizes to"},
    {"saw", BRIDGE_YIELDS, "kerf, length allowance, edge allowance, straighten, first cut"},
    {"door", BRIDGE_MATERIALS,
     ("kind, joint, thickness, stile, top rail, bottom rail, mid rail, mid stile, tongue, groove, "
      "panel clearance, clearance across, glass clearance, panel grain, bar width, bar thickness, "
      "bars on, drawer rail, slab below, slab style, profile extra, panel thickness, mean "
      "thickness, stave, raised, slats")},
    {"door", BRIDGE_PRICES, "bought in"},
    {"door", BRIDGE_LABOR, "operations"},
    {"door", BRIDGE_REST, "words, bought as"},
    {"operation", BRIDGE_LABOR,
     ("machine, per, minutes, feed, handling, passes, together, by wood, setup, hands, capacity, "
      "off the bench, labor rate")},
    {"operation", BRIDGE_REST, "words, does"},
    {"machine", BRIDGE_YIELDS, "shortest"},
    {"machine", BRIDGE_LABOR, "rate"},
    {"machine", BRIDGE_REST, "kind"},
    {"coating", BRIDGE_MATERIALS, "reducer product, catalyst product, tinted, put on"},
    {"coating", BRIDGE_YIELDS,
     ("spread by, wet film, coverage, coverage of, solids, reducer, catalyst, pot life, reserve, "
      "touch-up")},
    {"coating", BRIDGE_PRICES, "sizes"},
    {"coating", BRIDGE_REST, "dry, hazards"},
    {"additive", BRIDGE_PRICES, "sizes"},
    {"additive", BRIDGE_REST, "hazards"},
    {"spray", BRIDGE_MATERIALS, "cleaning product, by hand"},
    {"spray", BRIDGE_YIELDS, "transfer efficiency, other loss, fixed loss, mix size, cleaning"},
    {"spray", BRIDGE_REST, "pressure"},
    {"finish", BRIDGE_MATERIALS, "spray, coats, faces, colors"},
    {"finish", BRIDGE_PRICES, "put out"},
    {"finish", BRIDGE_LABOR, "operations"},
    {"finish", BRIDGE_REST, "words, put out as"},
    {"hardware", BRIDGE_MATERIALS, "overlay"},
    {"hardware", BRIDGE_YIELDS, "spares"},
    {"hardware", BRIDGE_PRICES, "price, pack"},
    {"hardware", BRIDGE_REST, "words, cup, cup center"},
    {"hinges", BRIDGE_MATERIALS, "by height, by weight"},
    {"hinges", BRIDGE_REST, "from the ends"},
    {"consumable", BRIDGE_PRICES, "price"},
    {"labels", BRIDGE_REST,
     ("paper, columns, rows, width, height, left margin, top margin, column gap, row gap, "
      "inner margin")},
    {"days", BRIDGE_REST,
     ("working days, holidays, people, clamp sets, clamp time, racks, rack places, both faces at "
      "once, finisher, not planned, first, last")},
    {"plausible", BRIDGE_REST,
     ("labor rate, machine rate, overhead, hours per day, allowance, contingency, remakes, profit, "
      "lumber price, lumber waste, sheet price, sheet waste, glass price, hardware price, banding "
      "price, stops price, bought in, put out, minutes, minutes by size, minutes per job, "
      "handling, setup, feed, defects, coverage, solids, mixed in, loss, reserve, transfer "
      "efficiency, tax, discount, card fee, deposit, year")},
    {"job", BRIDGE_LABOR, "also"},
    {"job", BRIDGE_PRICES, "date"}, /* to which prices that rise have risen */
    {"job", BRIDGE_TERMS, "valid, ready, terms"},
    {"job", BRIDGE_REST,
     ("title, number, client, address, deliver to, measured by, note, paper, revision, "
      "replaces, agreed, detail, unit, rates, doors, own columns, accept")},
    {"make", BRIDGE_MATERIALS, MAKE_KEYS},
    {"sale", BRIDGE_TERMS, "discount, discounts, delivery, charges, card fee, deposit, stages"},
    {"sale", BRIDGE_TAX, "tax name, tax, tax on, tax delivery, exempt"},
    {"option", BRIDGE_MATERIALS, MAKE_KEYS},
    {"option", BRIDGE_TERMS, "price"},
};

static const char *const names[BRIDGE_GROUP_COUNT] = {
    [BRIDGE_ROWS_OFF] = "Rows taken off",
    [BRIDGE_NAMED] = "New in rates and job",
    [BRIDGE_ROWS_CHANGED] = "Rows changed",
    [BRIDGE_ROWS_ADDED] = "Rows added",
    [BRIDGE_MATERIALS] = "Materials and make",
    [BRIDGE_YIELDS] = "Waste and yields",
    [BRIDGE_PRICES] = "Prices",
    [BRIDGE_LABOR] = "Minutes and wage",
    [BRIDGE_PROFIT] = "Overhead and profit",
    [BRIDGE_TERMS] = "Terms of sale",
    [BRIDGE_TAX] = "Tax",
    [BRIDGE_REST] = "Everything else",
};

const char *bridge_group_name(enum bridge_group group) {
    return names[group];
}

const struct bridge_keys *bridge_keys(size_t *count) {
    *count = COUNT_OF(rows);
    return rows;
}

/* Whether a list with ", " between its items has that one. */
static bool holds(const char *list, const char *item) {
    for (const char *at = list; *at != '\0'; at += strspn(at, ", ")) {
        char name[48]; /* no key is as long */
        const size_t size = strcspn(at, ",");
        const size_t kept = size < sizeof name ? size : sizeof name - 1;
        memcpy(name, at, kept);
        name[kept] = '\0';
        if (text_same(name, item)) {
            return true;
        }
        at += size;
    }
    return false;
}

enum bridge_group bridge_group_of(const char *kind, const char *key) {
    for (size_t i = 0; i < COUNT_OF(rows); i++) {
        if (text_same(rows[i].kind, kind) && holds(rows[i].keys, key)) {
            return rows[i].group;
        }
    }
    return BRIDGE_REST;
}

/* Of all that has a name only a consumable counts without being named by anything. */
enum bridge_group bridge_group_of_section(const char *kind, bool gone) {
    return text_same(kind, "consumable") ? BRIDGE_PRICES : (gone ? BRIDGE_REST : BRIDGE_NAMED);
}
