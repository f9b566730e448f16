/* SPDX-License-Identifier: MIT */
/* Whether a workbook that was written is whole.  The library looks at no write of its temporary
 * files: where their folder is full, parts are cut off or lack a piece in the middle, and it says
 * that all went well. */
#ifndef DOORCOST_REPORT_XLSX_BOOK_PROOF_H
#define DOORCOST_REPORT_XLSX_BOOK_PROOF_H

#include "base/stop.h"

#include <stdbool.h>
#include <stddef.h>
#include <xlsxwriter.h>

/* Cells of a row of a sheet of which the library keeps but one; asked when all of it is written,
 * before the next. */
size_t book_proof_row(const lxw_worksheet *sheet);
/* Cells that all other sheets of a workbook hold; asked before it is closed. */
size_t book_proof_cells(const lxw_workbook *workbook);

/* Reads the file back: every part has the size and sum that the archive says, every XML part is
 * well-formed, the sheets have `cells` cells and the list of texts as many as it says. stop: asked
 * as it is read. false: it is not so, it was stopped, or memory is out. */
bool book_proof(const char *path, size_t cells, const struct stop *stop)
    __attribute__((warn_unused_result));

#endif
