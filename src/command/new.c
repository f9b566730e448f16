/* SPDX-License-Identifier: MIT */
/* `new`: files to begin with. */
#include "command/new.h"

#include "base/text.h"

enum status command_new(const struct request *request, struct work *work, struct streams streams) {
    if (request->rates != NULL && (request->job != NULL || request->list != NULL)) {
        text_print(streams.err,
                   "doorcost: --rates stands alone; call 'new' for the job after it\n");
        return STATUS_USE;
    }
    if (request->rates != NULL) {
        return new_rates(request, streams);
    }
    if (request->job != NULL && request->unit != NULL) {
        text_print(streams.err, "doorcost: --unit is of --list or --rates alone; the unit of a job "
                                "tells --set \"unit = mm\", else its rates\n");
        return STATUS_USE;
    }
    if (request->job != NULL) {
        return new_job(request, streams);
    }
    if (request->list != NULL) {
        return new_list(request, work, streams);
    }
    text_print(streams.err, "doorcost: 'new' needs a name for the job file, as in: %s; or --list\n",
               request->command->example);
    return STATUS_USE;
}
