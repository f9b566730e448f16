/* SPDX-License-Identifier: MIT */
/* `learn`: what happened, against the estimate. */
#include "learn/learned.h"

#include "base/text.h"
#include "command/command.h"
#include "command/work.h"
#include "read/actuals/actuals_file.h"
#include "report/json/json.h"
#include "report/text/print.h"

static enum status tell(const struct request *request, const struct work *work,
                        const struct learned *learned, struct streams streams) {
    if (request->json) {
        struct json_paper paper = command_paper(request, work);
        paper.learned = learned;
        return command_send(&paper, streams);
    }
    struct page page = {.out = streams.out};
    learned_print(&page, &work->estimates[0], learned);
    return page.failed ? command_out_of_memory(streams) : command_flush(streams);
}

static enum status learn(const struct request *request, struct work *work,
                         const struct actuals *actuals, struct problems *problems,
                         struct streams streams) {
    struct pool pool;
    struct learned learned;
    enum status status = STATUS_INPUTS;
    pool_init(&pool);
    const bool whole = problems_count(problems, SEVERITY_ERROR) == 0;
    const bool memory =
        !whole || learned_make(&learned, &work->estimates[0], actuals, problems, &pool);
    command_problems(request, problems, streams);
    if (!memory) {
        status = command_out_of_memory(streams);
    } else if (whole) {
        status = tell(request, work, &learned, streams);
    }
    pool_clear(&pool);
    return status;
}

enum status command_learn(const struct request *request, struct work *work,
                          struct streams streams) {
    struct actuals actuals;
    struct problems problems;
    enum status status;
    if (request->word_count != 1) {
        text_print(streams.err,
                   "doorcost: 'learn' needs the job file and one file of what was noted, as in: "
                   "%s\n",
                   request->command->example);
        return STATUS_USE;
    }
    problems_init(&problems);
    if (actuals_read(&actuals, &work->rates, request->words[0], &problems)) {
        status = learn(request, work, &actuals, &problems, streams);
    } else {
        status = command_out_of_memory(streams);
    }
    actuals_clear(&actuals);
    problems_clear(&problems);
    return status;
}
