/* SPDX-License-Identifier: MIT */
/* `new`: files to begin with. */
#include "command/new.h"

#include "base/text.h"

enum status command_new(const struct request *request, struct work *work, struct streams streams) {
    (void)work;
    if (request->job == NULL) {
        text_print(streams.err, "doorcost: 'new' needs a name for the job file, as in: %s\n",
                   request->command->example);
        return STATUS_USE;
    }
    return new_job(request, streams);
}
