/* SPDX-License-Identifier: MIT */
/* `buy`: the buying list, printed, and on paper where that is asked for. */
#include "base/text.h"
#include "command/command.h"
#include "command/files.h"
#include "command/work.h"
#include "report/order/order_pdf.h"
#include "report/text/print.h"

static enum status print_list(const struct request *request, const struct work *work,
                              struct streams streams) {
    if (request->json) {
        return command_json(request, work, streams);
    }
    struct page page = {.out = streams.out};
    buy_print(&page, &work->estimates[0]);
    return page.failed ? command_out_of_memory(streams) : command_flush(streams);
}

static enum status write_order(const struct request *request, struct work *work, struct pool *pool,
                               struct output *file, struct streams streams) {
    const char *lacking = NULL;
    const enum status status = files_begin(file, 1, request, streams);
    if (status != STATUS_DONE) {
        return status;
    }
    if (!order_pdf_write(&work->estimates[0], !request->no_prices, file->name, pool, &lacking)) {
        return files_failed(file, 1, 0, streams);
    }
    files_lacking(file, work, lacking, streams.err);
    return files_finish(file, 1, request, streams);
}

enum status command_buy(const struct request *request, struct work *work, struct streams streams) {
    if (request->no_prices && request->output == NULL) {
        text_print(streams.err,
                   "doorcost: '--no-prices' is for the order that -o writes; name its file, as in "
                   "-o order.pdf\n");
        return STATUS_USE;
    }
    struct pool pool;
    pool_init(&pool);
    struct output file = {.path = files_target(request, work, &pool, ".pdf"), .kind = OUTPUT_PDF};
    const size_t count = request->output == NULL ? 0 : 1;
    enum status status = files_check(&file, count, request, work, streams);
    if (status == STATUS_DONE) {
        status = print_list(request, work, streams);
    }
    if (status == STATUS_DONE && count > 0) {
        status = write_order(request, work, &pool, &file, streams);
    }
    pool_clear(&pool);
    return status;
}
