/* SPDX-License-Identifier: MIT */
/* Events last all day: a plan knows what is done on a day and in which order, and a shop that keeps
 * to it does not look at the minute. They leave the day free for others (TRANSP). */
#include "report/calendar/day_calendar.h"

#include "base/index.h"
#include "report/calendar/calendar_file.h"
#include "report/words/day_words.h"
#include "together/joined_job.h"

#include <inttypes.h>
#include <string.h>

#define MOST_NAMED 3 /* works that the title of an event names */

struct maker {
    FILE *out;
    const struct day_plan *plan;
    const struct day_rows *rows;
    const struct rates *rates;
    struct pool *pool;
    size_t job;       /* whose events are written */
    const char *name; /* of that job */
    const char *key;  /* of that job, for the names of its events */
    size_t begins;    /* the day of its first work, index into work_days */
};

/* --- what stays the same when a job is planned anew --- */

static uint64_t hash_of(const struct estimate *e) {
    const struct job *const job = e->job;
    uint64_t hash = hash_text(HASH_START, e->rates->shop.name.s);
    hash = hash_text(hash, job->number.s);
    hash = hash_text(hash, job->title.s);
    return hash_text(hash, e->option < 0 ? NULL : estimate_name(e));
}

/* The key of a job; of jobs that say the same the later ones have their number behind it. */
static const char *key_of(const struct maker *m, size_t job) {
    const uint64_t hash = hash_of(m->plan->jobs[job].estimate);
    size_t same = 1;
    for (size_t j = 0; j < job; j++) {
        same += hash_of(m->plan->jobs[j].estimate) == hash;
    }
    return same == 1 ? pool_words(m->pool, "%016" PRIx64, hash)
                     : pool_words(m->pool, "%016" PRIx64 "-%zu", hash, same);
}

/* --- events --- */

/* piece: what of the job it is, the same in every plan of it. */
static void begin_event(const struct maker *m, const char *piece, int32_t day) {
    const struct job *const job = m->plan->jobs[0].estimate->job;
    char stamp[40];
    (void)snprintf(stamp, sizeof stamp, "%04d%02d%02dT000000Z", job->year, job->month, job->day);
    calendar_line(m->out, "BEGIN", "VEVENT");
    calendar_line(m->out, "UID", pool_words(m->pool, "%s-%s@doorcost", m->key, piece));
    calendar_line(m->out, "DTSTAMP", stamp);
    calendar_day(m->out, "DTSTART", day);
    calendar_day(m->out, "DTEND", day + 1);
    calendar_line(m->out, "TRANSP", "TRANSPARENT");
}

static void end_event(const struct maker *m) {
    calendar_line(m->out, "END", "VEVENT");
}

/* A line of the description: `glue, 1.2 hours, clamps`. */
static const char *told(const struct maker *m, const struct day_entry *entry) {
    const struct operation *const op = &m->rates->operations[entry->operation];
    const bool at = op->machine >= 0 && !entry->waits;
    return pool_words(m->pool, "%s, %s hours%s%s",
                      day_entry_words(m->rates, m->rows, entry, m->pool),
                      show_hours(entry->minutes).text, at ? ", " : "",
                      at ? m->rates->machines[op->machine].name.s : "");
}

/* Entries of the job on one day that stand behind each other, or are all that wait then. */
struct day_work {
    const char *title;       /* names of works, no more than MOST_NAMED */
    const char *description; /* a line each */
    size_t named, more;      /* names in the title, and works that it leaves out */
    int64_t minutes;
    int32_t last; /* the operation that was named last */
};

static void add_entry(const struct maker *m, struct day_work *work, const struct day_entry *entry) {
    if (work->last != entry->operation) {
        work->last = entry->operation;
        if (work->named < MOST_NAMED) {
            work->title = pool_words(m->pool, "%s%s%s", work->title, work->named == 0 ? "" : ", ",
                                     m->rates->operations[entry->operation].name.s);
            work->named++;
        } else {
            work->more++;
        }
    }
    work->description = pool_words(m->pool, "%s%s\n", work->description, told(m, entry));
    work->minutes += entry->minutes;
}

static void put_person(const struct maker *m, const struct day_row *row, size_t day) {
    struct day_work work = {.title = "", .description = "", .last = -1};
    for (size_t i = 0; i < row->entry_count; i++) {
        const struct day_entry *const entry = &m->rows->entries[row->first_entry + i];
        if (entry->day == day && entry->job == m->job) {
            add_entry(m, &work, entry);
        }
    }
    if (work.named == 0) {
        return;
    }
    begin_event(m, pool_words(m->pool, "day%zu-person%d", day - m->begins + 1, (int)row->of + 1),
                m->plan->work_days[day]);
    calendar_text(m->out, "SUMMARY",
                  pool_words(m->pool, "%s%s%s: %s%s", m->name, m->plan->people == 1 ? "" : ", ",
                             m->plan->people == 1 ? "" : day_row_name(m->rates, row, m->pool),
                             work.title,
                             work.more == 0 ? "" : pool_words(m->pool, ", %zu more", work.more)));
    calendar_text(m->out, "DESCRIPTION",
                  pool_words(m->pool, "%stogether %s hours", work.description,
                             show_hours(work.minutes).text));
    end_event(m);
}

/* Whether anybody works on the job that day. */
static bool is_worked(const struct maker *m, size_t day) {
    for (size_t i = 0; i < m->rows->entry_count; i++) {
        const struct day_entry *const entry = &m->rows->entries[i];
        if (entry->day == day && entry->job == m->job && !entry->waits) {
            return true;
        }
    }
    return false;
}

/* A day between others on which nobody works on the job: what is waited for, if it is its own. */
static void put_wait(const struct maker *m, size_t day) {
    struct day_work work = {.title = "", .description = "", .last = -1};
    for (size_t i = 0; i < m->rows->entry_count; i++) {
        const struct day_entry *const entry = &m->rows->entries[i];
        if (entry->day == day && entry->job == m->job && entry->waits) {
            add_entry(m, &work, entry);
        }
    }
    begin_event(m, pool_words(m->pool, "day%zu-wait", day - m->begins + 1),
                m->plan->work_days[day]);
    calendar_text(m->out, "SUMMARY", pool_words(m->pool, "%s: waits", m->name));
    calendar_text(m->out, "DESCRIPTION",
                  work.named == 0 ? "Others are worked on, or it dries until the day is over."
                                  : work.description);
    end_event(m);
}

/* The day on which the job is ready; the event is left open. */
static void put_ready(const struct maker *m) {
    const struct job *const job = m->plan->jobs[m->job].estimate->job;
    const char *notes[DAY_NOTES];
    const size_t count = day_notes(m->plan, notes, m->pool);
    const char *words = job->title.s;
    for (size_t i = 0; i < count; i++) {
        words = pool_words(m->pool, "%s\n%s", words, notes[i]);
    }
    begin_event(m, "ready", m->plan->jobs[m->job].ready);
    calendar_text(m->out, "SUMMARY", pool_words(m->pool, "%s: ready", m->name));
    calendar_text(m->out, "DESCRIPTION", words);
}

static size_t day_index(const struct day_plan *plan, int32_t day) {
    size_t d = 0;
    while (d + 1 < plan->work_day_count && plan->work_days[d] < day) {
        d++;
    }
    return d;
}

static void put_job(struct maker *m, size_t job) {
    m->job = job;
    m->name = m->plan->job_count == 1
                  ? day_job_name(m->plan, job)
                  : pool_words(m->pool, "%s %s", joined_letter(job), day_job_name(m->plan, job));
    m->key = key_of(m, job);
    m->begins = day_index(m->plan, m->plan->jobs[job].begins);
    const size_t ready = day_index(m->plan, m->plan->jobs[job].ready);
    for (size_t d = m->begins; d <= ready; d++) {
        if (!is_worked(m, d)) {
            put_wait(m, d);
        }
        for (size_t r = 0; r < m->rows->row_count && m->rows->rows[r].kind == ROW_PERSON; r++) {
            put_person(m, &m->rows->rows[r], d);
        }
    }
    put_ready(m);
}

static const char *calendar_name(const struct maker *m) {
    const char *name = "";
    for (size_t j = 0; j < m->plan->job_count; j++) {
        name = pool_words(m->pool, "%s%s%s", name, j == 0 ? "" : ", ", day_job_name(m->plan, j));
    }
    return pool_words(m->pool, "Work by day: %s", name);
}

bool day_calendar_write(const struct day_plan *plan, const struct day_rows *rows, const char *path,
                        struct pool *pool) {
    struct maker m = {
        .plan = plan, .rows = rows, .rates = plan->jobs[0].estimate->rates, .pool = pool};
    m.out = fopen(path, "wb");
    if (m.out == NULL) {
        return false;
    }
    calendar_line(m.out, "BEGIN", "VCALENDAR");
    calendar_line(m.out, "VERSION", "2.0");
    calendar_line(m.out, "PRODID", "-//doorcost//work by day//EN");
    calendar_line(m.out, "CALSCALE", "GREGORIAN");
    calendar_line(m.out, "METHOD", "PUBLISH");
    calendar_text(m.out, "NAME", calendar_name(&m)); /* RFC 7986, 5.1 */
    for (size_t j = 0; j < plan->job_count; j++) {
        if (j > 0) {
            end_event(&m);
        }
        put_job(&m, j);
    }
    const bool done = ferror(m.out) == 0 && !pool_failed(pool);
    return fclose(m.out) == 0 && done;
}
