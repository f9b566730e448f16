/* SPDX-License-Identifier: MIT */
/* What the program chooses or counts out of many, against all there is, tried one by one here: the
 * cheapest lot at price breaks, the cheapest set of containers, the set-ups of a list of doors.
 * Jobs are drawn, the same on every machine; by arithmetic, no source. */
#include "ways.h"

#include <inttypes.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#define DRAWS 40

/* splitmix64 */
static int64_t draw(uint64_t *state, int64_t least, int64_t most) {
    uint64_t z = (*state += UINT64_C(0x9E3779B97F4A7C15));
    z = (z ^ (z >> 30)) * UINT64_C(0xBF58476D1CE4E5B9);
    z = (z ^ (z >> 27)) * UINT64_C(0x94D049BB133111EB);
    z ^= z >> 31;
    return least + (int64_t)(z % (uint64_t)(most - least + 1));
}

/* Text that grows. */
struct written {
    char text[4096];
    size_t size;
};

__attribute__((format(printf, 2, 3))) static void add(struct written *w, const char *format, ...) {
    va_list arguments;
    va_start(arguments, format);
    w->size += (size_t)vsnprintf(w->text + w->size, sizeof w->text - w->size, format, arguments);
    va_end(arguments);
    assert_true(w->size < sizeof w->text);
}

static void open_sound(struct bench *bench, const char *name, const char *const *edits,
                       const char *doors) {
    bench_open(bench, name, BENCH_INCH, edits, doors);
    bench_sound(bench);
    assert_int_equal(bench->result, ESTIMATE_OK);
}

/* --- price breaks ----------------------------------------------------------------------------- */

#define MOST_BREAKS 4

struct yard {
    int64_t base, minimum;
    size_t breaks;
    int64_t from[MOST_BREAKS], price[MOST_BREAKS]; /* board feet; cents */
};

/* Cents of a lot: the last break that it reaches prices all of it. */
static int64_t lot_price(const struct yard *yard, int64_t feet) {
    int64_t price = yard->base;
    for (size_t i = 0; i < yard->breaks; i++) {
        price = feet >= yard->from[i] ? yard->price[i] : price;
    }
    return price * feet;
}

static struct yard draw_yard(uint64_t *seed) {
    struct yard yard = {.base = draw(seed, 300, 700),
                        .minimum = draw(seed, 0, 1) * draw(seed, 5, 40),
                        .breaks = (size_t)draw(seed, 1, MOST_BREAKS)};
    for (size_t i = 0; i < yard.breaks; i++) {
        yard.from[i] = (i == 0 ? 0 : yard.from[i - 1]) + draw(seed, 5, 40);
        /* even cents are met again, so that some lots cost the same */
        yard.price[i] = (i == 0 ? yard.base : yard.price[i - 1]) - draw(seed, 0, 4) * 20;
    }
    return yard;
}

static void lots_are_cheapest(void **state) {
    (void)state;
    uint64_t seed = 1604;
    for (int n = 0; n < DRAWS; n++) {
        const struct yard yard = draw_yard(&seed);
        const int64_t net = draw(&seed, 1, 150);
        const int64_t needed = net < yard.minimum ? yard.minimum : net;
        struct written lumber = {.size = 0};
        struct written doors = {.size = 0};
        add(&lumber, "lumber poplar|price = %d.%02d per bf\n", (int)yard.base / 100,
            (int)yard.base % 100);
        if (yard.minimum > 0) {
            add(&lumber, "minimum = %d bf\n", (int)yard.minimum);
        }
        add(&lumber, "price from = ");
        for (size_t i = 0; i < yard.breaks; i++) {
            add(&lumber, "%s%d bf at %d.%02d per bf", i == 0 ? "" : ", ", (int)yard.from[i],
                (int)yard.price[i] / 100, (int)yard.price[i] % 100);
        }
        add(&doors, "id,count,width,height\nS1,%d,12,12\n", (int)net); /* 1 bf each */
        const char *const edits[BENCH_MOST_EDITS] = {"make|style = slab\nslab = poplar",
                                                     lumber.text};
        struct bench bench;
        open_sound(&bench, lumber.text, edits, doors.text);
        int64_t best = needed;
        for (int64_t feet = needed; feet <= needed + 200; feet++) {
            /* of lots of one cost the larger */
            best = lot_price(&yard, feet) <= lot_price(&yard, best) ? feet : best;
        }
        char text[32];
        const struct lumber_buy *const buy = &bench.estimate.lumber.buys[0];
        bench_figure(&bench, "the lot", buy->priced.bought,
                     figure_text(best, 0, text, sizeof text));
        bench_figure(&bench, "its cost", buy->priced.cost,
                     figure_text(lot_price(&yard, best), 2, text, sizeof text));
        assert_int_equal(bench_close(&bench), 0);
    }
}

/* --- containers ------------------------------------------------------------------------------- */

/* Sizes that are sold, in 1/8 gal. */
static const struct {
    const char *name;
    int64_t eighths;
} cans[] = {{"1 pt", 1}, {"1 qt", 2}, {"1 gal", 8}, {"5 gal", 40}};

struct set {
    int64_t cents, eighths, count;
    int64_t of[COUNT(cans)];
};

static bool better(const struct set *a, const struct set *b) {
    if (a->cents != b->cents) {
        return a->cents < b->cents;
    }
    return a->eighths != b->eighths ? a->eighths < b->eighths : a->count < b->count;
}

/* All sets of which each can is needed at most as often as it alone would hold the need. need:
 * ten-thousandths of a gallon. */
static struct set best_set(int64_t need, const int64_t *price) {
    struct set best = {.cents = INT64_MAX};
    const int64_t eighths = (need + 1249) / 1250;
    int64_t most[COUNT(cans)];
    for (size_t i = 0; i < COUNT(cans); i++) {
        most[i] = (eighths + cans[i].eighths - 1) / cans[i].eighths;
    }
    struct set s = {0};
    for (s.of[0] = 0; s.of[0] <= most[0]; s.of[0]++) {
        for (s.of[1] = 0; s.of[1] <= most[1]; s.of[1]++) {
            for (s.of[2] = 0; s.of[2] <= most[2]; s.of[2]++) {
                for (s.of[3] = 0; s.of[3] <= most[3]; s.of[3]++) {
                    s.cents = s.eighths = s.count = 0;
                    for (size_t i = 0; i < COUNT(cans); i++) {
                        s.cents += s.of[i] * price[i];
                        s.eighths += s.of[i] * cans[i].eighths;
                        s.count += s.of[i];
                    }
                    if (s.eighths >= eighths && better(&s, &best)) {
                        best = s;
                    }
                }
            }
        }
    }
    return best;
}

static void cans_are_cheapest(void **state) {
    (void)state;
    uint64_t seed = 231;
    for (int n = 0; n < DRAWS; n++) {
        int64_t price[COUNT(cans)];
        struct written sizes = {.size = 0};
        struct written doors = {.size = 0};
        add(&sizes, "coating paint|sizes = ");
        for (size_t i = 0; i < COUNT(cans); i++) {
            price[i] = cans[i].eighths * draw(&seed, 8, 14) * 100;
            add(&sizes, "%s%s at %d.00", i == 0 ? "" : ", ", cans[i].name, (int)price[i] / 100);
        }
        /* 65.5 sq ft each, some 0.25 gal */
        add(&doors, "id,count,width,height\nS1,%d,48,96\n", (int)draw(&seed, 1, 30));
        const char *const edits[BENCH_MOST_EDITS] = {"make|style = slab\nfinish = painted",
                                                     sizes.text};
        struct bench bench;
        char text[32];
        open_sound(&bench, sizes.text, edits, doors.text);
        const struct product *const paint = &bench.estimate.finish.products[0];
        const struct set best = best_set(tape_scaled(&bench.estimate.tape, paint->need, 4), price);
        bench_figure(&bench, "cost", paint->cost, figure_text(best.cents, 2, text, sizeof text));
        bench_figure(&bench, "bought", paint->bought,
                     figure_text(best.eighths * 125, 3, text, sizeof text));
        int64_t count = 0;
        for (size_t i = 0; i < COUNT(cans); i++) {
            count += tape_scaled(&bench.estimate.tape, paint->counts[i], 0);
        }
        assert_int_equal(count, best.count);
        assert_int_equal(bench_close(&bench), 0);
    }
}

/* --- set-ups ---------------------------------------------------------------------------------- */

/* Different lengths, in quarters of an inch. */
struct lengths {
    int64_t of[64];
    size_t count;
};

static void note(struct lengths *lengths, int64_t value) {
    for (size_t i = 0; i < lengths->count; i++) {
        if (lengths->of[i] == value) {
            return;
        }
    }
    assert_true(lengths->count < COUNT(lengths->of));
    lengths->of[lengths->count++] = value;
}

/* What calls for a set-up: of doors w x h with stiles of 2 1/4 and tongues of 3/8, rails are
 * w - 4 1/2 + 3/4 = w - 3 3/4. */
enum { BY_STILE, BY_RAIL, BY_JOINT, BY_FRAME, BY_WIDTH, BY_HEIGHT, BY_PANEL, WAYS };

static const char *const setups[WAYS] = {
    [BY_STILE] = "operation work|per = stile\nminutes = 1\nsetup = 3 min per length",
    [BY_RAIL] = "operation work|per = rail\nminutes = 1\nsetup = 3 min per length",
    [BY_JOINT] = "operation work|per = joint\nminutes = 1\nsetup = 3 min per length",
    [BY_FRAME] = "operation work|per = ft of frame\nminutes = 1\nsetup = 3 min per length",
    [BY_WIDTH] = "operation work|per = door\nminutes = 1\nsetup = 3 min per width",
    [BY_HEIGHT] = "operation work|per = sqft of door\nminutes = 1\nsetup = 3 min per length",
    [BY_PANEL] = "operation work|per = panel\nminutes = 1\nsetup = 3 min per width",
};

static void count_calls(struct lengths *calls, int64_t w, int64_t h) {
    note(&calls[BY_STILE], h);
    note(&calls[BY_RAIL], w - 15);
    note(&calls[BY_JOINT], h);
    note(&calls[BY_JOINT], w - 15);
    note(&calls[BY_FRAME], h);
    note(&calls[BY_FRAME], w - 15);
    note(&calls[BY_WIDTH], w);
    note(&calls[BY_HEIGHT], h);
    note(&calls[BY_PANEL], w);
}

static void setups_are_counted(void **state) {
    (void)state;
    uint64_t seed = 28;
    for (int n = 0; n < DRAWS; n++) {
        struct lengths calls[WAYS] = {0};
        struct written doors = {.size = 0};
        const int way = n % WAYS;
        add(&doors, "id,count,width,height\n");
        for (int64_t rows = draw(&seed, 1, 20), r = 0; r < rows; r++) {
            /* many end in 3/4, so that rails are as long as stiles */
            const int64_t w = 4 * draw(&seed, 10, 20) + 3 * draw(&seed, 0, 1);
            const int64_t h = 4 * draw(&seed, 8, 22);
            add(&doors, "D%d,%d,%d %d/4,%d\n", (int)r, (int)draw(&seed, 1, 9), (int)w / 4,
                (int)w % 4, (int)h / 4);
            count_calls(calls, w, h);
        }
        const char *const edits[BENCH_MOST_EDITS] = {"door plain|operations = work", setups[way]};
        struct bench bench;
        char text[32];
        open_sound(&bench, setups[way], edits, doors.text);
        const struct operation_figures *const work = &bench.estimate.labor.operations[0];
        bench_figure(&bench, "set-ups", work->setups,
                     figure_text((int64_t)calls[way].count, 0, text, sizeof text));
        bench_figure(&bench, "set-up minutes", work->setup_minutes,
                     figure_text(3 * (int64_t)calls[way].count, 0, text, sizeof text));
        assert_int_equal(bench_close(&bench), 0);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(lots_are_cheapest),
                                       cmocka_unit_test(cans_are_cheapest),
                                       cmocka_unit_test(setups_are_counted)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
