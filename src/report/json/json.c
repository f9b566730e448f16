/* SPDX-License-Identifier: MIT */
#include "report/json/json.h"

#include "report/json/json_parts.h"
#include "report/words/shipped.h"
#include "report/words/show.h"

/* --- small pieces --- */

void json_put(struct json_maker *maker, json_t *object, const char *key, json_t *value) {
    if (json_object_set_new(object, key, value) != 0) {
        maker->failed = true;
    }
}

void json_add(struct json_maker *maker, json_t *list, json_t *value) {
    if (json_array_append_new(list, value) != 0) {
        maker->failed = true;
    }
}

void json_put_text(struct json_maker *maker, json_t *object, const char *key, const char *text) {
    json_put(maker, object, key, text == NULL ? json_null() : json_string(text));
}

void json_put_count(struct json_maker *maker, json_t *object, const char *key, int64_t count) {
    json_put(maker, object, key, json_integer(count));
}

void json_put_figure(struct json_maker *maker, json_t *object, const char *key, fig f) {
    if (fig_none(f)) {
        json_put(maker, object, key, json_null());
        return;
    }
    json_t *const reference = json_object();
    json_put_count(maker, reference, "figure", f.id);
    json_put_text(maker, reference, "value", show_exact(maker->e, f).text);
    json_put_text(maker, reference, "unit", unit_name(tape_unit(&maker->e->tape, f)));
    json_put(maker, object, key, reference);
}

void json_put_fields(struct json_maker *maker, json_t *object, const struct field_table *table,
                     const void *thing) {
    for (size_t i = 0; i < table->count; i++) {
        const struct field *const field = &table->fields[i];
        const fig figure = field_figure(field, thing);
        if (field->key != NULL && ((field->views & FIELD_RACK) == 0 || !fig_none(figure))) {
            json_put_figure(maker, object, field->key, figure);
        }
    }
}

/* --- the head --- */

/* The address of the cell, of a problem of a sheet. */
static void put_cell(struct json_maker *maker, json_t *object, const struct problems *problems,
                     struct place place) {
    const struct place_words words = problems_place(problems, place);
    if (words.text[0] == '!') {
        json_put_text(maker, object, "cell", words.text + 1);
    }
}

static json_t *problem_object(struct json_maker *maker, const struct problems *problems,
                              const struct problem *p) {
    static const char *const severities[] = {
        [SEVERITY_WARNING] = "warning",
        [SEVERITY_ERROR] = "error",
        [SEVERITY_ACCEPTED] = "accepted",
    };
    json_t *const object = json_object();
    json_put_text(maker, object, "severity", severities[p->severity]);
    json_put_text(maker, object, "id", p->id);
    json_put_text(maker, object, "text", p->text);
    json_put_text(maker, object, "file", problems_file_name(problems, p->place.file));
    json_put_count(maker, object, "line", p->place.line);
    json_put_count(maker, object, "column", p->place.column);
    put_cell(maker, object, problems, p->place);
    json_t *const more = json_array();
    for (size_t m = 0; m < p->more_count; m++) {
        json_add(maker, more, json_integer(p->more[m]));
    }
    json_put(maker, object, "more lines", more);
    return object;
}

static void send_each(struct json_maker *maker, const struct problems *problems) {
    for (size_t i = 0; problems != NULL && i < problems->count; i++) {
        json_send(&maker->stream, NULL, problem_object(maker, problems, &problems->list[i]));
    }
}

static void put_problem_count(struct json_maker *maker, json_t *object, const char *key,
                              const struct json_paper *paper, enum severity severity) {
    const size_t further = paper->further == NULL ? 0 : problems_count(paper->further, severity);
    json_put_count(maker, object, key,
                   (int64_t)(problems_count(paper->problems, severity) + further));
}

static json_t *job_facts(struct json_maker *maker, const struct estimate *e) {
    const struct job *const job = e->job;
    const struct shown until = show_valid_until(job);
    const struct {
        const char *key;
        const char *text;
    } facts[] = {
        {"title", job->title.s},
        {"number", job->number.s},
        {"client", job->client.s},
        {"address", job->address.s},
        {"measured by", job->measured_by.s},
        {"date", job->date.s},
        {"valid until", until.text[0] == '\0' ? NULL : until.text},
        {"ready", job->ready.s},
        {"deliver to", job->deliver_to.s},
        {"replaces", job->replaces.s},
        {"agreed", job->agreed.written.s},
        {"length unit", job->unit == LENGTH_MM ? "mm" : "in"},
        {"currency", e->rates->shop.currency.s},
        {"shop", e->rates->shop.name.s},
        {"rates file", job->rates_path.s},
        {"door list", job->doors_path.s},
        {"note", job->note.s},
        {"terms", job->terms.s},
        {"prices", shipped_example(e) ? "example" : NULL},
    };
    json_t *const object = json_object();
    for (size_t i = 0; i < sizeof facts / sizeof *facts; i++) {
        json_put_text(maker, object, facts[i].key, facts[i].text);
    }
    return object;
}

/* --- an estimate --- */

static void put_difference(struct json_maker *maker, json_t *object, const struct estimate *first) {
    const struct shown_difference d = show_difference(first, maker->e);
    json_t *const difference = json_object();
    json_put_text(maker, difference, "money", d.money.text);
    json_put_text(maker, difference, "percent", d.percent.text);
    json_put(maker, object, "difference to the first", difference);
}

/* Sections in the order in which they stand; `make` gives a whole one, `send` writes it piece by
 * piece. */
static void send_sections(struct json_maker *maker, unsigned parts) {
    static const struct {
        enum json_part part;
        const char *key;
        json_t *(*make)(struct json_maker *);
        void (*send)(struct json_maker *);
    } sections[] = {
        {JSON_DOORS, "doors", NULL, json_doors},
        {JSON_MATERIALS, "materials", json_materials, NULL},
        {JSON_PLANS, "plans", NULL, json_plans},
        {JSON_FINISH, "finish", json_finish, NULL},
        {JSON_LABOR, "labor", json_labor, NULL},
        {JSON_COSTS, "costs", json_costs, NULL},
        {JSON_SALE, "sale", json_sale, NULL},
    };
    for (size_t i = 0; i < sizeof sections / sizeof *sections; i++) {
        if ((parts & sections[i].part) == 0) {
            continue;
        }
        if (sections[i].send != NULL) {
            sections[i].send(maker);
        } else {
            json_send(&maker->stream, sections[i].key, sections[i].make(maker));
        }
    }
}

static void send_estimate(struct json_maker *maker, const struct json_paper *paper, size_t index) {
    struct json_stream *const stream = &maker->stream;
    json_t *const head = json_object();
    maker->e = &paper->estimates[index];
    json_put_text(maker, head, "name", estimate_name(maker->e));
    json_put(maker, head, "option", json_boolean(maker->e->option >= 0));
    json_put_figure(maker, head, "doors and fronts", maker->e->quantities.all_leaves);
    json_put_figure(maker, head, "weight", maker->e->quantities.weight);
    if (index > 0) {
        put_difference(maker, head, &paper->estimates[0]);
    }
    json_open(stream, NULL, '{');
    json_send_members(stream, head);
    send_sections(maker, paper->parts);
    if ((paper->parts & JSON_PURCHASE) != 0) {
        json_send(stream, "purchase", json_purchase(maker, &maker->e->purchase));
    }
    if (paper->learned != NULL) {
        json_learn(maker, paper);
    }
    if (paper->days != NULL) {
        json_days(maker, paper->days, paper->day_rows);
    }
    if (paper->chance != NULL) {
        json_chance(maker, paper->chance);
    }
    if (paper->strike != NULL) {
        json_strike(maker, paper->strike);
    }
    if (paper->ranges != NULL) {
        json_range(maker, paper->ranges);
    }
    if (paper->bridge != NULL) {
        json_bridge(maker, paper->bridge);
    }
    if (paper->sizes != NULL) {
        json_size_table(maker, paper->sizes);
    }
    if (paper->ways != NULL) {
        json_ways(maker, paper->ways);
    }
    if (paper->target != NULL) {
        json_target(maker, paper->target);
    }
    if (paper->together != NULL) {
        json_together(maker, paper->together);
    }
    if (!fig_none(paper->explained)) {
        json_send(stream, "explained", json_integer(paper->explained.id));
    }
    if ((paper->parts & JSON_TAPE) != 0) {
        json_tape(maker, paper->problems);
    }
    json_close(stream, '}');
}

bool json_write(const struct json_paper *paper, FILE *out) {
    struct json_maker maker = {.stream.out = out};
    struct json_stream *const stream = &maker.stream;
    json_t *const head = json_object();
    json_put_text(&maker, head, "program", "doorcost");
    json_put_text(&maker, head, "version", DOORCOST_VERSION);
    json_put_text(&maker, head, "command", paper->command);
    put_problem_count(&maker, head, "errors", paper, SEVERITY_ERROR);
    put_problem_count(&maker, head, "warnings", paper, SEVERITY_WARNING);
    put_problem_count(&maker, head, "accepted", paper, SEVERITY_ACCEPTED);
    json_open(stream, NULL, '{');
    json_send_members(stream, head);
    json_open(stream, "problems", '[');
    send_each(&maker, paper->problems);
    send_each(&maker, paper->further);
    json_close(stream, ']');
    if (paper->job != NULL) {
        json_send(stream, "job", job_facts(&maker, &paper->estimates[0]));
        json_send(stream, "rows", json_integer((json_int_t)paper->job->row_count));
        json_open(stream, "estimates", '[');
        for (size_t i = 0; i < paper->count && !stream->failed; i++) {
            send_estimate(&maker, paper, i);
        }
        json_close(stream, ']');
        if ((paper->parts & JSON_INPUTS) != 0) {
            json_inputs(&maker, paper->inputs, paper->problems);
        }
    }
    json_close(stream, '}');
    return !maker.failed && !stream->failed;
}
