/* SPDX-License-Identifier: MIT */
/* What commands print as JSON: documents by the letter of RFC 8259, the same bytes when asked
 * again, with the head that docs/json.md tells of; each key of the part that a command alone has
 * stands in docs/json.md, and each part that the docs name is there. */
#include "command_bench.h"

#include "case.h"
#include "file_bench.h"
#include "json_read.h"

#include "cmocka_all.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#define TEA     (DOORCOST_SOURCE "/samples/metric/tea-kitchen.ini")
#define KITCHEN (DOORCOST_SOURCE "/samples/kitchen/kitchen.ini")
#define SECOND  (DOORCOST_SOURCE "/samples/kitchen/kitchen-second.ini")
#define NOTED   "test-json-commands.csv"

#define MOST_WORDS 9

struct call {
    const char *words[MOST_WORDS];
    const char *part; /* that the command alone has, in the first estimate; NULL: none */
};

static const struct call calls[] = {
    {{"check", TEA, NULL}, NULL},
    {{"finish", TEA, NULL}, NULL},
    {{"buy", TEA, "--effort", "0", NULL}, NULL},
    {{"compare", TEA, NULL}, NULL},
    {{"explain", TEA, "total", "--effort", "0", NULL}, NULL},
    {{"strike", TEA, "--effort", "0", NULL}, "strike"},
    {{"days", TEA, NULL}, "days"},
    {{"ways", TEA, "--hours", "30", "--effort", "0", NULL}, "ways"},
    {{"range", TEA, "--draws", "100", "--effort", "0", NULL}, "range"},
    {{"range", TEA, "--draws", "100", "--seed", "7", "--effort", "0", NULL}, "chance"},
    {{"range", TEA, "--by", "10%", "--effort", "0", NULL}, "range"},
    {{"range", TEA, "--set", "shop.labor rate = 50 per hour", "--effort", "0", NULL}, "range"},
    {{"reach", TEA, "--total", "5000", "--effort", "0", NULL}, "reach"},
    {{"table", TEA, "--widths", "50,400", "--heights", "700", "--effort", "0", NULL}, "sizes"},
    {{"learn", TEA, NOTED, NULL}, "learned"},
    {{"bridge", KITCHEN, SECOND, "--effort", "0", NULL}, "bridge"},
    {{"buy", TEA, TEA, "--effort", "0", NULL}, "together"},
};

/* --- docs --- */

/* docs/json.md with a blank for each line feed, as words in code type go over lines. */
static char *load_docs(void) {
    size_t size = 0;
    char *const text = case_load(DOORCOST_SOURCE "/docs/json.md", &size);
    assert_non_null(text);
    assert_true(size > 1000);
    for (char *c = strchr(text, '\n'); c != NULL; c = strchr(c, '\n')) {
        *c = ' ';
    }
    return text;
}

static bool is_told(const char *docs, const char *key) {
    char code[100];
    (void)snprintf(code, sizeof code, "`%s`", key);
    if (strstr(docs, code) != NULL) {
        return true;
    }
    (void)snprintf(code, sizeof code, "\"%s\"", key);
    return strstr(docs, code) != NULL;
}

/* Keys that are ids of rows, or names that the user gave. */
static bool is_named(const char *parent) {
    return parent != NULL && strcmp(parent, "changed") == 0;
}

static int check_keys(const char *docs, const char *command, const struct json_node *node) {
    int wrong = 0;
    for (const struct json_node *n = node->first; n != NULL; n = n->next) {
        if (node->kind == NODE_OBJECT && !is_named(node->key) && !is_told(docs, n->key)) {
            print_error("%s: docs/json.md does not tell of '%s'\n", command, n->key);
            wrong++;
        }
        wrong += check_keys(docs, command, n);
    }
    return wrong;
}

/* --- documents --- */

static char *run(const struct call *call, size_t *size) {
    const struct called called = command_bench_call(call->words, "--json");
    assert_int_equal(called.status, STATUS_DONE);
    *size = called.size;
    return called.out;
}

/* Decimal numbers alone, without an exponent: what a program reads with no loss. */
static bool is_decimal(const char *text) {
    const size_t sign = text[0] == '-' ? 1 : 0;
    const size_t digits = strspn(text + sign, "0123456789");
    const char *const rest = text + sign + digits;
    const size_t more = *rest == '.' ? strspn(rest + 1, "0123456789") : 0;
    return digits > 0 && (*rest == '\0' || (more > 0 && rest[1 + more] == '\0'));
}

/* A figure: its value is a text that is a decimal number. Returns how many there are. */
static size_t check_figures(const struct json_node *node, int *wrong) {
    const struct json_node *const value = json_get(node, "value");
    size_t count = 0;
    if (json_get(node, "figure") != NULL && value != NULL) {
        count++;
        if (value->kind != NODE_TEXT || !is_decimal(value->text)) {
            print_error("'%s' is no figure\n", value->text == NULL ? "" : value->text);
            ++*wrong;
        }
    }
    for (const struct json_node *n = node->first; n != NULL; n = n->next) {
        count += check_figures(n, wrong);
    }
    return count;
}

static int check_head(const struct call *call, const struct json_node *document) {
    static const char *const keys[] = {"program",  "version",  "command", "errors", "warnings",
                                       "accepted", "problems", "job",     "rows",   "estimates"};
    int wrong = 0;
    const struct json_node *n = document->first;
    for (size_t i = 0; i < COUNT(keys); i++) {
        if (n == NULL || strcmp(n->key, keys[i]) != 0) {
            print_error("%s: '%s' is not in its place\n", call->words[0], keys[i]);
            return 1;
        }
        n = n->next;
    }
    wrong += strcmp(json_get(document, "program")->text, "doorcost") != 0 ? 1 : 0;
    wrong += strcmp(json_get(document, "command")->text, call->words[0]) != 0 ? 1 : 0;
    wrong += strcmp(json_get(document, "errors")->text, "0") != 0 ? 1 : 0;
    size_t warnings = 0;
    for (const struct json_node *p = json_get(document, "problems")->first; p != NULL;
         p = p->next) {
        warnings += strcmp(json_get(p, "severity")->text, "warning") == 0 ? 1 : 0;
    }
    if (strtoul(json_get(document, "warnings")->text, NULL, 10) != warnings) {
        print_error("%s: %zu warnings are listed\n", call->words[0], warnings);
        wrong++;
    }
    return wrong;
}

static int check_call(const char *docs, const struct call *call) {
    size_t size;
    size_t again_size = 0;
    size_t bad;
    int wrong = 0;
    char *const text = run(call, &size);
    /* the longer calls once: all go the same way to their documents */
    char *const again = call->part == NULL ? run(call, &again_size) : NULL;
    if (again != NULL && (size != again_size || memcmp(text, again, size) != 0)) {
        print_error("%s: not the same when asked again\n", call->words[0]);
        wrong++;
    }
    struct json_node *const document = json_read(text, size, &bad);
    if (document == NULL) {
        fail_msg("%s: no JSON from here on: %.60s", call->words[0], text + bad);
        return 1;
    }
    assert_int_equal(text[size - 1], '\n');
    wrong += check_head(call, document);
    (void)check_figures(document, &wrong);
    if (call->part != NULL) {
        const struct json_node *const estimates = json_get(document, "estimates");
        const struct json_node *const part = json_get(estimates->first, call->part);
        if (part == NULL) {
            print_error("%s: there is no '%s'\n", call->words[0], call->part);
            wrong++;
        } else {
            wrong += check_keys(docs, call->words[0], part);
        }
    }
    json_free(document);
    free(text);
    free(again);
    return wrong;
}

static void test_documents(void **state) {
    char *const docs = load_docs();
    int wrong = 0;
    (void)state;
    file_bench_write(NOTED, BYTES("what,hours,bought,paid,taken,left\nall,30,,,,\n"
                                  "tulipwood,,0.1 m3,150.00,0.1 m3,0.01 m3\n"));
    for (size_t i = 0; i < COUNT(calls); i++) {
        wrong += check_call(docs, &calls[i]);
    }
    assert_int_equal(unlink(NOTED), 0);
    free(docs);
    assert_int_equal(wrong, 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_documents)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
