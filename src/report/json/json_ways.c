/* SPDX-License-Identifier: MIT */
/* The ways of rows, and what is chosen of them. */
#include "price/ways.h"

#include "report/json/json_parts.h"
#include "report/words/show.h"
#include "report/words/way_words.h"

static void put_named(struct json_maker *maker, json_t *object, const char *key,
                      const struct reference *named) {
    json_put_text(maker, object, key, named == NULL ? NULL : named->name.s);
}

static json_t *row_object(struct json_maker *maker, const struct ways *ways,
                          const struct ways_row *row) {
    json_t *const object = json_object();
    json_t *const list = json_array();
    json_put_text(maker, object, "id", row->row->id.s);
    for (size_t w = 0; w < row->count; w++) {
        const struct way *const way = &row->ways[w];
        json_t *const one = json_object();
        json_put_text(maker, one, "way", way_words(row, w));
        put_named(maker, one, "style", way->style);
        put_named(maker, one, "finish", way->finish);
        json_put_outcome(maker, one, "row", &way->row, ways->money_decimals);
        json_put_outcome(maker, one, "job", &way->whole, ways->money_decimals);
        json_add(maker, list, one);
    }
    json_put(maker, object, "ways", list);
    return object;
}

static json_t *choice_object(struct json_maker *maker, const struct ways *ways, const char *name,
                             const struct ways_choice *choice) {
    json_t *const object = json_object();
    json_t *const picked = json_object();
    json_put_text(maker, object, "choice", name);
    for (size_t i = 0; i < ways->row_count; i++) {
        const struct ways_row *const row = &ways->rows[i];
        if (choice->picked[i] > 0) {
            json_put_text(maker, picked, row->row->id.s, way_words(row, choice->picked[i]));
        }
    }
    json_put(maker, object, "changed", picked);
    json_put_outcome(maker, object, "added up", &choice->sum, ways->money_decimals);
    json_put_outcome(maker, object, "estimated whole", choice->made ? &choice->real : NULL,
                     ways->money_decimals);
    return object;
}

static json_t *within_object(struct json_maker *maker, const struct ways *ways) {
    const struct ways_within *const within = &ways->within;
    if (within->limit < 0) {
        return json_null();
    }
    json_t *const object = json_object();
    json_put_text(maker, object, "hours", show_number(within->limit, 2).text);
    json_put(maker, object, "within", json_boolean(within->within));
    json_put(maker, object, "all tried", json_boolean(within->all));
    json_put_count(maker, object, "estimated whole", (int64_t)within->tried);
    json_put(maker, object, "chosen", choice_object(maker, ways, "this choice", &within->best));
    json_put(maker, object, "best of the sums",
             choice_object(maker, ways, "best of the sums", &within->by_sums));
    return object;
}

void json_ways(struct json_maker *maker, const struct ways *ways) {
    json_open(&maker->stream, "ways", '{');
    json_open(&maker->stream, "rows", '[');
    for (size_t i = 0; i < ways->row_count; i++) {
        json_send(&maker->stream, NULL, row_object(maker, ways, &ways->rows[i]));
    }
    json_close(&maker->stream, ']');
    json_send(&maker->stream, "rows of one way", json_integer((json_int_t)ways->other_rows));
    json_t *const rest = json_object();
    json_put_outcome(maker, rest, "as listed", &ways->job, ways->money_decimals);
    json_send_members(&maker->stream, rest);
    json_open(&maker->stream, "choices", '[');
    for (int a = 0; a < WAYS_ALL_COUNT; a++) {
        if (ways_choice_new(ways, a)) {
            json_send(&maker->stream, NULL,
                      choice_object(maker, ways, ways_all_words((enum ways_all)a), &ways->all[a]));
        }
    }
    json_close(&maker->stream, ']');
    json_send(&maker->stream, "within", within_object(maker, ways));
    json_close(&maker->stream, '}');
}
