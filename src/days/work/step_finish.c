/* SPDX-License-Identifier: MIT */
/* A batch of a finish goes through the booth in loads of as many doors as a rack takes. All loads
 * get a coat before any gets the next; a load that is dry waits stacked, off the racks. */
#include "base/int128.h"
#include "days/work/step_job.h"
#include "model/coat_way.h"

#include <assert.h>
#include <string.h>

/* What an operation of a finish does to a batch. */
struct finish_work {
    const struct operation_figures *work;
    const struct operation *op;
    struct step_share share;
    int64_t all;    /* hundredths of a minute for the batch */
    int64_t setups; /* of these */
};

/* A batch on its way. */
struct run {
    struct step_list *list;
    const struct estimate *e;
    const struct batch *batch;
    const struct finish *finish;
    struct finish_work *works; /* in the order of the finish */
    size_t work_count, before; /* before: how many of them come before the first coat */
    const char *name;          /* of the batch where there are several; "" */
    int64_t doors, loads;
    int32_t *at;   /* of each load, its last step */
    int64_t coats; /* all of them, times counted */
    int64_t sprayed, by_hand;
    int64_t sides;
    int64_t away; /* minutes on the clock: the doors are sent to others */
    size_t last;  /* the work behind which they are; SIZE_MAX: nothing is done to them here */
};

/* The part [from, to) of `of` equal ones; parts that follow each other add up to the whole. */
static int64_t part(int64_t all, int64_t from, int64_t to, int64_t of) {
    return (int64_t)((int128)all * to / of - (int128)all * from / of);
}

/* Hours as minutes, rounded up. */
static int64_t minutes_of(const struct value *hours) {
    int64_t under = 1;
    for (uint8_t d = 0; d < hours->decimals; d++) {
        under *= 10;
    }
    return (int64_t)int128_up((int128)hours->amount * 60, under);
}

static int64_t batch_hundredths(const struct step_list *list, const struct estimate *e,
                                const struct operation_figures *work, const struct batch *batch) {
    int64_t sum = 0;
    for (size_t i = 0; i < batch->row_count; i++) {
        const size_t r = e->finish.rows[batch->first_row + i];
        sum += work_hundredths(list, e, work, work->shares[r].person) *
               tape_scaled(&e->tape, e->quantities.pieces[r], 0);
    }
    return sum;
}

int64_t bare_hundredths(const struct step_list *list, const struct estimate *e,
                        const struct operation_figures *work) {
    int64_t sum = 0;
    for (size_t r = 0; r < e->quantities.count; r++) {
        if (e->finish.batch_of[r] == SIZE_MAX) {
            sum += work_hundredths(list, e, work, work->shares[r].person) *
                   tape_scaled(&e->tape, e->quantities.pieces[r], 0);
        }
    }
    return sum;
}

/* Whether a work is done coat by coat. */
static bool by_coats(const struct run *run, const struct finish_work *w) {
    const int driver = w->op->per.choice;
    return (driver == DRIVER_SPRAYED_PER_COAT && run->sprayed > 0) ||
           (driver == DRIVER_SPRAYED && run->by_hand > 0) ||
           (driver == DRIVER_SPRAYED_BETWEEN && run->sprayed > 1) ||
           (w->op->setup.set && w->op->setup_per.choice == SETUP_PER_COAT);
}

static bool is_mixing(const struct finish_work *w) {
    return w->op->setup.set && w->op->setup_per.choice == SETUP_PER_COAT;
}

/* A step of a load at its front, which is then what the load has come to. */
static void load_step(struct run *run, size_t load, struct finish_work *w, struct new_step step,
                      int64_t hundredths) {
    step.operation = w->op;
    step.index = w->work->operation;
    step.doors = (int32_t)run->doors;
    step.minutes = share_take(&w->share, hundredths);
    if (step.minutes > 0 || step.lag > 0) {
        run->at[load] = step_spread(run->list, step);
    }
}

/* Doors of the loads before one. */
static int64_t doors_before(const struct run *run, size_t load) {
    return run->doors * (int64_t)load / run->loads;
}

/* The part of a load. */
static int64_t of_load(const struct run *run, size_t load, int64_t hundredths) {
    return part(hundredths, doors_before(run, load), doors_before(run, load + 1), run->doors);
}

/* Makes the front what all loads have come to. */
static void front_loads(struct run *run) {
    run->list->front_count = 0;
    for (int64_t l = 0; l < run->loads && !run->list->failed; l++) {
        front_add(run->list, run->at[l]);
    }
}

/* The last work that no coat asks for, of those done once for the batch or of the others; SIZE_MAX:
 * there is none. */
static size_t last_work(const struct run *run, bool once) {
    size_t last = SIZE_MAX;
    for (size_t i = 0; i < run->work_count; i++) {
        const struct finish_work *const w = &run->works[i];
        if (!by_coats(run, w) && (w->op->per.choice == DRIVER_JOB) == once) {
            last = i;
        }
    }
    return last;
}

/* Works [from, to) that no coat asks for and that are done once for the batch; all loads wait for
 * them. */
static void batch_works(struct run *run, size_t from, size_t to) {
    bool done = false;
    front_loads(run);
    for (size_t i = from; i < to; i++) {
        struct finish_work *const w = &run->works[i];
        if (!by_coats(run, w) && w->op->per.choice == DRIVER_JOB) {
            (void)step_spread(run->list, (struct new_step){.operation = w->op,
                                                           .index = w->work->operation,
                                                           .what = run->name,
                                                           .doors = (int32_t)run->doors,
                                                           .minutes = share_take(&w->share, w->all),
                                                           .lag = i == run->last ? run->away : 0});
            done = true;
        }
    }
    for (int64_t l = 0; done && l < run->loads; l++) {
        run->at[l] = (int32_t)run->list->count - 1;
    }
}

/* Works [from, to) that no coat asks for, load by load. */
static void load_works(struct run *run, size_t from, size_t to) {
    for (size_t l = 0; l < (size_t)run->loads && run->list->count <= MOST_TASKS; l++) {
        front_set(run->list, run->at[l]);
        for (size_t i = from; i < to; i++) {
            struct finish_work *const w = &run->works[i];
            if (!by_coats(run, w) && w->op->per.choice != DRIVER_JOB) {
                load_step(
                    run, l, w,
                    (struct new_step){.what = run->name, .lag = i == run->last ? run->away : 0},
                    of_load(run, l, w->all));
            }
        }
    }
}

/* A coat, times counted. */
struct coat_at {
    const struct coating *coating;
    const char *what, *coat; /* as of struct day_step */
    int64_t number;          /* of all */
    int64_t of_way;          /* of those that are sprayed, or of those put on by hand */
    bool by_hand;
};

/* Mixes a coat, the first when a load is ready for it, others when all have had the one before; the
 * step after which loads may have it, -1: none. */
static int32_t mix(struct run *run, const struct coat_at *coat) {
    int32_t mixed = -1;
    if (coat->number == 0) {
        front_set(run->list, run->at[0]);
    } else {
        front_loads(run);
    }
    for (size_t i = 0; i < run->list->front_count; i++) {
        run->list->front[i].lag = 0; /* what dries is waited for by the loads */
    }
    if (run->list->failed) {
        return -1;
    }
    for (size_t i = 0; i < run->work_count; i++) {
        struct finish_work *const w = &run->works[i];
        if (is_mixing(w)) {
            const int64_t hundredths = part(w->setups, coat->number, coat->number + 1, run->coats) +
                                       (coat->number == 0 ? w->all - w->setups : 0);
            const int64_t minutes = share_take(&w->share, hundredths);
            mixed = step_add(run->list, (struct new_step){.operation = w->op,
                                                          .index = w->work->operation,
                                                          .what = coat->what,
                                                          .coat = coat->coat,
                                                          .doors = (int32_t)run->doors,
                                                          .minutes = minutes});
            front_set(run->list, mixed);
        }
    }
    return mixed;
}

/* The last work of a driver: behind it a coat dries. */
static size_t last_of(const struct run *run, int driver) {
    size_t last = SIZE_MAX;
    for (size_t i = 0; i < run->work_count; i++) {
        if (run->works[i].op->per.choice == driver && !is_mixing(&run->works[i])) {
            last = i;
        }
    }
    return last;
}

/* Puts a coat on a side of a load. */
static void coat_side(struct run *run, size_t load, const struct coat_at *coat, int64_t side) {
    const int driver = coat->by_hand ? DRIVER_SPRAYED : DRIVER_SPRAYED_PER_COAT;
    const int64_t sides = coat->by_hand ? 1 : run->sides;
    const int64_t coats = coat->by_hand ? run->by_hand : run->sprayed;
    const size_t last = last_of(run, driver);
    const struct value *const dry = &coat->coating->dry;
    const int64_t lag = dry->set ? minutes_of(dry) : 0;
    for (size_t i = 0; i < run->work_count; i++) {
        struct finish_work *const w = &run->works[i];
        if (w->op->per.choice != driver || is_mixing(w)) {
            continue;
        }
        const int64_t of_coat = part(w->all, coat->of_way, coat->of_way + 1, coats);
        const struct new_step step = {
            .what = coat->what,
            .coat = coat->coat,
            .lag = i == last ? lag : 0,
            .places =
                i == last ? (int32_t)(doors_before(run, load + 1) - doors_before(run, load)) : 0};
        load_step(run, load, w, step, of_load(run, load, part(of_coat, side, side + 1, sides)));
    }
}

/* Sands a load before a coat that follows another. */
static void scuff(struct run *run, size_t load, const struct coat_at *coat) {
    for (size_t i = 0; i < run->work_count; i++) {
        struct finish_work *const w = &run->works[i];
        if (w->op->per.choice == DRIVER_SPRAYED_BETWEEN && !coat->by_hand && coat->of_way > 0) {
            load_step(
                run, load, w, (struct new_step){.what = run->name},
                of_load(run, load, part(w->all, coat->of_way - 1, coat->of_way, run->sprayed - 1)));
        }
    }
}

static void coat_loads(struct run *run, const struct coat_at *coat) {
    const int32_t mixed = mix(run, coat);
    const int64_t sides = coat->by_hand ? 1 : run->sides;
    for (size_t l = 0; l < (size_t)run->loads && run->list->count <= MOST_TASKS; l++) {
        front_set(run->list, run->at[l]);
        scuff(run, l, coat);
        if (mixed >= 0 && !run->list->failed) {
            front_add(run->list, mixed);
        }
        for (int64_t side = 0; side < sides; side++) {
            coat_side(run, l, coat, side);
        }
    }
}

static void coat_batch(struct run *run) {
    struct coat_at coat = {0};
    int64_t of_ways[2] = {0};
    for (size_t i = 0; i < run->finish->coat_count; i++) {
        const struct coat *const line = &run->finish->coats[i];
        coat.coating = &run->e->rates->coatings[line->coating];
        coat.by_hand = coat_way(run->e->rates, run->finish, line->coating)->by_hand;
        for (int64_t n = 0; n < line->times.amount; n++, coat.number++) {
            coat.of_way = of_ways[coat.by_hand ? 1 : 0]++;
            const char *const between = run->name[0] == '\0' ? "" : DAY_BEFORE_COAT;
            coat.what = pool_words(run->list->pool, "%s%s%s, coat %d of %d", run->name, between,
                                   coat.coating->name.s, (int)(coat.number + 1), (int)run->coats);
            coat.coat =
                coat.what + (coat.what[0] == '\0' ? 0 : strlen(run->name) + strlen(between));
            coat_loads(run, &coat);
        }
    }
}

/* Counts coats, doors and loads, and how its works come to be done. false: out of memory. */
static bool run_init(struct run *run) {
    const struct estimate *const e = run->e;
    const struct references *const names = &run->finish->operations;
    for (size_t i = 0; i < run->finish->coat_count; i++) {
        const struct coat *const line = &run->finish->coats[i];
        const bool by_hand = coat_way(e->rates, run->finish, line->coating)->by_hand;
        run->coats += line->times.amount;
        *(by_hand ? &run->by_hand : &run->sprayed) += line->times.amount;
    }
    for (size_t i = 0; i < run->batch->row_count; i++) {
        run->doors += tape_scaled(
            &e->tape, e->quantities.pieces[e->finish.rows[run->batch->first_row + i]], 0);
    }
    const struct value *const rack = &e->rates->days.places;
    const int64_t places = rack->set ? rack->amount : run->doors;
    assert(places > 0);
    run->loads = (run->doors + places - 1) / places;
    if (run->loads > MOST_TASKS) {
        run->loads = MOST_TASKS + 1; /* too many steps in any case */
    }
    run->sides = run->finish->faces.choice == FACES_BOTH && !e->rates->days.at_once ? 2 : 1;
    run->works = pool_take(run->list->pool, names->count, sizeof *run->works);
    run->at = pool_take(run->list->pool, (size_t)run->loads, sizeof *run->at);
    for (size_t n = 0; n < names->count && run->works != NULL; n++) {
        for (size_t i = 0; i < e->labor.operation_count; i++) {
            const struct operation_figures *const work = &e->labor.operations[i];
            if (work->operation != names->r[n].index || place_of(e, work) != WORK_FINISH) {
                continue;
            }
            struct finish_work *const w = &run->works[run->work_count++];
            const int64_t machine = tape_scaled(&e->tape, work->machine_minutes, 2);
            *w = (struct finish_work){.work = work,
                                      .op = &e->rates->operations[work->operation],
                                      .all = batch_hundredths(run->list, e, work, run->batch)};
            w->setups =
                machine == 0
                    ? 0
                    : (int64_t)int128_round(
                          (int128)w->all * tape_scaled(&e->tape, work->setup_minutes, 2), machine);
        }
    }
    while (run->before < run->work_count && !by_coats(run, &run->works[run->before])) {
        run->before++;
    }
    return !pool_failed(run->list->pool);
}

/* All of a batch behind `before`; adds to ends where its loads end. */
static void batch_steps(struct run *run, int32_t before) {
    const struct value *const away = &run->e->rates->days.finisher;
    run->away = run->finish->put_out.set && away->set ? away->amount * CLOCK_DAY : 0;
    run->last = last_work(run, false);
    run->last = run->last == SIZE_MAX ? last_work(run, true) : run->last;
    for (int64_t l = 0; l < run->loads; l++) {
        run->at[l] = before;
    }
    batch_works(run, 0, run->before);
    load_works(run, 0, run->before);
    coat_batch(run);
    load_works(run, run->before, run->work_count);
    batch_works(run, run->before, run->work_count);
    if (run->away > 0 && run->last == SIZE_MAX) {
        front_loads(run);
        const int32_t back = step_wait(run->list, run->away);
        for (int64_t l = 0; l < run->loads && !run->list->failed; l++) {
            run->at[l] = back;
        }
    }
}

void finish_steps(struct step_list *list, const struct estimate *e) {
    const int32_t before = step_mark(list);
    const size_t count = e->finish.batch_count;
    struct run *const runs = pool_take(list->pool, count, sizeof *runs);
    bool held = runs != NULL;
    for (size_t b = 0; held && b < count && !list->failed && list->count <= MOST_TASKS; b++) {
        const struct batch *const batch = &e->finish.batches[b];
        struct run *const run = &runs[b];
        *run = (struct run){.list = list, .e = e, .batch = batch};
        run->finish = &e->rates->finishes[batch->finish];
        run->name = count == 1 ? ""
                               : pool_words(list->pool, "%s%s%s", run->finish->name.s,
                                            batch->color == NULL ? "" : ", ",
                                            batch->color == NULL ? "" : batch->color);
        held = run_init(run);
        if (held) {
            batch_steps(run, before);
        }
    }
    front_set(list, before);
    for (size_t b = 0; held && b < count && !list->failed; b++) {
        for (int64_t l = 0; l < runs[b].loads && runs[b].at != NULL; l++) {
            front_add(list, runs[b].at[l]);
        }
    }
    list->failed = list->failed || !held;
    (void)step_mark(list);
}
