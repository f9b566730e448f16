/* SPDX-License-Identifier: MIT */
/* The words of a book's cells, as a workbook holds them, each text once: most stand in many cells,
 * a row of the list on every sheet. */
#ifndef DOORCOST_REPORT_XLSX_BOOK_TEXTS_H
#define DOORCOST_REPORT_XLSX_BOOK_TEXTS_H

#include <stdbool.h>
#include <stdint.h>

struct book_texts;

/* An empty list of texts; NULL: memory is out. */
struct book_texts *book_texts_new(void);
/* Frees the texts; NULL is accepted. */
void book_texts_free(struct book_texts *texts);

/* The number of a text: copied where it is new, cut where a cell does not hold so much, and written
 * so that no program takes a part of it for a code.  Out of memory: *failed is set, never cleared.
 */
uint32_t book_texts_add(struct book_texts *texts, const char *text, bool *failed);
/* The text of a number, as a workbook holds it. Borrowed. */
const char *book_texts_at(const struct book_texts *texts, uint32_t number);

#endif
