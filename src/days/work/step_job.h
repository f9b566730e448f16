/* SPDX-License-Identifier: MIT */
/* The steps of one job: for src/days/work only. */
#ifndef DOORCOST_DAYS_WORK_STEP_JOB_H
#define DOORCOST_DAYS_WORK_STEP_JOB_H

#include "days/work/step_list.h"

/* Where in the flow of a job an operation stands. */
enum place_of_work {
    WORK_UNPLANNED, /* done before */
    WORK_FIRST,
    WORK_STOCK, /* on what was bought, before frames and panels part */
    WORK_FRAMES,
    WORK_PANELS, /* beside the frames */
    WORK_DOORS,  /* from gluing up on */
    WORK_FINISH, /* batch by batch, coat by coat */
    WORK_LAST,
    WORK_PLACE_COUNT
};

/* The place of each operation of the estimate's labor, by `[days]`, by what it is counted by, by
 * who lists it. */
enum place_of_work place_of(const struct estimate *estimate, const struct operation_figures *work);

/* Minutes from beginning to end, in hundredths, of person-minutes: by the people at it, who are as
 * many as its hands, or all of the list's where there are fewer. */
int64_t work_hundredths(const struct step_list *list, const struct estimate *estimate,
                        const struct operation_figures *work, fig person_minutes);

/* Adds all steps of the list's job. */
void job_steps(struct step_list *list, const struct estimate *estimate);

/* Adds those of the finish behind the front, which then is a mark at which all are dry. */
void finish_steps(struct step_list *list, const struct estimate *estimate);

/* Hundredths of a minute that an operation takes of doors without a finish. */
int64_t bare_hundredths(const struct step_list *list, const struct estimate *estimate,
                        const struct operation_figures *work);

#endif
