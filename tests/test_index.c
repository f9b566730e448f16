/* SPDX-License-Identifier: MIT */
#include "base/index.h"

#include "cmocka_all.h"

#include <stdlib.h>
#include <string.h>

static bool same_text(const void *list, size_t number, const void *thing) {
    return strcmp(((const char *const *)list)[number], thing) == 0;
}

static void equal_things_have_one_number(void **state) {
    static const char *const words[] = {"stile", "rail", "stile", "", "rail", "panel", ""};
    static const size_t numbers[] = {0, 1, 0, 2, 1, 3, 2};
    const char *kept[7];
    size_t count = 0;
    struct index index = {0};
    bool failed = false;
    (void)state;
    for (size_t i = 0; i < 7; i++) {
        const size_t number = index_add(&index, hash_text(HASH_START, words[i]), same_text, kept,
                                        words[i], count, &failed);
        assert_int_equal(number, numbers[i]);
        if (number == count) {
            kept[count++] = words[i];
        }
    }
    assert_false(failed);
    index_clear(&index);
}

/* Things of one hash are told apart by themselves. */
static void equal_hashes_are_not_equal_things(void **state) {
    static const char *const words[] = {"a", "b"};
    struct index index = {0};
    bool failed = false;
    (void)state;
    assert_int_equal(index_add(&index, 7, same_text, words, "a", 0, &failed), 0);
    assert_int_equal(index_add(&index, 7, same_text, words, "b", 1, &failed), 1);
    assert_int_equal(index_add(&index, 7, same_text, words, "b", 2, &failed), 1);
    index_clear(&index);
}

static bool same_number(const void *list, size_t number, const void *thing) {
    return ((const uint64_t *)list)[number] == *(const uint64_t *)thing;
}

/* Past the first slots many times over, each is found again. */
static void many_are_found_again(void **state) {
    const size_t count = 20000;
    uint64_t *const list = calloc(count, sizeof *list);
    struct index index = {0};
    bool failed = false;
    (void)state;
    assert_non_null(list);
    for (size_t i = 0; i < 2 * count; i++) {
        list[i % count] = (i % count) << 32;
        assert_int_equal(index_add(&index, hash_word(HASH_START, list[i % count]), same_number,
                                   list, &list[i % count], i, &failed),
                         i % count);
    }
    assert_false(failed);
    free(list);
    index_clear(&index);
}

static void no_text_is_not_an_empty_one(void **state) {
    (void)state;
    assert_true(hash_text(HASH_START, NULL) != hash_text(HASH_START, ""));
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(equal_things_have_one_number),
        cmocka_unit_test(equal_hashes_are_not_equal_things),
        cmocka_unit_test(many_are_found_again),
        cmocka_unit_test(no_text_is_not_an_empty_one),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
