/* SPDX-License-Identifier: MIT */
/* The lines from the doors to the total, then the payments: one order and one wording for the
 * quote, the shop's workbook, the client's papers and options side by side. */
#ifndef DOORCOST_REPORT_WORDS_SALE_LINE_H
#define DOORCOST_REPORT_WORDS_SALE_LINE_H

#include "report/words/field.h"

struct sale_line {
    const struct field *field; /* of fields_sale; NULL: a charge or a stage of the job */
    const char *label;
    fig rate;     /* percent that makes it; none: nothing does */
    fig money;    /* none: the job has no such line */
    bool asked;   /* it comes to something: people's papers leave out others, a workbook keeps them,
                     so that the percent can be raised there */
    bool less;    /* is taken off */
    bool payment; /* what falls due of the total */
};

struct sale_lines {
    struct sale_line *lines;
    size_t count; /* the same for all estimates of a job, as charges and stages are */
};

/* All lines of an estimate, those without money too. Memory of pool; no lines when it is out. */
struct sale_lines sale_lines_make(struct pool *pool, const struct estimate *estimate);

/* Whether a line is the figure at offset of struct sale_figures. */
bool sale_line_is(const struct sale_line *line, size_t offset);

/* What tax is called where the job is sold: "tax" where the job does not say. Borrowed. */
const char *sale_tax_name(const struct job *job);
/* `no tax: exempt, certificate 123`; NULL where tax is due, or memory is out. In pool. */
const char *sale_exempt(struct pool *pool, const struct estimate *estimate);

#endif
