/* SPDX-License-Identifier: MIT */
/* The finish: for each batch its coats from area to coating, reducer and catalyst; then what to
 * buy. */
#include "report/shop/check_cell.h"
#include "report/shop/paper.h"
#include "report/words/show.h"

#include <stdio.h>

static const struct {
    const char *head;
    size_t offset;
} columns[] = {
    {"coats", offsetof(struct coat_figures, times)},
    {"wet film", offsetof(struct coat_figures, film)},
    {"one coat, nothing lost", offsetof(struct coat_figures, theoretical)},
    {"all coats, sprayed", offsetof(struct coat_figures, sprayed)},
    {"mixes", offsetof(struct coat_figures, mixes)},
    {"mix, with fixed loss", offsetof(struct coat_figures, mix)},
    {"coating", offsetof(struct coat_figures, coating_volume)},
    {"reducer", offsetof(struct coat_figures, reducer)},
    {"catalyst", offsetof(struct coat_figures, catalyst)},
    {"dry film", offsetof(struct coat_figures, dry_film)},
    {"cost", offsetof(struct coat_figures, cost)},
};
#define COLUMNS     (sizeof columns / sizeof *columns)
#define FOOT_ROWS   3 /* of notes below the last table */
#define DRY_COLUMN  10
#define COST_COLUMN 11

static uint32_t batch_table(const struct paper *paper, uint16_t sheet, uint32_t row,
                            const struct batch *b) {
    struct book *const book = paper->book;
    const struct rates *const rates = paper->base->rates;
    const struct finish *const finish = &rates->finishes[b->finish];
    const char *const color = show_batch_color(paper->base, b);
    book_keep(book, sheet, row, row + (uint32_t)b->coat_count + 4);
    book_format(book, sheet, row, 0, LOOK_SECTION, "%s%s%s", finish->name.s,
                color[0] == '\0' ? "" : ", ", color);
    row++;
    book_text(book, sheet, row, 0, LOOK_PLAIN, "sprayed area");
    book_figure(book, sheet, row, 1, LOOK_TOTAL, b->area);
    book_text(book, sheet, row, 2, LOOK_UNIT, paper_unit(paper, b->area));
    row++;
    if (b->coat_count == 0) {
        book_text(book, sheet, row, 0, LOOK_NOTE, "put out: its price is on the sheet Hardware");
        return row + 2;
    }
    book_text(book, sheet, row, 0, LOOK_HEAD, "coating");
    for (size_t c = 0; c < COLUMNS; c++) {
        book_text(book, sheet, row, (uint16_t)(1 + c), LOOK_HEAD, columns[c].head);
    }
    row++;
    for (size_t i = 0; i < b->coat_count; i++, row++) {
        book_text(book, sheet, row, 0, LOOK_PLAIN, rates->coatings[b->coats[i].coating].name.s);
        for (size_t c = 0; c < COLUMNS; c++) {
            book_figure(book, sheet, row, (uint16_t)(1 + c), LOOK_PLAIN,
                        paper_at(&b->coats[i], columns[c].offset));
        }
    }
    book_text(book, sheet, row, 0, LOOK_LABEL, "whole finish");
    book_figure(book, sheet, row, DRY_COLUMN, LOOK_TOTAL, b->dry_film);
    book_figure(book, sheet, row, COST_COLUMN, LOOK_TOTAL, b->cost);
    row++;
    book_text(book, sheet, row, 0, LOOK_PLAIN, "drying, one coat after another");
    book_figure(book, sheet, row, 1, LOOK_PLAIN, b->dry_hours);
    book_text(book, sheet, row, 2, LOOK_UNIT, "h");
    return row + 2;
}

static uint32_t product_table(const struct paper *paper, uint16_t sheet, uint32_t row) {
    static const char *const heads[] = {
        "product",   "needed", "container",          "volume", "price", "to buy", "bought",
        "left over", "cost",   "charged to the job", "check"};
    struct book *const book = paper->book;
    const struct finish_list *const list = &paper->base->finish;
    const uint32_t head = row;
    book_text(book, sheet, row, 0, LOOK_SECTION, "What to buy");
    paper_heads(paper, sheet, row + 1, 0, LOOK_HEAD, heads, sizeof heads / sizeof *heads);
    row += 2;
    for (size_t p = 0; p < list->product_count; p++) {
        const struct product *const product = &list->products[p];
        book_keep(book, sheet, row, row + (uint32_t)product->size_count - 1);
        if (product->color == NULL) {
            book_text(book, sheet, row, 0, LOOK_PLAIN, product->name);
        } else {
            book_format(book, sheet, row, 0, LOOK_PLAIN, "%s, %s", product->name, product->color);
        }
        book_figure(book, sheet, row, 1, LOOK_PLAIN, product->need);
        book_figure(book, sheet, row, 6, LOOK_PLAIN, product->bought);
        book_figure(book, sheet, row, 7, LOOK_PLAIN, product->left_over);
        book_figure(book, sheet, row, 8, LOOK_TOTAL, product->cost);
        book_figure(book, sheet, row, 9, LOOK_PLAIN, product->charged);
        check_containers(paper, sheet, row, 1, 4, product);
        for (size_t i = 0; i < product->size_count; i++, row++) {
            book_text(book, sheet, row, 2, LOOK_UNIT, product->sizes->s[i].words);
            book_figure(book, sheet, row, 3, LOOK_PLAIN, product->volumes[i]);
            book_figure(book, sheet, row, 4, LOOK_PLAIN, product->prices[i]);
            book_figure(book, sheet, row, 5, LOOK_LABEL, product->counts[i]);
        }
    }
    book_keep(book, sheet, head, row + FOOT_ROWS);
    return row + 1;
}

void sheet_finish(struct paper *paper) {
    const struct finish_list *const list = &paper->base->finish;
    const uint16_t sheet = book_sheet(paper->book, "Finish", "Finish to spray and to buy", true);
    uint32_t row = paper_title(paper, sheet, "Finish to spray and to buy", NULL);
    book_format(paper->book, sheet, 1, 0, LOOK_NOTE, "Volumes in %s, films in %s, money in %s.",
                unit_name(paper->base->measures.volume), unit_name(paper->base->measures.film),
                paper->base->rates->shop.currency.s);
    book_width(paper->book, sheet, 0, 30);
    row++;
    if (list->batch_count == 0) {
        book_text(paper->book, sheet, row, 0, LOOK_PLAIN, "nothing is sprayed in this job");
        return;
    }
    for (size_t b = 0; b < list->batch_count; b++) {
        row = batch_table(paper, sheet, row, &list->batches[b]);
    }
    row = product_table(paper, sheet, row);
    book_text(paper->book, sheet, row, 0, LOOK_NOTE,
              "The number of containers is the cheapest set that holds the need: chosen by the "
              "program. Run it again where the check says so.");
    book_text(paper->book, sheet, row + 1, 0, LOOK_NOTE,
              "Spray only in a ventilated booth away from flame and sparks, with the respirator "
              "the data sheet names.");
    book_text(paper->book, sheet, row + 2, 0, LOOK_NOTE,
              "Follow local fire and air rules. Do not pile rags. Film, reducer, catalyst and pot "
              "life: the product's data sheet rules.");
}
