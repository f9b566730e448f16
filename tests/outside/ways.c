/* SPDX-License-Identifier: MIT */
#include "ways.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include <cmocka.h>

#define TEXT_SIZE 2048

/* Puts the row's cells into a text. Returns whether none of them is empty. */
static bool put(char *out, const struct rows *rows, size_t row, const char *text, size_t size) {
    bool whole = true;
    size_t at = 0;
    for (const char *from = text; from < text + size;) {
        const char *const end = *from == '{' ? strchr(from, '}') : NULL;
        if (end == NULL) {
            out[at++] = *from++;
        } else {
            char column[64];
            (void)snprintf(column, sizeof column, "%.*s", (int)(end - from - 1), from + 1);
            const char *const cell = rows_cell(rows, row, column);
            whole = whole && *cell != '\0';
            at += (size_t)snprintf(out + at, TEXT_SIZE - at, "%s", cell);
            from = end + 1;
        }
        assert_true(at + 1 < TEXT_SIZE);
    }
    out[at] = '\0';
    return whole;
}

/* An edit with the row's cells, without the lines of which a cell is empty; false: none is left. */
static bool fill_edit(char *out, const struct rows *rows, size_t row, const char *edit) {
    const char *const bar = strchr(edit, '|');
    assert_non_null(bar);
    size_t at = (size_t)(bar + 1 - edit);
    const size_t start = at;
    memcpy(out, edit, at);
    for (const char *line = bar + 1; *line != '\0';) {
        const size_t size = strcspn(line, "\n");
        char text[TEXT_SIZE];
        if (put(text, rows, row, line, size)) {
            at += (size_t)snprintf(out + at, TEXT_SIZE - at, "%s%s", at > start ? "\n" : "", text);
            assert_true(at + 1 < TEXT_SIZE);
        }
        line += size + (line[size] == '\n' ? 1 : 0);
    }
    out[at] = '\0';
    return at > start;
}

/* Writes the row's table of woods; the edit that names it into out. */
static void write_woods(char *path, char *out, const struct rows *rows, size_t row,
                        const char *woods) {
    char text[TEXT_SIZE];
    (void)snprintf(path, 32, "%s", "/tmp/doorcost-woods-XXXXXX");
    const int file = mkstemp(path);
    assert_true(file >= 0);
    (void)put(text, rows, row, woods, strlen(woods));
    assert_int_equal(write(file, text, strlen(text)), strlen(text));
    (void)close(file);
    (void)snprintf(out, TEXT_SIZE, "shop|woods = %s", path);
}

int64_t ways_value(const struct bench *bench, const struct want *want) {
    const char *const thing = bench_thing(bench, want);
    fig figure = {0};
    assert_non_null(thing);
    memcpy(&figure, thing + want->at, sizeof figure);
    assert_false(fig_none(figure));
    return tape_scaled(&bench->estimate.tape, figure, 6) * 1000;
}

/* The first figure of that name. */
static int64_t named(const struct bench *bench, const char *name) {
    const struct tape *const tape = &bench->estimate.tape;
    for (uint32_t id = 1; id < tape->count; id++) {
        if (strcmp(tape_label(tape, (fig){id}), name) == 0) {
            return tape_scaled(tape, (fig){id}, 6) * 1000;
        }
    }
    fail_msg("no figure is called '%s'", name);
    return 0;
}

static int64_t go(const struct way *way, const struct rows *rows, size_t row) {
    static char texts[BENCH_MOST_EDITS][TEXT_SIZE];
    const char *edits[BENCH_MOST_EDITS] = {NULL};
    char doors[TEXT_SIZE];
    char woods[32] = "";
    struct bench bench;
    size_t n = 0;
    if (way->woods != NULL) {
        write_woods(woods, texts[n], rows, row, way->woods);
        edits[n] = texts[n];
        n++;
    }
    for (size_t i = 0; i + 1 < BENCH_MOST_EDITS && way->edits[i] != NULL; i++) {
        if (fill_edit(texts[n], rows, row, way->edits[i])) {
            edits[n] = texts[n];
            n++;
        }
    }
    (void)put(doors, rows, row, way->doors, strlen(way->doors));
    bench_open(&bench, rows_cell(rows, row, "id"), way->unit, edits, doors);
    bench_sound(&bench);
    if (*woods != '\0') {
        (void)unlink(woods);
    }
    assert_int_equal(bench.result, ESTIMATE_OK);
    const int64_t value = way->ask != NULL      ? way->ask(&bench, rows, row)
                          : way->figure != NULL ? named(&bench, way->figure)
                                                : ways_value(&bench, &way->answer);
    assert_int_equal(bench_close(&bench), 0);
    return value;
}

void ways_run(const char *file, const struct way *ways, size_t count) {
    struct rows rows;
    rows_read(&rows, file);
    for (size_t row = 0; row < rows.count; row++) {
        size_t w = 0;
        while (w < count && !rows_check_is(&rows, row, ways[w].check)) {
            w++;
        }
        if (w < count) {
            rows_expect(&rows, row, go(&ways[w], &rows, row));
        } else {
            rows_pass_over(&rows, row);
        }
    }
    rows_done(&rows);
}
