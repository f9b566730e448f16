/* SPDX-License-Identifier: MIT */
/* docs/json.md against documents of the samples: the keys that its tables name are there, in the
 * order of the tables where a table is of one object, and an object has no others. */
#include "json_bench.h"

#include "cmocka_all.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define MOST_WORDS 64

struct words {
    char *list[MOST_WORDS];
    size_t count;
};

static void clear(struct words *words) {
    for (size_t i = 0; i < words->count; i++) {
        free(words->list[i]);
    }
    *words = (struct words){0};
}

/* The words in code type from `from` to `to`. */
static void take_words(struct words *words, const char *from, const char *to) {
    for (const char *at = from; at < to;) {
        const char *const open = memchr(at, '`', (size_t)(to - at));
        const char *const close =
            open == NULL ? NULL : memchr(open + 1, '`', (size_t)(to - open - 1));
        if (close == NULL) {
            return;
        }
        assert_true(words->count < MOST_WORDS);
        words->list[words->count] = strndup(open + 1, (size_t)(close - open - 1));
        assert_non_null(words->list[words->count++]);
        at = close + 1;
    }
}

static char *docs;

static void load_docs(void) {
    FILE *const file = fopen(DOORCOST_SOURCE "/docs/json.md", "rb");
    static char text[32768];
    assert_non_null(file);
    const size_t size = fread(text, 1, sizeof text - 1, file);
    assert_true(size > 1000 && size < sizeof text - 1);
    (void)fclose(file);
    docs = text;
}

/* The row of the docs whose first cell has `key`; its cells begin behind the bars. */
static const char *row_of(const char *key) {
    char what[64];
    (void)snprintf(what, sizeof what, "`%s`", key);
    for (const char *at = strstr(docs, "\n| `"); at != NULL; at = strstr(at + 1, "\n| `")) {
        const char *const found = strstr(at, what);
        if (found != NULL && found < strchr(at + 2, '|')) {
            return at + 1;
        }
    }
    fail_msg("docs/json.md has no row of %s", what);
    return NULL;
}

/* Words of cell `column` (from 0) of a row. */
static void cell_words(struct words *words, const char *row, int column) {
    const char *from = row + 1;
    for (; column > 0; column--) {
        from = strchr(from, '|') + 1;
    }
    take_words(words, from, strchr(from, '|'));
}

/* Words of the first cells of the table that follows a text. */
static void first_cells(struct words *words, const char *after) {
    const char *at = strstr(docs, after);
    assert_non_null(at);
    at = strstr(at, "|---");
    for (at = strchr(at, '\n') + 1; *at == '|'; at = strchr(at, '\n') + 1) {
        take_words(words, at + 1, strchr(at + 1, '|'));
    }
}

/* An object has these keys and no others, in this order; absent: that it may lack. */
static void expect_keys(const struct json_node *object, const struct words *words,
                        const char *absent) {
    const struct json_node *at = object->first;
    assert_int_equal(object->kind, NODE_OBJECT);
    for (size_t i = 0; i < words->count; i++) {
        const bool there = at != NULL && strcmp(at->key, words->list[i]) == 0;
        if (!there && (absent == NULL || strcmp(words->list[i], absent) != 0)) {
            fail_msg("'%s' stands where docs/json.md has '%s'", at == NULL ? "nothing" : at->key,
                     words->list[i]);
        }
        at = there ? at->next : at;
    }
    if (at != NULL) {
        fail_msg("docs/json.md does not have '%s'", at->key);
    }
}

/* Whether a word is a key or a text anywhere below. */
static bool has_word(const struct json_node *node, const char *word) {
    if ((node->key != NULL && strcmp(node->key, word) == 0) ||
        (node->kind == NODE_TEXT && strcmp(node->text, word) == 0)) {
        return true;
    }
    for (const struct json_node *at = node->first; at != NULL; at = at->next) {
        if (has_word(at, word)) {
            return true;
        }
    }
    return false;
}

/* --- documents --- */

/* Of the kitchen with an option, and of the old house with boards crosscut first. */
static struct json_node *documents[2];

static struct json_node *document(const char *path, bool crosscut_first) {
    struct json_bench bench;
    json_bench_open(&bench, path);
    if (crosscut_first) {
        json_bench_crosscut_first(&bench);
    }
    problem_add(&bench.problems, SEVERITY_WARNING, "an-id", (struct place){0}, "a caution");
    const struct json_paper paper = json_bench_paper(&bench, JSON_ALL_PARTS);
    struct json_node *const node = json_bench_read(&paper);
    json_bench_close(&bench);
    return node;
}

static int set_up(void **state) {
    (void)state;
    load_docs();
    documents[0] = document("samples/kitchen/kitchen.ini", false);
    documents[1] = document("samples/old-house/old-house.ini", true);
    return 0;
}

static int tear_down(void **state) {
    (void)state;
    json_free(documents[0]);
    json_free(documents[1]);
    return 0;
}

/* Every word of some row is in one of the documents, below path. */
static void expect_words(const struct words *words, const char *path) {
    for (size_t i = 0; i < words->count; i++) {
        const struct json_node *const a = json_find(documents[0], path);
        const struct json_node *const b = json_find(documents[1], path);
        /* no sample is priced by plan */
        if ((a == NULL || !has_word(a, words->list[i])) &&
            (b == NULL || !has_word(b, words->list[i])) && strcmp(words->list[i], "plan") != 0) {
            fail_msg("docs/json.md: '%s' is not in %s", words->list[i], path);
        }
    }
}

/* --- tests --- */

static void test_document(void **state) {
    (void)state;
    struct words words = {0};
    first_cells(&words, "## The document");
    expect_keys(documents[0], &words, NULL);
    clear(&words);
    /* `severity` (`error`, `warning`, `accepted`), `id`, ...: what stands in brackets are texts */
    static const char *const keys[] = {"severity", "id",     "text",      "file",
                                       "line",     "column", "more lines"};
    const struct json_node *at = json_find(documents[0], "problems/0")->first;
    cell_words(&words, row_of("problems"), 1);
    for (size_t i = 0; i < COUNT(keys); i++, at = at->next) {
        size_t w = 0;
        while (w < words.count && strcmp(words.list[w], keys[i]) != 0) {
            w++;
        }
        assert_true(w < words.count);
        assert_string_equal(at->key, keys[i]);
    }
    assert_null(at); /* `cell` is of problems in workbooks alone */
    clear(&words);
}

static void test_estimate(void **state) {
    (void)state;
    struct words words = {0};
    first_cells(&words, "## An estimate");
    expect_keys(json_find(documents[0], "estimates/1"), &words, NULL);
    expect_keys(json_find(documents[0], "estimates/0"), &words, "difference to the first");
    clear(&words);
}

static void test_sections(void **state) {
    (void)state;
    static const struct {
        const char *key, *path;
    } rows[] = {
        {"difference to the first", "estimates/1/difference to the first"},
        {"doors", "estimates/0/doors"},
        {"materials", "estimates/0/materials"},
        {"finish", "estimates/0/finish"},
        {"labor", "estimates/0/labor"},
        {"costs", "estimates/0/costs"},
        {"sale", "estimates/0/sale"},
        {"purchase", "estimates/0/purchase"},
        {"tape", "estimates/0/tape"},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        struct words words = {0};
        cell_words(&words, row_of(rows[i].key), 2);
        assert_true(words.count > 0);
        expect_words(&words, rows[i].path);
        clear(&words);
    }
    struct words words = {0};
    const char *const from = strstr(docs, "In `materials`, lumber");
    assert_non_null(from);
    take_words(&words, strchr(from, ','), strstr(from, "\n## "));
    assert_true(words.count >= 7);
    expect_words(&words, "estimates/0/materials");
    clear(&words);
}

/* What stands under `inputs`, and no more. */
static void test_inputs(void **state) {
    (void)state;
    struct words words = {0};
    const char *const from = strstr(docs, "\n`inputs` of `quote`");
    const char *const table = strstr(from, "\n| `file` |");
    assert_true(from != NULL && table != NULL);
    static const char *const parts[] = {"inputs/job", "inputs/rates", "inputs/doors",
                                        "inputs/woods", "inputs/rack"};
    take_words(&words, strstr(from, ": `job`"), strchr(from + 1, '('));
    for (size_t i = 0; i < COUNT(parts); i++) {
        assert_non_null(json_find(documents[0], parts[i]));
    }
    assert_int_equal(json_length(json_get(documents[0], "inputs")), COUNT(parts));
    assert_int_equal(words.count, 3);
    expect_words(&words, "inputs");
    clear(&words);
    take_words(&words, table, strstr(table, "\n\n"));
    for (size_t i = 0; i < words.count; i++) {
        const bool named = has_word(json_get(documents[0], "inputs"), words.list[i]);
        if (!named) {
            fail_msg("docs/json.md: '%s' is not in inputs", words.list[i]);
        }
    }
    clear(&words);
}

/* What is said of plans is in them; the figures of waste add up to what is bought. */
static void test_plans(void **state) {
    (void)state;
    struct words words = {0};
    const char *const from = strstr(docs, "| key | what |\n|---|---|\n| `name`, `prices");
    assert_non_null(from);
    take_words(&words, from + 14, strstr(from, "\n`tests/outside/plans.py`"));
    assert_true(words.count > 30);
    size_t kept = 0;
    for (size_t i = 0; i < words.count; i++) { /* `key` of the head, and axes of the drawing */
        if (strcmp(words.list[i], "x") != 0 && strcmp(words.list[i], "y") != 0) {
            words.list[kept++] = words.list[i];
        } else {
            free(words.list[i]);
        }
    }
    words.count = kept;
    expect_words(&words, "estimates/0/plans");
    clear(&words);
}

/* The row of every operation has its keys, and only they stand beside those of all figures. */
static void test_tape(void **state) {
    (void)state;
    static const char *const ops[] = {"given", "sum",     "total",     "ratio",     "larger",
                                      "up",    "smaller", "pick upto", "pick from", "chosen"};
    struct words all = {0};
    first_cells(&all, "## The tape");
    for (size_t i = 0; i < COUNT(ops); i++) {
        struct words words = {0};
        const struct json_node *figure = NULL;
        cell_words(&words, row_of(ops[i]), 1);
        for (size_t d = 0; d < COUNT(documents) && figure == NULL; d++) {
            figure = json_find(documents[d], "estimates/0/tape/figures")->first;
            while (figure != NULL && strcmp(json_get(figure, "op")->text, ops[i]) != 0) {
                figure = figure->next;
            }
        }
        if (figure == NULL) {
            fail_msg("no sample has the operation '%s'", ops[i]);
        }
        const size_t further = strcmp(ops[i], "given") == 0 ? 1 : words.count; /* in `origin` */
        assert_int_equal(json_length(figure), all.count + further);
        for (size_t k = 0; k < all.count; k++) {
            assert_non_null(json_get(figure, all.list[k]));
        }
        for (size_t k = 0; k < further; k++) {
            if (json_get(figure, words.list[k]) == NULL) {
                fail_msg("'%s' of '%s' is not there", words.list[k], ops[i]);
            }
        }
        clear(&words);
    }
    clear(&all);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_document), cmocka_unit_test(test_estimate),
        cmocka_unit_test(test_sections), cmocka_unit_test(test_plans),
        cmocka_unit_test(test_tape),     cmocka_unit_test(test_inputs),
    };

    return cmocka_run_group_tests(tests, set_up, tear_down);
}
