/* SPDX-License-Identifier: MIT */
#include "report/shop/own_sheet.h"

#include "report/shop/paper.h"

#define ROW_HEIGHT 12.75

struct own_sheet own_sheet_add(struct book *book, const struct estimate *base, const char *tab,
                               const char *foot, const double *widths, uint16_t count,
                               uint16_t last) {
    const struct own_sheet s = {.book = book,
                                .base = base,
                                .sheet = book_sheet(book, tab, foot, true),
                                .last = last,
                                .decimals = base->tape.money_decimals};
    for (uint16_t column = 0; column < count; column++) {
        book_width(book, s.sheet, column, widths[column]);
    }
    return s;
}

void own_sheet_money(const struct own_sheet *s, uint16_t column, int64_t money) {
    book_number(s->book, s->sheet, s->row, column, LOOK_PLAIN, UNIT_MONEY, s->decimals, money);
}

void own_sheet_section(struct own_sheet *s, const char *words) {
    s->row++;
    book_text(s->book, s->sheet, s->row++, 0, LOOK_SECTION, words);
}

void own_sheet_words(struct own_sheet *s, enum look look, const char *words) {
    book_span(s->book, s->sheet, s->row++, 0, s->last, look, words);
}

void own_sheet_heads(struct own_sheet *s, const char *const *heads, size_t count) {
    for (size_t i = 0; i < count; i++) {
        book_text(s->book, s->sheet, s->row, (uint16_t)i, LOOK_HEAD, heads[i]);
    }
    s->row++;
}

void own_sheet_chart(struct own_sheet *s, struct book_chart *chart) {
    chart->sheet = s->sheet;
    chart->words = 0;
    chart->axis = chart->axis == NULL ? s->base->rates->shop.currency.s : chart->axis;
    if (chart->last < chart->first) {
        return;
    }
    const bool beside = chart->column > 0;
    chart->row = beside ? chart->first - 1 : s->row + 1;
    book_chart(s->book, chart);
    const uint32_t end =
        chart->row + (uint32_t)(book_chart_height(chart) / ROW_HEIGHT) + (beside ? 1 : 2);
    book_keep(s->book, s->sheet, chart->row, end - 1);
    s->row = s->row > end ? s->row : end;
}

bool own_sheet_write(struct book *book, const struct estimate *base, const char *path) {
    const struct book_facts facts = paper_facts(&book->pool, base);
    const bool written =
        !book_failed(book) && !pool_failed(&book->pool) && book_write(book, &facts, path);
    book_clear(book);
    return written;
}
