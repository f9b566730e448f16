/* SPDX-License-Identifier: MIT */
/* The list of problems. An open-addressed index finds the earlier problem of which a new one is a
 * repetition, so that a fault on every row of a long list costs no more than the rows. */
#include "base/problem.h"

#include "base/text.h"

#include <stdlib.h>
#include <string.h>

#define LONGEST_QUOTE 60

struct source_file {
    const char *name;
    const char *const *lines; /* borrowed */
    size_t line_count;
    bool cells; /* a sheet of a workbook */
};

void problems_init(struct problems *problems) {
    *problems = (struct problems){0};
    pool_init(&problems->pool);
}

void problems_clear(struct problems *problems) {
    free(problems->list);
    free(problems->files);
    free(problems->index);
    pool_clear(&problems->pool);
    problems_init(problems);
}

/* text with '?' for what may not be shown, cut behind `most` characters; NULL when memory is out.
 */
static char *showable(struct problems *problems, const char *text, size_t most) {
    const size_t size = strlen(text);
    size_t at = 0;
    char *const copy = pool_take(&problems->pool, size + 4, 1);
    char *to = copy;

    if (copy == NULL) {
        problems->failed = true;
        return NULL;
    }
    for (size_t characters = 0; at < size && characters < most; characters++) {
        size_t length;

        if (!text_shows(text + at, size - at, &length)) {
            *to++ = '?';
        } else {
            memcpy(to, text + at, length);
            to += length;
        }
        at += length;
    }
    if (at < size) {
        memcpy(to, "...", sizeof("..."));
    }
    return copy;
}

uint16_t problems_file(struct problems *problems, const char *name) {
    char *copy = showable(problems, name, SIZE_MAX);
    bool failed = copy == NULL || problems->file_count >= UINT16_MAX - 1;

    problems->files = array_grow(problems->files, &problems->file_room, problems->file_count + 1,
                                 sizeof(*problems->files), &failed);
    if (failed) {
        problems->failed = true;
        return 0;
    }
    problems->files[problems->file_count] = (struct source_file){.name = copy};
    problems->file_count++;
    return (uint16_t)problems->file_count;
}

void problems_lines(struct problems *problems, uint16_t file, const char *const *lines,
                    size_t count) {
    if (file == 0 || file > problems->file_count) {
        return;
    }
    problems->files[file - 1].lines = lines;
    problems->files[file - 1].line_count = lines == NULL ? 0 : count;
}

void problems_cells(struct problems *problems, uint16_t file) {
    if (file > 0 && file <= problems->file_count) {
        problems->files[file - 1].cells = true;
    }
}

bool problems_has_cells(const struct problems *problems, uint16_t file) {
    return file > 0 && file <= problems->file_count && problems->files[file - 1].cells;
}

const char *problems_line_word(const struct problems *problems, uint16_t file) {
    return problems_has_cells(problems, file) ? "row" : "line";
}

/* `D7`: the column by the tabs of the line before the place. */
static struct place_words address(const struct problems *problems, struct place place) {
    const char *const line = text_or_empty(problems_line(problems, place));
    const size_t at = place.column > 0 ? place.column - 1u : strspn(line, "\t");
    unsigned column = 1;
    char letters[8];
    size_t first = sizeof letters - 1;
    struct place_words words;

    for (size_t i = 0; i < at && line[i] != '\0'; i++) {
        column += line[i] == '\t' ? 1 : 0;
    }
    letters[first] = '\0';
    for (; column > 0 && first > 0; column = (column - 1) / 26) {
        letters[--first] = (char)('A' + (column - 1) % 26);
    }
    (void)snprintf(words.text, sizeof words.text, "%s%u", letters + first, place.line);
    return words;
}

struct place_words problems_place(const struct problems *problems, struct place place) {
    struct place_words words = {""};

    if (place.line > 0 && problems_has_cells(problems, place.file)) {
        (void)snprintf(words.text, sizeof words.text, "!%.30s", address(problems, place).text);
    } else if (place.line > 0) {
        (void)snprintf(words.text, sizeof words.text, ":%u", place.line);
    }
    return words;
}

struct place_words problems_spot(const struct problems *problems, struct place place) {
    struct place_words words;

    if (problems_has_cells(problems, place.file)) {
        (void)snprintf(words.text, sizeof words.text, "cell %.26s", address(problems, place).text);
    } else {
        (void)snprintf(words.text, sizeof words.text, "line %u", place.line);
    }
    return words;
}

const char *problems_file_name(const struct problems *problems, uint16_t file) {
    return file == 0 || file > problems->file_count ? "" : problems->files[file - 1].name;
}

const char *problems_line(const struct problems *problems, struct place place) {
    const struct source_file *file;

    if (place.file == 0 || place.file > problems->file_count || place.line == 0) {
        return NULL;
    }
    file = &problems->files[place.file - 1];
    return place.line > file->line_count ? NULL : file->lines[place.line - 1];
}

static uint32_t hash_of(const struct problem *problem) {
    uint32_t hash = 2166136261U; /* FNV-1a */

    for (const char *c = problem->text; *c != '\0'; c++) {
        hash = (hash ^ (unsigned char)*c) * 16777619U;
    }
    return (hash ^ problem->place.file) * 16777619U;
}

static bool is_same(const struct problem *a, const struct problem *b) {
    return a->severity == b->severity && a->place.file == b->place.file &&
           strcmp(a->id, b->id) == 0 && strcmp(a->text, b->text) == 0;
}

/* The slot of a problem like this one, or the free one where it would go. */
static uint32_t *find_slot(const struct problems *problems, const struct problem *problem) {
    size_t mask = problems->index_room - 1;
    size_t slot = hash_of(problem) & mask;

    while (problems->index[slot] != 0 &&
           !is_same(&problems->list[problems->index[slot] - 1], problem)) {
        slot = (slot + 1) & mask;
    }
    return &problems->index[slot];
}

static bool build_index(struct problems *problems) {
    size_t room = 64;
    uint32_t *index;

    while (room < 4 * (problems->count + 1)) {
        room *= 2;
    }
    index = calloc(room, sizeof(*index));
    if (index == NULL) {
        return false;
    }
    free(problems->index);
    problems->index = index;
    problems->index_room = room;
    for (size_t i = 0; i < problems->count; i++) {
        *find_slot(problems, &problems->list[i]) = (uint32_t)(i + 1);
    }
    return true;
}

/* Puts a further line in its order. */
static void add_line(struct problems *problems, struct problem *problem, struct place place) {
    size_t count = problem->more_count;
    uint32_t line = place.line;
    size_t at;

    if (line == problem->place.line) {
        return;
    }
    if (line < problem->place.line) {
        uint32_t first = problem->place.line;

        problem->place = place;
        line = first;
    }
    if (count == 0 || (count >= 8 && (count & (count - 1)) == 0)) {
        uint32_t *more =
            pool_take(&problems->pool, count == 0 ? 8 : 2 * count, sizeof(*problem->more));

        if (more == NULL) {
            problems->failed = true;
            return;
        }
        if (count > 0) {
            memcpy(more, problem->more, count * sizeof(*more));
        }
        problem->more = more;
    }
    for (at = count; at > 0 && problem->more[at - 1] > line; at--) {
        problem->more[at] = problem->more[at - 1];
    }
    problem->more[at] = line;
    problem->more_count++;
    /* two faults of one line are one line */
    if (at > 0 && problem->more[at - 1] == line) {
        memmove(problem->more + at, problem->more + at + 1,
                (problem->more_count - at - 1) * sizeof(*problem->more));
        problem->more_count--;
    }
}

static void add(struct problems *problems, struct problem problem) {
    uint32_t *slot;
    bool failed;

    if (problem.text == NULL ||
        (problems->index_room < 2 * (problems->count + 1) && !build_index(problems))) {
        problems->failed = true;
        return;
    }
    slot = find_slot(problems, &problem);
    if (*slot != 0) {
        add_line(problems, &problems->list[*slot - 1], problem.place);
        return;
    }
    failed = problems->count >= UINT32_MAX - 1;
    problems->list = array_grow(problems->list, &problems->room, problems->count + 1,
                                sizeof(*problems->list), &failed);
    if (failed) {
        problems->failed = true;
        return;
    }
    problems->list[problems->count] = problem;
    problems->count++;
    *slot = (uint32_t)problems->count;
}

void problem_add(struct problems *problems, enum severity severity, const char *id,
                 struct place place, const char *format, ...) {
    va_list arguments;
    const char *text;

    va_start(arguments, format);
    text = pool_format_list(&problems->pool, format, arguments);
    va_end(arguments);
    add(problems, (struct problem){.id = id, .text = text, .place = place, .severity = severity});
}

const char *problem_quote(struct problems *problems, const char *text) {
    return text_or_empty(showable(problems, text, LONGEST_QUOTE));
}

/* Adds the place of a problem, accepted where takes says so; true: it was. */
static bool add_place(struct problems *problems, const struct problem *problem, struct place place,
                      problem_takes *takes, const void *context) {
    const bool taken = takes != NULL && takes(context, place);
    add(problems, (struct problem){.id = problem->id,
                                   .text = problem->text,
                                   .place = place,
                                   .severity = taken ? SEVERITY_ACCEPTED : problem->severity});
    return taken;
}

bool problems_accept(struct problems *problems, const char *id, problem_takes *takes,
                     const void *context) {
    struct problem *const old = problems->list;
    const size_t count = problems->count;
    bool any = false;

    problems->list = NULL;
    problems->count = 0;
    problems->room = 0;
    problems->index_room = 0; /* built anew by the next problem */
    for (size_t i = 0; i < count; i++) {
        const struct problem *const problem = &old[i];
        const bool asked = problem->severity == SEVERITY_WARNING && strcmp(problem->id, id) == 0;
        problem_takes *const here = asked ? takes : NULL;

        any = add_place(problems, problem, problem->place, here, context) || any;
        for (size_t m = 0; m < problem->more_count; m++) {
            const struct place place = {.file = problem->place.file, .line = problem->more[m]};

            any = add_place(problems, problem, place, here, context) || any;
        }
    }
    free(old);
    return any && !problems->failed;
}

size_t problems_count(const struct problems *problems, enum severity severity) {
    size_t count = 0;

    for (size_t i = 0; i < problems->count; i++) {
        count += problems->list[i].severity == severity ? 1 : 0;
    }
    return count;
}
