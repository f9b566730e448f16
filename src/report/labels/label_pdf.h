/* SPDX-License-Identifier: MIT */
/* Labels on the sheets that they are printed on. */
#ifndef DOORCOST_REPORT_LABELS_LABEL_PDF_H
#define DOORCOST_REPORT_LABELS_LABEL_PDF_H

#include "base/stop.h"
#include "report/labels/label_list.h"

enum label_result {
    LABEL_DONE,
    LABEL_TIGHT, /* the words of a label do not fit on it at LABEL_SMALLEST */
    LABEL_FAILED /* not written, or memory ran out */
};

#define LABEL_SMALLEST 6 /* points */

/* What was written, and what is told of it. */
struct label_paper {
    const struct label *tight; /* the first that does not fit; NULL: all do */
    size_t sheets;
    size_t next; /* of the last sheet the first label that is left, from 1; 0: none is left */
};

/* Writes the labels to path as it stands (the caller has seen to a safe place), the first on label
 * `from` of the first sheet, counted from 1 along its rows. Nothing stands outside of labels, and
 * no words are left out. stop: asked between labels. *lacking: in pool, as pdf_close has it. */
enum label_result label_pdf_write(const struct estimate *estimate, const struct label_list *list,
                                  const struct label_sheet *sheet, size_t from, const char *path,
                                  const struct stop *stop, struct label_paper *paper,
                                  struct pool *pool, const char **lacking)
    __attribute__((warn_unused_result));

#endif
