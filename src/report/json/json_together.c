/* SPDX-License-Identifier: MIT */
/* Several jobs bought for or cut at once. */
#include "together/together.h"

#include "report/json/json_parts.h"
#include "report/words/show.h"
#include "together/joined_job.h"

static void put_money(struct json_maker *maker, const struct together *t, json_t *object,
                      const char *key, int64_t money) {
    json_put_text(maker, object, key, show_number(money, t->money_decimals).text);
}

static void put_amounts(struct json_maker *maker, const struct together *t, json_t *object,
                        const struct together_line *line) {
    put_money(maker, t, object, "alone", line->alone);
    put_money(maker, t, object, "together", line->together);
    put_money(maker, t, object, "saves", together_saves(line));
}

static json_t *line_object(struct json_maker *maker, const struct together *t,
                           const struct together_line *line) {
    json_t *const object = json_object();
    json_t *const parts = json_array();
    json_put_text(maker, object, "group", cost_group_name(line->group));
    json_put_text(maker, object, "what", line->name);
    put_amounts(maker, t, object, line);
    for (size_t i = 0; i < t->count; i++) {
        json_t *const part = json_object();
        json_put_text(maker, part, "job", joined_letter(i));
        put_money(maker, t, part, "alone", line->alone_of[i]);
        put_money(maker, t, part, "part", line->part_of[i]);
        json_add(maker, parts, part);
    }
    json_put(maker, object, "parts", parts);
    return object;
}

static json_t *job_object(struct json_maker *maker, const struct together *t, size_t i) {
    const struct estimate *const e = t->jobs[i].alone;
    json_t *const object = json_object();
    json_put_text(maker, object, "job", joined_letter(i));
    json_put_text(maker, object, "file", t->jobs[i].path);
    json_put_text(maker, object, "title", e->job->title.s);
    json_put_text(maker, object, "number", e->job->number.s);
    put_money(maker, t, object, "alone", t->all.alone_of[i]);
    put_money(maker, t, object, "part", t->all.part_of[i]);
    put_money(maker, t, object, "saves", t->all.alone_of[i] - t->all.part_of[i]);
    return object;
}

void json_together(struct json_maker *maker, const struct together *t) {
    json_t *const sums = json_object();
    json_open(&maker->stream, "together", '{');
    json_open(&maker->stream, "jobs", '[');
    for (size_t i = 0; i < t->count; i++) {
        json_send(&maker->stream, NULL, job_object(maker, t, i));
    }
    json_close(&maker->stream, ']');
    json_open(&maker->stream, "lines", '[');
    for (size_t i = 0; i < t->line_count; i++) {
        json_send(&maker->stream, NULL, line_object(maker, t, &t->lines[i]));
    }
    json_close(&maker->stream, ']');
    put_amounts(maker, t, sums, &t->all);
    json_send_members(&maker->stream, sums);
    json_close(&maker->stream, '}');
}
