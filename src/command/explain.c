/* SPDX-License-Identifier: MIT */
/* `explain`: how a figure came about. */
#include "base/text.h"
#include "command/command.h"
#include "command/work.h"
#include "report/json/json.h"
#include "report/shop/workbook.h"
#include "report/text/print.h"
#include "report/words/named_figure.h"

#include <string.h>

/* Lines below the figure itself. */
#define USUAL_DEPTH 2
#define MOST_DEPTH  99

static bool read_depth(const char *text, size_t *depth, FILE *err) {
    int64_t lines = USUAL_DEPTH;
    if (!option_whole(text, "depth", 0, MOST_DEPTH, &lines, err)) {
        return false;
    }
    *depth = (size_t)lines;
    return true;
}

/* The words behind the job file as one. */
static const char *asked_words(const struct request *request, struct pool *pool) {
    const char *words = "";
    for (size_t i = 0; i < request->word_count; i++) {
        words = pool_words(pool, "%s%s%s", words, i == 0 ? "" : " ", request->words[i]);
    }
    return words;
}

/* The figure of a cell, for which the workbook is laid out. */
static enum status find_cell(const struct work *work, const char *cell, fig *figure,
                             struct streams streams) {
    struct shop_book *const workbook = shop_book_new(&work->estimates[0], work->estimates + 1,
                                                     work->count - 1, &work->problems, NULL);
    if (workbook == NULL) {
        return command_out_of_memory(streams);
    }
    *figure = shop_book_figure(workbook, cell);
    shop_book_free(workbook);
    return STATUS_DONE;
}

static enum status find(const struct work *work, struct pool *pool, const char *what, fig *figure,
                        struct streams streams) {
    const char *near = NULL;
    if (strchr(what, '!') != NULL) {
        const enum status status = find_cell(work, what, figure, streams);
        if (status != STATUS_DONE || !fig_none(*figure)) {
            return status;
        }
        text_print(streams.err, "doorcost: no figure stands in the cell '%s'\n", what);
        return STATUS_USE;
    }
    *figure = named_figure(&work->estimates[0], pool, what, &near);
    if (pool_failed(pool)) {
        return command_out_of_memory(streams);
    }
    if (!fig_none(*figure)) {
        return STATUS_DONE;
    }
    text_print(streams.err, "doorcost: nothing is called '%s'; %s%s%s\n", what,
               near == NULL ? "ask for a door, a line of the quote, a material, an operation, or a "
                              "cell of the workbook: 'doorcost explain --help'"
                            : "did you mean '",
               near == NULL ? "" : near, near == NULL ? "" : "'?");
    return STATUS_USE;
}

static enum status tell(const struct request *request, const struct work *work, fig figure,
                        size_t depth, struct streams streams) {
    if (request->json) {
        struct json_paper paper = command_paper(request, work);
        paper.count = 1; /* its options have no part in it */
        paper.explained = figure;
        return command_send(&paper, streams);
    }
    struct page page = {.out = streams.out};
    explain_print(&page, &work->estimates[0], &work->problems, figure, depth);
    return page.failed ? command_out_of_memory(streams) : command_flush(streams);
}

enum status command_explain(const struct request *request, struct work *work,
                            struct streams streams) {
    struct pool pool;
    size_t depth = 0;
    fig figure = {0};
    if (request->word_count == 0) {
        text_print(streams.err, "doorcost: 'explain' needs what to explain, as in: %s\n",
                   request->command->example);
        return STATUS_USE;
    }
    if (!read_depth(request->depth, &depth, streams.err)) {
        return STATUS_USE;
    }
    pool_init(&pool);
    const char *const what = asked_words(request, &pool);
    enum status status = find(work, &pool, what, &figure, streams);
    if (status == STATUS_DONE) {
        status = tell(request, work, figure, depth, streams);
    }
    pool_clear(&pool);
    return status;
}
