/* SPDX-License-Identifier: MIT */
/* Files as lines: line ends, marks, bytes that no text has, files that are none. */
#include "read/file/source.h"

#include "cmocka_all.h"
#include "file_bench.h"

#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#define PATH "source.txt"

/* Lines with a `|` behind each, a bad one as `!`; then the problems. */
struct source_case {
    const char *name, *bytes;
    size_t size;
    const char *expected;
};

static const struct source_case cases[] = {
    {"nothing", BYTES(""), ""},
    {"a line feed alone", BYTES("\n"), "|"},
    {"one line", BYTES("a"), "a|"},
    {"ended", BYTES("a\n"), "a|"},
    {"two", BYTES("a\nb"), "a|b|"},
    {"CR LF", BYTES("a\r\nb\r\n"), "a|b|"},
    {"CR", BYTES("a\rb\r"), "a|b|"},
    {"all three", BYTES("a\nb\r\nc\rd"), "a|b|c|d|"},
    {"LF CR are two", BYTES("a\n\rb"), "a||b|"},
    {"CR CR LF are two", BYTES("a\r\r\nb"), "a||b|"},
    {"CR at the end", BYTES("a\r"), "a|"},
    {"empty lines count", BYTES("\n\na\n\n"), "||a||"},
    {"blanks stay", BYTES(" a \t\n"), " a \t|"},
    /* a mark of the byte order, RFC 3629, 6: at the start alone */
    {"a mark",
     BYTES("\xEF\xBB\xBF"
           "a\nb"),
     "a|b|"},
    {"a mark alone", BYTES("\xEF\xBB\xBF"), ""},
    {"a mark in the middle",
     BYTES("a\n\xEF\xBB\xBF"
           "b"),
     "a|\xEF\xBB\xBF"
     "b|"},
    {"half a mark", BYTES("\xEF\xBB"), "!| not-utf-8@1:1+1"},
    {"letters", BYTES("caf\xC3\xA9\n\xE2\x82\xAC\n\xF0\x9F\x9A\xAA"),
     "caf\xC3\xA9|\xE2\x82\xAC|\xF0\x9F\x9A\xAA|"},
    /* RFC 3629, 3 and 10: neither overlong nor surrogate nor over U+10FFFF */
    {"latin 1", BYTES("a\ncaf\xE9\nb"), "a|!|b| not-utf-8@2:4+1"},
    {"overlong", BYTES("\xC0\xAF"), "!| not-utf-8@1:1+1"},
    {"a surrogate", BYTES("x\xED\xA0\x80"), "!| not-utf-8@1:2+1"},
    {"too far", BYTES("xy\xF4\x90\x80\x80"), "!| not-utf-8@1:3+1"},
    {"the last letter is cut", BYTES("ab\xE2\x82"), "!| not-utf-8@1:3+1"},
    {"a letter over a line end", BYTES("\xC3\n\xA9"), "!|!| not-utf-8@1:1+1,2"},
    {"a NUL", BYTES("a\0b\nc"), "!|c| nul-byte@1"},
    {"two NULs", BYTES("a\0b\nc\n\0"), "!|c|!| nul-byte@1,3"},
    {"a NUL goes before other bytes", BYTES("\xFF x\0"), "!| nul-byte@1"},
    {"a control character", BYTES("ab\x1B[1m"), "!| control-byte@1:3+1"},
    {"DEL", BYTES("\x7F"), "!| control-byte@1:1+1"},
    {"a form feed", BYTES("a\fb"), "!| control-byte@1:2+1"},
    {"a tab is none", BYTES("\t"), "\t|"},
    {"U+FFFE", BYTES("a\xEF\xBF\xBE"), "!| control-byte@1:2+1"},
    {"U+FFFF", BYTES("\xEF\xBF\xBF"), "!| control-byte@1:1+1"},
    {"U+FFFD is a letter", BYTES("\xEF\xBF\xBD"), "\xEF\xBF\xBD|"},
    /* two bytes a letter */
    {"UTF-16, low first",
     BYTES("\xFF\xFE"
           "a\0"),
     " utf-16@0"},
    {"UTF-16, high first", BYTES("\xFE\xFF\0a"), " utf-16@0"},
    {"UTF-16 without a mark", BYTES("a\0b\0"), " utf-16@0"},
    {"the other way", BYTES("\0a\0b"), " utf-16@0"},
    {"a NUL beside one letter", BYTES("a\0bc"), "!| nul-byte@1"},
    /* what spreadsheets save */
    {"a workbook", BYTES("PK\3\4 and more"), " workbook-file@0"},
    {"an old workbook", BYTES("\xD0\xCF\x11\xE0 and more"), " workbook-file@0"},
    {"only the letters of one", BYTES("PK\n"), "PK|"},
};

static void dump_source(struct dump *dump, const struct source *source,
                        const struct problems *problems) {
    for (size_t i = 0; i < source->count; i++) {
        dump_add(dump, "%s|", source->bad[i] ? "!" : source->lines[i]);
    }
    dump_problems(dump, problems);
}

static void test_bytes(void **state) {
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(cases); i++) {
        struct dump dump = {.used = 0};
        struct problems problems;
        struct source source;
        problems_init(&problems);
        file_bench_write(PATH, cases[i].bytes, cases[i].size);
        assert_true(source_read(&source, PATH, (struct place){0}, &problems));
        dump_source(&dump, &source, &problems);
        wrong = dump_compare(&dump, cases[i].expected, cases[i].name, wrong);
        problems_clear(&problems);
    }
    assert_int_equal(wrong, 0);
}

/* --- files that are none --- */

static void expect_problem(const char *path, struct place asked, const char *id, const char *text) {
    struct problems problems;
    struct source source;
    problems_init(&problems);
    const uint16_t asking = problems_file(&problems, "job.ini");
    asked.file = asked.line == 0 ? 0 : asking;
    assert_true(source_read(&source, path, asked, &problems));
    assert_false(source.open);
    assert_int_equal(source.count, 0);
    assert_int_equal(problems.count, 1);
    assert_string_equal(problems.list[0].id, id);
    assert_string_equal(problems.list[0].text, text);
    assert_int_equal(problems.list[0].severity, SEVERITY_ERROR);
    /* at the line that names the file; else at the file itself */
    assert_int_equal(problems.list[0].place.file, asked.line == 0 ? source.file : asking);
    assert_int_equal(problems.list[0].place.line, asked.line);
    problems_clear(&problems);
}

static void test_no_files(void **state) {
    (void)state;
    const struct place line = {.line = 7, .column = 3, .width = 4};
    expect_problem("no-such.txt", (struct place){0}, "file-missing",
                   "'no-such.txt' does not exist; check the name and the folder");
    expect_problem("no-such.txt", line, "file-missing",
                   "'no-such.txt' does not exist; check the name, which is looked for from the "
                   "folder of this file");
    expect_problem("no-such-folder/a.txt", (struct place){0}, "file-missing",
                   "'no-such-folder/a.txt' does not exist; check the name and the folder");
    file_bench_write(PATH, BYTES("a"));
    expect_problem(PATH "/a.txt", (struct place){0}, "file-missing",
                   "'" PATH "/a.txt' does not exist; check the name and the folder");
    expect_problem(".", line, "file-is-folder", "'.' is a folder; expected a file");
    (void)unlink("source.fifo");
    assert_int_equal(mkfifo("source.fifo", 0600), 0);
    expect_problem("source.fifo", (struct place){0}, "file-unreadable",
                   "'source.fifo' is no plain file; save it as one");
    (void)unlink("source.fifo");
    expect_problem("/dev/null", (struct place){0}, "file-unreadable",
                   "'/dev/null' is no plain file; save it as one");
}

/* 64 MB are read, one byte more is not. The file has a hole and takes no room. */
static void test_largest(void **state) {
    const off_t largest = (off_t)64 * 1024 * 1024;
    (void)state;
    file_bench_write(PATH, BYTES("a"));
    assert_int_equal(truncate(PATH, largest + 1), 0);
    expect_problem(PATH, (struct place){0}, "file-too-large",
                   "'" PATH "' is over 64 MB; expected a text file that a person wrote");
    struct problems problems;
    struct source source;
    assert_int_equal(truncate(PATH, largest), 0);
    problems_init(&problems);
    assert_true(source_read(&source, PATH, (struct place){0}, &problems));
    assert_true(source.open);
    assert_string_equal(problems.list[0].id, "nul-byte");
    problems_clear(&problems);
    (void)unlink(PATH);
}

/* A file of another name is a file of its own. */
static void test_numbers(void **state) {
    (void)state;
    struct problems problems;
    struct source first;
    struct source second;
    problems_init(&problems);
    file_bench_write(PATH, BYTES("one\ntwo\n"));
    assert_true(source_read(&first, PATH, (struct place){0}, &problems));
    assert_true(source_read(&second, "./" PATH, (struct place){0}, &problems));
    assert_int_equal(first.file, 1);
    assert_int_equal(second.file, 2);
    assert_string_equal(problems_file_name(&problems, 2), "./" PATH);
    assert_string_equal(problems_line(&problems, (struct place){.file = 1, .line = 2}), "two");
    assert_null(problems_line(&problems, (struct place){.file = 1, .line = 3}));
    problems_clear(&problems);
}

static void test_beside(void **state) {
    static const struct {
        const char *path, *name, *beside;
    } rows[] = {
        {"jobs/job.ini", "rates.ini", "jobs/rates.ini"},
        {"jobs/job.ini", "../rates.ini", "jobs/../rates.ini"},
        {"jobs/job.ini", "/etc/rates.ini", "/etc/rates.ini"},
        {"job.ini", "rates.ini", "rates.ini"},
        {"/job.ini", "rates.ini", "/rates.ini"},
        {"a/b/c.ini", "d/e.ini", "a/b/d/e.ini"},
        {"./job.ini", "rates.ini", "./rates.ini"},
    };
    (void)state;
    for (size_t i = 0; i < COUNT(rows); i++) {
        struct pool pool;
        pool_init(&pool);
        assert_string_equal(source_beside(&pool, rows[i].path, rows[i].name), rows[i].beside);
        pool_clear(&pool);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_bytes),   cmocka_unit_test(test_no_files),
        cmocka_unit_test(test_largest), cmocka_unit_test(test_numbers),
        cmocka_unit_test(test_beside),
    };

    return cmocka_run_group_tests(tests, NULL, NULL);
}
