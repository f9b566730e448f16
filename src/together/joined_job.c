/* SPDX-License-Identifier: MIT */
#include "together/joined_job.h"

#include "base/joined.h"
#include "model/construction.h"
#include "read/job/job_keys.h"

const char *joined_letter(size_t number) {
    static const char letters[] = "A\0B\0C\0D\0E\0F\0G\0H\0I\0J\0K\0L\0M\0N\0O\0P\0Q\0R\0S\0T\0U\0"
                                  "V\0W\0X\0Y\0Z";
    return &letters[2 * number];
}

/* --- rows ------------------------------------------------------------------------------------- */

/* The makes of all jobs: of each one for doors and one for what is not, as what [make] lists of
 * hardware is for doors alone (row_hardware). */
struct joining {
    struct together *together;
    struct make *makes;
    struct row *rows;
    size_t *job_of;
    size_t row_count, make_count;
};

/* How the row is made, all of it as if the row itself said so. */
static void say_make(struct make *make, const struct estimate *e, const struct row *row) {
    make->end_panel = row->make->end_panel;
    make->own = row_construction(e->job, row, e->option);
    if (row->use.choice != USE_DOOR) {
        make->own.hardware = row->make->own.hardware;
    }
    make->whole = make->own;
}

static void add_row(struct joining *j, size_t job, const struct row *row) {
    struct pool *const pool = &j->together->pool;
    const struct estimate *const e = j->together->jobs[job].alone;
    const size_t number =
        j->make_count + 2 * row->make->number + (row->use.choice == USE_DOOR ? 0 : 1);
    struct make *const make = &j->makes[number];
    if (make->own.style.name.s == NULL) {
        make->number = number;
        say_make(make, e, row);
    }
    struct row *const added = &j->rows[j->row_count];
    *added = *row;
    added->id.s = pool_words(pool, "%s-%s", joined_letter(job), row->id.s);
    added->also = (struct references){0}; /* work is no part of it */
    added->make = make;
    j->job_of[j->row_count++] = job;
}

static bool join_rows(struct together *t) {
    struct joining j = {.together = t};
    size_t rows = 0;
    size_t makes = 0;
    for (size_t i = 0; i < t->count; i++) {
        rows += t->jobs[i].alone->job->row_count;
        makes += 2 * t->jobs[i].alone->job->make_count;
    }
    j.rows = pool_take(&t->pool, rows, sizeof *j.rows);
    j.makes = pool_take(&t->pool, makes, sizeof *j.makes);
    j.job_of = pool_take(&t->pool, rows, sizeof *j.job_of);
    for (size_t i = 0; i < t->count && !pool_failed(&t->pool); i++) {
        const struct job *const job = t->jobs[i].alone->job;
        for (size_t r = 0; r < job->row_count; r++) {
            add_row(&j, i, &job->rows[r]);
        }
        j.make_count += 2 * job->make_count;
    }
    t->job.rows = j.rows;
    t->job.row_count = rows;
    t->job.make_count = makes;
    t->joined.job_of = j.job_of;
    return !pool_failed(&t->pool);
}

/* --- the job ---------------------------------------------------------------------------------- */

/* `A Galley and pantry; B Laundry`. */
static void name_job(struct together *t) {
    const char *title = "";
    const char *number = "";
    for (size_t i = 0; i < t->count; i++) {
        const struct job *const job = t->jobs[i].alone->job;
        const char *const letter = joined_letter(i);
        title = pool_words(&t->pool, "%s%s%s %s", title, i == 0 ? "" : "; ", letter, job->title.s);
        if (job->number.s != NULL) {
            number = pool_words(&t->pool, "%s%s%s %s", number, number[0] == '\0' ? "" : ", ",
                                letter, job->number.s);
        }
    }
    t->job.title.s = title;
    t->job.number.s = number[0] == '\0' ? NULL : number;
}

static void add_hours(struct together *t) {
    struct value *const hours = &t->joined.hours;
    for (size_t i = 0; i < t->count; i++) { /* all of one unit, with it of as many decimals */
        const struct estimate *const e = t->jobs[i].alone;
        hours->amount += tape_amount(&e->tape, e->labor.hours);
        hours->decimals = tape_decimals(&e->tape, e->labor.hours);
        hours->unit = UNIT_HOUR;
        hours->set = true;
    }
}

bool joined_job_make(struct together *t) {
    const struct job *const first = t->jobs[0].alone->job;
    t->joined = (struct joined_jobs){.count = t->count};
    t->job = (struct job){
        .path = first->path,
        .joined = &t->joined,
        .title.place = first->title.place,
        .date = first->date,
        .year = first->year,
        .month = first->month,
        .day = first->day,
        .unit = first->unit,
        .rates_path = first->rates_path,
    };
    construction_init(&t->job.construction);
    name_job(t);
    for (size_t i = 1; i < t->count; i++) { /* what is bought last is bought by that day */
        const struct job *const job = t->jobs[i].alone->job;
        if (job_quoted(job) > job_quoted(&t->job)) {
            t->job.date = job->date;
            t->job.year = job->year;
            t->job.month = job->month;
            t->job.day = job->day;
        }
    }
    add_hours(t);
    return join_rows(t) && !pool_failed(&t->pool);
}
