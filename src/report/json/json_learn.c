/* SPDX-License-Identifier: MIT */
/* What happened, beside what was estimated. */
#include "learn/hours_fit.h"

#include "report/json/json_parts.h"
#include "report/words/show.h"

static void put_number(struct json_maker *maker, json_t *object, const char *key, int64_t value,
                       uint8_t decimals) {
    json_put_text(maker, object, key, show_number(value, decimals).text);
}

/* A number that is null where it is not known. */
static void put_known(struct json_maker *maker, json_t *object, const char *key, bool known,
                      int64_t value, uint8_t decimals) {
    json_put_text(maker, object, key, known ? show_number(value, decimals).text : NULL);
}

static json_t *work_object(struct json_maker *maker, const struct learned *l,
                           const struct learned_work *w) {
    json_t *const object = json_object();
    json_put_text(maker, object, "what", w->name);
    put_number(maker, object, "minutes, estimated", w->estimated, 2);
    put_number(maker, object, "minutes, noted", w->noted, 2);
    put_number(maker, object, "costs more", w->more, l->money_decimals);
    return object;
}

static json_t *goods_object(struct json_maker *maker, const struct learned *l,
                            const struct learned_goods *g) {
    json_t *const object = json_object();
    json_put_text(maker, object, "what", g->name);
    json_put_text(maker, object, "kind", name_section(g->kind));
    json_put_text(maker, object, "unit", g->kind == NAME_SHEET ? "sheets" : unit_name(g->unit));
    put_number(maker, object, "to buy", g->to_buy, GOODS_DECIMALS);
    put_number(maker, object, "to use", g->to_use, GOODS_DECIMALS);
    put_known(maker, object, "bought", g->has_bought, g->bought, GOODS_DECIMALS);
    put_known(maker, object, "used", g->has_used, g->used, GOODS_DECIMALS);
    put_number(maker, object, "cost, estimated", g->cost, l->money_decimals);
    put_known(maker, object, "paid", g->has_paid, g->paid, l->money_decimals);
    put_number(maker, object, "costs more by price", g->by_price, l->money_decimals);
    put_number(maker, object, "costs more by amount", g->by_amount, l->money_decimals);
    put_known(maker, object, "waste, %", g->has_waste, g->waste, 2);
    put_known(maker, object, "transfer efficiency, %", g->transfer > 0, g->transfer, 2);
    return object;
}

static json_t *proposal_object(struct json_maker *maker, const struct proposal *p) {
    json_t *const object = json_object();
    json_put_text(maker, object, "section", p->number->section);
    json_put_text(maker, object, "key", p->number->key);
    json_put_text(maker, object, "is", p->number->likely);
    json_put_text(maker, object, "should be", p->text);
    json_put_text(maker, object, "why", p->why);
    return object;
}

static json_t *unmoved_object(struct json_maker *maker, const struct unmoved *u) {
    json_t *const object = json_object();
    json_put_text(maker, object, "what", u->what);
    json_put_text(maker, object, "why", u->why);
    return object;
}

static json_t *fit_object(struct json_maker *maker, const struct hours_fit *fit) {
    static const char *const keys[HOURS_FIT_BY] = {"a job", "a door", "area of a face",
                                                   "area of a coat"};
    json_t *const object = json_object();
    json_put_text(maker, object, "lacks", fit->lacks);
    for (size_t k = 0; k < HOURS_FIT_BY; k++) {
        put_known(maker, object, keys[k], fit->lacks == NULL, fit->by[k], 6);
    }
    put_known(maker, object, "spread", fit->lacks == NULL, fit->spread, 2);
    json_t *const fitted = json_array();
    for (size_t i = 0; i < fit->count && fit->lacks == NULL; i++) {
        json_add(maker, fitted, json_string(show_number(fit->fitted[i], 2).text));
    }
    json_put(maker, object, "hours", fitted);
    return object;
}

void json_learn(struct json_maker *maker, const struct json_paper *paper) {
    const struct learned *const l = paper->learned;
    const struct proposals *const proposals = paper->proposals;
    json_open(&maker->stream, "learned", '{');
    json_open(&maker->stream, "work", '[');
    for (size_t i = 0; i < l->work_count; i++) {
        json_send(&maker->stream, NULL, work_object(maker, l, &l->work[i]));
    }
    json_close(&maker->stream, ']');
    json_open(&maker->stream, "goods", '[');
    for (size_t i = 0; i < l->goods_count; i++) {
        json_send(&maker->stream, NULL, goods_object(maker, l, &l->goods[i]));
    }
    json_close(&maker->stream, ']');
    json_t *const rest = json_object();
    put_number(maker, rest, "minutes, not noted", l->unnoted, 2);
    json_put_count(maker, rest, "doors made again", l->remade);
    put_number(maker, rest, "before tax", l->income, l->money_decimals);
    put_number(maker, rest, "profit left, estimated", l->profit_was, l->money_decimals);
    put_number(maker, rest, "profit left", l->profit, l->money_decimals);
    json_send_members(&maker->stream, rest);
    json_open(&maker->stream, "rates", '[');
    for (size_t i = 0; i < proposals->count; i++) {
        json_send(&maker->stream, NULL, proposal_object(maker, &proposals->list[i]));
    }
    json_close(&maker->stream, ']');
    json_open(&maker->stream, "no rate changes by", '[');
    for (size_t i = 0; i < proposals->unmoved_count; i++) {
        json_send(&maker->stream, NULL, unmoved_object(maker, &proposals->unmoved[i]));
    }
    json_close(&maker->stream, ']');
    json_send(&maker->stream, "hours fitted", fit_object(maker, paper->hours_fit));
    json_close(&maker->stream, '}');
}
