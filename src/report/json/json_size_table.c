/* SPDX-License-Identifier: MIT */
/* Prices by size. */
#include "report/json/json_parts.h"
#include "report/words/show.h"
#include "report/words/size_words.h"

static void put_money(struct json_maker *maker, const struct size_table *t, json_t *object,
                      const char *key, int64_t money) {
    json_put_text(maker, object, key, show_number(money, t->money_decimals).text);
}

static void put_price(struct json_maker *maker, const struct size_table *t, json_t *parent,
                      const char *key, const struct size_price *price) {
    json_put_outcome(maker, parent, key, price->has ? &price->outcome : NULL, t->money_decimals);
    if (price->has) {
        json_t *const object = json_object_get(parent, key);
        put_money(maker, t, object, "price of each", price->each);
        put_money(maker, t, object, "price by area", price->per_area);
        put_money(maker, t, object, "flat price", price->flat);
        json_put_text(maker, object, "flat price does", flat_does_name(price->flat_does));
    }
}

static json_t *size_object(struct json_maker *maker, const struct size_table *t,
                           const struct size_line *line) {
    const enum length_unit unit = maker->e->job->unit;
    char text[32];
    json_t *const object = json_object();
    json_put_text(maker, object, "width",
                  length_show(line->row.width.amount, unit, text, sizeof text));
    json_put_text(maker, object, "height",
                  length_show(line->row.height.amount, unit, text, sizeof text));
    json_put_text(maker, object, "cannot be made", line->reason);
    json_put_text(maker, object, "area",
                  line->reason != NULL ? NULL : show_number(line->area, SIZE_AREA_DECIMALS).text);
    json_t *const counts = json_array();
    for (size_t c = 0; c < t->count_count && line->reason == NULL; c++) {
        json_t *const prices = json_object();
        json_put_count(maker, prices, "count", t->counts[c]);
        put_price(maker, t, prices, "added", &line->prices[SIZE_ADDED][c]);
        put_price(maker, t, prices, "alone", &line->prices[SIZE_ALONE][c]);
        json_add(maker, counts, prices);
    }
    json_put(maker, object, "prices", counts);
    return object;
}

static json_t *style_head(struct json_maker *maker, const struct size_table *t,
                          const struct size_style *style) {
    const struct size_flat *const flat = &style->flat;
    json_t *const object = json_object();
    json_put_text(maker, object, "style", style->name);
    json_put(maker, object, "flat price is of the style", json_boolean(flat->own));
    put_money(maker, t, object, "sold for", flat->sold);
    json_put_text(maker, object, "area", show_number(flat->area, SIZE_AREA_DECIMALS).text);
    put_money(maker, t, object, "flat price by area", flat->rate);
    return object;
}

void json_size_table(struct json_maker *maker, const struct size_table *t) {
    json_open(&maker->stream, "sizes", '{');
    json_t *const rest = json_object();
    json_put_text(maker, rest, "area unit", size_area_name(maker->e));
    json_send_members(&maker->stream, rest);
    json_open(&maker->stream, "styles", '[');
    for (size_t s = 0; s < t->style_count; s++) {
        json_open(&maker->stream, NULL, '{');
        json_send_members(&maker->stream, style_head(maker, t, &t->styles[s]));
        json_open(&maker->stream, "sizes", '[');
        for (size_t l = 0; l < t->styles[s].line_count; l++) {
            json_send(&maker->stream, NULL, size_object(maker, t, &t->styles[s].lines[l]));
        }
        json_close(&maker->stream, ']');
        json_close(&maker->stream, '}');
    }
    json_close(&maker->stream, ']');
    json_close(&maker->stream, '}');
}
