/* SPDX-License-Identifier: MIT */
#include "trial/trial.h"

#include "read/job/job_file.h"
#include "read/rates/rates_file.h"

enum trial_result trial_try(const struct trial_job *job, const struct rate_changes *changes,
                            struct outcome *outcome, struct problems *problems) {
    enum trial_result result = TRIAL_WRONG;
    struct rates rates;
    struct job changed;
    *outcome = (struct outcome){0};
    if (!job_read_changed(&changed, &rates, job->path, changes, problems)) {
        result = TRIAL_MEMORY;
    } else if (problems_count(problems, SEVERITY_ERROR) == 0) {
        const enum estimate_result estimated =
            outcome_try(outcome, &rates, &changed, job->option, job->plans);
        result = estimated == ESTIMATE_OK
                     ? TRIAL_DONE
                     : (estimated == ESTIMATE_MEMORY ? TRIAL_MEMORY : TRIAL_WRONG);
    }
    job_clear(&changed);
    rates_clear(&rates);
    return result;
}
