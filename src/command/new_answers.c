/* SPDX-License-Identifier: MIT */
/* The answers of a new job: what is set, asked for and offered. */
#include "command/new_run.h"

#include "base/text.h"
#include "command/ask.h"
#include "read/job/job_keys.h"
#include "read/job/job_value.h"
#include "read/rates/change.h"

#include <string.h>
#include <unistd.h>

static enum status out_of_memory(const struct new_run *run) {
    return command_out_of_memory(run->streams);
}

enum status new_say_problems(struct new_run *run) {
    problems_sort(&run->problems);
    command_problems(run->request, &run->problems, run->streams);
    return STATUS_INPUTS;
}

/* --- what is given --- */

/* `measure` alone is that of [make], as no other section has it: none but [job] is left out there.
 */
static void find_section(struct rate_change *change, const char *text) {
    static const char *const others[] = {"make", "sale"};
    const char *const sign = strchr(text, '=');
    const bool told = sign == NULL || memchr(text, '.', (size_t)(sign - text)) != NULL;
    for (size_t i = 0; i < 2 && !told && job_key("job", change->key) == NULL; i++) {
        if (job_key(others[i], change->key) != NULL) {
            change->section = others[i];
            return;
        }
    }
}

/* What --set says: answers to questions, and more. */
enum status new_take_sets(struct new_run *run) {
    const struct option_texts *const set = &run->request->set;
    struct rate_change *const more = pool_take(&run->pool, set->count, sizeof *more);
    size_t count;
    (void)questions(&count);
    run->draft.more = more;
    for (size_t i = 0; i < set->count && more != NULL; i++) {
        struct rate_change change;
        const char *fault = change_split(&change, set->texts[i], "job", &run->pool);
        if (fault != NULL) {
            text_print(run->streams.err,
                       "doorcost: --set '%s' %s; write it as in "
                       "--set \"number = 0042\" or --set \"make.style = slab\"\n",
                       problem_quote(&run->problems, set->texts[i]), fault);
            return STATUS_USE;
        }
        find_section(&change, set->texts[i]);
        const size_t at = question_find(text_or_empty(change.section), text_or_empty(change.key));
        if (at == count) {
            more[run->draft.more_count++] = change;
            continue;
        }
        run->draft.values[at] = change.value;
        run->set[at] = true;
    }
    return pool_failed(&run->pool) ? out_of_memory(run) : STATUS_DONE;
}

/* The old job: that of --from, else the last of the folder. */
enum status new_take_old(struct new_run *run) {
    const char *const from = run->request->from;
    const struct folder_job *const last = folder_last(&run->folder);
    struct draft *const draft = &run->draft;
    if (from == NULL) {
        draft->old = last == NULL ? NULL : &last->ini;
        draft->old_path = last == NULL ? NULL : last->path;
        return STATUS_DONE;
    }
    if (!source_read(&run->old_source, from, (struct place){0}, &run->problems) ||
        (run->old_source.open && !ini_read_lines(&run->old, &run->old_source, &run->problems))) {
        return out_of_memory(run);
    }
    if (problems_count(&run->problems, SEVERITY_ERROR) > 0) {
        return new_say_problems(run);
    }
    if (section_find(&run->old, "job") == NULL) {
        text_print(run->streams.err,
                   "doorcost: '%s' has no section '[job]'; --from takes a job file\n",
                   problem_quote(&run->problems, from));
        return STATUS_INPUTS;
    }
    draft->old = &run->old;
    draft->old_path = from;
    draft->from = true;
    return STATUS_DONE;
}

/* --- answers --- */

/* What is asked. */
struct asked {
    struct new_run *run;
    const struct question *question;
};

/* Whether the file that an answer names is there. */
static bool is_there(struct new_run *run, const char *name) {
    const char *const path = source_beside(&run->pool, run->draft.path, name);
    const char *const file = path == NULL ? NULL : source_list_file(&run->pool, path);
    return file != NULL && access(file, F_OK) == 0;
}

/* What is wrong with names of own columns, by the headings of the list; NULL: nothing. */
static const char *columns_fault(struct new_run *run, const char *names) {
    const char *const list = draft_value(&run->draft, "job", "doors");
    const char *const path = list == NULL ? NULL : source_beside(&run->pool, run->draft.path, list);
    const char *words = NULL;
    struct problems problems;
    struct table table;
    problems_init(&problems);
    if (path != NULL && door_list_table(&table, path, (struct place){0}, &problems)) {
        const size_t of_list = problems.count;
        door_list_leave_out(&table, names, (struct place){0}, &problems);
        words = problems.count == of_list
                    ? NULL
                    : pool_words(&run->pool, "%s", problems.list[of_list].text);
    }
    problems_clear(&problems);
    return words;
}

static const char *find_fault(void *context, const char *answer) {
    const struct asked *const asked = context;
    struct new_run *const run = asked->run;
    const char *words = NULL;
    struct problems problems;
    if (ini_value(answer, &run->pool) == NULL) {
        return "this can stand in no line of a file: it is too long, or has quotes of both kinds, "
               "or a character that is not shown";
    }
    problems_init(&problems);
    if (!draft_takes(&run->draft, asked->question, answer, &problems)) {
        for (size_t i = 0; i < problems.count && words == NULL; i++) {
            words = problems.list[i].severity != SEVERITY_ERROR
                        ? NULL
                        : pool_words(&run->pool, "%s", problems.list[i].text);
        }
    }
    problems_clear(&problems);
    if (words == NULL && text_same(asked->question->key, "own columns")) {
        return columns_fault(run, answer);
    }
    const bool file =
        text_same(asked->question->key, "rates") || text_same(asked->question->key, "doors");
    if (words == NULL && file && !is_there(run, answer)) {
        return pool_words(&run->pool, "there is no file '%s' in the folder of the job", answer);
    }
    return words;
}

/* Where a list to fill in goes that has the name of the job: `kitchen-list.xlsx`, or with a number
 * where that stands there. NULL: many do, or memory is out. */
static const char *list_beside(struct new_run *run) {
    const char *const path = run->draft.path;
    const char *const slash = strrchr(path, '/');
    const char *more = "-list";
    for (int n = 2; n < 100; n++) {
        const char *const name =
            files_beside(&run->pool, slash == NULL ? path : slash + 1, more, ".xlsx");
        if (name == NULL || !is_there(run, name)) {
            return name;
        }
        more = pool_words(&run->pool, "-list-%d", n);
    }
    return NULL;
}

enum status new_take_list(struct new_run *run) {
    const char *const list = run->request->list;
    const char *const slash = list == NULL ? NULL : strrchr(list, '/');
    const char *const name = slash == NULL ? list : slash + 1;
    size_t count;
    const struct question *const rows = questions(&count);
    if (list == NULL) {
        return STATUS_DONE;
    }
    const char *const path = source_beside(&run->pool, run->draft.path, name);
    if (path == NULL) {
        return out_of_memory(run);
    }
    if (strcmp(path, list) != 0) {
        text_print(run->streams.err,
                   "doorcost: '%s' is not in the folder of the job; write the list there, '%s'\n",
                   problem_quote(&run->problems, list), problem_quote(&run->problems, path));
        return STATUS_USE;
    }
    for (size_t i = 0; i < count; i++) {
        if (text_same(rows[i].key, "doors")) {
            run->draft.values[i] = name;
            run->set[i] = true;
        }
    }
    run->list = list;
    return new_files_check_list(list, run->streams);
}

/* Asks, or takes what is offered. *back: the question before is asked for. */
static enum status answer(struct new_run *run, size_t at, const struct question *question,
                          bool *back) {
    struct draft *const draft = &run->draft;
    const struct key *const key = job_key(question->section, question->key);
    const bool wanted = question->wanted == NULL || question->wanted(draft);
    const char *const usual = draft_offer(draft, question);
    const char *offer = run->typed[at] == NULL ? usual : run->typed[at];
    const bool asks =
        run->asks && wanted && question->why != NULL && (!draft->from || question->own);
    *back = false;
    run->asked[at] = asks && !run->set[at];
    if (run->set[at]) {
        return STATUS_DONE;
    }
    draft->values[at] = wanted || key->needed ? offer : NULL;
    if (!run->asks && text_same(question->key, "own columns")) {
        draft->values[at] = NULL; /* nothing of a list goes unread that nobody was asked about */
    }
    if (!asks) {
        return STATUS_DONE;
    }
    const char *why = question->why;
    const char *list = NULL;
    if (offer == NULL && text_same(question->key, "doors")) {
        run->list = NULL;
        offer = list = list_beside(run);
        why = list == NULL ? why
                           : "No list with the columns id, width and height is here that no other "
                             "job has: name yours, or Enter writes one to fill in.";
    }
    struct asked asked = {run, question};
    const struct ask ask_for = {
        .why = why,
        .choices = draft_choices(draft, question),
        .name = question->key,
        .offer = offer,
        .like = key->example,
        .needed = key->needed,
        .back = true,
    };
    const enum ask_result result = ask(&ask_for, run->streams.in, run->streams.err, find_fault,
                                       &asked, &run->pool, &draft->values[at]);
    *back = result == ASK_BACK;
    if (*back) {
        return STATUS_DONE;
    }
    run->typed[at] = draft->values[at] == usual ? NULL : draft->values[at];
    if (list != NULL && draft->values[at] == list) {
        run->list = source_beside(&run->pool, draft->path, list);
        return run->list == NULL ? out_of_memory(run)
                                 : new_files_check_list(run->list, run->streams);
    }
    return result == ASK_ANSWERED ? STATUS_DONE
           : result == ASK_ENDED  ? STATUS_INPUTS
                                  : out_of_memory(run);
}

static bool is_about_rates(const struct question *question) {
    return text_same(question->key, "unit") || text_same(question->key, "rates");
}

/* The last of these questions before `at` that was asked; `at` where there is none. */
static size_t asked_before(const struct new_run *run, const struct question *rows, size_t at) {
    for (size_t i = at; i > 0; i--) {
        if (run->asked[i - 1] && is_about_rates(&rows[i - 1]) == is_about_rates(&rows[at])) {
            return i - 1;
        }
    }
    return at;
}

enum status new_answer_all(struct new_run *run, bool of_rates) {
    size_t count;
    const struct question *const rows = questions(&count);
    enum status status = STATUS_DONE;
    for (size_t i = 0; i < count && status == STATUS_DONE;) {
        bool back = false;
        status =
            is_about_rates(&rows[i]) == of_rates ? answer(run, i, &rows[i], &back) : STATUS_DONE;
        i = back ? asked_before(run, rows, i) : i + 1;
    }
    return status;
}
