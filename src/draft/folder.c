/* SPDX-License-Identifier: MIT */
#include "draft/folder.h"

#include "base/array.h"
#include "base/text.h"
#include "read/file/source.h"
#include "read/job/job_keys.h"
#include "read/key/key.h"

#include <dirent.h>
#include <stdlib.h>
#include <string.h>

struct names {
    const char **list;
    size_t count;
};

const char *ini_given(const struct ini *ini, const char *section, const char *key) {
    const char *const value = text_before(ini, section, key);
    return value[0] == '\0' ? NULL : value;
}

static bool ends_in(const char *name, const char *const *endings, size_t count) {
    const char *const ending = strrchr(name, '.');
    for (size_t i = 0; name[0] != '.' && ending != NULL && i < count; i++) {
        if (text_same(ending, endings[i])) {
            return true;
        }
    }
    return false;
}

static int by_name(const void *left, const void *right) {
    return text_order(*(const char *const *)left, *(const char *const *)right);
}

/* The files of a folder with one of these endings, sorted; none where it cannot be read. */
static struct names find(const char *folder, const char *const *endings, size_t count,
                         struct pool *pool) {
    struct names names = {.list = pool_take(pool, FOLDER_MOST, sizeof(const char *))};
    DIR *const open = opendir(folder[0] == '\0' ? "." : folder);
    if (open == NULL) {
        return names;
    }
    for (const struct dirent *entry = readdir(open);
         entry != NULL && names.list != NULL && names.count < FOLDER_MOST; entry = readdir(open)) {
        if (ends_in(entry->d_name, endings, count)) {
            names.list[names.count++] = pool_text(pool, entry->d_name, strlen(entry->d_name));
        }
    }
    (void)closedir(open);
    if (names.list != NULL && !pool_failed(pool)) {
        qsort(names.list, names.count, sizeof *names.list, by_name);
    }
    return names;
}

static const char *const ini_endings[] = {".ini"};
static const char *const list_endings[] = {".csv", ".xlsx", ".xlsm", ".ods"};

static bool find_jobs(struct folder *folder, const char *at) {
    struct pool *const pool = &folder->problems.pool;
    const struct names names = find(at, ini_endings, 1, pool);
    folder->jobs = pool_take(pool, names.count, sizeof *folder->jobs);
    for (size_t i = 0; i < names.count && folder->jobs != NULL; i++) {
        struct folder_job *const job = &folder->jobs[folder->job_count];
        job->path = pool_words(pool, "%s%s", at, names.list[i]);
        if (!ini_read(&job->ini, job->path, (struct place){0}, &folder->problems)) {
            return false;
        }
        folder->job_count += section_find(&job->ini, "job") != NULL ? 1 : 0;
    }
    return !pool_failed(pool);
}

/* Whether numbers of the rates are the shop's own. */
static bool is_own(const struct ini *ini) {
    return !text_same(text_before(ini, "shop", "invented"), "yes") ||
           text_before(ini, "shop", "own")[0] != '\0';
}

/* Adds rates in front of the others where they are the shop's own, else behind all. */
static bool add_rates(struct folder *folder, struct folder_rates rates) {
    struct folder_rates *const list =
        pool_take(&folder->problems.pool, folder->rates_count + 1, sizeof *list);
    size_t at = 0;
    if (list == NULL) {
        return false;
    }
    while (at < folder->rates_count && (folder->rates[at].own || !rates.own)) {
        list[at] = folder->rates[at];
        at++;
    }
    list[at] = rates;
    for (; at < folder->rates_count; at++) {
        list[at + 1] = folder->rates[at];
    }
    folder->rates = list;
    folder->rates_count++;
    return true;
}

/* Those of a place, which is told from the folder at `at`; own: those alone that are the shop's. */
static bool find_rates(struct folder *folder, const char *at, const char *place, bool own) {
    struct pool *const pool = &folder->problems.pool;
    const char *const where = pool_words(pool, "%s%s", at, place);
    const struct names names = find(where, ini_endings, 1, pool);
    for (size_t i = 0; i < names.count; i++) {
        struct ini ini;
        if (!ini_read(&ini, pool_words(pool, "%s%s", where, names.list[i]), (struct place){0},
                      &folder->problems)) {
            return false;
        }
        const struct folder_rates rates = {pool_words(pool, "%s%s", place, names.list[i]),
                                           unit_before(&ini, "shop"), is_own(&ini)};
        if (section_find(&ini, "shop") != NULL && section_find(&ini, "job") == NULL &&
            (rates.own || !own) && !add_rates(folder, rates)) {
            return false;
        }
    }
    return !pool_failed(pool);
}

/* Whether a job of the folder names the list. */
static bool is_taken(struct folder *folder, const char *name) {
    for (size_t i = 0; i < folder->job_count; i++) {
        const char *const doors = ini_given(&folder->jobs[i].ini, "job", "doors");
        const char *const file =
            doors == NULL ? NULL : source_list_file(&folder->problems.pool, doors);
        if (file != NULL && text_same(file, name)) {
            return true;
        }
    }
    return false;
}

/* Those that lack a column come last: the reader tells what they lack. */
static void add_list(struct folder *folder, struct folder_list list) {
    size_t at = folder->list_count++;
    for (; list.whole && at > 0 && !folder->lists[at - 1].whole; at--) {
        folder->lists[at] = folder->lists[at - 1];
    }
    folder->lists[at] = list;
}

static bool find_lists(struct folder *folder, const char *at) {
    struct pool *const pool = &folder->problems.pool;
    const struct names names = find(at, list_endings, COUNT_OF(list_endings), pool);
    folder->lists = pool_take(pool, names.count, sizeof *folder->lists);
    for (size_t i = 0; i < names.count && folder->lists != NULL; i++) {
        struct table table = {0};
        if (is_taken(folder, names.list[i])) {
            continue;
        }
        if (!door_list_table(&table, pool_words(pool, "%s%s", at, names.list[i]), (struct place){0},
                             &folder->problems)) {
            return false;
        }
        const struct list_told told = door_list_told(&table, pool);
        if (told.doors) {
            add_list(folder,
                     (struct folder_list){names.list[i], told.measure, told.strange, told.whole});
        }
    }
    return !pool_failed(pool);
}

bool folder_look(struct folder *folder, const char *path) {
    static const char *const places[] = {"rates/", "../rates/", "", "../"};
    const char *const slash = strrchr(path, '/');
    *folder = (struct folder){0};
    problems_init(&folder->problems);
    const char *const at =
        pool_text(&folder->problems.pool, path, slash == NULL ? 0 : (size_t)(slash - path) + 1);
    if (at == NULL || !find_jobs(folder, at) || !find_lists(folder, at)) {
        return false;
    }
    for (size_t i = 0; i < COUNT_OF(places); i++) {
        if (!find_rates(folder, at, places[i], folder->rates_count > 0)) {
            return false;
        }
    }
    return !folder->problems.failed;
}

void folder_clear(struct folder *folder) {
    problems_clear(&folder->problems);
    *folder = (struct folder){0};
}

const struct folder_job *folder_last(const struct folder *folder) {
    const struct folder_job *last = NULL;
    const char *latest = "";
    for (size_t i = 0; i < folder->job_count; i++) {
        const char *const date = text_before(&folder->jobs[i].ini, "job", "date");
        if (last == NULL || strcmp(date, latest) >= 0) {
            last = &folder->jobs[i];
            latest = date;
        }
    }
    return last;
}

bool folder_is_shipped(const struct folder_job *job, enum length_unit unit) {
    const char *const name = ini_given(&job->ini, "job", "rates");
    struct problems scratch;
    struct ini ini;
    problems_init(&scratch);
    const char *const path = name == NULL ? NULL : source_beside(&scratch.pool, job->path, name);
    const bool shipped = path != NULL && ini_read(&ini, path, (struct place){0}, &scratch) &&
                         section_find(&ini, "shop") != NULL && unit_before(&ini, "shop") == unit &&
                         !is_own(&ini);
    problems_clear(&scratch);
    return shipped;
}

const struct folder_rates *folder_rates(const struct folder *folder, enum length_unit unit) {
    for (size_t i = 0; i < folder->rates_count; i++) {
        if (folder->rates[i].unit == unit) {
            return &folder->rates[i];
        }
    }
    return folder->rates_count == 0 ? NULL : &folder->rates[0];
}
