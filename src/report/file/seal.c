/* SPDX-License-Identifier: MIT */
#include "report/file/seal.h"

#include <inttypes.h>
#include <stdint.h>
#include <string.h>
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

bool seal_has(enum output_kind kind) {
    return kind != OUTPUT_CSV && kind != OUTPUT_TEXT;
}

bool seal_set(const char *name, enum output_kind kind) {
    FILE *const file = fopen(name, "r+b");
    if (file == NULL) {
        return false;
    }
    const long size = size_of(file);
    const bool sealed =
        !seal_has(kind) ||
        (kind == OUTPUT_WORKBOOK ? write_zip_seal(file, size) : write_line_seal(file, size, kind));
    const bool done = sealed && fflush(file) == 0 && fsync(fileno(file)) == 0;
    return fclose(file) == 0 && done;
}

bool seal_is_whole(FILE *file, enum output_kind kind) {
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
