/* SPDX-License-Identifier: MIT */
#define _GNU_SOURCE /* memfd_create. NOLINT(bugprone-reserved-identifier,cert-*) */
#include "read/file/ini.h"

#include "read/file/ini_scan.h"
#include "read/file/source.h"

#include <iniparser.h>
#include <stdio.h>
#include <string.h>
#include <sys/mman.h>
#include <unistd.h>

/* How a section is named in the copy: what is between its brackets. */
static void put_head(FILE *out, const struct ini_section *section) {
    fprintf(out, "%s%s%s", section->kind, section->name[0] == '\0' ? "" : " ", section->name);
}

/* The copy that iniparser reads: heads and keys that the scan found good, nothing else. */
static bool write_copy(int handle, const struct ini_scan *scan) {
    int own = dup(handle);
    FILE *out = own < 0 ? NULL : fdopen(own, "w");
    bool good;

    if (out == NULL) {
        if (own >= 0) {
            (void)close(own);
        }
        return false;
    }
    for (size_t i = 0; i < scan->count; i++) {
        const struct ini_section *section = &scan->sections[i];

        fputc('[', out);
        put_head(out, section);
        fputs("]\n", out);
        for (size_t k = 0; k < section->count; k++) {
            if (section->keys[k].value != NULL) {
                fprintf(out, "%s = %s\n", section->keys[k].name, section->keys[k].value);
            }
        }
    }
    good = ferror(out) == 0;
    return fclose(out) == 0 && good;
}

/* NULL: memory (or the means to open it as a file) is out. */
static dictionary *load_copy(const struct ini_scan *scan) {
    dictionary *loaded = NULL;
    char path[32];
    int handle = memfd_create("values", MFD_CLOEXEC);

    if (handle < 0) {
        return NULL;
    }
    if (write_copy(handle, scan)) {
        (void)snprintf(path, sizeof(path), "/proc/self/fd/%d", handle);
        loaded = iniparser_load(path);
    }
    (void)close(handle);
    return loaded;
}

/* Replaces the raw value of a key by what iniparser made of it: quotes and outer blanks gone.
 * false: it has none. */
static bool set_value(struct ini_key *key, const char *value, struct pool *pool) {
    size_t size;

    while (*value == ' ' || *value == '\t') {
        value++;
    }
    size = strlen(value);
    while (size > 0 && (value[size - 1] == ' ' || value[size - 1] == '\t')) {
        size--;
    }
    if (size == 0) {
        return false;
    }
    if (key->value[0] == '"' || key->value[0] == '\'') {
        key->value_place.column++;
        key->value_place.width = (uint16_t)size;
    }
    key->value = pool_text(pool, value, size);
    return true;
}

/* Moves one section with its keys into the pool. */
static void keep_section(struct ini_section *to, const struct ini_section *from,
                         const dictionary *loaded, struct pool *pool) {
    *to = *from;
    to->count = 0;
    to->keys = pool_take(pool, from->count, sizeof(*to->keys));
    if (to->keys == NULL) {
        return;
    }
    for (size_t i = 0; i < from->count; i++) {
        struct ini_key key = from->keys[i];
        const char *path = pool_format(pool, "%s%s%s:%s", from->kind,
                                       from->name[0] == '\0' ? "" : " ", from->name, key.name);
        const char *value = path == NULL ? NULL : iniparser_getstring(loaded, path, NULL);

        /* the library drops a line where its memory is out */
        pool->failed = pool->failed || (key.value != NULL && value == NULL);
        if (key.value == NULL || (value != NULL && set_value(&key, value, pool))) {
            to->keys[to->count] = key;
            to->count++;
        }
    }
}

bool ini_read_lines(struct ini *ini, const struct source *source, struct problems *problems) {
    struct pool *pool = &problems->pool;
    struct ini_scan scan = {0};
    dictionary *loaded = NULL;

    *ini = (struct ini){.file = source->file, .open = source->open};
    if (source->count > INI_MOST_LINES) {
        problem_add(problems, SEVERITY_ERROR, "file-too-large", (struct place){.file = ini->file},
                    "the file has %zu lines; expected at most %d", source->count, INI_MOST_LINES);
        ini->open = false;
        return !problems->failed;
    }
    if (!ini_scan(&scan, source, problems)) {
        problems->failed = true;
        goto done;
    }
    loaded = load_copy(&scan);
    ini->sections = pool_take(pool, scan.count, sizeof(*ini->sections));
    if (loaded == NULL || ini->sections == NULL) {
        problems->failed = true;
        goto done;
    }
    ini->count = scan.count;
    ini->stray = scan.stray;
    for (size_t i = 0; i < scan.count; i++) {
        keep_section(&ini->sections[i], &scan.sections[i], loaded, pool);
    }
    problems->failed = problems->failed || pool_failed(pool);
done:
    iniparser_freedict(loaded);
    ini_scan_clear(&scan);
    return !problems->failed;
}

bool ini_read(struct ini *ini, const char *path, struct place asked, struct problems *problems) {
    struct source source;

    *ini = (struct ini){0};
    return source_read(&source, path, asked, problems) && ini_read_lines(ini, &source, problems);
}
