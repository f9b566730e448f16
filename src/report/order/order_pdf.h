/* SPDX-License-Identifier: MIT */
/* The buying list on paper: to tick off in the yard, or, without prices, to send to a supplier. */
#ifndef DOORCOST_REPORT_ORDER_ORDER_PDF_H
#define DOORCOST_REPORT_ORDER_ORDER_PDF_H

#include "together/together.h"

/* Writes the buying list of the estimate, which must have been asked for its purchase, to path as
 * it stands (the caller has seen to a safe place). prices: with what the shop pays; without them
 * neither client nor job site are named, nothing of the shop's small supplies, and what others
 * supply is left out. together: of several jobs, whose estimate it is: with prices, what each bears
 * stands behind the list; NULL: of one. *lacking: in pool, as pdf_close has it. false: not written,
 * or out of memory.
 */
bool order_pdf_write(const struct estimate *estimate, const struct together *together, bool prices,
                     const char *path, struct pool *pool, const char **lacking)
    __attribute__((warn_unused_result));

#endif
