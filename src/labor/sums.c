/* SPDX-License-Identifier: MIT */
#include "labor/sums.h"

struct summer {
    struct labor *labor;
    struct tape *tape;
    const struct measures *m;
    const struct rates *rates;
    const struct quantities *q;
    const struct finish_list *finish;
};

static fig ratio(const struct summer *f, const char *what, enum unit unit, figs over, figs under) {
    return fig_ratio(f->tape, what, unit, over, under);
}

bool sums_listed(const struct references *list, int32_t operation) {
    for (size_t i = 0; i < list->count; i++) {
        if (list->r[i].index == operation) {
            return true;
        }
    }
    return false;
}

static fig sum_operations(const struct summer *f, const char *what, enum unit unit,
                          fig (*pick)(const struct operation_figures *), fig *terms) {
    for (size_t i = 0; i < f->labor->operation_count; i++) {
        terms[i] = pick(&f->labor->operations[i]);
    }
    return fig_sum(f->tape, what, unit, terms, f->labor->operation_count);
}

static fig pick_person(const struct operation_figures *o) {
    return o->person_minutes;
}
static fig pick_labor(const struct operation_figures *o) {
    return o->labor;
}
static fig pick_machine(const struct operation_figures *o) {
    return o->machine;
}

static void sum_machines(const struct summer *f, fig *minutes, fig *costs) {
    for (int32_t m = -1; m < (int32_t)f->rates->machine_count; m++) {
        size_t n = 0;
        for (size_t i = 0; i < f->labor->operation_count; i++) {
            const struct operation_figures *const o = &f->labor->operations[i];
            if (f->rates->operations[o->operation].machine == m) {
                minutes[n] = o->machine_minutes;
                costs[n++] = o->machine;
            }
        }
        if (n > 0) {
            tape_about(f->tape, m < 0 ? "by hand" : f->rates->machines[m].name.s);
            const fig all = fig_sum(f->tape, "minutes at the machine", UNIT_MIN, minutes, n);
            f->labor->machines[f->labor->machine_count++] = (struct machine_figures){
                .machine = m,
                .minutes = all,
                .hours = ratio(f, "hours at the machine", UNIT_HOUR, (figs){{all}},
                               (figs){{f->m->sixty}}),
                .cost = fig_sum(f->tape, "machine cost", UNIT_MONEY, costs, n),
            };
        }
    }
}

static bool off_bench(const struct summer *f, size_t i) {
    return f->rates->operations[f->labor->operations[i].operation].off_bench;
}

/* Whether any work of the job is not done at the bench. */
static bool leaves_bench(const struct summer *f) {
    for (size_t i = 0; i < f->labor->operation_count; i++) {
        if (off_bench(f, i)) {
            return true;
        }
    }
    return false;
}

/* Of terms, one an operation, those at the bench are moved to the front; how many they are. */
static size_t keep_bench(const struct summer *f, fig *terms) {
    size_t kept = 0;
    for (size_t i = 0; i < f->labor->operation_count; i++) {
        if (!off_bench(f, i)) {
            terms[kept++] = terms[i];
        }
    }
    return kept;
}

static void sum_rows(const struct summer *f, fig *terms) {
    struct labor *const labor = f->labor;
    for (size_t r = 0; r < f->q->count; r++) {
        tape_about_again(f->tape, f->q->leaves[r].subject);
        for (size_t i = 0; i < labor->operation_count; i++) {
            terms[i] = labor->operations[i].shares[r].person;
        }
        labor->leaf_minutes[r] =
            fig_sum(f->tape, "person-minutes, a door", UNIT_MIN, terms, labor->operation_count);
        labor->leaf_bench_minutes[r] = labor->leaf_minutes[r];
        if (leaves_bench(f)) {
            labor->leaf_bench_minutes[r] = fig_sum(f->tape, "person-minutes at the bench, a door",
                                                   UNIT_MIN, terms, keep_bench(f, terms));
        }
        for (size_t i = 0; i < labor->operation_count; i++) {
            terms[i] = labor->operations[i].shares[r].cost;
        }
        labor->leaf_cost[r] = fig_sum(f->tape, "labor and machine, a door", UNIT_MONEY, terms,
                                      labor->operation_count);
    }
}

/* Whether any finish, or the shop for every job, lists an operation. */
static bool of_finishing(const struct summer *f, int32_t operation) {
    for (size_t i = 0; i < f->rates->finish_count; i++) {
        if (sums_listed(&f->rates->finishes[i].operations, operation)) {
            return true;
        }
    }
    return false;
}

enum work { WORK_MAKING, WORK_FINISHING, WORK_AROUND };

static enum work work_of(const struct summer *f, int32_t operation) {
    if (sums_listed(&f->rates->shop.operations, operation)) {
        return WORK_AROUND;
    }
    return of_finishing(f, operation) ? WORK_FINISHING : WORK_MAKING;
}

/* Person-minutes of one sort of work by doors and fronts: what shops tell each other. */
static fig minutes_of(const struct summer *f, const char *what, enum work work, fig *terms) {
    size_t n = 0;
    for (size_t i = 0; i < f->labor->operation_count; i++) {
        const struct operation_figures *const o = &f->labor->operations[i];
        if (work_of(f, o->operation) == work) {
            terms[n++] = o->person_minutes;
        }
    }
    if (n == 0) {
        return (fig){0};
    }
    const fig all = fig_sum(f->tape, "person-minutes of that work", UNIT_MIN, terms, n);
    return ratio(f, what, UNIT_MIN, (figs){{all}}, (figs){{f->q->all_leaves}});
}

static void sum_job(const struct summer *f, fig *terms) {
    struct labor *const labor = f->labor;
    tape_about_again(f->tape, 0);
    labor->person_minutes =
        sum_operations(f, "person-minutes in all", UNIT_MIN, pick_person, terms);
    labor->hours =
        ratio(f, "person-hours", UNIT_HOUR, (figs){{labor->person_minutes}}, (figs){{f->m->sixty}});
    labor->bench_minutes = labor->person_minutes;
    labor->bench_hours = labor->hours;
    if (leaves_bench(f)) {
        for (size_t i = 0; i < labor->operation_count; i++) {
            terms[i] = labor->operations[i].person_minutes;
        }
        labor->bench_minutes =
            fig_sum(f->tape, "person-minutes at the bench", UNIT_MIN, terms, keep_bench(f, terms));
        labor->bench_hours = ratio(f, "person-hours at the bench", UNIT_HOUR,
                                   (figs){{labor->bench_minutes}}, (figs){{f->m->sixty}});
    }
    labor->labor = sum_operations(f, "labor in all", UNIT_MONEY, pick_labor, terms);
    labor->machine = sum_operations(f, "machines in all", UNIT_MONEY, pick_machine, terms);
    labor->minutes_a_door = ratio(f, "person-minutes by door", UNIT_MIN,
                                  (figs){{labor->person_minutes}}, (figs){{f->q->all_leaves}});
    labor->making = minutes_of(f, "making, minutes a door", WORK_MAKING, terms);
    labor->finishing = minutes_of(f, "finishing, minutes a door", WORK_FINISHING, terms);
    labor->around = minutes_of(f, "around it, minutes a door", WORK_AROUND, terms);
    const fig day = measures_given(f->tape, f->m, "hours per day", &f->rates->shop.hours_per_day);
    if (!fig_none(day)) {
        labor->work_days = ratio(f, "working days, one person", UNIT_DAY,
                                 (figs){{labor->bench_hours}}, (figs){{day}});
    }
    for (size_t b = 0; b < f->finish->batch_count; b++) {
        const fig dry = f->finish->batches[b].dry_hours;
        if (fig_none(dry)) {
            continue;
        }
        labor->dry_hours = fig_none(labor->dry_hours)
                               ? dry
                               : fig_larger(f->tape, "drying, slowest", labor->dry_hours, dry);
    }
}

void sums_make(struct labor *labor, const struct sums_inputs *in, fig *terms, fig *more) {
    const struct summer summer = {.labor = labor,
                                  .tape = in->tape,
                                  .m = in->measures,
                                  .rates = in->rates,
                                  .q = in->quantities,
                                  .finish = in->finish};
    sum_rows(&summer, terms);
    sum_machines(&summer, terms, more);
    sum_job(&summer, terms);
}
