/* SPDX-License-Identifier: MIT */
/* Files are written beside their target and renamed over it, so that a failed run leaves the old
 * file whole.
 *
 * A workbook of ours carries a seal: the comment at the end of its zip archive holds a sum over all
 * that stands before.  A workbook that somebody saved again from a spreadsheet program has lost it,
 * and is not overwritten unless told. */
#ifndef DOORCOST_REPORT_OUTPUT_H
#define DOORCOST_REPORT_OUTPUT_H

#include <stdbool.h>

enum output_result {
    OUTPUT_OK,
    OUTPUT_CANNOT_WRITE, /* errno tells */
    OUTPUT_MEMORY
};

/* Makes an empty file beside path for the work; *name: its name, to be freed. */
enum output_result output_begin(const char *path, char **name) __attribute__((warn_unused_result));

/* Sets the seal of the zip file `name`, brings it to the disk and renames it to path. */
enum output_result output_finish(const char *name, const char *path)
    __attribute__((warn_unused_result));

/* Removes the file of a run that failed. */
void output_drop(const char *name);

/* Whether path is free for us: nothing there, or a workbook whose seal is whole. */
bool output_is_ours(const char *path);

#endif
