/* SPDX-License-Identifier: MIT */
/* `days`: the work of one job or several, put in order by day. */
#include "base/text.h"
#include "command/command.h"
#include "command/files.h"
#include "command/further.h"
#include "command/progress.h"
#include "command/rates_alike.h"
#include "command/work.h"
#include "days/work/day_plan.h"
#include "report/calendar/day_calendar.h"
#include "report/chart/day_chart.h"
#include "report/json/json.h"
#include "report/shop/day_book.h"
#include "report/text/print.h"

#include <errno.h>

struct days_run {
    const struct request *request;
    struct streams streams;
    struct pool pool;
    struct work *first;
    struct further_jobs further;
    struct day_plan plan;
    struct day_rows rows;
    struct output file; /* that -o names */
    size_t files;       /* 1, or 0 without -o */
};

/* The day that --begin names. */
static enum status read_from(const struct days_run *run, int32_t *from) {
    struct date date;
    *from = INT32_MIN;
    if (run->request->begin == NULL) {
        return STATUS_DONE;
    }
    if (!date_read(run->request->begin, &date)) {
        text_print(run->streams.err,
                   "doorcost: --begin '%s' is no day of the calendar; write year, month and day as "
                   "in 2026-03-02\n",
                   problem_quote(&run->first->problems, run->request->begin));
        return STATUS_USE;
    }
    *from = date_number(date);
    return STATUS_DONE;
}

/* They share the shop. */
static enum status shares_shop(const struct request *request, const struct work *first,
                               const struct work *work, const char *path, struct streams streams) {
    return rates_alike(request, first, work, path, RATES_SHOP, streams);
}

static enum status make(struct days_run *run) {
    const size_t count = run->further.count + 1;
    struct day_job *const jobs = pool_take(&run->pool, count, sizeof *jobs);
    struct day_request request = {.jobs = jobs, .count = count};
    enum status status = read_from(run, &request.from);
    if (status != STATUS_DONE) {
        return status;
    }
    for (size_t i = 0; i < count && jobs != NULL; i++) {
        jobs[i].estimate =
            i == 0 ? &run->first->estimates[0] : &run->further.works[i - 1].estimates[0];
    }
    struct progress progress;
    progress_begin(&progress, run->streams.err, "putting the work in order");
    const enum day_result result =
        jobs == NULL ? DAY_MEMORY : day_plan_make(&run->plan, request, &run->pool);
    progress_end(&progress);
    switch (result) {
    case DAY_OK:
        return day_rows_make(&run->rows, &run->plan, &run->pool)
                   ? STATUS_DONE
                   : command_out_of_memory(run->streams);
    case DAY_MEMORY:
        return command_out_of_memory(run->streams);
    case DAY_TOO_MANY:
        text_print(run->streams.err,
                   "doorcost: the work has more than %d steps; plan fewer jobs at once, or give "
                   "[days] more `rack places` or `clamp sets`\n",
                   MOST_TASKS);
        break;
    case DAY_TOO_LONG:
        text_print(run->streams.err,
                   "doorcost: the work takes more than %d working days; look for a job that is "
                   "years away, or for minutes that are too many\n",
                   MOST_WORK_DAYS);
        break;
    }
    return STATUS_INPUTS;
}

static enum status tell(const struct days_run *run) {
    if (run->request->json) {
        struct json_paper paper = command_paper(run->request, run->first);
        paper.days = &run->plan;
        paper.day_rows = &run->rows;
        return command_send(&paper, run->streams);
    }
    struct page page = {.out = run->streams.out};
    days_print(&page, &run->plan, &run->rows);
    return page.failed ? command_out_of_memory(run->streams) : command_flush(run->streams);
}

/* Fills the file that was begun. */
static bool fill(struct days_run *run) {
    const char *lacking = NULL;
    if (run->file.kind == OUTPUT_CALENDAR) {
        return day_calendar_write(&run->plan, &run->rows, run->file.name, &run->pool);
    }
    if (run->file.kind == OUTPUT_WORKBOOK) {
        return day_book_write(&run->plan, &run->rows, run->file.name);
    }
    if (!day_chart_write(&run->plan, &run->rows, run->file.name, &run->pool, &lacking)) {
        return false;
    }
    files_lacking(&run->file, run->first, lacking, run->streams.err);
    return true;
}

static enum status write_file(struct days_run *run) {
    const enum status status = files_begin(&run->file, 1, run->request, run->streams);
    if (status != STATUS_DONE) {
        return status;
    }
    errno = 0;
    return fill(run) ? files_finish(&run->file, 1, run->request, run->streams)
                     : files_failed(&run->file, 1, 0, run->streams);
}

enum status command_days(const struct request *request, struct work *work, struct streams streams) {
    struct days_run run = {.request = request,
                           .streams = streams,
                           .first = work,
                           .files = request->output == NULL ? 0 : 1};
    pool_init(&run.pool);
    run.file = files_output(files_target(request, work, &run.pool, ".pdf"),
                            OUTPUT_BIT(OUTPUT_PDF) | OUTPUT_BIT(OUTPUT_CALENDAR) |
                                OUTPUT_BIT(OUTPUT_WORKBOOK),
                            OUTPUT_PDF);
    enum status status = further_open(&run.further, request, work, shares_shop, streams);
    if (status == STATUS_DONE) {
        status = further_check(&run.further, work, &run.file, run.files, request, streams);
    }
    if (status == STATUS_DONE) {
        status = make(&run);
    }
    if (status == STATUS_DONE) {
        status = tell(&run);
    }
    if (status == STATUS_DONE && run.files > 0) {
        status = write_file(&run);
    }
    further_close(&run.further);
    pool_clear(&run.pool);
    return status;
}
