/* SPDX-License-Identifier: MIT */
/* Hours by heading. An operation is held by its own heading; else by that of its sort; else by
 * `all`: hours that are noted by themselves are not in those of a wider heading. */
#include "learn/learned_parts.h"

static struct learned_work *find(const struct learned *learned, enum actual_about about,
                                 int32_t index) {
    for (size_t i = 0; i < learned->work_count; i++) {
        struct learned_work *const work = &learned->work[i];
        if (work->about == about && (about == ACTUAL_ALL || work->index == index)) {
            return work;
        }
    }
    return NULL;
}

static const char *name_of(const struct learner *l, const struct actual *row) {
    return row->about == ACTUAL_OPERATION ? l->e->rates->operations[row->index].name.s
           : row->about == ACTUAL_SORT    ? work_sort_name((enum work_sort)row->index)
                                          : "all";
}

static void add_row(const struct learner *l, const struct actual *row) {
    struct learned *const learned = l->learned;
    struct learned_work *work = find(learned, row->about, row->index);
    if (work == NULL) {
        work = &learned->work[learned->work_count++];
        *work = (struct learned_work){.name = name_of(l, row),
                                      .about = row->about,
                                      .index = row->index,
                                      .place = row->what.place};
    }
    const int64_t one =
        row->hours.set ? 60 * learned_value(&row->hours, 6) : learned_value(&row->minutes, 6);
    work->noted += learned_share(one, row->people.amount, 10000); /* 6 decimals to 2 */
}

/* The heading that holds an operation; NULL: none. */
static struct learned_work *heading_of(const struct learned *learned, const struct rates *rates,
                                       int32_t operation) {
    struct learned_work *work = find(learned, ACTUAL_OPERATION, operation);
    if (work == NULL) {
        work = find(learned, ACTUAL_SORT, (int32_t)work_sort_of(rates, operation));
    }
    return work != NULL ? work : find(learned, ACTUAL_ALL, 0);
}

const struct learned_work *learned_heading(const struct learned *learned, const struct rates *rates,
                                           int32_t operation) {
    return heading_of(learned, rates, operation);
}

/* Wider headings that do not hold what is noted by itself. */
static void mark_rest(const struct learner *l, int32_t operation, const struct learned_work *held) {
    struct learned_work *const wider[] = {
        find(l->learned, ACTUAL_SORT, (int32_t)work_sort_of(l->e->rates, operation)),
        find(l->learned, ACTUAL_ALL, 0)};
    for (size_t i = 0; i < 2; i++) {
        if (wider[i] != NULL && wider[i] != held) {
            wider[i]->rest = true;
        }
    }
}

static void hold(const struct learner *l, const struct operation_figures *o) {
    const struct tape *const tape = &l->e->tape;
    const int64_t minutes = tape_scaled(tape, o->person_minutes, 2);
    struct learned_work *const held = heading_of(l->learned, l->e->rates, o->operation);
    mark_rest(l, o->operation, held);
    if (held == NULL) {
        l->learned->unnoted += minutes;
        return;
    }
    held->estimated += minutes;
    held->wages += estimate_money(l->e, o->labor);
}

static void compare(const struct learner *l, struct learned_work *work) {
    const int64_t more = work->noted - work->estimated;
    if (work->estimated > 0) {
        work->more = learned_share(more, work->wages, work->estimated);
        learned_ask_far(l, work->place, work->name, learned_share(work->noted, 1, 60),
                        learned_share(work->estimated, 1, 60), 2, "hours");
    } else { /* at the shop's wage */
        const struct value *const wage = &l->e->rates->shop.labor_rate;
        work->more =
            learned_share(more, learned_value(wage, l->learned->money_decimals), INT64_C(6000));
        problem_add(
            l->problems, SEVERITY_WARNING, "not-estimated", work->place,
            "hours of '%s' are noted, but the estimate has none of them; is it another job?",
            problem_quote(l->problems, work->name));
    }
    l->learned->more_work += work->more;
}

bool learned_work_make(const struct learner *l) {
    struct learned *const learned = l->learned;
    learned->work = pool_take(l->pool, l->actuals->count, sizeof *learned->work);
    if (learned->work == NULL) {
        return false;
    }
    for (size_t i = 0; i < l->actuals->count; i++) {
        const struct actual *const row = &l->actuals->rows[i];
        if (row->about == ACTUAL_OPERATION || row->about == ACTUAL_SORT ||
            row->about == ACTUAL_ALL) {
            add_row(l, row);
        }
    }
    for (size_t i = 0; i < l->e->labor.operation_count; i++) {
        hold(l, &l->e->labor.operations[i]);
    }
    for (size_t i = 0; i < learned->work_count; i++) {
        compare(l, &learned->work[i]);
    }
    return true;
}
