/* SPDX-License-Identifier: MIT */
/* Rates moved, and rates without a range. */
#include "trial/range.h"

#include "report/json/json_parts.h"
#include "report/words/moves.h"
#include "report/words/show.h"

#include <math.h>

/* NULL: the rate is not moved this way. */
static json_t *end_object(struct json_maker *maker, const struct ranges *r,
                          const struct range_end *end) {
    if (end->text == NULL) {
        return json_null();
    }
    json_t *const object = json_object();
    json_put_text(maker, object, "value", end->text);
    json_put_outcome(maker, object, "adds", end->has ? &end->more : NULL, r->money_decimals);
    json_put_text(maker, object, "wrong", end->why);
    return object;
}

static json_t *row_object(struct json_maker *maker, const struct ranges *r,
                          const struct range_row *row) {
    json_t *const object = json_object();
    json_put_text(maker, object, "section", row->section);
    json_put_text(maker, object, "key", row->key);
    json_put_text(maker, object, "before", row->lead);
    json_put_text(maker, object, "value", row->likely);
    json_put_text(maker, object, "reason", row->reason);
    json_put(maker, object, "low", end_object(maker, r, &row->low));
    json_put(maker, object, "high", end_object(maker, r, &row->high));
    json_put_text(maker, object, "swing", show_number(row->swing, r->money_decimals).text);
    return object;
}

static json_t *move_object(struct json_maker *maker, const struct move *move) {
    json_t *const object = json_object();
    json_put_text(maker, object, "section", move->setting->title);
    json_put_text(maker, object, "key", move->setting->key);
    json_put_text(maker, object, "a tenth adds",
                  show_number((int64_t)llround(move->adds * 100), 2).text);
    return object;
}

void json_range(struct json_maker *maker, const struct ranges *r) {
    static const char *const ways[] = {
        [RANGE_ENDS] = "ranges", [RANGE_PERCENT] = "percent", [RANGE_SET] = "set"};
    struct pool pool;
    pool_init(&pool);
    json_open(&maker->stream, "range", '{');
    json_t *const head = json_object();
    json_put_text(maker, head, "way", ways[r->way]);
    json_put_text(maker, head, "percent", r->percent);
    json_put_outcome(maker, head, "as it stands", &r->job, r->money_decimals);
    json_send_members(&maker->stream, head);
    json_open(&maker->stream, "rates", '[');
    for (size_t i = 0; i < r->count; i++) {
        json_send(&maker->stream, NULL, row_object(maker, r, &r->rows[i]));
    }
    json_close(&maker->stream, ']');
    json_t *const rest = json_object();
    json_put(maker, rest, "all at once", end_object(maker, r, &r->together));
    json_send_members(&maker->stream, rest);
    json_open(&maker->stream, "without range", '[');
    const struct moves moves = moves_without_range(maker->e, &pool);
    for (size_t i = 0; i < moves.count; i++) {
        json_send(&maker->stream, NULL, move_object(maker, &moves.list[i]));
    }
    json_close(&maker->stream, ']');
    json_close(&maker->stream, '}');
    maker->failed = maker->failed || pool_failed(&pool);
    pool_clear(&pool);
}
