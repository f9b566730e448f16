/* SPDX-License-Identifier: MIT */
/* The finish: for each batch its coats from area to coating, reducer and catalyst; then what to
 * buy. */
#include "report/shop/check_cell.h"
#include "report/shop/paper.h"
#include "report/words/show.h"

#define FOOT_ROWS   1 /* of notes below the last table */
#define LAST_COLUMN 9 /* that cautions run over */

static uint32_t batch_table(const struct paper *paper, uint16_t sheet, uint32_t row,
                            const struct batch *b) {
    struct book *const book = paper->book;
    const struct rates *const rates = paper->base->rates;
    const struct finish *const finish = &rates->finishes[b->finish];
    const char *const color = show_batch_color(paper->base, b);
    book_keep(book, sheet, row, row + (uint32_t)b->coat_count + 4);
    book_format(book, sheet, row, 0, LOOK_SECTION, "%s%s%s", finish->name.s,
                color[0] == '\0' ? "" : ", ", color);
    struct paper_list list = {.sheet = sheet, .figure = 1, .note = 3, .row = row + 1};
    paper_lines(paper, &list, &fields_batch, FIELD_SHEET, b);
    row = list.row;
    if (b->coat_count == 0) {
        book_text(book, sheet, row, 0, LOOK_NOTE, "put out: its price is on the sheet Hardware");
        return row + 2;
    }
    book_text(book, sheet, row, 0, LOOK_HEAD, "coating");
    paper_columns(paper, sheet, row++, 1, LOOK_HEAD, &fields_coat, FIELD_SHEET);
    for (size_t i = 0; i < b->coat_count; i++, row++) {
        book_text(book, sheet, row, 0, LOOK_PLAIN, rates->coatings[b->coats[i].coating].name.s);
        paper_cells(paper, sheet, row, 1, &fields_coat, FIELD_SHEET, &b->coats[i]);
    }
    book_text(book, sheet, row, 0, LOOK_LABEL, "whole finish");
    paper_total(paper, sheet, row, 1, &fields_coat, offsetof(struct coat_figures, dry_film),
                b->dry_film);
    paper_total(paper, sheet, row, 1, &fields_coat, offsetof(struct coat_figures, cost), b->cost);
    list.row = row + 1;
    paper_lines(paper, &list, &fields_batch, FIELD_MORE, b);
    return list.row + 1;
}

static uint32_t product_table(const struct paper *paper, uint16_t sheet, uint32_t row) {
    static const char *const heads[] = {"container", "volume", "price", "to buy"};
    struct book *const book = paper->book;
    const struct finish_list *const list = &paper->base->finish;
    const uint32_t head = row;
    book_text(book, sheet, row, 0, LOOK_SECTION, "What to buy");
    row++;
    book_text(book, sheet, row, 0, LOOK_HEAD, "product");
    paper_columns(paper, sheet, row, 1, LOOK_HEAD, &fields_product, FIELD_SHEET);
    paper_heads(paper, sheet, row, 2, LOOK_HEAD, heads, sizeof heads / sizeof *heads);
    const uint16_t check =
        paper_columns(paper, sheet, row, 6, LOOK_HEAD, &fields_product, FIELD_MORE);
    book_text(book, sheet, row++, check, LOOK_HEAD, "check");
    for (size_t p = 0; p < list->product_count; p++) {
        const struct product *const product = &list->products[p];
        book_keep(book, sheet, row, row + (uint32_t)product->size_count - 1);
        book_text(book, sheet, row, 0, LOOK_PLAIN, product->title);
        paper_cells(paper, sheet, row, 1, &fields_product, FIELD_SHEET, product);
        paper_cells(paper, sheet, row, 6, &fields_product, FIELD_MORE, product);
        check_containers(paper, sheet, row, product);
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

/* What is needed beyond the coats, and at both ends of the transfer efficiency. */
static uint32_t reserve_table(const struct paper *paper, uint16_t sheet, uint32_t row) {
    struct book *const book = paper->book;
    const struct finish_list *const list = &paper->base->finish;
    bool any = false;
    for (size_t p = 0; p < list->product_count; p++) {
        const struct product *const product = &list->products[p];
        any = any || !fig_none(product->reserve) || !fig_none(product->touch_up) ||
              !fig_none(product->need_low);
    }
    if (!any) {
        return row;
    }
    book_keep(book, sheet, row, row + (uint32_t)list->product_count + 2);
    book_text(book, sheet, row, 0, LOOK_SECTION, "What is needed, and where more is lost");
    book_text(book, sheet, row + 1, 0, LOOK_HEAD, "product");
    paper_columns(paper, sheet, row + 1, 1, LOOK_HEAD, &fields_product, FIELD_RANGE);
    row += 2;
    for (size_t p = 0; p < list->product_count; p++, row++) {
        book_text(book, sheet, row, 0, LOOK_PLAIN, list->products[p].title);
        paper_cells(paper, sheet, row, 1, &fields_product, FIELD_RANGE, &list->products[p]);
    }
    book_text(book, sheet, row, 0, LOOK_NOTE,
              "Left over below 0: at the lowest transfer the containers do not hold the need.");
    return row + 2;
}

void sheet_finish(const struct paper *paper, uint16_t sheet) {
    const struct finish_list *const list = &paper->base->finish;
    uint32_t row = paper_title(
        paper, sheet, 0,
        pool_words(&paper->book->pool, "Volumes in %s, films in %s, money in %s.",
                   unit_name(paper->base->units.volume), unit_name(paper->base->units.film),
                   paper->base->rates->shop.currency.s));
    book_width(paper->book, sheet, 0, 30);
    if (list->batch_count == 0) {
        book_text(paper->book, sheet, row, 0, LOOK_PLAIN, "nothing is sprayed in this job");
        return;
    }
    for (size_t b = 0; b < list->batch_count; b++) {
        row = batch_table(paper, sheet, row, &list->batches[b]);
    }
    row = reserve_table(paper, sheet, row);
    row = product_table(paper, sheet, row);
    book_text(paper->book, sheet, row, 0, LOOK_NOTE,
              "The number of containers is the cheapest set that holds the need: chosen by the "
              "program. Run it again where the check says so.");
    (void)paper_cautions(paper, sheet, row + 2, LAST_COLUMN, CAUTION_FINISH);
}
