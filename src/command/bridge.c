/* SPDX-License-Identifier: MIT */
/* `bridge`: why the price moved from one job to another. */
#include "bridge/bridge.h"

#include "base/text.h"
#include "command/command.h"
#include "command/work.h"
#include "report/json/json.h"
#include "report/text/print.h"

static enum status say_result(enum bridge_result result, const struct bridge *bridge,
                              struct streams streams) {
    switch (result) {
    case BRIDGE_OK:
        return STATUS_DONE;
    case BRIDGE_MEMORY:
        return command_out_of_memory(streams);
    case BRIDGE_FAULT:
        text_print(streams.err,
                   "doorcost: '%s' or '%s' could not be read a second time; were they edited "
                   "just now?\n",
                   bridge->older_path, bridge->newer_path);
        break;
    case BRIDGE_CURRENCY:
        text_print(streams.err,
                   "doorcost: the two jobs are in different currencies; give two jobs in one, "
                   "amounts are not converted\n");
        break;
    case BRIDGE_UNIT:
        text_print(streams.err,
                   "doorcost: the two jobs, or their rates, have sizes in different units; give "
                   "two jobs with the same 'unit' in [job] and in [shop]\n");
        break;
    }
    return STATUS_INPUTS;
}

static enum status tell(const struct request *request, const struct work *newer,
                        const struct bridge *bridge, struct streams streams) {
    if (request->json) {
        struct json_paper paper = command_paper(request, newer);
        paper.bridge = bridge;
        return command_send(&paper, streams);
    }
    struct page page = {.out = streams.out};
    bridge_print(&page, &newer->estimates[0], bridge);
    return page.failed ? command_out_of_memory(streams) : command_flush(streams);
}

enum status command_bridge(const struct request *request, struct work *work,
                           struct streams streams) {
    struct work newer;
    struct bridge bridge;
    if (request->word_count != 1) {
        text_print(streams.err,
                   "doorcost: 'bridge' needs two job files, the older and the newer, as in: %s\n",
                   request->command->example);
        return STATUS_USE;
    }
    const char *const path = request->words[0];
    enum status status = command_open(request, path, work->request, &newer, streams);
    if (status == STATUS_DONE) {
        status = say_result(
            bridge_make(&bridge, request->job, path, request->option, work->request.plans), &bridge,
            streams);
        if (status == STATUS_DONE) {
            status = tell(request, &newer, &bridge, streams);
        }
        bridge_clear(&bridge);
    }
    work_close(&newer);
    return status;
}
