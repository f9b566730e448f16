/* SPDX-License-Identifier: MIT */
/* `measure`: a blank sheet to measure on. The list of doors need not be there yet, so no job is
 * estimated. */
#include "command/command.h"
#include "command/files.h"
#include "command/visit_file.h"
#include "command/work.h"
#include "report/visit/visit_pdf.h"

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
    const enum status status =
        request->job == NULL ? STATUS_DONE : visit_file_open(request, request->job, work, streams);
    if (status != STATUS_DONE) {
        return status;
    }
    visit.rates = request->job == NULL ? NULL : &work->rates;
    visit.job = work->job.title.s == NULL ? NULL : &work->job;
    if (!visit_file_unit(request, visit.job, visit.rates, &visit.unit, streams.err)) {
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
