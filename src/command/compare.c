/* SPDX-License-Identifier: MIT */
/* `compare`: the options side by side. */
#include "command/command.h"
#include "command/work.h"
#include "report/text/print.h"

enum status command_compare(const struct request *request, struct work *work,
                            struct streams streams) {
    if (request->json) {
        return command_json(request, work, streams);
    }
    struct page page = {.out = streams.out};
    compare_print(&page, work->estimates, work->count);
    return page.failed ? command_out_of_memory(streams) : command_flush(streams);
}
