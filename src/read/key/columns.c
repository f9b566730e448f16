/* SPDX-License-Identifier: MIT */
#include "read/key/columns.h"

#include "base/array.h"
#include "base/manual.h"
#include "base/text.h"
#include "read/file/ini_edit.h"
#include "read/key/grammar.h"

#include <string.h>

struct known {
    const struct column_set *sets;
    size_t count;
};

static bool is_name(const void *context, const char *text) {
    const struct known *const known = context;
    const struct heading heading = heading_read(text, known->sets, known->count);
    return heading.key != NULL || heading.by_cells != NULL;
}

bool columns_table(struct table *table, const char *path, struct place asked, size_t most,
                   const struct column_set *sets, size_t count, struct problems *problems) {
    const struct known known = {sets, count};
    return table_read(table, path, asked,
                      (struct table_wanted){.most = most, .names = is_name, .context = &known},
                      problems);
}

static void report_unknown(struct reader *reader, const struct cell *cell, const char *advice,
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
    nearest = text_nearest(cell->text, names, names_count);
    const char *const quoted = problem_quote(reader->problems, cell->text);
    struct pool *const pool = &reader->problems->pool;
    /* of a list of doors the job can say so, by names that commas part */
    const char *const own = reader->columns == NULL || strchr(cell->text, ',') != NULL
                                ? NULL
                                : ini_value(cell->text, pool);
    const char *const leave =
        own == NULL
            ? "take the name away where the column is yours alone: one without a name is not read"
            : pool_words(pool, "leave it out by 'own columns = %s' in [job]",
                         problem_quote(reader->problems, own));
    if (advice != NULL) {
        problem_add(reader->problems, SEVERITY_ERROR, "unknown-column", cell->place,
                    "column '%s' is not taken as it stands; %s; or %s", quoted, advice, leave);
    } else if (nearest != NULL) {
        problem_add(reader->problems, SEVERITY_ERROR, "unknown-column", cell->place,
                    "column '%s' is not known; did you mean '%s'?", quoted, nearest);
    } else {
        problem_add(reader->problems, SEVERITY_ERROR, "unknown-column", cell->place,
                    "column '%s' is not known; name it as in %s, or %s", quoted,
                    manual_name(pool, sets[0].page), leave);
    }
}

/* Whether an unknown column was told to be meant as this one: then it does not lack. */
static bool is_suggested(const struct table *table, const struct heading *columns,
                         const char *name) {
    for (size_t i = 0; i < table->columns; i++) {
        const char *const text = table->heading[i].text;

        if (columns[i].key == NULL && text[0] != '\0' &&
            (text_nearest(text, &name, 1) != NULL || text_holds_word(text, name, strlen(name)) ||
             text_holds_word(columns[i].advice, name, strlen(name)))) {
            return true;
        }
    }
    return false;
}

static void report_missing(struct reader *reader, const struct table *table,
                           const struct heading *columns, const struct column_set *set) {
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
                "like '%s' above the rows",
                needed);
}

static void report_twice(struct reader *reader, const struct cell *first, const struct cell *second,
                         const struct key *key) {
    struct problems *const problems = reader->problems;

    if (text_same(first->text, second->text)) {
        problem_add(problems, SEVERITY_ERROR, "duplicate-column", second->place,
                    "column '%s' stands twice; give each column once", key->name);
    } else {
        problem_add(problems, SEVERITY_ERROR, "duplicate-column", second->place,
                    "columns '%s' and '%s' both mean '%s'; keep the one that holds, and take the "
                    "name of the other away: a column without one is not read",
                    problem_quote(problems, first->text), problem_quote(problems, second->text),
                    key->name);
    }
}

/* What the line above the heading has over a column without a name, which would go unread. */
static void report_above(struct reader *reader, const struct table *table) {
    size_t used = 0;

    for (size_t i = 0; i < table->above_count; i++) {
        used += table->above[i].text[0] != '\0' ? 1 : 0;
    }
    for (size_t i = 0; used > 1 && i < table->above_count && i < table->columns; i++) {
        const struct cell *const above = &table->above[i];

        if (above->text[0] != '\0' && table->heading[i].text[0] == '\0' &&
            table_has_cells(table, i)) {
            problem_add(
                reader->problems, SEVERITY_ERROR, "unknown-column", above->place,
                "'%s' stands above a column that has no name in the line of headings; write "
                "its name there, or leave a blank line between where this is a title",
                problem_quote(reader->problems, above->text));
        }
    }
}

/* Whether a column is called so. */
static bool is_called(const struct heading *called, size_t columns, const struct key *key) {
    for (size_t i = 0; i < columns; i++) {
        if (called[i].key == key) {
            return true;
        }
    }
    return false;
}

/* `Type`, or a name that is like none, over nothing but door and drawer front is `use`; so is
 * `Style`, where no column is called that. called: what each column means by its heading alone. */
static struct heading by_cells(const struct heading *called, const struct table *table,
                               size_t column, const struct column_set *sets, size_t count) {
    const struct heading *const own = &called[column];
    const bool strange =
        own->key == NULL && own->advice == NULL && table->heading[column].text[0] != '\0';
    const char *const meant = own->by_cells != NULL ? own->by_cells : strange ? "use" : NULL;
    const struct heading told =
        meant == NULL ? (struct heading){0} : heading_read(meant, sets, count);
    bool taken = told.key != NULL && table_has_cells(table, column) &&
                 ((own->key == NULL && !strange) || !is_called(called, table->columns, told.key));

    for (size_t i = 0; taken && i < table->count; i++) {
        const char *const text = table->rows[i].cells[column].text;
        taken = text[0] == '\0' || choice_named(told.key, text) != NULL;
    }
    return taken ? told : *own;
}

/* `Location` beside `Room` is a note, the place in the room; and `Cabinet` behind `Where`. */
static struct heading second_of(const struct heading *called, const struct table *table,
                                size_t column, const struct column_set *sets, size_t count) {
    const struct heading *const own = &called[column];
    size_t alike = 0;
    bool before = false; /* another is the one that it would mean */
    for (size_t i = 0; i < table->columns; i++) {
        const bool same = called[i].key == own->key;
        alike += same ? 1 : 0;
        before = before || (same && i != column && (called[i].second == NULL || i < column));
    }
    const struct heading told =
        alike == 2 && before ? heading_read(own->second, sets, count) : (struct heading){0};
    return told.key != NULL && !is_called(called, table->columns, told.key) ? told : *own;
}

struct heading *columns_mean(const struct table *table, const struct column_set *sets, size_t count,
                             struct pool *pool) {
    struct heading *const called = pool_take(pool, table->columns, sizeof *called);
    struct heading *const columns = pool_take(pool, table->columns, sizeof *columns);

    if (called == NULL || columns == NULL) {
        return NULL;
    }
    for (size_t i = 0; i < table->columns; i++) {
        called[i] = heading_read(table->heading[i].text, sets, count);
    }
    for (size_t i = 0; i < table->columns; i++) {
        columns[i] = by_cells(called, table, i, sets, count);
        columns[i] =
            columns[i].second == NULL ? columns[i] : second_of(called, table, i, sets, count);
    }
    return columns;
}

struct heading *columns_find(struct reader *reader, const struct table *table,
                             const struct column_set *sets, size_t count) {
    size_t known = 0;
    struct heading *const columns = columns_mean(table, sets, count, &reader->problems->pool);

    if (columns == NULL) {
        return NULL;
    }
    for (size_t i = 0; i < table->columns; i++) {
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
        if (columns[i].key == NULL || columns[i].advice != NULL) {
            report_unknown(reader, cell, columns[i].advice, sets, count);
        }
        for (size_t k = 0; k < i && columns[i].key != NULL; k++) {
            if (columns[k].key == columns[i].key) {
                report_twice(reader, &table->heading[k], cell, columns[i].key);
                columns[i].key = NULL;
            }
        }
    }
    report_above(reader, table);
    for (size_t i = 0; i < count; i++) {
        report_missing(reader, table, columns, &sets[i]);
    }
    for (size_t i = 0; i < table->columns; i++) {
        columns[i].key = columns[i].advice == NULL ? columns[i].key : NULL; /* it was reported */
    }
    return columns;
}

void columns_read(struct reader *reader, const struct heading *columns, const struct table *table,
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
            const enum length_unit unit = reader->unit;

            reader->unit = columns[i].has_unit ? columns[i].unit : unit;
            key->kind.read(reader, key, &(struct entry){.text = cell->text, .place = cell->place},
                           (char *)target + columns[i].at);
            reader->unit = unit;
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
