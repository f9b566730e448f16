/* SPDX-License-Identifier: MIT */
#include "command/further.h"

#include "base/text.h"
#include "command/files.h"
#include "command/work.h"
#include "together/together.h"

#include <stdlib.h>

enum status further_open(struct further_jobs *further, const struct request *request,
                         const struct work *first, further_suits *suits, struct streams streams) {
    enum status status = STATUS_DONE;
    *further = (struct further_jobs){0};
    if (request->word_count + 1 > MOST_JOBS_TOGETHER) {
        text_print(streams.err, "doorcost: %zu jobs are named; '%s' takes %d at once\n",
                   request->word_count + 1, request->command->name, MOST_JOBS_TOGETHER);
        return STATUS_USE;
    }
    further->works = calloc(request->word_count + 1, sizeof *further->works);
    if (further->works == NULL) {
        return command_out_of_memory(streams);
    }
    for (size_t i = 0; i < request->word_count && status == STATUS_DONE; i++) {
        struct work *const work = &further->works[further->count++];
        status = command_open(request, request->words[i], first->request, work, streams);
        if (status == STATUS_DONE) {
            status = suits(request, first, work, request->words[i], streams);
        }
    }
    return status;
}

void further_close(struct further_jobs *further) {
    for (size_t i = 0; i < further->count; i++) {
        work_close(&further->works[i]);
    }
    free(further->works);
    *further = (struct further_jobs){0};
}

enum status further_check(const struct further_jobs *further, const struct work *first,
                          struct output *outputs, size_t count, const struct request *request,
                          struct streams streams) {
    enum status status = files_check(outputs, count, request, first, streams);
    struct request other = *request;
    for (size_t i = 0; i < further->count && status == STATUS_DONE; i++) {
        other.job = request->words[i];
        status = files_check(outputs, count, &other, &further->works[i], streams);
    }
    return status;
}
