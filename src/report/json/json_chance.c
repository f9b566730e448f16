/* SPDX-License-Identifier: MIT */
/* What the job may come to, drawn from the ranges of its rates. */
#include "report/json/json_parts.h"
#include "report/words/chance_words.h"
#include "report/words/show.h"

static json_t *cost_object(struct json_maker *maker, const struct chance_cost *cost,
                           uint8_t decimals) {
    json_t *const object = json_object();
    json_put_text(maker, object, "figured", show_number(cost->figured, decimals).text);
    json_put_text(maker, object, "least", show_number(cost->least, decimals).text);
    for (int p = 0; p < CHANCE_POINTS; p++) {
        char key[8];
        (void)snprintf(key, sizeof key, "P%d", chance_point_percent((enum chance_point)p));
        json_put_text(maker, object, key, show_number(cost->points[p], decimals).text);
    }
    json_put_text(maker, object, "most", show_number(cost->most, decimals).text);
    json_put_text(maker, object, "with confidence", show_number(cost->sure, decimals).text);
    return object;
}

static json_t *input_object(struct json_maker *maker, const struct chance_input *input) {
    static const char *const states[] = {"drawn", "without effect", "held"};
    const struct rate_number *const n = input->number;
    json_t *const object = json_object();
    json_put_text(maker, object, "section", n->section);
    json_put_text(maker, object, "key", n->key);
    json_put_text(maker, object, "before", n->lead);
    json_put_text(maker, object, "low", n->low_text);
    json_put_text(maker, object, "likely", n->likely);
    json_put_text(maker, object, "high", n->high_text);
    json_put_text(maker, object, "is", states[input->state]);
    json_put_text(maker, object, "together",
                  input->group < 0 ? NULL : maker->e->rates->chance.together[input->group].name.s);
    json_put_text(maker, object, "share",
                  input->state == CHANCE_DRAWN ? show_number(input->share, 1).text : NULL);
    return object;
}

static json_t *bins_list(struct json_maker *maker, const struct chance *c, uint8_t decimals) {
    json_t *const list = json_array();
    for (size_t i = 0; i < c->bin_count; i++) {
        json_t *const bin = json_object();
        const int64_t from = c->bin_from + (int64_t)i * c->bin_step;
        json_put_text(maker, bin, "from", show_number(from, decimals).text);
        json_put_text(maker, bin, "below", show_number(from + c->bin_step, decimals).text);
        json_put_count(maker, bin, "draws", (int64_t)c->bins[i]);
        json_add(maker, list, bin);
    }
    return list;
}

void json_chance(struct json_maker *maker, const struct chance *c) {
    struct pool pool;
    const uint8_t decimals = maker->e->tape.money_decimals;
    json_t *const object = json_object();
    json_t *const inputs = json_array();
    json_t *const notes = json_array();
    pool_init(&pool);
    json_put_count(maker, object, "draws", (int64_t)c->draws);
    json_put_text(maker, object, "seed", pool_words(&pool, "%llu", (unsigned long long)c->seed));
    json_put_text(maker, object, "ranges", c->shape == CHANCE_TRIANGLE ? "triangle" : "pert");
    json_put_text(maker, object, "assumed", chance_drawn_words(c, maker->e->rates, &pool));
    json_put(maker, object, "direct cost", cost_object(maker, &c->direct, decimals));
    json_put(maker, object, "cost with overhead", cost_object(maker, &c->full, decimals));
    json_put_text(maker, object, "price", show_number(c->price, decimals).text);
    json_put_text(maker, object, "profit wanted", show_number(c->wanted, decimals).text);
    for (int i = 0; i < CHANCE_RISKS; i++) {
        json_put_text(maker, object, chance_risk_key((enum chance_risk)i),
                      show_number(chance_risk((enum chance_risk)i, c), 1).text);
    }
    json_put_text(maker, object, "confidence", show_number(c->confidence, 2).text);
    json_put_text(maker, object, "contingency", show_number(c->contingency, decimals).text);
    json_put_text(maker, object, "contingency, percent", show_number(c->contingency_rate, 1).text);
    for (size_t i = 0; i < c->count; i++) {
        json_add(maker, inputs, input_object(maker, &c->inputs[i]));
    }
    json_put(maker, object, "inputs", inputs);
    json_put(maker, object, "steps", bins_list(maker, c, decimals));
    const char *const *const words = chance_notes(c, &pool);
    for (size_t i = 0; words != NULL && words[i] != NULL; i++) {
        json_add(maker, notes, json_string(words[i]));
    }
    json_put(maker, object, "notes", notes);
    maker->failed = maker->failed || pool_failed(&pool);
    pool_clear(&pool);
    json_send(&maker->stream, "chance", object);
}
