/* SPDX-License-Identifier: MIT */
/* Small inputs in a folder of their own: a good base, spoiled by a case.
 *
 * A case's folder may hold whole files that replace those of the base, and a file `edit` with lines
 *     rates.ini                 the file that the next lines change
 *     -price = 4.10 per bf      takes away this line, which the file must have once
 *     +price = 4.10 per sheet   puts a line where the last one was taken, else at the end
 *     !woods.csv                takes away this file
 *     x 3                       puts the last line 3 times more
 * in which \xHH is the byte HH. */
#ifndef DOORCOST_TESTS_CASE_H
#define DOORCOST_TESTS_CASE_H

#include <stdbool.h>
#include <stddef.h>

/* All bytes of a file, terminated, on the heap; NULL: it cannot be read. size may be NULL. */
char *case_load(const char *path, size_t *size);
bool case_save(const char *path, const char *bytes, size_t size);

/* Path of a file in a folder, on the heap. */
char *case_path(const char *folder, const char *name);

/* Fills the folder `into` (made if need be) with the base, as spoiled by the case (NULL: not at
 * all). false: said on stderr. */
bool case_prepare(const char *base, const char *spoiled, const char *into);

/* The names in a folder, sorted, on the heap; *count. Each is to be freed. */
char **case_names(const char *folder, size_t *count);

#endif
