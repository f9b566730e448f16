/* SPDX-License-Identifier: MIT */
#include "command/visit_file.h"

#include "base/text.h"
#include "command/work.h"
#include "read/job/accept.h"
#include "read/job/job_file.h"

#include <string.h>

enum status visit_file_open(const struct request *request, const char *path, struct work *work,
                            struct streams streams) {
    const struct job_instead instead = {.visit = true};
    if (!job_read_keep(&work->job, &work->rates, path, instead, &work->texts, &work->problems) ||
        !accept_apply(&work->job, &work->problems, false)) {
        return command_out_of_memory(streams);
    }
    problems_sort(&work->problems);
    command_problems(request, &work->problems, streams);
    return problems_count(&work->problems, SEVERITY_ERROR) > 0 ? STATUS_INPUTS : STATUS_DONE;
}

bool visit_file_unit(const struct request *request, const struct job *job,
                     const struct rates *rates, enum length_unit *unit, FILE *err) {
    if (request->unit == NULL) {
        *unit = job != NULL ? job->unit : rates != NULL ? rates->shop.unit : LENGTH_INCH;
        return true;
    }
    const bool metric = strcmp(request->unit, "mm") == 0;
    *unit = metric ? LENGTH_MM : LENGTH_INCH;
    if (!metric && strcmp(request->unit, "in") != 0) {
        text_print(err, "doorcost: --unit takes in or mm\n");
        return false;
    }
    return true;
}
