/* SPDX-License-Identifier: MIT */
/* `draw`: the elevations of all doors as a PDF for the shop wall. */
#include "command/command.h"
#include "command/files.h"
#include "command/progress.h"
#include "command/work.h"
#include "report/doors/door_drawings.h"

enum status command_draw(const struct request *request, struct work *work, struct streams streams) {
    struct pool pool;
    pool_init(&pool);
    struct output output = {.path = files_target(request, work, &pool, "-doors.pdf"),
                            .kind = OUTPUT_PDF};
    enum status status = files_check(&output, 1, request, work, streams);
    if (status == STATUS_DONE && request->json) {
        status = command_json(request, work, streams);
    }
    if (status == STATUS_DONE) {
        status = files_begin(&output, 1, request, streams);
    }
    if (status == STATUS_DONE && output.name != NULL) {
        const struct stop stop = outputs_stop(&output);
        const char *lacking = NULL;
        struct progress progress;
        progress_begin(&progress, streams.err, "drawing the doors");
        const bool done =
            door_drawings_write(&work->estimates[0], output.name, &stop, &pool, &lacking);
        progress_end(&progress);
        if (done) {
            files_lacking(&output, work, lacking, streams.err);
        }
        status = done ? files_finish(&output, 1, request, streams)
                      : files_failed(&output, 1, 0, streams);
    }
    pool_clear(&pool);
    return status;
}
