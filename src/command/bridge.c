/* SPDX-License-Identifier: MIT */
/* `bridge`: why the price moved from one job to another. */
#include "bridge/bridge.h"

#include "base/text.h"
#include "command/client_file.h"
#include "command/command.h"
#include "command/files.h"
#include "command/work.h"
#include "report/json/json.h"
#include "report/offer_make/offer_make.h"
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

/* --- the change order --- */

/* An estimate by its paper is agreed to by nobody, so there is nothing to change. */
static enum status ask_paper(const struct work *older, const struct work *newer,
                             struct streams streams) {
    if (older->job.paper.choice != PAPER_ESTIMATE && newer->job.paper.choice != PAPER_ESTIMATE) {
        return STATUS_DONE;
    }
    text_print(streams.err, "doorcost: a change order changes a quote, and one of the two jobs is "
                            "an estimate; make it 'paper = quote', or leave '-o' away\n");
    return STATUS_USE;
}

static bool write_order(const struct work *older, const struct work *newer,
                        const struct output *file, struct streams streams) {
    struct offer was = {0};
    struct offer is = {0};
    struct offer order = {0};
    const bool done = offer_make(&was, &older->estimates[0], NULL, 0) &&
                      offer_make(&is, &newer->estimates[0], NULL, 0) &&
                      offer_order_make(&order, &was, &is, &newer->estimates[0]) &&
                      client_file_write(&order, file, streams.err);
    offer_clear(&order);
    offer_clear(&is);
    offer_clear(&was);
    return done;
}

/* Tells, and writes the change order at that path. */
static enum status tell_and_write(const struct request *request, const struct work *older,
                                  const struct work *newer, const struct bridge *bridge,
                                  const char *path, struct streams streams) {
    struct output file =
        files_output(path, OUTPUT_BIT(OUTPUT_PDF) | OUTPUT_BIT(OUTPUT_WORKBOOK), OUTPUT_PDF);
    struct request other = *request;
    other.job = request->words[0];
    enum status status = ask_paper(older, newer, streams);
    if (status == STATUS_DONE) {
        status = files_check(&file, 1, request, older, streams);
    }
    if (status == STATUS_DONE) {
        status = files_check(&file, 1, &other, newer, streams);
    }
    if (status == STATUS_DONE) {
        status = tell(request, newer, bridge, streams);
    }
    if (status == STATUS_DONE) {
        status = files_begin(&file, 1, request, streams);
    }
    if (status != STATUS_DONE) {
        return status;
    }
    return write_order(older, newer, &file, streams) ? files_finish(&file, 1, request, streams)
                                                     : files_failed(&file, 1, 0, streams);
}

enum status command_bridge(const struct request *request, struct work *work,
                           struct streams streams) {
    struct work newer;
    struct bridge bridge;
    if (request->word_count != 1) {
        text_print(
            streams.err,
            "doorcost: 'bridge' needs two job files or saved quotes, the older and the newer, "
            "as in: %s\n",
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
            status =
                request->output == NULL
                    ? tell(request, &newer, &bridge, streams)
                    : tell_and_write(request, work, &newer, &bridge,
                                     files_target(request, work, &bridge.pool, ".pdf"), streams);
        }
        bridge_clear(&bridge);
    }
    work_close(&newer);
    return status;
}
