/* SPDX-License-Identifier: MIT */
/* Questions of a new job, answered at once: what is meant so goes into its line `accept`, and is
 * not asked again. */
#include "base/text.h"
#include "command/ask.h"
#include "command/new_run.h"
#include "read/job/accept.h"

#include <string.h>

enum status new_accept(struct new_run *run, const struct job *job, struct problems *problems) {
    const char *accepted = "";
    for (size_t i = 0; i < problems->count && run->asks; i++) {
        struct problem *const p = &problems->list[i];
        bool yes = false;
        if (p->severity != SEVERITY_WARNING) {
            continue;
        }
        const char *const name = job_accept_item(job, p, &run->pool);
        const char *const file = problems_file_name(problems, p->place.file);
        const struct place_words place = problems_place(problems, p->place);
        const struct ask question = {
            .why = pool_words(&run->pool, "%s%s: %s%s Leave it so?", file, place.text, p->text,
                              p->text[strlen(p->text) - 1] == '?' ? "" : "."),
            .name = name,
            .offer = "no",
            .ended = "the job stays as it was written"};
        const enum ask_result result =
            ask_whether(question, run->streams.in, run->streams.err, &run->pool, &yes);
        if (result != ASK_ANSWERED) {
            return result == ASK_MEMORY ? command_out_of_memory(run->streams) : STATUS_INPUTS;
        }
        p->severity = yes ? SEVERITY_ACCEPTED : p->severity;
        if (yes && !text_lists(accepted, name)) {
            accepted =
                pool_words(&run->pool, "%s%s%s", accepted, accepted[0] == '\0' ? "" : ", ", name);
        }
    }
    if (accepted[0] == '\0') {
        return STATUS_DONE;
    }
    const enum status status = new_files_change(run->draft.path, "accept", accepted, run->streams);
    if (status == STATUS_DONE) {
        text_print(run->streams.out, "\n%s: accept = %s\n", run->draft.path, accepted);
    }
    return status;
}
