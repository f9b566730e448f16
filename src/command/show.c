/* SPDX-License-Identifier: MIT */
/* `show`: the estimate as a page to look into. */
#include "command/command.h"
#include "command/files.h"
#include "command/progress.h"
#include "command/work.h"
#include "report/page/page.h"

static bool write_page(const struct work *work, const struct output *output, FILE *err) {
    const struct page_facts facts = {.base = &work->estimates[0],
                                     .options = work->estimates + 1,
                                     .option_count = work->count - 1,
                                     .problems = &work->problems};
    const struct stop stop = outputs_stop(output);
    struct progress progress;
    progress_begin(&progress, err, "writing the page");
    const bool done = page_write(&facts, output->name, &stop);
    progress_end(&progress);
    return done;
}

enum status command_show(const struct request *request, struct work *work, struct streams streams) {
    struct pool pool;
    pool_init(&pool);
    struct output output = {.path = files_target(request, work, &pool, ".html"),
                            .kind = OUTPUT_HTML};
    enum status status = files_check(&output, 1, request, work, streams);
    if (status == STATUS_DONE && request->json) {
        status = command_json(request, work, streams);
    }
    if (status == STATUS_DONE) {
        status = files_begin(&output, 1, request, streams);
    }
    if (status == STATUS_DONE && output.name != NULL) {
        status = write_page(work, &output, streams.err) ? files_finish(&output, 1, request, streams)
                                                        : files_failed(&output, 1, 0, streams);
    }
    pool_clear(&pool);
    return status;
}
