/* SPDX-License-Identifier: MIT */
/* Steps as they are listed, each waiting for what stands at the front: for src/days/work only. */
#ifndef DOORCOST_DAYS_WORK_STEP_LIST_H
#define DOORCOST_DAYS_WORK_STEP_LIST_H

#include "days/work/day_plan.h"

/* The steps of all jobs. Arrays are the list's own. */
struct step_list {
    struct day_step *steps;
    struct order_task *tasks; /* one a step */
    struct order_demand *demands;
    struct order_link *links;
    struct order_link *front; /* what the next step waits for */
    size_t count, demand_count, link_count, front_count;
    size_t step_room, task_room, demand_room, link_room, front_room;
    size_t job;              /* of steps added from now on */
    int64_t ready;           /* minute on the clock, likewise */
    struct pool *pool;       /* of the texts of steps */
    const int32_t *capacity; /* of each resource */
    bool failed;             /* memory ran out */
    bool few_hands;
};

/* The part of an operation that is given out in whole minutes, so that all parts of it add up to
 * the whole, rounded up once. */
struct step_share {
    int64_t given;   /* hundredths of a minute */
    int64_t minutes; /* whole ones given out */
};

/* The next whole minutes of so many hundredths more. */
int64_t share_take(struct step_share *share, int64_t hundredths);

/* What a step is. */
struct new_step {
    const struct operation *operation;
    int32_t index;           /* of it */
    const char *what, *coat; /* as of struct day_step */
    int32_t doors;           /* that the whole of this work is done to */
    int64_t minutes;
    int64_t lag;    /* minutes on the clock for which clamps or racks stay taken, and what follows
                       waits */
    int32_t clamps; /* sets taken, of an operation at clamps */
    int32_t places; /* of the racks */
};

/* How many people are at an operation. */
int32_t hands_at(const struct step_list *list, const struct operation *operation);

/* Adds a step that waits for the front, with its lag; its number. The front stays as it is. */
int32_t step_add(struct step_list *list, struct new_step step);

/* Adds it so that work of single hands without a machine is shared among all people, where it is
 * more than a minute and holds neither clamps nor racks; the front is then its end. The number of
 * the step, or of the mark, at the front. */
int32_t step_spread(struct step_list *list, struct new_step step);

/* Adds a mark that waits for the front, which then is this mark alone; its number. */
int32_t step_mark(struct step_list *list);
/* The same, and what follows it waits so many minutes on the clock longer. */
int32_t step_wait(struct step_list *list, int64_t lag);

/* Makes the front one step. */
void front_set(struct step_list *list, int32_t step);
/* Adds a step to it. */
void front_add(struct step_list *list, int32_t step);

/* Frees the arrays. */
void step_list_clear(struct step_list *list);

#endif
