/* SPDX-License-Identifier: MIT */
/* The files that a command writes: where they go, and what is said when they can't. */
#ifndef DOORCOST_COMMAND_FILES_H
#define DOORCOST_COMMAND_FILES_H

#include "base/pool.h"
#include "command/command.h"
#include "report/file/output.h"

/* What -o names; without it, the job file's name with `ending` in place of its own. In pool or
 * borrowed; NULL when memory is out. */
const char *files_target(const struct request *request, struct pool *pool, const char *ending);

/* path with `ending` in place of `old`, or behind it where path ends otherwise; NULL when memory is
 * out. */
const char *files_beside(struct pool *pool, const char *path, const char *old, const char *ending);

/* Sees that every output has a name and none is an input.  Any status but STATUS_DONE: said on err.
 */
enum status files_check(const struct output *outputs, size_t count, const struct request *request,
                        const struct work *work, struct streams streams);

/* Begins them. Any status but STATUS_DONE: said on err, nothing begun. */
enum status files_begin(struct output *outputs, size_t count, const struct request *request,
                        struct streams streams);

/* Puts all of them in place and says so, or none. */
enum status files_finish(struct output *outputs, size_t count, const struct request *request,
                         struct streams streams);

/* Says that output `at` could not be written, and drops all. */
enum status files_failed(struct output *outputs, size_t count, size_t at, struct streams streams);

#endif
