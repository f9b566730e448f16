/* SPDX-License-Identifier: MIT */
/* What `own` of [shop] names must be there, or it would be of no number. */
#include "base/text.h"
#include "read/key/grammar.h"
#include "read/rates/rates_keys.h"

static bool names_any(const struct settings *settings, const char *name) {
    for (size_t i = 0; i < settings->count; i++) {
        if (setting_named(&settings->list[i], name)) {
            return true;
        }
    }
    return false;
}

/* The nearest of all that may be named; NULL: none is near. */
static const char *nearest(struct reader *reader, const struct settings *settings,
                           const char *name) {
    const char **const names =
        pool_take(&reader->problems->pool, settings->count * 3, sizeof *names);
    size_t count = 0;
    for (size_t i = 0; names != NULL && i < settings->count; i++) {
        const struct setting *const s = &settings->list[i];
        names[count++] = s->title;
        names[count++] = s->kind;
        if (text_same(s->kind, "shop")) {
            names[count++] = s->key;
        }
    }
    return text_nearest(name, names, count);
}

void own_check(struct reader *reader, const struct rates *rates) {
    const struct shop *const shop = &rates->shop;
    for (size_t i = 0; i < shop->own.count; i++) {
        const struct text *const item = &shop->own.t[i];
        if (item->s == NULL || names_any(&rates->settings, item->s)) {
            continue;
        }
        const char *const near = nearest(reader, &rates->settings, item->s);
        problem_add(reader->problems, SEVERITY_ERROR, "unknown-name", item->place,
                    "own '%s' is neither a key of [shop] nor a section of this file%s%s%s",
                    problem_quote(reader->problems, item->s),
                    near == NULL ? "; expected names like 'labor rate, lumber poplar, machine'"
                                 : "; did you mean '",
                    near == NULL ? "" : problem_quote(reader->problems, near),
                    near == NULL ? "" : "'?");
    }
    if (shop->own.count > 0 && !shop->invented) {
        problem_add(reader->problems, SEVERITY_WARNING, "without-effect", shop->own.t[0].place,
                    "own has no effect here: all numbers are the shop's own where [shop] does not "
                    "say 'invented = yes'; take it away");
    }
}
