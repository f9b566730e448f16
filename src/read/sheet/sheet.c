/* SPDX-License-Identifier: MIT */
#include "read/sheet/sheet.h"

#include "base/text.h"
#include "read/sheet/sheet_parts.h"

#include <stdlib.h>
#include <string.h>
#include <strings.h>
#include <unistd.h>

#define MOST_NAMES 12 /* that a message lists */

const char *sheet_named(const char *path) {
    for (const char *colon = strchr(path, ':'); colon != NULL; colon = strchr(colon + 1, ':')) {
        const size_t size = (size_t)(colon - path);
        if (colon[1] != '\0' && strchr(colon, '/') == NULL &&
            ((size > 5 && (strncasecmp(colon - 5, ".xlsx", 5) == 0 ||
                           strncasecmp(colon - 5, ".xlsm", 5) == 0)) ||
             (size > 4 && strncasecmp(colon - 4, ".ods", 4) == 0))) {
            return colon + 1;
        }
    }
    return NULL;
}

/* A zip archive, and the older binary form, which is also what locks a workbook. */
static bool is_zip(const char *bytes, size_t size) {
    return size >= 4 && memcmp(bytes, "PK\3\4", 4) == 0;
}

static bool is_binary(const char *bytes, size_t size) {
    return size >= 4 && memcmp(bytes, "\xD0\xCF\x11\xE0", 4) == 0;
}

bool sheet_is(const char *bytes, size_t size) {
    return is_zip(bytes, size) || is_binary(bytes, size);
}

bool gather(struct gathered *gathered, const char *text, size_t size) {
    bool failed = false;
    if (gathered->size > SHEET_LONGEST_LINE) {
        return true;
    }
    gathered->text =
        array_grow(gathered->text, &gathered->room, gathered->size + size + 1, 1, &failed);
    if (failed) {
        return false;
    }
    memcpy(gathered->text + gathered->size, text, size);
    gathered->size += size;
    gathered->text[gathered->size] = '\0';
    return true;
}

bool sheet_take(struct sheet_reading *reading, const char *name, bool hidden) {
    struct problems *const problems = reading->problems;
    if (++reading->name_count <= MOST_NAMES) {
        reading->names =
            pool_words(&problems->pool, "%s%s'%s'", text_or_empty(reading->names),
                       reading->names == NULL ? "" : ", ", problem_quote(problems, name));
    }
    if (reading->found || (reading->named == NULL ? hidden : !text_same(reading->named, name))) {
        return false;
    }
    reading->found = true;
    reading->grid.file =
        problems_file(problems, pool_words(&problems->pool, "%s:%s", reading->path, name));
    problems_cells(problems, reading->grid.file);
    return true;
}

static void report(struct problems *problems, uint16_t file, const char *id, const char *text) {
    problem_add(problems, SEVERITY_ERROR, id, (struct place){.file = file}, "%s", text);
}

/* What is wrong with the workbook as a whole. */
static void report_fault(struct sheet_reading *reading) {
    struct problems *const problems = reading->problems;
    const uint16_t file =
        reading->found ? reading->grid.file : problems_file(problems, reading->path);

    if (reading->archive.fault == ARCHIVE_LOCKED) {
        report(problems, file, "workbook-locked",
               "the workbook is locked with a password; save it without one");
    } else if (reading->archive.fault == ARCHIVE_LARGE || reading->grid.large != NULL) {
        problem_add(problems, SEVERITY_ERROR, "workbook-too-large", (struct place){.file = file},
                    "the workbook has more than a list: %s; take away what is not the list, or "
                    "save that as CSV",
                    reading->grid.large != NULL ? reading->grid.large : "over 48 MB unpacked");
    } else if (reading->archive.fault == ARCHIVE_DAMAGED && reading->archive.part == NULL) {
        report(problems, file, "workbook-damaged",
               "the file is no whole workbook; open it in a spreadsheet and save it as .xlsx, .ods "
               "or CSV");
    } else if (reading->archive.fault == ARCHIVE_DAMAGED || reading->found) {
        problem_add(problems, SEVERITY_ERROR, "workbook-damaged", (struct place){.file = file},
                    "the workbook is damaged in its part '%s'; open it in a spreadsheet and save "
                    "it again",
                    problem_quote(problems, text_or_empty(reading->archive.part)));
    } else if (reading->named == NULL) {
        report(problems, file, "no-sheet", "the workbook has no sheet that is shown; name one");
    } else {
        problem_add(problems, SEVERITY_ERROR, "no-sheet", (struct place){.file = file},
                    "the workbook has no sheet '%s'; it has %s%s",
                    problem_quote(problems, reading->named), text_or_empty(reading->names),
                    reading->name_count > MOST_NAMES ? " and more" : "");
    }
}

/* Hands over the lines. */
static void take_lines(struct sheet *sheet, struct cell_grid *grid) {
    struct problems *const problems = grid->problems;
    sheet->lines = pool_copy(&problems->pool, grid->lines, grid->count * sizeof *grid->lines);
    sheet->bad = pool_take(&problems->pool, grid->count, sizeof *sheet->bad);
    if (sheet->lines == NULL || sheet->bad == NULL) {
        problems->failed = true;
        return;
    }
    for (size_t i = 0; i < grid->bad_count; i++) {
        sheet->bad[grid->bad[i]] = grid->bad[i] < grid->count;
    }
    sheet->count = grid->count;
    sheet->file = grid->file;
    sheet->open = true;
    problems_lines(problems, sheet->file, sheet->lines, sheet->count);
}

/* Whether the file of the older binary form holds a locked workbook of the newer: so its directory
 * names it, in letters of two bytes ([MS-CFB] 2.2 has where the directory begins, [MS-OFFCRYPTO]
 * 1.3.2 the name). */
static bool is_locked(int handle) {
    static const char name[] = "E\0n\0c\0r\0y\0p\0t\0e\0d\0P\0a\0c\0k\0a\0g\0e";
    unsigned char head[52];
    char directory[4096];
    if (pread(handle, head, sizeof head, 0) != (ssize_t)sizeof head || head[30] > 20) {
        return false;
    }
    const off_t sector =
        (off_t)head[48] | (off_t)head[49] << 8 | (off_t)head[50] << 16 | (off_t)head[51] << 24;
    const ssize_t got =
        pread(handle, directory, sizeof directory, (sector + 1) * ((off_t)1 << head[30]));
    for (size_t at = 0; got > 0 && at + sizeof name - 1 <= (size_t)got; at += 2) {
        if (memcmp(directory + at, name, sizeof name - 1) == 0) {
            return true;
        }
    }
    return false;
}

static void report_form(int handle, const char *start, size_t size, const char *path,
                        struct problems *problems) {
    const uint16_t file = problems_file(problems, path);
    if (!is_binary(start, size)) {
        report(problems, file, "workbook-damaged",
               "the file is no workbook, whatever its name says; save it as .xlsx or .ods, or name "
               "it .csv where it is a text");
    } else if (is_locked(handle)) {
        report(problems, file, "workbook-locked",
               "the workbook is locked with a password; save it without one");
    } else {
        report(problems, file, "workbook-older",
               "the workbook is of an older form, which is not read; save it as .xlsx, .ods or "
               "CSV");
    }
}

bool sheet_read(struct sheet *sheet, int handle, const char *path, const char *named,
                struct problems *problems) {
    struct sheet_reading reading = {
        .grid = {.problems = problems}, .problems = problems, .path = path, .named = named};
    char start[4];
    const ssize_t got = pread(handle, start, sizeof start, 0);

    *sheet = (struct sheet){0};
    if (!is_zip(start, got < 0 ? 0 : (size_t)got)) {
        report_form(handle, start, got < 0 ? 0 : (size_t)got, path, problems);
        return !problems->failed;
    }
    if (lseek(handle, 0, SEEK_END) > SHEET_LARGEST_FILE) {
        report(problems, problems_file(problems, path), "workbook-too-large",
               "the workbook is over 16 MB; take its pictures away, or save the list as CSV");
        return !problems->failed;
    }
    bool good = lseek(handle, 0, SEEK_SET) == 0 && archive_open(&reading.archive, handle);
    if (good) {
        const char *const workbook = xlsx_workbook(&reading);
        good = workbook != NULL ? xlsx_read(&reading, workbook)
                                : reading.archive.fault == ARCHIVE_GOOD && ods_read(&reading);
    }
    if (good) {
        take_lines(sheet, &reading.grid);
    } else if (reading.archive.fault == ARCHIVE_MEMORY || reading.grid.failed) {
        problems->failed = true;
    } else {
        report_fault(&reading);
    }
    archive_close(&reading.archive);
    cell_grid_clear(&reading.grid);
    free(reading.cell.text);
    return !problems->failed && !pool_failed(&problems->pool);
}
