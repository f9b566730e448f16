/* SPDX-License-Identifier: MIT */
/* JSON documents, read back by a reader of the tests that takes what RFC 8259 has and nothing else:
 * texts, the stream, the figures of an estimate against its tape, memory that runs out. */
#include "draw.h"
#include "json_bench.h"
#include "json_failing.h"

#include "cmocka_all.h"
#include "report/json/json_stream.h"

#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static void expect_text(const struct json_node *node, const char *path, const char *text) {
    const struct json_node *const at = json_find(node, path);
    if (at == NULL || at->kind != (text == NULL ? NODE_NULL : NODE_TEXT) ||
        (text != NULL && strcmp(at->text, text) != 0)) {
        fail_msg("%s is '%s', expected '%s'", path, at == NULL ? "not there" : at->text, text);
    }
}

static void expect_number(const struct json_node *node, const char *path, int64_t number) {
    char text[32];
    const struct json_node *const at = json_find(node, path);
    (void)snprintf(text, sizeof text, "%" PRId64, number);
    if (at == NULL || at->kind != NODE_NUMBER || strcmp(at->text, text) != 0) {
        fail_msg("%s is %s, expected %s", path, at == NULL ? "not there" : at->text, text);
    }
}

/* --- the reader itself --- */

/* RFC 8259: what is a text of JSON and what is none. */
static void test_reader(void **state) {
    (void)state;
    static const struct {
        const char *text;
        bool good;
    } cases[] = {
        {"{}", true},
        {"[]", true},
        {" [ 1 , -0.5e+3 , \"a\" , null , true , false ] ", true},
        {"{\"a\":{\"b\":[{}]}}", true},
        {"\"\\u00e9\\ud83d\\udeaa\\/\"", true},
        {"", false},
        {"[1,]", false},
        {"{\"a\":1,}", false},
        {"{\"a\":1,\"a\":2}", false},
        {"{a:1}", false},
        {"[01]", false},
        {"[1.]", false},
        {"[.5]", false},
        {"[+1]", false},
        {"[NaN]", false},
        {"['a']", false},
        {"[\"a\nb\"]", false},
        {"[\"\\x41\"]", false},
        {"[\"\\ud83d\"]", false},
        {"[\"\xC3\"]", false},
        {"[\"\xED\xA0\x80\"]", false},
        {"[1] 2", false},
        {"[1", false},
        {"tru", false},
    };
    for (size_t i = 0; i < COUNT(cases); i++) {
        size_t bad;
        struct json_node *const node = json_read(cases[i].text, strlen(cases[i].text), &bad);
        if ((node != NULL) != cases[i].good) {
            fail_msg("the reader took %s for %s", cases[i].text, cases[i].good ? "bad" : "good");
        }
        json_free(node);
    }
}

/* --- texts --- */

static const char *const texts[] = {
    "plain",
    "",
    "\"quoted\"",
    "back\\slash",
    "/slash</script>",
    "line\nfeed\r\ttab\b\f",
    ("\x01\x02\x03\x04\x05\x06\x07\x0B\x0E\x0F\x10\x11\x12\x13\x14\x15\x16\x17\x18\x19\x1A\x1B\x1C"
     "\x1D\x1E\x1F"),
    "\x7F",
    "caf\xC3\xA9",
    "\xE2\x80\xA8 and \xE2\x80\xA9",
    "\xF0\x9F\x9A\xAA",
    "\xEF\xBB\xBFmark",
    "\xEF\xBF\xBF",
    "\xED\x9F\xBF\xEE\x80\x80",
    "\\u0041",
    "{\"a\": [1]}",
    "%s %d",
};

/* In messages, which hold what the user wrote. */
static void test_texts(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(texts); i++) {
        struct problems problems;
        problems_init(&problems);
        problem_add(&problems, SEVERITY_WARNING, "an-id",
                    (struct place){.file = problems_file(&problems, "a file"), .line = 7}, "%s",
                    texts[i]);
        const struct json_paper paper = {.command = "check", .problems = &problems};
        struct json_node *const node = json_bench_read(&paper);
        expect_text(node, "problems/0/text", texts[i]);
        json_free(node);
        problems_clear(&problems);
    }
}

/* Bytes of a file's name may be of any kind; as everywhere else what can't be shown is `?`. */
static void test_file_names(void **state) {
    (void)state;
    static const struct {
        const char *name, *shown;
    } cases[] = {
        {"job.ini", "job.ini"},
        {"caf\xC3\xA9.ini", "caf\xC3\xA9.ini"},
        {"a\xFF\xFE.ini", "a??.ini"},
        {"\xC3.ini", "?.ini"},
        {"a\nb\x1B[1m.ini", "a?b?[1m.ini"},
        {"a\"b\\c.ini", "a\"b\\c.ini"},
    };
    for (size_t i = 0; i < COUNT(cases); i++) {
        struct problems problems;
        problems_init(&problems);
        problem_add(&problems, SEVERITY_ERROR, "an-id",
                    (struct place){.file = problems_file(&problems, cases[i].name), .line = 1},
                    "text");
        const struct json_paper paper = {.command = "check", .problems = &problems};
        struct json_node *const node = json_bench_read(&paper);
        expect_text(node, "problems/0/file", cases[i].shown);
        json_free(node);
        problems_clear(&problems);
    }
}

static void test_problems(void **state) {
    (void)state;
    struct problems problems;
    problems_init(&problems);
    const uint16_t file = problems_file(&problems, "doors.csv");
    const struct place place = {.file = file, .line = 4, .column = 9, .width = 2};
    problem_add(&problems, SEVERITY_ERROR, "first-id", place, "wrong");
    for (uint32_t line = 8; line <= 10; line++) {
        problem_add(&problems, SEVERITY_ERROR, "first-id",
                    (struct place){.file = file, .line = line}, "wrong");
    }
    problem_add(&problems, SEVERITY_WARNING, "second-id", (struct place){0}, "odd");
    const struct json_paper paper = {.command = "check", .problems = &problems};
    struct json_node *const node = json_bench_read(&paper);
    static const char *const keys[] = {"program",  "version",  "command", "errors",
                                       "warnings", "accepted", "problems"};
    size_t at = 0;
    for (const struct json_node *k = node->first; k != NULL && at < COUNT(keys); k = k->next) {
        assert_string_equal(k->key, keys[at++]);
    }
    assert_int_equal(json_length(node), COUNT(keys)); /* no job: the inputs were wrong */
    expect_text(node, "program", "doorcost");
    expect_text(node, "command", "check");
    expect_number(node, "errors", 1);
    expect_number(node, "warnings", 1);
    expect_text(node, "problems/0/severity", "error");
    expect_text(node, "problems/0/id", "first-id");
    expect_text(node, "problems/0/file", "doors.csv");
    expect_number(node, "problems/0/line", 4);
    expect_number(node, "problems/0/column", 9);
    assert_int_equal(json_length(json_find(node, "problems/0/more lines")), 3);
    expect_number(node, "problems/0/more lines/2", 10);
    expect_text(node, "problems/1/severity", "warning");
    expect_text(node, "problems/1/file", "");
    expect_number(node, "problems/1/line", 0);
    expect_number(node, "problems/1/column", 0);
    json_free(node);
    problems_clear(&problems);
}

/* --- the stream --- */

static uint32_t seed;

static json_t *any_value(int depth) {
    json_t *value;
    switch (draw_below(&seed, depth > 0 ? 7 : 5)) {
    case 0:
        return json_null();
    case 1:
        return json_boolean(draw_below(&seed, 2));
    case 2:
        return json_integer((json_int_t)draw_below(&seed, 100000) - 50000);
    case 3:
    case 4:
        return json_string(texts[draw_below(&seed, COUNT(texts))]);
    case 5:
        value = json_array();
        for (uint32_t i = draw_below(&seed, 4); i > 0; i--) {
            assert_int_equal(json_array_append_new(value, any_value(depth - 1)), 0);
        }
        return value;
    default:
        value = json_object();
        for (uint32_t i = draw_below(&seed, 4); i > 0; i--) {
            assert_int_equal(
                json_object_set_new(value, i % 2 == 0 ? "even" : "odd", any_value(depth - 1)), 0);
        }
        return value;
    }
}

/* The same value twice: given to the stream piece by piece, and into whole. */
static json_t *fill(struct json_stream *stream, const char *key, int depth) {
    static const char *const keys[] = {"a", "b c", "d, e", "f"};
    const bool list = draw_below(&seed, 2) == 0;
    json_t *const whole = list ? json_array() : json_object();
    json_open(stream, key, list ? '[' : '{');
    const uint32_t count = draw_below(&seed, COUNT(keys) + 1);
    for (uint32_t i = 0; i < count; i++) {
        json_t *value;
        if (depth > 0 && draw_below(&seed, 3) == 0) {
            value = fill(stream, list ? NULL : keys[i], depth - 1);
        } else {
            value = any_value(3);
            json_send(stream, list ? NULL : keys[i], json_incref(value));
        }
        assert_int_equal(list ? json_array_append_new(whole, value)
                              : json_object_set_new(whole, keys[i], value),
                         0);
    }
    if (!list && count == 0 && draw_below(&seed, 2) == 0) {
        json_t *const members = any_value(2);
        if (json_is_object(members)) {
            assert_int_equal(json_object_update(whole, members), 0);
            json_send_members(stream, json_incref(members));
        }
        json_decref(members);
    }
    json_close(stream, list ? ']' : '}');
    return whole;
}

static void test_stream(void **state) {
    (void)state;
    for (uint32_t round = 1; round <= 500; round++) {
        char *text = NULL;
        size_t size = 0;
        size_t bad;
        struct json_stream stream = {.out = open_memstream(&text, &size)};
        seed = round;
        json_t *const whole = fill(&stream, NULL, 5);
        assert_int_equal(fclose(stream.out), 0);
        assert_false(stream.failed);
        char *const dumped = json_dumps(whole, JSON_INDENT(1));
        assert_non_null(dumped);
        assert_int_equal(size, strlen(dumped) + 1);
        assert_int_equal(strncmp(text, dumped, size - 1), 0);
        struct json_node *const node = json_read(text, size, &bad);
        assert_non_null(node);
        json_free(node);
        free(dumped);
        free(text);
        json_decref(whole);
    }
}

/* --- an estimate --- */

static const char *const jobs[] = {"samples/kitchen/kitchen.ini", "samples/old-house/old-house.ini",
                                   "samples/metric/tea-kitchen.ini"};

/* Wherever a document has a figure it is one of the tape, with its value and unit. */
static size_t check_figures(const struct json_node *node, const struct tape *tape) {
    size_t count = 0;
    const struct json_node *const id = json_get(node, "figure");
    if (id != NULL && id->kind == NODE_NUMBER) {
        char text[32];
        const fig f = {(uint32_t)strtoul(id->text, NULL, 10)};
        assert_in_range(f.id, 1, tape->count - 1);
        assert_int_equal(json_length(node), 3);
        expect_text(node, "value", tape_text(tape, f, text, sizeof text));
        expect_text(node, "unit", unit_name(tape_unit(tape, f)));
        return 1;
    }
    for (const struct json_node *at = node->first; at != NULL; at = at->next) {
        count += check_figures(at, tape);
    }
    return count;
}

/* The lists of an operation by docs/json.md: which operands are in the first, which in the second.
 */
static const struct {
    enum figure_op op;
    enum { BY_SIGN, BY_TURNS, ALL_FIRST } parted;
    const char *first, *second;
} forms[] = {
    {OP_SUM, BY_SIGN, "plus", "minus"},           {OP_TOTAL, BY_TURNS, "counts", "each"},
    {OP_RATIO, BY_SIGN, "over", "under"},         {OP_LARGER, ALL_FIRST, "of", NULL},
    {OP_SMALLER, ALL_FIRST, "of", NULL},          {OP_UP, BY_TURNS, "of", "step"},
    {OP_PICK_UPTO, BY_TURNS, "limits", "values"}, {OP_PICK_FROM, BY_TURNS, "limits", "values"},
    {OP_CHOSEN, ALL_FIRST, "operands", NULL},
};

static void check_operands(const struct json_node *node, const struct tape *tape, fig f) {
    size_t form = 0;
    while (form < COUNT(forms) && forms[form].op != tape_op(tape, f)) {
        form++;
    }
    if (form == COUNT(forms)) {
        assert_int_equal(tape_op(tape, f), OP_GIVEN);
        assert_non_null(json_get(node, "origin"));
        return;
    }
    const struct json_node *const lists[] = {
        json_get(node, forms[form].first),
        forms[form].second == NULL ? NULL : json_get(node, forms[form].second)};
    const struct json_node *at[] = {lists[0]->first, lists[1] == NULL ? NULL : lists[1]->first};
    const struct json_node *const by = json_get(node, "by");
    for (size_t i = 0; i < tape_operands(tape, f); i++) {
        const struct operand operand = tape_operand(tape, f, i);
        const size_t turn = by == NULL ? i : i - 1;
        const size_t list = forms[form].parted == BY_SIGN    ? (operand.minus ? 1 : 0)
                            : forms[form].parted == BY_TURNS ? turn % 2
                                                             : 0;
        const struct json_node *const found = by != NULL && i == 0 ? by : at[list];
        if (found == NULL) {
            fail_msg("%s", "an operand is not listed");
            return;
        }
        assert_int_equal(strtoul(found->text, NULL, 10), operand.f.id);
        assert_true(operand.f.id < f.id); /* backward only */
        at[list] = found == by ? at[list] : found->next;
    }
    assert_true(at[0] == NULL && at[1] == NULL);
}

static void check_tape(const struct json_node *list, const struct tape *tape) {
    uint32_t id = 1;
    assert_int_equal(json_length(list), tape->count - 1);
    for (const struct json_node *at = list->first; at != NULL; at = at->next, id++) {
        const fig f = {id};
        char text[32];
        expect_number(at, "id", id);
        expect_text(at, "label", tape_label(tape, f));
        expect_text(at, "subject", tape_subject_name(tape, f));
        expect_number(at, "decimals", tape_decimals(tape, f));
        expect_text(at, "op", figure_op_name(tape_op(tape, f)));
        (void)snprintf(text, sizeof text, "%" PRId64, tape_amount(tape, f));
        expect_text(at, "value", text);
        expect_text(at, "shown", tape_text(tape, f, text, sizeof text));
        check_operands(at, tape, f);
    }
}

static void test_estimates(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(jobs); i++) {
        struct json_bench bench;
        json_bench_open(&bench, jobs[i]);
        const struct json_paper paper = json_bench_paper(&bench, JSON_ALL_PARTS);
        struct json_node *const node = json_bench_read(&paper);
        expect_number(node, "rows", (int64_t)bench.job.row_count);
        assert_int_equal(json_length(json_get(node, "estimates")), bench.count);
        for (size_t k = 0; k < bench.count; k++) {
            const struct estimate *const made = &bench.estimates[k];
            const struct json_node *const e =
                json_find(node, k == 0 ? "estimates/0" : "estimates/1");
            assert_true(check_figures(e, &made->tape) > 1000);
            check_tape(json_find(e, "tape/figures"), &made->tape);
            assert_int_equal(json_length(json_get(e, "doors")), made->quantities.count);
            expect_text(e, "name", k == 0 ? "as listed" : bench.job.options[0].name.s);
            assert_int_equal(json_get(e, "option")->kind, k == 0 ? NODE_FALSE : NODE_TRUE);
        }
        json_free(node);
        json_bench_close(&bench);
    }
}

/* Each part of a document is there where it is asked for, and only there. */
static void test_parts(void **state) {
    (void)state;
    static const struct {
        enum json_part part;
        const char *key;
    } parts[] = {
        {JSON_DOORS, "doors"},       {JSON_MATERIALS, "materials"}, {JSON_FINISH, "finish"},
        {JSON_LABOR, "labor"},       {JSON_COSTS, "costs"},         {JSON_SALE, "sale"},
        {JSON_PURCHASE, "purchase"}, {JSON_TAPE, "tape"},           {JSON_PLANS, "plans"},
    };
    struct json_bench bench;
    json_bench_open(&bench, jobs[0]);
    for (size_t i = 0; i <= COUNT(parts); i++) {
        const struct json_paper paper =
            json_bench_paper(&bench, i < COUNT(parts) ? parts[i].part : 0);
        struct json_node *const node = json_bench_read(&paper);
        const struct json_node *const e = json_find(node, "estimates/0");
        for (size_t k = 0; k < COUNT(parts); k++) {
            assert_int_equal(json_get(e, parts[k].key) != NULL, i == k);
        }
        assert_int_equal(json_length(e), i < COUNT(parts) ? 5 : 4);
        json_free(node);
    }
    json_bench_close(&bench);
}

/* --- memory --- */

/* Any allocation of the library fails: the document is said not to be whole, nothing is left. */
static void test_memory(void **state) {
    (void)state;
    struct json_bench bench;
    json_bench_open(&bench, jobs[0]);
    const struct json_paper paper = json_bench_paper(&bench, JSON_ALL_PARTS & ~(unsigned)JSON_TAPE);
    bool good;
    size_t size;
    json_failing_begin();
    free(json_bench_text(&paper, &size, &good));
    const size_t last = calls;
    assert_true(good && alive == 0 && last > 10000);
    for (size_t n = 1; n <= last; n += n < 100 ? 1 : last / 50) {
        calls = 0;
        failing = n;
        free(json_bench_text(&paper, &size, &good));
        if (good || alive != 0) {
            fail_msg("call %zu of %zu fails: %s, %ld left", n, last, good ? "whole" : "not whole",
                     alive);
        }
    }
    json_failing_end();
    json_bench_close(&bench);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_reader),     cmocka_unit_test(test_texts),
        cmocka_unit_test(test_file_names), cmocka_unit_test(test_problems),
        cmocka_unit_test(test_stream),     cmocka_unit_test(test_estimates),
        cmocka_unit_test(test_parts),      cmocka_unit_test(test_memory),
    };

    return cmocka_run_group_tests(tests, NULL, NULL);
}
