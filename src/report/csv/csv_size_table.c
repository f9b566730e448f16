/* SPDX-License-Identifier: MIT */
#include "report/csv/csv_size_table.h"

#include "report/csv/csv.h"
#include "report/words/show.h"
#include "report/words/size_words.h"

static const char *const price_heads[] = {
    "price before tax", "price of each", "client pays",   "direct",     "left over",
    "to buy",           "hours",         "price by area", "flat price", "flat price does"};
#define PRICE_CELLS (sizeof price_heads / sizeof *price_heads)

static void put_head(struct csv *csv, const struct estimate *e) {
    static const char *const first[] = {"style", "width", "height", "cannot be made"};
    char area[32];
    for (size_t i = 0; i < sizeof first / sizeof *first; i++) {
        csv_put(csv, first[i]);
    }
    (void)snprintf(area, sizeof area, "area of one in %s", size_area_name(e));
    csv_put(csv, area);
    csv_put(csv, "way");
    csv_put(csv, "count");
    for (size_t i = 0; i < PRICE_CELLS; i++) {
        csv_put(csv, price_heads[i]);
    }
    csv_end(csv);
}

static void put_price(struct csv *csv, const struct size_table *t, const struct size_price *price) {
    const struct outcome *const o = &price->outcome;
    const int64_t before_hours[] = {o->before_tax, price->each, o->client,
                                    o->direct,     o->left,     o->bought};
    for (size_t i = 0; i < sizeof before_hours / sizeof *before_hours; i++) {
        csv_put(csv, show_number(before_hours[i], t->money_decimals).text);
    }
    csv_put(csv, show_number(o->hours, 2).text);
    csv_put(csv, show_number(price->per_area, t->money_decimals).text);
    csv_put(csv, show_number(price->flat, t->money_decimals).text);
    csv_put(csv, flat_does_name(price->flat_does));
}

static void put_line(struct csv *csv, const struct estimate *e, const struct size_table *t,
                     const struct size_style *style, const struct size_line *line) {
    char text[2][32];
    for (int way = 0; way < SIZE_WAY_COUNT; way++) {
        for (size_t c = 0; c < t->count_count; c++) {
            csv_put(csv, style->name);
            csv_put(csv,
                    length_show(line->row.width.amount, e->job->unit, text[0], sizeof text[0]));
            csv_put(csv,
                    length_show(line->row.height.amount, e->job->unit, text[1], sizeof text[1]));
            csv_put(csv, line->reason == NULL ? "" : line->reason);
            csv_put(csv,
                    line->reason == NULL ? show_number(line->area, SIZE_AREA_DECIMALS).text : "");
            csv_put(csv, size_way_name((enum size_way)way));
            csv_put(csv, show_number(t->counts[c], 0).text);
            if (line->reason == NULL && line->prices[way][c].has) {
                put_price(csv, t, &line->prices[way][c]);
            } else { /* all records have as many cells: RFC 4180, section 2, rule 4 */
                for (size_t i = 0; i < PRICE_CELLS; i++) {
                    csv_put(csv, "");
                }
            }
            csv_end(csv);
        }
    }
}

void csv_size_table(FILE *out, const struct estimate *e, const struct size_table *t) {
    struct csv csv = {.out = out};
    put_head(&csv, e);
    for (size_t s = 0; s < t->style_count; s++) {
        for (size_t l = 0; l < t->styles[s].line_count; l++) {
            put_line(&csv, e, t, &t->styles[s], &t->styles[s].lines[l]);
        }
    }
}
