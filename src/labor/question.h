/* SPDX-License-Identifier: MIT */
/* Questions about the finish once its area and its minutes are known: warnings with the numbers. */
#ifndef DOORCOST_LABOR_QUESTION_H
#define DOORCOST_LABOR_QUESTION_H

#include "labor/labor.h"

/* Questions a finish that is thicker, dry, than the shop's limit, and a mix that takes longer to
 * spray than its pot life: run minutes of one coat (operations at a machine, counted by the sprayed
 * area of all coats) by the mixes of a coat. */
void finish_question(const struct finish_list *finish, const struct labor *labor,
                     const struct tape *tape, const struct measures *measures,
                     const struct rates *rates, const struct quantities *quantities,
                     struct problems *problems);

#endif
