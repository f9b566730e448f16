/* SPDX-License-Identifier: MIT */
#include "read/file/source.h"

#include "base/text.h"
#include "read/sheet/sheet.h"

#include <errno.h>
#include <fcntl.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

/* A door list of a hundred thousand rows has some ten megabytes. */
#define LARGEST_FILE ((off_t)64 * 1024 * 1024)

/* What is said of a file that cannot be read at all. */
static void report_file(struct problems *problems, struct place asked, uint16_t file,
                        const char *id, const char *path, const char *what) {
    struct place place = asked;

    if (place.file == 0) {
        place = (struct place){.file = file};
    }
    problem_add(problems, SEVERITY_ERROR, id, place, "'%s' %s", problem_quote(problems, path),
                what);
}

static void report_open(struct problems *problems, struct place asked, uint16_t file,
                        const char *path, int error) {
    if (error == ENOENT || error == ENOTDIR) {
        report_file(
            problems, asked, file, "file-missing", path,
            strchr(path, '\\') != NULL ? "does not exist; write '/' between folders, not '\\'"
            : asked.file == 0          ? "does not exist; check the name and the folder"
                              : "does not exist; check the name, which is looked for from the "
                                "folder of this file");
    } else {
        report_file(problems, asked, file, "file-unreadable", path,
                    error == EACCES ? "may not be read; change its permissions"
                                    : "cannot be read; try to open it in an editor");
    }
}

/* All bytes of an open regular file into room of size bytes; the count read, -1: it failed. */
static ssize_t read_all(int handle, char *room, size_t size) {
    size_t got = 0;

    while (got < size) {
        ssize_t part = read(handle, room + got, size - got);

        if (part < 0 && errno == EINTR) {
            continue;
        }
        if (part < 0) {
            return -1;
        }
        if (part == 0) {
            break;
        }
        got += (size_t)part;
    }
    return (ssize_t)got;
}

/* Opens a plain file that is not too large; -1: it was reported. The caller closes it. */
static int open_file(const char *path, struct place asked, uint16_t file, struct problems *problems,
                     off_t *size) {
    struct stat about;
    const int handle = open(path, O_RDONLY | O_CLOEXEC | O_NONBLOCK);

    if (handle < 0 || fstat(handle, &about) != 0) {
        report_open(problems, asked, file, path, errno);
    } else if (S_ISDIR(about.st_mode)) {
        report_file(problems, asked, file, "file-is-folder", path, "is a folder; expected a file");
    } else if (!S_ISREG(about.st_mode)) {
        report_file(problems, asked, file, "file-unreadable", path,
                    "is no plain file; save it as one");
    } else if (about.st_size > LARGEST_FILE) {
        report_file(problems, asked, file, "file-too-large", path,
                    "is over 64 MB; expected a text file that a person wrote");
    } else {
        *size = about.st_size;
        return handle;
    }
    if (handle >= 0) {
        (void)close(handle);
    }
    return -1;
}

/* The bytes of the file, terminated; NULL when it was reported or memory is out. */
static char *load(const char *path, struct place asked, uint16_t file, struct problems *problems,
                  size_t *size) {
    off_t length = 0;
    const int handle = open_file(path, asked, file, problems, &length);
    char *bytes = NULL;
    ssize_t got;

    if (handle < 0) {
        return NULL;
    }
    bytes = pool_take(&problems->pool, (size_t)length + 1, 1);
    if (bytes == NULL) {
        problems->failed = true;
        goto done;
    }
    got = read_all(handle, bytes, (size_t)length);
    if (got < 0) {
        report_open(problems, asked, file, path, errno);
        bytes = NULL;
        goto done;
    }
    *size = (size_t)got;
done:
    (void)close(handle);
    return bytes;
}

/* Two bytes a character: a byte order mark, or a NUL beside every letter. */
static bool is_utf16(const char *bytes, size_t size) {
    if (size >= 2 && (memcmp(bytes, "\xFF\xFE", 2) == 0 || memcmp(bytes, "\xFE\xFF", 2) == 0)) {
        return true;
    }
    return size >= 4 && ((bytes[0] != '\0' && bytes[1] == '\0' && bytes[2] != '\0' && !bytes[3]) ||
                         (bytes[0] == '\0' && bytes[1] != '\0' && bytes[2] == '\0' && bytes[3]));
}

static size_t line_end(const char *bytes, size_t size, size_t from) {
    while (from < size && bytes[from] != '\n' && bytes[from] != '\r') {
        from++;
    }
    return from;
}

static size_t next_line(const char *bytes, size_t size, size_t end) {
    if (end + 1 < size && bytes[end] == '\r' && bytes[end + 1] == '\n') {
        return end + 2;
    }
    return end + 1;
}

static size_t count_lines(const char *bytes, size_t size) {
    size_t count = 0;

    for (size_t at = 0; at < size; at = next_line(bytes, size, line_end(bytes, size, at))) {
        count++;
    }
    return count;
}

static struct place mark_byte(struct place line, size_t at) {
    line.column = (uint16_t)(at < UINT16_MAX - 1 ? at + 1 : 0);
    line.width = line.column > 0 ? 1 : 0;
    return line;
}

/* U+FFFE and U+FFFF, which no XML document may hold and so no workbook. */
static bool is_noncharacter(const char *at, size_t size) {
    return size >= 3 && (memcmp(at, "\xEF\xBF\xBE", 3) == 0 || memcmp(at, "\xEF\xBF\xBF", 3) == 0);
}

/* The first byte that no text has: a control character other than a tab; size: none. */
static size_t find_control(const char *line, size_t size) {
    size_t at = 0;

    while (at < size && ((unsigned char)line[at] >= 0x20 || line[at] == '\t') && line[at] != 0x7F &&
           !is_noncharacter(line + at, size - at)) {
        at++;
    }
    return at;
}

/* One line: what is wrong with its bytes. true: nothing. */
static bool check_line(const char *line, size_t size, struct place place,
                       struct problems *problems) {
    size_t bad = 0;

    if (memchr(line, '\0', size) != NULL) {
        problem_add(problems, SEVERITY_ERROR, "nul-byte", place,
                    "the line has a NUL byte; the file is damaged or is no text file");
        return false;
    }
    if (!text_is_utf8(line, size, &bad)) {
        problem_add(problems, SEVERITY_ERROR, "not-utf-8", mark_byte(place, bad),
                    "the line has a byte that is not UTF-8; save the file with the encoding UTF-8");
        return false;
    }
    bad = find_control(line, size);
    if (bad < size) {
        problem_add(problems, SEVERITY_ERROR, "control-byte", mark_byte(place, bad),
                    "the line has a control character; take it out, or type the line anew");
        return false;
    }
    return true;
}

static void split(struct source *source, char *bytes, size_t size, struct problems *problems) {
    size_t count = count_lines(bytes, size);
    const char **lines = pool_take(&problems->pool, count, sizeof(*lines));
    bool *bad = pool_take(&problems->pool, count, sizeof(*bad));
    size_t line = 0;

    if (lines == NULL || bad == NULL) {
        problems->failed = true;
        return;
    }
    for (size_t at = 0; at < size; line++) {
        size_t end = line_end(bytes, size, at);
        struct place place = {.file = source->file, .line = (uint32_t)(line + 1)};
        size_t next = next_line(bytes, size, end);

        bad[line] = !check_line(bytes + at, end - at, place, problems);
        bytes[end] = '\0';
        lines[line] = bytes + at;
        at = next;
    }
    source->lines = lines;
    source->bad = bad;
    source->count = count;
    problems_lines(problems, source->file, lines, count);
}

bool source_read(struct source *source, const char *path, struct place asked,
                 struct problems *problems) {
    char *bytes;
    size_t size = 0;

    *source = (struct source){.file = problems_file(problems, path)};
    bytes = load(path, asked, source->file, problems, &size);
    if (bytes == NULL) {
        return !problems->failed;
    }
    if (sheet_is(bytes, size)) {
        problem_add(problems, SEVERITY_ERROR, "workbook-file", (struct place){.file = source->file},
                    "the file is a workbook, not text; only a list may stand in one: give the text "
                    "file, or save the sheet as CSV (UTF-8)");
        return !problems->failed;
    }
    if (is_utf16(bytes, size)) {
        problem_add(problems, SEVERITY_ERROR, "utf-16", (struct place){.file = source->file},
                    "the file is saved as UTF-16; save it with the encoding UTF-8 (as a "
                    "spreadsheet: 'CSV UTF-8')");
        return !problems->failed;
    }
    if (size >= 3 && memcmp(bytes, "\xEF\xBB\xBF", 3) == 0) {
        bytes += 3;
        size -= 3;
    }
    source->open = true;
    split(source, bytes, size, problems);
    return !problems->failed;
}

bool source_text(struct source *source, const char *name, const char *text,
                 struct problems *problems) {
    const size_t size = strlen(text);
    char *const bytes = pool_text(&problems->pool, text, size);

    *source = (struct source){.file = problems_file(problems, name), .open = bytes != NULL};
    if (bytes == NULL) {
        problems->failed = true;
        return false;
    }
    split(source, bytes, size, problems);
    return !problems->failed;
}

/* --- lists in workbooks --- */

/* The first bytes of a file, up to size; below 0: it cannot be read, or is no plain file. */
static ssize_t first_bytes(const char *path, char *bytes, size_t size) {
    struct stat about;
    ssize_t got = -1;
    const int handle = open(path, O_RDONLY | O_CLOEXEC | O_NONBLOCK);

    if (handle < 0) {
        return -1;
    }
    if (fstat(handle, &about) == 0 && S_ISREG(about.st_mode)) {
        got = read_all(handle, bytes, size);
    }
    (void)close(handle);
    return got;
}

/* Whether the file's first bytes are a workbook's. */
static bool begins_as_workbook(const char *path) {
    char start[4] = "";
    const ssize_t got = first_bytes(path, start, sizeof start);
    return got > 0 && sheet_is(start, (size_t)got);
}

static bool has_ending(const char *path, const char *ending) {
    const size_t size = strlen(path);
    return size > strlen(ending) && text_same(path + size - strlen(ending), ending);
}

static bool is_named_workbook(const char *path) {
    return has_ending(path, ".xlsx") || has_ending(path, ".xlsm") || has_ending(path, ".ods");
}

const char *source_list_file(struct pool *pool, const char *path) {
    const char *const sheet = sheet_named(path);
    return sheet == NULL ? path : pool_text(pool, path, (size_t)(sheet - path) - 1);
}

static bool read_sheet(struct source *source, const char *path, const char *named,
                       struct place asked, struct problems *problems) {
    struct sheet sheet;
    off_t size;
    const int handle = open_file(path, asked, asked.file == 0 ? problems_file(problems, path) : 0,
                                 problems, &size);

    if (handle < 0) {
        return !problems->failed;
    }
    const bool held = sheet_read(&sheet, handle, path, named, problems);
    (void)close(handle);
    if (!held) {
        return false;
    }
    *source = (struct source){.lines = sheet.lines,
                              .bad = sheet.bad,
                              .count = sheet.count,
                              .file = sheet.file,
                              .open = sheet.open,
                              .cells = true};
    for (size_t i = 0; i < source->count; i++) {
        const char *const line = source->lines[i];
        const struct place place = {.file = source->file, .line = (uint32_t)(i + 1)};

        source->bad[i] = !check_line(line, strlen(line), place, problems) || source->bad[i];
    }
    return !problems->failed;
}

bool source_read_list(struct source *source, const char *path, struct place asked,
                      struct problems *problems) {
    const char *const file = source_list_file(&problems->pool, path);

    *source = (struct source){0};
    if (file == NULL) {
        problems->failed = true;
        return false;
    }
    if (is_named_workbook(file) || begins_as_workbook(file)) {
        return read_sheet(source, file, sheet_named(path), asked, problems);
    }
    return source_read(source, path, asked, problems);
}

bool source_begins(const char *path, char first) {
    char start[512] = {0};
    const ssize_t got = first_bytes(path, start, sizeof(start) - 1);

    if (got < 0) {
        return false;
    }
    start[got] = '\0';
    const char *const text = start + (memcmp(start, "\xEF\xBB\xBF", 3) == 0 ? 3 : 0);
    return text[strspn(text, " \t\r\n")] == first;
}

bool source_line_good(const char *text) {
    const size_t size = strlen(text);
    return text_is_utf8(text, size, NULL) && find_control(text, size) == size;
}

char *source_beside(struct pool *pool, const char *path, const char *name) {
    const char *slash = strrchr(path, '/');

    if (name[0] == '/' || slash == NULL) {
        return pool_text(pool, name, strlen(name));
    }
    return pool_format(pool, "%.*s/%s", (int)(slash - path), path, name);
}
