/* SPDX-License-Identifier: MIT */
/* What a job comes to. */
#include "report/json/json_parts.h"
#include "report/words/show.h"

void json_put_outcome(struct json_maker *maker, json_t *object, const char *key,
                      const struct outcome *o, uint8_t money_decimals) {
    json_t *all = NULL;
    if (o != NULL) {
        const struct {
            const char *key;
            int64_t amount;
        } amounts[] = {
            {"client pays", o->client}, {"before tax", o->before_tax}, {"tax", o->tax},
            {"direct", o->direct},      {"left over", o->left},        {"to buy", o->bought},
        };
        all = json_object();
        for (size_t i = 0; i < sizeof amounts / sizeof *amounts; i++) {
            json_put_text(maker, all, amounts[i].key,
                          show_number(amounts[i].amount, money_decimals).text);
        }
        json_put_text(maker, all, "hours", show_number(o->hours, 2).text);
        json_put_text(maker, all, "bench hours", show_number(o->bench, 2).text);
        json_put_count(maker, all, "set-ups", o->setups);
    }
    json_put(maker, object, key, o == NULL ? json_null() : all);
}
