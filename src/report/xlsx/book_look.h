/* SPDX-License-Identifier: MIT */
/* How cells look: fonts, borders and number formats, each made once a workbook. */
#ifndef DOORCOST_REPORT_XLSX_BOOK_LOOK_H
#define DOORCOST_REPORT_XLSX_BOOK_LOOK_H

#include "report/xlsx/book.h"

#include <xlsxwriter.h>

#define BOOK_MOST_FORMATS 256

struct book_looks {
    lxw_workbook *workbook;
    struct {
        char number[32];
        uint8_t look;
        bool wrap;
        lxw_format *format;
    } made[BOOK_MOST_FORMATS];
    size_t count;
};

/* The number format of a value of unit at its decimals.  Inches that are whole 64ths show as
 * fractions.  number: 32 bytes. */
void look_number_format(enum unit unit, uint8_t decimals, int64_t value, char *number);

/* The format of an amount that is whole and may be shown so; false: it is not, or is money, a
 * percent or a length, which have decimals of their own. number: 32 bytes. */
bool look_whole_format(enum unit unit, uint8_t decimals, int64_t value, char *number);

/* The format of a look with a number format ("" for text), wrap: its text over lines; borrowed from
 * the workbook; NULL: out of memory. */
lxw_format *look_format(struct book_looks *looks, enum look look, const char *number, bool wrap);

/* How a number is shown, for column widths and as text: text of 48 bytes. */
void look_shown(enum unit unit, uint8_t decimals, int64_t value, char *text, size_t size);

#endif
