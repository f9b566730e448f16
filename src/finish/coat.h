/* SPDX-License-Identifier: MIT */
/* One coat line of a finish: the volumes that an area takes. */
#ifndef DOORCOST_FINISH_COAT_H
#define DOORCOST_FINISH_COAT_H

#include "finish/finish.h"

/* What a coat line is mixed with. */
struct coat_pool {
    fig area;     /* of this batch */
    fig colors;   /* colors that the batch stands for, each mixed by itself; none: one */
    fig sprayed;  /* of all colors together, where the product is not tinted and mixed once for all
                     of them; none: this batch is mixed by itself */
    fig all_area; /* sprayed area of all these colors */
};

/* Which end of the range that the rates give transfer efficiency, `60 % (55 to 65)`. */
enum transfer_at { TRANSFER_LIKELY, TRANSFER_LOW, TRANSFER_HIGH };

/* The figures of a coat line from theoretical volume (gal, L) to the mix that leaves the gun;
 * coat->coating, way and times must be set. area: sprayed, sq ft or m2.
 *
 * By wet film: theoretical = area x film x 144 / 231 000 gal (area x film / 1000 L). By theoretical
 * coverage: area / coverage is coating as sold, or with its catalyst, and with what it is mixed
 * with the mix. Both then x coats / transfer / (1 - other loss). By practical coverage the losses
 * are included. Method: docs/method.md, "Surface and finish". */
void coat_spray(struct coat_figures *coat, const struct calc *calc, enum transfer_at at, fig area);

/* From what leaves the gun to what is mixed (gal, L), its parts, what each mix is washed off with,
 * and the dry film (mil, um). A fixed loss comes with each mix: one a coat, or as many as `mix
 * size`, which holds the loss too, asks for. */
void coat_mix(struct coat_figures *coat, const struct calc *calc, const struct coat_pool *pool);

#endif
