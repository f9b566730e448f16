/* SPDX-License-Identifier: MIT */
#include "report/shop/range_book.h"

#include "report/shop/paper.h"
#include "report/words/chance_words.h"
#include "report/words/show.h"
#include "report/xlsx/book_write.h"

#define WORDS      0
#define FIRST      1
#define LAST       5 /* of what runs over columns */
#define ROW_HEIGHT 12.75
#define MOST_BARS  15 /* what moves less would not be seen */

/* The sheet as it grows. */
struct range_sheet {
    struct book *book;
    const struct estimate *base;
    const struct ranges *ranges;
    const struct chance *chance;
    uint16_t sheet;
    uint32_t row;
    uint8_t decimals; /* of money */
};

static void put_money(const struct range_sheet *s, uint16_t column, int64_t money) {
    book_number(s->book, s->sheet, s->row, column, LOOK_PLAIN, UNIT_MONEY, s->decimals, money);
}

static void put_percent(const struct range_sheet *s, uint16_t column, int32_t tenths) {
    book_number(s->book, s->sheet, s->row, column, LOOK_PLAIN, UNIT_PERCENT, 1, tenths);
}

static void put_section(struct range_sheet *s, const char *words) {
    s->row++;
    book_text(s->book, s->sheet, s->row++, WORDS, LOOK_SECTION, words);
}

static void put_words(struct range_sheet *s, enum look look, const char *words) {
    book_span(s->book, s->sheet, s->row++, WORDS, LAST, look, words);
}

static void put_heads(struct range_sheet *s, const char *const *heads, size_t count) {
    for (size_t i = 0; i < count; i++) {
        book_text(s->book, s->sheet, s->row, (uint16_t)i, LOOK_HEAD, heads[i]);
    }
    s->row++;
}

/* A chart below its table, which ends before the present row. */
static void put_chart(struct range_sheet *s, struct book_chart *chart) {
    chart->sheet = s->sheet;
    chart->words = WORDS;
    chart->axis = chart->axis == NULL ? s->base->rates->shop.currency.s : chart->axis;
    chart->row = ++s->row;
    if (chart->last < chart->first) {
        return;
    }
    book_chart(s->book, chart);
    const uint32_t high = (uint32_t)(book_chart_height(chart) / ROW_HEIGHT) + 1;
    book_keep(s->book, s->sheet, s->row, s->row + high);
    s->row += high + 1;
}

/* --- one rate at a time --- */

static void put_end(const struct range_sheet *s, uint16_t column, const struct range_end *end,
                    int64_t money) {
    if (end->has) {
        put_money(s, column, money);
    }
}

static void put_rates(struct range_sheet *s) {
    static const char *const heads[] = {"rate",         "client pays, at low",
                                        "at high",      "direct cost, at low",
                                        "at high",      "from",
                                        "as it stands", "to",
                                        "reason"};
    struct book_chart chart = {
        .kind = CHART_BARS,
        .title = "What each rate adds to the price",
        .alt = "Bars: what the client pays more with each rate at its low and at its high; the "
               "numbers stand in the table above",
        .series = 2,
    };
    put_section(s, "One rate at a time");
    put_heads(s, heads, sizeof heads / sizeof *heads);
    chart.first = s->row;
    for (size_t i = 0; i < s->ranges->count; i++) {
        const struct range_row *const r = &s->ranges->rows[i];
        if (range_row_idle(r)) {
            continue;
        }
        book_format(s->book, s->sheet, s->row, WORDS, LOOK_PLAIN, "[%s] %s%s%s", r->section, r->key,
                    r->lead[0] == '\0' ? "" : ", ", r->lead);
        put_end(s, FIRST, &r->low, r->low.more.client);
        put_end(s, FIRST + 1, &r->high, r->high.more.client);
        put_end(s, FIRST + 2, &r->low, r->low.more.direct);
        put_end(s, FIRST + 3, &r->high, r->high.more.direct);
        book_text(s->book, s->sheet, s->row, FIRST + 4, LOOK_UNIT, r->low.text);
        book_text(s->book, s->sheet, s->row, FIRST + 5, LOOK_UNIT, r->likely);
        book_text(s->book, s->sheet, s->row, FIRST + 6, LOOK_UNIT, r->high.text);
        book_text(s->book, s->sheet, s->row++, FIRST + 7, LOOK_WRAP,
                  r->reason == NULL ? "no reason is given" : r->reason);
    }
    const uint32_t most = chart.first + MOST_BARS;
    chart.last = (s->row < most ? s->row : most) - 1;
    put_chart(s, &chart);
}

/* --- all at once --- */

static void put_cost(struct range_sheet *s, const char *words, int64_t direct, int64_t full) {
    book_text(s->book, s->sheet, s->row, WORDS, LOOK_PLAIN, words);
    put_money(s, FIRST, direct);
    put_money(s, FIRST + 1, full);
    s->row++;
}

static void put_costs(struct range_sheet *s) {
    static const char *const heads[] = {"cost", "direct", "with overhead"};
    const struct chance *const c = s->chance;
    put_heads(s, heads, 3);
    put_cost(s, "with the likely values", c->direct.figured, c->full.figured);
    put_cost(s, "least drawn", c->direct.least, c->full.least);
    for (int p = 0; p < CHANCE_POINTS; p++) {
        put_cost(s,
                 pool_words(&s->book->pool, "at most, in %d %% of the draws",
                            chance_point_percent((enum chance_point)p)),
                 c->direct.points[p], c->full.points[p]);
    }
    put_cost(s, "most drawn", c->direct.most, c->full.most);
}

static void put_risks(struct range_sheet *s) {
    put_section(s, "What the price risks");
    book_text(s->book, s->sheet, s->row, WORDS, LOOK_PLAIN, "sold for, before tax");
    put_money(s, FIRST, s->chance->price);
    s->row++;
    book_text(s->book, s->sheet, s->row, WORDS, LOOK_PLAIN, "profit wanted");
    put_money(s, FIRST, s->chance->wanted);
    s->row++;
    for (int i = 0; i < CHANCE_RISKS; i++) {
        book_text(s->book, s->sheet, s->row, WORDS, LOOK_WRAP,
                  chance_risk_words((enum chance_risk)i));
        put_percent(s, FIRST, chance_risk((enum chance_risk)i, s->chance));
        s->row++;
    }
    put_words(s, LOOK_WRAP, chance_contingency_words(s->chance, s->base, &s->book->pool));
}

static void put_steps(struct range_sheet *s) {
    static const char *const heads[] = {"cost with overhead, from", "draws"};
    const struct chance *const c = s->chance;
    struct book_chart chart = {
        .kind = CHART_COLUMNS,
        .title = "Cost with overhead",
        .axis = "draws",
        .alt = "Columns: how many draws came to a cost in each step; the numbers stand in the "
               "table above",
        .series = 1,
    };
    s->row++;
    put_heads(s, heads, 2);
    chart.first = s->row;
    for (size_t i = 0; i < c->bin_count; i++) {
        put_money(s, WORDS, c->bin_from + (int64_t)i * c->bin_step);
        book_number(s->book, s->sheet, s->row++, FIRST, LOOK_PLAIN, UNIT_COUNT, 0,
                    (int64_t)c->bins[i]);
    }
    chart.last = s->row - 1;
    put_chart(s, &chart);
}

static void put_shares(struct range_sheet *s) {
    static const char *const heads[] = {"range", "share"};
    put_section(s, "What the cost with overhead goes with");
    put_words(s, LOOK_NOTE, CHANCE_SHARE_WORDS);
    put_heads(s, heads, 2);
    for (size_t i = 0; i < s->chance->drawn; i++) {
        book_text(s->book, s->sheet, s->row, WORDS, LOOK_PLAIN,
                  chance_input_words(&s->chance->inputs[i], &s->book->pool));
        put_percent(s, FIRST, s->chance->inputs[i].share);
        s->row++;
    }
}

static void put_draws(struct range_sheet *s) {
    put_section(s, "All ranges at once");
    put_words(s, LOOK_WRAP, chance_drawn_words(s->chance, s->base->rates, &s->book->pool));
    if (s->chance->drawn > 0) {
        put_costs(s);
        put_steps(s);
        put_risks(s);
        put_shares(s);
    }
    const char *const *const notes = chance_notes(s->chance, &s->book->pool);
    s->row++;
    for (size_t i = 0; notes != NULL && notes[i] != NULL; i++) {
        put_words(s, LOOK_WRAP, notes[i]);
    }
}

bool range_book_write(const struct estimate *base, const struct ranges *ranges,
                      const struct chance *chance, const char *path) {
    struct book book;
    book_init(&book, NULL);
    struct range_sheet s = {.book = &book,
                            .base = base,
                            .ranges = ranges,
                            .chance = chance,
                            .decimals = base->tape.money_decimals};
    s.sheet = book_sheet(&book, "Range", "Range", true);
    static const double widths[] = {38, 11, 11, 11, 11, 15, 15, 15, 24};
    for (uint16_t column = 0; column < sizeof widths / sizeof *widths; column++) {
        book_width(&book, s.sheet, column, widths[column]);
    }
    book_format(&book, s.sheet, s.row++, WORDS, LOOK_TITLE, "Range: %s", base->job->title.s);
    put_words(&s, LOOK_NOTE,
              pool_words(&book.pool, "made %s; as it stands the client pays %s",
                         estimate_name(base), show_number(ranges->job.client, s.decimals).text));
    put_rates(&s);
    put_draws(&s);
    const struct book_facts facts = paper_facts(&book.pool, base);
    const bool written =
        !book_failed(&book) && !pool_failed(&book.pool) && book_write(&book, &facts, path);
    book_clear(&book);
    return written;
}
