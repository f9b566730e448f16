/* SPDX-License-Identifier: MIT */
/* Work by day. */
#include "report/json/json_parts.h"
#include "report/words/day_words.h"

/* object[key] = `2026-03-02`. */
static void put_day(struct json_maker *maker, json_t *object, const char *key, int32_t day) {
    char text[16];
    json_put_text(maker, object, key, date_text(date_of_number(day), text, sizeof text));
}

static json_t *job_object(struct json_maker *maker, const struct day_plan *plan, size_t at) {
    const struct day_job *const job = &plan->jobs[at];
    json_t *const object = json_object();
    json_put_text(maker, object, "number", job->estimate->job->number.s);
    json_put_text(maker, object, "title", job->estimate->job->title.s);
    put_day(maker, object, "from", job->from);
    put_day(maker, object, "begins", job->begins);
    put_day(maker, object, "ready", job->ready);
    json_put_count(maker, object, "person-minutes", job->minutes);
    json_put_count(maker, object, "not planned, person-minutes", job->unplanned);
    return object;
}

static json_t *bound_object(struct json_maker *maker, const struct rates *rates,
                            const struct day_bound *by) {
    json_t *const object = json_object();
    json_put_text(maker, object, "what", day_cause_words(rates, by->cause, by->machine));
    json_put(maker, object, "is a machine", json_boolean(by->cause == CAUSE_MACHINE));
    put_day(maker, object, "no sooner than", by->day);
    return object;
}

static json_t *more_object(struct json_maker *maker, const struct rates *rates,
                           const struct day_more *more, struct pool *pool) {
    json_t *const object = json_object();
    json_put_text(maker, object, "what", day_more_words(rates, more, pool));
    put_day(maker, object, "ready", more->day);
    json_put_count(maker, object, "working days saved", more->gained);
    return object;
}

/* A line of work; its job is the number of its object in `jobs`, from 0 on. */
static json_t *line_object(struct json_maker *maker, const struct day_plan *plan,
                           const struct day_line *line) {
    json_t *const object = json_object();
    put_day(maker, object, "day", line->day);
    json_put_count(maker, object, "job", (int64_t)line->job);
    json_put_text(maker, object, "operation", day_line_name(plan, line));
    json_put_text(maker, object, "of", line->what[0] == '\0' ? NULL : line->what);
    json_put_count(maker, object, "person-minutes", line->minutes);
    return object;
}

/* A work of a row on a day, in minutes from the opening of the day on. */
static json_t *entry_object(struct json_maker *maker, const struct day_plan *plan,
                            const struct day_rows *rows, const struct day_entry *entry) {
    const struct rates *const rates = plan->jobs[0].estimate->rates;
    json_t *const object = json_object();
    json_t *const spans = json_array();
    put_day(maker, object, "day", plan->work_days[entry->day]);
    json_put_count(maker, object, "job", (int64_t)entry->job);
    json_put_text(maker, object, "operation", rates->operations[entry->operation].name.s);
    json_put_text(maker, object, "of", entry->what[0] == '\0' ? NULL : entry->what);
    json_put_count(maker, object, "doors", entry->doors);
    json_put(maker, object, "waits", json_boolean(entry->waits));
    json_put_count(maker, object, "minutes", entry->minutes);
    for (size_t s = 0; s < entry->span_count; s++) {
        const struct day_stretch *const span = &rows->spans[entry->first_span + s];
        json_t *const ends = json_object();
        json_put_count(maker, ends, "from", span->from);
        json_put_count(maker, ends, "to", span->to);
        json_add(maker, spans, ends);
    }
    json_put(maker, object, "times", spans);
    return object;
}

static json_t *row_object(struct json_maker *maker, const struct day_plan *plan,
                          const struct day_rows *rows, const struct day_row *row,
                          struct pool *pool) {
    static const char *const kinds[] = {[ROW_PERSON] = "person",
                                        [ROW_MACHINE] = "machine",
                                        [ROW_CLAMPS] = "clamps",
                                        [ROW_RACKS] = "racks",
                                        [ROW_FINISHER] = "finisher"};
    json_t *const object = json_object();
    json_t *const work = json_array();
    json_put_text(maker, object, "who", day_row_name(plan->jobs[0].estimate->rates, row, pool));
    json_put_text(maker, object, "is", kinds[row->kind]);
    for (size_t i = 0; i < row->entry_count; i++) {
        json_add(maker, work,
                 entry_object(maker, plan, rows, &rows->entries[row->first_entry + i]));
    }
    json_put(maker, object, "work", work);
    return object;
}

static void send_lists(struct json_maker *maker, const struct day_plan *plan,
                       const struct day_rows *rows, struct pool *pool) {
    const struct rates *const rates = plan->jobs[0].estimate->rates;
    struct json_stream *const stream = &maker->stream;
    json_open(stream, "jobs", '[');
    for (size_t j = 0; j < plan->job_count; j++) {
        json_send(stream, NULL, job_object(maker, plan, j));
    }
    json_close(stream, ']');
    json_open(stream, "if that alone held the work up", '[');
    for (size_t i = 0; i < plan->bound_count; i++) {
        json_send(stream, NULL, bound_object(maker, rates, &plan->bounds[i]));
    }
    json_close(stream, ']');
    json_open(stream, "with one more", '[');
    for (size_t i = 0; i < plan->more_count; i++) {
        json_send(stream, NULL, more_object(maker, rates, &plan->more[i], pool));
    }
    json_close(stream, ']');
    json_open(stream, "work", '[');
    for (size_t i = 0; i < plan->line_count; i++) {
        json_send(stream, NULL, line_object(maker, plan, &plan->lines[i]));
    }
    json_close(stream, ']');
    json_open(stream, "rows", '[');
    for (size_t i = 0; i < rows->row_count; i++) {
        json_send(stream, NULL, row_object(maker, plan, rows, &rows->rows[i], pool));
    }
    json_close(stream, ']');
}

void json_days(struct json_maker *maker, const struct day_plan *plan, const struct day_rows *rows) {
    const struct rates *const rates = plan->jobs[0].estimate->rates;
    const struct day_bound *const by = &plan->bounds[0];
    const char *notes[DAY_NOTES];
    struct pool pool;
    pool_init(&pool);
    json_open(&maker->stream, "days", '{');
    json_t *const head = json_object();
    put_day(maker, head, "from", plan->first);
    put_day(maker, head, "ready", plan->ready);
    json_put_count(maker, head, "working days", plan->days);
    put_day(maker, head, "no plan before", plan->soonest);
    json_put_text(maker, head, "decided by", day_cause_words(rates, by->cause, by->machine));
    json_put_count(maker, head, "person-minutes", plan->minutes);
    json_put_count(maker, head, "minutes of a day", plan->day_minutes);
    json_send_members(&maker->stream, head);
    send_lists(maker, plan, rows, &pool);
    json_t *const list = json_array();
    const size_t count = day_notes(plan, notes, &pool);
    for (size_t i = 0; i < count; i++) {
        json_add(maker, list, json_string(notes[i]));
    }
    json_send(&maker->stream, "notes", list);
    json_close(&maker->stream, '}');
    maker->failed = maker->failed || pool_failed(&pool);
    pool_clear(&pool);
}
