/* SPDX-License-Identifier: MIT */
#include "command/further.h"

#include "base/text.h"
#include "command/work.h"

#include <stdlib.h>
#include <string.h>

/* Whether two paths lead to one file. */
static bool same_file(const char *a, const char *b) {
    char *const real_a = realpath(a, NULL);
    char *const real_b = realpath(b, NULL);
    const bool same = real_a != NULL && real_b != NULL && strcmp(real_a, real_b) == 0;
    free(real_a);
    free(real_b);
    return same;
}

enum status further_open(const struct request *request, const struct work *first, const char *path,
                         const char *option, const char *why, struct work *work,
                         struct streams streams) {
    struct work_request asked = first->request;
    asked.option = option;
    const enum status status = command_open(request, path, asked, work, streams);
    if (status != STATUS_DONE) {
        return status;
    }
    if (!same_file(first->rates.path, work->rates.path)) {
        text_print(streams.err, "doorcost: '%s' has other rates than '%s'; %s\n", path,
                   request->job, why);
        return STATUS_USE;
    }
    return STATUS_DONE;
}
