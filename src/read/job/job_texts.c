/* SPDX-License-Identifier: MIT */
#include "read/job/job_texts.h"

#include "base/text.h"
#include "model/limits.h"
#include "read/file/source.h"
#include "read/job/job_keys.h"
#include "read/job/saved.h"
#include "read/key/grammar.h"
#include "read/rates/rack_file.h"
#include "read/rates/rates_keys.h"
#include "read/rates/woods.h"

#include <limits.h>
#include <stdlib.h>
#include <string.h>

/* All kinds of sections of a file. */
struct kinds {
    const struct section_kind *const *list;
    size_t count;
};

static bool is_path(struct kinds kinds, const char *kind, const char *name) {
    for (size_t i = 0; i < kinds.count; i++) {
        const struct section_kind *const k = kinds.list[i];
        const struct key *const key =
            text_same(k->name, kind) ? key_find(k->keys, k->key_count, name) : NULL;
        if (key != NULL && key->kind.read == read_path) {
            return true;
        }
    }
    return false;
}

/* The whole path of a file that the one at path names; where there is none, as it is named. NULL:
 * memory is out. */
static const char *whole_path(const char *path, const char *name, struct pool *pool) {
    const char *const beside = source_beside(pool, path, name);
    char whole[PATH_MAX];
    return beside == NULL || realpath(beside, whole) == NULL
               ? beside
               : pool_text(pool, whole, strlen(whole));
}

/* false: memory is out. */
static bool make_paths_whole(struct ini *ini, struct kinds kinds, const char *path,
                             struct pool *pool) {
    for (size_t s = 0; s < ini->count; s++) {
        const struct ini_section *const section = &ini->sections[s];
        for (size_t k = 0; k < section->count; k++) {
            struct ini_key *const key = &section->keys[k];
            if (key->value != NULL && is_path(kinds, section->kind, key->name)) {
                key->value = whole_path(path, key->value, pool);
            }
        }
    }
    return !pool_failed(pool);
}

bool job_texts_paper(const char *key) {
    return text_same(key, "terms file") || text_same(key, "logo");
}

bool job_texts_read(struct job_texts *texts, const char *path, struct problems *problems) {
    struct pool *const pool = &problems->pool;
    const struct kinds of_job = {job_sections, job_section_count};
    const struct kinds of_rates = {rates_sections, rates_section_count};

    *texts = (struct job_texts){.path = path};
    if (saved_is(path)) {
        return saved_read(texts, path, problems);
    }
    if (!ini_read(&texts->job, path, (struct place){0}, problems)) {
        return false;
    }
    if (!make_paths_whole(&texts->job, of_job, path, pool)) {
        return false;
    }
    const char *const rates = text_before(&texts->job, "job", "rates");
    const char *const list = text_before(&texts->job, "job", "doors");
    if (rates[0] == '\0' || list[0] == '\0') {
        return true; /* the reader says so */
    }
    if (!ini_read(&texts->rates, rates, (struct place){0}, problems) ||
        !make_paths_whole(&texts->rates, of_rates, rates, pool)) {
        return false;
    }
    const char *const woods = text_before(&texts->rates, "shop", "woods");
    if (!woods_table(&texts->woods, woods[0] == '\0' ? NULL : woods, (struct place){0}, rates,
                     problems)) {
        return false;
    }
    const char *const rack = text_before(&texts->rates, "shop", "stock");
    if (rack[0] != '\0' && !rack_table(&texts->rack, rack, (struct place){0}, problems)) {
        return false;
    }
    if (!door_list_table(&texts->list, list, (struct place){0}, problems)) {
        return false;
    }
    door_list_leave_out(&texts->list, text_before(&texts->job, "job", "own columns"),
                        (struct place){0}, problems);
    return true;
}
