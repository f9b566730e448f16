/* SPDX-License-Identifier: MIT */
/* Where the bytes of a drawing go.  The drawing library forgets some errors of writing while it
 * finishes a file, so they are kept here. */
#ifndef DOORCOST_REPORT_DRAW_SINK_H
#define DOORCOST_REPORT_DRAW_SINK_H

#include <cairo.h>
#include <stdbool.h>
#include <stdio.h>

struct sink {
    FILE *file;
    bool failed;
};

/* Opens path for writing. false: it can't be; errno tells. */
bool sink_open(struct sink *sink, const char *path) __attribute__((warn_unused_result));

/* For the surfaces that write to a stream; sink: a struct sink, which must stay where it is. */
cairo_status_t sink_take(void *sink, const unsigned char *bytes, unsigned int size);

/* Whether all that was taken is in the file. errno tells the first error. May be called on a sink
 * that could not be opened, which is not whole. */
bool sink_close(struct sink *sink) __attribute__((warn_unused_result));

#endif
