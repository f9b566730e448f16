/* SPDX-License-Identifier: MIT */
#include "labor/sums.h"

#include "model/name.h"
#include "model/work_sort.h"

/* Which operations a sum takes: all, or those that the doors pay. */
enum summed { SUM_ALL, SUM_DOORS };

static fig sum_operations(const struct calc *c, const struct labor *labor, const char *what,
                          enum unit unit, enum summed summed,
                          fig (*pick)(const struct operation_figures *), fig *terms) {
    for (size_t i = 0; i < labor->operation_count; i++) {
        const struct operation_figures *const o = &labor->operations[i];
        terms[i] = summed == SUM_ALL || o->charge < 0 ? pick(o) : (fig){0};
    }
    return fig_sum(c->tape, what, unit, terms, labor->operation_count);
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

static void sum_machines(const struct calc *c, struct labor *labor, fig *minutes, fig *costs) {
    for (int32_t m = -1; m < (int32_t)c->rates->machine_count; m++) {
        size_t n = 0;
        for (size_t i = 0; i < labor->operation_count; i++) {
            const struct operation_figures *const o = &labor->operations[i];
            if (c->rates->operations[o->operation].machine == m) {
                minutes[n] = o->machine_minutes;
                costs[n++] = o->machine;
            }
        }
        if (n > 0) {
            tape_about(c->tape, m < 0 ? "by hand" : c->rates->machines[m].name.s);
            const fig all = fig_sum(c->tape, "minutes at the machine", UNIT_MIN, minutes, n);
            labor->machines[labor->machine_count++] = (struct machine_figures){
                .machine = m,
                .minutes = all,
                .hours = fig_ratio(c->tape, "hours at the machine", UNIT_HOUR, (figs){{all}},
                                   (figs){{c->units->sixty}}),
                .cost = fig_sum(c->tape, "machine cost", UNIT_MONEY, costs, n),
            };
        }
    }
}

static bool off_bench(const struct calc *c, const struct labor *labor, size_t i) {
    return c->rates->operations[labor->operations[i].operation].off_bench;
}

/* Whether any work of the job is not done at the bench. */
static bool leaves_bench(const struct calc *c, const struct labor *labor) {
    for (size_t i = 0; i < labor->operation_count; i++) {
        if (off_bench(c, labor, i)) {
            return true;
        }
    }
    return false;
}

/* Of terms, one an operation, those at the bench are moved to the front; how many they are. */
static size_t keep_bench(const struct calc *c, const struct labor *labor, fig *terms) {
    size_t kept = 0;
    for (size_t i = 0; i < labor->operation_count; i++) {
        if (!off_bench(c, labor, i)) {
            terms[kept++] = terms[i];
        }
    }
    return kept;
}

static void sum_rows(const struct calc *c, struct labor *labor, fig *terms) {
    const bool leaves = leaves_bench(c, labor);
    for (size_t r = 0; r < c->quantities->count; r++) {
        tape_about_again(c->tape, c->quantities->leaves[r].subject);
        for (size_t i = 0; i < labor->operation_count; i++) {
            terms[i] =
                labor->operations[i].charge < 0 ? labor->operations[i].shares[r].person : (fig){0};
        }
        labor->leaf_minutes[r] =
            fig_sum(c->tape, "person-minutes, a door", UNIT_MIN, terms, labor->operation_count);
        labor->leaf_bench_minutes[r] = labor->leaf_minutes[r];
        if (leaves) {
            labor->leaf_bench_minutes[r] = fig_sum(c->tape, "person-minutes at the bench, a door",
                                                   UNIT_MIN, terms, keep_bench(c, labor, terms));
        }
        for (size_t i = 0; i < labor->operation_count; i++) {
            terms[i] =
                labor->operations[i].charge < 0 ? labor->operations[i].shares[r].cost : (fig){0};
        }
        labor->leaf_cost[r] = fig_sum(c->tape, "labor and machine, a door", UNIT_MONEY, terms,
                                      labor->operation_count);
    }
}

/* Person-minutes of one sort of work by doors and fronts: what shops tell each other. */
static fig minutes_of(const struct calc *c, const struct labor *labor, const char *what,
                      enum work_sort sort, fig *terms) {
    size_t n = 0;
    for (size_t i = 0; i < labor->operation_count; i++) {
        const struct operation_figures *const o = &labor->operations[i];
        if (work_sort_of(c->rates, o->operation) == sort) {
            terms[n++] = o->person_minutes;
        }
    }
    if (n == 0) {
        return (fig){0};
    }
    const fig all = fig_sum(c->tape, "person-minutes of that work", UNIT_MIN, terms, n);
    return fig_ratio(c->tape, what, UNIT_MIN, (figs){{all}}, (figs){{c->quantities->all_leaves}});
}

/* Minutes without those that charges pay. */
static void sum_door_minutes(const struct calc *c, struct labor *labor, fig *terms) {
    bool charged = false;
    for (size_t i = 0; i < labor->operation_count; i++) {
        charged = charged || labor->operations[i].charge >= 0;
    }
    labor->door_minutes = labor->person_minutes;
    labor->door_bench_minutes = labor->bench_minutes;
    if (charged) {
        labor->door_minutes = sum_operations(c, labor, "person-minutes that the doors pay",
                                             UNIT_MIN, SUM_DOORS, pick_person, terms);
        labor->door_bench_minutes =
            fig_sum(c->tape, "of these at the bench", UNIT_MIN, terms, keep_bench(c, labor, terms));
    }
}

static void sum_job(const struct calc *c, struct labor *labor, fig *terms) {
    tape_about_job(c->tape);
    labor->person_minutes =
        sum_operations(c, labor, "person-minutes in all", UNIT_MIN, SUM_ALL, pick_person, terms);
    labor->hours = fig_ratio(c->tape, "person-hours", UNIT_HOUR, (figs){{labor->person_minutes}},
                             (figs){{c->units->sixty}});
    labor->bench_minutes = labor->person_minutes;
    labor->bench_hours = labor->hours;
    if (leaves_bench(c, labor)) {
        for (size_t i = 0; i < labor->operation_count; i++) {
            terms[i] = labor->operations[i].person_minutes;
        }
        labor->bench_minutes = fig_sum(c->tape, "person-minutes at the bench", UNIT_MIN, terms,
                                       keep_bench(c, labor, terms));
        labor->bench_hours = fig_ratio(c->tape, "person-hours at the bench", UNIT_HOUR,
                                       (figs){{labor->bench_minutes}}, (figs){{c->units->sixty}});
    }
    labor->labor =
        sum_operations(c, labor, "labor in all", UNIT_MONEY, SUM_DOORS, pick_labor, terms);
    labor->machine =
        sum_operations(c, labor, "machines in all", UNIT_MONEY, SUM_DOORS, pick_machine, terms);
    sum_door_minutes(c, labor, terms);
    labor->minutes_a_door =
        fig_ratio(c->tape, "person-minutes by door", UNIT_MIN, (figs){{labor->person_minutes}},
                  (figs){{c->quantities->all_leaves}});
    labor->making = minutes_of(c, labor, "making, minutes a door", WORK_MAKING, terms);
    labor->finishing = minutes_of(c, labor, "finishing, minutes a door", WORK_FINISHING, terms);
    labor->general_minutes = minutes_of(c, labor, "around it, minutes a door", WORK_AROUND, terms);
    const fig day = calc_given(c, "hours per day", &c->rates->shop.hours_per_day);
    if (!fig_none(day)) {
        labor->work_days = fig_ratio(c->tape, "working days, one person", UNIT_DAY,
                                     (figs){{labor->bench_hours}}, (figs){{day}});
    }
}

static void sum_drying(const struct calc *c, struct labor *labor,
                       const struct finish_list *finish) {
    for (size_t b = 0; b < finish->batch_count; b++) {
        const fig dry = finish->batches[b].dry_hours;
        if (fig_none(dry)) {
            continue;
        }
        labor->dry_hours = fig_none(labor->dry_hours)
                               ? dry
                               : fig_larger(c->tape, "drying, slowest", labor->dry_hours, dry);
    }
}

void sums_make(struct labor *labor, const struct calc *c, const struct finish_list *finish,
               fig *terms) {
    sum_rows(c, labor, terms);
    sum_machines(c, labor, terms, terms + labor->operation_count);
    sum_job(c, labor, terms);
    sum_drying(c, labor, finish);
}
