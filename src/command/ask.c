/* SPDX-License-Identifier: MIT */
#include "command/ask.h"

#include "base/text.h"

#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#define DIGITS "0123456789."

bool ask_can(FILE *in, FILE *out) {
    return in != NULL && isatty(fileno(in)) == 1 && isatty(fileno(out)) == 1;
}

/* A line without its end and outer blanks; in pool. *ended: there is none. NULL then, or when
 * memory is out. */
static const char *read_line(FILE *in, struct pool *pool, bool *ended) {
    char *line = NULL;
    size_t room = 0;
    const ssize_t size = getline(&line, &room, in);
    *ended = size < 0;
    const char *answer = NULL;
    if (size >= 0) {
        /* a NUL, which no text has, ends it: what is left is what is checked and taken */
        const char *const from = text_skip_blanks(line);
        const char *const stop = from + strcspn(from, "\r\n");
        answer = pool_text(pool, from, (size_t)(text_trim_end(from, stop) - from));
    }
    free(line);
    return answer;
}

static void put_question(const struct ask *ask, struct page *page) {
    say(page, "%s", "");
    say_wrapped(page, "", 0, "%s", ask->why);
    if (ask->choices != NULL) {
        say_wrapped(page, "  ", 2, "%s", ask->choices);
    }
}

static const char *lacks(const struct ask *ask, const char *answer) {
    const bool out = strcmp(answer, "-") == 0;
    return !ask->needed                              ? NULL
           : out                                     ? "it can't be left out"
           : ask->offer == NULL && answer[0] == '\0' ? "nothing is offered here; type an answer"
                                                     : NULL;
}

/* What stands behind the number of an offer: the ` per hour` of `14.00 per hour (12 to 18)`. A
 * range belongs to the old number alone. *size 0: there is no unit. */
static const char *unit_of(const char *offer, size_t *size) {
    const char *const rest = offer + strspn(offer, DIGITS);
    const char *const end = text_trim_end(rest, rest + strcspn(rest, "("));
    const bool unit = rest != offer && (*rest == ' ' || *rest == '%') &&
                      strchr(DIGITS, *text_skip_blanks(rest)) == NULL &&
                      memchr(rest, ',', (size_t)(end - rest)) == NULL;
    *size = unit ? (size_t)(end - rest) : 0;
    return rest;
}

/* A bare number in the unit of what is offered or what it is like; in pool. NULL: it is none, or
 * these have none. */
static const char *with_unit(const struct ask *ask, const char *line, struct pool *pool) {
    size_t size = 0;
    const char *const like = ask->offer == NULL ? ask->like : ask->offer;
    const char *const unit = like == NULL ? "" : unit_of(like, &size);
    return size == 0 || line[strspn(line, DIGITS)] != '\0'
               ? NULL
               : pool_words(pool, "%s%.*s", line, (int)size, unit);
}

enum ask_result ask(const struct ask *ask, FILE *in, FILE *out, ask_fault *fault, void *context,
                    struct pool *pool, const char **answer) {
    struct page page = {.out = out};
    put_question(ask, &page);
    for (;;) {
        bool ended = false;
        text_print(out, "%s [%s]: ", ask->name,
                   ask->offer == NULL ? (ask->needed ? "" : "none") : ask->offer);
        (void)fflush(out);
        const char *line = read_line(in, pool, &ended);
        if (ended) {
            text_print(out, "\ndoorcost: the answers ended at '%s'; %s\n", ask->name,
                       ask->ended == NULL ? "nothing was written" : ask->ended);
            return ASK_ENDED;
        }
        if (line == NULL || page.failed) {
            return ASK_MEMORY;
        }
        if (ask->back && strcmp(line, "<") == 0) {
            return ASK_BACK;
        }
        const bool out_of_it = strcmp(line, "-") == 0;
        const char *wrong = lacks(ask, line);
        if (wrong == NULL && line[0] != '\0' && !out_of_it) {
            wrong = fault(context, line);
            const char *const whole = wrong == NULL ? NULL : with_unit(ask, line, pool);
            if (whole != NULL && fault(context, whole) == NULL) {
                say_wrapped(&page, "  ", 2, "taken as '%s'", whole);
                line = whole;
                wrong = NULL;
            }
        }
        if (wrong == NULL) {
            *answer = out_of_it ? NULL : line[0] == '\0' ? ask->offer : line;
            return ASK_ANSWERED;
        }
        say_wrapped(&page, "  ", 2, "%s", wrong);
    }
}

static const char *yes_or_no(void *context, const char *answer) {
    (void)context;
    return text_same(answer, "yes") || text_same(answer, "no") ? NULL : "type yes or no";
}

enum ask_result ask_whether(struct ask ask_for, FILE *in, FILE *out, struct pool *pool, bool *yes) {
    const char *answer = NULL;
    ask_for.choices = "yes, no";
    ask_for.needed = true;
    const enum ask_result result = ask(&ask_for, in, out, yes_or_no, NULL, pool, &answer);
    *yes = result == ASK_ANSWERED && text_same(answer, "yes");
    return result;
}
