/* SPDX-License-Identifier: MIT */
#include "report/xlsx/book_texts.h"

#include "cmocka_all.h"

#include <string.h>

/* Words that stand in many cells are kept once. */
static void equal_words_are_one(void **state) {
    static const char *const words[] = {"poplar", "D1", "poplar", "", "_x0041_", "", "_x0041_"};
    static const uint32_t numbers[] = {0, 1, 0, 2, 3, 2, 3};
    struct book_texts *const texts = book_texts_new();
    bool failed = false;
    (void)state;
    assert_non_null(texts);
    for (size_t i = 0; i < COUNT(words); i++) {
        assert_int_equal(book_texts_add(texts, words[i], &failed), numbers[i]);
    }
    assert_false(failed);
    assert_string_equal(book_texts_at(texts, 0), "poplar");
    assert_string_equal(book_texts_at(texts, 2), "");
    assert_string_equal(book_texts_at(texts, 3), "_x005F_x0041_"); /* no program reads an A */
    book_texts_free(texts);
}

/* The caller's text may go. */
static void words_are_copied(void **state) {
    struct book_texts *const texts = book_texts_new();
    char words[] = "maple";
    bool failed = false;
    (void)state;
    assert_non_null(texts);
    const uint32_t number = book_texts_add(texts, words, &failed);
    memset(words, 'x', strlen(words));
    assert_string_equal(book_texts_at(texts, number), "maple");
    assert_int_not_equal(book_texts_add(texts, words, &failed), number);
    assert_false(failed);
    book_texts_free(texts);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(equal_words_are_one),
        cmocka_unit_test(words_are_copied),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
