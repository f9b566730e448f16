/* SPDX-License-Identifier: MIT */
/* Where the user reads on. */
#ifndef DOORCOST_BASE_MANUAL_H
#define DOORCOST_BASE_MANUAL_H

#include "base/pool.h"

/* What tells of the input files, in words: `'man doorcost-list'` where that page stands in
 * ../share/man beside the running program, as where it was installed; else `docs/formats.md`. page:
 * `rates`, `job`, `list` or `noted`. In pool, or static. */
const char *manual_name(struct pool *pool, const char *page);

#endif
