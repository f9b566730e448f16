/* SPDX-License-Identifier: MIT */
#include "report/shop/range_book.h"

#include "report/shop/own_sheet.h"
#include "report/words/chance_words.h"
#include "report/words/show.h"

#define WORDS     0
#define FIRST     1
#define LAST      5  /* of what runs over columns */
#define MOST_BARS 15 /* what moves less would not be seen */

/* The sheet as it grows. */
struct range_sheet {
    struct own_sheet on;
    const struct ranges *ranges;
    const struct chance *chance;
};

static void put_percent(const struct range_sheet *s, uint16_t column, int32_t tenths) {
    book_number(s->on.book, s->on.sheet, s->on.row, column, LOOK_PLAIN, UNIT_PERCENT, 1, tenths);
}

/* --- one rate at a time --- */

static void put_end(const struct range_sheet *s, uint16_t column, const struct range_end *end,
                    int64_t money) {
    if (end->has) {
        own_sheet_money(&s->on, column, money);
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
    own_sheet_section(&s->on, "One rate at a time");
    own_sheet_heads(&s->on, heads, sizeof heads / sizeof *heads);
    chart.first = s->on.row;
    for (size_t i = 0; i < s->ranges->count; i++) {
        const struct range_row *const r = &s->ranges->rows[i];
        if (range_row_idle(r)) {
            continue;
        }
        book_format(s->on.book, s->on.sheet, s->on.row, WORDS, LOOK_PLAIN, "[%s] %s%s%s",
                    r->section, r->key, r->lead[0] == '\0' ? "" : ", ", r->lead);
        put_end(s, FIRST, &r->low, r->low.more.client);
        put_end(s, FIRST + 1, &r->high, r->high.more.client);
        put_end(s, FIRST + 2, &r->low, r->low.more.direct);
        put_end(s, FIRST + 3, &r->high, r->high.more.direct);
        book_text(s->on.book, s->on.sheet, s->on.row, FIRST + 4, LOOK_UNIT, r->low.text);
        book_text(s->on.book, s->on.sheet, s->on.row, FIRST + 5, LOOK_UNIT, r->likely);
        book_text(s->on.book, s->on.sheet, s->on.row, FIRST + 6, LOOK_UNIT, r->high.text);
        book_text(s->on.book, s->on.sheet, s->on.row++, FIRST + 7, LOOK_WRAP,
                  r->reason == NULL ? "no reason is given" : r->reason);
    }
    const uint32_t most = chart.first + MOST_BARS;
    chart.last = (s->on.row < most ? s->on.row : most) - 1;
    own_sheet_chart(&s->on, &chart);
}

/* --- all at once --- */

static void put_cost(struct range_sheet *s, const char *words, int64_t direct, int64_t full) {
    book_text(s->on.book, s->on.sheet, s->on.row, WORDS, LOOK_PLAIN, words);
    own_sheet_money(&s->on, FIRST, direct);
    own_sheet_money(&s->on, FIRST + 1, full);
    s->on.row++;
}

static void put_costs(struct range_sheet *s) {
    static const char *const heads[] = {"cost", "direct", "with overhead"};
    const struct chance *const c = s->chance;
    own_sheet_heads(&s->on, heads, 3);
    put_cost(s, "with the likely values", c->direct.figured, c->full.figured);
    put_cost(s, "least drawn", c->direct.least, c->full.least);
    for (int p = 0; p < CHANCE_POINTS; p++) {
        put_cost(s,
                 pool_words(&s->on.book->pool, "at most, in %d %% of the draws",
                            chance_point_percent((enum chance_point)p)),
                 c->direct.points[p], c->full.points[p]);
    }
    put_cost(s, "most drawn", c->direct.most, c->full.most);
}

static void put_risks(struct range_sheet *s) {
    own_sheet_section(&s->on, "What the price risks");
    book_text(s->on.book, s->on.sheet, s->on.row, WORDS, LOOK_PLAIN, "sold for, before tax");
    own_sheet_money(&s->on, FIRST, s->chance->price);
    s->on.row++;
    book_text(s->on.book, s->on.sheet, s->on.row, WORDS, LOOK_PLAIN, "profit wanted");
    own_sheet_money(&s->on, FIRST, s->chance->wanted);
    s->on.row++;
    for (int i = 0; i < CHANCE_RISKS; i++) {
        book_text(s->on.book, s->on.sheet, s->on.row, WORDS, LOOK_WRAP,
                  chance_risk_words((enum chance_risk)i));
        put_percent(s, FIRST, chance_risk((enum chance_risk)i, s->chance));
        s->on.row++;
    }
    own_sheet_words(&s->on, LOOK_WRAP,
                    chance_contingency_words(s->chance, s->on.base, &s->on.book->pool));
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
    s->on.row++;
    own_sheet_heads(&s->on, heads, 2);
    chart.first = s->on.row;
    for (size_t i = 0; i < c->bin_count; i++) {
        own_sheet_money(&s->on, WORDS, c->bin_from + (int64_t)i * c->bin_step);
        book_number(s->on.book, s->on.sheet, s->on.row++, FIRST, LOOK_PLAIN, UNIT_COUNT, 0,
                    (int64_t)c->bins[i]);
    }
    chart.last = s->on.row - 1;
    own_sheet_chart(&s->on, &chart);
}

static void put_shares(struct range_sheet *s) {
    static const char *const heads[] = {"range", "share"};
    own_sheet_section(&s->on, "What the cost with overhead goes with");
    own_sheet_words(&s->on, LOOK_NOTE, CHANCE_SHARE_WORDS);
    own_sheet_heads(&s->on, heads, 2);
    for (size_t i = 0; i < s->chance->drawn; i++) {
        book_text(s->on.book, s->on.sheet, s->on.row, WORDS, LOOK_PLAIN,
                  chance_input_words(&s->chance->inputs[i], &s->on.book->pool));
        put_percent(s, FIRST, s->chance->inputs[i].share);
        s->on.row++;
    }
}

static void put_draws(struct range_sheet *s) {
    own_sheet_section(&s->on, "All ranges at once");
    own_sheet_words(&s->on, LOOK_WRAP,
                    chance_drawn_words(s->chance, s->on.base->rates, &s->on.book->pool));
    if (s->chance->drawn > 0) {
        put_costs(s);
        put_steps(s);
        put_risks(s);
        put_shares(s);
    }
    const char *const *const notes = chance_notes(s->chance, &s->on.book->pool);
    s->on.row++;
    for (size_t i = 0; notes != NULL && notes[i] != NULL; i++) {
        own_sheet_words(&s->on, LOOK_WRAP, notes[i]);
    }
}

bool range_book_write(const struct estimate *base, const struct ranges *ranges,
                      const struct chance *chance, const char *path) {
    static const double widths[] = {38, 11, 11, 11, 11, 15, 15, 15, 24};
    struct book book;
    book_init(&book, NULL);
    struct range_sheet s = {
        .on = own_sheet_add(&book, base, "Range", "Range", widths, sizeof widths / sizeof *widths,
                            LAST),
        .ranges = ranges,
        .chance = chance,
    };
    own_sheet_words(&s.on, LOOK_TITLE, pool_words(&book.pool, "Range: %s", base->job->title.s));
    own_sheet_words(&s.on, LOOK_NOTE,
                    pool_words(&book.pool, "made %s; as it stands the client pays %s",
                               estimate_name(base),
                               show_number(ranges->job.client, s.on.decimals).text));
    put_rates(&s);
    put_draws(&s);
    return own_sheet_write(&book, base, path);
}
