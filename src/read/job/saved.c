/* SPDX-License-Identifier: MIT */
/* Nobody writes such a document by hand, so the first fault is the only one told. The reader of a
 * job gets nothing that it could not get from a file. */
#include "read/job/saved.h"

#include "base/text.h"
#include "model/limits.h"
#include "read/file/source.h"

#include <jansson.h>
#include <limits.h>
#include <string.h>

struct saving {
    struct problems *problems;
    const char *path;
    uint16_t document; /* among the files of problems */
    uint16_t file;     /* the one that is taken from it */
    size_t lines;      /* keys and sections of it so far */
    bool wrong;
};

bool saved_is(const char *path) {
    const char *const ending = strrchr(path, '.');
    return (ending != NULL && text_same(ending, ".json")) || source_begins(path, '{');
}

/* --- texts and places --- */

/* A text as a file could have it; "" where it is none, which is noted. */
static const char *take_text(struct saving *s, const json_t *value, size_t longest) {
    const char *const text = json_string_value(value);
    if (text == NULL || strlen(text) > longest || !source_line_good(text)) {
        s->wrong = true;
        return "";
    }
    return text_or_empty(pool_text(&s->problems->pool, text, strlen(text)));
}

static bool is_blank(char c) {
    return c == ' ' || c == '\t';
}

/* The same of one that a file can't leave empty, nor begin or end with a blank. */
static const char *take_word(struct saving *s, const json_t *value) {
    const char *const text = take_text(s, value, INI_LONGEST_LINE);
    s->wrong = s->wrong || *text == '\0' || is_blank(text[0]) || is_blank(text[strlen(text) - 1]);
    return text;
}

static struct place take_line(struct saving *s, const json_t *object) {
    const json_t *const line = json_object_get(object, "line");
    const json_int_t number = json_integer_value(line);
    if (!json_is_integer(line) || number < 1 || number > UINT32_MAX) {
        s->wrong = true;
        return (struct place){.file = s->file};
    }
    return (struct place){.file = s->file, .line = (uint32_t)number};
}

/* The list under that key; NULL: there is none, which is noted. */
static const json_t *take_list(struct saving *s, const json_t *object, const char *key) {
    const json_t *const list = json_object_get(object, key);
    s->wrong = s->wrong || !json_is_array(list);
    return json_is_array(list) ? list : NULL;
}

/* Begins a file of the document: `saved.json: kitchen.ini`. */
static uint16_t take_file(struct saving *s, const json_t *part) {
    const char *const name = take_text(s, json_object_get(part, "file"), PATH_MAX);
    s->file = problems_file(s->problems, pool_words(&s->problems->pool, "%s: %s", s->path, name));
    s->lines = 0;
    return s->file;
}

/* --- sections and keys --- */

static void take_keys(struct saving *s, const json_t *object, struct ini_section *section) {
    const json_t *const list = take_list(s, object, "keys");
    const size_t count = json_array_size(list);
    s->lines += 1 + count;
    s->wrong = s->wrong || s->lines > INI_MOST_LINES;
    section->keys = s->wrong ? NULL : pool_take(&s->problems->pool, count, sizeof *section->keys);
    for (size_t i = 0; section->keys != NULL && i < count && !s->wrong; i++) {
        const json_t *const one = json_array_get(list, i);
        const char *const name = take_word(s, json_object_get(one, "key"));
        const struct place place = take_line(s, one);
        for (size_t k = 0; k < i; k++) { /* a file has a key once in a section */
            s->wrong = s->wrong || text_same(section->keys[k].name, name);
        }
        section->keys[section->count++] =
            (struct ini_key){.name = name,
                             .value = take_word(s, json_object_get(one, "value")),
                             .place = place,
                             .value_place = place};
    }
}

static void take_ini(struct saving *s, const json_t *inputs, const char *name, struct ini *ini) {
    const json_t *const part = json_object_get(inputs, name);
    const json_t *const list = take_list(s, part, "sections");
    const size_t count = json_array_size(list);
    ini->file = take_file(s, part);
    ini->open = true;
    s->wrong = s->wrong || count > INI_MOST_LINES;
    ini->sections = s->wrong ? NULL : pool_take(&s->problems->pool, count, sizeof *ini->sections);
    for (size_t i = 0; ini->sections != NULL && i < count && !s->wrong; i++) {
        const json_t *const one = json_array_get(list, i);
        struct ini_section *const section = &ini->sections[ini->count++];
        section->kind = take_word(s, json_object_get(one, "kind"));
        section->name = take_text(s, json_object_get(one, "name"), INI_LONGEST_LINE);
        section->place = take_line(s, one);
        for (size_t k = 0; k < i; k++) { /* a file has a section once */
            s->wrong = s->wrong || (text_same(ini->sections[k].kind, section->kind) &&
                                    text_same(ini->sections[k].name, section->name));
        }
        take_keys(s, one, section);
    }
}

/* --- tables --- */

/* Cells of a row or of the heading; NULL: they are not as they should, or memory is out. */
static struct cell *take_cells(struct saving *s, const json_t *object, size_t columns) {
    const json_t *const list = take_list(s, object, "cells");
    const struct place place = take_line(s, object);
    struct cell *const cells = pool_take(&s->problems->pool, columns, sizeof *cells);
    s->wrong = s->wrong || json_array_size(list) != columns;
    for (size_t i = 0; cells != NULL && i < columns && !s->wrong; i++) {
        cells[i] = (struct cell){take_text(s, json_array_get(list, i), SIZE_MAX), place};
    }
    return s->wrong ? NULL : cells;
}

static void take_table(struct saving *s, const json_t *inputs, const char *name, size_t most,
                       struct table *table) {
    const json_t *const part = json_object_get(inputs, name);
    const json_t *const heading = json_object_get(part, "heading");
    const json_t *const rows = take_list(s, part, "rows");
    const size_t count = json_array_size(rows);
    table->file = take_file(s, part);
    table->open = true;
    table->columns = json_array_size(json_object_get(heading, "cells"));
    table->heading = take_cells(s, heading, table->columns);
    s->wrong = s->wrong || count > most || table->columns == 0;
    table->rows = s->wrong ? NULL : pool_take(&s->problems->pool, count, sizeof *table->rows);
    for (size_t i = 0; table->rows != NULL && i < count && !s->wrong; i++) {
        const json_t *const one = json_array_get(rows, i);
        table->rows[table->count++] = (struct table_row){
            .cells = take_cells(s, one, table->columns), .place = take_line(s, one)};
    }
}

/* --- the document --- */

/* Lines of the source as jansson asks for them, but for what stands in `estimates`: of it nothing
 * is used, and as values of jansson it would take ten times the memory of the file. */
struct feed {
    const struct source *source;
    size_t line, at; /* the next byte */
    unsigned depth;  /* open objects and lists */
    bool in_text, escaped, skips;
    char key[sizeof "estimates"]; /* how the last text of the outermost object begins */
    size_t key_size;
};

static bool at_estimates(const struct feed *feed) {
    const size_t size = sizeof feed->key - 1;
    return feed->depth == 1 && feed->key_size == size && memcmp(feed->key, "estimates", size) == 0;
}

static void feed_text(struct feed *feed, char c) {
    if (feed->escaped) {
        feed->escaped = false;
    } else if (c == '\\') {
        feed->escaped = true;
    } else if (c == '"') {
        feed->in_text = false;
        return;
    }
    if (feed->depth == 1 && feed->key_size < sizeof feed->key) {
        feed->key[feed->key_size++] = c;
    }
}

/* Whether the next byte goes on to jansson. Line ends do, for the places of its errors. */
static bool passes(struct feed *feed, char c) {
    const bool skipped = feed->skips;
    if (feed->in_text) {
        feed_text(feed, c);
    } else if (c == '"') {
        feed->in_text = true;
        feed->key_size = 0;
    } else if (c == '[' || c == '{') {
        feed->skips = feed->skips || at_estimates(feed);
        feed->depth++;
    } else if (c == ']' || c == '}') {
        feed->depth -= feed->depth > 0 ? 1 : 0;
        feed->skips = feed->skips && feed->depth > 1;
    }
    return !skipped || !feed->skips || c == '\n';
}

static size_t feed_bytes(void *buffer, size_t size, void *context) {
    struct feed *const feed = context;
    size_t used = 0;
    while (used < size && feed->line < feed->source->count) {
        const char next = feed->source->lines[feed->line][feed->at++];
        char c = next;
        if (next == '\0') {
            c = '\n';
            feed->line++;
            feed->at = 0;
        }
        if (passes(feed, c)) {
            ((char *)buffer)[used++] = c;
        }
    }
    return used;
}

/* The document; NULL: it was reported, or memory is out. */
static json_t *load(const struct saving *s, const struct source *source) {
    struct feed feed = {.source = source};
    json_error_t error = {0};
    json_t *const document = json_load_callback(feed_bytes, &feed, JSON_REJECT_DUPLICATES, &error);
    if (document == NULL &&
        (error.text[0] == '\0' || json_error_code(&error) == json_error_out_of_memory)) {
        /* the library says nothing of memory in most places; in some it takes the lack of it for a
         * fault of the JSON, which nobody can tell from one */
        s->problems->failed = true;
    } else if (document == NULL) {
        const size_t line = error.line < 1 ? 1 : (size_t)error.line;
        problem_add(s->problems, SEVERITY_ERROR, "saved-damaged",
                    (struct place){.line = (uint32_t)(line > source->count ? source->count : line),
                                   .file = s->document},
                    "the JSON is damaged or not whole here; save the quote again");
    }
    return document;
}

/* Whether it is a quote of this program that has its inputs; else it is reported. */
static bool has_inputs(const struct saving *s, const json_t *document) {
    struct problems *const problems = s->problems;
    const struct place place = {.file = s->document};
    const char *const program = json_string_value(json_object_get(document, "program"));
    const char *const command = json_string_value(json_object_get(document, "command"));
    if (program == NULL || command == NULL || strcmp(program, "doorcost") != 0) {
        problem_add(problems, SEVERITY_ERROR, "saved-other", place,
                    "this is JSON, but not what this program prints; save a quote with 'quote "
                    "--json'");
    } else if (strcmp(command, "quote") != 0) {
        problem_add(problems, SEVERITY_ERROR, "saved-other", place,
                    "this is what '%s --json' prints; only 'quote --json' tells what the files "
                    "say",
                    problem_quote(problems, command));
    } else if (json_object_get(document, "job") == NULL) {
        problem_add(problems, SEVERITY_ERROR, "saved-faulty", place,
                    "this quote has only problems, because its files had errors; save one without "
                    "errors");
    } else if (json_object_get(document, "inputs") == NULL) {
        problem_add(problems, SEVERITY_ERROR, "saved-older", place,
                    "this quote was saved by an older version, which left out what the files say; "
                    "give its job file");
    } else {
        return true;
    }
    return false;
}

static void take_inputs(struct saving *s, const json_t *inputs, struct job_texts *texts) {
    static const char *const parts[] = {"job", "rates", "doors", "woods", "rack"};
    size_t at = 0;
    take_ini(s, inputs, parts[at], &texts->job);
    if (!s->wrong) {
        take_ini(s, inputs, parts[++at], &texts->rates);
    }
    if (!s->wrong) {
        take_table(s, inputs, parts[++at], MOST_DOOR_ROWS, &texts->list);
    }
    if (!s->wrong && !json_is_null(json_object_get(inputs, "woods"))) {
        take_table(s, inputs, parts[++at], MOST_WOODS, &texts->woods);
    }
    const json_t *const rack = json_object_get(inputs, "rack"); /* older quotes have none */
    if (!s->wrong && rack != NULL && !json_is_null(rack)) {
        at = sizeof parts / sizeof *parts - 1;
        take_table(s, inputs, parts[at], MOST_RACK, &texts->rack);
    }
    if (s->wrong) {
        problem_add(s->problems, SEVERITY_ERROR, "saved-damaged",
                    (struct place){.file = s->document},
                    "'%s' under 'inputs' is not as 'quote --json' writes it; save the quote again",
                    parts[at]);
    }
}

bool saved_read(struct job_texts *texts, const char *path, struct problems *problems) {
    struct saving s = {.problems = problems, .path = path};
    struct source source;
    *texts = (struct job_texts){.path = path, .saved = true};
    if (!source_read(&source, path, (struct place){0}, problems)) {
        return false;
    }
    for (size_t i = 0; i < source.count; i++) {
        if (source.bad[i]) {
            return !problems->failed; /* it was reported */
        }
    }
    if (!source.open) {
        return !problems->failed;
    }
    s.document = source.file;
    json_t *const document = load(&s, &source);
    if (document != NULL && has_inputs(&s, document)) {
        take_inputs(&s, json_object_get(document, "inputs"), texts);
    }
    json_decref(document);
    texts->job.open = texts->job.open && !s.wrong;
    return !problems->failed && !pool_failed(&problems->pool);
}
