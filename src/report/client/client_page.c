/* SPDX-License-Identifier: MIT */
#include "report/client/client_page.h"

#include "report/client/client_files.h"
#include "report/client/client_layout.h"
#include "report/html/html.h"

#include <string.h>

struct client_html {
    struct html html;
    struct html_table table;
    const struct offer *offer;
};

/* --- head --- */

static void put_letterhead(struct client_html *p) {
    struct html *const h = &p->html;
    const struct offer *const o = p->offer;
    html_put(h, "<header class=\"letter\">\n");
    if (o->logo.bytes != NULL) {
        html_picture(h, o->logo.bytes, o->logo.size, "logo", o->shop);
    }
    html_put(h, "<div>\n");
    html_element(h, "p class=\"shop\"", o->shop);
    for (size_t i = 0; i < o->shop_lines.count; i++) {
        html_element(h, "p", o->shop_lines.text[i]);
    }
    html_put(h, "</div>\n<div class=\"paper\">\n");
    html_element(h, "p class=\"kind\"", o->paper);
    if (o->mark[0] != '\0') {
        html_element(h, "p class=\"mark\"", o->mark);
    }
    html_put(h, "</div>\n</header>\n");
}

static void put_fact(struct html *h, const char *label, const char *text) {
    if (text[0] != '\0') {
        html_element(h, "dt", label);
        html_element(h, "dd", text);
    }
}

static void put_parties(struct client_html *p) {
    struct html *const h = &p->html;
    const struct offer *const o = p->offer;
    html_element(h, "h1", o->title);
    html_put(h, "<dl class=\"facts\">\n");
    put_fact(h, "For", o->client);
    put_fact(h, "At", o->client_address);
    for (size_t i = 0; i < o->fact_count; i++) {
        put_fact(h, o->facts[i].label, o->facts[i].text);
    }
    html_put(h, "</dl>\n");
}

/* The total, for who reads no further. */
static void put_total(struct client_html *p) {
    struct html *const h = &p->html;
    const struct offer *const o = p->offer;
    html_put(h, "<div class=\"total\">\n<p><span>");
    html_text(h, o->total_label);
    html_put(h, "</span> ");
    html_element(h, "strong", o->total_words);
    html_put(h, "</p>\n");
    if (o->other_total[0] != '\0') {
        html_element(h, "p", o->other_total);
    }
    if (o->pay_words[0] != '\0') {
        html_put(h, "<p><span>");
        html_text(h, o->pay_label);
        html_put(h, "</span> ");
        html_text(h, o->pay_words);
        html_put(h, "</p>\n");
    }
    html_put(h, "</div>\n");
    for (size_t i = 0; i < o->statements.count; i++) {
        html_element(h, "p", o->statements.text[i]);
    }
}

/* --- price --- */

static const char *class_of(enum offer_line_kind kind) {
    switch (kind) {
    case OFFER_TOTAL:
        return "sum grand";
    case OFFER_AFTER:
    case OFFER_BEFORE_TAX:
    case OFFER_BEFORE_CARD:
        return "sum";
    case OFFER_TAXED:
        return "note";
    default:
        return "";
    }
}

static void put_lines(struct client_html *p, const char *caption, const struct offer_line *lines,
                      size_t count) {
    static const struct html_head heads[] = {{"line", false}, {"amount", true}};
    if (count == 0) {
        return;
    }
    html_table(&p->table, &p->html, caption, heads, 2);
    for (size_t i = 0; i < count; i++) {
        html_row(&p->table, class_of(lines[i].kind));
        html_cell(&p->table, lines[i].words);
        html_cell(&p->table, lines[i].amount.text);
        html_row_end(&p->table);
    }
    html_table_end(&p->table);
}

static void put_options(struct client_html *p) {
    struct html *const h = &p->html;
    const struct offer *const o = p->offer;
    if (o->option_count > 0) {
        html_element(h, "h2", CLIENT_OPTIONS_HEAD);
    }
    for (size_t i = 0; i < o->option_count; i++) {
        const struct offer_option *const option = &o->options[i];
        html_element(h, "h3", option->name);
        html_element(h, "p", option->words);
        html_put(h, "<p>");
        html_element(h, "strong", option->first);
        html_put(h, " ");
        html_text(h, option->second);
        html_put(h, "</p>\n");
        if (option->payments[0] != '\0') {
            html_element(h, "p class=\"note\"", option->payments);
        }
    }
}

static void put_price(struct client_html *p) {
    struct html *const h = &p->html;
    const struct offer *const o = p->offer;
    html_element(h, "h2", CLIENT_PRICE_HEAD);
    put_lines(p, "From the doors to the total", o->lines, o->line_count);
    put_lines(p, o->payments_head[0] != '\0' ? o->payments_head : "What is due when", o->payments,
              o->payment_count);
    for (size_t i = 0; i < o->pay_notes.count; i++) {
        html_element(h, "p class=\"note\"", o->pay_notes.text[i]);
    }
    put_options(p);
}

/* --- doors --- */

/* Widths are the browser's. */
static double no_measure(void *paper, const char *text, bool bold) {
    (void)paper;
    (void)text;
    return bold ? 1 : 0;
}

static void put_door(struct client_html *p, const struct client_columns *columns,
                     const struct offer_door *door) {
    html_row(&p->table, "");
    for (size_t c = 0; c < columns->count; c++) {
        html_cell(&p->table, client_cell(p->offer, door, columns->list[c].is).text);
    }
    html_row_end(&p->table);
}

static void put_room(struct client_html *p, const struct offer_room *room) {
    const char *const name = room->name[0] == '\0' ? CLIENT_NO_ROOM : room->name;
    if (!client_room_has_head(p->offer, room)) {
        return;
    }
    html_row_head(&p->table, offer_has_sums(p->offer)
                                 ? pool_words(&p->html.pool, "%s: %s", name, room->amount.text)
                                 : name);
}

static void put_list(struct client_html *p) {
    const struct offer *const o = p->offer;
    struct client_columns columns;
    struct html_head heads[CLIENT_COLUMN_COUNT];
    client_columns_make(&columns, o, no_measure, p, 100, 0);
    for (size_t c = 0; c < columns.count; c++) {
        heads[c] = (struct html_head){columns.list[c].head, columns.list[c].number};
    }
    html_element(&p->html, "h2", client_list_head(o));
    html_table(&p->table, &p->html, "Each row of the list", heads, columns.count);
    for (size_t r = 0; r < o->room_count; r++) {
        put_room(p, &o->rooms[r]);
        for (size_t i = 0; i < o->rooms[r].count; i++) {
            put_door(p, &columns, &o->doors[o->rooms[r].first + i]);
        }
    }
    html_table_end(&p->table);
    html_element(&p->html, "p class=\"note\"", o->list_note);
}

static void put_kinds(struct client_html *p) {
    struct html *const h = &p->html;
    html_element(h, "h2", CLIENT_KINDS_HEAD);
    html_put(h, "<div class=\"looks\">\n");
    for (size_t i = 0; i < p->offer->kind_count; i++) {
        const struct offer_kind *const kind = &p->offer->kinds[i];
        html_put(h, "<figure>");
        html_drawing(h, &kind->drawing, false,
                     pool_words(&h->pool, "Drawing of kind %s: %s", kind->letter, kind->words));
        html_put(h, "<figcaption>");
        html_element(h, "b", kind->letter);
        html_text(h, kind->words);
        html_put(h, "</figcaption></figure>\n");
    }
    html_put(h, "</div>\n");
}

/* --- words --- */

static void put_words(struct client_html *p) {
    struct html *const h = &p->html;
    struct client_words lists[CLIENT_WORDS_COUNT];
    client_words_make(p->offer, lists);
    for (size_t i = 0; i < CLIENT_WORDS_COUNT; i++) {
        if (lists[i].texts->count == 0) {
            continue;
        }
        html_element(h, "h2", lists[i].head);
        html_put(h, lists[i].numbered ? "<ol>\n" : "<ul>\n");
        for (size_t n = 0; n < lists[i].texts->count; n++) {
            html_element(h, "li", lists[i].texts->text[n]);
        }
        html_put(h, lists[i].numbered ? "</ol>\n" : "</ul>\n");
    }
}

/* To be printed and signed. */
static void put_signatures(struct client_html *p) {
    struct html *const h = &p->html;
    const char *names[2];
    const size_t count = client_signers(p->offer, names);
    html_element(h, "h2", p->offer->sign_head);
    html_element(h, "p", p->offer->agreed);
    html_put(h, "<div class=\"signs\">\n");
    for (size_t i = 0; i < count; i++) {
        html_put(h, "<div>\n");
        html_element(h, "p", names[i]);
        html_put(h, "<p class=\"line\">");
        html_element(h, "span", CLIENT_SIGN_WHO);
        html_element(h, "span", CLIENT_SIGN_WHEN);
        html_put(h, "</p>\n</div>\n");
    }
    html_put(h, "</div>\n");
}

bool client_page_write(const struct offer *o, const char *path) {
    struct client_html p = {.offer = o};
    bool held = html_open(&p.html, path, o->title, client_style, false);
    if (held) {
        html_put(&p.html, "<body>\n");
        put_letterhead(&p);
        html_put(&p.html, "<main>\n");
        put_parties(&p);
        put_total(&p);
        put_price(&p);
        put_list(&p);
        put_kinds(&p);
        put_words(&p);
        put_signatures(&p);
        html_put(&p.html, "</main>\n<footer>\n");
        html_element(&p.html, "p class=\"note\"", o->reference);
        html_put(&p.html, "</footer>\n</body>\n");
    }
    return html_close(&p.html) && held;
}
