/* SPDX-License-Identifier: MIT */
/* The units in which a job is figured, and the constants that join them.
 *
 * Lengths are in the job's unit; areas, volumes, weights and speeds in those of the rates file. All
 * constants are exact by definition (1 in = 25.4 mm, 1 gal = 231 in3, 1 lb = 0.453 592 37 kg) but
 * for square inches a square meter and the like, kept to six decimals; each is a given of the tape
 * with its source. */
#ifndef DOORCOST_MODEL_UNITS_H
#define DOORCOST_MODEL_UNITS_H

#include "figure/tape.h"
#include "model/price_age.h"

struct units {
    struct price_ages ages; /* of the prices of the rates; numbers NULL: none is dated */
    enum unit length, run, area, weight, volume, film, density, area_weight;
    enum length_unit lengths; /* the job's unit */
    bool metric;              /* the rates file's system */
    /* constants */
    fig one, two, length_per_run; /* 1; 2; lengths a run (12 in a ft, 1000 mm a m) */
    fig hundred, sixty;           /* 100 %; 60 min an hour */
    fig length2_per_area;         /* 144 sq in a sq ft ... */
    fig length3_per_bf, length3_per_m3;
    fig length_per_thick; /* lengths of thickness in the density's own length: 12 in a ft, 1000 mm a
                             m */
    fig inch; /* 1 in, the least thickness that a board foot counts, in the job's unit */
    fig spread_over, spread_under; /* theoretical volume = area x film x over / under */
};

/* Sets the units and puts the constants on the tape. */
void units_init(struct units *units, struct tape *tape, enum length_unit lengths, bool metric);

/* A length of a file as a figure in the job's unit, 6 decimals. */
fig units_length(struct tape *tape, const struct units *units, const char *what, length value,
                 struct place place);

/* A film (nm) as the amount of a figure, in mil or um, and its decimals. */
int64_t units_film_amount(const struct units *units, length film, uint8_t *decimals);

/* A wet film in mil (4 decimals) or um (3 decimals). */
fig units_film(struct tape *tape, const struct units *units, const char *what,
               const struct value *value);

/* A value of a file as a given, in its own unit and decimals; a length by units_length. none
 * where it is not set. A price that is said to rise each year comes as it is on the day of the
 * quote, of the price as it was learned, the days since then and the percent: price_aged. */
fig units_given(struct tape *tape, const struct units *units, const char *what,
                const struct value *value);

/* A density of a file (lb/cu ft, kg/m3 or g/cm3) as a figure in the rates' system; none where it is
 * not set. */
fig units_density(struct tape *tape, const struct units *units, const struct value *value);

/* The density of a wood at 12 % moisture from its specific gravity on volume at 12 %:
 * G x density of water x 1.12 (Wood Handbook, FPL-GTR-282, Eq. 4-14). none when gravity is not set.
 */
fig units_wood_density(struct tape *tape, const struct units *units, const struct value *gravity);

#endif
