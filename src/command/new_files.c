/* SPDX-License-Identifier: MIT */
#include "command/new_files.h"

#include "base/text.h"
#include "draft/shipped_files.h"
#include "read/file/ini_edit.h"
#include "read/file/source.h"
#include "read/rates/rates_file.h"
#include "report/list/list_book.h"

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

/* What the rates name may stand there already, and is the shop's then. */
static void add_named(struct new_files *files, const char *path, const char *text) {
    if (access(path, F_OK) != 0) {
        new_files_add(files, path, text);
    }
}

void new_files_add_shipped(struct new_files *files, const char *rates, const char *text,
                           struct pool *pool) {
    const char *const slash = strrchr(rates, '/');
    files->folder = slash == NULL ? NULL : pool_words(pool, "%.*s", (int)(slash - rates), rates);
    new_files_add(files, rates, text);
    add_named(files, text_or_empty(source_beside(pool, rates, "woods.csv")), shipped_woods);
    add_named(files, text_or_empty(source_beside(pool, rates, "terms.txt")), shipped_terms);
}

bool new_shipped_read(struct rates *rates, const char *path, bool metric,
                      struct problems *scratch) {
    struct rates_texts texts;
    struct source source;
    struct ini ini;
    return source_text(&source, path, shipped_rates(metric), scratch) &&
           ini_read_lines(&ini, &source, scratch) &&
           rates_read_from(rates, path, (struct place){0}, (struct rates_instead){.ini = &ini},
                           &texts, scratch);
}

const char *new_files_named(const char *path, const char *what, struct pool *pool,
                            struct streams streams) {
    const char *const slash = strrchr(path, '/');
    const char *const name = slash == NULL ? path : slash + 1;
    const char *const ending = strrchr(name, '.');
    if (name[0] == '\0' || text_same(name, ".ini")) {
        text_print(streams.err, "doorcost: '%s' names no file; name it as in 'kitchen.ini'\n",
                   path);
        return NULL;
    }
    if (ending == NULL) {
        return pool_words(pool, "%s.ini", path);
    }
    if (text_same(ending, ".ini")) {
        return path;
    }
    text_print(streams.err, "doorcost: '%s' does not end in '.ini'; %s does\n", path, what);
    return NULL;
}

const char *new_files_typed(const char *path, struct pool *pool) {
    static const char plain[] =
        "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_-./,:+=@%";
    const char *typed = "";
    const char *at = path;
    while (*at != '\0' && (strchr(plain, *at) != NULL || (unsigned char)*at >= 0x80)) {
        at++;
    }
    if (*at == '\0' && at > path) {
        return pool_words(pool, "%s", path);
    }
    for (const char *from = path;
         *from != '\0';) { /* a single quote ends the quoted, and follows */
        const size_t size = strcspn(from, "'");
        const bool more = from[size] != '\0';
        typed = pool_words(pool, "%s%.*s%s", typed, (int)size, from, more ? "'\\''" : "");
        from += size + (more ? 1 : 0);
    }
    return pool_words(pool, "'%s'", typed);
}

enum status new_files_check(const char *path, struct streams streams) {
    struct output output = {.path = path, .kind = OUTPUT_TEXT, .fresh = true};
    size_t at;
    const enum output_result result = outputs_free(&output, 1, false, &at);
    if (result == OUTPUT_NO_FOLDER) {
        text_print(streams.err, "doorcost: the folder of '%s' is missing; make it first\n", path);
        return STATUS_OUTPUT;
    }
    if (result == OUTPUT_FOLDER) {
        text_print(streams.err, "doorcost: '%s' is a folder; name a file in it\n", path);
        return STATUS_OUTPUT;
    }
    return files_say(result, path, streams);
}

static bool is_csv(const char *path) {
    const char *const ending = strrchr(path, '.');
    return ending != NULL && text_same(ending, ".csv");
}

void new_files_add_list(struct new_files *files, const char *path, const struct list_draft *list) {
    new_files_add(files, path, NULL);
    files->list = list;
    files->outputs[files->count - 1].kind = is_csv(path) ? OUTPUT_TEXT : OUTPUT_WORKBOOK;
}

enum status new_files_check_list(const char *path, struct streams streams) {
    const char *const ending = strrchr(path, '.');
    if (!is_csv(path) && (ending == NULL || !text_same(ending, ".xlsx"))) {
        text_print(streams.err,
                   "doorcost: '%s' ends neither in '.xlsx' nor in '.csv'; --list writes one of "
                   "these\n",
                   path);
        return STATUS_USE;
    }
    return new_files_check(path, streams);
}

/* Writes file i. false: errno tells. */
static bool put(const struct new_files *files, size_t i) {
    const struct output *const output = &files->outputs[i];
    if (files->texts[i] != NULL) {
        return files_put(output, files->texts[i]);
    }
    if (output->kind == OUTPUT_WORKBOOK) {
        return list_book_write(files->list, date_today(), output->name);
    }
    struct pool pool;
    pool_init(&pool);
    const char *const text = list_draft_csv(files->list, &pool);
    errno = text == NULL ? ENOMEM : errno;
    const bool done = text != NULL && files_put(output, text);
    pool_clear(&pool);
    return done;
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
        result = put(files, i) ? OUTPUT_OK : OUTPUT_CANNOT_WRITE;
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

enum status new_files_change(const char *path, const char *key, const char *value,
                             struct streams streams) {
    struct output output = {.path = path, .kind = OUTPUT_TEXT};
    struct problems problems;
    struct source source;
    size_t at = 0;
    problems_init(&problems);
    struct pool *const pool = &problems.pool;
    const char *text = NULL;
    if (source_read(&source, path, (struct place){0}, &problems) && source.open) {
        struct ini_lines lines = ini_lines_of(&source, pool);
        const struct ini_change change = {
            .section = "job", .key = key, .value = ini_value(value, pool)};
        text = lines.list != NULL && change.value != NULL && ini_edit(&lines, &change, pool)
                   ? ini_text(&lines, pool)
                   : NULL;
    }
    enum status status;
    if (text == NULL) {
        status = command_out_of_memory(streams);
    } else {
        enum output_result result = outputs_begin(&output, 1, true, &at);
        result = result == OUTPUT_OK && !files_put(&output, text) ? OUTPUT_CANNOT_WRITE : result;
        result = result == OUTPUT_OK ? outputs_finish(&output, 1, &at) : result;
        status = files_say(result, path, streams);
        outputs_drop(&output, 1);
    }
    problems_clear(&problems);
    return status;
}
