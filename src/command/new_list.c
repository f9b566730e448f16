/* SPDX-License-Identifier: MIT */
/* A list to fill in, by the rates of a shop. */
#include "base/text.h"
#include "command/new.h"
#include "command/new_files.h"
#include "command/visit_file.h"
#include "command/work.h"
#include "draft/folder.h"
#include "read/file/source.h"

/* The rates: of --from, else of the last job or the rates of the folder, else those that ship. */
static enum status open_rates(const struct request *request, struct folder *folder,
                              struct work *work, struct streams streams) {
    const struct folder_job *const last = folder_last(folder);
    const char *path = request->from;
    enum length_unit unit;
    if (!visit_file_unit(request, NULL, NULL, &unit, streams.err)) {
        return STATUS_USE;
    }
    const struct folder_rates *const found = folder_rates(folder, unit);
    if (path == NULL && last != NULL) {
        path = last->path;
    } else if (path == NULL && found != NULL) {
        path = source_beside(&folder->problems.pool, request->list, found->name);
    } else if (path == NULL) {
        return new_shipped_read(&work->rates, "rates", unit == LENGTH_MM, &folder->problems)
                   ? STATUS_DONE
                   : command_out_of_memory(streams);
    }
    return path == NULL ? command_out_of_memory(streams)
                        : visit_file_open(request, path, work, streams);
}

static enum status write_list(const struct request *request, const struct work *work,
                              struct pool *pool, struct streams streams) {
    struct new_files files = {0};
    struct list_draft list;
    enum length_unit unit;
    const struct job *const job = work->job.title.s == NULL ? NULL : &work->job;
    if (!visit_file_unit(request, job, &work->rates, &unit, streams.err)) {
        return STATUS_USE;
    }
    enum status status = new_files_check_list(request->list, streams);
    if (status != STATUS_DONE) {
        return status;
    }
    if (!list_draft_make(&list, &work->rates, unit, pool)) {
        return command_out_of_memory(streams);
    }
    new_files_add_list(&files, request->list, &list);
    status = new_files_write(&files, request, streams);
    if (status != STATUS_DONE) {
        return status;
    }
    new_files_keep(&files, streams);
    text_print(streams.out, "\nNext: fill it in, then: doorcost new JOB.ini\n");
    return command_flush(streams);
}

enum status new_list(const struct request *request, struct work *work, struct streams streams) {
    struct folder folder;
    struct pool pool;
    pool_init(&pool);
    enum status status = folder_look(&folder, request->list)
                             ? open_rates(request, &folder, work, streams)
                             : command_out_of_memory(streams);
    status = status == STATUS_DONE ? write_list(request, work, &pool, streams) : status;
    folder_clear(&folder);
    pool_clear(&pool);
    return status;
}
