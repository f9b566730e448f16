/* SPDX-License-Identifier: MIT */
/* A job flows from stock through frames and panels, side by side, to doors, their finish and what
 * is done behind it. Within each of these one operation follows the other, as the rates list them.
 */
#include "base/int128.h"
#include "days/work/step_job.h"
#include "model/name.h"

#include <assert.h>

/* Doors in clamps are steps of their own as long as they are not more than this; else some go into
 * clamps together. */
#define MOST_CLAMPED 60

/* --- where an operation stands --- */

static bool of_finish(const struct estimate *e, int32_t operation) {
    for (size_t b = 0; b < e->finish.batch_count; b++) {
        if (references_hold(&e->rates->finishes[e->finish.batches[b].finish].operations,
                            operation)) {
            return true;
        }
    }
    return false;
}

/* By what it is counted by. */
static enum place_of_work place_by_driver(enum driver driver) {
    switch (driver) {
    case DRIVER_LUMBER:
    case DRIVER_BOARD:
    case DRIVER_CUT:
        return WORK_STOCK;
    case DRIVER_STILE:
    case DRIVER_RAIL:
    case DRIVER_JOINT:
    case DRIVER_ARCH:
    case DRIVER_FRAME_RUN:
        return WORK_FRAMES;
    case DRIVER_PANEL:
    case DRIVER_SHEET:
    case DRIVER_SOLID_PANEL:
    case DRIVER_GLUE_LINE:
    case DRIVER_SOLID_AREA:
    case DRIVER_RAISED_RUN:
    case DRIVER_BANDED_RUN:
    case DRIVER_PANE:
    case DRIVER_BAR:
    case DRIVER_BAR_RUN:
        return WORK_PANELS;
    case DRIVER_JOB:
    case DRIVER_DOOR:
    case DRIVER_PART:
    case DRIVER_HINGE:
    case DRIVER_PULL:
    case DRIVER_HARDWARE:
    case DRIVER_EDGE_RUN:
    case DRIVER_DOOR_RUN:
    case DRIVER_AREA:
    case DRIVER_SPRAYED:
    case DRIVER_SPRAYED_PER_COAT:
    case DRIVER_SPRAYED_BETWEEN:
    case DRIVER_COUNT:
        break;
    }
    return WORK_DOORS;
}

static bool at_clamps(const struct rates *rates, const struct operation *op) {
    return op->machine >= 0 && rates->machines[op->machine].kind.choice == MACHINE_CLAMPS;
}

enum place_of_work place_of(const struct estimate *e, const struct operation_figures *work) {
    assert(e->rates != NULL);
    const struct day_rules *const days = &e->rates->days;
    const struct operation *const op = &e->rates->operations[work->operation];
    if (references_hold(&days->unplanned, work->operation)) {
        return WORK_UNPLANNED;
    }
    if (references_hold(&days->first, work->operation)) {
        return WORK_FIRST;
    }
    if (references_hold(&days->last, work->operation)) {
        return WORK_LAST;
    }
    if (of_finish(e, work->operation)) {
        return WORK_FINISH;
    }
    if (op->does.set && op->does.choice != TASK_BORING) {
        return WORK_LAST;
    }
    if (op->off_bench) {
        return WORK_FIRST;
    }
    /* joints are cut at machines and closed in clamps */
    return at_clamps(e->rates, op) && op->per.choice == DRIVER_JOINT
               ? WORK_DOORS
               : place_by_driver((enum driver)op->per.choice);
}

int64_t work_hundredths(const struct step_list *list, const struct estimate *e,
                        const struct operation_figures *work, fig person_minutes) {
    return (int64_t)int128_round(tape_scaled(&e->tape, person_minutes, 2),
                                 hands_at(list, &e->rates->operations[work->operation]));
}

/* --- clamps --- */

/* What goes into clamps: solid panels or doors. */
static int64_t pieces_of(const struct estimate *e, const struct operation_figures *work) {
    const struct operation *const op = &e->rates->operations[work->operation];
    const bool panels = op->per.choice == DRIVER_GLUE_LINE ||
                        op->per.choice == DRIVER_SOLID_PANEL || op->per.choice == DRIVER_SOLID_AREA;
    int64_t pieces = 0;
    for (size_t r = 0; r < e->quantities.count; r++) {
        const struct leaf_figures *const leaf = &e->quantities.leaves[r];
        if (!fig_none(work->shares[r].person)) {
            const int64_t of_leaf =
                panels ? tape_scaled(&e->tape, leaf->driver[DRIVER_SOLID_PANEL], 0) : 1;
            pieces += of_leaf * tape_scaled(&e->tape, leaf->pieces, 0);
        }
    }
    return pieces > 0 ? pieces : 1;
}

/* Piece by piece, or some at once; the front is a mark then, at which all are out of the clamps. */
static void clamp_steps(struct step_list *list, const struct estimate *e,
                        const struct operation_figures *work, struct new_step step) {
    const int64_t sets = list->capacity[RESOURCE_MACHINES + step.operation->machine];
    const int64_t pieces = pieces_of(e, work);
    const int64_t all = work_hundredths(list, e, work, work->person_minutes);
    const int64_t least = (pieces + sets - 1) / sets;
    int64_t count = pieces > MOST_CLAMPED ? MOST_CLAMPED : pieces;
    count = count < least ? least : count;
    struct step_share share = {0};
    const int32_t before = step_mark(list);
    const int32_t first = (int32_t)list->count;
    step.lag = e->rates->days.clamped.amount;
    for (int64_t i = 0; i < count && !list->failed && list->count <= MOST_TASKS; i++) {
        step.clamps = (int32_t)(pieces * (i + 1) / count - pieces * i / count);
        step.minutes = share_take(&share, all * (i + 1) / count - all * i / count);
        front_set(list, before);
        (void)step_add(list, step);
    }
    list->front_count = 0;
    for (int32_t i = first; i < (int32_t)list->count && !list->failed; i++) {
        front_add(list, i);
    }
    (void)step_mark(list);
}

/* --- chains --- */

/* How many doors an operation is done to. bare: of those without a finish. */
static int32_t doors_of(const struct estimate *e, const struct operation_figures *work, bool bare) {
    int64_t doors = 0;
    for (size_t r = 0; r < e->quantities.count; r++) {
        if (!fig_none(work->shares[r].person) && (!bare || e->finish.batch_of[r] == SIZE_MAX)) {
            doors += tape_scaled(&e->tape, e->quantities.pieces[r], 0);
        }
    }
    return (int32_t)doors;
}

/* bare: of doors without a finish alone. */
static void operation_steps(struct step_list *list, const struct estimate *e,
                            const struct operation_figures *work, int64_t hundredths, bool bare) {
    struct step_share share = {0};
    struct new_step step = {.operation = &e->rates->operations[work->operation],
                            .index = work->operation,
                            .what = "",
                            .doors = doors_of(e, work, bare),
                            .minutes = share_take(&share, hundredths)};
    if (step.minutes == 0) {
        return;
    }
    if (at_clamps(e->rates, step.operation)) {
        clamp_steps(list, e, work, step);
    } else {
        (void)step_spread(list, step);
    }
}

/* One behind the other: those of a place, named ones in the order of the names, then others as the
 * rates list them. */
static void chain(struct step_list *list, const struct estimate *e, enum place_of_work place,
                  const struct references *names) {
    const struct labor *const labor = &e->labor;
    for (size_t n = 0; names != NULL && n < names->count; n++) {
        for (size_t i = 0; i < labor->operation_count; i++) {
            const struct operation_figures *const work = &labor->operations[i];
            if (work->operation == names->r[n].index && place_of(e, work) == place) {
                operation_steps(list, e, work, work_hundredths(list, e, work, work->person_minutes),
                                false);
            }
        }
    }
    for (size_t i = 0; i < labor->operation_count; i++) {
        const struct operation_figures *const work = &labor->operations[i];
        if (place_of(e, work) == place &&
            (names == NULL || !references_hold(names, work->operation))) {
            operation_steps(list, e, work, work_hundredths(list, e, work, work->person_minutes),
                            false);
        }
    }
}

/* What operations of finishes do to doors without one, before the others are finished. */
static void bare_steps(struct step_list *list, const struct estimate *e) {
    for (size_t i = 0; i < e->labor.operation_count; i++) {
        const struct operation_figures *const work = &e->labor.operations[i];
        if (place_of(e, work) == WORK_FINISH) {
            operation_steps(list, e, work, bare_hundredths(list, e, work), true);
        }
    }
}

void job_steps(struct step_list *list, const struct estimate *e) {
    const struct day_rules *const days = &e->rates->days;
    list->front_count = 0;
    chain(list, e, WORK_FIRST, &days->first);
    chain(list, e, WORK_STOCK, NULL);
    const int32_t parted = step_mark(list);
    chain(list, e, WORK_FRAMES, NULL);
    const int32_t framed = step_mark(list);
    front_set(list, parted);
    chain(list, e, WORK_PANELS, NULL);
    front_add(list, framed);
    (void)step_mark(list);
    chain(list, e, WORK_DOORS, NULL);
    bare_steps(list, e);
    (void)step_mark(list);
    finish_steps(list, e);
    chain(list, e, WORK_LAST, &days->last);
}
