/* SPDX-License-Identifier: MIT */
/* `strike`: what each row saves if it is struck, and one more of it costs. */
#include "price/strike.h"

#include "command/command.h"
#include "command/progress.h"
#include "command/row_words.h"
#include "command/work.h"
#include "report/json/json.h"
#include "report/text/print.h"

static enum status tell(const struct request *request, const struct work *work,
                        const struct strike *strike, struct streams streams) {
    if (request->json) {
        struct json_paper paper = command_paper(request, work);
        paper.strike = strike;
        return command_send(&paper, streams);
    }
    struct page page = {.out = streams.out};
    strike_print(&page, &work->estimates[0], strike);
    return page.failed ? command_out_of_memory(streams) : command_flush(streams);
}

enum status command_strike(const struct request *request, struct work *work,
                           struct streams streams) {
    struct strike strike;
    struct pool pool;
    size_t count = 0;
    pool_init(&pool);
    size_t *rows = NULL;
    enum status status = row_words_find(request, work, &pool, &rows, &count, streams);
    if (status == STATUS_DONE) {
        struct progress progress;
        progress_begin(&progress, streams.err, "estimating the job without each row");
        const bool made =
            strike_make(&strike, &work->estimates[0], work->request.plans, rows, count, &pool);
        progress_end(&progress);
        status = made ? tell(request, work, &strike, streams) : command_out_of_memory(streams);
    }
    pool_clear(&pool);
    return status;
}
