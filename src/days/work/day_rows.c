/* SPDX-License-Identifier: MIT */
/* Steps are cut where a day ends, each part is put in the row of every one who holds it, and parts
 * of the same work are put together. */
#include "days/work/day_rows.h"

#include "base/order.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

/* A part of a step on one day, in one row. */
struct stretch {
    size_t row; /* as of row_of */
    size_t day;
    const struct day_step *step;
    bool waits;
    int64_t from, to; /* minutes of work */
};

struct maker {
    const struct day_plan *plan;
    size_t machine_count;
    struct stretch *stretches;
    size_t count, room;
    bool failed;
};

/* --- rows before those without entries are dropped --- */

static size_t row_of(const struct maker *m, enum day_row_kind kind, int32_t of) {
    const size_t people = (size_t)m->plan->people;
    switch (kind) {
    case ROW_PERSON:
        return (size_t)of;
    case ROW_MACHINE:
    case ROW_CLAMPS:
        return people + (size_t)of;
    case ROW_RACKS:
        break;
    case ROW_FINISHER:
        return people + m->machine_count + 1;
    }
    return people + m->machine_count;
}

static struct day_row row_at(const struct maker *m, size_t row) {
    const size_t people = (size_t)m->plan->people;
    const struct rates *const rates = m->plan->jobs[0].estimate->rates;
    if (row < people) {
        return (struct day_row){.kind = ROW_PERSON, .of = (int32_t)row};
    }
    row -= people;
    if (row < m->machine_count) {
        const bool clamps = rates->machines[row].kind.choice == MACHINE_CLAMPS;
        return (struct day_row){.kind = clamps ? ROW_CLAMPS : ROW_MACHINE, .of = (int32_t)row};
    }
    return (struct day_row){.kind = row == m->machine_count ? ROW_RACKS : ROW_FINISHER};
}

/* --- stretches --- */

static void add(struct maker *m, size_t row, const struct day_step *step, bool waits) {
    const int64_t day_minutes = m->plan->day_minutes;
    const int64_t end = step->begins + step->minutes;
    const int64_t to = waits ? step->free : end;
    for (int64_t from = waits ? end : step->begins; from < to && !m->failed;) {
        const int64_t close = (from / day_minutes + 1) * day_minutes;
        const int64_t until = to < close ? to : close;
        m->stretches =
            array_grow(m->stretches, &m->room, m->count + 1, sizeof *m->stretches, &m->failed);
        if (!m->failed) {
            m->stretches[m->count++] = (struct stretch){.row = row,
                                                        .day = (size_t)(from / day_minutes),
                                                        .step = step,
                                                        .waits = waits,
                                                        .from = from,
                                                        .to = until};
        }
        from = until;
    }
}

/* A person, and what of the plan keeps them. */
struct person {
    int64_t busy_until; /* minute of work */
    const struct day_step *last;
};

static bool same_work(const struct day_step *a, const struct day_step *b) {
    return a->job == b->job && a->operation == b->operation && strcmp(a->what, b->what) == 0;
}

/* Puts a step in the rows of as many people as it needs: those who did the same before, then the
 * first ones. No more are at work at once than there are, so these are always free. */
static void give_people(struct maker *m, struct person *people, const struct day_step *step) {
    int32_t lacking = step->hands;
    for (int pass = 0; pass < 2; pass++) {
        for (int32_t p = 0; p < m->plan->people && lacking > 0; p++) {
            struct person *const person = &people[p];
            const bool same = person->last != NULL && same_work(person->last, step);
            if (person->busy_until <= step->begins && same == (pass == 0)) {
                *person = (struct person){step->begins + step->minutes, step};
                add(m, row_of(m, ROW_PERSON, p), step, false);
                lacking--;
            }
        }
    }
    assert(lacking == 0);
}

static void add_places(struct maker *m, const struct day_step *step) {
    if (step->machine >= 0) {
        const size_t row = row_of(m, ROW_MACHINE, step->machine);
        add(m, row, step, false);
        if (step->clamps > 0) {
            add(m, row, step, true);
            return;
        }
    }
    add(m, row_of(m, step->places > 0 ? ROW_RACKS : ROW_FINISHER, 0), step, true);
}

/* A step by its number, to be sorted by its begin. */
struct begun {
    int64_t begins;
    size_t step;
};

static int by_begin(const void *x, const void *y) {
    const struct begun *const a = x;
    const struct begun *const b = y;
    const int begins = order_by_number(a->begins, b->begins);
    return begins != 0 ? begins : order_by_number((int64_t)a->step, (int64_t)b->step);
}

/* The stretches of all steps but marks. */
static bool take_steps(struct maker *m, struct pool *pool) {
    const struct day_plan *const plan = m->plan;
    struct person *const people = pool_take(pool, (size_t)plan->people, sizeof *people);
    struct begun *const order = pool_take(pool, plan->step_count, sizeof *order);
    size_t count = 0;
    if (people == NULL || order == NULL) {
        return false;
    }
    for (size_t s = 0; s < plan->step_count; s++) {
        if (plan->steps[s].operation >= 0) {
            order[count++] = (struct begun){plan->steps[s].begins, s};
        }
    }
    qsort(order, count, sizeof *order, by_begin);
    for (size_t i = 0; i < count && !m->failed; i++) {
        const struct day_step *const step = &plan->steps[order[i].step];
        if (step->minutes > 0) {
            give_people(m, people, step);
        }
        add_places(m, step);
    }
    return !m->failed;
}

/* --- entries --- */

static int same_entry(const struct stretch *a, const struct stretch *b) {
    const int row = order_by_number((int64_t)a->row, (int64_t)b->row);
    const int day = order_by_number((int64_t)a->day, (int64_t)b->day);
    const int job = order_by_number((int64_t)a->step->job, (int64_t)b->step->job);
    const int operation = order_by_number(a->step->operation, b->step->operation);
    const int what = strcmp(a->step->what, b->step->what);
    return row != 0         ? row
           : day != 0       ? day
           : job != 0       ? job
           : operation != 0 ? operation
           : what != 0      ? what
                            : order_by_number(a->waits, b->waits);
}

static int by_entry(const void *x, const void *y) {
    const struct stretch *const a = x;
    const struct stretch *const b = y;
    const int entry = same_entry(a, b);
    const int from = order_by_number(a->from, b->from);
    return entry != 0 ? entry : from != 0 ? from : order_by_number(a->to, b->to);
}

/* A stretch behind the others of its entry. */
static void join(struct day_rows *rows, struct day_entry *entry, const struct stretch *s,
                 int64_t day_minutes) {
    const int64_t opens = (int64_t)s->day * day_minutes;
    const struct day_stretch span = {(int32_t)(s->from - opens), (int32_t)(s->to - opens)};
    struct day_stretch *const spans = &rows->spans[entry->first_span];
    struct day_stretch *const last = entry->span_count == 0 ? NULL : &spans[entry->span_count - 1];
    if (last == NULL || span.from > last->to) {
        spans[entry->span_count++] = span;
        entry->minutes += span.to - span.from;
    } else if (span.to > last->to) {
        entry->minutes += span.to - last->to;
        last->to = span.to;
    }
}

/* How two entries stand, whose spans are in `all`. */
struct placed {
    struct day_entry entry;
    int32_t from;
};

static int as_it_goes(const void *x, const void *y) {
    const struct placed *const a = x;
    const struct placed *const b = y;
    const int row = order_by_number((int64_t)a->entry.row, (int64_t)b->entry.row);
    const int day = order_by_number((int64_t)a->entry.day, (int64_t)b->entry.day);
    const int from = order_by_number(a->from, b->from);
    return row != 0   ? row
           : day != 0 ? day
           : from != 0
               ? from
               : order_by_number((int64_t)a->entry.first_span, (int64_t)b->entry.first_span);
}

/* The entries, in their order; their rows as of row_of. */
static bool make_entries(struct day_rows *rows, struct maker *m, struct pool *pool) {
    struct placed *const placed = pool_take(pool, m->count, sizeof *placed);
    size_t count = 0;
    rows->spans = pool_take(pool, m->count, sizeof *rows->spans);
    if (placed == NULL || rows->spans == NULL) {
        return false;
    }
    if (m->count > 0) {
        qsort(m->stretches, m->count, sizeof *m->stretches, by_entry);
    }
    for (size_t i = 0; i < m->count; i++) {
        const struct stretch *const s = &m->stretches[i];
        if (i == 0 || same_entry(&m->stretches[i - 1], s) != 0) {
            placed[count].entry = (struct day_entry){.row = s->row,
                                                     .day = s->day,
                                                     .job = s->step->job,
                                                     .operation = s->step->operation,
                                                     .what = s->step->what,
                                                     .coat = s->step->coat,
                                                     .doors = s->step->doors,
                                                     .waits = s->waits,
                                                     .first_span = i};
            count++;
        }
        join(rows, &placed[count - 1].entry, s, m->plan->day_minutes);
        placed[count - 1].from = rows->spans[placed[count - 1].entry.first_span].from;
    }
    qsort(placed, count, sizeof *placed, as_it_goes);
    rows->entries = pool_take(pool, count, sizeof *rows->entries);
    for (size_t i = 0; i < count && rows->entries != NULL; i++) {
        rows->entries[i] = placed[i].entry;
    }
    rows->entry_count = count;
    return rows->entries != NULL;
}

/* The rows that have entries. */
static bool make_rows(struct day_rows *rows, const struct maker *m, struct pool *pool) {
    const size_t most = row_of(m, ROW_FINISHER, 0) + 1;
    rows->rows = pool_take(pool, most, sizeof *rows->rows);
    for (size_t i = 0; i < rows->entry_count && rows->rows != NULL; i++) {
        const size_t row = rows->entries[i].row;
        if (i == 0 || row != rows->entries[i - 1].row) {
            rows->rows[rows->row_count] = row_at(m, row);
            rows->rows[rows->row_count++].first_entry = i;
        }
        rows->rows[rows->row_count - 1].entry_count++;
    }
    for (size_t r = 0; r < rows->row_count; r++) {
        for (size_t i = 0; i < rows->rows[r].entry_count; i++) {
            rows->entries[rows->rows[r].first_entry + i].row = r;
        }
    }
    return rows->rows != NULL;
}

bool day_rows_make(struct day_rows *rows, const struct day_plan *plan, struct pool *pool) {
    struct maker m = {.plan = plan, .machine_count = plan->jobs[0].estimate->rates->machine_count};
    *rows = (struct day_rows){0};
    const bool done =
        take_steps(&m, pool) && make_entries(rows, &m, pool) && make_rows(rows, &m, pool);
    free(m.stretches);
    return done;
}
