/* SPDX-License-Identifier: MIT */
/* The files that a command writes: where they go, and what is said when they can't. */
#ifndef DOORCOST_COMMAND_FILES_H
#define DOORCOST_COMMAND_FILES_H

#include "base/pool.h"
#include "command/command.h"
#include "report/file/output.h"

/* What -o names, with the ending where it names none; without -o, the job file's name with the
 * option's behind it and `ending` in place of its own. In pool or borrowed; NULL when memory is
 * out. */
const char *files_target(const struct request *request, const struct work *work, struct pool *pool,
                         const char *ending);

/* An output at path that can be had as any of `kinds` (OUTPUT_BIT): as its ending says, else, and
 * where that is none of them, as `usual`. path: may be NULL. */
struct output files_output(const char *path, unsigned kinds, enum output_kind usual);

/* path with `part` at the end of its name and `ending` in place of its own (NULL: its own stays);
 * path itself where it has no ending, NULL when memory is out. */
const char *files_beside(struct pool *pool, const char *path, const char *part, const char *ending);

/* Whether two paths lead to one file; a file that is not there is none, and NULL names none. */
bool files_same(const char *a, const char *b);

/* Sees that every output has a name, none is an input, and each is free for us: asked before
 * anything is printed. Any status but STATUS_DONE: said on err. */
enum status files_check(struct output *outputs, size_t count, const struct request *request,
                        const struct work *work, struct streams streams);

/* Begins them. Any status but STATUS_DONE: said on err, nothing begun. */
enum status files_begin(struct output *outputs, size_t count, const struct request *request,
                        struct streams streams);

/* Writes text to an output that was begun. false: errno tells. */
bool files_put(const struct output *output, const char *text) __attribute__((warn_unused_result));

/* Says on err what a result means for the output at path: STATUS_DONE of OUTPUT_OK. */
enum status files_say(enum output_result result, const char *path, struct streams streams);

/* Says on err that a PDF, or an SVG page, shows boxes for letters of the text `lacking`, and what
 * to do; nothing where that is NULL. */
void files_lacking(const struct output *output, struct work *work, const char *lacking, FILE *err);

/* Puts all of them in place and says so, or none. */
enum status files_finish(struct output *outputs, size_t count, const struct request *request,
                         struct streams streams);

/* Says that output `at` could not be written, and drops all. */
enum status files_failed(struct output *outputs, size_t count, size_t at, struct streams streams);

#endif
