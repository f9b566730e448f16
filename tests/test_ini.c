/* SPDX-License-Identifier: MIT */
/* INI files as sections and keys, each with its place; every line that is neither.  The library
 * that reads the values has rules of its own: what of them may not come through is here too. */
#include "draw.h"
#include "read/file/ini.h"

#include "cmocka_all.h"
#include "file_bench.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define PATH "ini.ini"

/* What is read: `[kind|name]` and `key=value` in square order with a blank between, then problems.
 * `~` behind a value: a comment right behind it ended it; `!`: the value was reported. */
struct ini_case {
    const char *name, *bytes;
    size_t size;
    const char *expected;
};

static const struct ini_case cases[] = {
    {"nothing", BYTES(""), ""},
    {"blank lines", BYTES("\n \n\t\n"), ""},
    {"comments", BYTES("; a\n# b\n  ; c\n\t# d\n"), ""},
    {"a section", BYTES("[shop]"), "[shop|]"},
    {"with a name", BYTES("[lumber poplar]"), "[lumber|poplar]"},
    {"blanks in it", BYTES("  [  lumber \t hard   maple ]  ; best\n"), "[lumber|hard maple]"},
    {"case stays", BYTES("[Lumber POPLAR]\nPrice = X\n"), "[Lumber|POPLAR] Price=X"},
    {"other letters", BYTES("[lumber \xC3\xA9rable]\nkey = \xC3\xA9\n"),
     "[lumber|\xC3\xA9rable] key=\xC3\xA9"},
    {"keys", BYTES("[a]\nb=1\nc =2\nd= 3\n\te\t=\t4\t\n"), "[a|] b=1 c=2 d=3 e=4"},
    {"blanks in a key", BYTES("[a]\nlabor   rate = 1\n"), "[a|] labor rate=1"},
    {"a value with an equals sign", BYTES("[a]\nb = c = d\n"), "[a|] b=c = d"},
    {"with a colon", BYTES("[a]\nb = 40 in: 2, 60 in: 3\n"), "[a|] b=40 in: 2, 60 in: 3"},
    {"with brackets", BYTES("[a]\nb = [c]\n"), "[a|] b=[c]"},
    {"with a percent", BYTES("[a]\nb = 12 % of cost\n"), "[a|] b=12 % of cost"},
    {"with marks of inches", BYTES("[a]\nb = 23 7/16\"\n"), "[a|] b=23 7/16\""},
    {"with both marks", BYTES("[a]\nb = 1' 11 7/16\"\n"), "[a|] b=1' 11 7/16\""},
    {"with a backslash", BYTES("[a]\nb = c\\d\n"), "[a|] b=c\\d"},
    {"with a dollar and a brace", BYTES("[a]\nb = ${c}\n"), "[a|] b=${c}"},
    {"no value", BYTES("[a]\nb =\nc = 1\n"), "[a|] c=1"},
    {"blanks for a value", BYTES("[a]\nb = \t \nc = 1\n"), "[a|] c=1"},
    {"a comment for a value", BYTES("[a]\nb = ; none\nc = 1\n"), "[a|] c=1"},
    {"empty quotes", BYTES("[a]\nb = \"\"\nc = ''\nd = \" \"\n"), "[a|]"},
    /* comments behind values */
    {"a comment behind", BYTES("[a]\nb = 1 ; one\n"), "[a|] b=1"},
    {"right behind", BYTES("[a]\nb = x;y\n"), "[a|] b=x~"},
    {"with a hash in it", BYTES("[a]\nb = 1 ; no # here\n"), "[a|] b=1"},
    {"behind a section", BYTES("[a]; x\nb = 1\n[c] # y\n"), "[a|] b=1 [c|]"},
    /* quotes */
    {"double", BYTES("[a]\nb = \"c; d # e\"\n"), "[a|] b=c; d # e"},
    {"single", BYTES("[a]\nb = 'c; d # e'\n"), "[a|] b=c; d # e"},
    {"single within double", BYTES("[a]\nb = \"it's\"\n"), "[a|] b=it's"},
    {"double within single", BYTES("[a]\nb = '3/4\" ply'\n"), "[a|] b=3/4\" ply"},
    {"blanks within", BYTES("[a]\nb = \"  c  \"\n"), "[a|] b=c"},
    {"a comment behind quotes", BYTES("[a]\nb = \"c\";d\nd = 'e' # f\n"), "[a|] b=c d=e"},
    {"a backslash within", BYTES("[a]\nb = \"c\\\"\nd = 1\n"), "[a|] b=c\\ d=1"},
    {"no-break spaces",
     BYTES("[a]\n\xC2\xA0"
           "b\xC2\xA0=\xE2\x80\xAF"
           "c d\xC2\xA0\n"),
     "[a|] b=c d"},
    {"a quote later on", BYTES("[a]\nb = c \"d\"\n"), "[a|] b=c \"d\""},
    {"a mark of inches and a comment", BYTES("[a]\nb = 5\" ; wide\n"), "[a|] b=5\""},
    {"not closed", BYTES("[a]\nb = \"c\nd = 1\n"), "[a|] b=! d=1 open-quote@2:5+2"},
    {"not closed, single", BYTES("[a]\nb = 'it\n"), "[a|] b=! open-quote@2:5+3"},
    {"text behind", BYTES("[a]\nb = \"c\" d\n"), "[a|] b=! text-after-quote@2:9+1"},
    /* the library's rules */
    {"a hash ends no value", BYTES("[a]\nb = door #3\n"), "[a|] b=! number-sign@2:10+1"},
    {"a backslash at the end joins lines", BYTES("[a]\nb = c\\\nd = 1\n"),
     "[a|] b=! d=1 joined-line@2:6+1"},
    {"and before a comment", BYTES("[a]\nb = c\\ ; e\n"), "[a|] b=! joined-line@2:6+1"},
    {"a hash before equals", BYTES("[a]\nb#c = 1\n"), "[a|] bad-key@2:1+3"},
    {"a colon in a key", BYTES("[a]\nb:c = 1\n"), "[a|] bad-key@2:1+3"},
    {"a bracket in a key", BYTES("[a]\nb] = 1\n"), "[a|] bad-key@2:1+2"},
    {"a quote in a key", BYTES("[a]\nb' = 1\n"), "[a|] bad-key@2:1+2"},
    {"a colon in a section", BYTES("[a:b]\nc = 1\n"), " bad-section@1:2+3"},
    {"a quote in a section", BYTES("[\"a\"]\nc = 1\n"), " bad-section@1:2+3"},
    {"a hash in a section", BYTES("[a #1]\nc = 1\n"), " bad-section@1:2+4"},
    {"a bracket in a section", BYTES("[a [b]\nc = 1\n"), " bad-section@1:2+4"},
    /* lines that are neither */
    {"words", BYTES("[a]\nwords\nb = 1\n"), "[a|] b=1 not-a-line@2:1+5"},
    {"words twice", BYTES("[a]\nwords\nwords\n"), "[a|] not-a-line@2:1+5,3"},
    {"no key", BYTES("[a]\n = 1\n"), "[a|] not-a-line@2:2+3"},
    {"a comment before equals", BYTES("[a]\nb ; c = 1\n"), "[a|] not-a-line@2:1+9"},
    {"words before all", BYTES("words\nmore words\nid,width\n"), " not-a-line@1:1+5"},
    {"words, then a section", BYTES("words\n[a]\nmore\n"),
     "[a|] not-a-line@1:1+5 not-a-line@3:1+4"},
    {"a key before all", BYTES("b = 1\n[a]\nc = 2\n"), "[a|] c=2 key-outside@1:1+1"},
    {"no end", BYTES("[a\nb = 1\n"), "[a|] b=1 bad-section@1:1+2"},
    {"no end, with a comment", BYTES("[a b ; c\nb = 1\n"), "[a|b] b=1 bad-section@1:1+8"},
    {"no name", BYTES("[]\nb = 1\n"), " bad-section@1:2+0"},
    {"blanks for a name", BYTES("[ \t ]\nb = 1\n"), " bad-section@1:5+0"},
    {"text behind a section", BYTES("[a] b = 1\nc = 2\n"), "[a|] c=2 text-after-section@1:5+5"},
    /* twice */
    {"a section twice", BYTES("[a b]\nc = 1\n[A  B]\nd = 2\n[e]\nf = 3\n"),
     "[a|b] c=1 [e|] f=3 duplicate-section@3:2+4"},
    {"with another name", BYTES("[a b]\n[a c]\n[a]\n"), "[a|b] [a|c] [a|]"},
    {"a key twice", BYTES("[a]\nb = 1\nB = 2\n"), "[a|] b=1 duplicate-key@3:1+1"},
    {"twice, the first without a value", BYTES("[a]\nb =\nb = 2\n"), "[a|] duplicate-key@3:1+1"},
    {"in two sections", BYTES("[a]\nb = 1\n[c]\nb = 2\n"), "[a|] b=1 [c|] b=2"},
    /* bytes */
    {"CR LF", BYTES("[a]\r\nb = 1\r\n"), "[a|] b=1"},
    {"CR", BYTES("[a]\rb = 1\r"), "[a|] b=1"},
    {"a mark", BYTES("\xEF\xBB\xBF[a]\nb = 1"), "[a|] b=1"},
    {"a NUL", BYTES("[a]\nb = 1\0\nc = 2\n"), "[a|] c=2 nul-byte@2"},
    {"latin 1", BYTES("[a]\nb = \xE9\nc = 2\n"), "[a|] c=2 not-utf-8@2:5+1"},
};

static void dump_ini(struct dump *dump, const struct ini *ini, const struct problems *problems) {
    for (size_t s = 0; s < ini->count; s++) {
        const struct ini_section *const section = &ini->sections[s];
        dump_add(dump, "%s[%s|%s]", s == 0 ? "" : " ", section->kind, section->name);
        for (size_t k = 0; k < section->count; k++) {
            dump_add(dump, " %s=%s%s", section->keys[k].name,
                     section->keys[k].value == NULL ? "!" : section->keys[k].value,
                     section->keys[k].cut ? "~" : "");
        }
    }
    dump_problems(dump, problems);
}

static void test_files(void **state) {
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(cases); i++) {
        struct dump dump = {.used = 0};
        struct problems problems;
        struct ini ini;
        problems_init(&problems);
        file_bench_write(PATH, cases[i].bytes, cases[i].size);
        assert_true(ini_read(&ini, PATH, (struct place){0}, &problems));
        assert_true(ini.open);
        dump_ini(&dump, &ini, &problems);
        wrong = dump_compare(&dump, cases[i].expected, cases[i].name, wrong);
        problems_clear(&problems);
    }
    assert_int_equal(wrong, 0);
}

/* --- places --- */

static void expect_place(struct place place, unsigned line, unsigned column, unsigned width) {
    assert_int_equal(place.line, line);
    assert_int_equal(place.column, column);
    assert_int_equal(place.width, width);
}

static void test_places(void **state) {
    (void)state;
    struct problems problems;
    struct ini ini;
    problems_init(&problems);
    file_bench_write(PATH, BYTES("; head\n\n  [ lumber  poplar ]\n\tprice =  4.10 per bf  ; x\n"
                                 "note = \" in quotes \"\nother='x'\n"));
    assert_true(ini_read(&ini, PATH, (struct place){0}, &problems));
    assert_int_equal(problems.count, 0);
    const struct ini_section *const section = &ini.sections[0];
    expect_place(section->place, 3, 5, 14);
    expect_place(section->keys[0].place, 4, 2, 5);
    expect_place(section->keys[0].value_place, 4, 11, 11);
    expect_place(section->keys[1].value_place, 5, 9, 9); /* within the quotes */
    expect_place(section->keys[2].place, 6, 1, 5);
    expect_place(section->keys[2].value_place, 6, 8, 1);
    assert_int_equal(section->place.file, ini.file);
    problems_clear(&problems);
}

/* --- limits, at them and one over --- */

static void check_made(const char *bytes, const char *expected) {
    struct dump dump = {.used = 0};
    struct problems problems;
    struct ini ini;
    problems_init(&problems);
    file_bench_write(PATH, bytes, strlen(bytes));
    assert_true(ini_read(&ini, PATH, (struct place){0}, &problems));
    dump_ini(&dump, &ini, &problems);
    assert_int_equal(dump_compare(&dump, expected, "made", 0), 0);
    problems_clear(&problems);
}

static void test_longest_line(void **state) {
    (void)state;
    for (int over = 0; over < 2; over++) {
        char line[1024];
        char bytes[1100];
        char expected[1100];
        memset(line, 'x', sizeof line);
        line[1000 - 4 + over] = '\0'; /* behind `b = ` */
        (void)snprintf(bytes, sizeof bytes, "[a]\nb = %s\nc = 1\n", line);
        (void)snprintf(expected, sizeof expected,
                       over ? "[a|] c=1 line-too-long@2" : "[a|] b=%s c=1", line);
        check_made(bytes, expected);
    }
}

static void test_longest_names(void **state) {
    (void)state;
    for (int over = 0; over < 2; over++) {
        char name[96];
        char bytes[400];
        char expected[400];
        memset(name, 'n', sizeof name);
        name[80 + over] = '\0';
        (void)snprintf(bytes, sizeof bytes, "[a]\n%s = 1\n", name);
        (void)snprintf(expected, sizeof expected, over ? "[a|] bad-key@2:1+81" : "[a|] %s=1", name);
        check_made(bytes, expected);
        (void)snprintf(bytes, sizeof bytes, "[k %s]\nb = 1\n", name + 2);
        (void)snprintf(expected, sizeof expected, over ? " bad-section@1:2+81" : "[k|%s] b=1",
                       name + 2);
        check_made(bytes, expected);
    }
}

/* 20,000 lines are read, one more is not. */
static void test_most_lines(void **state) {
    (void)state;
    static char bytes[20001 * 2 + 64];
    for (size_t lines = 20000; lines <= 20001; lines++) {
        size_t used = (size_t)snprintf(bytes, sizeof bytes, "[a]\n");
        for (size_t i = 0; i < lines - 2; i++) {
            bytes[used++] = ';';
            bytes[used++] = '\n';
        }
        (void)snprintf(bytes + used, sizeof bytes - used, "b = 1\n");
        check_made(bytes, lines == 20000 ? "[a|] b=1" : " file-too-large@0");
    }
}

/* More sections and keys than any array begins with. */
static void test_many(void **state) {
    (void)state;
    enum { SECTIONS = 60, KEYS = 40 };
    static char bytes[SECTIONS * KEYS * 24];
    struct problems problems;
    struct ini ini;
    size_t used = 0;
    for (int s = 0; s < SECTIONS; s++) {
        used += (size_t)snprintf(bytes + used, sizeof bytes - used, "[k n%d]\n", s);
        for (int k = 0; k < KEYS; k++) {
            used +=
                (size_t)snprintf(bytes + used, sizeof bytes - used, "key %d = %d-%d\n", k, s, k);
        }
    }
    problems_init(&problems);
    file_bench_write(PATH, bytes, used);
    assert_true(ini_read(&ini, PATH, (struct place){0}, &problems));
    assert_int_equal(problems.count, 0);
    assert_int_equal(ini.count, SECTIONS);
    for (int s = 0; s < SECTIONS; s++) {
        assert_int_equal(ini.sections[s].count, KEYS);
        for (int k = 0; k < KEYS; k++) {
            char value[16];
            (void)snprintf(value, sizeof value, "%d-%d", s, k);
            assert_string_equal(ini.sections[s].keys[k].value, value);
        }
    }
    problems_clear(&problems);
}

/* --- lines made at random --- */

static uint32_t seed;

/* A value that stands in quotes comes through as it is, whatever is in it but that quote. */
static void test_random_values(void **state) {
    (void)state;
    static const char *const pieces[] = {";",  "#",   "=",    "[x]",      "\\",   "'",  " ",  "%s",
                                         "a",  "b c", "\\\\", "\xC3\xA9", "${a}", "%%", "\t", ":",
                                         "//", "...", "<>",   "\\n",      "0",    "-",  ",",  "@"};
    for (seed = 1; seed < 4000; seed += 3) {
        char value[160] = "x"; /* blanks at an end are not kept */
        char bytes[256];
        char expected[256];
        const uint32_t start = seed;
        draw_pieces(&seed, value, sizeof value, 8, pieces, COUNT(pieces));
        (void)strncat(value, "y", sizeof value - strlen(value) - 1);
        (void)snprintf(bytes, sizeof bytes, "[a]\nb = \"%s\"\nc = 1\n", value);
        (void)snprintf(expected, sizeof expected, "[a|] b=%s c=1", value);
        check_made(bytes, expected);
        seed = start;
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_files),         cmocka_unit_test(test_places),
        cmocka_unit_test(test_longest_line),  cmocka_unit_test(test_longest_names),
        cmocka_unit_test(test_most_lines),    cmocka_unit_test(test_many),
        cmocka_unit_test(test_random_values),
    };

    return cmocka_run_group_tests(tests, NULL, NULL);
}
