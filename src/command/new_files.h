/* SPDX-License-Identifier: MIT */
/* The files that `new` begins with: all of them stand there in the end, or none. */
#ifndef DOORCOST_COMMAND_NEW_FILES_H
#define DOORCOST_COMMAND_NEW_FILES_H

#include "command/files.h"
#include "draft/list_draft.h"

#define NEW_MOST_FILES ((size_t)5)

struct new_files {
    struct output outputs[NEW_MOST_FILES];
    const char *texts[NEW_MOST_FILES]; /* NULL: it is the list */
    const struct list_draft *list;
    size_t count;
    const char *folder; /* made for them where it is not there; NULL: none */
    struct hold hold;   /* from new_files_write on */
    bool made_folder;
};

/* A file more, of that text. Both are borrowed. */
void new_files_add(struct new_files *files, const char *path, const char *text);

/* Rates of that text, which are those that ship or made of them, and what these name and does not
 * stand there yet, into the folder that `rates` (a path) stands in. pool: for their paths. */
void new_files_add_shipped(struct new_files *files, const char *rates, const char *text,
                           struct pool *pool);

/* Reads the rates that ship, as if they stood at path: of them names alone are taken, so that what
 * they name need not be there; scratch: what would be wrong with that. false: out of memory. */
bool new_shipped_read(struct rates *rates, const char *path, bool metric, struct problems *scratch)
    __attribute__((warn_unused_result));

/* The path with `.ini` behind it where its name has no ending. what: that it is, `a job file`. In
 * pool; NULL: it has another ending, or no name, said on err. */
const char *new_files_named(const char *path, const char *what, struct pool *pool,
                            struct streams streams);

/* The path as a shell takes it, in quotes where it would not be taken as it is. In pool, "" where
 * its memory is out. */
const char *new_files_typed(const char *path, struct pool *pool);

/* Whether a file may be written there, where nothing stands; else said on err. */
enum status new_files_check(const char *path, struct streams streams);

/* A list to fill in, a workbook or by its ending comma-separated values; borrowed. */
void new_files_add_list(struct new_files *files, const char *path, const struct list_draft *list);
/* Whether it may be there, by its name and what stands there; else said on err. */
enum status new_files_check_list(const char *path, struct streams streams);

/* Writes all of them where nothing stands; until new_files_keep or new_files_drop signals wait. Any
 * status but STATUS_DONE: said on err, none is there. */
enum status new_files_write(struct new_files *files, const struct request *request,
                            struct streams streams);
/* Says which were written; signals go through. */
void new_files_keep(struct new_files *files, struct streams streams);
/* Takes them away again, unless nothing was written. */
void new_files_drop(struct new_files *files);

/* Writes the job file at path with that value of a key of [job]; its other lines stay. Any status
 * but STATUS_DONE: said on err, and the file is as it was. */
enum status new_files_change(const char *path, const char *key, const char *value,
                             struct streams streams);

#endif
