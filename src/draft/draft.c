/* SPDX-License-Identifier: MIT */
#include "draft/draft.h"

#include "base/array.h"
#include "base/text.h"
#include "read/file/source.h"
#include "read/job/job_value.h"

#include <stdlib.h>
#include <string.h>

const char *draft_value(const struct draft *draft, const char *section, const char *key) {
    const size_t at = question_find(section, key);
    return at < MOST_QUESTIONS ? draft->values[at] : NULL;
}

enum length_unit draft_unit(const struct draft *draft) {
    const char *const unit = draft_value(draft, "job", "unit");
    return unit != NULL && text_same(unit, "mm") ? LENGTH_MM : LENGTH_INCH;
}

bool draft_takes(const struct draft *draft, const struct question *question, const char *text,
                 struct problems *problems) {
    const struct key *const key = job_key(question->section, question->key);
    const size_t before = problems_count(problems, SEVERITY_ERROR);
    job_value_check(question->section, key, text, draft->rates, draft_unit(draft), draft->path,
                    problems);
    return problems_count(problems, SEVERITY_ERROR) == before;
}

/* The rates of the old job, as the new one would say it; where these are as shipped and the shop
 * has some of its own in the unit, those. */
static const char *old_rates(const struct draft *draft, const char *value) {
    const char *const name = draft_renamed(value, draft->old_path, draft->path, draft->pool);
    const char *const said = ini_given(draft->old, "job", "unit");
    const enum length_unit unit = said != NULL && text_same(said, "mm") ? LENGTH_MM : LENGTH_INCH;
    const struct folder_rates *const best = folder_rates(draft->folder, unit);
    if (draft->from || best == NULL || !best->own || best->unit != unit) {
        return name;
    }
    for (size_t i = 0; i < draft->folder->rates_count; i++) {
        if (name != NULL && strcmp(draft->folder->rates[i].name, name) == 0 &&
            !draft->folder->rates[i].own) {
            return best->name;
        }
    }
    return name;
}

/* What the old job has, as the new one would say it; NULL: nothing, or these rates do not take it.
 */
static const char *carried(const struct draft *draft, const struct question *question) {
    const char *value = ini_given(draft->old, question->section, question->key);
    struct problems problems;
    if (value == NULL) {
        return NULL;
    }
    if (text_same(question->key, "rates")) {
        return old_rates(draft, value);
    }
    problems_init(&problems);
    const bool taken = draft_takes(draft, question, value, &problems);
    problems_clear(&problems);
    return taken ? pool_text(draft->pool, value, strlen(value)) : NULL;
}

const char *draft_offer(struct draft *draft, const struct question *question) {
    const bool goes_on = draft->old != NULL && !question->own;
    const bool had = goes_on && ini_given(draft->old, question->section, question->key) != NULL;
    const char *const value = had ? carried(draft, question) : NULL;
    const bool left_out = goes_on && !had && !job_key(question->section, question->key)->needed;
    return value != NULL || left_out || question->offer == NULL ? value : question->offer(draft);
}

const char *draft_choices(const struct draft *draft, const struct question *question) {
    const struct folder *const folder = draft->folder;
    const bool rates = text_same(question->key, "rates");
    const size_t count = rates                               ? folder->rates_count
                         : text_same(question->key, "doors") ? folder->list_count
                                                             : 0;
    const char *list = NULL;
    for (size_t i = 0; i < count; i++) {
        list = pool_words(draft->pool, "%s%s%s", text_or_empty(list), i == 0 ? "" : ", ",
                          rates ? folder->rates[i].name : folder->lists[i].name);
    }
    return list != NULL ? list
                        : job_value_choices(job_key(question->section, question->key), draft->rates,
                                            draft->pool);
}

/* --- names of files from another folder --- */

static const char *folder_of(const char *path, struct pool *pool) {
    const char *const slash = strrchr(path, '/');
    return slash == NULL ? "." : pool_words(pool, "%.*s", (int)(slash - path) + 1, path);
}

/* The way to a file from a folder, both without links and dots. */
static const char *way_to(const char *file, const char *folder, struct pool *pool) {
    size_t common = 0; /* behind the last `/` that they share */
    const char *up = "";
    for (size_t i = 0; file[i] != '\0' && file[i] == folder[i]; i++) {
        common = file[i] == '/' ? i + 1 : common;
    }
    const size_t size = strlen(folder);
    if (strncmp(file, folder, size) == 0 && file[size] == '/') {
        return file + size + 1;
    }
    for (const char *c = folder + (common < size ? common : size); *c != '\0';) {
        up = pool_words(pool, "%s../", up);
        const char *const next = strchr(c, '/');
        c = next == NULL ? c + strlen(c) : next + 1;
    }
    return pool_words(pool, "%s%s", up, file + common);
}

const char *draft_renamed(const char *name, const char *from, const char *to, struct pool *pool) {
    const char *const old_folder = folder_of(from, pool);
    const char *const new_folder = folder_of(to, pool);
    const char *const path = source_beside(pool, from, name);
    if (path == NULL || name[0] == '/' || strcmp(old_folder, new_folder) == 0) {
        return path == NULL ? NULL : pool_text(pool, name, strlen(name));
    }
    char *const file = realpath(path, NULL);
    char *const folder = realpath(new_folder, NULL);
    const char *const way = file == NULL || folder == NULL ? path : way_to(file, folder, pool);
    const char *const renamed = pool_text(pool, way, strlen(way));
    free(file);
    free(folder);
    return renamed;
}

/* --- lines --- */

/* What is being made. */
struct maker {
    const struct draft *draft;
    struct ini_lines *lines;
    struct draft_told *told;
    const char *bad;
};

static void tell(const struct maker *maker, const char **list, const char *section,
                 const char *key) {
    const bool of_job = text_same(section, "job");
    *list = pool_words(maker->draft->pool, "%s%s%s%s%s%s", *list, **list == '\0' ? "" : ", ",
                       of_job ? "" : "[", of_job ? "" : section, of_job ? "" : "] ", key);
}

/* value: as the user said it; NULL: the line is taken out. */
static bool put(struct maker *maker, const char *section, const char *name, const char *value) {
    const struct key *const key = job_key(section, name);
    const struct ini_change change = {
        .section = section,
        .key = name,
        .value = value == NULL ? NULL : ini_value(value, maker->draft->pool),
        .comment = key == NULL ? NULL : key->help,
        .about = job_section_help(section),
    };
    if (value != NULL && change.value == NULL) {
        maker->bad = pool_failed(maker->draft->pool) ? NULL : name;
        return false;
    }
    return ini_edit(maker->lines, &change, maker->draft->pool);
}

/* Puts in an answer of a new job, or changes the line of an old one. */
static bool put_answer(struct maker *maker, const struct question *question, const char *value) {
    const struct draft *const draft = maker->draft;
    const char *const section = question->section;
    const char *const was = draft->from ? ini_given(draft->old, section, question->key) : NULL;
    const bool drops = draft->from && question->own && value == NULL;
    if (was != NULL && (drops || (value != NULL && strcmp(was, value) != 0))) {
        tell(maker, drops ? &maker->told->dropped : &maker->told->changed, section, question->key);
        return put(maker, section, question->key, value);
    }
    if (value == NULL || was != NULL) {
        return true;
    }
    if (draft->from) {
        tell(maker, &maker->told->changed, section, question->key);
    }
    return put(maker, section, question->key, value);
}

static bool is_own(const char *section, const char *key) {
    size_t count;
    const struct question *const rows = questions(&count);
    const size_t at = question_find(section, key);
    return at < count && rows[at].own;
}

/* What stays of the old job: keys of [job], and how many of the others. */
static void tell_kept(const struct maker *maker) {
    const struct draft *const draft = maker->draft;
    const char **const kept = &maker->told->kept;
    for (size_t i = 0; i < draft->old->count; i++) {
        const struct ini_section *const section = &draft->old->sections[i];
        size_t stay = 0;
        for (size_t k = 0; k < section->count; k++) {
            const char *const key = section->keys[k].name;
            const char *const now = draft_value(draft, section->kind, key);
            if (section->keys[k].value == NULL || is_own(section->kind, key) ||
                (now != NULL && strcmp(now, section->keys[k].value) != 0)) {
                continue;
            }
            stay++;
            if (text_same(section->kind, "job")) {
                tell(maker, kept, "job", key);
            }
        }
        if (stay > 0 && !text_same(section->kind, "job")) {
            *kept = pool_words(draft->pool, "%s%s[%s%s%s]", *kept, **kept == '\0' ? "" : ", ",
                               section->kind, section->name[0] == '\0' ? "" : " ", section->name);
        }
    }
}

static bool put_all(struct maker *maker) {
    const struct draft *const draft = maker->draft;
    size_t count;
    const struct question *const rows = questions(&count);
    for (size_t i = 0; i < count; i++) {
        if (!put_answer(maker, &rows[i], draft->values[i])) {
            return false;
        }
    }
    for (size_t i = 0; i < draft->more_count; i++) {
        const struct rate_change *const more = &draft->more[i];
        if (!put(maker, more->section, more->key, more->value)) {
            return false;
        }
        if (draft->from) {
            tell(maker, &maker->told->changed, more->section, more->key);
        }
    }
    return true;
}

/* What a new job begins with. */
static bool begin(const struct maker *maker) {
    static const char *const head[] = {
        "; A job of cabinet doors. `doorcost check` looks at it, `doorcost quote` prices it.",
        "; `man doorcost-job` (docs/formats.md) tells of all keys; `;` begins a comment.",
    };
    const char **const list = pool_copy(maker->draft->pool, head, sizeof head);
    *maker->lines = (struct ini_lines){.list = list, .count = list == NULL ? 0 : COUNT_OF(head)};
    return list != NULL;
}

/* The lines of the old one. */
static bool begin_from(const struct maker *maker, const struct source *old) {
    *maker->lines = ini_lines_of(old, maker->draft->pool);
    tell_kept(maker);
    return maker->lines->list != NULL;
}

bool draft_lines(const struct draft *draft, const struct source *old, struct ini_lines *lines,
                 struct draft_told *told, const char **bad) {
    struct maker maker = {.draft = draft, .lines = lines, .told = told};
    *told = (struct draft_told){"", "", ""};
    const bool made = (draft->from ? begin_from(&maker, old) : begin(&maker)) && put_all(&maker);
    *bad = maker.bad;
    return made && !pool_failed(draft->pool);
}
