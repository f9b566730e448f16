/* SPDX-License-Identifier: MIT */
#define _GNU_SOURCE /* renameat2. NOLINT(bugprone-reserved-identifier,cert-*) */
#include "report/file/output.h"

#include <errno.h>
#include <fcntl.h>
#include <inttypes.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

/* The record that ends a zip archive without a comment: 22 bytes, the last two the length of the
 * comment. */
#define END_RECORD 22
#define SEAL_SIZE  25 /* "doorcost " and 16 digits */

/* In a PDF, SVG or page the seal is a comment line of its own between these; in a calendar (RFC
 * 5545) it ends the last event, with which all ends. */
static const struct {
    const char *before, *after;
} comments[] = {[OUTPUT_PDF] = {"% ", "\n"},
                [OUTPUT_SVG] = {"<!-- ", " -->\n"},
                [OUTPUT_HTML] = {"<!-- ", " -->\n"},
                [OUTPUT_CALENDAR] = {"X-DOORCOST-SEAL:", "\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n"}};

/* --- seals --- */

/* FNV-1a over the first `size` bytes of file; not against malice, only to see that somebody saved
 * the file. */
static bool sum_bytes(FILE *file, long size, uint64_t *sum) {
    uint64_t hash = 14695981039346656037u;
    unsigned char bytes[1 << 14];
    rewind(file);
    for (long left = size; left > 0;) {
        const size_t part = (size_t)left < sizeof bytes ? (size_t)left : sizeof bytes;
        if (fread(bytes, 1, part, file) != part) {
            return false;
        }
        for (size_t i = 0; i < part; i++) {
            hash = (hash ^ bytes[i]) * 1099511628211u;
        }
        left -= (long)part;
    }
    *sum = hash;
    return true;
}

static long size_of(FILE *file) {
    return fseek(file, 0, SEEK_END) == 0 ? ftell(file) : -1;
}

/* The zip archive's own end says how long the comment is; the seal covers all before that. */
static bool write_zip_seal(FILE *file, long size) {
    uint64_t sum = 0;
    return size >= END_RECORD && sum_bytes(file, size - 2, &sum) &&
           fseek(file, size - 2, SEEK_SET) == 0 && putc(SEAL_SIZE, file) != EOF &&
           putc(0, file) != EOF && fprintf(file, "doorcost %016" PRIx64, sum) == SEAL_SIZE;
}

static bool write_line_seal(FILE *file, long size, enum output_kind kind) {
    uint64_t sum = 0;
    return size > 0 && sum_bytes(file, size, &sum) && fseek(file, 0, SEEK_END) == 0 &&
           fprintf(file, "%sdoorcost %016" PRIx64 "%s", comments[kind].before, sum,
                   comments[kind].after) > SEAL_SIZE;
}

static bool has_seal(enum output_kind kind) {
    return kind != OUTPUT_CSV && kind != OUTPUT_TEXT;
}

static bool set_seal(const char *name, enum output_kind kind) {
    FILE *const file = fopen(name, "r+b");
    if (file == NULL) {
        return false;
    }
    const long size = size_of(file);
    const bool sealed =
        !has_seal(kind) ||
        (kind == OUTPUT_WORKBOOK ? write_zip_seal(file, size) : write_line_seal(file, size, kind));
    const bool done = sealed && fflush(file) == 0 && fsync(fileno(file)) == 0;
    return fclose(file) == 0 && done;
}

static bool seal_is_whole(FILE *file, enum output_kind kind) {
    const bool zip = kind == OUTPUT_WORKBOOK;
    /* bytes not summed before the seal, and behind it */
    const long before = zip ? 2 : (long)strlen(comments[kind].before);
    const long after = zip ? 0 : (long)strlen(comments[kind].after);
    const long size = size_of(file);
    const long at = size - after - SEAL_SIZE;
    char seal[SEAL_SIZE + 1] = "";
    char wanted[SEAL_SIZE + 1];
    uint64_t sum = 0;
    if (at <= END_RECORD || fseek(file, at, SEEK_SET) != 0 ||
        fread(seal, 1, SEAL_SIZE, file) != SEAL_SIZE || !sum_bytes(file, at - before, &sum)) {
        return false;
    }
    (void)snprintf(wanted, sizeof wanted, "doorcost %016" PRIx64, sum);
    return memcmp(seal, wanted, SEAL_SIZE) == 0;
}

/* Whether the folder is there that a file of that path goes into. */
static enum output_result has_folder(const char *path) {
    const char *const slash = strrchr(path, '/');
    char *const folder = strdup(path);
    if (folder == NULL) {
        return OUTPUT_MEMORY;
    }
    folder[slash == NULL ? 0 : slash - path + 1] = '\0';
    const bool there = slash == NULL || access(folder, F_OK) == 0;
    free(folder);
    return there ? OUTPUT_OK : OUTPUT_NO_FOLDER;
}

/* Whether what stands at path may be replaced. `about`: of what stands there, *stood: something
 * does.
 */
static enum output_result judge(const char *path, enum output_kind kind, struct stat *about,
                                bool *stood) {
    *stood = stat(path, about) == 0;
    const size_t size = strlen(path);
    if ((*stood && S_ISDIR(about->st_mode)) || (size > 0 && path[size - 1] == '/')) {
        return OUTPUT_FOLDER;
    }
    if (!*stood) {
        return errno != ENOENT ? OUTPUT_CANNOT_WRITE : has_folder(path);
    }
    if (!S_ISREG(about->st_mode)) {
        return OUTPUT_NOT_PLAIN;
    }
    FILE *const file = fopen(path, "rb");
    if (file == NULL) {
        return OUTPUT_UNREADABLE;
    }
    const bool ours = about->st_size == 0 || (has_seal(kind) && seal_is_whole(file, kind));
    (void)fclose(file);
    if (!ours) {
        return has_seal(kind) ? OUTPUT_NOT_OURS : OUTPUT_SEALLESS;
    }
    /* for root every file is writable: the mode says what its owner meant */
    const bool writable = (about->st_mode & 0222) != 0 && access(path, W_OK) == 0;
    return writable ? OUTPUT_OK : OUTPUT_READ_ONLY;
}

bool output_is_ours(const char *path, enum output_kind kind) {
    struct stat about;
    bool stood;
    return judge(path, kind, &about, &stood) == OUTPUT_OK;
}

/* --- beginning --- */

/* An empty file beside the output's path. */
static enum output_result make_beside(struct output *output) {
    static const char ending[] = ".XXXXXX";
    const size_t size = strlen(output->path) + sizeof ending;
    output->name = malloc(size);
    if (output->name == NULL) {
        return OUTPUT_MEMORY;
    }
    (void)snprintf(output->name, size, "%s%s", output->path, ending);
    const int file = mkstemp(output->name);
    if (file < 0) {
        free(output->name);
        output->name = NULL;
        return OUTPUT_CANNOT_WRITE;
    }
    /* As the file that it replaces, or as a new file of this user: mkstemp made it for the owner
     * alone. */
    const mode_t mask = umask(0);
    (void)umask(mask);
    (void)fchmod(file, output->stood ? output->about.st_mode & 0777 : 0666 & ~mask);
    return close(file) == 0 ? OUTPUT_OK : OUTPUT_CANNOT_WRITE;
}

enum output_result outputs_free(struct output *outputs, size_t count, bool force, size_t *at) {
    for (*at = 0; *at < count; (*at)++) {
        struct output *const output = &outputs[*at];
        const enum output_result found =
            judge(output->path, output->kind, &output->about, &output->stood);
        if (output->fresh && output->stood) {
            return found == OUTPUT_FOLDER ? found : OUTPUT_STANDS;
        }
        const bool forced = force && (found == OUTPUT_NOT_OURS || found == OUTPUT_SEALLESS ||
                                      found == OUTPUT_UNREADABLE || found == OUTPUT_READ_ONLY);
        output->forced = force;
        if (found != OUTPUT_OK && !forced) {
            return found;
        }
    }
    return OUTPUT_OK;
}

enum output_result outputs_begin(struct output *outputs, size_t count, bool force, size_t *at) {
    const enum output_result found = outputs_free(outputs, count, force, at);
    if (found != OUTPUT_OK) {
        return found;
    }
    if (count > 0) {
        hold_begin(&outputs[0].hold);
    }
    for (*at = 0; *at < count; (*at)++) {
        const enum output_result made = make_beside(&outputs[*at]);
        if (made != OUTPUT_OK) {
            return made;
        }
    }
    return OUTPUT_OK;
}

/* --- finishing --- */

/* Whether at the path stands what stood there when the run began. */
static bool is_as_it_was(const struct output *output) {
    struct stat now;
    if (stat(output->path, &now) != 0) {
        return true; /* taken away, or never there: nothing is lost */
    }
    return output->stood && now.st_dev == output->about.st_dev &&
           now.st_ino == output->about.st_ino && now.st_size == output->about.st_size &&
           now.st_mtim.tv_sec == output->about.st_mtim.tv_sec &&
           now.st_mtim.tv_nsec == output->about.st_mtim.tv_nsec;
}

/* Copies a file to a new one of its own mode; false: errno tells. */
static bool copy_file(const char *from, const char *to, mode_t mode) {
    char bytes[1 << 14];
    FILE *const in = fopen(from, "rb");
    const int handle = in == NULL ? -1 : open(to, O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0600);
    FILE *const out = handle < 0 ? NULL : fdopen(handle, "wb");
    bool done = out != NULL;
    for (size_t got = 1; done && got > 0;) {
        got = fread(bytes, 1, sizeof bytes, in);
        done = fwrite(bytes, 1, got, out) == got && ferror(in) == 0;
    }
    done = done && fflush(out) == 0 && fchmod(handle, mode & 0777) == 0 && fsync(handle) == 0;
    const int error = errno;
    if (out != NULL) {
        done = fclose(out) == 0 && done;
    } else if (handle >= 0) {
        (void)close(handle);
    }
    if (in != NULL) {
        (void)fclose(in);
    }
    if (!done && handle >= 0) {
        (void)unlink(to);
    }
    errno = error;
    return done;
}

/* A second name for what stands at the path, to go back to; a copy where the disk knows no second
 * names. Where nothing stands there is none. */
static enum output_result keep(struct output *output) {
    static const char ending[] = ".old";
    const size_t size = strlen(output->name) + sizeof ending;
    char *const kept = malloc(size);
    if (kept == NULL) {
        return OUTPUT_MEMORY;
    }
    (void)snprintf(kept, size, "%s%s", output->name, ending);
    if (link(output->path, kept) == 0 ||
        (errno != ENOENT && copy_file(output->path, kept, output->about.st_mode))) {
        output->kept = kept;
        return OUTPUT_OK;
    }
    free(kept);
    return errno == ENOENT ? OUTPUT_OK : OUTPUT_CANNOT_WRITE;
}

/* Takes back the first `count` renames. */
static void go_back(const struct output *outputs, size_t count) {
    for (size_t i = 0; i < count; i++) {
        if (outputs[i].kept != NULL) {
            (void)rename(outputs[i].kept, outputs[i].path);
        } else {
            (void)unlink(outputs[i].path);
        }
    }
}

static void forget(struct output *outputs, size_t count, bool with_work) {
    for (size_t i = 0; i < count; i++) {
        if (outputs[i].kept != NULL) {
            (void)unlink(outputs[i].kept);
        }
        if (with_work && outputs[i].name != NULL) {
            (void)unlink(outputs[i].name);
        }
        free(outputs[i].kept);
        free(outputs[i].name);
        outputs[i].kept = NULL;
        outputs[i].name = NULL;
    }
    if (count > 0) {
        hold_end(&outputs[0].hold);
    }
}

bool outputs_stopped(const struct output *outputs) {
    return hold_asked(&outputs[0].hold);
}

static bool stop_is_asked(const void *outputs) {
    return outputs_stopped(outputs);
}

struct stop outputs_stop(const struct output *outputs) {
    return (struct stop){.asked = stop_is_asked, .of = outputs};
}

static bool stopped(const struct output *outputs, size_t count) {
    return count > 0 && outputs_stopped(outputs);
}

/* Gives the file its name: over what stands there, or, of a fresh one, only where nothing does. */
static bool put_in_place(const struct output *output) {
    if (!output->fresh) {
        return rename(output->name, output->path) == 0;
    }
    if (link(output->name, output->path) == 0) {
        (void)unlink(output->name);
        return true;
    }
    /* a disk that knows no second names */
    return errno != EEXIST &&
           renameat2(AT_FDCWD, output->name, AT_FDCWD, output->path, RENAME_NOREPLACE) == 0;
}

enum output_result outputs_finish(struct output *outputs, size_t count, size_t *at) {
    for (*at = 0; *at < count; (*at)++) {
        if (stopped(outputs, count)) {
            return OUTPUT_STOPPED; /* the files may be empty then */
        }
        if (!set_seal(outputs[*at].name, outputs[*at].kind)) {
            return OUTPUT_CANNOT_WRITE;
        }
        if (!outputs[*at].forced && !is_as_it_was(&outputs[*at])) {
            return OUTPUT_CHANGED;
        }
        const enum output_result kept = count > 1 ? keep(&outputs[*at]) : OUTPUT_OK;
        if (kept != OUTPUT_OK) {
            return kept;
        }
    }
    *at = 0;
    if (stopped(outputs, count)) {
        return OUTPUT_STOPPED;
    }
    for (; *at < count; (*at)++) {
        if (!put_in_place(&outputs[*at])) {
            const int error = errno;
            go_back(outputs, *at);
            errno = error;
            return error == EEXIST ? OUTPUT_STANDS : OUTPUT_CANNOT_WRITE;
        }
    }
    forget(outputs, count, false);
    return OUTPUT_OK;
}

void outputs_drop(struct output *outputs, size_t count) {
    const int error = errno;
    forget(outputs, count, true);
    errno = error;
}
