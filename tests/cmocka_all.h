/* SPDX-License-Identifier: MIT */
/* cmocka's header, with those that it needs before it. */
#ifndef DOORCOST_TESTS_CMOCKA_ALL_H
#define DOORCOST_TESTS_CMOCKA_ALL_H

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#define COUNT(rows) (sizeof(rows) / sizeof((rows)[0]))

#endif
