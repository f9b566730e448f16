/* SPDX-License-Identifier: MIT */
/* Commands called as the shell calls them, in the test's own process. */
#ifndef DOORCOST_TESTS_COMMAND_BENCH_H
#define DOORCOST_TESTS_COMMAND_BENCH_H

#include "command/command.h"

#define CALL_WORDS 12 /* at most, without the program's name */

struct called {
    char *out; /* what was printed, terminated, on the heap */
    size_t size;
    enum status status;
};

/* words: the command and what stands behind it, ended by NULL. more: one more word; NULL: none.
 * What was said is printed where the status is not STATUS_DONE. */
struct called command_bench_call(const char *const *words, const char *more);

#endif
