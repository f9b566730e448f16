/* SPDX-License-Identifier: MIT */
/* `check`: what is wrong in the files. */
#include "command/command.h"
#include "command/work.h"
#include "report/text/print.h"

enum status command_check(const struct request *request, struct work *work,
                          struct streams streams) {
    if (request->json) {
        return command_json(request, work, streams);
    }
    struct page page = {.out = streams.out};
    check_print(&page, &work->job, work->made, &work->problems);
    return page.failed ? command_out_of_memory(streams) : command_flush(streams);
}
