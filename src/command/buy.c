/* SPDX-License-Identifier: MIT */
/* `buy`: the buying list, printed, and on paper where that is asked for. */
#include "base/text.h"
#include "command/command.h"
#include "command/files.h"
#include "command/jobs_together.h"
#include "command/work.h"
#include "report/order/order_pdf.h"
#include "report/text/print.h"

static enum status print_list(const struct request *request, const struct shown_jobs *shown,
                              struct streams streams) {
    if (request->json) {
        return jobs_json(shown, request, streams);
    }
    struct page page = {.out = streams.out};
    buy_print(&page, shown_estimate(shown), shown_together(shown));
    return page.failed ? command_out_of_memory(streams) : command_flush(streams);
}

static enum status write_order(const struct request *request, const struct shown_jobs *shown,
                               struct pool *pool, struct output *file, struct streams streams) {
    const char *lacking = NULL;
    const enum status status = files_begin(file, 1, request, streams);
    if (status != STATUS_DONE) {
        return status;
    }
    if (!order_pdf_write(shown_estimate(shown), shown_together(shown), !request->no_prices,
                         file->name, pool, &lacking)) {
        return files_failed(file, 1, 0, streams);
    }
    files_lacking(file, shown->work, lacking, streams.err);
    return files_finish(file, 1, request, streams);
}

static enum status print_and_write(const struct request *request, const struct shown_jobs *shown,
                                   struct streams streams) {
    struct pool pool;
    pool_init(&pool);
    struct output file = {.path = files_target(request, shown->work, &pool, ".pdf"),
                          .kind = OUTPUT_PDF};
    const size_t count = request->output == NULL ? 0 : 1;
    enum status status = jobs_check(shown, &file, count, request, streams);
    if (status == STATUS_DONE) {
        status = print_list(request, shown, streams);
    }
    if (status == STATUS_DONE && count > 0) {
        status = write_order(request, shown, &pool, &file, streams);
    }
    pool_clear(&pool);
    return status;
}

enum status command_buy(const struct request *request, struct work *work, struct streams streams) {
    if (request->no_prices && request->output == NULL) {
        text_print(streams.err,
                   "doorcost: '--no-prices' is for the order that -o writes; name its file, as in "
                   "-o order.pdf\n");
        return STATUS_USE;
    }
    return jobs_show(request, work, TOGETHER_BOUGHT, print_and_write, streams);
}
