/* SPDX-License-Identifier: MIT */
#include "base/joined.h"

#include "cmocka_all.h"

#include <stdlib.h>
#include <string.h>

static void test_memory_is_zeroed_and_aligned(void **state) {
    struct pool pool;

    (void)state;
    pool_init(&pool);
    for (size_t size = 1; size < 5000; size = size * 3 + 1) {
        unsigned char *thing = pool_take(&pool, 3, size);

        assert_non_null(thing);
        assert_int_equal((uintptr_t)thing % _Alignof(max_align_t), 0);
        for (size_t i = 0; i < 3 * size; i++) {
            assert_int_equal(thing[i], 0);
        }
        memset(thing, 0xFF, 3 * size);
    }
    assert_false(pool_failed(&pool));
    pool_clear(&pool);
    pool_clear(&pool);
}

static void test_many_and_large(void **state) {
    struct pool pool;
    char *first;

    (void)state;
    pool_init(&pool);
    first = pool_text(&pool, "first", 5);
    assert_non_null(pool_take(&pool, 100000, 8));
    for (int i = 0; i < 10000; i++) {
        assert_non_null(pool_take(&pool, 1, 40));
    }
    assert_string_equal(first, "first");
    assert_non_null(pool_take(&pool, 0, 8));
    pool_clear(&pool);
}

static void test_failure_sticks(void **state) {
    struct pool pool;

    (void)state;
    pool_init(&pool);
    assert_null(pool_take(&pool, SIZE_MAX / 2, 16));
    assert_true(pool_failed(&pool));
    assert_null(pool_take(&pool, 1, 1));
    assert_null(pool_text(&pool, "a", 1));
    assert_null(pool_format(&pool, "%d", 1));
    pool_clear(&pool);
    assert_false(pool_failed(&pool));
}

static void test_texts(void **state) {
    struct pool pool;

    (void)state;
    pool_init(&pool);
    assert_string_equal(pool_text(&pool, "stile and rail", 5), "stile");
    assert_string_equal(pool_format(&pool, "%s of %d", "rail", 14), "rail of 14");
    pool_clear(&pool);
}

static void test_array(void **state) {
    int *array = NULL;
    size_t room = 0;
    bool failed = false;

    (void)state;
    array = array_grow(array, &room, 1, sizeof(int), &failed);
    assert_false(failed);
    assert_true(room >= 1);
    array[0] = 7;
    array = array_grow(array, &room, 1000, sizeof(int), &failed);
    assert_false(failed);
    assert_true(room >= 1000);
    assert_int_equal(array[0], 7);
    /* what can't be had leaves all as it was, and says so until the caller forgets it */
    const size_t before = room;
    const size_t far[] = {SIZE_MAX / 2, SIZE_MAX};
    for (size_t i = 0; i < 2; i++) {
        failed = false;
        array = array_grow(array, &room, far[i], sizeof(int), &failed);
        assert_true(failed);
        assert_int_equal(room, before);
        assert_int_equal(array[0], 7);
    }
    array = array_grow(array, &room, 1, sizeof(int), &failed);
    assert_true(failed);
    free(array);
}

static void test_joined(void **state) {
    struct pool pool;
    struct joined joined = {0};

    (void)state;
    pool_init(&pool);
    assert_string_equal(joined_take(&joined, &pool), "");
    for (int i = 0; i < 5000; i++) {
        joined_add(&joined, i == 0 ? "D" : ", D");
        joined_add(&joined, "");
    }
    const char *const whole = joined_take(&joined, &pool);
    assert_int_equal(strlen(whole), 3 * 5000 - 2);
    assert_memory_equal(whole, "D, D, D", 7);
    joined_add(&joined, "again");
    assert_string_equal(joined_take(&joined, &pool), "again");
    joined.failed = true; /* sticks until the text is asked for */
    joined_add(&joined, "lost");
    assert_null(joined_take(&joined, &pool));
    pool_clear(&pool);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_memory_is_zeroed_and_aligned),
        cmocka_unit_test(test_many_and_large),
        cmocka_unit_test(test_failure_sticks),
        cmocka_unit_test(test_texts),
        cmocka_unit_test(test_array),
        cmocka_unit_test(test_joined),
    };

    return cmocka_run_group_tests(tests, NULL, NULL);
}
