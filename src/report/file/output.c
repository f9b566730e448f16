/* SPDX-License-Identifier: MIT */
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

/* In a PDF or SVG the seal is a comment line of its own between these. */
static const struct {
    const char *before, *after;
} comments[] = {[OUTPUT_PDF] = {"% ", "\n"}, [OUTPUT_SVG] = {"<!-- ", " -->\n"}};

/* --- seals --- */

/* FNV-1a over the first `size` bytes of file; not against malice, only to see that somebody saved
 * the file. */
static bool sum_bytes(FILE *file, long size, uint64_t *sum) {
    uint64_t hash = 14695981039346656037u;
    rewind(file);
    for (long i = 0; i < size; i++) {
        const int byte = getc(file);
        if (byte == EOF) {
            return false;
        }
        hash = (hash ^ (uint64_t)byte) * 1099511628211u;
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

static bool set_seal(const char *name, enum output_kind kind) {
    FILE *const file = fopen(name, "r+b");
    if (file == NULL) {
        return false;
    }
    const long size = size_of(file);
    const bool done = (kind == OUTPUT_WORKBOOK ? write_zip_seal(file, size)
                                               : write_line_seal(file, size, kind)) &&
                      fflush(file) == 0 && fsync(fileno(file)) == 0;
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

bool output_is_ours(const char *path, enum output_kind kind) {
    struct stat about;
    FILE *const file = fopen(path, "rb");
    if (file == NULL) {
        return errno == ENOENT;
    }
    const bool plain = fstat(fileno(file), &about) == 0 && S_ISREG(about.st_mode);
    const bool ours = plain && (about.st_size == 0 || seal_is_whole(file, kind));
    (void)fclose(file);
    return ours;
}

/* --- beginning --- */

/* An empty file beside path; *name: its name, to be freed. */
static enum output_result make_beside(const char *path, char **name) {
    static const char ending[] = ".XXXXXX";
    const size_t size = strlen(path) + sizeof ending;
    *name = malloc(size);
    if (*name == NULL) {
        return OUTPUT_MEMORY;
    }
    (void)snprintf(*name, size, "%s%s", path, ending);
    const int file = mkstemp(*name);
    if (file < 0) {
        free(*name);
        *name = NULL;
        return OUTPUT_CANNOT_WRITE;
    }
    /* As a file of this user would be: mkstemp made it for the owner alone. */
    const mode_t mask = umask(0);
    (void)umask(mask);
    (void)fchmod(file, 0666 & ~mask);
    return close(file) == 0 ? OUTPUT_OK : OUTPUT_CANNOT_WRITE;
}

static bool is_folder(const char *path) {
    struct stat about;
    return stat(path, &about) == 0 && S_ISDIR(about.st_mode);
}

enum output_result outputs_begin(struct output *outputs, size_t count, bool force, size_t *at) {
    for (*at = 0; *at < count; (*at)++) {
        if (is_folder(outputs[*at].path)) {
            errno = EISDIR;
            return OUTPUT_CANNOT_WRITE;
        }
        if (!force && !output_is_ours(outputs[*at].path, outputs[*at].kind)) {
            return OUTPUT_NOT_OURS;
        }
    }
    for (*at = 0; *at < count; (*at)++) {
        const enum output_result made = make_beside(outputs[*at].path, &outputs[*at].name);
        if (made != OUTPUT_OK) {
            return made;
        }
    }
    return OUTPUT_OK;
}

/* --- finishing --- */

/* A second name for what stands at the path, to go back to; where there is nothing, or the disk
 * knows no second names, there is none. false: memory is out. */
static bool keep(struct output *output) {
    static const char ending[] = ".old";
    const size_t size = strlen(output->name) + sizeof ending;
    output->kept = malloc(size);
    if (output->kept == NULL) {
        return false;
    }
    (void)snprintf(output->kept, size, "%s%s", output->name, ending);
    if (link(output->path, output->kept) != 0) {
        free(output->kept);
        output->kept = NULL;
    }
    return true;
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
}

enum output_result outputs_finish(struct output *outputs, size_t count, size_t *at) {
    for (*at = 0; *at < count; (*at)++) {
        if (!set_seal(outputs[*at].name, outputs[*at].kind)) {
            return OUTPUT_CANNOT_WRITE;
        }
        if (count > 1 && !keep(&outputs[*at])) {
            return OUTPUT_MEMORY;
        }
    }
    for (*at = 0; *at < count; (*at)++) {
        if (rename(outputs[*at].name, outputs[*at].path) != 0) {
            const int error = errno;
            go_back(outputs, *at);
            errno = error;
            return OUTPUT_CANNOT_WRITE;
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
