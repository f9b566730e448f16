/* SPDX-License-Identifier: MIT */
/* Pieces of a page of HTML, read back by other readers: words come back as they were, letter for
 * letter, and nothing of them becomes markup; tables have a cell for each head; bytes in base64 are
 * those of RFC 4648. */
#include "report/html/html.h"

#include "case.h"
#include "draw.h"
#include "json_read.h"
#include "markup_read.h"

#include "cmocka_all.h"

#include <stdlib.h>
#include <string.h>
#include <unistd.h>

/* A page that is written to memory. */
struct sheet {
    struct html html;
    char *text;
    size_t size;
};

static void open_sheet(struct sheet *s) {
    *s = (struct sheet){0};
    pool_init(&s->html.pool);
    s->html.out = open_memstream(&s->text, &s->size);
    assert_non_null(s->html.out);
}

/* Its text, still to be freed. */
static char *close_sheet(struct sheet *s) {
    assert_int_equal(fclose(s->html.out), 0);
    assert_false(s->html.failed || pool_failed(&s->html.pool));
    pool_clear(&s->html.pool);
    return s->text;
}

/* --- words --- */

static const char *const pieces[] = {"&",  "<",  ">",      "\"",     "'",          "a",
                                     "/",  "--", "]]>",    "&amp;",  "</script>",  "<!--",
                                     "%s", "%n", "\u00e9", "\u6a71", "\U0001f6aa", "\u2028"};

/* Between tags and in a value within double quotes. */
static void test_words(void **state) {
    uint32_t seed = 7;
    (void)state;
    for (int n = 0; n < 400; n++) {
        struct sheet s;
        struct markup read;
        char text[200] = "";
        draw_pieces(&seed, text, sizeof text, 12, pieces, COUNT(pieces));
        open_sheet(&s);
        html_put(&s.html, "<p title=\"");
        html_text(&s.html, text);
        html_put(&s.html, "\">");
        html_words(&s.html, "%s|%d", text, n);
        html_element(&s.html, "b class=\"x\"", text);
        html_put(&s.html, "</p>");
        char *const written = close_sheet(&s);
        markup_read(&read, written, s.size);
        char wanted[500];
        (void)snprintf(wanted, sizeof wanted, "%s|%d%s\n", text, n, text);
        assert_int_equal(read.count, 2);
        assert_string_equal(markup_value(&read.elements[0], "title"), text);
        assert_string_equal(read.elements[0].text, wanted);
        assert_string_equal(read.elements[1].name, "b");
        assert_string_equal(read.elements[1].text, text);
        assert_string_equal(markup_value(&read.elements[1], "class"), "x");
        markup_clear(&read);
        free(written);
    }
}

static void test_no_words(void **state) {
    struct sheet s;
    (void)state;
    open_sheet(&s);
    html_text(&s.html, NULL);
    html_text(&s.html, "");
    html_element(&s.html, "td", NULL);
    char *const written = close_sheet(&s);
    assert_string_equal(written, "<td></td>\n");
    free(written);
}

/* A text of JSON (RFC 8259, section 7) in a script: no letter of it can begin or end a tag or a
 * character reference. */
static void test_json(void **state) {
    uint32_t seed = 11;
    (void)state;
    for (int n = 0; n < 400; n++) {
        struct sheet s;
        size_t bad;
        char text[200] = "";
        draw_pieces(&seed, text, sizeof text - 4, 12, pieces, COUNT(pieces));
        if (n < 31) { /* each control character */
            text[0] = (char)(n + 1);
            text[1] = '\\';
            text[2] = '\0';
        }
        open_sheet(&s);
        html_json(&s.html, text);
        char *const written = close_sheet(&s);
        assert_null(strpbrk(written, "<>&\n"));
        struct json_node *const node = json_read(written, s.size, &bad);
        assert_non_null(node);
        assert_int_equal(node->kind, NODE_TEXT);
        assert_string_equal(node->text, text);
        json_free(node);
        free(written);
    }
    struct sheet s;
    open_sheet(&s);
    html_json(&s.html, NULL);
    char *const written = close_sheet(&s);
    assert_string_equal(written, "\"\"");
    free(written);
}

/* --- pictures --- */

/* What stands behind the comma of the picture's address, to be freed. */
static char *picture_of(const unsigned char *bytes, size_t size) {
    static const char before[] = "data:image/png;base64,";
    struct sheet s;
    open_sheet(&s);
    html_picture(&s.html, bytes, size, "plan", "a \"door\" <1>");
    char *const written = close_sheet(&s);
    char *const from = strstr(written, before);
    assert_non_null(from);
    assert_non_null(strstr(written, "class=\"plan\" alt=\"a &quot;door&quot; &lt;1&gt;\""));
    char *const code = strdup(from + strlen(before));
    assert_non_null(code);
    code[strcspn(code, "\"")] = '\0';
    free(written);
    return code;
}

/* RFC 4648, section 10. */
static void test_base64(void **state) {
    static const struct {
        const char *bytes, *code;
    } rows[] = {{"", ""},
                {"f", "Zg=="},
                {"fo", "Zm8="},
                {"foo", "Zm9v"},
                {"foob", "Zm9vYg=="},
                {"fooba", "Zm9vYmE="},
                {"foobar", "Zm9vYmFy"}};
    (void)state;
    for (size_t i = 0; i < COUNT(rows); i++) {
        char *const code = picture_of((const unsigned char *)rows[i].bytes, strlen(rows[i].bytes));
        assert_string_equal(code, rows[i].code);
        free(code);
    }
}

/* The six bits of a digit, by the letter's own code. */
static unsigned six_bits(char c) {
    return c >= 'A' && c <= 'Z'   ? (unsigned)(c - 'A')
           : c >= 'a' && c <= 'z' ? (unsigned)(c - 'a') + 26
           : c >= '0' && c <= '9' ? (unsigned)(c - '0') + 52
           : c == '+'             ? 62
                                  : 63;
}

/* All bytes, at lengths over all three rests of three. */
static void test_base64_bytes(void **state) {
    unsigned char bytes[260];
    (void)state;
    for (size_t i = 0; i < sizeof bytes; i++) {
        bytes[i] = (unsigned char)(i * 167 + 13);
    }
    for (size_t size = 250; size <= sizeof bytes; size++) {
        char *const code = picture_of(bytes, size);
        const size_t digits = strcspn(code, "=");
        assert_int_equal(strlen(code), (size + 2) / 3 * 4);
        assert_int_equal(digits * 6 / 8, size);
        unsigned held = 0;
        size_t bits = 0;
        size_t found = 0;
        for (size_t i = 0; i < digits; i++) {
            assert_true(six_bits(code[i]) < 63 || code[i] == '/');
            held = held << 6 | six_bits(code[i]);
            bits += 6;
            if (bits >= 8) {
                bits -= 8;
                assert_int_equal(held >> bits & 0xff, bytes[found++]);
            }
        }
        assert_int_equal(found, size);
        free(code);
    }
}

/* --- tables --- */

struct table_case {
    const char *name;
    struct html_head heads[5];
    size_t count;
    bool lines;
};

/* Words and one or two numbers have room beside each other on a narrow page too. */
static const struct table_case tables[] = {
    {"words", {{"what", false}}, 1, true},
    {"words, number", {{"what", false}, {"cost", true}}, 2, true},
    {"words, two numbers", {{"what", false}, {"each", true}, {"cost", true}}, 3, true},
    {"words, words", {{"what", false}, {"note", false}}, 2, false},
    {"words, number, words", {{"what", false}, {"cost", true}, {"note", false}}, 3, false},
    {"number, number", {{"1 < 2", true}, {"a & \"b\"", true}}, 2, true},
    {"three numbers", {{"what", false}, {"a", true}, {"b", true}, {"c", true}}, 4, false},
    {"no heads", {{"", false}, {"", true}, {"", false}}, 3, false},
};

static void put_rows(struct html_table *t, size_t count) {
    html_row_head(t, "first <part>");
    html_row(t, "sum \\");
    for (size_t i = 0; i < count; i++) {
        html_cell(t, i == 1 ? "" : "x > 1");
    }
    html_row_end(t);
    html_row_head(t, "second");
    for (int row = 0; row < 2; row++) {
        html_row(t, "");
        html_cell_open(t);
        html_put(t->html, "<i>in</i>");
        html_cell_end(t);
        for (size_t i = 1; i < count; i++) {
            html_cell_none(t);
        }
        html_row_end(t);
    }
}

static void check_heads(const struct markup *read, const struct table_case *c) {
    for (size_t i = 0; i < c->count; i++) {
        /* table, caption, thead, tr, then the heads */
        const struct markup_element *const e = &read->elements[4 + i];
        const bool named = c->heads[i].name[0] != '\0';
        assert_string_equal(e->name, named ? "th" : "td");
        assert_string_equal(e->text, c->heads[i].name);
        assert_true((markup_value(e, "scope") != NULL) == named);
        assert_true((markup_value(e, "class") != NULL) == (named && c->heads[i].number));
    }
}

/* Each cell behind the first says which column it is of; a row has as many cells as heads. */
static void check_cells(const struct markup *read, const struct table_case *c) {
    size_t column = 0;
    size_t rows = 0;
    for (size_t i = 4 + c->count; i < read->count; i++) {
        const struct markup_element *const e = &read->elements[i];
        if (strcmp(e->name, "tr") == 0) {
            rows++;
            column = 0;
        } else if (strcmp(e->name, "th") == 0 && markup_value(e, "colspan") != NULL) {
            assert_int_equal((size_t)markup_number(e, "colspan"), c->count);
            assert_string_equal(markup_value(e, "scope"), "rowgroup");
            column = c->count;
        } else if (strcmp(e->name, "th") == 0 || strcmp(e->name, "td") == 0) {
            assert_string_equal(e->name, column == 0 ? "th" : "td");
            const char *const label = markup_value(e, "data-l");
            if (column > 0 && e->text[0] != '\0') {
                assert_string_equal(label == NULL ? "" : label, c->heads[column].name);
                const char *const class = markup_value(e, "class");
                assert_true((class != NULL && strcmp(class, "n") == 0) == c->heads[column].number);
            } else {
                assert_null(label);
            }
            column++;
        }
        const bool ends = i + 1 == read->count || strcmp(read->elements[i + 1].name, "tr") == 0 ||
                          strcmp(read->elements[i + 1].name, "tbody") == 0;
        if (ends && rows > 0 && strcmp(e->name, "tr") != 0 && strcmp(e->name, "tbody") != 0) {
            assert_int_equal(column, c->count);
        }
    }
    assert_int_equal(rows, 5);
}

static void test_tables(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(tables); i++) {
        const struct table_case *const c = &tables[i];
        struct sheet s;
        struct html_table t;
        struct markup read;
        open_sheet(&s);
        html_table(&t, &s.html, "shows <it> & more", c->heads, c->count);
        put_rows(&t, c->count);
        html_table_end(&t);
        char *const written = close_sheet(&s);
        markup_read(&read, written, s.size);
        assert_int_equal(markup_count(&read, "table", "lines"), c->lines ? 1 : 0);
        assert_string_equal(markup_find(&read, "caption", NULL, 0)->text, "shows <it> & more");
        assert_int_equal(markup_count(&read, "tbody", NULL), 2);
        assert_int_equal(markup_count(&read, "tr", "part"), 2);
        assert_int_equal(markup_count(&read, "tr", "sum \\"), 1);
        assert_int_equal(markup_count(&read, "i", NULL), 2);
        check_heads(&read, c);
        check_cells(&read, c);
        markup_clear(&read);
        free(written);
    }
}

/* Without rows there is no body; without a line over all columns one body. */
static void test_bodies(void **state) {
    static const struct html_head heads[] = {{"what", false}, {"cost", true}};
    (void)state;
    for (size_t rows = 0; rows < 3; rows++) {
        struct sheet s;
        struct html_table t;
        struct markup read;
        open_sheet(&s);
        html_table(&t, &s.html, "c", heads, COUNT(heads));
        for (size_t i = 0; i < rows; i++) {
            html_row(&t, "");
            html_cell(&t, "a");
            html_cell(&t, NULL);
            html_row_end(&t);
        }
        html_table_end(&t);
        char *const written = close_sheet(&s);
        markup_read(&read, written, s.size);
        assert_int_equal(markup_count(&read, "tbody", NULL), rows > 0 ? 1 : 0);
        assert_int_equal(markup_count(&read, "td", "none"), rows);
        assert_int_equal(markup_count(&read, "tr", ""), 0);
        markup_clear(&read);
        free(written);
    }
}

/* --- the page --- */

static void test_page(void **state) {
    static const char path[] = "test-html-page.html";
    (void)state;
    for (int script = 0; script < 2; script++) {
        struct html html;
        assert_true(html_open(&html, path, "T & <t>", "/* own */\n", script == 1));
        html_put(&html, "<body></body>\n");
        assert_true(html_close(&html));
        char *const text = case_load(path, NULL);
        assert_non_null(text);
        assert_ptr_equal(strstr(text, "<!DOCTYPE html>"), text);
        assert_non_null(strstr(text, "<title>T &amp; &lt;t&gt;</title>"));
        assert_non_null(strstr(text, "/* own */"));
        assert_non_null(strstr(text, "default-src 'none'; img-src data:;"));
        assert_true((strstr(text, "script-src 'none';") != NULL) == (script == 0));
        assert_true((strstr(text, "script-src 'unsafe-inline';") != NULL) == (script == 1));
        assert_string_equal(text + strlen(text) - strlen("<body></body>\n</html>\n"),
                            "<body></body>\n</html>\n");
        free(text);
    }
    assert_int_equal(unlink(path), 0);
}

/* What can't be opened, what the disk does not take, a picture that was not made. */
static void test_faults(void **state) {
    struct html html;
    (void)state;
    assert_false(html_open(&html, "no-such-folder/page.html", "t", "", false));
    assert_false(html_close(&html));
    if (html_open(&html, "/dev/full", "t", "", false)) {
        assert_false(html_close(&html));
    }
    assert_true(html_open(&html, "test-html-fault.html", "t", "", false));
    html.failed = true;
    assert_false(html_close(&html));
    assert_int_equal(unlink("test-html-fault.html"), 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_words),        cmocka_unit_test(test_no_words),
        cmocka_unit_test(test_json),         cmocka_unit_test(test_base64),
        cmocka_unit_test(test_base64_bytes), cmocka_unit_test(test_tables),
        cmocka_unit_test(test_bodies),       cmocka_unit_test(test_page),
        cmocka_unit_test(test_faults),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
