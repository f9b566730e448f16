/* SPDX-License-Identifier: MIT */
/* What tells a file that we wrote from one that somebody saved again.
 *
 * A file of ours carries a seal with a sum over all that stands before: in a workbook the comment
 * at the end of its zip archive, in a PDF, SVG or page a comment line after its end, in a calendar
 * a property of its last event, which is written open and ended behind it.  A file that somebody
 * saved again from another program has lost it, and is not overwritten unless told. A CSV or
 * text file has no place for a seal: one that stands there is not overwritten unless told.
 */
#ifndef DOORCOST_REPORT_FILE_SEAL_H
#define DOORCOST_REPORT_FILE_SEAL_H

#include <stdbool.h>
#include <stdio.h>

enum output_kind {
    OUTPUT_WORKBOOK,
    OUTPUT_PDF,
    OUTPUT_SVG,
    OUTPUT_CSV,
    OUTPUT_HTML,
    OUTPUT_CALENDAR,
    OUTPUT_TEXT,
    OUTPUT_KIND_COUNT
};
#define OUTPUT_BIT(kind) (1u << (kind))

/* Whether files of that kind have a place for one. */
bool seal_has(enum output_kind kind);

/* Sets the seal of the file of that name, where its kind has one, and brings the file to the disk.
 * false: errno tells. */
bool seal_set(const char *name, enum output_kind kind) __attribute__((warn_unused_result));

/* Whether all of an open file, of a kind that has a seal, is as it was when that was set. */
bool seal_is_whole(FILE *file, enum output_kind kind);

#endif
