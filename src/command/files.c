/* SPDX-License-Identifier: MIT */
#include "command/files.h"

#include "base/text.h"
#include "command/work.h"
#include "read/file/source.h"
#include "read/job/job_keys.h"
#include "report/type/text_style.h"

#include <errno.h>
#include <string.h>
#include <sys/stat.h>

/* The ending of a file's name from its dot on; NULL: none. A name that is all ending has none. */
static const char *ending_of(const char *path) {
    const char *const slash = strrchr(path, '/');
    const char *const name = slash == NULL ? path : slash + 1;
    const char *const dot = strrchr(name, '.');
    return dot == NULL || dot == name ? NULL : dot;
}

static bool is_folder(const char *path) {
    struct stat about;
    const size_t size = strlen(path);
    return (size > 0 && path[size - 1] == '/') ||
           (stat(path, &about) == 0 && S_ISDIR(about.st_mode));
}

/* `-maple`: so that an option's files stand beside those of the job as listed. "" for these. */
static const char *option_part(const struct estimate *e, struct pool *pool) {
    char *const part = e->option < 0 ? NULL : pool_format(pool, "-%s", estimate_name(e));
    for (char *c = part; c != NULL && *c != '\0'; c++) {
        if (*c == '/') {
            *c = '-';
        }
    }
    return part == NULL ? "" : part;
}

const char *files_target(const struct request *request, const struct work *work, struct pool *pool,
                         const char *ending) {
    const char *const given = request->output;
    if (given != NULL) {
        return ending_of(given) != NULL || is_folder(given)
                   ? given
                   : pool_format(pool, "%s%s", given, strrchr(ending, '.'));
    }
    const char *const job = request->job;
    const char *const old = ending_of(job);
    return pool_format(pool, "%.*s%s%s", (int)(old != NULL ? (size_t)(old - job) : strlen(job)),
                       job, option_part(&work->estimates[0], pool), ending);
}

/* Of each kind of file. */
static const char *const endings[OUTPUT_KIND_COUNT] = {
    [OUTPUT_WORKBOOK] = ".xlsx", [OUTPUT_PDF] = ".pdf",   [OUTPUT_SVG] = ".svg",
    [OUTPUT_CSV] = ".csv",       [OUTPUT_HTML] = ".html", [OUTPUT_CALENDAR] = ".ics",
    [OUTPUT_TEXT] = ".ini"};

struct output files_output(const char *path, unsigned kinds, enum output_kind usual) {
    const char *const ending = path == NULL ? NULL : ending_of(path);
    struct output output = {.path = path, .kind = usual, .others = kinds};
    for (int kind = 0; ending != NULL && kind < OUTPUT_KIND_COUNT; kind++) {
        if ((kinds & OUTPUT_BIT(kind)) != 0 && text_same(ending, endings[kind])) {
            output.kind = (enum output_kind)kind;
        }
    }
    return output;
}

const char *files_beside(struct pool *pool, const char *path, const char *part,
                         const char *ending) {
    const char *const old = path == NULL ? NULL : ending_of(path);
    if (old == NULL) {
        return path; /* no name for a file, which files_check says */
    }
    return pool_format(pool, "%.*s%s%s", (int)(old - path), path, part,
                       ending == NULL ? old : ending);
}

bool files_same(const char *a, const char *b) {
    struct stat one;
    struct stat other;
    return a != NULL && b != NULL && stat(a, &one) == 0 && stat(b, &other) == 0 &&
           one.st_dev == other.st_dev && one.st_ino == other.st_ino;
}

/* Whether a file is the one in which a list stands, which may name a sheet of it. */
static bool holds_list(const char *path, const char *list) {
    struct pool pool;
    pool_init(&pool);
    const char *const file = list == NULL ? NULL : source_list_file(&pool, list);
    const bool holds = pool_failed(&pool) || files_same(path, file);
    pool_clear(&pool);
    return holds;
}

static bool is_input(const struct work *work, const char *job, const char *path) {
    const struct shop *const shop = &work->rates.shop;
    return files_same(path, job) || files_same(path, work->job.rates_path.s) ||
           files_same(path, work->job.doors_file) || holds_list(path, shop->woods.s) ||
           holds_list(path, shop->stock.s) || files_same(path, shop->terms_path.s) ||
           files_same(path, shop->logo_path.s);
}

/* What is said behind the path. */
static const char *const findings[] = {
    [OUTPUT_NOT_OURS] = "is not as this program wrote it; name another file with -o, or overwrite "
                        "it with --force",
    [OUTPUT_SEALLESS] = "stands there already, and whether somebody edited it can't be told of a "
                        "CSV file; name another file with -o, or overwrite it with --force",
    [OUTPUT_STANDS] = "stands there already; name another file, as this command never writes over "
                      "one",
    [OUTPUT_FOLDER] = "is a folder; name a file in it with -o",
    [OUTPUT_NOT_PLAIN] = "is no plain file; name another file with -o",
    [OUTPUT_READ_ONLY] = "may not be written; name another file with -o, or overwrite it with "
                         "--force",
    [OUTPUT_CHANGED] = "was changed while this program ran; nothing was written",
};

/* Whether a list of doors stands at path: nobody means to write over that. */
static bool is_list(const char *path) {
    struct problems problems;
    struct table table = {0};
    problems_init(&problems);
    const bool list = door_list_table(&table, path, (struct place){0}, &problems) &&
                      door_list_told(&table, &problems.pool).whole;
    problems_clear(&problems);
    return list;
}

enum status files_say(enum output_result result, const char *path, struct streams streams) {
    const char *const between = errno == 0 ? "" : ": ";
    const char *const error = errno == 0 ? "" : strerror(errno);
    switch (result) {
    case OUTPUT_OK:
        return STATUS_DONE;
    case OUTPUT_MEMORY:
        return command_out_of_memory(streams);
    case OUTPUT_NO_FOLDER:
        text_print(streams.err,
                   "doorcost: the folder of '%s' is missing; make it first, or name another file "
                   "with -o\n",
                   path);
        break;
    case OUTPUT_UNREADABLE:
        text_print(streams.err,
                   "doorcost: '%s' stands there and can't be read%s%s; name another file with -o, "
                   "or overwrite it with --force\n",
                   path, between, error);
        break;
    case OUTPUT_CANNOT_WRITE:
        text_print(streams.err, "doorcost: could not write '%s'%s%s\n", path, between, error);
        break;
    case OUTPUT_NOT_OURS:
    case OUTPUT_SEALLESS:
        text_print(streams.err, "doorcost: '%s' %s\n", path,
                   is_list(path) ? "is a list of doors; name another file with -o"
                                 : findings[result]);
        break;
    case OUTPUT_STOPPED:
        text_print(streams.err, "doorcost: stopped by a signal; no file was changed\n");
        break;
    default:
        text_print(streams.err, "doorcost: '%s' %s\n", path, findings[result]);
        break;
    }
    return STATUS_OUTPUT;
}

/* An ending that says another kind of file than will be written. */
static bool ends_otherwise(const struct output *output) {
    const char *const ending = ending_of(output->path);
    return ending != NULL && !text_same(ending, endings[output->kind]);
}

/* The endings that a command writes, the usual one first. */
static void say_endings(const struct output *output, FILE *err) {
    const unsigned others = output->others & ~OUTPUT_BIT(output->kind);
    const char *list = "";
    struct pool pool;
    pool_init(&pool);
    for (int kind = OUTPUT_KIND_COUNT - 1; kind >= 0; kind--) {
        if ((others & OUTPUT_BIT(kind)) != 0) {
            const bool last = list[0] == '\0';
            list = pool_words(&pool, "%s'%s'%s", last ? " or " : ", ", endings[kind], list);
        }
    }
    text_print(err, "doorcost: '%s' does not end in '%s'%s, which this command writes\n",
               output->path, endings[output->kind], list);
    pool_clear(&pool);
}

enum status files_check(struct output *outputs, size_t count, const struct request *request,
                        const struct work *work, struct streams streams) {
    for (size_t i = 0; i < count; i++) {
        if (outputs[i].path == NULL) {
            return command_out_of_memory(streams);
        }
        if (is_input(work, request->job, outputs[i].path)) {
            text_print(streams.err,
                       "doorcost: '%s' is one of the input files; name another with -o\n",
                       outputs[i].path);
            return STATUS_USE;
        }
        if (ends_otherwise(&outputs[i])) {
            say_endings(&outputs[i], streams.err);
            return STATUS_USE;
        }
    }
    size_t at = 0;
    errno = 0;
    const enum output_result result = outputs_free(outputs, count, request->force, &at);
    return result == OUTPUT_OK ? STATUS_DONE : files_say(result, outputs[at].path, streams);
}

enum status files_begin(struct output *outputs, size_t count, const struct request *request,
                        struct streams streams) {
    size_t at = 0;
    struct hold hold = {0};
    /* The libraries' threads keep the mask that they begin with: a signal that one of them took
     * would end the program with files half made. */
    hold_begin(&hold);
    text_prepare();
    hold_end(&hold);
    errno = 0;
    const enum output_result result = outputs_begin(outputs, count, request->force, &at);
    if (result == OUTPUT_OK) {
        return STATUS_DONE;
    }
    outputs_drop(outputs, count);
    return files_say(result, outputs[at].path, streams);
}

enum status files_finish(struct output *outputs, size_t count, const struct request *request,
                         struct streams streams) {
    size_t at = 0;
    errno = 0;
    const enum output_result result = outputs_finish(outputs, count, &at);
    if (result != OUTPUT_OK) {
        outputs_drop(outputs, count);
        return files_say(result, outputs[at].path, streams);
    }
    FILE *const out = request->json ? streams.err : streams.out;
    for (size_t i = 0; i < count; i++) {
        text_print(out, "%swritten to %s\n", request->json || i > 0 ? "" : "\n", outputs[i].path);
    }
    return command_flush(streams);
}

bool files_put(const struct output *output, const char *text) {
    FILE *const file = fopen(output->name, "wb");
    const bool good = file != NULL && fputs(text, file) != EOF;
    const int error = errno;
    const bool closed = file != NULL && fclose(file) == 0;
    errno = good ? errno : error;
    return good && closed;
}

void files_lacking(const struct output *output, struct work *work, const char *lacking, FILE *err) {
    if (lacking != NULL) {
        text_print(err,
                   "%s: warning: no typeface on this computer has all letters of '%s', boxes stand "
                   "for them; install %s and run again\n",
                   output->path, problem_quote(&work->problems, lacking), text_typefaces(lacking));
    }
}

enum status files_failed(struct output *outputs, size_t count, size_t at, struct streams streams) {
    outputs_drop(outputs, count);
    return files_say(OUTPUT_CANNOT_WRITE, outputs[at].path, streams);
}
