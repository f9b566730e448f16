/* SPDX-License-Identifier: MIT */
/* The numbers that must be the shop's own, asked for one by one. */
#include "command/rates_walk.h"
#include "base/text.h"
#include "command/ask.h"

#include <string.h>

/* Whether each of the names that are parted by commas is one of the kind. */
static const char *names_fault(struct walk *walk, const char *answer) {
    const char *const all = walk->now->choices;
    for (const char *at = answer; *at != '\0';) {
        const char *const end = at + strcspn(at, ",");
        const char *const from = text_skip_blanks(at);
        const char *const stop = from < end ? text_trim_end(from, end) : from;
        const char *const name = pool_text(&walk->run->pool, from, (size_t)(stop - from));
        if (name != NULL && !text_lists(all, name)) {
            return pool_words(&walk->run->pool,
                              "there is no %s '%s'; take of those above, several with commas "
                              "between",
                              walk->now->section, name);
        }
        at = *end == '\0' ? end : end + 1;
    }
    return NULL;
}

static const char *answer_fault(void *context, const char *answer) {
    struct walk *const walk = context;
    struct rates_run *const run = walk->run;
    const struct walk_step *const step = walk->now;
    if (step->key == NULL) {
        return names_fault(walk, answer);
    }
    const struct rate_change change = {.section = step->section, .key = step->key, .value = answer};
    const char *const words = ini_value(answer, &run->pool) == NULL
                                  ? "this can stand in no line of a file"
                                  : rates_change_fault(run, &change);
    const size_t size = strlen(step->key);
    return words != NULL && strncmp(words, step->key, size) == 0 && words[size] == ' '
               ? pool_words(&run->pool, "%s%s", step->name, words + size)
               : words;
}

/* Whether it was answered otherwise than it stands. */
static bool is_other(const struct walk_step *step) {
    return step->asked &&
           (step->value == NULL || step->answer == NULL ? step->value != step->answer
                                                        : strcmp(step->value, step->answer) != 0);
}

static bool is_wanted(const struct walk_step *step) {
    for (; step->which != NULL; step = step->which) {
        const char *const answer = step->which->answer;
        if (step->of == NULL) {
            return is_other(step->which); /* of the shop that ships nothing more is asked */
        }
        if (answer == NULL || !(text_same(answer, "all") || text_lists(answer, step->of))) {
            return false;
        }
    }
    return true;
}

/* The step before that was asked; this one where there is none. */
static size_t step_before(const struct walk *walk, size_t at) {
    for (size_t i = at; i > 0; i--) {
        if (is_wanted(&walk->steps[i - 1])) {
            return i - 1;
        }
    }
    return at;
}

static enum status ask_steps(struct walk *walk) {
    const struct streams streams = walk->run->streams;
    for (size_t at = 0; at < walk->count;) {
        struct walk_step *const step = &walk->steps[at];
        walk->now = step;
        if (!is_wanted(step)) {
            at++;
            continue;
        }
        const struct ask one = {.why = step->why,
                                .choices = step->choices,
                                .name = step->name,
                                .offer = step->asked ? step->answer : step->offer,
                                .needed = step->needed,
                                .back = true};
        const enum ask_result result =
            ask(&one, streams.in, streams.err, answer_fault, walk, &walk->run->pool, &step->answer);
        if (result == ASK_BACK) {
            at = step_before(walk, at);
        } else if (result == ASK_ANSWERED) {
            step->asked = true;
            at++;
        } else {
            return result == ASK_ENDED ? STATUS_INPUTS : command_out_of_memory(streams);
        }
    }
    return STATUS_DONE;
}

/* Puts what was answered otherwise than it stands. */
static enum status put_steps(const struct walk *walk) {
    for (size_t i = 0; i < walk->count; i++) {
        const struct walk_step *const step = &walk->steps[i];
        if (step->key != NULL && is_wanted(step) && is_other(step) &&
            !rates_put(walk->run, &(struct rate_change){.section = step->section,
                                                        .key = step->key,
                                                        .value = step->answer})) {
            return command_out_of_memory(walk->run->streams);
        }
    }
    return STATUS_DONE;
}

enum status rates_walk(struct rates_run *run) {
    struct walk walk = {.run = run};
    if (!walk_find(&walk)) {
        return command_out_of_memory(run->streams);
    }
    enum status status = ask_steps(&walk);
    status = status == STATUS_DONE ? put_steps(&walk) : status;
    const bool other = status == STATUS_DONE && run->few && is_other(&walk.steps[0]);
    return other && !walk_drop_words(run) ? command_out_of_memory(run->streams) : status;
}
