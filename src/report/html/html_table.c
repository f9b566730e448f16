/* SPDX-License-Identifier: MIT */
#include "report/html/html.h"

#include <assert.h>

/* Words and one or two numbers, which have room beside them on a narrow page too. */
static bool is_lines(const struct html_head *heads, size_t count) {
    bool numbers = count <= 3;
    for (size_t i = 1; i < count; i++) {
        numbers = numbers && heads[i].number;
    }
    return numbers;
}

void html_table(struct html_table *t, struct html *h, const char *caption,
                const struct html_head *heads, size_t count) {
    html_put(h, is_lines(heads, count) ? "<table class=\"lines\">\n" : "<table>\n");
    html_element(h, "caption", caption);
    html_put(h, "<thead><tr>");
    for (size_t i = 0; i < count; i++) {
        html_element(h,
                     heads[i].name[0] == '\0' ? "td"
                     : heads[i].number        ? "th scope=\"col\" class=\"n\""
                                              : "th scope=\"col\"",
                     heads[i].name);
    }
    html_put(h, "</tr></thead>\n");
    *t = (struct html_table){.html = h, .heads = heads, .count = count};
}

static void open_body(struct html_table *t) {
    if (!t->body) {
        html_put(t->html, "<tbody>\n");
        t->body = true;
    }
}

static void close_body(struct html_table *t) {
    if (t->body) {
        html_put(t->html, "</tbody>\n");
        t->body = false;
    }
}

void html_table_end(struct html_table *t) {
    close_body(t);
    html_put(t->html, "</table>\n");
}

void html_row_head(struct html_table *t, const char *words) {
    close_body(t);
    open_body(t);
    html_format(t->html, "<tr class=\"part\"><th colspan=\"%zu\" scope=\"rowgroup\">", t->count);
    html_text(t->html, words);
    html_put(t->html, "</th></tr>\n");
}

void html_row(struct html_table *t, const char *class) {
    t->column = 0;
    open_body(t);
    html_format(t->html, class[0] == '\0' ? "<tr%s>" : "<tr class=\"%s\">", class);
}

void html_row_end(struct html_table *t) {
    html_put(t->html, "</tr>\n");
}

void html_cell_open(struct html_table *t) {
    struct html *const h = t->html;
    const size_t at = t->column++;
    assert(at < t->count);
    if (at == 0) {
        html_put(h, "<th scope=\"row\">");
        return;
    }
    html_put(h, t->heads[at].number ? "<td class=\"n\"" : "<td");
    if (t->heads[at].name[0] != '\0') {
        html_put(h, " data-l=\"");
        html_text(h, t->heads[at].name);
        html_put(h, "\"");
    }
    html_put(h, ">");
}

void html_cell_end(struct html_table *t) {
    html_put(t->html, t->column == 1 ? "</th>" : "</td>");
}

void html_cell(struct html_table *t, const char *words) {
    if (words == NULL || words[0] == '\0') {
        html_cell_none(t);
        return;
    }
    html_cell_open(t);
    html_text(t->html, words);
    html_cell_end(t);
}

void html_cell_none(struct html_table *t) {
    t->column++;
    html_put(t->html, t->column == 1 ? "<th></th>" : "<td class=\"none\"></td>");
}
