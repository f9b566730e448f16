/* SPDX-License-Identifier: MIT */
#include "report/shop/size_book.h"

#include "base/text.h"
#include "report/shop/own_sheet.h"
#include "report/words/shipped.h"
#include "report/words/show.h"
#include "report/words/size_words.h"

#include <assert.h>
#include <string.h>

/* Columns of the tables: words, then numbers. */
enum { SIZE, AREA, EACH, PRICE, CLIENT, DIRECT, LEFT, BOUGHT, HOURS, PER_AREA, FLAT, DOES };
#define CHART_AT  4
#define MOST_BARS 24 /* of a chart: more could not be told apart */

_Static_assert(SIZE_BOOK_MOST_STYLES <= BOOK_MOST_SHEETS, "a sheet a style");

/* The sheet of a style as it grows. */
struct size_sheet {
    struct own_sheet on;
    const struct size_table *table;
    const struct size_style *style;
};

static void put_size(const struct size_sheet *s, const struct size_line *line) {
    book_text(
        s->on.book, s->on.sheet, s->on.row, SIZE, LOOK_PLAIN,
        show_size(line->row.width.amount, line->row.height.amount, s->on.base->job->unit).text);
}

/* --- the chart --- */

static int64_t height_of(const struct size_line *line) {
    return line->row.height.amount;
}

/* The one height that a chart shows where all sizes are too many; 0: it shows all. */
static int64_t height_shown(const struct size_style *style) {
    size_t heights = 0;
    while (heights < style->line_count &&
           style->lines[heights].row.width.amount == style->lines[0].row.width.amount) {
        heights++;
    }
    return style->line_count <= MOST_BARS ? 0 : height_of(&style->lines[heights / 2]);
}

/* What an area costs at each size, beside the flat price. */
static void put_chart(struct size_sheet *s) {
    struct pool *const pool = &s->on.book->pool;
    const char *const area = size_area_name(s->on.base);
    const char *const heads[] = {"size", pool_words(pool, "price a %s", area),
                                 pool_words(pool, "flat price a %s", area)};
    const int64_t height = height_shown(s->style);
    const char *const count = pool_words(pool, "%s", show_number(s->table->counts[0], 0).text);
    struct book_chart chart = {
        .kind = CHART_BARS,
        .title = pool_words(pool, "Price a %s by size, %s more", area, count),
        .alt = "Bars: the price by area of each size beside the flat price by area; the numbers "
               "stand in the table above",
        .series = 2,
        .column = CHART_AT,
        .from_zero = true,
    };
    own_sheet_section(&s->on, pool_words(pool, "Price by area, %s more added to this job%s", count,
                                         height == 0 ? "" : ", the sizes of one height"));
    own_sheet_heads(&s->on, heads, sizeof heads / sizeof *heads);
    chart.first = s->on.row;
    for (size_t l = 0; l < s->style->line_count; l++) {
        const struct size_line *const line = &s->style->lines[l];
        if (line->reason == NULL && line->prices[SIZE_ADDED][0].has &&
            (height == 0 || height == height_of(line))) {
            chart.from_zero = chart.from_zero && line->prices[SIZE_ADDED][0].per_area >= 0 &&
                              s->style->flat.rate >= 0;
            put_size(s, line);
            own_sheet_money(&s->on, SIZE + 1, line->prices[SIZE_ADDED][0].per_area);
            own_sheet_money(&s->on, SIZE + 2, s->style->flat.rate);
            s->on.row++;
        }
    }
    chart.last = s->on.row - 1;
    own_sheet_chart(&s->on, &chart);
}

/* --- by how many --- */

static void put_price(const struct size_sheet *s, const struct size_line *line,
                      const struct size_price *price) {
    const struct outcome *const o = &price->outcome;
    const struct own_sheet *const on = &s->on;
    book_number(on->book, on->sheet, on->row, AREA, LOOK_PLAIN, UNIT_COUNT, SIZE_AREA_DECIMALS,
                line->area);
    own_sheet_money(on, EACH, price->each);
    own_sheet_money(on, PRICE, o->before_tax);
    own_sheet_money(on, CLIENT, o->client);
    own_sheet_money(on, DIRECT, o->direct);
    own_sheet_money(on, LEFT, o->left);
    own_sheet_money(on, BOUGHT, o->bought);
    book_number(on->book, on->sheet, on->row, HOURS, LOOK_PLAIN, UNIT_COUNT, 2, o->hours);
    own_sheet_money(on, PER_AREA, price->per_area);
    own_sheet_money(on, FLAT, price->flat);
    book_text(on->book, on->sheet, on->row, DOES,
              price->flat_does == FLAT_BEARS ? LOOK_UNIT : LOOK_CHECK,
              pool_words(&on->book->pool, "%s%s", flat_does_mark(price->flat_does),
                         flat_does_name(price->flat_does)));
}

static void put_count(struct size_sheet *s, enum size_way way, size_t count) {
    struct pool *const pool = &s->on.book->pool;
    const char *const area = size_area_name(s->on.base);
    const char *const heads[] = {
        "size",          pool_words(pool, "%s of one", area),
        "price of each", "price before tax",
        "client pays",   "direct cost",
        "left over",     "to buy",
        "hours",         pool_words(pool, "price a %s", area),
        "by area",       "which",
    };
    const uint32_t first = s->on.row + 1;
    own_sheet_section(&s->on,
                      pool_words(pool, "%s, %s", show_number(s->table->counts[count], 0).text,
                                 size_way_name(way)));
    own_sheet_heads(&s->on, heads, sizeof heads / sizeof *heads);
    for (size_t l = 0; l < s->style->line_count; l++) {
        const struct size_line *const line = &s->style->lines[l];
        put_size(s, line);
        if (line->reason != NULL) {
            book_span(s->on.book, s->on.sheet, s->on.row, AREA, DOES, LOOK_WRAP,
                      pool_words(pool, "cannot be made: %s", line->reason));
        } else if (line->prices[way][count].has) {
            put_price(s, line, &line->prices[way][count]);
        } else {
            book_text(s->on.book, s->on.sheet, s->on.row, AREA, LOOK_PLAIN,
                      "cannot be estimated so");
        }
        s->on.row++;
    }
    book_keep(s->on.book, s->on.sheet, first, s->on.row - 1);
}

/* --- a sheet --- */

/* Of the tab: the style's name where spreadsheets take it as it is, else a number. They take no
 * more than 31 letters, not `History`, and no two names that are one but for the case of letters,
 * which of any but plain ones is for them to say. */
static const char *tab_of(const struct size_style *style, size_t number, struct pool *pool) {
    static const char own[] = "Style ";
    char start[sizeof own] = "";
    const char *const name = style->name;
    bool plain = strlen(name) <= 31 && !text_same(name, "History");
    for (size_t i = 0; name[i] != '\0'; i++) {
        if (i < sizeof own - 1) {
            start[i] = name[i];
        }
        plain = plain && (unsigned char)name[i] < 0x80;
    }
    return plain && !text_same(start, own) ? name : pool_words(pool, "%s%zu", own, number + 1);
}

static void put_style(struct book *book, const struct estimate *base,
                      const struct size_table *table, size_t number) {
    static const double widths[] = {17, 10, 10, 10, 10, 10, 10, 10, 8, 10, 10, 13};
    const struct size_style *const style = &table->styles[number];
    struct pool *const pool = &book->pool;
    struct size_sheet s = {
        .on = own_sheet_add(book, base, tab_of(style, number, pool), book_footer(pool, style->name),
                            widths, sizeof widths / sizeof *widths, DOES),
        .table = table,
        .style = style,
    };
    own_sheet_words(&s.on, LOOK_TITLE, pool_words(pool, "Prices by size: %s", style->name));
    own_sheet_words(&s.on, LOOK_NOTE,
                    pool_words(pool, "%s, made %s; money in %s", base->job->title.s,
                               estimate_name(base), base->rates->shop.currency.s));
    if (shipped_example(base)) {
        own_sheet_words(&s.on, LOOK_WARN, SHIPPED_EXAMPLE_WORDS);
    }
    own_sheet_words(&s.on, LOOK_WRAP, size_flat_words(base, table, style, pool));
    own_sheet_words(&s.on, LOOK_WRAP, SIZE_TERMS_WORDS);
    own_sheet_words(&s.on, LOOK_WRAP, SIZE_WAYS_WORDS);
    put_chart(&s);
    for (int way = 0; way < SIZE_WAY_COUNT; way++) {
        for (size_t c = 0; c < table->count_count; c++) {
            put_count(&s, (enum size_way)way, c);
        }
    }
}

bool size_book_write(const struct estimate *base, const struct size_table *table,
                     const char *path) {
    struct book book;
    assert(table->style_count <= SIZE_BOOK_MOST_STYLES);
    book_init(&book, NULL);
    for (size_t s = 0; s < table->style_count; s++) {
        put_style(&book, base, table, s);
    }
    return own_sheet_write(&book, base, path);
}
