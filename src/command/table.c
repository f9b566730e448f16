/* SPDX-License-Identifier: MIT */
/* `table`: what one more door comes to by its size and by how many are ordered. */
#include "base/text.h"
#include "command/client_file.h"
#include "command/command.h"
#include "command/files.h"
#include "command/sizes.h"
#include "command/work.h"
#include "price/size_table.h"
#include "read/job/style_row.h"
#include "report/csv/csv_size_table.h"
#include "report/json/json.h"
#include "report/offer_make/offer_make.h"
#include "report/shop/size_book.h"
#include "report/text/print.h"

#include <errno.h>
#include <string.h>

/* Why the door of the row cannot be made; NULL: it can. In pool; "" when memory is out. */
static const char *reason_of(const struct work *work, const struct row *row, struct pool *pool) {
    struct problems problems;
    problems_init(&problems);
    const bool can =
        style_row_can_be_made(&work->rates, &work->job, row, work->estimates[0].option, &problems);
    const char *const reason =
        can ? NULL
            : pool_words(pool, "%s",
                         problems.count == 0 ? "it lacks something" : problems.list[0].text);
    const bool failed = problems.failed;
    problems_clear(&problems);
    return failed ? "" : reason;
}

static bool fill_style(struct size_style *style, const struct work *work, int32_t index,
                       const struct sizes *sizes, struct pool *pool) {
    style->name = work->rates.styles[index].name.s;
    style->style = index;
    style->make = style_make(&work->rates, &work->job, index);
    style->line_count = sizes->width_count * sizes->height_count;
    style->lines = pool_take(pool, style->line_count, sizeof *style->lines);
    for (size_t l = 0; style->lines != NULL && l < style->line_count; l++) {
        struct size_line *const line = &style->lines[l];
        line->row = style_row(&style->make, sizes->widths[l / sizes->height_count],
                              sizes->heights[l % sizes->height_count]);
        line->reason = reason_of(work, &line->row, pool);
    }
    return style->lines != NULL;
}

/* false: out of memory. */
static bool fill(struct size_table *table, const struct work *work, const struct sizes *sizes,
                 struct pool *pool) {
    *table = (struct size_table){.style_count = sizes->style_count,
                                 .counts = sizes->counts,
                                 .count_count = sizes->count_count};
    table->styles = pool_take(pool, sizes->style_count, sizeof *table->styles);
    for (size_t s = 0; table->styles != NULL && s < sizes->style_count; s++) {
        if (!fill_style(&table->styles[s], work, sizes->styles[s], sizes, pool)) {
            return false;
        }
    }
    return table->styles != NULL && !pool_failed(pool) &&
           size_table_make(table, &work->estimates[0], work->request.plans, pool);
}

static enum status print(const struct request *request, const struct work *work,
                         const struct size_table *table, struct streams streams) {
    if (request->json) {
        struct json_paper paper = command_paper(request, work);
        paper.sizes = table;
        return command_send(&paper, streams);
    }
    struct page page = {.out = streams.out};
    size_table_print(&page, &work->estimates[0], table);
    return page.failed ? command_out_of_memory(streams) : command_flush(streams);
}

static bool write_csv(const struct work *work, const struct size_table *table, const char *name) {
    FILE *const file = fopen(name, "wb");
    if (file == NULL) {
        return false;
    }
    csv_size_table(file, &work->estimates[0], table);
    const bool done = ferror(file) == 0;
    return fclose(file) == 0 && done;
}

static enum status write_file(const struct request *request, const struct work *work,
                              const struct size_table *table, struct output *file,
                              struct streams streams) {
    const enum status status = files_begin(file, 1, request, streams);
    if (status != STATUS_DONE) {
        return status;
    }
    errno = 0;
    const bool done = file->kind == OUTPUT_WORKBOOK
                          ? size_book_write(&work->estimates[0], table, file->name)
                          : write_csv(work, table, file->name);
    return done ? files_finish(file, 1, request, streams) : files_failed(file, 1, 0, streams);
}

/* --- for the client --- */

static enum status ask_client(const struct request *request, struct streams streams) {
    if (!request->client || !request->json) {
        return STATUS_DONE;
    }
    text_print(streams.err, "doorcost: --json tells cost too, which is nothing for a client; leave "
                            "one of --client and --json away\n");
    return STATUS_USE;
}

/* Prints the list, and writes it where file is not NULL. */
static enum status tell_list(const struct request *request, struct offer *list, struct output *file,
                             struct streams streams) {
    struct page page = {.out = streams.out};
    prices_print(&page, list);
    enum status status = page.failed ? command_out_of_memory(streams) : command_flush(streams);
    if (status != STATUS_DONE || file == NULL) {
        return status;
    }
    status = files_begin(file, 1, request, streams);
    if (status != STATUS_DONE) {
        return status;
    }
    errno = 0;
    return client_file_write(list, file, streams.err) ? files_finish(file, 1, request, streams)
                                                      : files_failed(file, 1, 0, streams);
}

static enum status tell_client(const struct request *request, const struct work *work,
                               const struct size_table *table, struct output *file,
                               struct streams streams) {
    struct offer offer = {0};
    struct offer list = {0};
    const bool made = offer_make(&offer, &work->estimates[0], NULL, 0) &&
                      offer_prices_make(&list, &offer, &work->estimates[0], table);
    const enum status status =
        made ? tell_list(request, &list, file, streams) : command_out_of_memory(streams);
    offer_clear(&list);
    offer_clear(&offer);
    return status;
}

/* --- the command --- */

static enum status tell(const struct request *request, const struct work *work,
                        const struct size_table *table, struct output *file,
                        struct streams streams) {
    if (request->client) {
        return tell_client(request, work, table, file, streams);
    }
    const enum status status = print(request, work, table, streams);
    return status == STATUS_DONE && file != NULL ? write_file(request, work, table, file, streams)
                                                 : status;
}

static enum status ask_styles(const struct output *file, bool client, const struct sizes *sizes,
                              struct streams streams) {
    if (file->kind != OUTPUT_WORKBOOK || client || sizes->style_count <= SIZE_BOOK_MOST_STYLES) {
        return STATUS_DONE;
    }
    text_print(streams.err,
               "doorcost: a workbook has sheets for %d styles, and %zu are named; name fewer, or "
               "write a CSV file\n",
               SIZE_BOOK_MOST_STYLES, sizes->style_count);
    return STATUS_USE;
}

enum status command_table(const struct request *request, struct work *work,
                          struct streams streams) {
    struct sizes sizes;
    struct size_table table;
    struct pool pool;
    pool_init(&pool);
    const enum output_kind usual = request->client ? OUTPUT_PDF : OUTPUT_CSV;
    struct output file =
        files_output(files_target(request, work, &pool, request->client ? ".pdf" : ".csv"),
                     OUTPUT_BIT(usual) | OUTPUT_BIT(OUTPUT_WORKBOOK), usual);
    const size_t files = request->output == NULL ? 0 : 1;
    enum status status = ask_client(request, streams);
    if (status == STATUS_DONE) {
        status = sizes_read(&sizes, request, work, &pool, streams);
    }
    if (status == STATUS_DONE && files > 0) {
        status = ask_styles(&file, request->client, &sizes, streams);
    }
    if (status == STATUS_DONE) {
        status = files_check(&file, files, request, work, streams);
    }
    if (status == STATUS_DONE) {
        status = fill(&table, work, &sizes, &pool)
                     ? tell(request, work, &table, files > 0 ? &file : NULL, streams)
                     : command_out_of_memory(streams);
    }
    pool_clear(&pool);
    return status;
}
