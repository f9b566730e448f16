/* SPDX-License-Identifier: MIT */
/* A job file to begin with: what is set, asked for and offered; then the reader looks at it. */
#include "base/text.h"
#include "command/ask.h"
#include "command/new.h"
#include "command/new_run.h"
#include "command/rates_run.h"
#include "command/work.h"
#include "draft/defaults.h"
#include "draft/shipped_files.h"
#include "read/job/accept.h"
#include "read/job/job_file.h"
#include "read/rates/rates_file.h"
#include "report/text/print.h"

#include <string.h>
#include <unistd.h>

static enum status out_of_memory(const struct new_run *run) {
    return command_out_of_memory(run->streams);
}

/* --- rates --- */

/* Whether it is told which of several rates the job goes by: by what is set or was there, by an
 * answer, by the unit. */
static enum status find_rates(const struct new_run *run) {
    const struct folder *const folder = &run->folder;
    const struct draft *const draft = &run->draft;
    const struct folder_rates *const best = folder_rates(folder, draft_unit(draft));
    size_t fit = 0;
    for (size_t i = 0; i < folder->rates_count; i++) {
        const struct folder_rates *const rates = &folder->rates[i];
        fit += rates->unit == draft_unit(draft) && rates->own == best->own ? 1 : 0;
    }
    if (run->asks || fit < 2 || draft->old != NULL || draft_value(draft, "job", "rates") != NULL) {
        return STATUS_DONE;
    }
    text_print(run->streams.err,
               "doorcost: several files of rates are there; name one with --set \"rates = %s\"\n",
               folder->rates[0].name);
    return STATUS_USE;
}

/* Reads the rates that the job names; its unit is theirs unless it was told. */
static enum status read_rates(struct new_run *run) {
    struct draft *const draft = &run->draft;
    size_t count;
    const struct question *const rows = questions(&count);
    const char *const path =
        source_beside(&run->pool, draft->path, draft_value(draft, "job", "rates"));
    if (path == NULL) {
        return out_of_memory(run);
    }
    if (run->shipped != NULL) {
        run->shipped = path;
        return new_shipped_read(&run->rates, path, draft_unit(draft) == LENGTH_MM,
                                &run->folder.problems)
                   ? STATUS_DONE
                   : out_of_memory(run);
    }
    if (!rates_read(&run->rates, path, &run->problems)) {
        return out_of_memory(run);
    }
    if (problems_count(&run->problems, SEVERITY_ERROR) > 0) {
        return new_say_problems(run);
    }
    for (size_t i = 0; i < count; i++) {
        if (text_same(rows[i].key, "unit") && !run->set[i]) {
            draft->values[i] = draft_offer(draft, &rows[i]);
        }
    }
    return STATUS_DONE;
}

/* Where the rates that ship are put beside the first job: whose they are. */
static enum status ask_shop(struct new_run *run) {
    if (run->shipped == NULL || !run->asks) {
        return STATUS_DONE;
    }
    struct page page = {.out = run->streams.err};
    say(&page, "%s", "");
    say_wrapped(&page, "", 0,
                "There are no rates yet: those that ship are put beside the job. Their prices are "
                "invented, and papers say so, until 'doorcost new --rates' puts in yours. First "
                "whose they are.");
    return rates_ask_few(run->request, run->streams, draft_unit(&run->draft) == LENGTH_MM,
                         &run->pool, &run->rates_text);
}

/* --- the files --- */

static enum status find_lacks(const struct new_run *run) {
    if (draft_value(&run->draft, "job", "doors") != NULL) {
        return STATUS_DONE;
    }
    text_print(
        run->streams.err,
        "doorcost: no list of doors is named, and in the folder is none with the columns id, "
        "width and height that no other job names; name one with --set \"doors = FILE\", or write "
        "one to fill in with --list FILE.xlsx\n");
    return STATUS_USE;
}

static void tell(const struct new_run *run, const char *what, const char *list) {
    struct page page = {.out = run->streams.out};
    if (list[0] != '\0') {
        say_wrapped(&page, what, 10, "%s", list);
    }
}

static enum status compose(struct new_run *run) {
    const struct draft *const draft = &run->draft;
    struct ini_lines lines;
    struct draft_told told;
    const char *bad = NULL;
    if (!draft_lines(draft, &run->old_source, &lines, &told, &bad)) {
        if (bad == NULL) {
            return out_of_memory(run);
        }
        text_print(run->streams.err,
                   "doorcost: what is set for '%s' can stand in no line of a file: it is too long, "
                   "or has quotes of both kinds, or a character that is not shown\n",
                   bad);
        return STATUS_USE;
    }
    const char *const text = ini_text(&lines, &run->pool);
    if (text == NULL) {
        return out_of_memory(run);
    }
    tell(run, "kept:     ", told.kept);
    tell(run, "changed:  ", told.changed);
    tell(run, "dropped:  ", told.dropped);
    new_files_add(&run->files, draft->path, text);
    if (run->list != NULL) {
        if (!list_draft_make(&run->list_draft, draft->rates, draft_unit(draft), &run->pool)) {
            return out_of_memory(run);
        }
        new_files_add_list(&run->files, run->list, &run->list_draft);
    }
    if (run->shipped != NULL) {
        const char *const ships = shipped_rates(draft_unit(draft) == LENGTH_MM);
        new_files_add_shipped(&run->files, run->shipped,
                              run->rates_text == NULL ? ships : run->rates_text, &run->pool);
    }
    return pool_failed(&run->pool) ? out_of_memory(run) : STATUS_DONE;
}

/* Whether a place names the list: its file, with the sheet behind a colon where it is a workbook.
 */
static bool names_list(const struct job *job, const char *name) {
    const size_t size = job->doors_file == NULL ? 0 : strlen(job->doors_file);
    return size > 0 && strncmp(name, job->doors_file, size) == 0 &&
           (name[size] == '\0' || name[size] == ':');
}

/* Whether all errors are of the list, which is not ours to be put right. */
static bool is_of_list(const struct job *job, const struct problems *problems) {
    for (size_t i = 0; i < problems->count; i++) {
        const char *const name = problems_file_name(problems, problems->list[i].place.file);
        if (problems->list[i].severity == SEVERITY_ERROR && !names_list(job, name)) {
            return false;
        }
    }
    return true;
}

/* Reads what was written as `check` does; a list that is to be filled in has no rows yet. */
static enum work_result look(const struct new_run *run, struct work *work) {
    if (run->list == NULL) {
        return work_open(work, run->draft.path, (struct work_request){.scope = WORK_PROBLEMS});
    }
    *work = (struct work){0};
    problems_init(&work->problems);
    const bool held =
        job_read_keep(&work->job, &work->rates, run->draft.path,
                      (struct job_instead){.visit = true}, &work->texts, &work->problems) &&
        accept_apply(&work->job, &work->problems, false);
    problems_sort(&work->problems);
    return !held ? WORK_MEMORY
                 : (problems_count(&work->problems, SEVERITY_ERROR) > 0 ? WORK_INPUTS : WORK_OK);
}

/* Looks at what was written: what is wrong in it is told, and where it is not the list's fault it
 * goes. */
static enum status check(struct new_run *run) {
    struct work work;
    const enum work_result result = look(run, &work);
    const bool stays =
        result == WORK_OK || (result == WORK_INPUTS && is_of_list(&work.job, &work.problems));
    enum status accepted = STATUS_DONE;
    if (stays) {
        new_files_keep(&run->files, run->streams);
        (void)fflush(run->streams.out);
        const bool ask_each = run->asks && result == WORK_OK && run->list == NULL;
        if (!ask_each) { /* else each is told with its question */
            problems_print(&work.problems, run->streams.err, false);
        }
        if (result == WORK_OK && run->list == NULL) {
            struct page page = {.out = run->streams.out};
            accepted = new_accept(run, &work.job, &work.problems);
            say(&page, "%s", "");
            check_print(&page, &work.job, work.made, &work.problems);
        }
        text_print(run->streams.out, "\n%sdoorcost %s %s\n",
                   result != WORK_OK   ? "The list is not right yet; then: "
                   : run->list != NULL ? "Next: fill in the list, then: "
                                       : "Next: ",
                   result != WORK_OK ? "check" : "quote",
                   new_files_typed(run->draft.path, &run->pool));
    } else if (result != WORK_MEMORY) {
        command_problems(run->request, &work.problems, run->streams);
    }
    work_close(&work);
    if (!stays) {
        new_files_drop(&run->files);
        return result == WORK_MEMORY ? out_of_memory(run) : STATUS_INPUTS;
    }
    const enum status status = command_flush(run->streams);
    return status != STATUS_DONE ? status : result != WORK_OK ? STATUS_INPUTS : accepted;
}

/* --- a run --- */

static enum status make(struct new_run *run) {
    enum status status = new_take_sets(run);
    status = status == STATUS_DONE ? new_take_old(run) : status;
    if (status != STATUS_DONE) {
        return status;
    }
    if (run->asks) {
        struct page page = {.out = run->streams.err};
        say_wrapped(&page, "", 0,
                    "A new job, %s. Enter takes what stands in brackets, - leaves it out, < goes "
                    "back; Ctrl-C ends, and nothing is written.",
                    run->draft.path);
    }
    run->shipped = lacks_rates(&run->draft) ? run->draft.path : NULL;
    status = new_take_list(run);
    status = status == STATUS_DONE ? find_rates(run) : status;
    status = status == STATUS_DONE ? new_answer_all(run, true) : status;
    status = status == STATUS_DONE ? read_rates(run) : status;
    status = status == STATUS_DONE ? ask_shop(run) : status;
    status = status == STATUS_DONE ? new_answer_all(run, false) : status;
    status = status == STATUS_DONE ? find_lacks(run) : status;
    status = status == STATUS_DONE ? compose(run) : status;
    status =
        status == STATUS_DONE ? new_files_write(&run->files, run->request, run->streams) : status;
    return status == STATUS_DONE ? check(run) : status;
}

enum status new_job(const struct request *request, struct streams streams) {
    struct new_run run = {.request = request, .streams = streams};
    pool_init(&run.pool);
    pool_init(&run.rates.pool);
    problems_init(&run.problems);
    run.asks = ask_can(streams.in, streams.err);
    run.draft = (struct draft){
        .pool = &run.pool,
        .path = new_files_named(request->job, "a job file", &run.pool, streams),
        .folder = &run.folder,
        .rates = &run.rates,
        .date = date_today(),
    };
    enum status status =
        run.draft.path == NULL ? STATUS_USE : new_files_check(run.draft.path, streams);
    if (status == STATUS_DONE) {
        status = folder_look(&run.folder, run.draft.path) ? make(&run) : out_of_memory(&run);
        folder_clear(&run.folder);
    }
    rates_clear(&run.rates);
    problems_clear(&run.problems);
    pool_clear(&run.pool);
    return status;
}
