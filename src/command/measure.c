/* SPDX-License-Identifier: MIT */
/* `measure`: a blank sheet to measure on. The list of doors need not be there yet, so no job is
 * estimated. */
#include "base/text.h"
#include "command/command.h"
#include "command/files.h"
#include "command/work.h"
#include "read/job/accept.h"
#include "read/job/job_file.h"
#include "report/visit/visit_pdf.h"

#include <string.h>

/* Reads the job or rates that were named. */
static enum status open_file(const struct request *request, struct work *work,
                             struct streams streams) {
    const struct job_instead instead = {.visit = true};
    if (request->job == NULL) {
        return STATUS_DONE;
    }
    if (!job_read_keep(&work->job, &work->rates, request->job, instead, &work->texts,
                       &work->problems) ||
        !accept_apply(&work->job, &work->problems, false)) {
        return command_out_of_memory(streams);
    }
    problems_sort(&work->problems);
    command_problems(request, &work->problems, streams);
    return problems_count(&work->problems, SEVERITY_ERROR) > 0 ? STATUS_INPUTS : STATUS_DONE;
}

/* The unit to measure in: as asked, else as the file says. false: there is no such unit. */
static bool find_unit(const struct request *request, const struct visit *visit,
                      enum length_unit *unit, FILE *err) {
    if (request->unit == NULL) {
        *unit = visit->job != NULL     ? visit->job->unit
                : visit->rates != NULL ? visit->rates->shop.unit
                                       : LENGTH_INCH;
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

static enum status write_sheet(const struct request *request, struct work *work,
                               const struct visit *visit, struct pool *pool,
                               struct streams streams) {
    const char *path =
        request->job == NULL ? "measure.pdf" : files_beside(pool, request->job, "-measure", ".pdf");
    if (request->output != NULL) {
        path = files_target(request, work, pool, ".pdf");
    }
    struct output file = {.path = path, .kind = OUTPUT_PDF};
    const char *lacking = NULL;
    enum status status = files_check(&file, 1, request, work, streams);
    status = status == STATUS_DONE ? files_begin(&file, 1, request, streams) : status;
    if (status != STATUS_DONE) {
        return status;
    }
    if (!visit_pdf_write(visit, file.name, pool, &lacking)) {
        return files_failed(&file, 1, 0, streams);
    }
    files_lacking(&file, work, lacking, streams.err);
    return files_finish(&file, 1, request, streams);
}

enum status command_measure(const struct request *request, struct work *work,
                            struct streams streams) {
    struct visit visit = {0};
    struct pool pool;
    const enum status status = open_file(request, work, streams);
    if (status != STATUS_DONE) {
        return status;
    }
    visit.rates = request->job == NULL ? NULL : &work->rates;
    visit.job = work->job.title.s == NULL ? NULL : &work->job;
    if (!find_unit(request, &visit, &visit.unit, streams.err)) {
        return STATUS_USE;
    }
    visit.letter = visit.rates == NULL ? visit.unit == LENGTH_INCH
                                       : paper_is_letter(visit.rates->shop.paper_size.choice,
                                                         visit.rates->shop.unit);
    pool_init(&pool);
    const enum status done = write_sheet(request, work, &visit, &pool, streams);
    pool_clear(&pool);
    return done;
}
