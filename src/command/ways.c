/* SPDX-License-Identifier: MIT */
/* `ways`: rows made here, bought in, sent out; and the ways that keep the job within its hours. */
#include "price/ways.h"

#include "base/text.h"
#include "command/command.h"
#include "command/progress.h"
#include "command/row_words.h"
#include "command/work.h"
#include "report/json/json.h"
#include "report/text/print.h"

#include <string.h>

#define MOST_HOURS 1000000

/* Hundredths of an hour; -1: none were given. false: no such number. */
static bool read_hours(const char *text, int64_t *hours, FILE *err) {
    uint8_t decimals;
    *hours = -1;
    if (text == NULL) {
        return true;
    }
    bool good = text_decimal(text, strlen(text), hours, &decimals) && decimals <= 2;
    for (; good && decimals < 2; decimals++) {
        *hours *= 10;
    }
    if (!good || *hours < 0 || *hours > (int64_t)MOST_HOURS * 100) {
        text_print(err,
                   "doorcost: --hours takes hours at the bench, from 0 to %d, with at most 2 "
                   "decimals\n",
                   MOST_HOURS);
        return false;
    }
    return true;
}

static enum status tell(const struct request *request, const struct work *work,
                        const struct ways *ways, struct streams streams) {
    if (request->json) {
        struct json_paper paper = command_paper(request, work);
        paper.ways = ways;
        return command_send(&paper, streams);
    }
    struct page page = {.out = streams.out};
    ways_print(&page, &work->estimates[0], ways);
    return page.failed ? command_out_of_memory(streams) : command_flush(streams);
}

static enum status make(const struct request *request, const struct work *work, int64_t hours,
                        struct pool *pool, struct streams streams) {
    struct ways ways;
    size_t count = 0;
    size_t *rows = NULL;
    const enum status status = row_words_find(request, work, pool, &rows, &count, streams);
    if (status != STATUS_DONE) {
        return status;
    }
    struct progress progress;
    progress_begin(&progress, streams.err, "estimating each way of each row");
    const enum ways_result result =
        ways_make(&ways, &work->estimates[0], work->request.plans, rows, count, hours, pool);
    progress_end(&progress);
    switch (result) {
    case WAYS_OK:
        return tell(request, work, &ways, streams);
    case WAYS_TOO_MANY:
        text_print(streams.err, "doorcost: too many rows to choose among for --hours; name some of "
                                "them behind the job file\n");
        return STATUS_USE;
    default:
        return command_out_of_memory(streams);
    }
}

enum status command_ways(const struct request *request, struct work *work, struct streams streams) {
    int64_t hours;
    if (!read_hours(request->hours, &hours, streams.err)) {
        return STATUS_USE;
    }
    struct pool pool;
    pool_init(&pool);
    const enum status status = make(request, work, hours, &pool, streams);
    pool_clear(&pool);
    return status;
}
