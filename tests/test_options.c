/* SPDX-License-Identifier: MIT */
/* The command line: every option with every command, what is refused and in which words, numbers
 * at their limits, names of files, questions at a terminal. */
#include "command/ask.h"
#include "command/command.h"
#include "command/files.h"
#include "command/work.h"

#include "cmocka_all.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

/* --- calls --- */

#define MOST_WORDS 80

/* Reads a line of words parted by blanks, `_` for a blank within one; what was said goes to said,
 * of `size` bytes. argv is of this call alone. */
static bool read_call(const char *line, struct request *request, char *said, size_t size) {
    static char program[] = "doorcost";
    static char copy[2000];
    static char *argv[MOST_WORDS + 2];
    int argc = 1;
    FILE *const err = fmemopen(said, size, "w");
    assert_non_null(err);
    (void)snprintf(copy, sizeof copy, "%s", line);
    argv[0] = program;
    char *rest = copy;
    for (char *word = strsep(&rest, " "); word != NULL; word = strsep(&rest, " ")) {
        assert_true(argc <= MOST_WORDS);
        for (char *c = strchr(word, '_'); c != NULL; c = strchr(c, '_')) {
            *c = ' ';
        }
        argv[argc++] = word;
    }
    argv[argc] = NULL;
    const bool good = options_read(request, argc, argv, err);
    (void)fflush(err);
    assert_int_equal(fclose(err), 0);
    return good;
}

/* Whether an option is taken is what its bit says, and what refuses it names all that take it. */
static void test_every_option(void **state) {
    size_t count;
    size_t command_count;
    const struct option_row *const rows = option_rows(&count);
    const struct command *const commands = command_rows(&command_count);
    (void)state;
    assert_int_equal(command_count, COMMAND_COUNT);
    for (size_t c = 0; c < command_count; c++) {
        assert_ptr_equal(command_find(commands[c].name), &commands[c]);
        for (size_t i = 0; i < count; i++) {
            char line[200];
            char said[1000] = "";
            struct request request;
            const bool takes = (rows[i].commands & 1u << c) != 0;
            (void)snprintf(line, sizeof line, "%s job.ini --%s%s", commands[c].name, rows[i].name,
                           rows[i].argument == NULL ? "" : " 7");
            assert_int_equal(read_call(line, &request, said, sizeof said), takes);
            const char *const place = (const char *)&request + rows[i].offset;
            if (takes) {
                assert_string_equal(said, "");
                assert_ptr_equal(request.command, &commands[c]);
                assert_string_equal(request.job, "job.ini");
                const char *text = "7";
                if (rows[i].often) {
                    assert_int_equal(((const struct option_texts *)(const void *)place)->count, 1);
                    text = ((const struct option_texts *)(const void *)place)->texts[0];
                } else if (rows[i].argument != NULL) {
                    text = *(const char *const *)(const void *)place;
                } else {
                    assert_true(*(const bool *)place);
                }
                assert_string_equal(text, "7");
            } else {
                for (size_t k = 0; k < command_count; k++) {
                    char named[40];
                    const char *const of = strstr(said, "; it is for ");
                    assert_non_null(of);
                    (void)snprintf(named, sizeof named, " %s%s", commands[k].name, "");
                    const char *const at = strstr(of, named);
                    const bool whole = at != NULL && strchr(",\n", at[strlen(named)]) != NULL;
                    assert_int_equal(whole, (rows[i].commands & 1u << k) != 0);
                }
            }
        }
    }
}

struct call {
    const char *line, *said; /* said NULL: it is a call */
};

#define LIST_THEM "'doorcost help' lists them\n"

static const struct call calls[] = {
    {"quote job.ini", NULL},
    {"quote job.ini -o x.xlsx", NULL},
    {"quote job.ini -ox.xlsx", NULL},
    {"quote -o x.xlsx job.ini", NULL},
    {"quote --output=x.xlsx job.ini", NULL},
    {"quote job.ini --json --json", NULL},
    {"-h", NULL},
    {"help quote", NULL},
    {"quote --help", NULL},
    {"quote -- -o", NULL},
    {"days a.ini b.ini c.ini", NULL},
    {"range job.ini --set a=1 --set a=2", NULL},
    /* nothing is abbreviated */
    {"quote job.ini --jso", "doorcost: unknown option '--jso'; did you mean '--json'?\n"},
    {"quote job.ini --out x", "doorcost: unknown option '--out'; did you mean '--output'?\n"},
    {"quote job.ini --js", "doorcost: unknown option '--js'; did you mean '--json'?\n"},
    {"quote job.ini --jsno", "doorcost: unknown option '--jsno'; did you mean '--json'?\n"},
    {"quote job.ini --zzz", "doorcost: unknown option '--zzz'; " LIST_THEM},
    {"quote job.ini -z", "doorcost: unknown option '-z'; " LIST_THEM},
    {"quote job.ini -json", "doorcost: unknown option '-json'; did you mean '--json'?\n"},
    {"quote job.ini --", NULL},
    /* values */
    {"quote job.ini -o", "doorcost: option '-o' lacks its FILE\n"},
    {"quote job.ini --output", "doorcost: option '--output' lacks its FILE\n"},
    {"quote job.ini --output=", "doorcost: option '--output=' lacks its FILE\n"},
    {"quote job.ini -o=x.xlsx", "doorcost: '-o=x.xlsx' has a '='; write '-o x.xlsx'\n"},
    {"quote job.ini -o=", "doorcost: '-o=' has a '='; write '-o'\n"},
    {"quote job.ini --json=yes", "doorcost: option '--json' takes no value\n"},
    {"quote job.ini --option=a --option=b",
     "doorcost: option '--option' is given twice; only one of them could count\n"},
    {"quote job.ini -o a.pdf -o b.pdf",
     "doorcost: option '--output' is given twice; only one of them could count\n"},
    /* words */
    {"quot job.ini", "doorcost: unknown command 'quot'; did you mean 'quote'?\n"},
    {"zzzzzz job.ini", "doorcost: unknown command 'zzzzzz'; " LIST_THEM},
    {"hlep", "doorcost: unknown command 'hlep'; did you mean 'help'?\n"},
    {"job.ini", "doorcost: no command; name one before the job, as in: doorcost check job.ini\n"},
    {"quote a.ini b.ini", "doorcost: 'b.ini' is one word too many; expected one job file\n"},
};

static void test_calls(void **state) {
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(calls); i++) {
        char said[1000] = "";
        struct request request;
        const bool good = read_call(calls[i].line, &request, said, sizeof said);
        if (good != (calls[i].said == NULL) || (!good && strcmp(said, calls[i].said) != 0)) {
            print_error("%s\n  is       %s\n  expected %s\n", calls[i].line,
                        good ? "a call\n" : said, calls[i].said == NULL ? "a call" : calls[i].said);
            wrong++;
        }
    }
    assert_int_equal(wrong, 0);
}

/* As many changes as fit, and one more. */
static void test_often(void **state) {
    char line[2000] = "range job.ini";
    char said[1000] = "";
    struct request request;
    (void)state;
    /* words of one call hold no more than MOST_WORDS */
    for (int i = 0; i < MOST_OPTION_TEXTS; i++) {
        (void)snprintf(line + strlen(line), sizeof line - strlen(line), " --set=a=%d", i);
    }
    assert_true(read_call(line, &request, said, sizeof said));
    assert_int_equal(request.set.count, MOST_OPTION_TEXTS);
    assert_string_equal(request.set.texts[MOST_OPTION_TEXTS - 1], "a=63");
    (void)snprintf(line + strlen(line), sizeof line - strlen(line), " --set=b=1");
    assert_false(read_call(line, &request, said, sizeof said));
    assert_string_equal(said, "doorcost: option '--set' is given more than 64 times\n");
}

/* Words behind the job, of commands that take some. */
static void test_words(void **state) {
    char said[1000] = "";
    struct request request;
    (void)state;
    assert_true(
        read_call("days one.ini two.ini --json three_and_four.ini", &request, said, sizeof said));
    assert_string_equal(request.job, "one.ini");
    assert_int_equal(request.word_count, 2);
    assert_string_equal(request.words[0], "two.ini");
    assert_string_equal(request.words[1], "three and four.ini");
    assert_true(request.json && !request.help && request.output == NULL);
    assert_false(read_call("", &request, said, sizeof said)); /* a word of no letters */
}

/* --- numbers --- */

static void test_whole(void **state) {
    static const struct {
        const char *text;
        int64_t low, high;
        bool good;
        int64_t value;
    } rows[] = {
        {NULL, 1, 9, true, -1},
        {"1", 1, 9, true, 1},
        {"9", 1, 9, true, 9},
        {"0", 1, 9, false, -1},
        {"10", 1, 9, false, -1},
        {"5.0", 1, 9, false, -1},
        {"5.", 1, 9, false, -1},
        {"", 1, 9, false, -1},
        {"five", 1, 9, false, -1},
        {"-3", -5, 5, true, -3},
        {"-6", -5, 5, false, -1},
        {"+3", 1, 9, true, 3},
        {"007", 1, 9, true, 7},
        {" 7", 1, 9, false, -1},
        {"7 ", 1, 9, false, -1},
        {"999999999999", 0, INT64_C(999999999999), true, INT64_C(999999999999)},
        {"1000000000000", 0, INT64_C(999999999999), false, -1},
        {"99999999999999999999", 0, 9, false, -1},
    };
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(rows); i++) {
        char said[200] = "";
        int64_t value = -1;
        FILE *const err = fmemopen(said, sizeof said, "w");
        assert_non_null(err);
        const bool good =
            option_whole(rows[i].text, "draws", rows[i].low, rows[i].high, &value, err);
        assert_int_equal(fclose(err), 0);
        char wanted[200] = "";
        if (!rows[i].good) {
            (void)snprintf(wanted, sizeof wanted,
                           "doorcost: --draws takes a whole number from %lld to %lld\n",
                           (long long)rows[i].low, (long long)rows[i].high);
        }
        if (good != rows[i].good || value != rows[i].value || strcmp(said, wanted) != 0) {
            print_error("'%s': %d, %lld, %s\n", rows[i].text, good, (long long)value, said);
            wrong++;
        }
    }
    assert_int_equal(wrong, 0);
}

static void test_percent(void **state) {
    static const struct {
        const char *text;
        int64_t percent;
        uint8_t decimals;
        bool good;
    } rows[] = {
        {"10%", 10, 0, true},
        {"10 %", 10, 0, true},
        {"2.5 %", 25, 1, true},
        {"10", 10, 0, true},
        {"100%", 100, 0, true},
        {"100.0000", 1000000, 4, true},
        {"100.0001", 0, 0, false},
        {"101 %", 0, 0, false},
        {"0", 0, 0, false},
        {"0.0001", 1, 4, true},
        {"0.00001", 0, 0, false},
        {"-5 %", 0, 0, false},
        {"%", 0, 0, false},
        {"", 0, 0, false},
        {"10 % ", 0, 0, false},
        {"10 % of it", 0, 0, false},
        {"ten", 0, 0, false},
        {"10%%", 0, 0, false},
        {"99.9999 %", 999999, 4, true},
    };
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(rows); i++) {
        int64_t percent = 0;
        uint8_t decimals = 0;
        const bool good = option_percent(rows[i].text, &percent, &decimals);
        if (good != rows[i].good ||
            (good && (percent != rows[i].percent || decimals != rows[i].decimals))) {
            print_error("'%s': %d, %lld at %d\n", rows[i].text, good, (long long)percent, decimals);
            wrong++;
        }
    }
    assert_int_equal(wrong, 0);
}

/* --- names of files --- */

static void test_files(void **state) {
    static const unsigned kinds =
        OUTPUT_BIT(OUTPUT_WORKBOOK) | OUTPUT_BIT(OUTPUT_PDF) | OUTPUT_BIT(OUTPUT_CSV);
    static const struct {
        const char *path;
        enum output_kind kind;
    } outputs[] = {
        {"a.pdf", OUTPUT_PDF},           {"a.PDF", OUTPUT_PDF},        {"a.xlsx", OUTPUT_WORKBOOK},
        {"a.csv", OUTPUT_CSV},           {"a.svg", OUTPUT_WORKBOOK},   {"a", OUTPUT_WORKBOOK},
        {".pdf", OUTPUT_WORKBOOK},       {"b.pdf/a", OUTPUT_WORKBOOK}, {NULL, OUTPUT_WORKBOOK},
        {"b.csv/.pdf", OUTPUT_WORKBOOK}, {"a.csv.pdf", OUTPUT_PDF},
    };
    static const struct {
        const char *path, *part, *ending, *beside;
    } rows[] = {
        {"job.ini", "-client", ".html", "job-client.html"},
        {"job.ini", "-client", NULL, "job-client.ini"},
        {"a/b.c/job.ini", "", ".pdf", "a/b.c/job.pdf"},
        {"a/b.c/job", "-x", ".pdf", "a/b.c/job"}, /* no name for a file */
        {"a/.job", "-x", ".pdf", "a/.job"},
        {"job.v2.ini", "-x", ".pdf", "job.v2-x.pdf"},
        {NULL, "-x", ".pdf", NULL},
    };
    struct pool pool;
    (void)state;
    for (size_t i = 0; i < COUNT(outputs); i++) {
        const struct output o = files_output(outputs[i].path, kinds, OUTPUT_WORKBOOK);
        assert_int_equal(o.kind, outputs[i].kind);
        assert_int_equal(o.others, kinds);
    }
    pool_init(&pool);
    for (size_t i = 0; i < COUNT(rows); i++) {
        const char *const found = files_beside(&pool, rows[i].path, rows[i].part, rows[i].ending);
        if (rows[i].beside == NULL) {
            assert_null(found);
        } else {
            assert_string_equal(found, rows[i].beside);
        }
    }
    pool_clear(&pool);
}

/* One file under two names is one; what is not there is none. */
static void test_same(void **state) {
    (void)state;
    assert_true(files_same("CTestTestfile.cmake", "./CTestTestfile.cmake"));
    assert_false(files_same("CTestTestfile.cmake", "cmake_install.cmake"));
    assert_false(files_same("no-such-file", "no-such-file"));
    assert_false(files_same(NULL, "CTestTestfile.cmake"));
    assert_false(files_same("CTestTestfile.cmake", NULL));
}

/* --- questions --- */

/* Takes whole numbers of hours and money by the hour alone, and words that begin with an a. */
static const char *fault(void *context, const char *answer) {
    const bool per = strstr(answer, " per hour") != NULL || strstr(answer, " hours") != NULL;
    ++*(int *)context;
    return answer[0] == 'a' || per ? NULL : "it has no unit";
}

struct question {
    const char *name;
    struct ask ask;
    const char *typed;
    enum ask_result result;
    int asked;          /* how often a fault was looked for */
    const char *answer; /* NULL: left out */
    const char *said;   /* a part of what is said; NULL: not looked at */
};

static const struct question questions[] = {
    {"typed", {.why = "why", .name = "wage"}, "abc\n", ASK_ANSWERED, 1, "abc", "wage [none]: "},
    {"blanks around it",
     {.why = "why", .name = "wage"},
     "  abc \t\r\n",
     ASK_ANSWERED,
     1,
     "abc",
     NULL},
    {"the last line without an end",
     {.why = "why", .name = "wage"},
     "abc",
     ASK_ANSWERED,
     1,
     "abc",
     NULL},
    {"Enter takes the offer",
     {.why = "why", .name = "wage", .offer = "14.00 per hour", .needed = true},
     "\n",
     ASK_ANSWERED,
     0,
     "14.00 per hour",
     "wage [14.00 per hour]: "},
    {"Enter where nothing is offered",
     {.why = "why", .name = "wage"},
     "\n",
     ASK_ANSWERED,
     0,
     NULL,
     NULL},
    {"Enter where it is needed",
     {.why = "why", .name = "wage", .needed = true},
     "\nabc\n",
     ASK_ANSWERED,
     1,
     "abc",
     "nothing is offered here; type an answer"},
    {"left out",
     {.why = "why", .name = "wage", .offer = "abc"},
     "-\n",
     ASK_ANSWERED,
     0,
     NULL,
     NULL},
    {"left out where it can't be",
     {.why = "why", .name = "wage", .offer = "abc", .needed = true},
     "-\n\n",
     ASK_ANSWERED,
     0,
     "abc",
     "it can't be left out"},
    {"back", {.why = "why", .name = "wage", .back = true}, "<\n", ASK_BACK, 0, NULL, NULL},
    {"back where there is nothing before",
     {.why = "why", .name = "wage"},
     "<\nabc\n",
     ASK_ANSWERED,
     2,
     "abc",
     "it has no unit"},
    {"the answers end",
     {.why = "why", .name = "wage"},
     "",
     ASK_ENDED,
     0,
     NULL,
     "the answers ended at 'wage'; nothing was written"},
    {"they end after a fault",
     {.why = "why", .name = "wage", .ended = "all was kept"},
     "x\n",
     ASK_ENDED,
     1,
     NULL,
     "the answers ended at 'wage'; all was kept"},
    {"a bare number has the unit of the offer",
     {.why = "why", .name = "wage", .offer = "14.00 per hour (12 to 18)"},
     "16\n",
     ASK_ANSWERED,
     2,
     "16 per hour",
     "taken as '16 per hour'"},
    {"a unit of its own stays",
     {.why = "why", .name = "wage", .offer = "14.00 per hour"},
     "3 hours\n",
     ASK_ANSWERED,
     1,
     "3 hours",
     NULL},
    {"the unit of what it is like, where nothing is offered",
     {.why = "why", .name = "wage", .like = "8 hours"},
     "3.5\n",
     ASK_ANSWERED,
     2,
     "3.5 hours",
     "taken as '3.5 hours'"},
    {"an offer without a unit",
     {.why = "why", .name = "wage", .offer = "14"},
     "16\nabc\n",
     ASK_ANSWERED,
     2,
     "abc",
     "it has no unit"},
    {"an offer of a list",
     {.why = "why", .name = "wage", .offer = "14.00 per hour, 16.00 per hour"},
     "16\nabc\n",
     ASK_ANSWERED,
     2,
     "abc",
     "it has no unit"},
    {"choices are told",
     {.why = "why", .name = "wage", .choices = "abc, abd"},
     "abd\n",
     ASK_ANSWERED,
     1,
     "abd",
     "  abc, abd\n"},
};

static void test_questions(void **state) {
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(questions); i++) {
        const struct question *const q = &questions[i];
        char said[2000] = "";
        const char *answer = NULL;
        int asked = 0;
        struct pool pool;
        FILE *const in = tmpfile();
        FILE *const out = fmemopen(said, sizeof said, "w");
        assert_true(in != NULL && out != NULL);
        pool_init(&pool);
        assert_true(fputs(q->typed, in) >= 0);
        rewind(in);
        const enum ask_result result = ask(&q->ask, in, out, fault, &asked, &pool, &answer);
        assert_int_equal(fclose(out), 0);
        assert_int_equal(fclose(in), 0);
        const bool same = answer == NULL ? q->answer == NULL
                                         : q->answer != NULL && strcmp(answer, q->answer) == 0;
        if (result != q->result || !same || asked != q->asked ||
            (q->said != NULL && strstr(said, q->said) == NULL)) {
            print_error("%s: %d, '%s', asked %d times\n%s\n", q->name, (int)result,
                        answer == NULL ? "none" : answer, asked, said);
            wrong++;
        }
        pool_clear(&pool);
    }
    assert_int_equal(wrong, 0);
}

static void test_whether(void **state) {
    static const struct {
        const char *typed;
        enum ask_result result;
        bool yes;
    } rows[] = {{"yes\n", ASK_ANSWERED, true},    {"YES\n", ASK_ANSWERED, true},
                {"no\n", ASK_ANSWERED, false},    {"y\nno\n", ASK_ANSWERED, false},
                {"-\nyes\n", ASK_ANSWERED, true}, {"", ASK_ENDED, false},
                {"perhaps\n", ASK_ENDED, false},  {"\nyes\n", ASK_ANSWERED, true}};
    (void)state;
    for (size_t i = 0; i < COUNT(rows); i++) {
        char said[2000] = "";
        bool yes = !rows[i].yes;
        struct pool pool;
        FILE *const in = tmpfile();
        FILE *const out = fmemopen(said, sizeof said, "w");
        assert_true(in != NULL && out != NULL);
        pool_init(&pool);
        assert_true(fputs(rows[i].typed, in) >= 0);
        rewind(in);
        const enum ask_result result =
            ask_whether((struct ask){.why = "why", .name = "sure"}, in, out, &pool, &yes);
        assert_int_equal(result, rows[i].result);
        assert_int_equal(yes, rows[i].yes);
        assert_int_equal(fclose(out), 0);
        assert_int_equal(fclose(in), 0);
        assert_non_null(strstr(said, "yes, no"));
        pool_clear(&pool);
    }
}

/* A file is no terminal, nor is nothing. */
static void test_nobody(void **state) {
    FILE *const file = tmpfile();
    (void)state;
    assert_non_null(file);
    assert_false(ask_can(NULL, file));
    assert_false(ask_can(file, file));
    assert_int_equal(fclose(file), 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_every_option), cmocka_unit_test(test_calls),
        cmocka_unit_test(test_often),        cmocka_unit_test(test_words),
        cmocka_unit_test(test_whole),        cmocka_unit_test(test_percent),
        cmocka_unit_test(test_files),        cmocka_unit_test(test_same),
        cmocka_unit_test(test_questions),    cmocka_unit_test(test_whether),
        cmocka_unit_test(test_nobody),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
