/* SPDX-License-Identifier: MIT */
#ifndef DOORCOST_BASE_ARRAY_H
#define DOORCOST_BASE_ARRAY_H

/* How many elements an array has: of an array, not of a pointer. */
#define COUNT_OF(array) (sizeof(array) / sizeof((array)[0]))

#endif
