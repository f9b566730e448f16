/* SPDX-License-Identifier: MIT */
/* A question is known by its id, and by the row or section on whose line it is asked. Answers are
 * applied when all has been asked: a question that an option raises is one like any other. */
#include "read/job/accept.h"

#include "base/array.h"
#include "base/text.h"
#include "read/key/grammar.h"

#include <string.h>

/* `accept-without-effect` is none of them: it asks about an answer. One a line, so that a new one
 * is a line. */
/* clang-format off */
const char *const question_ids[] = {
    "arch-unpriced",
    "bars-unpriced",
    "between-steps",
    "beyond-usual",
    "clear-on-board",
    "door-wide",
    "film-thick",
    "front-high",
    "hardware-twice",
    "hinge-and-overlay",
    "hinges-beyond-chart",
    "hinges-few",
    "hinges-many",
    "larger-dearer",
    "leaf-wide",
    "loose-wood",
    "nearly-alike",
    "no-finish",
    "no-fold-hinge",
    "no-gap",
    "no-overlay",
    "no-woods",
    "note-not-priced",
    "odd-fraction",
    "opening-slit",
    "pair-narrow",
    "panel-comes-out",
    "panel-high",
    "panel-no-room",
    "panel-over-sheet",
    "part-too-long",
    "part-too-thick",
    "part-too-wide",
    "plan-over-factor",
    "pot-life-short",
    "price-later",
    "price-old",
    "rack-by-factor",
    "rack-no-color",
    "rack-no-plan",
    "range-unused",
    "size-far-from-rest",
    "text-cut",
    "too-wide-for-machine",
    "unknown-currency",
    "without-effect",
    "woods-mixed",
};
/* clang-format on */
const size_t question_id_count = COUNT_OF(question_ids);

/* --- reading --- */

#define MOST_NEAR ((size_t)3)

/* Whether a word of three letters or more, between hyphens, stands in both. */
static bool share_word(const char *id, const char *text) {
    for (const char *from = text; *from != '\0';) {
        const size_t size = strcspn(from, "-");
        char word[64];
        if (size > 2 && size < sizeof word) {
            memcpy(word, from, size);
            word[size] = '\0';
            if (strstr(id, word) != NULL) {
                return true;
            }
        }
        from += size + (from[size] == '-' ? 1 : 0);
    }
    return false;
}

/* `did you mean 'a', 'b' or 'c'?`: the nearest first, then those that share a word with it. */
static const char *near_words(struct reader *reader, const char *text) {
    const char *const nearest = text_nearest(text, question_ids, question_id_count);
    const char *near[MOST_NEAR] = {nearest};
    size_t count = nearest == NULL ? 0 : 1;
    const char *words = "did you mean ";
    for (size_t i = 0; i < question_id_count && count < MOST_NEAR; i++) {
        if (question_ids[i] != nearest && share_word(question_ids[i], text)) {
            near[count++] = question_ids[i];
        }
    }
    for (size_t i = 0; i < count && words != NULL; i++) {
        const char *const before = i == 0 ? "" : (i + 1 == count ? " or " : ", ");
        words = pool_format(&reader->problems->pool, "%s%s'%s'%s", words, before, near[i],
                            i + 1 == count ? "?" : "");
    }
    return count == 0 || words == NULL ? "expected the id of a warning in docs/problems.md" : words;
}

static const char *find_question(const char *id) {
    for (size_t i = 0; i < question_id_count; i++) {
        if (text_same(question_ids[i], id)) {
            return question_ids[i];
        }
    }
    return NULL;
}

void read_accept(struct reader *reader, const struct key *key, const struct entry *entry,
                 void *target) {
    struct job *const job = target;
    struct entry *items;
    size_t count;
    if (!list_split(reader, key, entry, false, &items, &count)) {
        return;
    }
    job->accepts = pool_take(reader->pool, count, sizeof *job->accepts);
    for (size_t i = 0; job->accepts != NULL && i < count; i++) {
        const char *const text = items[i].text;
        const size_t size = strcspn(text, " \t");
        const struct entry id = entry_part(reader, &items[i], text, text + size);
        const struct entry about = entry_part(reader, &items[i], text + size, text + strlen(text));
        const char *const question = find_question(id.text);
        if (question == NULL) {
            problem_add(reader->problems, SEVERITY_ERROR, "unknown-question", id.place,
                        "accept: '%s' is no question (errors cannot be accepted); %s",
                        entry_quote(reader, &id), near_words(reader, id.text));
            continue;
        }
        job->accepts[job->accept_count++] = (struct acceptance){
            .written = entry_text(reader, &items[i]),
            .id = question,
            .about = about.text[0] == '\0' ? NULL : entry_text(reader, &about).s,
        };
    }
}

/* --- applying --- */

struct asked {
    const struct job *job;
    const struct problems *problems;
    const char *about;
};

/* Whether `[finish painted]` is meant by `painted` or `finish painted`. */
static bool is_head(const char *line, const char *about) {
    char head[160];
    const size_t size = strcspn(line, "]");
    const char *name;
    if (size >= sizeof head) {
        return false;
    }
    memcpy(head, line, size);
    head[size] = '\0';
    name = strchr(head, ' ');
    return text_same(head, about) || (name != NULL && text_same(name + 1, about));
}

/* Whether the section in which a place stands is the one meant. */
static bool in_section(const struct problems *problems, struct place place, const char *about) {
    for (; place.line > 0; place.line--) {
        const char *line = problems_line(problems, place);
        line = line == NULL ? "" : line + strspn(line, " \t");
        if (*line == '[') {
            return is_head(line + 1, about);
        }
    }
    return false;
}

static bool is_about(const void *context, struct place place) {
    const struct asked *const asked = context;
    const struct job *const job = asked->job;
    if (asked->about == NULL) {
        return true;
    }
    if (job->row_count > 0 && place.file == job->rows[0].place.file) {
        const struct row *const row = job_row_at(job, place);
        return row != NULL && row->id.s != NULL && text_same(row->id.s, asked->about);
    }
    return in_section(asked->problems, place, asked->about);
}

bool accept_apply(const struct job *job, struct problems *problems, bool all) {
    for (size_t i = 0; i < job->accept_count; i++) {
        const struct acceptance *const accept = &job->accepts[i];
        const struct asked asked = {.job = job, .problems = problems, .about = accept->about};
        if (!problems_accept(problems, accept->id, is_about, &asked) && all) {
            problem_add(problems, SEVERITY_WARNING, "accept-without-effect", accept->written.place,
                        "accept '%s' has no effect: no such question is open; take it away",
                        problem_quote(problems, accept->written.s));
        }
    }
    return !problems->failed;
}
