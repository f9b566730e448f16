/* SPDX-License-Identifier: MIT */
#include "report/output.h"

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

enum output_result output_begin(const char *path, char **name) {
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

/* FNV-1a over the first `size` bytes of file; not against malice, only to see that somebody saved
 * the workbook. */
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

/* Appends the seal as the archive's comment. */
static bool set_seal(const char *name) {
    FILE *const file = fopen(name, "r+b");
    if (file == NULL) {
        return false;
    }
    const long size = size_of(file);
    uint64_t sum = 0;
    bool done = size >= END_RECORD && sum_bytes(file, size - 2, &sum) &&
                fseek(file, size - 2, SEEK_SET) == 0;
    if (done) {
        done = putc(SEAL_SIZE, file) != EOF && putc(0, file) != EOF &&
               fprintf(file, "doorcost %016" PRIx64, sum) == SEAL_SIZE && fflush(file) == 0 &&
               fsync(fileno(file)) == 0;
    }
    return fclose(file) == 0 && done;
}

enum output_result output_finish(const char *name, const char *path) {
    if (!set_seal(name) || rename(name, path) != 0) {
        return OUTPUT_CANNOT_WRITE;
    }
    return OUTPUT_OK;
}

void output_drop(const char *name) {
    (void)unlink(name);
}

bool output_is_ours(const char *path) {
    FILE *const file = fopen(path, "rb");
    if (file == NULL) {
        return errno == ENOENT;
    }
    const long size = size_of(file);
    char seal[SEAL_SIZE + 1] = "";
    char wanted[SEAL_SIZE + 1];
    uint64_t sum = 0;
    bool ours = size == 0;
    if (size > END_RECORD + SEAL_SIZE && fseek(file, size - SEAL_SIZE, SEEK_SET) == 0 &&
        fread(seal, 1, SEAL_SIZE, file) == SEAL_SIZE &&
        sum_bytes(file, size - SEAL_SIZE - 2, &sum)) {
        (void)snprintf(wanted, sizeof wanted, "doorcost %016" PRIx64, sum);
        ours = memcmp(seal, wanted, SEAL_SIZE) == 0;
    }
    (void)fclose(file);
    return ours;
}
