/* SPDX-License-Identifier: MIT */
/* The door list: a table of rows, each with its own words on how it is made: most rows say the
 * same, and share it. */
#include "base/text.h"

#include "base/array.h"
#include "base/index.h"
#include "model/construction.h"
#include "model/limits.h"
#include "model/list_column.h"
#include "read/file/table.h"
#include "read/job/job_keys.h"

#include <stdlib.h>
#include <string.h>

static int compare_ids(const void *left, const void *right) {
    const struct row *a = *(const struct row *const *)left;
    const struct row *b = *(const struct row *const *)right;
    const int order = text_order(a->id.s, b->id.s);

    return order != 0 ? order : (a < b ? -1 : (a > b ? 1 : 0));
}

/* Rows with the id of an earlier one. Sorted, because lists may be long. */
static void check_ids(struct reader *reader, const struct job *job) {
    const struct row **order =
        pool_take(&reader->problems->pool, job->row_count, sizeof(const struct row *));
    size_t count = 0;
    size_t first = 0;

    if (order == NULL) {
        return;
    }
    for (size_t i = 0; i < job->row_count; i++) {
        if (job->rows[i].id.s != NULL) {
            order[count++] = &job->rows[i];
        }
    }
    qsort(order, count, sizeof(const struct row *), compare_ids);
    for (size_t i = 1; i < count; i++) {
        if (!text_same(order[first]->id.s, order[i]->id.s)) {
            first = i;
            continue;
        }
        problem_add(reader->problems, SEVERITY_ERROR, "duplicate-id", order[i]->id.place,
                    "id '%s' stands in %s already; give each row its own id",
                    problem_quote(reader->problems, order[i]->id.s),
                    problems_spot(reader->problems, order[first]->id.place).text);
    }
}

/* A row as its cells say it. */
struct said {
    struct row row;
    struct construction own;
};

/* The makes of a list, each once. */
struct makes {
    struct index index;
    const struct make **list;
    size_t room;
    bool failed;
};

static bool is_make(const void *list, size_t number, const void *thing) {
    const struct make *old = ((const struct makes *)list)->list[number];
    const struct make *make = thing;

    return old->end_panel == make->end_panel && construction_same(&old->own, &make->own);
}

/* The make that is shared by rows of this one; NULL: memory is out. */
static const struct make *find_make(struct reader *reader, struct job *job, struct makes *makes,
                                    const struct make *told) {
    const uint64_t hash = hash_word(construction_hash(&told->own), told->end_panel ? 1 : 0);
    const size_t number =
        index_add(&makes->index, hash, is_make, makes, told, job->make_count, &makes->failed);
    struct make *make;

    if (number < job->make_count) {
        return makes->list[number];
    }
    make = pool_copy(reader->pool, told, sizeof(*told));
    makes->list = array_grow(makes->list, &makes->room, number + 1, sizeof(const struct make *),
                             &makes->failed);
    if (make == NULL || makes->failed) {
        return NULL;
    }
    make->number = number;
    makes->list[job->make_count++] = make;
    return make;
}

/* Reads and checks a row; then it shares its make. false: memory is out. */
static bool read_row(struct reader *reader, struct job *job, struct makes *makes,
                     const struct said *said) {
    struct row *row = &job->rows[job->row_count];
    struct make told = {.end_panel = said->row.use.choice == USE_END_PANEL, .own = said->own};

    *row = said->row;
    row_take_pair(reader, row);
    row->make = &told;
    told.whole = row_construction(job, row, -1);
    construction_check(reader, &told.own);
    row_check(reader, job, row);
    row_check_make(reader, job, row);
    row->make = find_make(reader, job, makes, &told);
    job->row_count += row->make != NULL ? 1 : 0;
    return row->make != NULL;
}

/* What headings say that sizes are of. */
struct told_measure {
    const char *words; /* `opening` or `door`; NULL: nothing */
    enum measure measure;
    const struct cell *cell; /* that says it */
};

static bool is_size(const struct heading *heading) {
    return heading->key != NULL &&
           (text_same(heading->key->name, "width") || text_same(heading->key->name, "height"));
}

/* By column i: its heading, or one above several of sizes, which stands over the first. */
static struct told_measure column_measure(const struct table *table, const struct heading *columns,
                                          size_t i) {
    struct told_measure told = {.words = columns[i].measure, .cell = &table->heading[i]};

    if (told.words == NULL && is_size(&columns[i]) && i < table->above_count) {
        told.cell = &table->above[i];
        told.words = heading_measure(told.cell->text);
    }
    told.measure =
        told.words != NULL && text_same(told.words, "door") ? MEASURE_DOOR : MEASURE_OPENING;
    return told;
}

/* By the first column from *at on that says it, where *at is then. */
static struct told_measure find_measure(const struct table *table, const struct heading *columns,
                                        size_t *at) {
    for (; *at < table->columns; (*at)++) {
        const struct told_measure told = column_measure(table, columns, *at);

        if (told.words != NULL) {
            return told;
        }
    }
    return (struct told_measure){0};
}

static const char *sizes_of(const struct told_measure *told) {
    return told->measure == MEASURE_DOOR ? "doors" : "openings";
}

/* Whether no heading says otherwise than the first, which is of column `at`. */
static bool check_agree(struct reader *reader, const struct table *table,
                        const struct heading *columns, const struct told_measure *first,
                        size_t at) {
    for (at++; at < table->columns; at++) {
        const struct told_measure told = find_measure(table, columns, &at);

        if (told.words != NULL && told.measure != first->measure) {
            problem_add(reader->problems, SEVERITY_ERROR, "measure-differs", told.cell->place,
                        "the heading '%s' says that sizes are of %s, and '%s' that they are of %s; "
                        "head them 'width' and 'height', and give each row sizes of one kind, told "
                        "by 'measure'",
                        problem_quote(reader->problems, told.cell->text), sizes_of(&told),
                        problem_quote(reader->problems, first->cell->text), sizes_of(first));
            return false;
        }
    }
    return true;
}

/* Whether a row's sizes are of what the headings say; an end panel's are of itself. */
static bool check_measure(struct reader *reader, const struct told_measure *told,
                          const struct said *said, const struct row *row) {
    if (told->words == NULL || row->make->whole.size_is.choice == (int)told->measure ||
        said->row.use.choice == USE_END_PANEL) {
        return true;
    }
    problem_add(
        reader->problems, SEVERITY_ERROR, "measure-differs", told->cell->place,
        "the heading '%s' says that sizes are of %s, and by 'measure' they are of %s; write "
        "'measure = %s' in [make], or head the column 'width' or 'height'",
        problem_quote(reader->problems, told->cell->text), sizes_of(told),
        told->measure == MEASURE_DOOR ? "openings" : "doors", told->words);
    return false;
}

/* false: memory is out. */
static bool read_rows(struct reader *reader, struct job *job, const struct table *table,
                      const struct heading *columns, const struct column_set *sets, size_t count) {
    struct makes makes = {0};
    size_t at = 0;
    const struct told_measure told = find_measure(table, columns, &at);
    bool held = true;
    bool same = told.words == NULL || check_agree(reader, table, columns, &told, at);

    for (size_t i = 0; held && i < table->count && !pool_failed(reader->pool); i++) {
        struct said said = {0};

        columns_read(reader, columns, table, &table->rows[i], sets, count, &said);
        said.row.place = table->rows[i].place;
        if (said.row.id.s != NULL && text_same(said.row.id.s, LIST_EXAMPLE_ID)) {
            problem_add(reader->problems, SEVERITY_ERROR, "example-row", said.row.id.place,
                        "id '" LIST_EXAMPLE_ID
                        "' marks a row that shows how, which is not read and "
                        "stands first; give this one another id");
        }
        held = read_row(reader, job, &makes, &said);
        same =
            !held || !same || check_measure(reader, &told, &said, &job->rows[job->row_count - 1]);
    }
    free(makes.list);
    index_clear(&makes.index);
    return held && !makes.failed;
}

#define SET_COUNT 2

/* The columns of a row. */
static void set_columns(struct column_set sets[SET_COUNT]) {
    sets[0] = (struct column_set){row_keys, row_key_count, offsetof(struct said, row), "list"};
    sets[1] = (struct column_set){construction_keys, CONSTRUCTION_KEY_COUNT,
                                  offsetof(struct said, own), "list"};
}

struct heading *door_list_columns(const struct table *table, struct pool *pool) {
    struct column_set sets[SET_COUNT];
    set_columns(sets);
    return columns_mean(table, sets, SET_COUNT, pool);
}

/* A row with that id whose note is another was written over, and is one of the job. */
static bool is_example(const struct table *table, const struct heading *columns,
                       const struct table_row *row) {
    bool named = false;
    for (size_t i = 0; i < table->columns; i++) {
        const char *const text = row->cells[i].text;
        const struct key *const key = columns[i].key;
        if (key == NULL) {
            continue;
        }
        if (text_same(key->name, "id")) {
            named = text_same(text, LIST_EXAMPLE_ID);
        } else if (text_same(key->name, "note") && text[0] != '\0' &&
                   !text_same(text, LIST_EXAMPLE_NOTE)) {
            return false;
        }
    }
    return named;
}

bool door_list_table(struct table *table, const char *path, struct place asked,
                     struct problems *problems) {
    struct column_set sets[SET_COUNT];
    set_columns(sets);
    if (!columns_table(table, path, asked, MOST_DOOR_ROWS, sets, SET_COUNT, problems)) {
        return false;
    }
    const struct heading *const columns = door_list_columns(table, &problems->pool);
    if (columns != NULL && table->count > 0 && is_example(table, columns, &table->rows[0])) {
        table->rows++;
        table->count--;
    }
    if (columns != NULL) {
        list_totals_drop(table, columns, problems);
    }
    return !pool_failed(&problems->pool);
}

void door_list_leave_out(struct table *table, const char *names, struct place place,
                         struct problems *problems) {
    for (const char *from = names; *from != '\0';) {
        const char *const end = from + strcspn(from, ",");
        const char *const start = text_skip_blanks(from);
        const char *const to = start < end ? text_trim_end(start, end) : start;
        const char *const name =
            start < to ? pool_text(&problems->pool, start, (size_t)(to - start)) : NULL;
        size_t found = 0;
        for (size_t i = 0; name != NULL && i < table->columns; i++) {
            if (text_same(table->heading[i].text, name)) {
                table->heading[i].text = "";
                if (i < table->above_count) {
                    table->above[i].text = "";
                }
                found++;
            }
        }
        if (name != NULL && found == 0 && table->columns > 0) {
            problem_add(problems, SEVERITY_ERROR, "no-own-column", place,
                        "own columns has '%s', which heads no column of the list; write it as it "
                        "stands there",
                        problem_quote(problems, name));
        }
        from = *end == '\0' ? end : end + 1;
    }
}

/* Whether a heading is like no column: not even nearly one, which would be a slip. */
static bool is_strange(const struct heading *heading, const char *text,
                       const struct column_set *sets) {
    if (heading->key != NULL || heading->by_cells != NULL || heading->advice != NULL) {
        return false;
    }
    for (size_t s = 0; s < SET_COUNT; s++) {
        for (size_t k = 0; k < sets[s].count; k++) {
            const char *const name = sets[s].keys[k].name;
            if (text_nearest(text, &name, 1) != NULL) {
                return false;
            }
        }
    }
    return text[0] != '\0' && strchr(text, ',') == NULL;
}

struct list_told door_list_told(const struct table *table, struct pool *pool) {
    static const char *const needed[] = {"width", "height", "id"};
    bool there[COUNT_OF(needed)] = {false};
    struct column_set sets[SET_COUNT];
    struct list_told told = {0};
    set_columns(sets);
    const struct heading *const columns = columns_mean(table, sets, SET_COUNT, pool);
    for (size_t i = 0; i < table->columns && columns != NULL; i++) {
        for (size_t n = 0; n < COUNT_OF(needed); n++) {
            there[n] =
                there[n] || (columns[i].key != NULL && text_same(columns[i].key->name, needed[n]));
        }
        if (is_strange(&columns[i], table->heading[i].text, sets)) {
            told.strange = pool_words(pool, "%s%s%s", text_or_empty(told.strange),
                                      told.strange == NULL ? "" : ", ", table->heading[i].text);
        }
    }
    told.doors = there[0] && there[1];
    told.whole = told.doors && there[2];
    size_t at = 0;
    told.measure = columns == NULL ? NULL : find_measure(table, columns, &at).words;
    return told;
}

bool door_list_read(struct reader *reader, struct job *job, const struct table *table) {
    struct column_set sets[SET_COUNT];
    const size_t count = SET_COUNT;
    struct heading *columns;

    if (!table->open || table->columns == 0 || table->over) {
        return true;
    }
    set_columns(sets);
    reader->columns = sets;
    reader->column_sets = count;
    columns = columns_find(reader, table, sets, count);
    reader->lacks_known = problems_count(reader->problems, SEVERITY_ERROR) == 0;
    job->rows = pool_take(reader->pool, table->count, sizeof(*job->rows));
    if (columns == NULL || job->rows == NULL) {
        return false;
    }
    if (!read_rows(reader, job, table, columns, sets, count)) {
        return false;
    }
    reader->columns = NULL; /* they end here */
    reader->column_sets = 0;
    reader->columns = NULL;
    if (table->count == 0 && problems_count(reader->problems, SEVERITY_ERROR) == 0) {
        problem_add(reader->problems, SEVERITY_ERROR, "empty-table",
                    (struct place){.file = table->file, .line = 1},
                    "the list has a heading but no rows; expected a row for each door");
    }
    check_ids(reader, job);
    if (reader->names_known) {
        make_warn_woods(reader, job);
        options_warn_woods(reader, job);
        const bool good =
            job->row_count > 0 && problems_count(reader->problems, SEVERITY_ERROR) == 0;
        for (size_t i = 0; good && i < job->option_count; i++) {
            option_warn_effect(reader, job, i);
        }
    }
    return !pool_failed(reader->pool) && !reader->problems->failed;
}
