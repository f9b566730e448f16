/* SPDX-License-Identifier: MIT */
#include "together/rates_differ.h"

#include "base/array.h"
#include "base/text.h"
#include "read/job/job_texts.h"

#include <string.h>

#define MOST_KINDS 10

/* What is shared, by kinds of sections. */
static const struct sharing {
    /* That rows and lines go by, by their place among those of the kind; the rest NULL. */
    const char *kinds[MOST_KINDS];
    /* Each key of these matters that is no price; else those of buying do, of any section. */
    bool all_keys;
} sharings[] = {
    [RATES_BOUGHT] = {{"lumber", "sheet", "banding", "glass", "door", "additive", "coating",
                       "finish", "hardware", "consumable"},
                      false},
    [RATES_SHOP] = {{"operation", "machine", "days"}, true},
};

/* Whether a section, `[lumber poplar]`, is of these kinds. */
static bool of_kinds(const struct sharing *sharing, const char *where) {
    for (size_t i = 0; i < MOST_KINDS && sharing->kinds[i] != NULL; i++) {
        const size_t size = strlen(sharing->kinds[i]);
        if (strncmp(where + 1, sharing->kinds[i], size) == 0 &&
            (where[size + 1] == ' ' || where[size + 1] == ']')) {
            return true;
        }
    }
    return false;
}

/* What an hour of an operation or of a machine costs: no matter of when it is done. */
static bool is_rate(const char *key) {
    return key != NULL && (strcmp(key, "rate") == 0 || strcmp(key, "labor rate") == 0);
}

/* Whether what is shared can be otherwise by it. */
static bool matters(const struct sharing *sharing, const struct bridge_change *change) {
    if (change->what == NULL || sharing->all_keys) {
        return (of_kinds(sharing, change->where) && !is_rate(change->what)) ||
               (change->what != NULL && strcmp(change->what, "hours per day") == 0);
    }
    return change->group == BRIDGE_MATERIALS || change->group == BRIDGE_YIELDS ||
           change->group == BRIDGE_PRICES;
}

/* The next section of a kind from *at on; NULL: there is none. */
static const struct ini_section *next_of(const struct ini *ini, const char *kind, size_t *at) {
    while (*at < ini->count) {
        const struct ini_section *const section = &ini->sections[(*at)++];
        if (text_same(section->kind, kind)) {
            return section;
        }
    }
    return NULL;
}

/* The kind whose sections stand in another order; NULL: none. All are in both. */
static const char *other_order(const struct sharing *sharing, const struct ini *a,
                               const struct ini *b) {
    for (size_t i = 0; i < MOST_KINDS && sharing->kinds[i] != NULL; i++) {
        size_t in_a = 0;
        size_t in_b = 0;
        const struct ini_section *one = next_of(a, sharing->kinds[i], &in_a);
        while (one != NULL) {
            const struct ini_section *const other = next_of(b, sharing->kinds[i], &in_b);
            if (other == NULL || !text_same(one->name, other->name)) {
                return sharing->kinds[i];
            }
            one = next_of(a, sharing->kinds[i], &in_a);
        }
    }
    return NULL;
}

/* What is no key of one of the two alone. */
static const char *other_terms(const struct rates_side *a, const struct rates_side *b) {
    if (a->job->unit != b->job->unit || a->rates->shop.unit != b->rates->shop.unit) {
        return "its sizes are in another unit; give jobs with the same 'unit' in [job] and in "
               "[shop]";
    }
    if (!text_same(a->rates->shop.currency.s, b->rates->shop.currency.s)) {
        return "it is in another currency; give jobs in one, amounts are not converted";
    }
    return NULL;
}

bool rates_differ(struct bridge_changes *changes, const char **words, enum rates_of of,
                  const struct rates_side *a, const struct rates_side *b, struct pool *pool) {
    const struct sharing *const sharing = &sharings[of];
    if (!rates_changes_make(changes, a->texts, b->texts, pool)) {
        return false;
    }
    size_t kept = 0;
    for (size_t i = 0; i < changes->count; i++) {
        if (matters(sharing, &changes->list[i])) {
            changes->list[kept++] = changes->list[i];
        }
    }
    changes->count = kept;
    *words = of == RATES_BOUGHT ? other_terms(a, b) : NULL;
    if (*words == NULL && kept == 0) {
        const char *const kind = other_order(sharing, &a->texts->rates, &b->texts->rates);
        *words = kind == NULL
                     ? NULL
                     : pool_words(pool,
                                  "its rates have sections [%s ...] in another order; put them in "
                                  "one order",
                                  kind);
    }
    return !pool_failed(pool);
}
