/* SPDX-License-Identifier: MIT */
/* The cheapest set of containers, against all sets there are; the same seed every time. */
#include "finish/containers.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>
#include <string.h>

struct sum {
    int64_t cost, volume, containers;
};

static struct sum sum_of(const struct container_size *sizes, size_t count, const int64_t *counts) {
    struct sum sum = {0};
    for (size_t i = 0; i < count; i++) {
        sum.cost += counts[i] * sizes[i].price;
        sum.volume += counts[i] * sizes[i].volume;
        sum.containers += counts[i];
    }
    return sum;
}

static bool better(const struct sum *a, const struct sum *b) {
    if (a->cost != b->cost) {
        return a->cost < b->cost;
    }
    return a->volume != b->volume ? a->volume < b->volume : a->containers < b->containers;
}

/* Every count of every size up to what alone would hold the need. */
static void try_all(int64_t need, const struct container_size *sizes, size_t count, size_t at,
                    int64_t *counts, struct sum *best) {
    if (at == count) {
        const struct sum sum = sum_of(sizes, count, counts);
        if (sum.volume >= need && (best->cost < 0 || better(&sum, best))) {
            *best = sum;
        }
        return;
    }
    const int64_t most = (need + sizes[at].volume - 1) / sizes[at].volume;
    for (counts[at] = 0; counts[at] <= most; counts[at]++) {
        try_all(need, sizes, count, at + 1, counts, best);
    }
    counts[at] = 0;
}

/* splitmix64: the same numbers on every machine. */
static uint64_t draw(uint64_t *state) {
    uint64_t z = (*state += UINT64_C(0x9E3779B97F4A7C15));
    z = (z ^ (z >> 30)) * UINT64_C(0xBF58476D1CE4E5B9);
    z = (z ^ (z >> 27)) * UINT64_C(0x94D049BB133111EB);
    return z ^ (z >> 31);
}

static int64_t between(uint64_t *state, int64_t least, int64_t most) {
    return least + (int64_t)(draw(state) % (uint64_t)(most - least + 1));
}

static void draws_are_cheapest(void **state) {
    (void)state;
    uint64_t seed = 20260302;
    for (int round = 0; round < 3000; round++) {
        struct container_size sizes[4];
        int64_t counts[MOST_CONTAINER_SIZES] = {0};
        int64_t tried[4] = {0};
        struct sum best = {.cost = -1};
        const size_t count = (size_t)between(&seed, 1, 4);
        const int64_t need = between(&seed, 1, 60);
        for (size_t i = 0; i < count; i++) {
            /* many equal prices by volume, so that ties are met */
            sizes[i].volume = between(&seed, 3, 30);
            sizes[i].price = round % 3 == 0 ? 5 * sizes[i].volume : between(&seed, 0, 90);
        }
        try_all(need, sizes, count, 0, tried, &best);
        assert_true(containers_choose(need, sizes, count, counts));
        const struct sum sum = sum_of(sizes, count, counts);
        if (sum.cost != best.cost || sum.volume != best.volume ||
            sum.containers != best.containers) {
            print_error("round %d: need %lld, cost %lld, volume %lld, containers %lld; all sets: "
                        "%lld, %lld, %lld\n",
                        round, (long long)need, (long long)sum.cost, (long long)sum.volume,
                        (long long)sum.containers, (long long)best.cost, (long long)best.volume,
                        (long long)best.containers);
        }
        assert_int_equal(sum.cost, best.cost);
        assert_int_equal(sum.volume, best.volume);
        assert_int_equal(sum.containers, best.containers);
    }
}

/* Down from a need, one step after another, until another set is the cheapest. */
static void a_set_holds_from(void **state) {
    (void)state;
    uint64_t seed = 20260303;
    for (int round = 0; round < 1000; round++) {
        struct container_size sizes[3];
        int64_t chosen[MOST_CONTAINER_SIZES] = {0};
        int64_t counts[MOST_CONTAINER_SIZES] = {0};
        const size_t count = (size_t)between(&seed, 1, 3);
        const int64_t step = between(&seed, 1, 4);
        const int64_t need = step * between(&seed, 1, 30);
        for (size_t i = 0; i < count; i++) {
            sizes[i].volume = between(&seed, 3, 30);
            sizes[i].price = between(&seed, 1, 90);
        }
        assert_true(containers_choose(need, sizes, count, chosen));
        int64_t from = need;
        while (from > step && containers_choose(from - step, sizes, count, counts) &&
               memcmp(counts, chosen, count * sizeof *counts) == 0) {
            from -= step;
        }
        assert_int_equal(containers_hold_from(need, step, sizes, count), from);
    }
}

static void a_gallon_is_cheaper_than_four_quarts(void **state) {
    (void)state;
    const struct container_size sizes[] = {{250000, 2700}, {1000000, 8400}};
    int64_t counts[2];
    assert_true(containers_choose(897100, sizes, 2, counts));
    assert_int_equal(counts[0], 0);
    assert_int_equal(counts[1], 1);
    assert_true(containers_choose(700000, sizes, 2, counts));
    assert_int_equal(counts[0], 3);
    assert_int_equal(counts[1], 0);
}

static void nothing_needed_buys_nothing(void **state) {
    (void)state;
    const struct container_size sizes[] = {{250000, 2700}};
    int64_t counts[1] = {7};
    assert_true(containers_choose(0, sizes, 1, counts));
    assert_int_equal(counts[0], 0);
    assert_false(containers_choose(1, sizes, 0, counts));
}

/* A free container is taken; a need far over the sizes still ends. */
static void odd_prices_end(void **state) {
    (void)state;
    const struct container_size sizes[] = {{250000, 0}, {1000000, 8400}, {5000000, 37000}};
    int64_t counts[3];
    assert_true(containers_choose(900000, sizes, 3, counts));
    assert_int_equal(counts[0], 4);
    assert_int_equal(counts[1], 0);
    const struct container_size dear[] = {{250000, 2700}, {1000000, 8400}, {5000000, 37000}};
    assert_true(containers_choose(INT64_C(123456789), dear, 3, counts));
    const struct sum sum = sum_of(dear, 3, counts);
    assert_true(sum.volume >= INT64_C(123456789));
}

/* Of sets alike in cost, volume and number the first found stays: that of the larger size by its
 * place. Gallons by their volume: 4 are 3 and 1, not twice 2. */
static void of_equal_sets_the_first_stays(void **state) {
    (void)state;
    const struct container_size sizes[] = {{1, 5}, {2, 10}, {3, 15}};
    int64_t counts[3];
    assert_true(containers_choose(4, sizes, 3, counts));
    assert_int_equal(counts[0], 1);
    assert_int_equal(counts[1], 0);
    assert_int_equal(counts[2], 1);
}

/* A replay may hand it anything. */
static void odd_operands_have_no_answer(void **state) {
    (void)state;
    static const struct {
        int64_t in[5];
        bool answer;
    } rows[] = {
        {{2, 1, 5, 3, 12}, true},   {{2, 1, 0, 3, 12}, true},   {{2, 0, 5, 3, 12}, false},
        {{2, 1, -1, 3, 12}, false}, {{2, 1, 5, -3, 12}, false},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        int64_t out[2];
        assert_int_equal(containers_chooser.choose(rows[i].in, 5, out, 2), rows[i].answer);
    }
    assert_false(containers_chooser.choose(rows[0].in, 2, (int64_t[2]){0}, 2));
    assert_false(containers_chooser.choose(rows[0].in, 5, (int64_t[1]){0}, 1));
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(draws_are_cheapest),
        cmocka_unit_test(a_set_holds_from),
        cmocka_unit_test(a_gallon_is_cheaper_than_four_quarts),
        cmocka_unit_test(nothing_needed_buys_nothing),
        cmocka_unit_test(odd_prices_end),
        cmocka_unit_test(of_equal_sets_the_first_stays),
        cmocka_unit_test(odd_operands_have_no_answer),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
