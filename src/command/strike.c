/* SPDX-License-Identifier: MIT */
/* `strike`: what each row saves if it is struck, and one more of it costs. */
#include "price/strike.h"

#include "base/order.h"
#include "base/text.h"
#include "command/command.h"
#include "command/progress.h"
#include "command/work.h"
#include "report/json/json.h"
#include "report/text/print.h"

#include <stdlib.h>
#include <string.h>

static int ascending(const void *x, const void *y) {
    const size_t a = *(const size_t *)x;
    const size_t b = *(const size_t *)y;
    return order_by_number((int64_t)a, (int64_t)b);
}

/* The place of the row of that id; -1: there is none, which is said. */
static long find_row(const struct job *job, const char *id, struct pool *pool,
                     struct streams streams) {
    for (size_t r = 0; r < job->row_count; r++) {
        if (strcmp(job->rows[r].id.s, id) == 0) {
            return (long)r;
        }
    }
    const char **const ids = pool_take(pool, job->row_count, sizeof *ids);
    for (size_t r = 0; ids != NULL && r < job->row_count; r++) {
        ids[r] = job->rows[r].id.s;
    }
    const char *const near = ids == NULL ? NULL : text_nearest(id, ids, job->row_count);
    text_print(streams.err, "doorcost: no row of the list is called '%s'%s%s%s\n", id,
               near == NULL ? "" : "; did you mean '", near == NULL ? "" : near,
               near == NULL ? "" : "'?");
    return -1;
}

/* The rows that were named, ascending, each once. */
static enum status find_rows(const struct request *request, const struct job *job,
                             struct pool *pool, size_t *rows, size_t *count,
                             struct streams streams) {
    size_t kept = 0;
    for (size_t i = 0; i < request->word_count; i++) {
        const long row = find_row(job, request->words[i], pool, streams);
        if (row < 0) {
            return pool_failed(pool) ? command_out_of_memory(streams) : STATUS_USE;
        }
        rows[i] = (size_t)row;
    }
    qsort(rows, request->word_count, sizeof *rows, ascending);
    for (size_t i = 0; i < request->word_count; i++) {
        if (i == 0 || rows[i] != rows[i - 1]) {
            rows[kept++] = rows[i];
        }
    }
    *count = kept;
    return STATUS_DONE;
}

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
    size_t *const rows = pool_take(&pool, request->word_count + 1, sizeof *rows);
    enum status status = rows == NULL
                             ? command_out_of_memory(streams)
                             : find_rows(request, &work->job, &pool, rows, &count, streams);
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
