/* SPDX-License-Identifier: MIT */
/* `quote`: the workbook, and a summary of it.
 *
 * The summary goes out first: where standard output can't take it, no file is touched. */
#include "command/command.h"
#include "command/files.h"
#include "command/work.h"
#include "report/print.h"
#include "report/workbook.h"

static enum status print_summary(const struct request *request, const struct work *work,
                                 struct streams streams) {
    if (request->json) {
        return command_json(request, work, streams);
    }
    struct page page = {.out = streams.out};
    quote_print(&page, &work->estimates[0], work->estimates + 1, work->count - 1);
    shop_print(&page, &work->estimates[0]);
    return page.failed ? command_out_of_memory(streams) : command_flush(streams);
}

enum status command_quote(const struct request *request, struct work *work,
                          struct streams streams) {
    struct pool pool;
    pool_init(&pool);
    struct output output = {.path = files_target(request, &pool, ".xlsx"), .kind = OUTPUT_WORKBOOK};
    enum status status = print_summary(request, work, streams);
    if (status == STATUS_DONE) {
        status = files_begin(&output, 1, request, work, streams);
    }
    if (status == STATUS_DONE && output.name != NULL) {
        status = workbook_write(output.name, &work->estimates[0], work->estimates + 1,
                                work->count - 1, &work->problems)
                     ? files_finish(&output, 1, request, streams)
                     : files_failed(&output, 1, 0, streams);
    }
    pool_clear(&pool);
    return status;
}
