/* SPDX-License-Identifier: MIT */
/* What hangs on the job in the lines from cost to price. */
#ifndef DOORCOST_REPORT_WORDS_BUILD_UP_WORDS_H
#define DOORCOST_REPORT_WORDS_BUILD_UP_WORDS_H

#include "report/words/field.h"

/* What a field of fields_build_up is called: of profit, by what it goes. Static. */
const char *build_up_label(const struct estimate *estimate, const struct field *field);
/* The rate of the files that makes its figure for the job: a percent, or money an hour; none for
 * totals and for groups of cost but remakes. */
fig build_up_rate(const struct estimate *estimate, const struct field *field);

#endif
