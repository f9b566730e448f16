/* SPDX-License-Identifier: MIT */
/* What is asked about the prices that an estimate was made of. */
#ifndef DOORCOST_PRICE_WARN_H
#define DOORCOST_PRICE_WARN_H

#include "model/calc.h"

/* Asks about dated prices that were used: those that were learned longer before the day of the
 * quote than the shop's `price age` (`price-old`), and those that were learned after it
 * (`price-later`). When all stages are done. */
void prices_warn(const struct calc *calc);

#endif
