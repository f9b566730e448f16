/* SPDX-License-Identifier: MIT */
#include "learn/hours_fit.h"

#include "learn/learned_parts.h"
#include "learn/least_squares.h"

#include <math.h>

/* Area of one face of all doors. */
static double face_area(const struct estimate *e) {
    double area = 0;
    for (size_t i = 0; i < e->quantities.count; i++) {
        area += tape_real(&e->tape, e->quantities.leaves[i].face) *
                tape_real(&e->tape, e->quantities.pieces[i]);
    }
    return area;
}

/* Area of all coats. */
static double coat_area(const struct estimate *e) {
    double area = 0;
    for (size_t b = 0; b < e->finish.batch_count; b++) {
        const struct batch *const batch = &e->finish.batches[b];
        for (size_t i = 0; i < batch->coat_count; i++) {
            area += tape_real(&e->tape, batch->area) * tape_real(&e->tape, batch->coats[i].times);
        }
    }
    return area;
}

static int64_t noted_hours(const struct learned *learned) {
    int64_t minutes = 0;
    for (size_t i = 0; i < learned->work_count; i++) {
        minutes += learned->work[i].noted;
    }
    return learned_share(minutes, 1, 60);
}

static void take_job(const struct learned_job *job, double row[HOURS_FIT_BY]) {
    const struct estimate *const e = job->estimate;
    row[0] = 1;
    row[1] = tape_real(&e->tape, e->quantities.all_leaves);
    row[2] = face_area(e);
    row[3] = coat_area(e);
}

static void fit_jobs(struct hours_fit *fit, const struct learned_job *jobs, double *x, double *y) {
    double by[HOURS_FIT_BY];
    double spread;
    for (size_t i = 0; i < fit->count; i++) {
        take_job(&jobs[i], &x[i * HOURS_FIT_BY]);
        fit->noted[i] = noted_hours(jobs[i].learned);
        y[i] = (double)fit->noted[i] / 100;
    }
    if (!least_squares(&(struct matrix){x, fit->count, HOURS_FIT_BY}, y, by, &spread)) {
        fit->lacks = "doors, area and coats of these jobs go together too closely to be told apart";
        return;
    }
    fit->spread = (int64_t)llround(spread * 100);
    for (size_t k = 0; k < HOURS_FIT_BY; k++) {
        fit->by[k] = (int64_t)llround(by[k] * 1e6);
    }
    for (size_t i = 0; i < fit->count; i++) {
        double row[HOURS_FIT_BY];
        double hours = 0;
        take_job(&jobs[i], row);
        for (size_t k = 0; k < HOURS_FIT_BY; k++) {
            hours += by[k] * row[k];
        }
        fit->fitted[i] = (int64_t)llround(hours * 100);
    }
}

bool hours_fit_make(struct hours_fit *fit, const struct learned_job *jobs, size_t count,
                    struct pool *pool) {
    *fit = (struct hours_fit){.count = count};
    if (count < HOURS_FIT_LEAST_JOBS) {
        fit->lacks = "hours by doors, area and coats are fitted from eight jobs on";
        return true;
    }
    for (size_t i = 0; i < count; i++) {
        if (jobs[i].learned->unnoted > 0) {
            fit->lacks = "hours by doors, area and coats are fitted where all work of each job was "
                         "noted";
            return true;
        }
    }
    fit->noted = pool_take(pool, count, sizeof *fit->noted);
    fit->fitted = pool_take(pool, count, sizeof *fit->fitted);
    double *const x = pool_take(pool, count * HOURS_FIT_BY, sizeof *x);
    double *const y = pool_take(pool, count, sizeof *y);
    if (fit->noted == NULL || fit->fitted == NULL || x == NULL || y == NULL) {
        return false;
    }
    fit_jobs(fit, jobs, x, y);
    return true;
}
