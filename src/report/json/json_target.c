/* SPDX-License-Identifier: MIT */
/* What reaches a wanted total. */
#include "report/json/json_parts.h"
#include "report/words/show.h"
#include "report/words/target_words.h"

/* o: NULL: null. */
static void put_outcome(struct json_maker *maker, const struct target *t, json_t *parent,
                        const char *key, const struct outcome *o) {
    json_put_outcome(maker, parent, key, o, t->money_decimals);
    if (o != NULL) {
        json_put_text(maker, json_object_get(parent, key), "profit left",
                      show_number(o->profit, t->money_decimals).text);
    }
}

static json_t *lever_object(struct json_maker *maker, const struct target *t, enum lever lever) {
    const struct lever_answer *const a = &t->levers[lever];
    json_t *const object = json_object();
    json_put_text(maker, object, "what", lever_name(lever, maker->e));
    json_put_text(maker, object, "percent now", show_number(a->now, LEVER_DECIMALS).text);
    json_put_text(maker, object, "percent then",
                  a->has ? show_number(a->then, LEVER_DECIMALS).text : NULL);
    json_put(maker, object, "reaches it", json_boolean(a->reaches));
    put_outcome(maker, t, object, "comes to", a->has ? &a->outcome : NULL);
    return object;
}

void json_target(struct json_maker *maker, const struct target *t) {
    json_t *const object = json_object();
    json_put_text(maker, object, "wanted", show_number(t->wanted, t->money_decimals).text);
    put_outcome(maker, t, object, "as it stands", &t->job);
    json_t *const levers = json_array();
    for (int lever = 0; lever < LEVER_COUNT; lever++) {
        json_add(maker, levers, lever_object(maker, t, (enum lever)lever));
    }
    json_put(maker, object, "alone", levers);
    json_t *const rows = json_object();
    json_t *const ids = json_array();
    for (size_t i = 0; i < t->rows.count; i++) {
        json_add(maker, ids, json_string(t->rows.rows[i]->id.s));
    }
    json_put(maker, rows, "without", ids);
    json_put_count(maker, rows, "sets tried up to", (int64_t)t->rows.most_tried);
    json_put(maker, rows, "reaches it", json_boolean(t->rows.reaches));
    put_outcome(maker, t, rows, "comes to", t->rows.count > 0 ? &t->rows.outcome : NULL);
    json_put(maker, object, "rows", rows);
    json_send(&maker->stream, "reach", object);
}
