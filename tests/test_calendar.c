/* SPDX-License-Identifier: MIT */
/* Lines of a calendar against RFC 5545: 3.1 (folding), 3.3.4 (days), 3.3.11 (texts). */
#include "report/calendar/calendar_file.h"

#include "cmocka_all.h"

#include <string.h>

/* What was written to file, which is closed. */
static const char *written(FILE *file, char *text, size_t room) {
    rewind(file);
    const size_t size = fread(text, 1, room - 1, file);
    assert_true(size < room - 1);
    text[size] = '\0';
    assert_int_equal(fclose(file), 0);
    return text;
}

/* The example of 3.3.11, and what is no letter. */
static void test_escapes(void **state) {
    char text[400];
    FILE *const file = tmpfile();
    (void)state;
    assert_non_null(file);
    calendar_text(file, "DESCRIPTION",
                  "Project XYZ Final Review\nConference Room - 3B\n"
                  "Come Prepared.");
    calendar_text(file, "SUMMARY", "a;b,c\\d\te\x01\x7f");
    calendar_line(file, "VERSION", "2.0");
    assert_string_equal(
        written(file, text, sizeof text),
        "DESCRIPTION:Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.\r\n"
        "SUMMARY:a\\;b\\,c\\\\d e??\r\n"
        "VERSION:2.0\r\n");
}

static void test_days(void **state) {
    char text[100];
    FILE *const file = tmpfile();
    (void)state;
    assert_non_null(file);
    calendar_day(file, "DTSTART", date_number((struct date){1997, 7, 14}));
    assert_string_equal(written(file, text, sizeof text), "DTSTART;VALUE=DATE:19970714\r\n");
}

/* Letters of 1 to 4 bytes, from each place in a line on: no line is longer than 75 bytes, none
 * begins or ends within a letter, and unfolded they are the text. */
static void test_folding(void **state) {
    static const char *const letters[] = {"e", "\u00e9", "\u6a71", "\U0001f6aa", ","};
    (void)state;
    for (size_t l = 0; l < sizeof letters / sizeof *letters; l++) {
        for (int ahead = 0; ahead < 80; ahead++) {
            char text[1000] = "";
            char wanted[1100];
            char lines[1400];
            char unfolded[1400];
            size_t size = 0;
            size_t bytes = 0;
            FILE *const file = tmpfile();
            memset(text, 'a', (size_t)ahead);
            for (int i = 0; i < 120; i++) {
                (void)strncat(text, letters[l], sizeof text - strlen(text) - 1);
            }
            assert_non_null(file);
            calendar_text(file, "SUMMARY", text);
            (void)written(file, lines, sizeof lines);
            for (const char *c = lines; *c != '\0'; c++) {
                if (strncmp(c, "\r\n ", 3) == 0) {
                    assert_true(bytes <= 75);
                    assert_true(((unsigned char)c[3] & 0xc0) != 0x80);
                    assert_true(c[-1] != '\\');
                    bytes = 1;
                    c += 2;
                } else {
                    bytes += *c != '\r' && *c != '\n';
                    unfolded[size++] = *c;
                }
            }
            assert_true(bytes <= 75);
            unfolded[size] = '\0';
            (void)snprintf(wanted, sizeof wanted, "SUMMARY:%s\r\n", text);
            if (letters[l][0] != ',') {
                assert_string_equal(unfolded, wanted);
            }
        }
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_escapes), cmocka_unit_test(test_days),
                                       cmocka_unit_test(test_folding)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
