/* SPDX-License-Identifier: MIT */
#include "command/new_files.h"

#include "base/text.h"
#include "draft/shipped_files.h"
#include "read/file/source.h"

#include <assert.h>
#include <errno.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

void new_files_add(struct new_files *files, const char *path, const char *text) {
    assert(files->count < NEW_MOST_FILES);
    files->outputs[files->count] =
        (struct output){.path = path, .kind = OUTPUT_TEXT, .fresh = true};
    files->texts[files->count++] = text;
}

void new_files_add_shipped(struct new_files *files, const char *rates, bool metric,
                           struct pool *pool) {
    const char *const slash = strrchr(rates, '/');
    files->folder = slash == NULL ? NULL : pool_words(pool, "%.*s", (int)(slash - rates), rates);
    new_files_add(files, rates, metric ? shipped_metric : shipped_inch);
    new_files_add(files, source_beside(pool, rates, "woods.csv"), shipped_woods);
    new_files_add(files, source_beside(pool, rates, "terms.txt"), shipped_terms);
}

static void drop_folder(struct new_files *files) {
    if (files->made_folder) {
        (void)rmdir(files->folder);
        files->made_folder = false;
    }
}

enum status new_files_write(struct new_files *files, const struct request *request,
                            struct streams streams) {
    size_t at = 0;
    hold_begin(&files->hold);
    files->made_folder = files->folder != NULL && mkdir(files->folder, 0777) == 0;
    errno = 0;
    enum output_result result = outputs_begin(files->outputs, files->count, request->force, &at);
    for (size_t i = 0; result == OUTPUT_OK && i < files->count; i++) {
        at = i;
        result = files_put(&files->outputs[i], files->texts[i]) ? OUTPUT_OK : OUTPUT_CANNOT_WRITE;
    }
    result = result == OUTPUT_OK ? outputs_finish(files->outputs, files->count, &at) : result;
    if (result == OUTPUT_OK) {
        return STATUS_DONE;
    }
    const int error = errno;
    outputs_drop(files->outputs, files->count);
    drop_folder(files);
    errno = error;
    const enum status status = files_say(result, files->outputs[at].path, streams);
    hold_end(&files->hold);
    return status;
}

void new_files_keep(struct new_files *files, struct streams streams) {
    for (size_t i = 0; i < files->count; i++) {
        text_print(streams.out, "%swritten to %s\n", i == 0 ? "\n" : "", files->outputs[i].path);
    }
    hold_end(&files->hold);
}

void new_files_drop(struct new_files *files) {
    for (size_t i = 0; i < files->count; i++) {
        (void)unlink(files->outputs[i].path);
    }
    drop_folder(files);
    hold_end(&files->hold);
}
