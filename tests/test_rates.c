/* SPDX-License-Identifier: MIT */
/* How the keys of rates and job read their texts, row by row; then a whole file. */
#include "case.h"
#include "cmocka_all.h"
#include "read/rates/rates_file.h"

#include "read/job/job_keys.h"
#include "read/rates/rates_keys.h"
#include "read/rates/woods.h"

#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

/* One key read by itself, in the order in which it is thought. */
struct reading { // NOLINT(clang-analyzer-optin.performance.Padding)
    const char *section, *key, *text;
    enum length_unit unit;
    const char *id; /* of the problem; NULL: none */
    int64_t amount;
    uint8_t decimals;
    enum unit of;
    int choice; /* -1: not looked at */
};

#define IN LENGTH_INCH
#define MM LENGTH_MM

static const struct reading readings[] = {
    {"shop", "labor rate", "38.00 per hour", IN, NULL, 3800, 2, UNIT_MONEY_PER_HOUR, -1},
    {"shop", "labor rate", "38/hr", IN, NULL, 38, 0, UNIT_MONEY_PER_HOUR, -1},
    {"shop", "labor rate", "38.00", IN, "missing-unit", 0, 0, 0, -1},
    {"shop", "labor rate", "38.00 per day", IN, "wrong-unit", 0, 0, 0, -1},
    {"shop", "labor rate", "-1 per hour", IN, "out-of-range", 0, 0, 0, -1},
    {"shop", "labor rate", "1,038.00 per hour", IN, "comma-in-number", 0, 0, 0, -1},
    {"shop", "labor rate", "$38 per hour", IN, "currency-sign", 0, 0, 0, -1},
    {"shop", "labor rate", "38 USD per hour", IN, "currency-sign", 0, 0, 0, -1},
    {"shop", "labor rate", "1/2 per hour", IN, "not-a-number", 0, 0, 0, -1},
    {"shop", "labor rate", "38 per hour (40 to 42)", IN, "bad-range", 0, 0, 0, -1},
    {"shop", "labor rate", "38 per hour (cheap)", IN, "bad-range", 0, 0, 0, -1},
    {"shop", "allowance", "12 % added", IN, NULL, 12, 0, UNIT_PERCENT, ALLOWANCE_ADDED},
    {"shop", "allowance", "12% of shift", IN, NULL, 12, 0, UNIT_PERCENT, ALLOWANCE_OF_SHIFT},
    {"shop", "allowance", "12 %", IN, "wrong-unit", 0, 0, 0, -1},
    {"shop", "overhead", "18 % of cost", IN, NULL, 18, 0, UNIT_PERCENT, OVERHEAD_OF_COST},
    {"shop", "overhead", "14.00 per hour", IN, NULL, 1400, 2, UNIT_MONEY_PER_HOUR,
     OVERHEAD_PER_HOUR},
    {"shop", "profit", "25 % markup", IN, NULL, 25, 0, UNIT_PERCENT, PROFIT_MARKUP},
    {"shop", "profit", "20 % margin", IN, NULL, 20, 0, UNIT_PERCENT, PROFIT_MARGIN},
    {"shop", "profit", "100 % margin", IN, "out-of-range", 0, 0, 0, -1},
    {"shop", "profit", "25 %", IN, "wrong-unit", 0, 0, 0, -1},
    {"shop", "remakes", "2 % of doors", IN, NULL, 2, 0, UNIT_PERCENT, -1},
    {"shop", "contingency", "3.12345 %", IN, "too-many-decimals", 0, 0, 0, -1},
    {"shop", "minimum job", "450", IN, NULL, 450, 0, UNIT_MONEY, -1},
    {"shop", "minimum job", "450.005", IN, "too-many-decimals", 0, 0, 0, -1},
    {"shop", "minimum door", "1.5 sq ft", IN, NULL, 15, 1, UNIT_SQFT, -1},
    {"shop", "minimum door", "0.15 m2", MM, NULL, 15, 2, UNIT_M2, -1},
    {"shop", "minimum door", "0.15 m2", IN, "other-system", 0, 0, 0, -1},
    {"shop", "minimum door", "45.00", IN, NULL, 4500, 2, UNIT_MONEY, -1},
    {"shop", "hours per day", "7.5 hours", IN, NULL, 75, 1, UNIT_HOUR, -1},
    {"shop", "hours per day", "25", IN, "out-of-range", 0, 0, 0, -1},
    {"shop", "round price to", "0.01", IN, NULL, 1, 2, UNIT_MONEY, -1},
    {"lumber", "thickness", "4/4", IN, NULL, NM_PER_INCH, 0, UNIT_NM, -1},
    {"lumber", "thickness", "5/4", MM, NULL, 5 * NM_PER_INCH / 4, 0, UNIT_NM, -1},
    {"lumber", "thickness", "27 mm", MM, NULL, 27 * NM_PER_MM, 0, UNIT_NM, -1},
    {"lumber", "thickness", "1/4", IN, "out-of-range", 0, 0, 0, -1},
    {"lumber", "thickness", "0", IN, "size-absurd", 0, 0, 0, -1},
    {"lumber", "price", "4.10 per bf", IN, NULL, 410, 2, UNIT_MONEY_PER_BF, -1},
    {"lumber", "price", "4.10 per board foot", IN, NULL, 410, 2, UNIT_MONEY_PER_BF, -1},
    {"lumber", "price", "1800 per m3", MM, NULL, 1800, 0, UNIT_MONEY_PER_M3, -1},
    {"lumber", "price", "4.1234567 per bf", IN, "too-many-decimals", 0, 0, 0, -1},
    {"lumber", "waste", "50 % added", IN, NULL, 50, 0, UNIT_PERCENT, WASTE_ADDED},
    {"lumber", "waste", "33 % lost of what is bought", IN, NULL, 33, 0, UNIT_PERCENT, WASTE_LOST},
    {"lumber", "waste", "33 % lost", IN, NULL, 33, 0, UNIT_PERCENT, WASTE_LOST},
    {"lumber", "waste", "100 % lost", IN, "out-of-range", 0, 0, 0, -1},
    {"lumber", "waste", "50 %", IN, "wrong-unit", 0, 0, 0, -1},
    {"lumber", "minimum", "20 bf", IN, NULL, 20, 0, UNIT_BF, -1},
    {"sheet", "half sheet", "33.00", IN, NULL, 3300, 2, UNIT_MONEY_PER_SHEET, -1},
    {"sheet", "density", "0.60", IN, NULL, 60, 2, UNIT_G_PER_CM3, -1},
    {"sheet", "density", "38 lb/cu ft", IN, NULL, 38, 0, UNIT_LB_PER_CUFT, -1},
    {"sheet", "density", "600 kg/m3", IN, NULL, 600, 0, UNIT_KG_PER_M3, -1},
    {"sheet", "density", "600", IN, "out-of-range", 0, 0, 0, -1},
    {"glass", "price", "9.50 per sqft", IN, NULL, 950, 2, UNIT_MONEY_PER_SQFT, -1},
    {"saw", "kerf", "1/8", IN, NULL, NM_PER_INCH / 8, 0, UNIT_NM, -1},
    {"saw", "kerf", "3.2", MM, NULL, 3200000, 0, UNIT_NM, -1},
    {"saw", "kerf", "3.2", IN, "size-absurd", 0, 0, 0, -1},
    {"saw", "kerf", "1/8 gal", IN, "wrong-unit", 0, 0, 0, -1},
    {"saw", "kerf", "1/8 in (4 mm to 5 mm)", IN, "bad-range", 0, 0, 0, -1},
    {"operation", "feed", "12 ft per min", IN, NULL, 12, 0, UNIT_FT_PER_MIN, -1},
    {"operation", "feed", "4 m/min", MM, NULL, 4, 0, UNIT_M_PER_MIN, -1},
    {"operation", "feed", "4 m/min", IN, "other-system", 0, 0, 0, -1},
    {"operation", "handling", "0.20 min per part", IN, NULL, 20, 2, UNIT_MIN, DRIVER_PART},
    {"operation", "setup", "15 min per thickness", IN, NULL, 15, 0, UNIT_MIN, SETUP_PER_THICKNESS},
    {"operation", "setup", "15 min per species", IN, "wrong-unit", 0, 0, 0, -1},
    {"operation", "passes", "2", IN, NULL, 2, 0, UNIT_COUNT, -1},
    {"operation", "passes", "1.5", IN, "not-whole", 0, 0, 0, -1},
    {"operation", "passes", "0", IN, "out-of-range", 0, 0, 0, -1},
    {"coating", "wet film", "4 mil", IN, NULL, 101600, 0, UNIT_NM, -1},
    {"coating", "wet film", "4", IN, "size-absurd", 0, 0, 0, -1},
    {"coating", "coverage", "400 sqft per gal theoretical", IN, NULL, 400, 0, UNIT_SQFT_PER_GAL,
     SPREAD_BY_THEORETICAL},
    {"coating", "coverage", "250 sq ft/gal practical, losses included", IN, NULL, 250, 0,
     UNIT_SQFT_PER_GAL, SPREAD_BY_PRACTICAL},
    {"coating", "coverage", "9.8 m2/L theoretical", MM, NULL, 98, 1, UNIT_M2_PER_L,
     SPREAD_BY_THEORETICAL},
    {"coating", "coverage", "400 sqft per gal", IN, "wrong-unit", 0, 0, 0, -1},
    {"coating", "reducer", "5 % of coating", IN, NULL, 5, 0, UNIT_PERCENT, PART_OF_COATING},
    {"coating", "reducer", "5 % of mix", IN, NULL, 5, 0, UNIT_PERCENT, PART_OF_MIX},
    {"coating", "reducer", "5 %", IN, "wrong-unit", 0, 0, 0, -1},
    {"coating", "pot life", "6 hours", IN, NULL, 6, 0, UNIT_HOUR, -1},
    {"spray", "transfer efficiency", "65 %", IN, NULL, 65, 0, UNIT_PERCENT, -1},
    {"spray", "transfer efficiency", "0 %", IN, "out-of-range", 0, 0, 0, -1},
    {"spray", "fixed loss", "6 fl oz per mix", IN, NULL, 46875, 6, UNIT_GAL, -1},
    {"spray", "fixed loss", "6 fl oz", IN, "wrong-unit", 0, 0, 0, -1},
    {"coating", "touch-up", "4 fl oz per color", IN, NULL, 3125, 5, UNIT_GAL, -1},
    {"coating", "touch-up", "4 fl oz per mix", IN, "wrong-unit", 0, 0, 0, -1},
    {"coating", "reserve", "120 %", IN, "out-of-range", 0, 0, 0, -1},
    {"spray", "transfer efficiency", "60 % (50 to 65)", IN, NULL, 60, 0, UNIT_PERCENT, -1},
    {"spray", "transfer efficiency", "60 % (0 to 65)", IN, "out-of-range", 0, 0, 0, -1},
    {"spray", "transfer efficiency", "60 % (50 to 101)", IN, "out-of-range", 0, 0, 0, -1},
    {"spray", "transfer efficiency", "60 % (61 to 65)", IN, "bad-range", 0, 0, 0, -1},
    {"spray", "fixed loss", "200 ml per mix", MM, NULL, 2, 1, UNIT_L, -1},
    {"spray", "mix size", "2 gal", IN, NULL, 2, 0, UNIT_GAL, -1},
    {"spray", "mix size", "1 gal", MM, NULL, 3785412, 6, UNIT_L, -1},
    {"spray", "mix size", "1 L", IN, NULL, 264172, 6, UNIT_GAL, -1},
    {"spray", "mix size", "1 qt", IN, NULL, 25, 2, UNIT_GAL, -1},
    {"spray", "mix size", "1 lb", IN, "wrong-unit", 0, 0, 0, -1},
    {"spray", "mix size", "0 gal", IN, "out-of-range", 0, 0, 0, -1},
    {"hardware", "price", "3.60 each", IN, NULL, 360, 2, UNIT_MONEY_EACH, -1},
    {"hardware", "price", "3.60", IN, "missing-unit", 0, 0, 0, -1},
    {"hardware", "overlay", "3/8 in to 5/8 in", IN, NULL, 9525000, 0, UNIT_NM, -1},
    {"hardware", "overlay", "1/2", IN, NULL, 12700000, 0, UNIT_NM, -1},
    {"hardware", "overlay", "10 to 18 mm", MM, NULL, 10000000, 0, UNIT_NM, -1},
    {"hardware", "overlay", "5/8 to 3/8", IN, "not-ascending", 0, 0, 0, -1},
    {"hardware", "overlay", "3/8 to", IN, "wrong-unit", 0, 0, 0, -1},
    {"hardware", "overlay", "3/8 to 4", IN, "size-absurd", 0, 0, 0, -1},
    {"hardware", "overlay", "half", IN, "not-a-length", 0, 0, 0, -1},
    {"consumable", "price", "0.85 per door", IN, NULL, 85, 2, UNIT_MONEY_PER_DOOR, -1},
    {"consumable", "price", "1.20 per m2", MM, NULL, 120, 2, UNIT_MONEY_PER_M2, -1},
    {"consumable", "price", "1.20 per hour of labor", MM, "wrong-unit", 0, 0, 0, -1},
    {"sale", "tax", "6.25 %", IN, NULL, 625, 2, UNIT_PERCENT, -1},
    {"sale", "deposit", "50%", IN, NULL, 50, 0, UNIT_PERCENT, -1},
    {"sale", "discount", "100 %", IN, "out-of-range", 0, 0, 0, -1},
    {"job", "valid", "30 days", IN, NULL, 30, 0, UNIT_DAY, -1},
};

/* Room for any struct that keys fill. */
union any {
    struct rates rates;
    struct job job;
    max_align_t align;
    char bytes[4096];
};

static const struct section_kind *find_section(const char *name) {
    for (size_t i = 0; i < rates_section_count; i++) {
        if (strcmp(rates_sections[i]->name, name) == 0) {
            return rates_sections[i];
        }
    }
    for (size_t i = 0; i < job_section_count; i++) {
        if (strcmp(job_sections[i]->name, name) == 0) {
            return job_sections[i];
        }
    }
    return NULL;
}

/* What one reading gives; thing is filled. The id is static. */
static const char *read_one(const struct reading *reading, const struct key *key, union any *thing,
                            struct pool *pool) {
    struct problems problems;
    struct rates none = {0};
    struct reader reader = {.pool = pool,
                            .problems = &problems,
                            .path = "here/rates.ini",
                            .rates = &none,
                            .money_decimals = 2};
    const struct entry entry = {.text = reading->text, .place = {.line = 1, .column = 1}};
    const char *id;

    problems_init(&problems);
    memset(thing, 0, sizeof(*thing));
    reader.unit = reading->unit;
    key->kind.read(&reader, key, &entry, thing);
    id = problems.count == 0 ? NULL : problems.list[0].id;
    assert_true(problems.count <= 1);
    problems_clear(&problems);
    return id;
}

static void check_reading(const struct reading *reading) {
    const struct section_kind *kind = find_section(reading->section);
    const struct key *key = key_find(kind->keys, kind->key_count, reading->key);
    struct pool pool;
    union any thing;
    const struct value *value;
    const char *id;

    assert_non_null(key);
    pool_init(&pool);
    id = read_one(reading, key, &thing, &pool);
    value = key_field(key, &thing);
    if ((id == NULL) != (reading->id == NULL) || (id != NULL && strcmp(id, reading->id) != 0)) {
        fail_msg("[%s] %s = %s: %s", reading->section, reading->key, reading->text,
                 id == NULL ? "no problem" : id);
    }
    if (value->set != (id == NULL) ||
        (value->set && (value->amount != reading->amount || value->decimals != reading->decimals ||
                        value->unit != reading->of))) {
        fail_msg("[%s] %s = %s: %lld, %d decimals, unit %d", reading->section, reading->key,
                 reading->text, (long long)value->amount, value->decimals, value->unit);
    }
    if (reading->choice >= 0) {
        const struct choice *choice = (const void *)(thing.bytes + key->field.beside);

        assert_true(choice->set);
        assert_int_equal(choice->choice, reading->choice);
    }
    pool_clear(&pool);
}

static void test_readings(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(readings); i++) {
        check_reading(&readings[i]);
    }
}

/* A range that holds the value is taken, and the value stays as it is written. */
static void test_range_is_taken(void **state) {
    static const struct reading price = {.text = "4.1 per bf (3.80 to 4.605)", .unit = IN};
    static const struct reading kerf = {.text = "3.2 mm (3 to 3.5)", .unit = IN};
    struct pool pool;
    union any thing;
    const struct key *key = key_find(section_lumber.keys, section_lumber.key_count, "price");
    const struct value *value = key_field(key, &thing);

    (void)state;
    pool_init(&pool);
    assert_string_equal(read_one(&price, key, &thing, &pool), "range-unused");
    assert_int_equal(value->amount, 41);
    assert_int_equal(value->decimals, 1);
    key = key_find(section_saw.keys, section_saw.key_count, "kerf");
    value = key_field(key, &thing);
    assert_string_equal(read_one(&kerf, key, &thing, &pool), "range-unused");
    assert_int_equal(value->amount, 3200000);
    pool_clear(&pool);
}

/* Columns of the published table that no stage uses are held against their ranges all the same: a
 * wrong number there may stand one column beside its own. */
static void test_unused_columns(void **state) {
    static const struct {
        const char *column, *text, *id;
    } cells[] = {
        {"sg_green_volume", "0.56", NULL},
        {"sg_green_volume", "2.1", "out-of-range"},
        {"shrink_radial_pct", "30", NULL},
        {"shrink_radial_pct", "31", "out-of-range"},
        {"shrink_tangential_pct", "x", "not-a-number"},
        {"shrink_volumetric_pct", "-1", "out-of-range"},
        {"coef_radial_CR_per_pct", "0.00165", NULL},
        {"coef_radial_CR_per_pct", "1.1", "out-of-range"},
        {"botanical_name", "Acer saccharum", NULL},
        {"source", "anything", NULL},
    };

    (void)state;
    for (size_t i = 0; i < COUNT(cells); i++) {
        const struct reading reading = {.text = cells[i].text, .unit = IN};
        const struct key *key = key_find(wood_columns, wood_column_count, cells[i].column);
        struct pool pool;
        union any thing;
        const char *id;

        assert_non_null(key);
        pool_init(&pool);
        id = read_one(&reading, key, &thing, &pool);
        if ((id == NULL) != (cells[i].id == NULL) || (id != NULL && strcmp(id, cells[i].id) != 0)) {
            fail_msg("%s = %s: %s", cells[i].column, cells[i].text, id == NULL ? "no problem" : id);
        }
        pool_clear(&pool);
    }
}

/* The examples of the tables are what they are said to be: each reads without a problem. */
static void check_examples(const struct section_kind *kind) {
    for (size_t i = 0; i < kind->key_count; i++) {
        const struct key *key = &kind->keys[i];
        const char *const texts[] = {key->example, key->other};

        for (size_t k = 0; k < 2; k++) {
            struct reading reading = {.text = texts[k], .unit = IN};
            struct pool pool;
            union any thing;
            const char *id;

            /* names need their sections, metric examples a metric file */
            if (texts[k] == NULL) {
                continue;
            }
            pool_init(&pool);
            id = read_one(&reading, key, &thing, &pool);
            if (id != NULL && strcmp(id, "other-system") == 0) {
                reading.unit = MM;
                id = read_one(&reading, key, &thing, &pool);
            }
            if (id != NULL) {
                fail_msg("[%s] %s = %s: %s", kind->name, key->name, texts[k], id);
            }
            pool_clear(&pool);
        }
    }
}

static void test_examples(void **state) {
    (void)state;
    for (size_t i = 0; i < rates_section_count; i++) {
        check_examples(rates_sections[i]);
    }
    for (size_t i = 0; i < job_section_count; i++) {
        check_examples(job_sections[i]);
    }
}

static void read_whole(const char *folder, struct rates *rates) {
    char *path = case_path(DOORCOST_SOURCE "/tests/read", folder);
    char *file = case_path(path, "rates.ini");
    struct problems problems;

    problems_init(&problems);
    assert_true(rates_read(rates, file, &problems));
    problems_print(&problems, stderr, false);
    assert_int_equal(problems.count, 0);
    problems_clear(&problems);
    free(file);
    free(path);
}

static void check_value(const struct value *value, int64_t amount, uint8_t decimals,
                        enum unit unit) {
    assert_true(value->set);
    assert_int_equal(value->amount, amount);
    assert_int_equal(value->decimals, decimals);
    assert_int_equal(value->unit, unit);
}

static void test_whole_inch_file(void **state) {
    struct rates rates;
    const struct style *shaker;
    const struct operation *sand;

    (void)state;
    read_whole("inch", &rates);
    assert_string_equal(rates.shop.currency.s, "USD");
    assert_int_equal(rates.shop.operations.count, 1);
    assert_int_equal(rates.lumber_count, 1);
    assert_string_equal(rates.lumber[0].name.s, "Poplar");
    assert_string_equal(rates.lumber[0].thickness_text.s, "4/4");
    assert_int_equal(rates.lumber[0].wood, 1);
    check_value(&rates.lumber[0].price, 410, 2, UNIT_MONEY_PER_BF);
    assert_int_equal(rates.lumber[0].price.place.line, 29);
    assert_int_equal(rates.lumber[0].breaks.count, 2);
    check_value(&rates.lumber[0].breaks.s[1].limit, 500, 0, UNIT_BF);
    check_value(&rates.lumber[0].breaks.s[1].value, 350, 2, UNIT_MONEY_PER_BF);
    assert_int_equal(rates.lumber[0].board_widths.count, 3);
    check_value(&rates.lumber[0].board_widths.v[2], 8 * NM_PER_INCH, 0, UNIT_NM);
    check_value(&rates.sheets[0].length, 96 * NM_PER_INCH, 0, UNIT_NM);
    check_value(&rates.sheets[0].width, 48 * NM_PER_INCH, 0, UNIT_NM);
    assert_true(rates.sheets[0].grain);
    check_value(&rates.glass[0].round_up, 2 * NM_PER_INCH, 0, UNIT_NM);

    shaker = &rates.styles[0];
    check_value(&shaker->mid_stile, 9 * NM_PER_INCH / 4, 0, UNIT_NM);
    check_value(&shaker->bottom_rail, 3 * NM_PER_INCH, 0, UNIT_NM);
    check_value(&shaker->tongue, 3 * NM_PER_INCH / 8, 0, UNIT_NM);
    check_value(&shaker->clearance_across, NM_PER_INCH / 16, 0, UNIT_NM);
    assert_false(shaker->drawer_rail.set);
    assert_int_equal(shaker->operations.count, 2);
    assert_int_equal(shaker->operations.r[1].index, 1);
    assert_string_equal(shaker->operations.r[1].name.s, "Flush Sand");

    assert_int_equal(rates.operations[0].machine, 0);
    assert_int_equal(rates.operations[0].per.choice, DRIVER_FRAME_RUN);
    sand = &rates.operations[1];
    assert_int_equal(sand->machine, 1);
    assert_true(sand->one_side_open);
    check_value(&sand->capacity, 16 * NM_PER_INCH, 0, UNIT_NM);
    assert_int_equal(sand->hands.amount, 1);
    assert_false(sand->hands.set);
    assert_int_equal(rates.operations[2].machine, -1);

    assert_int_equal(rates.coatings[0].spread_by.choice, SPREAD_BY_FILM);
    assert_int_equal(rates.coatings[1].spread_by.choice, SPREAD_BY_PRACTICAL);
    assert_int_equal(rates.coatings[0].reducer_product.index, 0);
    assert_int_equal(rates.coatings[0].catalyst_product.index, -1);
    assert_true(rates.coatings[1].tinted);
    check_value(&rates.coatings[0].sizes.s[0].limit, 25, 2, UNIT_GAL);
    check_value(&rates.coatings[0].sizes.s[2].value, 37000, 2, UNIT_MONEY);
    assert_int_equal(rates.finishes[0].coat_count, 2);
    assert_int_equal(rates.finishes[0].coats[1].coating, 1);
    assert_int_equal(rates.finishes[0].coats[1].times.amount, 2);
    assert_int_equal(rates.finishes[0].coats[0].times.amount, 1);
    assert_int_equal(rates.finishes[0].colors.amount, 1);
    assert_true(rates.hardware[1].by_others);
    assert_int_equal(rates.hinges.by_height.count, 3);
    check_value(&rates.hinges.by_weight.s[0].limit, 15, 0, UNIT_LB);
    check_value(&rates.hinges.by_weight.s[0].value, 2, 0, UNIT_COUNT);
    assert_int_equal(rates.consumable_count, 1);
    assert_int_equal(rates.wood_count, 2);
    check_value(&rates.woods[0].coef_tangential, 353, 5, UNIT_NUMBER);
    check_value(&rates.woods[1].sg_12, 42, 2, UNIT_NUMBER);
    rates_clear(&rates);
}

static void test_whole_metric_file(void **state) {
    struct rates rates;

    (void)state;
    read_whole("metric", &rates);
    assert_int_equal(rates.shop.unit, LENGTH_MM);
    check_value(&rates.lumber[0].price, 1800, 0, UNIT_MONEY_PER_M3);
    check_value(&rates.styles[0].stile, 60 * NM_PER_MM, 0, UNIT_NM);
    check_value(&rates.coatings[0].sizes.s[1].limit, 25, 1, UNIT_L);
    check_value(&rates.hinges.by_weight.s[0].limit, 7, 0, UNIT_KG);
    assert_int_equal(rates.lumber[0].wood, -1);
    rates_clear(&rates);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_readings),        cmocka_unit_test(test_range_is_taken),
        cmocka_unit_test(test_unused_columns),  cmocka_unit_test(test_examples),
        cmocka_unit_test(test_whole_inch_file), cmocka_unit_test(test_whole_metric_file),
    };

    return cmocka_run_group_tests(tests, NULL, NULL);
}
