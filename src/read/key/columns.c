/* SPDX-License-Identifier: MIT */
#include "read/key/columns.h"

#include "base/array.h"
#include "base/text.h"

static const struct key *find(const struct column_set *sets, size_t count, const char *name,
                              size_t *at) {
    for (size_t i = 0; i < count; i++) {
        const struct key *key = key_find(sets[i].keys, sets[i].count, name);

        if (key != NULL) {
            *at = sets[i].at;
            return key;
        }
    }
    return NULL;
}

struct known {
    const struct column_set *sets;
    size_t count;
};

static bool is_name(const void *context, const char *text) {
    const struct known *const known = context;
    return find(known->sets, known->count, text, &(size_t){0}) != NULL;
}

bool columns_table(struct table *table, const char *path, struct place asked, size_t most,
                   const struct column_set *sets, size_t count, struct problems *problems) {
    const struct known known = {sets, count};
    return table_read(table, path, asked,
                      (struct table_wanted){.most = most, .names = is_name, .context = &known},
                      problems);
}

/* What the columns of people's own lists are called; common practice, no source. */
static const char *meant_by(const char *written) {
    static const struct {
        const char *written, *column;
    } others[] = {{"qty", "count"},      {"quantity", "count"}, {"pieces", "count"},
                  {"pcs", "count"},      {"w", "width"},        {"h", "height"},
                  {"no", "id"},          {"number", "id"},      {"door", "id"},
                  {"name", "id"},        {"type", "use"},       {"kind", "use"},
                  {"remarks", "remark"}, {"comment", "remark"}, {"hinging", "hinge side"},
                  {"location", "room"}};

    for (size_t i = 0; i < COUNT_OF(others); i++) {
        if (text_same(others[i].written, written)) {
            return others[i].column;
        }
    }
    return NULL;
}

static void report_unknown(struct reader *reader, const struct cell *cell,
                           const struct column_set *sets, size_t count) {
    size_t names_count = 0;
    const char **names;
    const char *nearest;

    for (size_t i = 0; i < count; i++) {
        names_count += sets[i].count;
    }
    names = pool_take(&reader->problems->pool, names_count, sizeof(*names));
    if (names == NULL) {
        return;
    }
    names_count = 0;
    for (size_t i = 0; i < count; i++) {
        for (size_t k = 0; k < sets[i].count; k++) {
            names[names_count++] = sets[i].keys[k].name;
        }
    }
    nearest = meant_by(cell->text);
    nearest = nearest == NULL || find(sets, count, nearest, &(size_t){0}) == NULL
                  ? text_nearest(cell->text, names, names_count)
                  : nearest;
    if (nearest != NULL) {
        problem_add(reader->problems, SEVERITY_ERROR, "unknown-column", cell->place,
                    "column '%s' is not known; did you mean '%s'?",
                    problem_quote(reader->problems, cell->text), nearest);
    } else {
        problem_add(reader->problems, SEVERITY_ERROR, "unknown-column", cell->place,
                    "column '%s' is not known; see the columns in docs/formats.md",
                    problem_quote(reader->problems, cell->text));
    }
}

/* Whether an unknown column was told to be meant as this one: then it does not lack. */
static bool is_suggested(const struct table *table, const struct column *columns,
                         const char *name) {
    for (size_t i = 0; i < table->columns; i++) {
        const char *const meant = columns[i].key == NULL ? meant_by(table->heading[i].text) : NULL;

        if (meant != NULL ? text_same(meant, name)
                          : columns[i].key == NULL && table->heading[i].text[0] != '\0' &&
                                text_nearest(table->heading[i].text, &name, 1) != NULL) {
            return true;
        }
    }
    return false;
}

static void report_missing(struct reader *reader, const struct table *table,
                           const struct column *columns, const struct column_set *set) {
    const char *lacks = "";
    size_t lacking = 0;

    for (size_t k = 0; k < set->count; k++) {
        bool there = !set->keys[k].needed;

        for (size_t i = 0; i < table->columns && !there; i++) {
            there = columns[i].key == &set->keys[k];
        }
        if (!there && !is_suggested(table, columns, set->keys[k].name)) {
            lacks = pool_words(&reader->problems->pool, "%s%s'%s'", lacks,
                               lacking++ == 0 ? "" : ", ", set->keys[k].name);
        }
    }
    if (lacking > 0) {
        problem_add(reader->problems, SEVERITY_ERROR, "missing-column", table->heading[0].place,
                    lacking == 1 ? "the heading lacks the column %s; it is needed"
                                 : "the heading lacks the columns %s; they are needed",
                    lacks);
    }
}

/* None of the cells is a column: then the line is a row, or a title. */
static void report_heading(struct reader *reader, const struct table *table,
                           const struct column_set *sets, size_t count) {
    const char *needed = "";

    for (size_t i = 0; i < count; i++) {
        for (size_t k = 0; k < sets[i].count; k++) {
            if (sets[i].keys[k].needed) {
                needed = pool_words(&reader->problems->pool, "%s%s%s", needed,
                                    needed[0] == '\0' ? "" : ",", sets[i].keys[k].name);
            }
        }
    }
    problem_add(reader->problems, SEVERITY_ERROR, "no-heading", table->heading[0].place,
                "the first line is no heading, as none of its cells names a column; put a line "
                "like '%s' above the rows, and nothing above that",
                needed);
}

struct column *columns_find(struct reader *reader, const struct table *table,
                            const struct column_set *sets, size_t count) {
    size_t known = 0;
    struct column *columns = pool_take(&reader->problems->pool, table->columns, sizeof(*columns));

    if (columns == NULL) {
        return NULL;
    }
    for (size_t i = 0; i < table->columns; i++) {
        columns[i].key = find(sets, count, table->heading[i].text, &columns[i].at);
        known += columns[i].key != NULL ? 1 : 0;
    }
    if (known == 0) {
        report_heading(reader, table, sets, count);
        return columns;
    }
    for (size_t i = 0; i < table->columns; i++) {
        const struct cell *cell = &table->heading[i];

        if (cell->text[0] == '\0') {
            continue; /* a column without a heading is the user's own */
        }
        if (columns[i].key == NULL) {
            report_unknown(reader, cell, sets, count);
        }
        for (size_t k = 0; k < i && columns[i].key != NULL; k++) {
            if (columns[k].key == columns[i].key) {
                problem_add(reader->problems, SEVERITY_ERROR, "duplicate-column", cell->place,
                            "column '%s' stands twice; give each column once",
                            columns[i].key->name);
                columns[i].key = NULL;
            }
        }
    }
    for (size_t i = 0; i < count; i++) {
        report_missing(reader, table, columns, &sets[i]);
    }
    return columns;
}

void columns_read(struct reader *reader, const struct column *columns, const struct table *table,
                  const struct table_row *row, const struct column_set *sets, size_t count,
                  void *target) {
    const char *lacks = "";
    const struct key *last = NULL; /* the only one that lacks */
    size_t lacking = 0;

    for (size_t i = 0; i < count; i++) {
        for (size_t k = 0; k < sets[i].count; k++) {
            key_preset(&sets[i].keys[k], row->place, (char *)target + sets[i].at);
        }
    }
    for (size_t i = 0; i < table->columns; i++) {
        const struct key *key = columns[i].key;
        const struct cell *cell = &row->cells[i];

        if (key == NULL) {
            continue;
        }
        if (cell->text[0] != '\0') {
            key->kind.read(reader, key, &(struct entry){.text = cell->text, .place = cell->place},
                           (char *)target + columns[i].at);
        } else if (key->needed) {
            lacks = pool_words(&reader->problems->pool, "%s%s%s", lacks,
                               lacks[0] == '\0' ? "" : " and no ", key->name);
            last = lacking++ == 0 ? key : NULL;
        }
    }
    if (last != NULL) {
        problem_add(reader->problems, SEVERITY_ERROR, "missing-cell", row->place,
                    "the row has no %s; expected one like '%s'", lacks, last->example);
    } else if (lacking > 0) {
        problem_add(reader->problems, SEVERITY_ERROR, "missing-cell", row->place,
                    "the row has no %s; fill them in, or take the row away", lacks);
    }
}
