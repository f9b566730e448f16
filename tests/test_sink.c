/* SPDX-License-Identifier: MIT */
/* A PDF of which any write fails is not said to be written. */
#include "report/draw/pdf.h"
#include "report/draw/tag.h"

#include "cmocka_all.h"

#include <errno.h>
#include <stdio.h>

/* The linker sends the program's own calls here (see tests/unit.cmake). */
// NOLINTBEGIN(bugprone-reserved-identifier,cert-dcl37-c,cert-dcl51-cpp)
size_t __real_fwrite(const void *bytes, size_t size, size_t count, FILE *file);
size_t __wrap_fwrite(const void *bytes, size_t size, size_t count, FILE *file);

static size_t writes;  /* since the count began */
static size_t failing; /* the one that fails; 0: none */

size_t __wrap_fwrite(const void *bytes, size_t size, size_t count, FILE *file) {
    writes++;
    if (writes == failing) {
        errno = ENOSPC;
        return 0;
    }
    return __real_fwrite(bytes, size, count, file);
}
// NOLINTEND(bugprone-reserved-identifier,cert-dcl37-c,cert-dcl51-cpp)

static const struct pdf_facts facts = {.title = "Sink", .year = 2026, .month = 3, .day = 2};

static bool draw(const char *path) {
    struct pdf pdf;
    bool done = pdf_open(&pdf, path, &facts);
    for (int page = 0; page < 3; page++) {
        tag_begin(pdf.cr, "Figure");
        cairo_rectangle(pdf.cr, 72, 72, 100, 100);
        cairo_fill(pdf.cr);
        tag_end(pdf.cr, "Figure");
        pdf_page(&pdf);
    }
    return pdf_close(&pdf, NULL, NULL) && done;
}

static void test_each_write(void **state) {
    (void)state;
    writes = 0;
    failing = 0;
    assert_true(draw("sink.pdf"));
    const size_t last = writes;
    assert_true(last > 5);
    for (size_t i = 1; i <= last; i++) {
        writes = 0;
        failing = i;
        assert_false(draw("sink.pdf"));
    }
    failing = 0;
}

/* What is still in a buffer when the file is closed. */
static void test_full_disk(void **state) {
    (void)state;
    assert_false(draw("/dev/full"));
}

static void test_nowhere(void **state) {
    (void)state;
    assert_true(draw(NULL));
    assert_false(draw("no-such-folder/sink.pdf"));
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_each_write),
        cmocka_unit_test(test_full_disk),
        cmocka_unit_test(test_nowhere),
    };

    return cmocka_run_group_tests(tests, NULL, NULL);
}
