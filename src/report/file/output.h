/* SPDX-License-Identifier: MIT */
/* Files are written beside their targets, without a name where the disk can do that, and renamed
 * over them together, so that a failed run leaves every old file whole.  From outputs_begin until
 * they stand there or are dropped, the signals that ask a program to end wait (hold.h): such a run
 * leaves all old files or all new ones, and nothing beside them.
 *
 * A file of ours carries a seal (seal.h): one that somebody saved again has lost it, and is not
 * overwritten unless told, nor one of a kind that has no place for a seal.
 *
 * A file that is `fresh` is somebody's from the first day on: nothing may stand at its path, and
 * nothing is ever written over there. */
#ifndef DOORCOST_REPORT_FILE_OUTPUT_H
#define DOORCOST_REPORT_FILE_OUTPUT_H

#include "base/stop.h"
#include "report/file/hold.h"
#include "report/file/seal.h"

#include <stdbool.h>
#include <stddef.h>
#include <sys/stat.h>

/* One file of a run. path, kind, others and fresh are given; the rest is 0 before outputs_begin. */
struct output {
    const char *path;
    enum output_kind kind;
    unsigned
        others; /* kinds that it can be had as, OUTPUT_BIT, said of a wrong ending; 0: kind alone */
    char *name; /* of the file beside path that the work goes to, to be opened by */
    char *kept; /* a second name or a copy of what stood at path, while the renaming goes on */
    int handle; /* what keeps the file beside path while it is nameless */
    bool nameless; /* it has no name in its folder yet */
    bool fresh;    /* nothing may stand there, forced or not */
    bool forced;   /* --force: nothing that stands there is asked for */
    bool stood;    /* something stood at path when the run began, which then was: */
    struct stat about;
    struct hold hold; /* of the first of them: for all */
};

enum output_result {
    OUTPUT_OK,
    OUTPUT_NOT_OURS,     /* something stands at path that is not as we wrote it */
    OUTPUT_SEALLESS,     /* something stands at path, of a kind that carries no seal */
    OUTPUT_STANDS,       /* something stands at the path of a fresh one */
    OUTPUT_FOLDER,       /* path is a folder */
    OUTPUT_NO_FOLDER,    /* the folder that path stands in is missing */
    OUTPUT_NOT_PLAIN,    /* something stands at path that is no file: a device, a pipe */
    OUTPUT_UNREADABLE,   /* what stands at path can't be read; errno tells */
    OUTPUT_READ_ONLY,    /* what stands at path may not be written */
    OUTPUT_CHANGED,      /* what stands at path was written by another while the run went on */
    OUTPUT_CANNOT_WRITE, /* errno tells */
    OUTPUT_MEMORY,
    OUTPUT_STOPPED /* a signal asked for it */
};

/* Sees that every path is free for us.  force: whatever file stands there, even where it may not be
 * written; never a device.  On any result but OUTPUT_OK: *at is the output that failed. */
enum output_result outputs_free(struct output *outputs, size_t count, bool force, size_t *at)
    __attribute__((warn_unused_result));

/* The same, and makes an empty file beside each.  The new file gets the mode of what stands there.
 * force: also what is changed during the run is written over.  outputs: always left so that
 * outputs_drop may be called. */
enum output_result outputs_begin(struct output *outputs, size_t count, bool force, size_t *at)
    __attribute__((warn_unused_result));

/* Sets the seals, brings the files to the disk and renames them to their paths: all, or none.
 * A signal that waits before the first is renamed gives OUTPUT_STOPPED; one that comes later ends
 * the program once all are. */
enum output_result outputs_finish(struct output *outputs, size_t count, size_t *at)
    __attribute__((warn_unused_result));

/* Whether a signal waits for these files: what makes them may give up between one and the next. */
bool outputs_stopped(const struct output *outputs);
/* The same for whoever makes a file and does not know of outputs; outputs: borrowed. */
struct stop outputs_stop(const struct output *outputs);

/* Removes the files of a run that failed, and frees the names.  Where a signal waits, it ends the
 * program here. */
void outputs_drop(struct output *outputs, size_t count);

/* Whether path is free for us: nothing there, or a file whose seal is whole. */
bool output_is_ours(const char *path, enum output_kind kind);

#endif
