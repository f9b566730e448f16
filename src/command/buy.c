/* SPDX-License-Identifier: MIT */
/* `buy`: the buying list, printed, and on paper where that is asked for. */
#include "base/text.h"
#include "command/command.h"
#include "command/files.h"
#include "command/jobs_together.h"
#include "command/work.h"
#include "report/order/order_pdf.h"
#include "report/text/print.h"

/* What is bought: of one job, or of several together. */
struct buying {
    struct work *work;
    struct jobs_together *all; /* NULL: of one job */
    const struct estimate *estimate;
    const struct together *together; /* NULL likewise */
};

static enum status print_list(const struct request *request, const struct buying *b,
                              struct streams streams) {
    if (request->json) {
        return b->all == NULL ? command_json(request, b->work, streams)
                              : jobs_together_json(b->all, request, streams);
    }
    struct page page = {.out = streams.out};
    buy_print(&page, b->estimate, b->together);
    return page.failed ? command_out_of_memory(streams) : command_flush(streams);
}

static enum status write_order(const struct request *request, const struct buying *b,
                               struct pool *pool, struct output *file, struct streams streams) {
    const char *lacking = NULL;
    const enum status status = files_begin(file, 1, request, streams);
    if (status != STATUS_DONE) {
        return status;
    }
    if (!order_pdf_write(b->estimate, b->together, !request->no_prices, file->name, pool,
                         &lacking)) {
        return files_failed(file, 1, 0, streams);
    }
    files_lacking(file, b->work, lacking, streams.err);
    return files_finish(file, 1, request, streams);
}

static enum status print_and_write(const struct request *request, const struct buying *b,
                                   struct streams streams) {
    struct pool pool;
    pool_init(&pool);
    struct output file = {.path = files_target(request, b->work, &pool, ".pdf"),
                          .kind = OUTPUT_PDF};
    const size_t count = request->output == NULL ? 0 : 1;
    enum status status = b->all == NULL
                             ? files_check(&file, count, request, b->work, streams)
                             : jobs_together_check(b->all, &file, count, request, streams);
    if (status == STATUS_DONE) {
        status = print_list(request, b, streams);
    }
    if (status == STATUS_DONE && count > 0) {
        status = write_order(request, b, &pool, &file, streams);
    }
    pool_clear(&pool);
    return status;
}

static enum status buy_together(const struct request *request, struct work *work,
                                struct streams streams) {
    struct jobs_together all;
    enum status status = jobs_together_open(&all, request, work, TOGETHER_BOUGHT, streams);
    if (status == STATUS_DONE) {
        const struct buying b = {.work = work,
                                 .all = &all,
                                 .estimate = &all.together.estimate,
                                 .together = &all.together};
        status = print_and_write(request, &b, streams);
    }
    jobs_together_close(&all);
    return status;
}

enum status command_buy(const struct request *request, struct work *work, struct streams streams) {
    if (request->no_prices && request->output == NULL) {
        text_print(streams.err,
                   "doorcost: '--no-prices' is for the order that -o writes; name its file, as in "
                   "-o order.pdf\n");
        return STATUS_USE;
    }
    if (request->word_count > 0) {
        return buy_together(request, work, streams);
    }
    const struct buying b = {.work = work, .estimate = &work->estimates[0]};
    return print_and_write(request, &b, streams);
}
