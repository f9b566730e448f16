/* SPDX-License-Identifier: MIT */
/* `plan`: the cutting plans of boards and sheets, printed, and drawn where that is asked for. */
#include "command/command.h"
#include "command/work.h"
#include "report/print.h"

enum status command_plan(const struct request *request, struct work *work, struct streams streams) {
    if (request->json) {
        return command_json(request, work, streams);
    }
    struct page page = {.out = streams.out};
    plan_print(&page, &work->estimates[0]);
    return page.failed ? command_out_of_memory(streams) : command_flush(streams);
}
