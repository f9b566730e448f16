/* SPDX-License-Identifier: MIT */
/* What work takes from the cutting plans; for src/labor only. */
#ifndef DOORCOST_LABOR_PLANS_H
#define DOORCOST_LABOR_PLANS_H

#include "labor/labor.h"

/* Boards, and cuts of boards and sheets, of the plans that were made; none without any. terms: room
 * for a figure a lumber and a sheet. */
void plans_count(struct tape *tape, const struct lumber_list *lumber,
                 const struct sheet_list *sheets, fig *terms, fig *boards, fig *cuts);

#endif
