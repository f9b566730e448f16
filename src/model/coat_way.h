/* SPDX-License-Identifier: MIT */
/* How a coat is put on: its coating may name a way of its own, a rag or a brush, in place of the
 * finish's. */
#ifndef DOORCOST_MODEL_COAT_WAY_H
#define DOORCOST_MODEL_COAT_WAY_H

#include "model/rates.h"

/* The way in which a finish puts on the coating of that index into rates.coatings; the finish has
 * coats (it is not put out). Borrowed from the rates. */
const struct spray *coat_way(const struct rates *rates, const struct finish *finish,
                             int32_t coating);

/* Whether a finish shows a color: a coat of it is mixed to one, or it is put out and others see the
 * color that is asked for. */
bool finish_shows_color(const struct rates *rates, const struct finish *finish);

#endif
