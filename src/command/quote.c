/* SPDX-License-Identifier: MIT */
/* `quote`: the shop's workbook, the client's papers, and a summary, or with --all the whole quote.
 *
 * The summary goes out first: where standard output can't take it, no file is touched. */
#include "base/text.h"
#include "command/command.h"
#include "command/files.h"
#include "command/progress.h"
#include "command/work.h"
#include "report/client/client_book.h"
#include "report/client/client_pdf.h"
#include "report/offer_make/offer_make.h"
#include "report/shop/workbook.h"
#include "report/text/print.h"

static void print_all(struct page *page, const struct work *work) {
    quote_print(page, &work->estimates[0], work->estimates + 1, work->count - 1);
    shop_print(page, &work->estimates[0]);
    if (problems_count(&work->problems, SEVERITY_ACCEPTED) > 0) {
        say(page, "%s", "");
        accepted_print(page, &work->problems);
    }
}

static enum status print_summary(const struct request *request, const struct work *work,
                                 struct streams streams) {
    if (request->json) {
        return command_json(request, work, streams);
    }
    struct page page = {.out = streams.out};
    if (request->all) {
        print_all(&page, work);
    } else {
        brief_print(&page, &work->estimates[0], work->estimates + 1, work->count - 1,
                    &work->problems);
    }
    return page.failed ? command_out_of_memory(streams) : command_flush(streams);
}

/* Places among the files of a run. */
enum { FILE_SHOP, FILE_CLIENT_BOOK, FILE_CLIENT_PDF, FILE_COUNT };

/* The client's papers; *at: the file that failed. Where letters of theirs have no shape here, says
 * so on err. */
static bool write_client(struct work *work, const struct output *files, FILE *err, size_t *at) {
    struct offer offer;
    const char *lacking = NULL;
    const struct stop stop = outputs_stop(files);
    struct progress progress;
    progress_begin(&progress, err, "writing the client's papers");
    *at = FILE_CLIENT_BOOK;
    bool done = offer_make(&offer, &work->estimates[0], work->estimates + 1, work->count - 1) &&
                client_book_write(&offer, files[FILE_CLIENT_BOOK].name, &stop);
    if (done && !outputs_stopped(files)) {
        *at = FILE_CLIENT_PDF;
        done = client_pdf_write(&offer, files[FILE_CLIENT_PDF].name, &stop, &offer.pool, &lacking);
    }
    progress_end(&progress);
    if (done) {
        files_lacking(&files[FILE_CLIENT_PDF], work, lacking, err);
    }
    offer_clear(&offer);
    return done;
}

/* The shop's workbook takes most memory of all, so it comes last, and the estimates make way for it
 * once it is laid out. */
static bool write_shop(struct work *work, const struct output *files, FILE *err) {
    const struct stop stop = outputs_stop(files);
    struct progress progress;
    progress_begin(&progress, err, "writing the workbook");
    struct shop_book *const workbook = shop_book_new(&work->estimates[0], work->estimates + 1,
                                                     work->count - 1, &work->problems, &stop);
    estimate_keep_tape(&work->estimates[0]);
    for (size_t i = 1; i < work->count; i++) {
        estimate_clear(&work->estimates[i]);
    }
    const bool done = workbook != NULL && shop_book_write(workbook, files[FILE_SHOP].name);
    shop_book_free(workbook);
    progress_end(&progress);
    return done;
}

static enum status print_next(const struct work *work, struct streams streams) {
    struct page page = {.out = streams.out};
    brief_next_print(&page, &work->rates, &work->problems);
    return page.failed ? command_out_of_memory(streams) : command_flush(streams);
}

/* Fills the files that were begun; *at: the one that failed. */
static bool write_files(struct work *work, const struct output *files, FILE *err, size_t *at) {
    const bool done = write_client(work, files, err, at);
    if (!done || outputs_stopped(files)) {
        return done;
    }
    *at = FILE_SHOP;
    return write_shop(work, files, err);
}

enum status command_quote(const struct request *request, struct work *work,
                          struct streams streams) {
    struct pool pool;
    if (request->all && request->json) {
        text_print(streams.err, "doorcost: '--all' is for the text; '--json' has all of it\n");
        return STATUS_USE;
    }
    pool_init(&pool);
    const char *const path = files_target(request, work, &pool, ".xlsx");
    struct output files[FILE_COUNT] = {
        [FILE_SHOP] = {.path = path, .kind = OUTPUT_WORKBOOK},
        [FILE_CLIENT_BOOK] = {.path = files_beside(&pool, path, "-client", NULL),
                              .kind = OUTPUT_WORKBOOK},
        [FILE_CLIENT_PDF] = {.path = files_beside(&pool, path, "-client", ".pdf"),
                             .kind = OUTPUT_PDF},
    };
    size_t at = 0;
    enum status status = files_check(files, FILE_COUNT, request, work, streams);
    if (status == STATUS_DONE) {
        status = print_summary(request, work, streams);
    }
    if (status == STATUS_DONE) {
        status = files_begin(files, FILE_COUNT, request, streams);
    }
    if (status == STATUS_DONE) {
        status = write_files(work, files, streams.err, &at)
                     ? files_finish(files, FILE_COUNT, request, streams)
                     : files_failed(files, FILE_COUNT, at, streams);
    }
    if (status == STATUS_DONE && !request->json && !request->all) {
        status = print_next(work, streams);
    }
    pool_clear(&pool);
    return status;
}
