/* SPDX-License-Identifier: MIT */
#include "command/row_words.h"

#include "base/order.h"
#include "base/text.h"
#include "command/work.h"

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

enum status row_words_find(const struct request *request, const struct work *work,
                           struct pool *pool, size_t **rows, size_t *count,
                           struct streams streams) {
    size_t *const found = pool_take(pool, request->word_count + 1, sizeof *found);
    size_t kept = 0;
    if (found == NULL) {
        return command_out_of_memory(streams);
    }
    for (size_t i = 0; i < request->word_count; i++) {
        const long row = find_row(&work->job, request->words[i], pool, streams);
        if (row < 0) {
            return pool_failed(pool) ? command_out_of_memory(streams) : STATUS_USE;
        }
        found[i] = (size_t)row;
    }
    qsort(found, request->word_count, sizeof *found, ascending);
    for (size_t i = 0; i < request->word_count; i++) {
        if (i == 0 || found[i] != found[i - 1]) {
            found[kept++] = found[i];
        }
    }
    *rows = found;
    *count = kept;
    return STATUS_DONE;
}
