/* SPDX-License-Identifier: MIT */
/* A workbook read back by a parser of XML alone, and its formulas worked out in doubles as a
 * spreadsheet program does: nothing here knows the tape or the library that wrote the file. */
#ifndef DOORCOST_TESTS_XLSX_READ_H
#define DOORCOST_TESTS_XLSX_READ_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

enum xlsx_kind { XLSX_EMPTY, XLSX_NUMBER, XLSX_TEXT, XLSX_ERROR };

struct xlsx_value {
    enum xlsx_kind kind;
    double number;
    const char *text; /* of a text or an error; borrowed from the workbook or static */
};

struct xlsx_cell {
    uint32_t row; /* from 0 */
    uint16_t sheet, column;
    unsigned style;
    struct xlsx_value value; /* as stored */
    char *formula;           /* without '='; NULL: none */
    struct xlsx_value found; /* by xlsx_work_out */
    int visit;               /* 0: not worked out, 1: on the way, 2: done */
};

struct xlsx {
    char *names[32]; /* of the sheets, in the order of the book */
    size_t sheet_count;
    struct xlsx_cell *cells;
    size_t count, room;
    char **texts; /* shared */
    size_t text_count, text_room;
    const char *fault; /* of the last formula that could not be read; NULL: none */
};

/* Reads the file; fails the test when it cannot be read. To be cleared. */
void xlsx_read(struct xlsx *book, const char *path);
void xlsx_clear(struct xlsx *book);

/* A part of the file as text, to be freed; NULL: there is no such part. */
char *xlsx_part(const char *path, const char *name);

/* The cell at `A1` of a sheet; NULL: it is not in the file. */
struct xlsx_cell *xlsx_at(const struct xlsx *book, const char *sheet, const char *reference);

/* Works a cell out from the plain numbers that its formula goes back to. A circle gives an error.
 */
struct xlsx_value xlsx_work_out(struct xlsx *book, struct xlsx_cell *cell);
/* A formula as if it stood on a sheet (without '='). */
struct xlsx_value xlsx_formula(struct xlsx *book, uint16_t sheet, const char *formula);
/* Forgets what was worked out, after a plain number was changed. */
void xlsx_forget(struct xlsx *book);

/* ROUND of a spreadsheet program: to decimals of the 15 digits that the program keeps of a number,
 * halves away from zero. */
double xlsx_round(double value, int decimals);

#endif
