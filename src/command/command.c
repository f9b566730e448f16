/* SPDX-License-Identifier: MIT */
#include "command/command.h"

#include "base/text.h"
#include "command/help.h"
#include "command/progress.h"
#include "command/work.h"
#include "report/json/json.h"
#include "report/text/print.h"
#include "report/words/show.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

/* --- what the commands share --- */

enum status command_flush(struct streams streams) {
    errno = 0;
    if (fflush(streams.out) == 0 && ferror(streams.out) == 0) {
        return STATUS_DONE;
    }
    text_print(streams.err, "doorcost: could not write the result%s%s\n", errno == 0 ? "" : ": ",
               errno == 0 ? "" : strerror(errno));
    return STATUS_OUTPUT;
}

enum status command_out_of_memory(struct streams streams) {
    text_print(streams.err, "doorcost: out of memory; nothing was written\n");
    return STATUS_OUTPUT;
}

struct json_paper command_paper(const struct request *request, const struct work *work) {
    const bool whole = problems_count(&work->problems, SEVERITY_ERROR) == 0;
    return (struct json_paper){
        .command = request->command->name,
        .parts = request->command->json_parts,
        .inputs = &work->texts,
        .problems = &work->problems,
        .job = whole ? &work->job : NULL,
        .estimates = work->estimates,
        .count = work->count,
    };
}

enum status command_send(const struct json_paper *paper, struct streams streams) {
    if (!json_write(paper, streams.out)) {
        text_print(streams.err, "doorcost: out of memory; the JSON document is not whole\n");
        return STATUS_OUTPUT;
    }
    return command_flush(streams);
}

enum status command_json(const struct request *request, const struct work *work,
                         struct streams streams) {
    const struct json_paper paper = command_paper(request, work);
    return command_send(&paper, streams);
}

/* --- running one --- */

static bool wants_color(const struct request *request, FILE *err) {
    const char *const refused = getenv("NO_COLOR");
    const char *const terminal = getenv("TERM");
    return !request->no_color && (refused == NULL || refused[0] == '\0') &&
           (terminal == NULL || strcmp(terminal, "dumb") != 0) && isatty(fileno(err)) == 1;
}

void command_problems(const struct request *request, const struct problems *problems,
                      struct streams streams) {
    const size_t errors = problems_count(problems, SEVERITY_ERROR);
    const size_t warnings = problems_count(problems, SEVERITY_WARNING);
    problems_print(problems, streams.err, wants_color(request, streams.err));
    if (errors > 0) {
        text_print(streams.err, "%s%s%s; nothing was written\n", show_count(errors, "error").text,
                   warnings == 0 ? "" : ", ",
                   warnings == 0 ? "" : show_count(warnings, "warning").text);
    }
}

/* Errors: nothing but problems is printed, as JSON too where that was asked for. */
static enum status report_errors(const struct request *request, const struct work *work,
                                 struct streams streams) {
    if (request->json && command_json(request, work, streams) != STATUS_DONE) {
        return STATUS_OUTPUT;
    }
    return STATUS_INPUTS;
}

static enum status no_such_option(const struct request *request, const char *path,
                                  struct work *work, struct streams streams) {
    const struct job *const job = &work->job;
    struct pool *const pool = &work->problems.pool;
    const char **const names = pool_take(pool, job->option_count, sizeof *names);
    const char *all = "";
    if (names == NULL) {
        return command_out_of_memory(streams);
    }
    for (size_t i = 0; i < job->option_count; i++) {
        names[i] = job->options[i].name.s;
        all = pool_words(pool, "%s%s'%s'", all, i == 0 ? "" : ", ", names[i]);
    }
    const char *const near = text_nearest(request->option, names, job->option_count);
    const char *what =
        job->option_count == 0 ? "it has no options" : pool_words(pool, "it has %s", all);
    if (near != NULL) {
        what = pool_words(pool, "did you mean '%s'?", problem_quote(&work->problems, near));
    }
    text_print(streams.err, "doorcost: the job '%s' has no [option %s]; %s\n",
               problem_quote(&work->problems, path),
               problem_quote(&work->problems, request->option), what);
    return STATUS_USE;
}

/* Effort is given in millions of units of work, so that a person can type it. */
static bool read_effort(const char *text, int64_t *effort, FILE *err) {
    int64_t millions = 0;
    if (!option_whole(text, "effort", 0, 1000000, &millions, err)) {
        return false;
    }
    *effort = millions * 1000000;
    return true;
}

enum status command_open(const struct request *request, const char *path, struct work_request asked,
                         struct work *work, struct streams streams) {
    struct progress progress;
    progress_begin(&progress, streams.err, "estimating the job");
    const enum work_result result = work_open(work, path, asked);
    progress_end(&progress);
    command_problems(request, &work->problems, streams);
    if (result == WORK_MEMORY) {
        return command_out_of_memory(streams);
    }
    if (problems_count(&work->problems, SEVERITY_ERROR) > 0) {
        return report_errors(request, work, streams);
    }
    return result == WORK_NO_OPTION ? no_such_option(request, path, work, streams) : STATUS_DONE;
}

static enum status run(const struct request *request, struct streams streams) {
    struct work work = {0};
    const struct command *const command = request->command;
    const bool opens = command->scope != WORK_NOTHING;
    struct work_request asked = {.option = request->option,
                                 .scope = command->scope,
                                 .trace = command->trace,
                                 .saved = command->run == command_bridge,
                                 .plans = {.effort = CUT_EFFORT_SECOND, .always = command->plans}};
    if (request->effort != NULL &&
        !read_effort(request->effort, &asked.plans.effort, streams.err)) {
        return STATUS_USE;
    }
    if (request->json) {
        /* each estimate is named with its facts, figures by their numbers on a traced tape */
        asked.scope = command->scope == WORK_PROBLEMS ? WORK_ALL : command->scope;
        asked.trace = TRACE_ALL;
    }
    problems_init(&work.problems);
    enum status status =
        opens ? command_open(request, request->job, asked, &work, streams) : STATUS_DONE;
    if (status == STATUS_DONE) {
        status = command->run(request, &work, streams);
    }
    work_close(&work);
    return status;
}

static enum status finish_page(const struct page *page, struct streams streams) {
    return page->failed ? command_out_of_memory(streams) : command_flush(streams);
}

enum status command_main(int argc, char **argv, struct streams streams) {
    struct request request;
    if (argc <= 1) {
        struct page page = {.out = streams.err};
        help_print_short(&page);
        return STATUS_USE;
    }
    if (!options_read(&request, argc, argv, streams.err)) {
        return STATUS_USE;
    }
    struct page page = {.out = streams.out};
    if (request.help) {
        if (request.command == NULL) {
            help_print(&page);
        } else {
            help_print_command(&page, request.command);
        }
        return finish_page(&page, streams);
    }
    if (request.version) {
        say(&page, "doorcost " DOORCOST_VERSION);
        say(&page, "MIT license; no warranty. All shipped prices and times are invented.");
        return finish_page(&page, streams);
    }
    if (request.command == NULL) {
        text_print(streams.err, "doorcost: no command; 'doorcost help' lists them\n");
        return STATUS_USE;
    }
    if (request.job == NULL && request.command->scope != WORK_NOTHING) {
        text_print(streams.err, "doorcost: '%s' needs a job file, as in: %s\n",
                   request.command->name, request.command->example);
        return STATUS_USE;
    }
    return run(&request, streams);
}
