/* SPDX-License-Identifier: MIT */
#include "report/words/shipped.h"

#include "base/joined.h"
#include "base/text.h"
#include "price/setting_used.h"

#include <string.h>

bool shipped_example(const struct estimate *e) {
    return e->rates->shop.invented;
}

bool shipped_still(const struct rates *rates, const struct setting *setting) {
    const struct texts *const own = &rates->shop.own;
    for (size_t i = 0; i < own->count; i++) {
        if (setting_named(setting, own->t[i].s)) {
            return false;
        }
    }
    return rates->shop.invented;
}

/* The name of a section without its kind; of one that has none the key. */
static const char *name_in_group(const struct setting *s) {
    const size_t kind = strlen(s->kind);
    return s->title[kind] == '\0' ? s->key : s->title + kind + 1;
}

/* The names of a kind among those that are left, each once: settings of a section follow each
 * other. */
static const char *names_of(const struct settings *settings, const bool *left, const char *kind,
                            struct pool *pool) {
    struct joined names = {0};
    const char *last = NULL;
    for (size_t i = 0; i < settings->count; i++) {
        const struct setting *const s = &settings->list[i];
        if (!left[i] || !text_same(s->kind, kind)) {
            continue;
        }
        const char *const name = name_in_group(s);
        if (last == NULL || !text_same(last, name)) {
            joined_add(&names, last == NULL ? "" : ", ");
            joined_add(&names, name);
        }
        last = name;
    }
    return text_or_empty(joined_take(&names, pool));
}

static bool has_group(const struct shipped *shipped, const char *kind) {
    for (size_t i = 0; i < shipped->group_count; i++) {
        if (text_same(shipped->groups[i].kind, kind)) {
            return true;
        }
    }
    return false;
}

struct shipped shipped_of(const struct estimate *e, struct pool *pool) {
    const struct settings *const settings = &e->rates->settings;
    bool *const left = settings_used(e, &e->rates->settings, pool);
    struct shipped shipped = {
        .groups = pool_take(pool, settings->count, sizeof *shipped.groups),
    };
    if (left == NULL || shipped.groups == NULL) {
        return (struct shipped){0};
    }
    for (size_t i = 0; i < settings->count; i++) {
        shipped.used += left[i] ? 1 : 0;
        left[i] = left[i] && shipped_still(e->rates, &settings->list[i]);
        shipped.left += left[i] ? 1 : 0;
    }
    for (size_t i = 0; i < settings->count; i++) {
        const char *const kind = settings->list[i].kind;
        if (left[i] && !has_group(&shipped, kind)) {
            shipped.groups[shipped.group_count++] =
                (struct shipped_group){.kind = kind, .names = names_of(settings, left, kind, pool)};
        }
    }
    return shipped;
}

const char *shipped_words(const struct shipped *s, struct pool *pool) {
    if (s->left == 0) {
        return pool_words(pool,
                          "None of the %zu numbers that this job takes from the rates is as "
                          "shipped: 'invented = yes' can go",
                          s->used);
    }
    return s->left == s->used
               ? pool_words(pool,
                            "Still as shipped: all %zu numbers that this job takes from the rates",
                            s->used)
               : pool_words(pool,
                            "Still as shipped: %zu of the %zu numbers that this job takes from the "
                            "rates",
                            s->left, s->used);
}
