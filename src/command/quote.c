/* SPDX-License-Identifier: MIT */
/* `quote`: the workbook, and a summary of it.
 *
 * The summary goes out first: where standard output can't take it, no file is touched. */
#include "command/command.h"
#include "command/work.h"
#include "report/print.h"
#include "report/workbook.h"

#include <errno.h>
#include <string.h>
#include <sys/stat.h>

/* The job file's name with .xlsx in place of its ending; NULL when memory is out. */
static const char *default_output(const char *job, struct pool *pool) {
    const char *const slash = strrchr(job, '/');
    const char *const dot = strrchr(job, '.');
    const bool ending = dot != NULL && dot > job && (slash == NULL || dot > slash + 1);
    return pool_format(pool, "%.*s.xlsx", (int)(ending ? (size_t)(dot - job) : strlen(job)), job);
}

static bool same_file(const char *a, const char *b) {
    struct stat one;
    struct stat other;
    return a != NULL && b != NULL && stat(a, &one) == 0 && stat(b, &other) == 0 &&
           one.st_dev == other.st_dev && one.st_ino == other.st_ino;
}

static bool is_input(const struct work *work, const char *job, const char *path) {
    return same_file(path, job) || same_file(path, work->job.rates_path.s) ||
           same_file(path, work->job.doors_path.s) || same_file(path, work->rates.shop.woods.s);
}

static enum status write_book(const struct request *request, const struct work *work,
                              const char *path, struct streams streams) {
    errno = 0;
    switch (workbook_write(path, request->force, &work->estimates[0], work->estimates + 1,
                           work->count - 1, &work->problems)) {
    case BOOK_OK:
        return STATUS_DONE;
    case BOOK_EDITED:
        fprintf(streams.err,
                "doorcost: '%s' is not as this program wrote it; name another file with -o, or "
                "overwrite it with --force\n",
                path);
        break;
    case BOOK_CANNOT_WRITE:
        fprintf(streams.err, "doorcost: could not write '%s'%s%s\n", path, errno == 0 ? "" : ": ",
                errno == 0 ? "" : strerror(errno));
        break;
    case BOOK_MEMORY:
        return command_out_of_memory(streams);
    }
    return STATUS_OUTPUT;
}

static enum status print_summary(const struct request *request, const struct work *work,
                                 struct streams streams) {
    if (request->json) {
        return command_json(request, work, streams);
    }
    struct page page = {.out = streams.out};
    quote_print(&page, &work->estimates[0], work->estimates + 1, work->count - 1);
    shop_print(&page, &work->estimates[0]);
    return page.failed ? command_out_of_memory(streams) : command_flush(streams);
}

enum status command_quote(const struct request *request, struct work *work,
                          struct streams streams) {
    struct pool pool;
    pool_init(&pool);
    const char *const path =
        request->output != NULL ? request->output : default_output(request->job, &pool);
    enum status status = STATUS_OUTPUT;
    if (path == NULL) {
        status = command_out_of_memory(streams);
    } else if (is_input(work, request->job, path)) {
        fprintf(streams.err, "doorcost: '%s' is one of the input files; name another with -o\n",
                path);
        status = STATUS_USE;
    } else {
        status = print_summary(request, work, streams);
        if (status == STATUS_DONE) {
            status = write_book(request, work, path, streams);
        }
        if (status == STATUS_DONE) {
            fprintf(request->json ? streams.err : streams.out, "%swritten to %s\n",
                    request->json ? "" : "\n", path);
            status = command_flush(streams);
        }
    }
    pool_clear(&pool);
    return status;
}
