/* SPDX-License-Identifier: MIT */
/* A scan of our own finds where each cell stands and which lines belong together; libcsv then reads
 * the cells of that one record, strictly. */
#include "read/file/record.h"

#include "base/text.h"

#include <csv.h>
#include <stdlib.h>
#include <string.h>

/* A cell with more lines than this is a quote that somebody forgot to close. */
#define MOST_LINES 20
/* Longer than any row that a person reads; also keeps columns within 16 bits. */
#define LONGEST_RECORD ((size_t)20000)

char record_separator(const char *heading) {
    static const char separators[] = {',', ';', '\t'};
    size_t counts[sizeof(separators)] = {0};
    size_t best = 0;
    bool quoted = false;

    for (const char *c = heading; *c != '\0'; c++) {
        quoted = quoted != (*c == '"');
        for (size_t i = 0; i < sizeof(separators) && !quoted; i++) {
            counts[i] += *c == separators[i] ? 1 : 0;
        }
    }
    for (size_t i = 1; i < sizeof(separators); i++) {
        best = counts[i] > counts[best] ? i : best;
    }
    return separators[best];
}

char record_separator_of(const struct source *source, size_t at) {
    if (source->cells) {
        return RECORD_CELLS;
    }
    return record_separator(source->lines[at]);
}

/* The end of the cell at text: its separator or the end of the text. *open: its quote is not
 * closed. */
static const char *cell_end(const char *text, char separator, bool *open) {
    const char *at = text;

    *open = false;
    while (*at == ' ' || (*at == '\t' && separator != '\t')) {
        at++;
    }
    if (*at == '"') {
        for (at++; *at != '\0'; at++) {
            if (*at == '"' && at[1] == '"') {
                at++;
            } else if (*at == '"') {
                break;
            }
        }
        *open = *at == '\0';
    }
    while (*at != '\0' && *at != separator) {
        at++;
    }
    return at;
}

/* How many cells the text has; *open: the last one's quote is not closed. */
static size_t count_cells(const char *text, char separator, bool *open) {
    size_t count = 0;

    for (;;) {
        const char *end = cell_end(text, separator, open);

        count++;
        if (*end == '\0') {
            return count;
        }
        text = end + 1;
    }
}

/* The lines from at on, joined; a line end within a cell reads as a line feed. */
static char *join(const struct source *source, size_t at, size_t lines, struct pool *pool) {
    size_t size = lines;
    size_t used = 0;
    char *text;

    for (size_t i = 0; i < lines; i++) {
        size += strlen(source->lines[at + i]);
    }
    text = pool_take(pool, size + 1, 1);
    for (size_t i = 0; i < lines && text != NULL; i++) {
        size_t length = strlen(source->lines[at + i]);

        if (i > 0) {
            text[used++] = '\n';
        }
        memcpy(text + used, source->lines[at + i], length);
        used += length;
    }
    return text;
}

/* The text of the record; more lines than one where that closes its quote and gives the expected
 * number of cells. NULL: memory is out. */
static const char *gather(struct record *record, const struct source *source, size_t at,
                          char separator, size_t expected, struct pool *pool, bool *open) {
    const char *first = source->lines[at];

    record->lines = 1;
    (void)count_cells(first, separator, open);
    if (!*open) {
        return first;
    }
    for (size_t lines = 2; lines <= MOST_LINES && at + lines <= source->count; lines++) {
        bool still_open;
        char *text;

        if (source->bad[at + lines - 1]) {
            break;
        }
        text = join(source, at, lines, pool);
        if (text == NULL) {
            return NULL;
        }
        if ((expected == 0 || count_cells(text, separator, &still_open) == expected) &&
            count_cells(text, separator, &still_open) > 0 && !still_open) {
            record->lines = lines;
            *open = false;
            return text;
        }
    }
    return first;
}

/* The record, of so many cells, with every cell quoted the strict way. */
static char *quote_cells(const char *text, char separator, size_t cells, struct pool *pool) {
    size_t quotes = 2 * cells;
    char *strict;
    char *to;

    for (const char *c = text; *c != '\0'; c++) {
        quotes += *c == '"' ? 1 : 0;
    }
    strict = pool_take(pool, strlen(text) + quotes + 1, 1);
    to = strict;
    while (strict != NULL) {
        bool open;
        const char *end = cell_end(text, separator, &open);
        const char *from = text;

        from = text_skip_blanks(from);
        from = from < end ? from : end;
        if (*from == '"' && from < end) {
            memcpy(to, from, (size_t)(end - from));
            to += end - from;
        } else {
            *to++ = '"';
            for (; from < end; from++) {
                if (*from == '"') {
                    *to++ = '"';
                }
                *to++ = *from;
            }
            *to++ = '"';
        }
        if (*end == '\0') {
            break;
        }
        *to++ = separator;
        text = end + 1;
    }
    return strict;
}

/* What libcsv's callbacks fill. */
struct sink {
    struct record *record;
    size_t room;
    struct pool *pool;
};

static void take_cell(void *text, size_t size, void *data) {
    struct sink *sink = data;
    if (sink->record->count < sink->room) {
        char *copy = pool_text(sink->pool, text, size);
        const char *cell = "";

        for (char *c = copy; c != NULL && *c != '\0'; c++) {
            if (*c == '\n') {
                *c = ' ';
            }
        }
        if (copy != NULL) {
            cell = text_skip_blanks(copy);
            copy[text_trim_end(cell, copy + strlen(copy)) - copy] = '\0';
        }
        sink->record->cells[sink->record->count].text = cell;
        sink->record->count++;
    }
}

/* Parses a strict record. false: something stands behind a closing quote, or memory is out
 * (then the pool has failed). */
static bool parse(const char *strict, char separator, struct sink *sink) {
    struct csv_parser parser;
    size_t size = strlen(strict);
    bool good;

    if (csv_init(&parser, CSV_STRICT | CSV_STRICT_FINI | CSV_APPEND_NULL) != 0) {
        return false;
    }
    csv_set_delim(&parser, (unsigned char)separator);
    good = csv_parse(&parser, strict, size, take_cell, NULL, sink) == size &&
           csv_fini(&parser, take_cell, NULL, sink) == 0;
    if (!good && csv_error(&parser) != CSV_EPARSE) {
        sink->pool->failed = true;
    }
    csv_free(&parser);
    return good;
}

/* Where each cell stands in the lines of the record. */
static void set_places(struct record *record, const char *text, char separator,
                       struct place place) {
    const char *line = text;

    for (size_t i = 0; i < record->count; i++) {
        bool open;
        const char *end = cell_end(text, separator, &open);
        const char *from = text;
        const char *to = end;

        from = text_skip_blanks(from);
        from += *from == '"' ? 1 : 0;
        from = text_skip_blanks(from);
        from = from < to ? from : to;
        to = text_trim_end(from, to);
        if (to > from + 1 && *text == '"' && to[-1] == '"') {
            to--;
        }
        record->cells[i].place = place;
        record->cells[i].place.column = (uint16_t)(from - line + 1);
        record->cells[i].place.width = (uint16_t)(to > from ? to - from : 0);
        for (const char *c = text; c < end; c++) {
            if (*c == '\n') {
                place.line++;
                line = c + 1;
                record->cells[i].place.width = 0;
            }
        }
        if (*end == '\0') {
            break;
        }
        text = end + 1;
    }
}

/* --- sheets --- */

/* The cells of a row of a sheet: they are parted by tabs, and no quotes part or hold them. */
static bool take_cells(struct record *record, const char *line, struct place place, size_t expected,
                       struct pool *pool) {
    size_t count = 1;

    for (const char *c = line; *c != '\0'; c++) {
        count += *c == '\t' ? 1 : 0;
    }
    count = count < expected ? expected : count;
    record->cells = pool_take(pool, count, sizeof *record->cells);
    for (const char *text = line; record->cells != NULL; text++) {
        const char *const end = text + strcspn(text, "\t");
        const char *const skipped = text_skip_blanks(text);
        const char *const from = skipped < end ? skipped : end;
        const char *const to = text_trim_end(from, end);
        struct cell *const cell = &record->cells[record->count++];

        cell->text = from == to ? "" : pool_text(pool, from, (size_t)(to - from));
        cell->place = place;
        cell->place.column = (uint16_t)(from - line + 1);
        cell->place.width = (uint16_t)(to - from);
        text = end;
        if (*end == '\0' || cell->text == NULL) {
            break;
        }
    }
    place.column = (uint16_t)(strlen(line) + 1);
    while (record->cells != NULL && record->count < expected) { /* blank behind the last one */
        record->cells[record->count++] = (struct cell){"", place};
    }
    record->good = !pool_failed(pool);
    return record->good;
}

void record_look(struct record_looks *looks, const struct source *source, size_t at,
                 record_names *names, const void *context, struct pool *pool) {
    const char separator = record_separator_of(source, at);
    struct record record = {.lines = 1};
    bool unclosed;
    const char *const whole =
        source->cells ? NULL : gather(&record, source, at, separator, 0, pool, &unclosed);

    *looks = (struct record_looks){.lines = record.lines};
    for (const char *text = whole == NULL ? source->lines[at] : whole;
         looks->count < RECORD_MOST_LOOKED; text++) {
        bool open = false;
        const char *const end =
            source->cells ? text + strcspn(text, "\t") : cell_end(text, separator, &open);
        char word[64] = "";
        const char *from = text_skip_blanks(text);
        from = from < end ? from : end;
        const char *to = text_trim_end(from, end);

        if (!source->cells && to - from > 1 && *from == '"' && to[-1] == '"') {
            from++;
            to--;
        }
        unsigned char *const cell = &looks->cells[looks->count++];
        *cell = to > from ? RECORD_TEXT : RECORD_BLANK;
        if (to > from && (size_t)(to - from) < sizeof word) {
            memcpy(word, from, (size_t)(to - from));
            *cell = names(context, word) ? RECORD_NAME : RECORD_TEXT;
        }
        looks->used += *cell != RECORD_BLANK ? 1 : 0;
        looks->names += *cell == RECORD_NAME ? 1 : 0;
        text = end;
        if (*end == '\0') {
            return;
        }
    }
}

/* --- records --- */

static void report_quote(struct problems *problems, struct place place, bool open) {
    if (open) {
        problem_add(problems, SEVERITY_ERROR, "open-quote", place,
                    "a double quote is opened and not closed in this row; close it, or take it "
                    "away");
    } else {
        problem_add(problems, SEVERITY_ERROR, "stray-quote", place,
                    "text stands behind a closing double quote; double the quotes within a quoted "
                    "cell, as in \"23 7/16\"\"\", or take the outer ones away");
    }
}

bool record_read(struct record *record, const struct source *source, size_t at, char separator,
                 size_t expected, struct problems *problems) {
    struct place place = {.file = source->file, .line = (uint32_t)(at + 1)};
    struct sink sink = {.record = record, .pool = &problems->pool};
    bool open = false;
    bool after;
    const char *text;
    char *strict;

    *record = (struct record){.lines = 1};
    if (source->bad[at]) {
        return true;
    }
    if (source->cells) {
        problems->failed = !take_cells(record, source->lines[at], place, expected, &problems->pool);
        return !problems->failed;
    }
    if (strlen(source->lines[at]) > LONGEST_RECORD) {
        problem_add(problems, SEVERITY_ERROR, "line-too-long", place,
                    "the line has %zu bytes; expected at most %zu", strlen(source->lines[at]),
                    LONGEST_RECORD);
        return true;
    }
    text = gather(record, source, at, separator, expected, &problems->pool, &open);
    if (text == NULL) {
        problems->failed = true;
        return false;
    }
    if (open || strlen(text) > LONGEST_RECORD) {
        report_quote(problems, place, true);
        return true;
    }
    sink.room = count_cells(text, separator, &after);
    strict = quote_cells(text, separator, sink.room, &problems->pool);
    record->cells = pool_take(&problems->pool, sink.room, sizeof(*record->cells));
    if (strict == NULL || record->cells == NULL) {
        problems->failed = true;
        return false;
    }
    if (!parse(strict, separator, &sink)) {
        report_quote(problems, place, false);
        return true;
    }
    set_places(record, text, separator, place);
    record->good = true;
    return true;
}
