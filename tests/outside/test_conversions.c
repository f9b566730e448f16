/* SPDX-License-Identifier: MIT */
/* The conversions that the program uses are those of conversions.csv, column `program`;
 * conversions.py holds the same column against GNU units and what was published. */
#include "rows.h"

#include "base/int128.h"
#include "model/units.h"
#include "read/key/quantity.h"
#include "support.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

/* What the program has: over / under. */
struct held {
    const char *id;
    int64_t over, under;
};

static void expect(struct rows *rows, const struct held *held) {
    for (size_t row = 0; row < rows->count; row++) {
        if (strcmp(rows_cell(rows, row, "id"), held->id) != 0) {
            continue;
        }
        const char *const text = rows_cell(rows, row, "program");
        const char *const point = strchr(text, '.');
        int128 last = ROWS_ONE; /* one unit of the last digit written */
        for (size_t d = point == NULL ? 0 : strlen(point + 1); d > 0; d--) {
            last /= 10;
        }
        const int128 apart =
            (int128)held->over * ROWS_ONE - (int128)rows_number(rows, row, "program") * held->under;
        if (2 * (apart < 0 ? -apart : apart) > last * held->under) {
            print_error("%s: %s to %s is %lld / %lld here, %s in the file\n", held->id,
                        rows_cell(rows, row, "from"), rows_cell(rows, row, "to"),
                        (long long)held->over, (long long)held->under, text);
            rows->wrong++;
        }
        rows->checked++;
        return;
    }
    fail_msg("conversions.csv has no %s", held->id);
}

static void check_lengths(struct rows *rows) {
    static const struct held lengths[] = {
        {"U01", NM_PER_INCH, NM_PER_MM},
        {"U02", NM_PER_FOOT, 1000 * NM_PER_MM},
        {"U06", NM_PER_64TH, 1},
        {"U07", NM_PER_MIL, NM_PER_UM},
        {"U16", LITRES_PER_GALLON_OVER, LITRES_PER_GALLON_UNDER},
    };
    for (size_t i = 0; i < COUNT(lengths); i++) {
        expect(rows, &lengths[i]);
    }
}

/* The constants of the tape, in each of the four ways to mix the job's unit and the rates'. */
static void check_measures(struct rows *rows) {
    static const struct {
        const char *id;
        enum length_unit lengths;
        bool metric;
        size_t at;        /* a fig of struct units */
        int64_t multiple; /* of the row's */
    } constants[] = {
        {"C01", LENGTH_INCH, true, offsetof(struct units, length_per_run), 1},
        {"C02", LENGTH_MM, false, offsetof(struct units, length_per_run), 1},
        {"C03", LENGTH_INCH, true, offsetof(struct units, length2_per_area), 1},
        {"U10", LENGTH_MM, false, offsetof(struct units, length2_per_area), 1000000},
        {"C04", LENGTH_INCH, false, offsetof(struct units, length2_per_area), 1},
        {"C05", LENGTH_INCH, true, offsetof(struct units, length3_per_m3), 1},
        {"U33", LENGTH_MM, false, offsetof(struct units, length3_per_bf), 1},
        {"U33", LENGTH_MM, true, offsetof(struct units, length3_per_bf), 1},
        {"U32", LENGTH_INCH, false, offsetof(struct units, length3_per_bf), 1},
        {"U15", LENGTH_INCH, false, offsetof(struct units, spread_under), 1000},
        {"U37", LENGTH_MM, true, offsetof(struct units, spread_under), 1},
    };
    for (size_t i = 0; i < COUNT(constants); i++) {
        struct tape tape;
        struct units m;
        fig figure;
        tape_init(&tape, true);
        units_init(&m, &tape, constants[i].lengths, constants[i].metric);
        memcpy(&figure, (const char *)&m + constants[i].at, sizeof figure);
        const struct held held = {constants[i].id, tape_scaled(&tape, figure, 6),
                                  1000000 * constants[i].multiple};
        expect(rows, &held);
        if (constants[i].at == offsetof(struct units, spread_under) && !constants[i].metric) {
            const struct held film = {"C07", tape_scaled(&tape, m.spread_under, 0),
                                      tape_scaled(&tape, m.spread_over, 0)};
            expect(rows, &film);
        }
        tape_clear(&tape);
    }
}

static void check_densities(struct rows *rows) {
    static const struct {
        const char *id;
        bool metric;
        enum unit unit;
    } densities[] = {
        {"U27", true, UNIT_LB_PER_CUFT},
        {"U28", false, UNIT_G_PER_CM3},
        {"C06", false, UNIT_KG_PER_M3},
        {"U29", true, UNIT_G_PER_CM3},
    };
    for (size_t i = 0; i < COUNT(densities); i++) {
        struct tape tape;
        struct units m;
        const struct value one = {.unit = (uint8_t)densities[i].unit, .amount = 1, .set = true};
        tape_init(&tape, true);
        units_init(&m, &tape, LENGTH_INCH, densities[i].metric);
        const fig density = units_density(&tape, &m, &one);
        const struct held held = {densities[i].id, tape_scaled(&tape, density, 6), 1000000};
        expect(rows, &held);
        tape_clear(&tape);
    }
}

/* Volumes as the rates file is read. */
static void check_volumes(struct rows *rows) {
    static const struct {
        const char *id, *edit;
        enum bench_unit unit;
    } volumes[] = {
        {"R16", "coating paint|sizes = 1 gal at 1.00", BENCH_MM},
        {"R17", "coating paint|sizes = 1 L at 1.00", BENCH_INCH},
        {"U18", "coating paint|sizes = 1 qt at 1.00", BENCH_MM},
        {"U19", "coating paint|sizes = 1 pt at 1.00", BENCH_MM},
        {"U20", "coating paint|sizes = 1 fl oz at 1.00", BENCH_MM},
        {"U22", "coating paint|sizes = 1 qt at 1.00", BENCH_INCH},
        {"U23", "coating paint|sizes = 1 fl oz at 1.00", BENCH_INCH},
    };
    for (size_t i = 0; i < COUNT(volumes); i++) {
        struct bench bench;
        const char *const edits[BENCH_MOST_EDITS] = {volumes[i].edit};
        bench_open(&bench, volumes[i].id, volumes[i].unit, edits, "D1,400,700\n");
        assert_int_equal(bench.rates.coatings[0].sizes.count, 1);
        const struct value *const size = &bench.rates.coatings[0].sizes.s[0].limit;
        struct held held = {volumes[i].id, size->amount, 1};
        for (uint8_t d = 0; d < size->decimals; d++) {
            held.under *= 10;
        }
        expect(rows, &held);
        (void)bench_close(&bench);
    }
}

static void test_conversions(void **state) {
    (void)state;
    struct rows rows;
    rows_read(&rows, "conversions.csv");
    check_lengths(&rows);
    check_measures(&rows);
    check_densities(&rows);
    check_volumes(&rows);
    /* every row with a value of the program was asked for, some from two sides */
    size_t held = 0;
    for (size_t row = 0; row < rows.count; row++) {
        held += rows_cell(&rows, row, "program")[0] != '\0' ? 1 : 0;
    }
    assert_int_equal(rows.checked, held + 1);
    rows.passed_over = rows.count - held;
    rows.checked = held;
    rows_done(&rows);
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_conversions)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
