/* SPDX-License-Identifier: MIT */
/* Why the price moved, step by step. */
#include "bridge/bridge.h"

#include "report/json/json_parts.h"

static json_t *change_object(struct json_maker *maker, const struct bridge_change *change) {
    json_t *const object = json_object();
    json_put_text(maker, object, "group", bridge_group_name(change->group));
    json_put_text(maker, object, change->row ? "row" : "section", change->where);
    json_put_text(maker, object, change->row ? "column" : "key", change->what);
    json_put_text(maker, object, "before", change->older);
    json_put_text(maker, object, "now", change->newer);
    return object;
}

static void send_step(struct json_maker *maker, const struct bridge *b,
                      const struct bridge_step *step) {
    json_t *const head = json_object();
    json_t *const groups = json_array();
    for (size_t g = 0; g < BRIDGE_GROUP_COUNT; g++) {
        if ((step->groups & 1u << g) != 0) {
            json_add(maker, groups, json_string(bridge_group_name((enum bridge_group)g)));
        }
    }
    json_put(maker, head, "groups", groups);
    json_put_text(maker, head, "joined because", step->why);
    json_put_outcome(maker, head, "adds", &step->adds, b->money_decimals);
    json_open(&maker->stream, NULL, '{');
    json_send_members(&maker->stream, head);
    json_open(&maker->stream, "changes", '[');
    for (size_t i = 0; i < step->change_count; i++) {
        json_send(&maker->stream, NULL, change_object(maker, &step->changes[i]));
    }
    json_close(&maker->stream, ']');
    json_close(&maker->stream, '}');
}

void json_bridge(struct json_maker *maker, const struct bridge *b) {
    json_t *const head = json_object();
    json_put_text(maker, head, "before", b->older_path);
    json_put_text(maker, head, "now", b->newer_path);
    json_put_outcome(maker, head, "came to", &b->older, b->money_decimals);
    json_put_outcome(maker, head, "comes to", &b->newer, b->money_decimals);
    json_open(&maker->stream, "bridge", '{');
    json_send_members(&maker->stream, head);
    json_open(&maker->stream, "steps", '[');
    for (size_t i = 0; i < b->step_count; i++) {
        send_step(maker, b, &b->steps[i]);
    }
    json_close(&maker->stream, ']');
    json_close(&maker->stream, '}');
}
