/* SPDX-License-Identifier: MIT */
/* Writes a book as an .xlsx file by libxlsxwriter. */
#ifndef DOORCOST_REPORT_XLSX_BOOK_WRITE_H
#define DOORCOST_REPORT_XLSX_BOOK_WRITE_H

#include "report/xlsx/book.h"

struct book_facts {
    char *title, *subject,
        *author; /* document properties (the library wants them writable, and writes nothing) */
    const char *footer;   /* left foot of every page, by book_footer */
    int year, month, day; /* the date of creation that the file carries, so that runs repeat */
    bool letter;          /* US letter, else A4 */
};

/* Writes the settled book to path, beside nothing: the caller has seen to a safe place.  Its cells
 * are freed as they are written, so a book is written once, and then only cleared or asked for
 * homes.  false: not written (disk, or its stop was
 * asked for), or memory ran out. */
bool book_write(struct book *book, const struct book_facts *facts, const char *path)
    __attribute__((warn_unused_result));

#endif
