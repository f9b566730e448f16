/* SPDX-License-Identifier: MIT */
#include "read/file/table.h"

#include "base/text.h"
#include "read/file/record.h"

#include <stdlib.h>
#include <string.h>

static bool is_empty(const struct record *record) {
    for (size_t i = 0; i < record->count; i++) {
        if (record->cells[i].text[0] != '\0') {
            return false;
        }
    }
    return true;
}

/* Spreadsheets leave empty cells behind the last column: those do not count. */
static size_t used_cells(const struct record *record) {
    size_t count = record->count;

    while (count > 0 && record->cells[count - 1].text[0] == '\0') {
        count--;
    }
    return count;
}

static const char *separator_words(char separator) {
    return separator == '\t' ? "tabs" : (separator == ';' ? "';'" : "','");
}

/* Whether a record is the heading once more, as where two lists were put together. */
static bool is_heading(const struct table *table, const struct record *record) {
    size_t same = 0;

    while (same < table->columns && same < record->count &&
           text_same(record->cells[same].text, table->heading[same].text)) {
        same++;
    }
    return same == table->columns && same > 1;
}

/* Whether a record fits under the heading; else it is reported. */
static bool check_count(const struct table *table, const struct record *record, struct place place,
                        char separator, struct problems *problems) {
    char other = separator;

    if (is_heading(table, record)) {
        problem_add(problems, SEVERITY_ERROR, "no-heading", place,
                    "the heading stands here again; take this line away");
        return false;
    }
    if (separator == RECORD_CELLS) {
        return true; /* a column without a heading is the user's own, behind the last one too */
    }
    if (record->count == 1) {
        other = record_separator(record->cells[0].text);
    }
    if (other != separator && table->columns > 1 && strchr(record->cells[0].text, other) != NULL) {
        problem_add(problems, SEVERITY_ERROR, "other-separator", place,
                    "the row parts its cells by %s, the heading by %s; use one of them in all "
                    "lines",
                    separator_words(other), separator_words(separator));
        return false;
    }
    if (record->count < table->columns) {
        problem_add(problems, SEVERITY_ERROR, "too-few-cells", place,
                    "the row has %zu cells but the heading has %zu; expected as many, empty ones "
                    "too",
                    record->count, table->columns);
        return false;
    }
    if (used_cells(record) > table->columns) {
        problem_add(problems, SEVERITY_ERROR, "too-many-cells", place,
                    "the row has %zu cells but the heading has %zu; put a cell with a separator in "
                    "it in double quotes",
                    used_cells(record), table->columns);
        return false;
    }
    return true;
}

/* --- the heading --- */

#define MOST_TITLE_LINES 20

static bool has_text(const struct source *source, size_t at) {
    return !source->bad[at] && source->lines[at][0] != '\0';
}

bool table_has_cells(const struct table *table, size_t column) {
    for (size_t i = 0; i < table->count; i++) {
        if (table->rows[i].cells[column].text[0] != '\0') {
            return true;
        }
    }
    return false;
}

/* Where the heading stands. */
struct heading_place {
    size_t at;    /* its line, from 0 */
    size_t above; /* the line where the record above it starts; at: there is none */
    bool two;     /* that one is a part of it */
};

/* How many columns two lines name together, the upper one where the lower is blank; 0: they are no
 * heading, as what stands below a name is none. */
static size_t count_both(const struct record_looks *upper, const struct record_looks *lower) {
    size_t count = 0;

    for (size_t i = 0; i < upper->count || i < lower->count; i++) {
        const int above = i < upper->count ? upper->cells[i] : RECORD_BLANK;
        const int below = i < lower->count ? lower->cells[i] : RECORD_BLANK;

        if (above == RECORD_NAME && below == RECORD_TEXT) {
            return 0;
        }
        count += above == RECORD_NAME || below == RECORD_NAME ? 1 : 0;
    }
    return count;
}

/* The place of the heading where a title stands above it; else the first line. */
static struct heading_place find_heading(const struct source *source,
                                         const struct table_wanted *wanted, struct pool *pool) {
    struct heading_place place = {0};
    struct record_looks before = {0};
    size_t most = 0;
    size_t lines = 0;
    size_t above = 0;

    for (size_t at = 0; wanted->names != NULL && at < source->count && lines < MOST_TITLE_LINES;) {
        struct record_looks looks = {.lines = 1};

        if (has_text(source, at)) {
            lines++;
            record_look(&looks, source, at, wanted->names, wanted->context, pool);
        }
        if (looks.names > most && (looks.names > 1 || looks.used > 2)) {
            place = (struct heading_place){.at = at, .above = before.count > 0 ? above : at};
            most = looks.names;
        }
        const size_t both = looks.names > 0 && before.names > 0 ? count_both(&before, &looks) : 0;
        if (both > most && both > 1) {
            place = (struct heading_place){.at = at, .above = above, .two = true};
            most = both;
        }
        before = looks;
        above = at;
        at += looks.lines;
    }
    return place;
}

/* The line above the heading: of a heading of two lines what stands over blanks is a part of it; of
 * a sheet it is kept, where it is more than a title of one cell. */
static bool read_above(struct record *upper, const struct source *source,
                       const struct heading_place *place, struct problems *problems) {
    *upper = (struct record){0};
    if (place->above == place->at || /* a title is none that quotes could be wrong in */
        (!place->two && !source->cells && strchr(source->lines[place->above], '"') != NULL)) {
        return true;
    }
    return record_read(upper, source, place->above, record_separator_of(source, place->above), 0,
                       problems);
}

/* upper: good where there is a line above. wide: columns may stand behind those of the lower line.
 */
static void take_heading(struct table *table, const struct record *record,
                         const struct record *upper, bool two, bool wide) {
    size_t used = 0;

    table->heading = record->cells;
    table->columns = used_cells(record);
    for (size_t i = 0; upper->good && i < upper->count; i++) {
        used += upper->cells[i].text[0] != '\0' ? 1 : 0;
    }
    table->above = upper->cells;
    table->above_count = upper->count < record->count ? upper->count : record->count;
    if (used < 2 && !two) {
        return; /* a title, or the name of a group */
    }
    for (size_t i = table->above_count; wide && i > table->columns; i--) {
        if (upper->cells[i - 1].text[0] != '\0') {
            table->columns = i; /* only the upper line has it */
        }
    }
    for (size_t i = 0; two && i < table->above_count; i++) {
        if (table->heading[i].text[0] == '\0') {
            table->heading[i] = upper->cells[i];
        }
    }
}

/* What a title in the upper line has beside names of columns is no heading: nothing stands below.
 */
static void drop_title(struct table *table, const struct table_wanted *wanted) {
    for (size_t i = 0; i < table->above_count && i < table->columns; i++) {
        struct cell *const cell = &table->heading[i];

        if (cell->text == table->above[i].text && !table_has_cells(table, i) &&
            !wanted->names(wanted->context, cell->text)) {
            cell->text = "";
        }
    }
}

/* The heading: the first record from place on in which anything stands. *at: the line behind it. */
static bool read_heading(struct table *table, const struct source *source,
                         const struct heading_place *place, size_t *at, char *separator,
                         struct problems *problems) {
    struct record upper;

    if (!read_above(&upper, source, place, problems)) {
        return false;
    }
    for (*at = place->at; *at < source->count; (*at)++) {
        struct record record;

        if (source->bad[*at]) {
            *at = source->count; /* reported; without a heading nothing can be read */
            return true;
        }
        *separator = record_separator_of(source, *at);
        if (!record_read(&record, source, *at, *separator,
                         source->cells && upper.good ? used_cells(&upper) : 0, problems)) {
            return false;
        }
        if (!record.good) {
            *at = source->count;
            return true;
        }
        if (!is_empty(&record)) {
            take_heading(table, &record, &upper, place->two, place->two || source->cells);
            *at += record.lines;
            return true;
        }
    }
    problem_add(problems, SEVERITY_ERROR, "empty-table", (struct place){.file = source->file},
                "the file is empty; expected a line with the names of the columns, then rows");
    return true;
}

/* Whether the next line with anything in it has cells of its own. */
static bool has_cells_below(const struct source *source, size_t at) {
    for (; at < source->count; at++) {
        const char *const line = source->lines[at];
        const char *const apart = strchr(line, source->cells ? '\t' : record_separator(line));

        if (strspn(line, " \t,;") < strlen(line)) {
            return apart != NULL && strspn(apart, " \t,;") < strlen(apart);
        }
    }
    return false;
}

/* A title, or what a spreadsheet writes to itself, stands where the heading should. */
static bool check_heading(struct table *table, const struct source *source, size_t at,
                          struct problems *problems) {
    if (table->columns > 0 && table->heading[0].text[0] == '[') {
        problem_add(problems, SEVERITY_ERROR, "no-heading", table->heading[0].place,
                    "the file has sections, so it is no list; name the CSV file with the rows");
        table->columns = 0;
        return false;
    }
    if (table->columns != 1 || !has_cells_below(source, at)) {
        return true;
    }
    problem_add(problems, SEVERITY_ERROR, "no-heading", table->heading[0].place,
                "the first line is no heading; take away what stands above the line with the names "
                "of the columns: a title, or 'sep=;'");
    table->columns = 0;
    return false;
}

/* Keeps a row that fits; false: it is one too many, which was reported. */
static bool keep_row(struct table *table, const struct record *record, struct place place,
                     size_t most, struct problems *problems) {
    if (table->count == most) {
        problem_add(problems, SEVERITY_ERROR, "too-many-rows", place,
                    "the list goes on beyond %zu rows; make lists of at most so many", most);
        table->over = true;
        return false;
    }
    table->rows[table->count++] = (struct table_row){.cells = record->cells, .place = place};
    return true;
}

bool table_read(struct table *table, const char *path, struct place asked,
                struct table_wanted wanted, struct problems *problems) {
    struct source source;
    char separator = ',';
    size_t at;

    *table = (struct table){0};
    if (!source_read_list(&source, path, asked, problems)) {
        return false;
    }
    const struct heading_place place = find_heading(&source, &wanted, &problems->pool);
    table->file = source.file;
    table->open = source.open;
    if (!source.open) {
        return true;
    }
    if (!read_heading(table, &source, &place, &at, &separator, problems)) {
        return false;
    }
    if (!check_heading(table, &source, at, problems)) {
        return !problems->failed;
    }
    table->rows =
        pool_take(&problems->pool, source.count < wanted.most ? source.count : wanted.most,
                  sizeof(*table->rows));
    if (table->rows == NULL) {
        problems->failed = true;
        return false;
    }
    while (at < source.count) {
        struct place row = {.file = source.file, .line = (uint32_t)(at + 1)};
        struct record record;

        if (source.cells && source.lines[at][0] == '\0') {
            at++; /* a sheet may have a million of these */
            continue;
        }
        if (!record_read(&record, &source, at, separator, table->columns, problems)) {
            return false;
        }
        at += record.lines;
        if (record.good && !is_empty(&record) &&
            check_count(table, &record, row, separator, problems) &&
            !keep_row(table, &record, row, wanted.most, problems)) {
            break;
        }
    }
    if (place.two) {
        drop_title(table, &wanted);
    }
    return !problems->failed && !pool_failed(&problems->pool);
}
