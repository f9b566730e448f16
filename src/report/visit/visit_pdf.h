/* SPDX-License-Identifier: MIT */
/* The sheet to measure on at a client's: blank rows with the columns of the door list, what is
 * measured where, what to look for. It knows nothing but names and terms: no price, no size. */
#ifndef DOORCOST_REPORT_VISIT_VISIT_PDF_H
#define DOORCOST_REPORT_VISIT_VISIT_PDF_H

#include "base/pool.h"
#include "model/job.h"

/* What is known before the visit; of what is not there stand lines to write on. */
struct visit {
    const struct job *job;     /* NULL: no job yet */
    const struct rates *rates; /* NULL: not known */
    enum length_unit unit;     /* that sizes are written in */
    bool letter;               /* US letter, else A4 */
};

/* Writes the sheet to path as it stands (the caller has seen to a safe place). *lacking: in pool,
 * as pdf_close has it. false: not written, or memory ran out. */
bool visit_pdf_write(const struct visit *visit, const char *path, struct pool *pool,
                     const char **lacking) __attribute__((warn_unused_result));

#endif
