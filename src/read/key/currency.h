/* SPDX-License-Identifier: MIT */
/* The codes of currencies, ISO 4217. */
#ifndef DOORCOST_READ_KEY_CURRENCY_H
#define DOORCOST_READ_KEY_CURRENCY_H

#include <stdbool.h>
#include <stdint.h>

/* Whether code is one of ISO 4217 for money, in capitals: 'USD'. */
bool currency_known(const char *code);

/* Decimals of amounts in the currency of that code, by ISO 4217: 0 for the yen, 3 for some dinars;
 * 2 for most, and for what is no code. */
uint8_t currency_decimals(const char *code);

/* The code that is probably meant: 'CAD' for 'cad' and 'CDA'. NULL: none is near. */
const char *currency_meant(const char *text);

#endif
