/* SPDX-License-Identifier: MIT */
/* Problems: what is wrong with the inputs, and where.  Every stage adds to one list; the caller
 * asks the list, so one run shows every mistake of every file.
 *
 * Each problem has an id (`unknown-key`): its entry in docs/problems.md, and the name of the small
 * case in tests/problems that makes it.
 *
 * Messages: lower case, no full stop, the user's text in single quotes (problem_quote makes it safe
 * to print), `what is wrong; what was expected or what to do`. */
#ifndef DOORCOST_BASE_PROBLEM_H
#define DOORCOST_BASE_PROBLEM_H

#include "base/order.h"
#include "base/pool.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>

/* Where a value stands. file 0: nowhere; else an index got from problems_file. line from 1, 0: the
 * whole file. column and width in bytes of that line, for the mark below it; width 0: no mark. */
struct place {
    uint32_t line;
    uint16_t file, column, width;
};

/* By file, in the order of registration, then line, then column: -1, 0, 1. */
static inline int place_order(struct place a, struct place b) {
    const int file = order_by_number(a.file, b.file);
    const int line = order_by_number(a.line, b.line);
    return file != 0 ? file : (line != 0 ? line : order_by_number(a.column, b.column));
}

/* What was accepted is a warning that the job names as meant: it is listed, and asked no more. */
enum severity { SEVERITY_WARNING, SEVERITY_ERROR, SEVERITY_ACCEPTED };

struct problem {
    const char *id;   /* static */
    const char *text; /* in the pool */
    struct place place;
    enum severity severity;
    /* further places of the same fault, lines of the same file, ascending */
    uint32_t *more;
    size_t more_count;
};

struct source_file;
struct problems {
    struct pool pool;
    struct problem *list;
    size_t count, room;
    struct source_file *files;
    size_t file_count, file_room;
    uint32_t *index; /* finds an equal problem: open addressing, list position + 1, 0: free */
    size_t index_room;
    bool failed; /* memory ran out: the list is not whole */
};

/* Makes an empty list. Cannot fail. */
void problems_init(struct problems *problems);
/* Frees problems, their texts and the names of files; lines that were registered are not theirs.
 * */
void problems_clear(struct problems *problems);

/* Registers a file under the name by which the user will see it, with '?' for what may not be shown
 * (a name may hold bytes of any kind); gives its number for places, 0 when memory is out. The lines
 * (count of them, borrowed, must outlive problems; may be NULL) are shown below problems. */
uint16_t problems_file(struct problems *problems, const char *name);
/* The lines of that file, to be shown below its problems: count of them from line 1 on, borrowed,
 * must outlive problems; NULL: none. */
void problems_lines(struct problems *problems, uint16_t file, const char *const *lines,
                    size_t count);

/* Says that the file is a sheet of a workbook: its lines are rows whose cells are parted by tabs,
 * and a place in it is shown as the address of a cell. */
void problems_cells(struct problems *problems, uint16_t file);

/* Whether it is such a sheet. */
bool problems_has_cells(const struct problems *problems, uint16_t file);

/* Where in its file a place is. */
struct place_words {
    char text[32];
};
/* What stands behind the name of the file: `:7`, or `!D7` in a sheet, where a place without a
 * column is the first cell of its row that holds something; "" for the whole file. */
struct place_words problems_place(const struct problems *problems, struct place place);
/* The same within a sentence: `line 7`, `cell D7`. */
struct place_words problems_spot(const struct problems *problems, struct place place);
/* What a file has: `line`, or `row` where it is a sheet. Static. */
const char *problems_line_word(const struct problems *problems, uint16_t file);

/* The name of a file; "" for 0. */
const char *problems_file_name(const struct problems *problems, uint16_t file);

/* The text of the line of a place, NULL where it is not known. */
const char *problems_line(const struct problems *problems, struct place place);

/* Adds a problem.  A problem with the same id, severity, file and text as an earlier one is said
 * once: its line goes to that one's further places. */
void problem_add(struct problems *problems, enum severity severity, const char *id,
                 struct place place, const char *format, ...) __attribute__((format(printf, 5, 6)));

/* Makes user text printable: control characters and bytes that are not UTF-8 become '?', longer
 * than 60 characters is cut with "...".  The result lives in the problems' pool; never NULL. */
const char *problem_quote(struct problems *problems, const char *text);

/* Whether a place is one that is looked for. */
typedef bool problem_takes(const void *context, struct place place);

/* Makes warnings of that id accepted, at each place of theirs that takes says true of: such places
 * go to a problem of their own, whose further places have neither column nor width. The list is in
 * another order after. false: there was no such place, or memory is out (problems->failed). */
bool problems_accept(struct problems *problems, const char *id, problem_takes *takes,
                     const void *context);

/* How many of that severity. */
size_t problems_count(const struct problems *problems, enum severity severity);

/* Sorts by file (in the order of registration), line, column; stable. */
void problems_sort(struct problems *problems);

/* Prints all that is not accepted, sorted, to out: `FILE:LINE: error: text`, then the line with a
 * mark under the fault, then `also on lines 5, 7 and 9`.  color: use terminal colors for `error`
 * and `warning`. */
void problems_print(const struct problems *problems, FILE *out, bool color);

#endif
