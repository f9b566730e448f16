/* SPDX-License-Identifier: MIT */
/* One coat line of a finish: the volumes that an area takes. */
#ifndef DOORCOST_FINISH_COAT_H
#define DOORCOST_FINISH_COAT_H

#include "finish/finish.h"

/* The figures of a coat line from theoretical volume to coating, reducer and catalyst;
 * coat->coating must be set.
 *
 * By wet film: theoretical = area x film x 144 / 231 000 gal (area x film / 1000 L); by theoretical
 * coverage: area / coverage; both then x coats / transfer / (1 - other loss).  By practical
 * coverage: area x coats / coverage, losses included. A fixed loss comes with each mix: one a coat,
 * or as many as `mix size` asks for, times `colors` (none: one). */
void coat_make(struct coat_figures *coat, struct tape *tape, const struct measures *measures,
               const struct rates *rates, const struct spray *spray, fig area, fig colors,
               const struct value *times);

#endif
