/* SPDX-License-Identifier: MIT */
/* What cautions ask of a job, each question a function, and what its answer is about. */
#ifndef DOORCOST_REPORT_WORDS_CAUTION_FACTS_H
#define DOORCOST_REPORT_WORDS_CAUTION_FACTS_H

#include "base/joined.h"
#include "report/words/caution.h"

#define MOST_NAMED 6 /* of one caution; more are counted */

/* Bits of machine kinds: 1 << enum machine_kind. */
#define MACHINE_BIT(kind) (1U << (kind))
#define CUTTING_MACHINES                                                                           \
    (MACHINE_BIT(MACHINE_MITER_SAW) | MACHINE_BIT(MACHINE_TABLE_SAW) |                             \
     MACHINE_BIT(MACHINE_BAND_SAW) | MACHINE_BIT(MACHINE_JOINTER) | MACHINE_BIT(MACHINE_PLANER) |  \
     MACHINE_BIT(MACHINE_SHAPER) | MACHINE_BIT(MACHINE_ROUTER))

struct caution_facts {
    const struct estimate *e;
    struct joined about; /* what the answer is about: `mdf-slab (96.6 lb)`, ...; empty: nothing */
    size_t named;        /* so many of these */
};

typedef bool caution_question(struct caution_facts *facts, const struct caution *caution);

caution_question always;
/* A machine of one of the kinds in caution->by is used; any that is not told, by name. */
caution_question machine_used;
caution_question machine_untold;
/* Worked on side by side; in two passes, by operation. */
caution_question worked_together;
caution_question wider_than_machine;
/* Parts under 12 in; any part of wood or sheet. */
caution_question short_parts;
caution_question parts_made;
/* Sheets and leaves heavier than one person lifts; leaves over 60 in. */
caution_question heavy;
caution_question tall;
caution_question panes;
caution_question lead_panes;
caution_question sheets_bought;

/* Something is sprayed, by gun; out of a pot under pressure; thinned or hardened; washed off. */
caution_question sprayed;
caution_question under_pressure;
caution_question mixed;
caution_question thrown_away;
/* A product with one of the hazards in caution->by is used, by name; any that is not told. */
caution_question hazard_used;
caution_question hazard_untold;
caution_question rags;

/* Terms of the sale. */
caution_question taxed;
caution_question paid_ahead;
caution_question paid_by_card;
caution_question held_until;
caution_question hung;

#endif
