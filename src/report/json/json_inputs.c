/* SPDX-License-Identifier: MIT */
/* What the files say, so that the job can be read again where they are gone: read/job/saved.c does.
 * What names files for the client's papers alone is left out; so are comments. */
#include "base/text.h"
#include "read/job/job_texts.h"
#include "report/json/json_parts.h"

static void put_line(struct json_maker *maker, json_t *object, struct place place) {
    json_put_count(maker, object, "line", place.line);
}

static json_t *section_object(struct json_maker *maker, const struct ini_section *section,
                              bool shop) {
    json_t *const object = json_object();
    json_t *const keys = json_array();
    json_put_text(maker, object, "kind", section->kind);
    json_put_text(maker, object, "name", section->name);
    put_line(maker, object, section->place);
    for (size_t i = 0; i < section->count; i++) {
        const struct ini_key *const key = &section->keys[i];
        if (shop && job_texts_paper(key->name)) {
            continue;
        }
        json_t *const one = json_object();
        json_put_text(maker, one, "key", key->name);
        json_put_text(maker, one, "value", key->value);
        put_line(maker, one, key->place);
        json_add(maker, keys, one);
    }
    json_put(maker, object, "keys", keys);
    return object;
}

static void send_ini(struct json_maker *maker, const char *key, const struct ini *ini,
                     const struct problems *problems) {
    json_open(&maker->stream, key, '{');
    json_send(&maker->stream, "file", json_string(problems_file_name(problems, ini->file)));
    json_open(&maker->stream, "sections", '[');
    for (size_t i = 0; i < ini->count; i++) {
        const struct ini_section *const section = &ini->sections[i];
        json_send(&maker->stream, NULL,
                  section_object(maker, section, text_same(section->kind, "shop")));
    }
    json_close(&maker->stream, ']');
    json_close(&maker->stream, '}');
}

static json_t *cells_object(struct json_maker *maker, const struct cell *cells, size_t count,
                            struct place place) {
    json_t *const object = json_object();
    json_t *const list = json_array();
    put_line(maker, object, place);
    for (size_t i = 0; i < count; i++) {
        json_add(maker, list, json_string(cells[i].text));
    }
    json_put(maker, object, "cells", list);
    return object;
}

static void send_table(struct json_maker *maker, const char *key, const struct table *table,
                       const struct problems *problems) {
    json_open(&maker->stream, key, '{');
    json_send(&maker->stream, "file", json_string(problems_file_name(problems, table->file)));
    json_send(&maker->stream, "heading",
              cells_object(maker, table->heading, table->columns, table->heading[0].place));
    json_open(&maker->stream, "rows", '[');
    for (size_t i = 0; i < table->count; i++) {
        json_send(&maker->stream, NULL,
                  cells_object(maker, table->rows[i].cells, table->columns, table->rows[i].place));
    }
    json_close(&maker->stream, ']');
    json_close(&maker->stream, '}');
}

void json_inputs(struct json_maker *maker, const struct job_texts *texts,
                 const struct problems *problems) {
    json_open(&maker->stream, "inputs", '{');
    send_ini(maker, "job", &texts->job, problems);
    send_ini(maker, "rates", &texts->rates, problems);
    send_table(maker, "doors", &texts->list, problems);
    if (texts->woods.open && texts->woods.columns > 0) {
        send_table(maker, "woods", &texts->woods, problems);
    } else {
        json_send(&maker->stream, "woods", json_null());
    }
    if (texts->rack.open && texts->rack.columns > 0) {
        send_table(maker, "rack", &texts->rack, problems);
    } else {
        json_send(&maker->stream, "rack", json_null());
    }
    json_close(&maker->stream, '}');
}
