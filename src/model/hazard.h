/* SPDX-License-Identifier: MIT */
/* What machines are and what products hold: by these the cautions of a job are picked. */
#ifndef DOORCOST_MODEL_HAZARD_H
#define DOORCOST_MODEL_HAZARD_H

enum machine_kind {
    MACHINE_UNSAID, /* the rates do not tell */
    MACHINE_MITER_SAW,
    MACHINE_TABLE_SAW,
    MACHINE_BAND_SAW,
    MACHINE_JOINTER,
    MACHINE_PLANER,
    MACHINE_SHAPER,
    MACHINE_ROUTER,
    MACHINE_MORTISER,
    MACHINE_BORING,
    MACHINE_SANDER,
    MACHINE_CLAMPS,
    MACHINE_SPRAY_BOOTH,
    MACHINE_OTHER /* none of these */
};

/* Bits, as a data sheet names several; none set: the rates do not tell. */
enum hazard {
    HAZARD_FLAMMABLE = 1 << 0,
    HAZARD_WATERBORNE = 1 << 1,
    HAZARD_ISOCYANATE = 1 << 2,
    HAZARD_ACID = 1 << 3, /* an acid catalyst */
    HAZARD_FORMALDEHYDE = 1 << 4,
    HAZARD_DRYING_OIL = 1 << 5,
    HAZARD_NONE = 1 << 6 /* the data sheet names none of these */
};

#endif
