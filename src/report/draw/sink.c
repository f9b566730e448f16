/* SPDX-License-Identifier: MIT */
#include "report/draw/sink.h"

bool sink_open(struct sink *sink, const char *path) {
    *sink = (struct sink){.file = fopen(path, "wb")};
    sink->failed = sink->file == NULL;
    return !sink->failed;
}

cairo_status_t sink_take(void *sink, const unsigned char *bytes, unsigned int size) {
    struct sink *const to = sink;
    if (to->failed || fwrite(bytes, 1, size, to->file) != size) {
        to->failed = true;
        return CAIRO_STATUS_WRITE_ERROR;
    }
    return CAIRO_STATUS_SUCCESS;
}

bool sink_close(struct sink *sink) {
    bool done = !sink->failed;
    if (sink->file != NULL) {
        done = fclose(sink->file) == 0 && done;
    }
    sink->file = NULL;
    return done;
}
