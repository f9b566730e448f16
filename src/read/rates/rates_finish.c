/* SPDX-License-Identifier: MIT */
/* Coatings, what is mixed into them, how they are sprayed, and the coats of a finish. */
#include "read/key/quantity.h"
#include "read/key/rows.h"
#include "read/key/unit_suffix.h"
#include "read/rates/rates_keys.h"

#include <string.h>

static const struct spelling hazards[] = {
    {"flammable", HAZARD_FLAMMABLE},
    {"waterborne", HAZARD_WATERBORNE},
    {"isocyanate", HAZARD_ISOCYANATE},
    {"acid", HAZARD_ACID},
    {"formaldehyde", HAZARD_FORMALDEHYDE},
    {"drying oil", HAZARD_DRYING_OIL},
    {"none", HAZARD_NONE},
    {0},
};

#define HAZARD_HELP                                                                                \
    "by its data sheet: flammable, waterborne, isocyanate, acid (a catalyst), formaldehyde, "      \
    "drying oil, or none of these: for the cautions of a job that uses it; absent: the papers "    \
    "say that it is not told"

static const struct key additive_keys[] = {
    {"hazards", AS_CHOICES(hazards), FIELD(additive, hazards), "flammable, isocyanate", "none",
     .help = HAZARD_HELP},
    {"sizes", AS_OWN(read_sizes, .forms = forms_money, .most = MOST_CONTAINER_SIZES),
     FIELD(additive, sizes), "1 qt at 18.00, 1 gal at 52.00", .needed = true,
     .help = "containers and their prices"},
};

const struct section_kind section_additive = {"additive", additive_keys, COUNT_OF(additive_keys),
                                              SECTIONS(rates, additives, additive_count, additive),
                                              .help =
                                                  "A reducer, catalyst or cleaner that is bought."};

static const struct spelling spreads[] = {{"wet film", SPREAD_BY_FILM}, {0}};
static const struct unit_form hours[] = {
    {"hour", UNIT_HOUR, 0, 0, 1000}, {"", UNIT_HOUR, 0, 0, 1000}, {0}};
static const struct unit_form coverages[] = {
    {"sqft per gal theoretical", UNIT_SQFT_PER_GAL, SPREAD_BY_THEORETICAL, 1, 5000},
    {"sqft per gal practical losses included", UNIT_SQFT_PER_GAL, SPREAD_BY_PRACTICAL, 1, 5000},
    {"sqft per gal practical", UNIT_SQFT_PER_GAL, SPREAD_BY_PRACTICAL, 1, 5000},
    {"m2 per l theoretical", UNIT_M2_PER_L, SPREAD_BY_THEORETICAL, 1, 100},
    {"m2 per l practical losses included", UNIT_M2_PER_L, SPREAD_BY_PRACTICAL, 1, 100},
    {"m2 per l practical", UNIT_M2_PER_L, SPREAD_BY_PRACTICAL, 1, 100},
    {0},
};
static const struct spelling coverages_of[] = {
    {"product", COVERAGE_OF_PRODUCT}, {"mixed", COVERAGE_OF_MIXED}, {0}};
static const struct unit_form parts[] = {
    {"% of coating", UNIT_PERCENT, PART_OF_COATING, 0, 300},
    {"% of mix", UNIT_PERCENT, PART_OF_MIX, 0, 90},
    {0},
};
static const struct unit_form solids[] = {
    {"%", UNIT_PERCENT, 0, 1, 100},
    {"% by volume", UNIT_PERCENT, 0, 1, 100},
    {0},
};

static const struct key coating_keys[] = {
    {"spread by", AS_CHOICE(spreads), FIELD(coating, spread_by), "wet film",
     .help = "the wet film says how far it goes; absent where coverage is given"},
    {"wet film", AS_LENGTH(RANGE(NM_PER_UM, 40 * NM_PER_MIL)), FIELD(coating, wet_film), "4 mil",
     "100 um", .help = "thickness of one wet coat"},
    {"coverage", AS_QUANTITY(coverages), FIELDS(coating, coverage, spread_by),
     "400 sqft per gal theoretical", "250 sqft per gal practical, losses included",
     .help = "instead of spread by wet film: losses still to come, or included"},
    {"coverage of", AS_CHOICE(coverages_of), FIELD(coating, coverage_of), "product", "mixed",
     .help = "what a gallon or liter of coverage is: as sold, or mixed with its catalyst; absent: "
             "product"},
    {"solids", AS_QUANTITY(solids), FIELD(coating, solids), "38 %",
     .help = "by volume, for the dry film"},
    {"reducer", AS_QUANTITY(parts), FIELDS(coating, reducer, reducer_of), "5 % of coating",
     "5 % of mix", .help = "mixed in to thin it"},
    {"reducer product", AS_NAME(NAME_ADDITIVE), FIELD(coating, reducer_product), "slow-reducer",
     .help = "the [additive NAME] to buy"},
    {"catalyst", AS_QUANTITY(parts), FIELDS(coating, catalyst, catalyst_of), "3 % of coating",
     "3 % of mix", .help = "mixed in to harden it"},
    {"catalyst product", AS_NAME(NAME_ADDITIVE), FIELD(coating, catalyst_product), "hardener",
     .help = "the [additive NAME] to buy"},
    {"pot life", AS_QUANTITY(hours), FIELD(coating, pot_life), "6 hours",
     .help = "how long a mix can be sprayed"},
    {"dry", AS_QUANTITY(hours), FIELD(coating, dry), "2 hours", .help = "until the next coat"},
    {"tinted", AS_YES_NO, FIELD(coating, tinted), "yes", "no",
     .help = "mixed to a color: each color is bought by itself; absent: no"},
    {"put on", AS_NAME(NAME_SPRAY), FIELD(coating, put_on), "rag",
     .help = "the [spray NAME] of this coating, where it is not the finish's: wiped, brushed"},
    {"reserve", AS_PERCENT(0, 100), FIELD(coating, reserve), "5 %",
     .help = "of what is used, bought beyond it: for what goes wrong"},
    {"touch-up", AS_VOLUME_PER("color"), FIELD(coating, touch_up), "4 fl oz per color",
     "0.1 L per color", .help = "left with the client, of each color"},
    {"hazards", AS_CHOICES(hazards), FIELD(coating, hazards), "flammable, formaldehyde",
     "waterborne", .help = HAZARD_HELP},
    {"sizes", AS_OWN(read_sizes, .forms = forms_money, .most = MOST_CONTAINER_SIZES),
     FIELD(coating, sizes), "1 qt at 27.00, 1 gal at 84.00", .needed = true,
     .help = "containers and their prices"},
};

static void check_coating(struct reader *reader, const struct ini_section *section, void *target) {
    (void)target;
    if (section_has(section, "coverage") && section_has(section, "spread by")) {
        problem_add(reader->problems, SEVERITY_ERROR, "both-given", section->place,
                    "[coating %s] has both coverage and spread by; keep the one that holds",
                    problem_quote(reader->problems, section->name));
    }
    if (!section_has(section, "coverage")) {
        section_lacks(reader, section, "wet film", "where no coverage is given");
        if (section_has(section, "coverage of")) {
            section_lacks(reader, section, "coverage", "for 'coverage of' to say what it is of");
        }
    }
}

const struct section_kind section_coating = {"coating",
                                             coating_keys,
                                             COUNT_OF(coating_keys),
                                             SECTIONS(rates, coatings, coating_count, coating),
                                             .check = check_coating,
                                             .help = "A product that is sprayed."};

static const struct key spray_keys[] = {
    {"transfer efficiency", AS_OWN(read_ranged, .forms = FORM("%", UNIT_PERCENT, 1, 100)),
     FIELDS(spray, transfer, transfer_range), "65 %", "60 % (50 to 65)", .needed = true,
     .help = "part of what is sprayed or put on that stays on the doors"},
    {"other loss", AS_PERCENT(0, 95), FIELD(spray, other_loss), "5 %",
     .help = "part lost otherwise"},
    {"fixed loss", AS_VOLUME_PER("mix"), FIELD(spray, fixed_loss), "6 fl oz per mix",
     "0.2 L per mix", .help = "left in pot, hose and cup"},
    {"mix size", AS(read_volume), FIELD(spray, mix_size), "2 gal", "10 L",
     .help = "the most that is mixed at once; absent: a coat is one mix"},
    {"cleaning", AS_VOLUME_PER("mix"), FIELD(spray, cleaning), "1 pt per mix", "0.5 L per mix",
     .help = "what pot, gun or brush is washed with after each mix"},
    {"cleaning product", AS_NAME(NAME_ADDITIVE), FIELD(spray, cleaning_product), "slow-reducer",
     .help = "the [additive NAME] to buy for it"},
    {"by hand", AS_YES_NO, FIELD(spray, by_hand), "yes", "no",
     .help = "wiped or brushed, so that work by sprayed coats leaves its coats out; absent: no"},
    {"pressure", AS_YES_NO, FIELD(spray, pressure), "yes", "no",
     .help = "a pot or a pump holds the coating under pressure: for the cautions; absent: no"},
};

/* A pot that its own loss fills would take mixes without end. */
static void check_spray(struct reader *reader, const struct ini_section *section, void *target) {
    const struct spray *const spray = target;
    if (section_has(section, "cleaning")) {
        section_lacks(reader, section, "cleaning product", "to say what it is washed with");
    } else if (section_has(section, "cleaning product")) {
        section_lacks(reader, section, "cleaning", "to say how much of the cleaning product");
    }
    if (spray->mix_size.set && spray->fixed_loss.set &&
        !value_above(&spray->mix_size, &spray->fixed_loss)) {
        problem_add(reader->problems, SEVERITY_ERROR, "mix-of-loss", spray->mix_size.place,
                    "mix size is not above the fixed loss of each mix; expected a size that leaves "
                    "something to spray");
    }
}

const struct section_kind section_spray = {"spray",
                                           spray_keys,
                                           COUNT_OF(spray_keys),
                                           SECTIONS(rates, sprays, spray_count, spray),
                                           .check = check_spray,
                                           .help = "A way of putting a coat on, and its losses."};

static const struct spelling faces[] = {
    {"both", FACES_BOTH}, {"front", FACES_FRONT}, {"back", FACES_BACK}, {"none", FACES_NONE}, {0},
};
static const struct unit_form times[] = {{"", UNIT_COUNT, 0, 1, 20}, {0}};

/* The `x 2` of an item; NULL: a coat is sprayed once. */
static const char *find_times(const char *text) {
    for (const char *at = strstr(text, " x "); at != NULL; at = strstr(at + 1, " x ")) {
        if (strspn(at + 3, "-.0123456789 ") == strlen(at + 3)) {
            return at;
        }
    }
    return NULL;
}

/* `surfacer x 2, topcoat x 2` */
static void read_coats(struct reader *reader, const struct key *key, const struct entry *entry,
                       void *target) {
    struct finish *finish = target;
    struct entry *items;
    struct coat *coats;
    size_t count;

    if (!list_split(reader, key, entry, false, &items, &count)) {
        return;
    }
    coats = pool_take(reader->pool, count, sizeof(*coats));
    if (coats == NULL) {
        return;
    }
    for (size_t i = 0; i < count; i++) {
        const char *cross = find_times(items[i].text);
        struct entry name = items[i];

        coats[i].times =
            (struct value){.amount = 1, .place = items[i].place, .unit = UNIT_COUNT, .set = true};
        if (cross != NULL) {
            struct entry number =
                entry_part(reader, &items[i], cross + 3, items[i].text + strlen(items[i].text));

            name = entry_part(reader, &items[i], items[i].text, cross);
            (void)quantity_value(reader, key, &number, times, &coats[i].times, NULL);
        }
        coats[i].coating = name_resolve(reader, key, &name);
    }
    finish->coats = coats;
    finish->coat_count = count;
}

static const struct key finish_keys[] = {
    {"words", AS_TEXT, FIELD(finish, client_name), "painted, satin",
     .help = "how the client reads it; absent: the name"},
    {"spray", AS_INDEX(NAME_SPRAY), FIELD(finish, spray), "pressure-pot",
     .help = "a [spray NAME]; needed unless the finish is put out"},
    {"coats", AS_OWN(read_coats, .names = NAME_COATING, .most = MOST_COATS), FIELD(finish, coats),
     "surfacer x 2, topcoat x 2",
     .help = "the coatings in the order of spraying, and how often each; needed unless put out"},
    {"faces", AS_CHOICE(faces), FIELD(finish, faces), "both", "front",
     .help = "which are sprayed: both, front, back or none; edges always; absent: both"},
    {"put out", AS_QUANTITY(forms_per_area), FIELD(finish, put_out), "4.20 per sqft",
     "38.00 per m2", .help = "sprayed by others at this price by sprayed area; needs no coats"},
    {"put out as", AS_NAME(NAME_FINISH), FIELD(finish, put_out_as), "painted-out",
     .help = "the [finish NAME] put out that can be had in its place; `ways` weighs it"},
    {"colors", AS_COUNT(1, 100, 1), FIELD(finish, colors), "1",
     .help = "how many colors a job has where its rows name none; absent: 1"},
    {"operations", AS_NAMES(NAME_OPERATION), FIELD(finish, operations),
     "mix, spray, sand between coats", .help = "what is done to finish"},
};

static void check_finish(struct reader *reader, const struct ini_section *section, void *target) {
    struct finish *finish = target;

    if (section_has(section, "put out")) {
        finish->coat_count = 0; /* what the painter sprays is the painter's */
        return;
    }
    section_lacks(reader, section, "spray", "to spray the coats with");
    section_lacks(reader, section, "coats", "to make up the finish");
}

void finishes_check(struct reader *reader, const struct rates *rates) {
    for (size_t i = 0; i < rates->finish_count; i++) {
        const struct finish *const finish = &rates->finishes[i];
        const struct reference *const named = &finish->put_out_as;
        if (named->name.s == NULL || named->index < 0) {
            continue;
        }
        const struct finish *const out = &rates->finishes[named->index];
        if (out == finish || !out->put_out.set) {
            problem_add(reader->problems, SEVERITY_ERROR, "made-by-nobody", named->name.place,
                        "finish '%s' can be put out as '%s', which is %s; name a [finish] that has "
                        "'put out'",
                        problem_quote(reader->problems, finish->name.s),
                        problem_quote(reader->problems, named->name.s),
                        out == finish ? "itself" : "not put out");
        }
    }
}

const struct section_kind section_finish = {"finish",
                                            finish_keys,
                                            COUNT_OF(finish_keys),
                                            SECTIONS(rates, finishes, finish_count, finish),
                                            .check = check_finish,
                                            .help = "The coats of a finish."};
