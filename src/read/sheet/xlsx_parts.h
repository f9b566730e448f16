/* SPDX-License-Identifier: MIT */
/* The parts of an .xlsx that its sheets refer to: which sheets there are, the texts that they
 * share, the formats of their numbers. */
#ifndef DOORCOST_READ_SHEET_XLSX_PARTS_H
#define DOORCOST_READ_SHEET_XLSX_PARTS_H

#include "read/sheet/number.h"
#include "read/sheet/sheet_parts.h"

/* A text with its number of bytes, for those that many cells share. */
struct shared_text {
    const char *text;
    size_t size;
};

struct custom_format {
    uint32_t id;
    struct number_form form;
};

/* All on the heap, texts in the pool of the problems. */
struct xlsx {
    struct sheet_reading *reading;
    const char *sheet, *texts, *styles; /* names of parts; NULL: there is none */
    const char *wanted;                 /* the relation of the sheet, by its id */
    bool from_1904;
    struct shared_text *shared;
    size_t shared_count, shared_room, shared_bytes;
    struct custom_format *customs;
    size_t custom_count, custom_room;
    struct number_form *forms; /* of a cell, by its `s` */
    size_t form_count, form_room;
    bool in_text, in_forms, skipping; /* of the part that is read */
    bool failed;
};

/* Reads which sheets the part `workbook` names, and finds the parts. false: as xlsx_read. */
bool xlsx_find_parts(struct xlsx *xlsx, const char *workbook) __attribute__((warn_unused_result));
/* Reads the shared texts, where there is such a part. */
bool xlsx_read_texts(struct xlsx *xlsx) __attribute__((warn_unused_result));
/* Reads the formats of numbers, likewise. */
bool xlsx_read_styles(struct xlsx *xlsx) __attribute__((warn_unused_result));
/* Frees what is on the heap. */
void xlsx_parts_clear(struct xlsx *xlsx);

#endif
