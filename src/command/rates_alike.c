/* SPDX-License-Identifier: MIT */
#include "command/rates_alike.h"

#include "base/text.h"
#include "command/work.h"

#define MOST_TOLD 5 /* of what rates say otherwise */

static const char *quoted(struct problems *problems, const char *text) {
    return text == NULL ? "nothing"
                        : pool_words(&problems->pool, "'%s'", problem_quote(problems, text));
}

static void tell_change(const struct bridge_change *change, const char *a, const char *b,
                        struct problems *quoting, FILE *err) {
    const char *const where = problem_quote(quoting, change->where);
    if (change->what == NULL) {
        text_print(err, "  %s stands in the rates of '%s' alone\n", where,
                   change->older != NULL ? a : b);
    } else {
        text_print(err, "  %s %s: %s in the rates of '%s', %s in those of '%s'\n", where,
                   problem_quote(quoting, change->what), quoted(quoting, change->older), a,
                   quoted(quoting, change->newer), b);
    }
}

/* Says what the rates of `path` have otherwise. */
static void tell_differ(const struct bridge_changes *changes, const char *words, enum rates_of of,
                        const char *first, const char *path, FILE *err) {
    struct problems quoting;
    problems_init(&quoting);
    const char *const a = problem_quote(&quoting, first);
    const char *const b = problem_quote(&quoting, path);
    if (words != NULL) {
        text_print(err, "doorcost: '%s' can't be put together with '%s': %s\n", b, a, words);
    } else {
        text_print(err,
                   "doorcost: '%s' %s by other rates than '%s'; give jobs whose rates say the same "
                   "of %s\n",
                   b, of == RATES_BOUGHT ? "buys" : "is made", a,
                   of == RATES_BOUGHT ? "materials, waste and prices"
                                      : "operations, machines and working days");
    }
    for (size_t i = 0; words == NULL && i < changes->count && i < MOST_TOLD; i++) {
        tell_change(&changes->list[i], a, b, &quoting, err);
    }
    if (words == NULL && changes->count > MOST_TOLD) {
        text_print(err, "  and %zu more\n", changes->count - MOST_TOLD);
    }
    problems_clear(&quoting);
}

enum status rates_alike(const struct request *request, const struct work *first,
                        const struct work *work, const char *path, enum rates_of of,
                        struct streams streams) {
    const struct rates_side sides[] = {{&first->job, &first->rates, &first->texts},
                                       {&work->job, &work->rates, &work->texts}};
    struct bridge_changes changes;
    const char *words = NULL;
    struct pool pool;
    enum status status = STATUS_DONE;
    pool_init(&pool);
    if (!rates_differ(&changes, &words, of, &sides[0], &sides[1], &pool)) {
        status = command_out_of_memory(streams);
    } else if (changes.count > 0 || words != NULL) {
        tell_differ(&changes, words, of, request->job, path, streams.err);
        status = STATUS_INPUTS;
    }
    pool_clear(&pool);
    return status;
}
