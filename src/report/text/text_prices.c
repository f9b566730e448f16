/* SPDX-License-Identifier: MIT */
/* A price list as the client reads it. */
#include "report/text/print.h"

static void print_table(struct page *page, const struct offer_price_table *table) {
    struct grid_column columns[1 + OFFER_MOST_COUNTS] = {{"size", GRID_LEFT, true}};
    struct grid grid;
    for (size_t c = 0; c < table->count; c++) {
        columns[1 + c] = (struct grid_column){table->counts[c], GRID_RIGHT, false};
    }
    say(page, "%s", "");
    if (table->style[0] != '\0') {
        say_wrapped(page, "", 0, "%s", table->style);
        say_wrapped(page, "", 0, "%s", table->made);
        say(page, "%s", "");
    }
    say_wrapped(page, "", 0, "%s", table->head);
    grid_init(&grid, columns, 1 + table->count, 2);
    for (size_t i = 0; i < table->size_count; i++) {
        const struct offer_size *const size = &table->sizes[i];
        grid_put(&grid, "%s", size->words);
        for (size_t c = 0; c < table->count; c++) {
            grid_put(&grid, "%s", size->prices[c].text[0] == '\0' ? "-" : size->prices[c].text);
        }
    }
    grid_print(&grid, page);
    grid_clear(&grid);
}

void prices_print(struct page *page, const struct offer *o) {
    static const struct grid_column columns[] = {{NULL, GRID_LEFT, false}, {NULL, GRID_LEFT, true}};
    struct grid grid;
    say_wrapped(page, o->paper, 0, ": %s", o->title);
    grid_init(&grid, columns, 2, 2);
    if (o->shop[0] != '\0') {
        grid_put(&grid, "From");
        grid_put(&grid, "%s", o->shop);
    }
    for (size_t i = 0; i < o->fact_count; i++) {
        grid_put(&grid, "%s", o->facts[i].label);
        grid_put(&grid, "%s", o->facts[i].text);
    }
    grid_print(&grid, page);
    grid_clear(&grid);
    say(page, "%s", "");
    for (size_t i = 0; i < o->statements.count; i++) {
        say_wrapped(page, "", 0, "%s", o->statements.text[i]);
    }
    for (size_t i = 0; i < o->prices->table_count; i++) {
        print_table(page, &o->prices->tables[i]);
    }
    if (o->list_note[0] != '\0') {
        say(page, "%s", "");
        say_wrapped(page, "", 0, "%s", o->list_note);
    }
}
