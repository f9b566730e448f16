/* SPDX-License-Identifier: MIT */
/* `show`: the estimate as a page to look into, and with --client the offer as a page of its own. */
#include "command/command.h"
#include "command/files.h"
#include "command/progress.h"
#include "command/work.h"
#include "report/client/client_page.h"
#include "report/offer_make/offer_make.h"
#include "report/page/page.h"

/* Places among the files of a run. */
enum { FILE_SHOP, FILE_CLIENT, FILE_COUNT };

static bool write_client(const struct work *work, const struct output *file) {
    struct offer offer;
    const bool done =
        offer_make(&offer, &work->estimates[0], work->estimates + 1, work->count - 1) &&
        client_page_write(&offer, file->name);
    offer_clear(&offer);
    return done;
}

/* Fills the files that were begun; *at: the one that failed. */
static bool write_pages(const struct work *work, const struct output *files, size_t count,
                        FILE *err, size_t *at) {
    const struct page_facts facts = {.base = &work->estimates[0],
                                     .options = work->estimates + 1,
                                     .option_count = work->count - 1,
                                     .problems = &work->problems};
    const struct stop stop = outputs_stop(files);
    struct progress progress;
    progress_begin(&progress, err, "writing the page");
    *at = FILE_SHOP;
    bool done = page_write(&facts, files[FILE_SHOP].name, &stop);
    if (done && count > FILE_CLIENT && !outputs_stopped(files)) {
        *at = FILE_CLIENT;
        done = write_client(work, &files[FILE_CLIENT]);
    }
    progress_end(&progress);
    return done;
}

enum status command_show(const struct request *request, struct work *work, struct streams streams) {
    struct pool pool;
    size_t at = 0;
    pool_init(&pool);
    const char *const path = files_target(request, work, &pool, ".html");
    struct output files[FILE_COUNT] = {
        [FILE_SHOP] = {.path = path, .kind = OUTPUT_HTML},
        [FILE_CLIENT] = {.path = files_beside(&pool, path, "-client", NULL), .kind = OUTPUT_HTML}};
    const size_t count = request->client ? FILE_COUNT : FILE_CLIENT;
    enum status status = files_check(files, count, request, work, streams);
    if (status == STATUS_DONE && request->json) {
        status = command_json(request, work, streams);
    }
    if (status == STATUS_DONE) {
        status = files_begin(files, count, request, streams);
    }
    if (status == STATUS_DONE) {
        status = write_pages(work, files, count, streams.err, &at)
                     ? files_finish(files, count, request, streams)
                     : files_failed(files, count, at, streams);
    }
    pool_clear(&pool);
    return status;
}
