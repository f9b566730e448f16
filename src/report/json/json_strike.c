/* SPDX-License-Identifier: MIT */
/* Rows struck and added, and sizes made one. */
#include "price/strike.h"

#include "report/json/json_parts.h"
#include "report/words/show.h"

static void put_money(struct json_maker *maker, const struct strike *s, json_t *object,
                      const char *key, int64_t money) {
    json_put_text(maker, object, key, show_number(money, s->money_decimals).text);
}

static void put_outcome(struct json_maker *maker, const struct strike *s, json_t *parent,
                        const char *key, const struct outcome *o) {
    json_put_outcome(maker, parent, key, o, s->money_decimals);
}

static json_t *row_object(struct json_maker *maker, const struct strike *s,
                          const struct strike_row *row) {
    json_t *const object = json_object();
    json_put_text(maker, object, "id", row->row->id.s);
    put_money(maker, s, object, "listed", row->listed);
    put_money(maker, s, object, "listed, one", row->listed_one);
    put_outcome(maker, s, object, "struck", row->has_less ? &row->less : NULL);
    put_outcome(maker, s, object, "one more", row->has_more ? &row->more : NULL);
    return object;
}

static json_t *size_object(struct json_maker *maker, const struct strike *s,
                           const struct strike_size *size) {
    char text[2][32];
    const enum length_unit unit = maker->e->job->unit;
    json_t *const object = json_object();
    json_put_text(maker, object, "side", size->width ? "width" : "height");
    json_put_text(maker, object, "from", length_show(size->from, unit, text[0], sizeof text[0]));
    json_put_text(maker, object, "to", length_show(size->to, unit, text[1], sizeof text[1]));
    json_t *const ids = json_array();
    for (size_t i = 0; i < size->row_count; i++) {
        json_add(maker, ids, json_string(size->rows[i]->id.s));
    }
    json_put(maker, object, "rows", ids);
    json_put_text(maker, object, "as row", size->other->id.s);
    put_outcome(maker, s, object, "saves", &size->less);
    return object;
}

void json_strike(struct json_maker *maker, const struct strike *s) {
    json_open(&maker->stream, "strike", '{');
    json_open(&maker->stream, "rows", '[');
    for (size_t i = 0; i < s->row_count; i++) {
        json_send(&maker->stream, NULL, row_object(maker, s, &s->rows[i]));
    }
    json_close(&maker->stream, ']');
    json_t *const rest = json_object();
    put_outcome(maker, s, rest, "all at once", s->has_together ? &s->together : NULL);
    json_send_members(&maker->stream, rest);
    json_open(&maker->stream, "sizes", '[');
    for (size_t i = 0; i < s->size_count; i++) {
        json_send(&maker->stream, NULL, size_object(maker, s, &s->sizes[i]));
    }
    json_close(&maker->stream, ']');
    json_close(&maker->stream, '}');
}
