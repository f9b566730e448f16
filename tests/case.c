/* SPDX-License-Identifier: MIT */
#include "case.h"

#include <dirent.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

char *case_load(const char *path, size_t *size) {
    FILE *in = fopen(path, "rb");
    char *bytes = NULL;
    long length;

    if (in == NULL) {
        return NULL;
    }
    if (fseek(in, 0, SEEK_END) == 0 && (length = ftell(in)) >= 0 && fseek(in, 0, SEEK_SET) == 0) {
        bytes = calloc((size_t)length + 1, 1);
        if (bytes != NULL && fread(bytes, 1, (size_t)length, in) != (size_t)length) {
            free(bytes);
            bytes = NULL;
        }
        if (size != NULL) {
            *size = (size_t)length;
        }
    }
    (void)fclose(in);
    return bytes;
}

bool case_save(const char *path, const char *bytes, size_t size) {
    FILE *out = fopen(path, "wb");
    bool good = out != NULL && fwrite(bytes, 1, size, out) == size;

    if (out != NULL && fclose(out) != 0) {
        good = false;
    }
    return good;
}

char *case_path(const char *folder, const char *name) {
    size_t size = strlen(folder) + strlen(name) + 2;
    char *path = malloc(size);

    if (path == NULL) {
        abort();
    }
    (void)snprintf(path, size, "%s/%s", folder, name);
    return path;
}

static int compare(const void *left, const void *right) {
    return strcmp(*(char *const *)left, *(char *const *)right);
}

char **case_names(const char *folder, size_t *count) {
    DIR *directory = opendir(folder);
    const struct dirent *entry;
    char **names = calloc(1000, sizeof(char *));

    *count = 0;
    if (names == NULL) {
        abort();
    }
    while (directory != NULL && (entry = readdir(directory)) != NULL && *count < 1000) {
        if (entry->d_name[0] != '.') {
            names[(*count)++] = strdup(entry->d_name);
        }
    }
    if (directory != NULL) {
        (void)closedir(directory);
    }
    qsort(names, *count, sizeof(char *), compare);
    return names;
}

static bool copy_all(const char *from, const char *into) {
    size_t count;
    char **names = case_names(from, &count);
    bool good = true;

    for (size_t i = 0; i < count; i++) {
        char *source = case_path(from, names[i]);
        char *target = case_path(into, names[i]);
        size_t size;
        char *bytes = case_load(source, &size);

        good = good && bytes != NULL && case_save(target, bytes, size);
        free(bytes);
        free(source);
        free(target);
        free(names[i]);
    }
    free(names);
    return good;
}

/* A file that is being edited. */
struct edited {
    char path[512];
    char *bytes;
    size_t size;
    size_t at; /* where the next line goes */
};

static bool open_file(struct edited *file, const char *folder, const char *name) {
    (void)snprintf(file->path, sizeof(file->path), "%s/%s", folder, name);
    file->bytes = case_load(file->path, &file->size);
    file->at = file->size;
    return file->bytes != NULL;
}

static bool close_file(struct edited *file) {
    bool good = file->bytes == NULL || case_save(file->path, file->bytes, file->size);

    free(file->bytes);
    file->bytes = NULL;
    return good;
}

/* Where the line stands that is text; SIZE_MAX: nowhere, or more than once. */
static size_t find_line(const struct edited *file, const char *text) {
    size_t found = SIZE_MAX;
    size_t length = strlen(text);

    for (size_t at = 0; at < file->size;) {
        const char *end = memchr(file->bytes + at, '\n', file->size - at);
        size_t size = end == NULL ? file->size - at : (size_t)(end - file->bytes) - at;

        if (size == length && memcmp(file->bytes + at, text, length) == 0) {
            if (found != SIZE_MAX) {
                return SIZE_MAX;
            }
            found = at;
        }
        at += size + 1;
    }
    return found;
}

static bool take_line(struct edited *file, const char *text) {
    size_t at = find_line(file, text);
    size_t size = strlen(text) + 1;

    if (at == SIZE_MAX || at + size > file->size) {
        fprintf(stderr, "%s: not there once: %s\n", file->path, text);
        return false;
    }
    memmove(file->bytes + at, file->bytes + at + size, file->size - at - size);
    file->size -= size;
    file->at = at;
    return true;
}

/* Replaces \xHH by the byte; gives the size. */
static size_t unescape(char *text) {
    char *to = text;

    for (const char *from = text; *from != '\0';) {
        if (strncmp(from, "\\x", 2) == 0 && strlen(from) >= 4) {
            char digits[3] = {from[2], from[3], '\0'};

            *to++ = (char)strtol(digits, NULL, 16);
            from += 4;
        } else {
            *to++ = *from++;
        }
    }
    return (size_t)(to - text);
}

static bool put_line(struct edited *file, const char *line, size_t size, size_t times) {
    const size_t put = times * (size + 1);
    char *bytes = malloc(file->size + put + 1);

    if (bytes == NULL || file->bytes == NULL) {
        free(bytes);
        return false;
    }
    memcpy(bytes, file->bytes, file->at);
    for (size_t i = 0; i < times; i++) {
        memcpy(bytes + file->at + i * (size + 1), line, size);
        bytes[file->at + i * (size + 1) + size] = '\n';
    }
    memcpy(bytes + file->at + put, file->bytes + file->at, file->size - file->at);
    free(file->bytes);
    file->bytes = bytes;
    file->size += put;
    file->at += put;
    return true;
}

/* One line of `edit`. last, last_size: the line that was put last. */
static bool apply(struct edited *file, const char *folder, char *line, const char **last,
                  size_t *last_size) {
    bool good = true;

    if (file->bytes == NULL && strchr("-+x", line[0]) != NULL) {
        fprintf(stderr, "%s: no file is named before: %s\n", folder, line);
        return false;
    }
    if (line[0] == '-') {
        return take_line(file, line + 1);
    }
    if (line[0] == '+') {
        *last = line + 1;
        *last_size = unescape(line + 1);
        return put_line(file, *last, *last_size, 1);
    }
    if (strncmp(line, "x ", 2) == 0) {
        return put_line(file, *last, *last_size, strtoul(line + 2, NULL, 10));
    }
    if (line[0] == '!') {
        char *path = case_path(folder, line + 1);

        good = remove(path) == 0;
        free(path);
        return good;
    }
    return close_file(file) && open_file(file, folder, line);
}

static bool edit(const char *path, const char *folder) {
    char *script = case_load(path, NULL);
    struct edited file = {.bytes = NULL};
    const char *last = "";
    size_t last_size = 0;
    bool good = true;

    for (char *line = script; line != NULL && *line != '\0' && good;) {
        char *end = strchr(line, '\n');

        if (end != NULL) {
            *end = '\0';
        }
        good = *line == '\0' || apply(&file, folder, line, &last, &last_size);
        line = end == NULL ? NULL : end + 1;
    }
    good = close_file(&file) && good;
    free(script);
    return good;
}

bool case_prepare(const char *base, const char *spoiled, const char *into) {
    bool good;
    char *script;

    (void)mkdir(into, 0777);
    good = copy_all(base, into) && (spoiled == NULL || copy_all(spoiled, into));
    if (spoiled != NULL && good) {
        script = case_path(spoiled, "edit");
        good = edit(script, into);
        free(script);
    }
    if (!good) {
        fprintf(stderr, "%s: the case cannot be prepared\n", spoiled == NULL ? base : spoiled);
    }
    return good;
}
