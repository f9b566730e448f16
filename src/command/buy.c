/* SPDX-License-Identifier: MIT */
/* `buy`: the buying list. */
#include "command/command.h"
#include "command/work.h"
#include "report/text/print.h"

enum status command_buy(const struct request *request, struct work *work, struct streams streams) {
    if (request->json) {
        return command_json(request, work, streams);
    }
    struct page page = {.out = streams.out};
    buy_print(&page, &work->estimates[0]);
    return page.failed ? command_out_of_memory(streams) : command_flush(streams);
}
