/* SPDX-License-Identifier: MIT */
/* How a door is made, out of what the job, an option and the row each say. */
#ifndef DOORCOST_MODEL_CONSTRUCTION_H
#define DOORCOST_MODEL_CONSTRUCTION_H

#include "model/job.h"

/* Changes base by what over says. Cannot fail. */
void make_apply(struct make *base, const struct make *over);

/* What a panel of that form is made of: of solid ones the lumber named for them, else `panel`. */
const struct stuff_reference *make_panel(const struct make *make, enum door_form form);

/* How row is made under an option: [make], changed by the option, changed by the row's own words.
 * option < 0: the base job. Cannot fail. */
struct make job_row_make(const struct job *job, const struct row *row, int option);

#endif
