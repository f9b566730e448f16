/* SPDX-License-Identifier: MIT */
/* The sheets of labels that are printed on: [labels parts], [labels doors]. */
#ifndef DOORCOST_MODEL_LABEL_SHEET_H
#define DOORCOST_MODEL_LABEL_SHEET_H

#include "model/paper.h"
#include "model/value.h"

/* What a sheet of labels is for. */
enum label_of { LABEL_OF_PARTS, LABEL_OF_DOORS };

/* A sheet of labels, seen as it is printed: columns from the left, rows from the top. Lengths in
 * nm. */
struct label_sheet {
    struct text name;           /* of its section: what it is for */
    enum label_of of;           /* the same */
    struct choice paper_size;   /* enum paper_size; unset: as the shop has it */
    struct value columns, rows; /* counts, 1 or more */
    struct value width, height; /* of a label */
    struct value left, top;     /* from the edges of the paper to the first label */
    struct value across, down;  /* between columns, between rows; unset: labels touch */
    struct value inset; /* kept free within each edge of a label; unset: a sixteenth of an inch */
};

#endif
