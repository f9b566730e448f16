/* SPDX-License-Identifier: MIT */
/* Coatings, what is mixed into them, how they are sprayed, and the coats of a finish. */
#include "read/key/grammar.h"
#include "read/key/measure.h"
#include "read/key/tail.h"
#include "read/rates/rates_keys.h"

#include <string.h>

static const struct key additive_keys[] = {
    {.name = "sizes",
     .read = read_sizes,
     .at = offsetof(struct additive, sizes),
     .forms = forms_money,
     .needed = true,
     .example = "1 qt at 18.00, 1 gal at 52.00",
     .help = "containers and their prices"},
};

const struct section_kind section_additive = {.name = "additive",
                                              .keys = additive_keys,
                                              .key_count = COUNT_OF(additive_keys),
                                              .named = true,
                                              .at = offsetof(struct rates, additives),
                                              .count_at = offsetof(struct rates, additive_count),
                                              .size = sizeof(struct additive),
                                              .help = "A reducer or catalyst that is bought."};

static const struct spelling spreads[] = {{"wet film", SPREAD_BY_FILM}, {NULL, 0}};
static const struct form coverages[] = {
    {"sqft per gal theoretical", UNIT_SQFT_PER_GAL, SPREAD_BY_THEORETICAL, 1, 5000},
    {"sqft per gal practical losses included", UNIT_SQFT_PER_GAL, SPREAD_BY_PRACTICAL, 1, 5000},
    {"sqft per gal practical", UNIT_SQFT_PER_GAL, SPREAD_BY_PRACTICAL, 1, 5000},
    {"m2 per l theoretical", UNIT_M2_PER_L, SPREAD_BY_THEORETICAL, 1, 100},
    {"m2 per l practical losses included", UNIT_M2_PER_L, SPREAD_BY_PRACTICAL, 1, 100},
    {"m2 per l practical", UNIT_M2_PER_L, SPREAD_BY_PRACTICAL, 1, 100},
    {NULL, UNIT_MONEY, 0, 0, 0},
};
static const struct form parts[] = {
    {"% of coating", UNIT_PERCENT, PART_OF_COATING, 0, 300},
    {"% of mix", UNIT_PERCENT, PART_OF_MIX, 0, 90},
    {NULL, UNIT_MONEY, 0, 0, 0},
};
static const struct form solids[] = {
    {"%", UNIT_PERCENT, 0, 1, 100},
    {"% by volume", UNIT_PERCENT, 0, 1, 100},
    {NULL, UNIT_MONEY, 0, 0, 0},
};

static const struct key coating_keys[] = {
    {.name = "spread by",
     .read = read_choice,
     .at = offsetof(struct coating, spread_by),
     .choices = spreads,
     .example = "wet film",
     .help = "the wet film says how far it goes; absent where coverage is given"},
    {.name = "wet film",
     .read = read_length,
     .at = offsetof(struct coating, wet_film),
     .range = RANGE(NM_PER_UM, 40 * NM_PER_MIL),
     .example = "4 mil",
     .other = "100 um",
     .help = "thickness of one wet coat"},
    {.name = "coverage",
     .read = read_measure,
     .at = offsetof(struct coating, coverage),
     .choice_at = offsetof(struct coating, spread_by),
     .forms = coverages,
     .example = "400 sqft per gal theoretical",
     .other = "250 sqft per gal practical, losses included",
     .help = "instead of spread by wet film: losses still to come, or included"},
    {.name = "solids",
     .read = read_measure,
     .at = offsetof(struct coating, solids),
     .forms = solids,
     .example = "38 %",
     .help = "by volume, for the dry film"},
    {.name = "reducer",
     .read = read_measure,
     .at = offsetof(struct coating, reducer),
     .choice_at = offsetof(struct coating, reducer_of),
     .forms = parts,
     .example = "5 % of coating",
     .other = "5 % of mix",
     .help = "mixed in to thin it"},
    {.name = "reducer product",
     .read = read_name,
     .at = offsetof(struct coating, reducer_product),
     .names = NAME_ADDITIVE,
     .example = "slow-reducer",
     .help = "the [additive NAME] to buy"},
    {.name = "catalyst",
     .read = read_measure,
     .at = offsetof(struct coating, catalyst),
     .choice_at = offsetof(struct coating, catalyst_of),
     .forms = parts,
     .example = "3 % of coating",
     .other = "3 % of mix",
     .help = "mixed in to harden it"},
    {.name = "catalyst product",
     .read = read_name,
     .at = offsetof(struct coating, catalyst_product),
     .names = NAME_ADDITIVE,
     .example = "hardener",
     .help = "the [additive NAME] to buy"},
    {.name = "pot life",
     .read = read_measure,
     .at = offsetof(struct coating, pot_life),
     .forms = forms_hours,
     .example = "6 hours",
     .help = "how long a mix can be sprayed"},
    {.name = "dry",
     .read = read_measure,
     .at = offsetof(struct coating, dry),
     .forms = forms_hours,
     .example = "2 hours",
     .help = "until the next coat"},
    {.name = "tinted",
     .read = read_flag,
     .at = offsetof(struct coating, tinted),
     .choices = choices_yes_no,
     .example = "yes",
     .other = "no",
     .help = "mixed to a color: each color is bought by itself; absent: no"},
    {.name = "sizes",
     .read = read_sizes,
     .at = offsetof(struct coating, sizes),
     .forms = forms_money,
     .needed = true,
     .example = "1 qt at 27.00, 1 gal at 84.00",
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
    }
}

const struct section_kind section_coating = {.name = "coating",
                                             .keys = coating_keys,
                                             .key_count = COUNT_OF(coating_keys),
                                             .named = true,
                                             .at = offsetof(struct rates, coatings),
                                             .count_at = offsetof(struct rates, coating_count),
                                             .size = sizeof(struct coating),
                                             .check = check_coating,
                                             .help = "A product that is sprayed."};

static const struct form transfers[] = {
    {"%", UNIT_PERCENT, 0, 1, 100},
    {NULL, UNIT_MONEY, 0, 0, 0},
};
static const struct form losses[] = {
    {"%", UNIT_PERCENT, 0, 0, 95},
    {NULL, UNIT_MONEY, 0, 0, 0},
};

static const struct key spray_keys[] = {
    {.name = "transfer efficiency",
     .read = read_measure,
     .at = offsetof(struct spray, transfer),
     .forms = transfers,
     .needed = true,
     .example = "65 %",
     .help = "part of what is sprayed that stays on the doors"},
    {.name = "other loss",
     .read = read_measure,
     .at = offsetof(struct spray, other_loss),
     .forms = losses,
     .example = "5 %",
     .help = "part lost otherwise"},
    {.name = "fixed loss",
     .read = read_per_mix,
     .at = offsetof(struct spray, fixed_loss),
     .example = "6 fl oz per mix",
     .other = "0.2 L per mix",
     .help = "left in pot, hose and cup"},
    {.name = "mix size",
     .read = read_volume,
     .at = offsetof(struct spray, mix_size),
     .example = "2 gal",
     .other = "10 L",
     .help = "the most that is mixed at once; absent: a coat is one mix"},
};

const struct section_kind section_spray = {.name = "spray",
                                           .keys = spray_keys,
                                           .key_count = COUNT_OF(spray_keys),
                                           .named = true,
                                           .at = offsetof(struct rates, sprays),
                                           .count_at = offsetof(struct rates, spray_count),
                                           .size = sizeof(struct spray),
                                           .help = "A way of spraying and its losses."};

static const struct spelling faces[] = {
    {"both", FACES_BOTH},
    {"front", FACES_FRONT},
    {"back", FACES_BACK},
    {"none", FACES_NONE},
    {NULL, 0},
};
static const struct form colors[] = {
    {"", UNIT_COUNT, 0, 1, 100},
    {NULL, UNIT_MONEY, 0, 0, 0},
};
static const struct form times[] = {
    {"", UNIT_COUNT, 0, 1, 20},
    {NULL, UNIT_MONEY, 0, 0, 0},
};

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
            (void)measure_value(reader, key, &number, times, &coats[i].times, NULL);
        }
        coats[i].coating = name_resolve(reader, key, &name);
    }
    finish->coats = coats;
    finish->coat_count = count;
}

static const struct key finish_keys[] = {
    {.name = "words",
     .read = read_text,
     .at = offsetof(struct finish, client_name),
     .example = "painted, satin",
     .help = "how the client reads it; absent: the name"},
    {.name = "spray",
     .read = read_index,
     .at = offsetof(struct finish, spray),
     .names = NAME_SPRAY,
     .example = "pressure-pot",
     .help = "a [spray NAME]; needed unless the finish is put out"},
    {.name = "coats",
     .read = read_coats,
     .at = offsetof(struct finish, coats),
     .names = NAME_COATING,
     .example = "surfacer x 2, topcoat x 2",
     .help = "the coatings in the order of spraying, and how often each; needed unless put out"},
    {.name = "faces",
     .read = read_choice,
     .at = offsetof(struct finish, faces),
     .choices = faces,
     .example = "both",
     .other = "front",
     .help = "which are sprayed: both, front, back or none; edges always; absent: both"},
    {.name = "put out",
     .read = read_measure,
     .at = offsetof(struct finish, put_out),
     .forms = forms_per_area,
     .example = "4.20 per sqft",
     .other = "38.00 per m2",
     .help = "sprayed by others at this price by sprayed area; needs no coats"},
    {.name = "colors",
     .read = read_measure,
     .at = offsetof(struct finish, colors),
     .forms = colors,
     .preset = 1,
     .example = "1",
     .help = "how many colors a job has where its rows name none; absent: 1"},
    {.name = "operations",
     .read = read_names,
     .at = offsetof(struct finish, operations),
     .names = NAME_OPERATION,
     .example = "mix, spray, sand between coats",
     .help = "what is done to finish"},
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

const struct section_kind section_finish = {.name = "finish",
                                            .keys = finish_keys,
                                            .key_count = COUNT_OF(finish_keys),
                                            .named = true,
                                            .at = offsetof(struct rates, finishes),
                                            .count_at = offsetof(struct rates, finish_count),
                                            .size = sizeof(struct finish),
                                            .check = check_finish,
                                            .help = "The coats of a finish."};
