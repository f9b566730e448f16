/* SPDX-License-Identifier: MIT */
/* `plan`: the cutting plans of boards and sheets, printed, and drawn where that is asked for. */
#include "base/text.h"
#include "command/command.h"
#include "command/files.h"
#include "command/jobs_together.h"
#include "command/progress.h"
#include "command/work.h"
#include "report/plan/plan_pages.h"
#include "report/text/print.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

static enum status print_plans(const struct request *request, const struct shown_jobs *shown,
                               struct streams streams) {
    if (request->json) {
        return jobs_json(shown, request, streams);
    }
    struct page page = {.out = streams.out};
    plan_print(&page, shown_estimate(shown));
    if (shown->all != NULL) {
        together_print(&page, shown_together(shown));
    }
    return page.failed ? command_out_of_memory(streams) : command_flush(streams);
}

static const char *svg_path(struct pool *pool, const char *folder, size_t page) {
    return pool_format(pool, "%s/plan-%02zu.svg", folder, page + 1);
}

static enum status make_folder(const char *folder, struct streams streams) {
    struct stat about;
    if (mkdir(folder, 0777) == 0) {
        return STATUS_DONE;
    }
    const int error = errno;
    if (error == EEXIST && stat(folder, &about) == 0 && S_ISDIR(about.st_mode)) {
        return STATUS_DONE;
    }
    if (error == EEXIST) {
        text_print(streams.err, "doorcost: '%s' is no folder; name another with --svg\n", folder);
        return STATUS_USE;
    }
    text_print(streams.err, "doorcost: could not make the folder '%s': %s\n", folder,
               strerror(error));
    return STATUS_OUTPUT;
}

/* Pages of a longer plan that an earlier run left: a page that is not of this plan must not hang at
 * the saw. */
static void drop_older(struct pool *pool, const char *folder, size_t page) {
    for (const char *path = svg_path(pool, folder, page);
         path != NULL && access(path, F_OK) == 0 && output_is_ours(path, OUTPUT_SVG) &&
         unlink(path) == 0;
         path = svg_path(pool, folder, page)) {
        page++;
    }
}

/* Fills the files that were begun: the PDF where there is one, then the SVG pages. *lacking: what
 * they show boxes for. */
static bool write_files(struct plan_pages *pages, const struct output *files, size_t count,
                        size_t *at, const char **lacking) {
    const struct stop stop = outputs_stop(files);
    for (*at = 0; *at < count && !outputs_stopped(files); (*at)++) {
        const bool done =
            files[*at].kind == OUTPUT_PDF
                ? plan_pages_pdf(pages, files[*at].name, &stop, lacking)
                : plan_pages_svg(pages, *at - (count - pages->count), files[*at].name, lacking);
        if (!done) {
            return false;
        }
    }
    return true;
}

/* The files of a run: the PDF where there is one, then the SVG pages. *count: how many. In pool;
 * NULL when memory is out. */
static struct output *list_files(const struct request *request, const struct work *work,
                                 const struct plan_pages *pages, struct pool *pool, size_t *count) {
    const size_t pdfs = request->output != NULL ? 1 : 0;
    *count = pdfs + (request->svg != NULL ? pages->count : 0);
    struct output *const files = pool_take(pool, *count, sizeof *files);
    for (size_t i = 0; files != NULL && i < *count; i++) {
        files[i] = i < pdfs ? (struct output){.path = files_target(request, work, pool, ".pdf"),
                                              .kind = OUTPUT_PDF}
                            : (struct output){.path = svg_path(pool, request->svg, i - pdfs),
                                              .kind = OUTPUT_SVG};
    }
    return files;
}

/* Before anything is printed: whether the drawings have somewhere to go. */
static enum status check_files(const struct request *request, const struct shown_jobs *shown,
                               struct output *files, size_t count, struct streams streams) {
    const size_t pdfs = request->output != NULL ? 1 : 0;
    enum status status = jobs_check(shown, files, pdfs, request, streams);
    if (status == STATUS_DONE && request->svg != NULL) {
        status = make_folder(request->svg, streams);
    }
    if (status == STATUS_DONE) {
        status = jobs_check(shown, files + pdfs, count - pdfs, request, streams);
    }
    return status;
}

static enum status draw_plans(const struct request *request, struct work *work, struct pool *pool,
                              struct plan_pages *pages, struct output *files, size_t count,
                              struct streams streams) {
    const char *lacking = NULL;
    size_t at = 0;
    /* Older pages go with the renaming, not after it. */
    struct hold hold = {0};
    hold_begin(&hold);
    enum status status = files_begin(files, count, request, streams);
    if (status == STATUS_DONE) {
        struct progress progress;
        progress_begin(&progress, streams.err, "drawing the plans");
        const bool done = write_files(pages, files, count, &at, &lacking);
        progress_end(&progress);
        files_lacking(&files[0], work, done ? lacking : NULL, streams.err);
        status = done ? files_finish(files, count, request, streams)
                      : files_failed(files, count, at, streams);
    }
    if (status == STATUS_DONE && request->svg != NULL) {
        drop_older(pool, request->svg, pages->count);
    }
    hold_end(&hold);
    return status;
}

static enum status print_and_draw(const struct request *request, const struct shown_jobs *shown,
                                  struct plan_pages *pages, struct pool *pool,
                                  struct streams streams) {
    size_t count = 0;
    if (!plan_pages_make(pages, shown_estimate(shown), 0)) {
        return command_out_of_memory(streams);
    }
    struct output *const files = list_files(request, shown->work, pages, pool, &count);
    if (files == NULL) {
        return command_out_of_memory(streams);
    }
    enum status status = check_files(request, shown, files, count, streams);
    if (status == STATUS_DONE) {
        status = print_plans(request, shown, streams);
    }
    if (status == STATUS_DONE && pages->count == 0) {
        text_print(streams.err, "doorcost: nothing is cut by plan; no drawing was written\n");
    } else if (status == STATUS_DONE) {
        status = draw_plans(request, shown->work, pool, pages, files, count, streams);
    }
    return status;
}

static enum status plan(const struct request *request, const struct shown_jobs *shown,
                        struct streams streams) {
    struct plan_pages pages = {0};
    struct pool pool;
    if (request->output == NULL && request->svg == NULL) {
        return print_plans(request, shown, streams);
    }
    pool_init(&pool);
    const enum status status = print_and_draw(request, shown, &pages, &pool, streams);
    plan_pages_clear(&pages);
    pool_clear(&pool);
    return status;
}

enum status command_plan(const struct request *request, struct work *work, struct streams streams) {
    return jobs_show(request, work, TOGETHER_CUT, plan, streams);
}
