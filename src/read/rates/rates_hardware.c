/* SPDX-License-Identifier: MIT */
/* Hinges, pulls and small things that are used up. */
#include "base/text.h"
#include "read/key/quantity.h"
#include "read/key/rows.h"
#include "read/key/unit_suffix.h"
#include "read/rates/rates_keys.h"

#include <string.h>

static const struct unit_form hinge_count[] = {{"", UNIT_COUNT, 0, 1, MOST_HINGES}, {0}};
static const struct unit_form weights[] = {
    {"lb", UNIT_LB, 0, 0, 1000},
    {"kg", UNIT_KG, 0, 0, 500},
    {0},
};

static const struct key hinge_keys[] = {
    {"by height",
     AS_OWN(read_steps, .most = MOST_HINGE_RULES, .forms = hinge_count, .range = INCHES(1, 240)),
     FIELD(hinge_rules, by_height), "40 in: 2, 60 in: 3, 80 in: 4",
     .help = "up to which height how many hinges"},
    {"by weight",
     AS_OWN(read_steps, .most = MOST_HINGE_RULES, .forms = hinge_count, .limit_forms = weights),
     FIELD(hinge_rules, by_weight), "15 lb: 2, 30 lb: 3, 45 lb: 4",
     .help = "up to which weight how many hinges"},
    {"from the ends", AS_LENGTH(RANGE(NM_PER_INCH / 2, 24 * NM_PER_INCH)),
     FIELD(hinge_rules, from_ends), "3 1/2 in", "90 mm",
     .help = "from each end of the hinged edge to the middle of the first hinge; others lie evenly "
             "between; absent: papers do not tell where hinges are bored"},
};

const struct section_kind section_hinges = {
    "hinges", hinge_keys, COUNT_OF(hinge_keys), SECTION(rates, hinges),
    .help = "How many hinges a door gets, the larger number of the two rules, and where they are."};

const struct unit_form forms_hardware_price[] = {
    {"each", UNIT_MONEY_EACH, PRICE_EACH, 0, NO_LIMIT},
    {"per pack", UNIT_MONEY_EACH, PRICE_PER_PACK, 0, NO_LIMIT},
    {0},
};
static const struct unit_form pack[] = {
    {"", UNIT_COUNT, 0, 1, 10000},
    {"piece", UNIT_COUNT, 0, 1, 10000},
    {0},
};

/* `by others` stands where a price would. */
static void read_hardware_price(struct reader *reader, const struct key *key,
                                const struct entry *entry, void *target) {
    struct hardware *hardware = target;
    char suffix[UNIT_SUFFIX_SIZE];

    if (unit_suffix_plain(entry->text, suffix) && strcmp(suffix, "by others") == 0) {
        hardware->by_others = true;
    } else {
        (void)quantity_value(reader, key, entry, key->kind.forms, &hardware->price,
                             &hardware->price_by.choice);
    }
}

/* `3/8 in to 5/8 in`, `1/2 in`, `inset`. */
static void read_fits(struct reader *reader, const struct key *key, const struct entry *entry,
                      void *target) {
    struct hardware *hardware = target;
    const char *const end = entry->text + strlen(entry->text);
    const char *const to = strstr(entry->text, " to ");
    const char *const low_end = to == NULL ? end : to;
    struct range range = {.set = true};
    if (text_same(entry->text, "inset")) {
        hardware->inset = true;
        return;
    }
    struct entry low = entry_part(reader, entry, entry->text, low_end);
    struct entry high = to == NULL ? low : entry_part(reader, entry, to + strlen(" to "), end);
    low.fixed = true;
    high.fixed = true;
    if (!length_value(reader, key, &low, key->kind.range, &range.low) ||
        !length_value(reader, key, &high, key->kind.range, &range.high)) {
        return;
    }
    if (value_above(&range.low, &range.high)) {
        problem_add(reader->problems, SEVERITY_ERROR, "not-ascending", entry->place,
                    "%s: '%s' does not go from small to large; expected %s", key->name,
                    entry_quote(reader, entry), key_expected(reader, key));
        return;
    }
    hardware->overlay = range;
}

static void check_hardware(struct reader *reader, const struct ini_section *section, void *target) {
    const struct hardware *hardware = target;

    if (hardware->price.set && hardware->price_by.choice == PRICE_PER_PACK) {
        section_lacks(reader, section, "pack", "for a price per pack");
    }
    if (hardware->cup.set && !hardware->cup_center.set) {
        section_lacks(reader, section, "cup center", "to tell where a 'cup' is bored");
    }
    if (hardware->cup_center.set && !hardware->cup.set) {
        section_lacks(reader, section, "cup", "to tell what is bored at the 'cup center'");
    }
}

static const struct key hardware_keys[] = {
    {"words", AS_TEXT, FIELD(hardware, client_name), "concealed hinge",
     .help = "how the client reads it; absent: the name"},
    {"price", AS_OWN(read_hardware_price, .forms = forms_hardware_price), FIELD(hardware, price),
     "3.60 each", "by others", .needed = true,
     .help = "of a piece; `42.00 per pack`: of `pack` pieces; by others: named, not sold"},
    {"pack", AS_QUANTITY(pack), FIELD(hardware, pack), "10",
     .help = "pieces in a pack; only whole packs are bought"},
    {"spares", AS_PERCENT(0, 100), FIELD(hardware, spares), "5 %",
     .help = "bought beyond what is needed"},
    {"overlay", AS_OWN(read_fits, .range = INCHES(0, 3)), FIELD(hardware, overlay),
     "3/8 in to 5/8 in", "inset", .help = "of a hinge: the overlays that it fits, or inset doors"},
    {"cup", AS_LENGTH(RANGE(NM_PER_MM, 3 * NM_PER_INCH)), FIELD(hardware, cup), "35 mm",
     .help = "of a hinge that is let into the door: the diameter of its bore"},
    {"cup center", AS_LENGTH(RANGE(NM_PER_MM, 3 * NM_PER_INCH)), FIELD(hardware, cup_center),
     "22.5 mm", .help = "from the hinged edge of the door to the middle of that bore"},
};

const struct section_kind section_hardware = {"hardware",
                                              hardware_keys,
                                              COUNT_OF(hardware_keys),
                                              SECTIONS(rates, hardware, hardware_count, hardware),
                                              .check = check_hardware,
                                              .help = "A hinge, a pull or another bought piece."};

static const struct unit_form consumable_price[] = {
    {"per door", UNIT_MONEY_PER_DOOR, 0, 0, NO_LIMIT},
    {"per hinge", UNIT_MONEY_PER_HINGE, 0, 0, NO_LIMIT},
    {"per sqft", UNIT_MONEY_PER_SQFT, 0, 0, NO_LIMIT},
    {"per sqft sprayed", UNIT_MONEY_PER_SQFT, 0, 0, NO_LIMIT},
    {"per m2", UNIT_MONEY_PER_M2, 0, 0, NO_LIMIT},
    {"per m2 sprayed", UNIT_MONEY_PER_M2, 0, 0, NO_LIMIT},
    {"per hour", UNIT_MONEY_PER_HOUR, 0, 0, NO_LIMIT},
    {0},
};

static const struct key consumable_keys[] = {
    {"price", AS_QUANTITY(consumable_price), FIELD(consumable, price), "0.85 per door",
     "0.20 per sqft", .needed = true,
     .help = "by the door, the hinge, the area of sprayed surface, or the hour of labor"},
};

const struct section_kind section_consumable = {
    "consumable", consumable_keys, COUNT_OF(consumable_keys),
    SECTIONS(rates, consumables, consumable_count, consumable),
    .help = "Small things used up: glue, abrasives, masking, packing."};
