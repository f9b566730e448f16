/* SPDX-License-Identifier: MIT */
#include "days/work/step_list.h"

#include "model/hazard.h"

#include <stdlib.h>

int64_t share_take(struct step_share *share, int64_t hundredths) {
    share->given += hundredths;
    const int64_t whole = (share->given + 99) / 100;
    const int64_t minutes = whole - share->minutes;
    share->minutes = whole;
    return minutes;
}

static void ask(struct step_list *list, struct order_task *task, struct order_demand demand) {
    list->demands = array_grow(list->demands, &list->demand_room, list->demand_count + 1,
                               sizeof *list->demands, &list->failed);
    if (!list->failed) {
        list->demands[list->demand_count++] = demand;
        task->demand_count++;
    }
}

/* Room for one more step that waits for the front. */
static bool make_room(struct step_list *list) {
    list->steps = array_grow(list->steps, &list->step_room, list->count + 1, sizeof *list->steps,
                             &list->failed);
    list->tasks = array_grow(list->tasks, &list->task_room, list->count + 1, sizeof *list->tasks,
                             &list->failed);
    list->links = array_grow(list->links, &list->link_room, list->link_count + list->front_count,
                             sizeof *list->links, &list->failed);
    return !list->failed;
}

static struct order_task *add_task(struct step_list *list, struct day_step step, int64_t lag) {
    struct order_task *const task = &list->tasks[list->count];
    step.job = list->job;
    list->steps[list->count++] = step;
    *task = (struct order_task){.minutes = step.minutes,
                                .hold = lag,
                                .ready = list->ready,
                                .first_demand = list->demand_count,
                                .first_link = list->link_count,
                                .link_count = list->front_count};
    for (size_t i = 0; i < list->front_count; i++) {
        list->links[list->link_count++] = list->front[i];
    }
    return task;
}

int32_t hands_at(const struct step_list *list, const struct operation *op) {
    const int64_t people = list->capacity[RESOURCE_PEOPLE];
    const int64_t hands = op->hands.set ? op->hands.amount : 1;
    return (int32_t)(hands > people ? people : hands);
}

int32_t step_add(struct step_list *list, struct new_step step) {
    const struct operation *const op = step.operation;
    const int32_t hands = hands_at(list, op);
    if (!make_room(list)) {
        return 0;
    }
    list->few_hands = list->few_hands || (op->hands.set && op->hands.amount > hands);
    struct order_task *const task = add_task(list,
                                             (struct day_step){.operation = step.index,
                                                               .what = step.what,
                                                               .coat = step.coat,
                                                               .minutes = step.minutes,
                                                               .doors = step.doors,
                                                               .hands = hands,
                                                               .machine = op->machine,
                                                               .clamps = step.clamps,
                                                               .places = step.places},
                                             step.lag);
    ask(list, task, (struct order_demand){RESOURCE_PEOPLE, hands, false});
    if (op->machine >= 0) {
        const bool kept = step.clamps > 0;
        ask(list, task,
            (struct order_demand){RESOURCE_MACHINES + op->machine, kept ? step.clamps : 1, kept});
    }
    if (step.places > 0) {
        ask(list, task, (struct order_demand){RESOURCE_RACKS, step.places, true});
    }
    return (int32_t)list->count - 1;
}

int32_t step_wait(struct step_list *list, int64_t lag) {
    if (!make_room(list)) {
        return 0;
    }
    (void)add_task(list, (struct day_step){.operation = -1, .what = "", .machine = -1}, lag);
    front_set(list, (int32_t)list->count - 1);
    return (int32_t)list->count - 1;
}

int32_t step_mark(struct step_list *list) {
    return step_wait(list, 0);
}

int32_t step_spread(struct step_list *list, struct new_step step) {
    const struct operation *const op = step.operation;
    const int64_t people = list->capacity[RESOURCE_PEOPLE];
    const bool single = op->machine >= 0 || op->per.choice == DRIVER_JOB || step.lag > 0 ||
                        (op->hands.set && op->hands.amount > 1);
    const int64_t all = step.minutes;
    const int64_t parts = single ? 1 : people < all ? people : all;
    const int32_t first = (int32_t)list->count;
    if (parts <= 1) {
        front_set(list, step_add(list, step));
        return first;
    }
    for (int64_t i = 0; i < parts; i++) {
        step.minutes = all * (i + 1) / parts - all * i / parts;
        (void)step_add(list, step);
    }
    list->front_count = 0;
    for (int32_t i = first; i < (int32_t)list->count && !list->failed; i++) {
        front_add(list, i);
    }
    return step_mark(list);
}

void front_set(struct step_list *list, int32_t step) {
    list->front_count = 0;
    front_add(list, step);
}

void front_add(struct step_list *list, int32_t step) {
    list->front = array_grow(list->front, &list->front_room, list->front_count + 1,
                             sizeof *list->front, &list->failed);
    if (!list->failed) {
        list->front[list->front_count++] =
            (struct order_link){.before = step, .lag = list->tasks[step].hold};
    }
}

void step_list_clear(struct step_list *list) {
    free(list->steps);
    free(list->tasks);
    free(list->demands);
    free(list->links);
    free(list->front);
}
