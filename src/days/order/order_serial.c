/* SPDX-License-Identifier: MIT */
/* A task is moved later, from one step of a resource to the next, until it fits everywhere. */
#include "days/order/order_serial.h"

#include <stdlib.h>
#include <string.h>

struct use_step {
    int64_t from; /* minute of work */
    int32_t used; /* until the next step */
};

/* --- what is in use --- */

/* The step that a minute is of. */
static size_t step_at(const struct use_line *line, int64_t at) {
    size_t low = 0;
    size_t high = line->count;
    while (high - low > 1) {
        const size_t middle = low + (high - low) / 2;
        if (line->steps[middle].from <= at) {
            low = middle;
        } else {
            high = middle;
        }
    }
    return low;
}

/* The first minute from which more than `free` is in use no longer, of [from, to); from itself
 * where it never is. */
static int64_t blocked_until(const struct use_line *line, int32_t most, int64_t from, int64_t to) {
    int64_t until = from;
    for (size_t i = step_at(line, from); i < line->count && line->steps[i].from < to; i++) {
        if (line->steps[i].used > most) {
            until = line->steps[i + 1].from; /* the last step is of nothing in use */
        }
    }
    return until;
}

/* Makes a step begin at a minute; its number. */
static size_t cut_step(struct use_line *line, int64_t at, bool *failed) {
    const size_t i = step_at(line, at);
    if (line->steps[i].from == at) {
        return i;
    }
    line->steps =
        array_grow(line->steps, &line->room, line->count + 1, sizeof *line->steps, failed);
    if (*failed) {
        return i;
    }
    memmove(&line->steps[i + 2], &line->steps[i + 1], (line->count - i - 1) * sizeof *line->steps);
    line->steps[i + 1] = (struct use_step){.from = at, .used = line->steps[i].used};
    line->count++;
    return i + 1;
}

static void use(struct use_line *line, int32_t amount, int64_t from, int64_t to, bool *failed) {
    if (from >= to) {
        return;
    }
    const size_t first = cut_step(line, from, failed);
    const size_t last = cut_step(line, to, failed);
    for (size_t i = first; i < last && !*failed; i++) {
        line->steps[i].used += amount;
    }
}

/* --- placing --- */

int64_t order_held_until(const struct order_work *work, size_t task, int64_t begins) {
    const struct order_task *const t = &work->tasks[task];
    return clock_ends(work->time, begins + t->minutes) + t->hold;
}

/* The first minute of work at which all that a task waits for lets it begin. */
static int64_t earliest(const struct order_work *work, const struct order_task *task,
                        const int64_t *begins) {
    int64_t at = work_from(work->time, task->ready);
    for (size_t i = 0; i < task->link_count; i++) {
        const struct order_link *const link = &work->links[task->first_link + i];
        const int64_t done = begins[link->before] + work->tasks[link->before].minutes;
        const int64_t free =
            link->lag == 0 ? done : work_from(work->time, clock_ends(work->time, done) + link->lag);
        at = free > at ? free : at;
    }
    return at;
}

/* Where a demand of a task that begins at `at` ends. */
static int64_t released(const struct order_work *work, size_t task, const struct order_demand *d,
                        int64_t at) {
    const struct order_task *const t = &work->tasks[task];
    return d->kept && t->hold > 0 ? work_from(work->time, order_held_until(work, task, at))
                                  : at + t->minutes;
}

static int64_t place(struct serial *serial, size_t task, int64_t at) {
    const struct order_work *const work = serial->work;
    const struct order_task *const t = &work->tasks[task];
    bool moved = true;
    while (moved) {
        moved = false;
        for (size_t i = 0; i < t->demand_count; i++) {
            const struct order_demand *const d = &work->demands[t->first_demand + i];
            const int64_t free =
                blocked_until(&serial->lines[d->resource], work->capacity[d->resource] - d->amount,
                              at, released(work, task, d, at));
            moved = moved || free > at;
            at = free > at ? free : at;
        }
    }
    for (size_t i = 0; i < t->demand_count; i++) {
        const struct order_demand *const d = &work->demands[t->first_demand + i];
        use(&serial->lines[d->resource], d->amount, at, released(work, task, d, at),
            &serial->failed);
    }
    return at;
}

/* Takes the open task with the least key out of the list. */
static size_t take_next(const struct serial *serial, size_t *open_count, const int64_t *keys) {
    size_t best = 0;
    for (size_t i = 1; i < *open_count; i++) {
        const int32_t a = serial->open[i];
        const int32_t b = serial->open[best];
        if (keys[a] < keys[b] || (keys[a] == keys[b] && a < b)) {
            best = i;
        }
    }
    const size_t task = (size_t)serial->open[best];
    serial->open[best] = serial->open[--*open_count];
    return task;
}

int64_t serial_place(struct serial *serial, const int64_t *keys, int64_t *begins) {
    const struct order_work *const work = serial->work;
    size_t open_count = 0;
    int64_t end = 0;
    for (size_t r = 0; r < work->resource_count; r++) {
        serial->lines[r].count = 1;
        serial->lines[r].steps[0] = (struct use_step){0};
    }
    for (size_t t = 0; t < work->task_count; t++) {
        serial->waits[t] = (int32_t)work->tasks[t].link_count;
        if (serial->waits[t] == 0) {
            serial->open[open_count++] = (int32_t)t;
        }
    }
    while (open_count > 0 && !serial->failed) {
        const size_t task = take_next(serial, &open_count, keys);
        begins[task] = place(serial, task, earliest(work, &work->tasks[task], begins));
        const int64_t until = order_held_until(work, task, begins[task]);
        end = until > end ? until : end;
        for (int32_t i = serial->first_after[task]; i < serial->first_after[task + 1]; i++) {
            if (--serial->waits[serial->after[i]] == 0) {
                serial->open[open_count++] = serial->after[i];
            }
        }
    }
    return end;
}

/* --- room --- */

/* Turns the links round: which tasks wait for each. */
static void turn_links(struct serial *serial, size_t link_count) {
    const struct order_work *const work = serial->work;
    for (size_t t = 0; t < work->task_count; t++) {
        for (size_t i = 0; i < work->tasks[t].link_count; i++) {
            serial->first_after[work->links[work->tasks[t].first_link + i].before + 1]++;
        }
    }
    for (size_t t = 0; t < work->task_count; t++) {
        serial->first_after[t + 1] += serial->first_after[t];
    }
    size_t left = link_count;
    for (size_t t = work->task_count; t-- > 0;) {
        for (size_t i = 0; i < work->tasks[t].link_count; i++, left--) {
            const int32_t before = work->links[work->tasks[t].first_link + i].before;
            /* waits counts here how many of its places are filled */
            serial->after[serial->first_after[before] + serial->waits[before]++] = (int32_t)t;
        }
    }
}

bool serial_init(struct serial *serial, const struct order_work *work, struct pool *pool) {
    size_t links = 0;
    for (size_t t = 0; t < work->task_count; t++) {
        links += work->tasks[t].link_count;
    }
    *serial = (struct serial){.work = work};
    serial->lines = pool_take(pool, work->resource_count, sizeof *serial->lines);
    serial->waits = pool_take(pool, work->task_count, sizeof *serial->waits);
    serial->first_after = pool_take(pool, work->task_count + 1, sizeof *serial->first_after);
    serial->after = pool_take(pool, links, sizeof *serial->after);
    serial->open = pool_take(pool, work->task_count, sizeof *serial->open);
    if (pool_failed(pool)) {
        return false;
    }
    for (size_t r = 0; r < work->resource_count && !serial->failed; r++) {
        struct use_line *const line = &serial->lines[r];
        line->steps = array_grow(NULL, &line->room, 8, sizeof *line->steps, &serial->failed);
    }
    turn_links(serial, links);
    return !serial->failed;
}

void serial_clear(struct serial *serial) {
    for (size_t r = 0; serial->lines != NULL && r < serial->work->resource_count; r++) {
        free(serial->lines[r].steps);
    }
}
