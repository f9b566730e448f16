/* SPDX-License-Identifier: MIT */
/* Spread, film and losses against published examples (film.csv): a coat of a large area, so that
 * four decimals of a gallon do not show. */
#include "rows.h"

#include "finish/coat.h"

#include <setjmp.h>
#include <stdarg.h>

#include <cmocka.h>

#define AREA ((int64_t)100000)

static struct value value_of(enum unit unit, uint8_t decimals, int64_t amount) {
    return (struct value){
        .unit = (uint8_t)unit, .decimals = decimals, .amount = amount, .set = true};
}

static struct value percent(const struct rows *rows, size_t row, const char *column) {
    struct value value = value_of(UNIT_PERCENT, 0, rows_number(rows, row, column) / ROWS_ONE);
    value.set = rows_cell(rows, row, column)[0] != '\0';
    return value;
}

/* The wet film in nm: as printed, or what leaves the printed dry film. */
static int64_t wet_film(const struct rows *rows, size_t row, bool metric) {
    const int64_t unit = metric ? NM_PER_UM : NM_PER_MIL;
    const int64_t wet = metric ? 0 : rows_number(rows, row, "wet mil");
    if (wet > 0) {
        return wet * unit / ROWS_ONE;
    }
    const int64_t dry = rows_number(rows, row, metric ? "dry um" : "dry mil") * unit / ROWS_ONE;
    const int64_t solids = rows_number(rows, row, "solids %") / ROWS_ONE;
    return solids == 0 ? 0 : (dry * 100 + solids / 2) / solids;
}

struct sprayed {
    struct tape tape;
    struct units units;
    struct coat_figures coat;
};

static void spray(struct sprayed *s, const struct rows *rows, size_t row, bool metric) {
    struct coating coating = {0};
    struct spray gun = {.transfer = percent(rows, row, "transfer %"),
                        .other_loss = percent(rows, row, "other loss %")};
    const struct rates rates = {.coatings = &coating, .coating_count = 1};
    const struct calc calc = {.tape = &s->tape, .units = &s->units, .rates = &rates};
    const struct value once = value_of(UNIT_COUNT, 0, 1);
    if (!gun.transfer.set) {
        gun.transfer = value_of(UNIT_PERCENT, 0, 100);
    }
    coating.solids = percent(rows, row, "solids %");
    coating.reducer = percent(rows, row, "reducer % of coating");
    coating.wet_film = value_of(UNIT_NM, 0, wet_film(rows, row, metric));
    if (coating.reducer.set && coating.wet_film.amount == 0) {
        coating.wet_film.amount = 100 * NM_PER_MIL; /* dry mils are then percents */
    }
    if (rows_cell(rows, row, "coverage sqft per gal")[0] != '\0') {
        coating.spread_by.choice = SPREAD_BY_THEORETICAL;
        coating.coverage = value_of(UNIT_SQFT_PER_GAL, 0,
                                    rows_number(rows, row, "coverage sqft per gal") / ROWS_ONE);
        coating.wet_film.set = false;
    }
    *s = (struct sprayed){.coat = {.coating = 0, .way = &gun}};
    tape_init(&s->tape, true);
    units_init(&s->units, &s->tape, metric ? LENGTH_MM : LENGTH_INCH, metric);
    s->coat.times = calc_given(&calc, "coats", &once);
    const fig area = tape_constant(&s->tape, "area", s->units.area, 0, AREA, "the test");
    coat_spray(&s->coat, &calc, TRANSFER_LIKELY, area);
    coat_mix(&s->coat, &calc, &(struct coat_pool){.area = area});
    s->coat.way = NULL; /* the gun goes with this call */
    assert_int_equal(tape_fault(&s->tape), TAPE_OK);
}

static int64_t read(const struct sprayed *s, fig figure) {
    assert_false(fig_none(figure));
    return tape_scaled(&s->tape, figure, 6) * 1000;
}

/* area / volume, to six decimals */
static int64_t spread(const struct sprayed *s) {
    const int64_t volume = tape_scaled(&s->tape, s->coat.mix, 4);
    assert_true(volume > 0);
    return (AREA * 10000 * 1000000 + volume / 2) / volume * 1000;
}

static int64_t dry(const struct sprayed *s) {
    return read(s, s->coat.dry_film);
}

static int64_t wet(const struct sprayed *s) {
    return read(s, s->coat.film);
}

/* Cents by square foot of a coating at the row's price. */
static int64_t cents(struct sprayed *s, const struct rows *rows, size_t row) {
    const fig price =
        tape_constant(&s->tape, "price", UNIT_MONEY, 2,
                      rows_number(rows, row, "price per gal") / (ROWS_ONE / 100), "the row");
    const fig cost = fig_ratio(&s->tape, "cost", UNIT_MONEY,
                               (figs){{s->coat.coating_volume, price}}, (figs){{{0}}});
    return tape_scaled(&s->tape, cost, 2) * (ROWS_ONE / AREA);
}

static void test_published(void **state) {
    (void)state;
    static const struct {
        const char *check;
        bool metric;
        int64_t (*answer)(const struct sprayed *sprayed);
    } answers[] = {
        {"spread", false, spread}, {"spread, metric", true, spread}, {"dry", false, dry},
        {"wet", false, wet},       {"solids", false, dry},
    };
    const size_t count = sizeof answers / sizeof *answers;
    struct rows rows;
    rows_read(&rows, "film.csv");
    for (size_t row = 0; row < rows.count; row++) {
        struct sprayed sprayed;
        size_t a = 0;
        while (a < count && !rows_check_is(&rows, row, answers[a].check)) {
            a++;
        }
        if (a == count && !rows_check_is(&rows, row, "cents")) {
            rows_pass_over(&rows, row);
            continue;
        }
        spray(&sprayed, &rows, row, a < count && answers[a].metric);
        rows_expect(&rows, row,
                    a < count ? answers[a].answer(&sprayed) : cents(&sprayed, &rows, row));
        tape_clear(&sprayed.tape);
    }
    rows_done(&rows);
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_published)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
