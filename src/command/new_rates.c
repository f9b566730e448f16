/* SPDX-License-Identifier: MIT */
/* Rates of a shop's own: the numbers of [shop] in which most money is, asked for one by one; what
 * was given is named in `own`, and the rest stays as shipped. */
#include "base/array.h"
#include "base/text.h"
#include "command/ask.h"
#include "command/new.h"
#include "command/new_files.h"
#include "command/new_run.h"
#include "command/visit_file.h"
#include "draft/draft.h"
#include "draft/folder.h"
#include "draft/shipped_files.h"
#include "read/file/ini_edit.h"
#include "read/file/source.h"
#include "read/rates/change.h"
#include "read/rates/rates_file.h"

#include <string.h>

/* What is asked, and what it moves. A number is named in `own`; words are not. Words of the shop
 * that ships are nobody's: the offer is to leave them out, but for the name. */
static const struct {
    const char *key, *moves;
    bool number;
    bool may_lack; /* words that a paper can do without */
} asked[] = {
    {"name", "It stands at the head of the client's papers.", false, false},
    {"address", "Below the name; - for none.", false, true},
    {"contact", "How the client reaches you; - for none.", false, true},
    {"license", "Your license and tax number, as the client should read them; - for none.", false,
     true},
    {"payment", "How the client can pay you; - for none.", false, true},
    {"warranty", "What you stand for, and how long; it may bind you; - for none.", false, true},
    {"currency", "Beside every amount; prices are not converted.", false, false},
    {"labor rate", "Every hour of the job costs this: mostly what moves a price most.", true,
     false},
    {"allowance", "Added to all minutes.", true, false},
    {"hours per day", "Working days, not the price.", true, false},
    {"overhead", "The job's part of rent, power and office, with its hours.", true, false},
    {"contingency", "On all direct cost.", true, false},
    {"profit", "On all cost.", true, false},
    {"remakes", "Doors made a second time, as a cost of all.", true, false},
    {"minimum job", "Small jobs are raised to it.", true, false},
    {"round price to", "The price of each door is rounded up to it.", true, false},
    {"invented",
     "Are prices or minutes in the file still those that ship, of lumber, finish, hardware and "
     "machines too? While you say yes, papers are headed 'example prices', and 'quote --all' lists "
     "which those are. Say no when all are yours.",
     false, false},
};

struct rates_run {
    const struct request *request;
    struct streams streams;
    struct pool pool;
    struct problems problems;
    struct folder folder;
    const char *from; /* the file that it is made of; NULL: the rates that ship */
    bool metric;      /* of these */
    struct source source;
    struct ini ini;
    struct ini_lines lines;
    const char *path; /* of the file to be */
    const char *own;  /* what `own` names */
    bool invented;    /* numbers are as shipped */
    struct ini shipped;
    const char *key, *name; /* that is asked for, and what the question calls it */
    struct new_files files;
};

static enum status out_of_memory(const struct rates_run *run) {
    return command_out_of_memory(run->streams);
}

/* The file that it begins with: --from, or those of the folder; in the unit that is asked for. */
static enum status find_source(struct rates_run *run) {
    const bool told = run->request->unit != NULL;
    enum length_unit unit;
    if (!visit_file_unit(run->request, NULL, NULL, &unit, run->streams.err)) {
        return STATUS_USE;
    }
    const struct folder_rates *const found = folder_rates(&run->folder, unit);
    run->metric = unit == LENGTH_MM;
    run->from = run->request->from;
    if (run->from == NULL && found != NULL && (!told || found->unit == unit)) {
        run->from = source_beside(&run->pool, run->path, found->name);
    }
    return STATUS_DONE;
}

static enum status read_source(struct rates_run *run) {
    struct problems *const problems = &run->problems;
    const bool read = run->from == NULL
                          ? source_text(&run->source, "rates",
                                        run->metric ? shipped_metric : shipped_inch, problems)
                          : source_read(&run->source, run->from, (struct place){0}, problems);
    if (!read || (run->source.open && !ini_read_lines(&run->ini, &run->source, problems))) {
        return out_of_memory(run);
    }
    if (problems_count(problems, SEVERITY_ERROR) > 0) {
        command_problems(run->request, problems, run->streams);
        return STATUS_INPUTS;
    }
    if (section_find(&run->ini, "shop") == NULL) {
        text_print(run->streams.err,
                   "doorcost: '%s' has no section '[shop]'; --rates takes a file of rates\n",
                   problem_quote(problems, run->from));
        return STATUS_INPUTS;
    }
    if (run->request->unit != NULL &&
        (unit_before(&run->ini, "shop") == LENGTH_MM) != run->metric) {
        text_print(run->streams.err,
                   "doorcost: '%s' is not in %s; leave --unit out, or name rates in that unit\n",
                   problem_quote(problems, run->from), run->request->unit);
        return STATUS_USE;
    }
    run->lines = ini_lines_of(&run->source, &run->pool);
    run->own = text_before(&run->ini, "shop", "own");
    run->invented = text_same(text_before(&run->ini, "shop", "invented"), "yes");
    struct source shipped;
    return run->lines.list != NULL &&
                   source_text(&shipped, "shipped",
                               unit_before(&run->ini, "shop") == LENGTH_MM ? shipped_metric
                                                                           : shipped_inch,
                               &run->folder.problems) &&
                   ini_read_lines(&run->shipped, &shipped, &run->folder.problems)
               ? STATUS_DONE
               : out_of_memory(run);
}

/* What the reader says of a change; NULL: nothing. */
static const char *change_fault(struct rates_run *run, const struct rate_change *change) {
    const char *const line = change->value;
    const struct rate_changes changes = {
        .list = change, .count = 1, .lines = &line, .lines_name = "--set"};
    struct rates rates;
    struct rates_texts texts;
    struct problems problems;
    struct ini ini = run->ini; /* a change is put into its sections, of which this is a copy */
    const char *words = NULL;
    problems_init(&problems);
    (void)problems_file(&problems, "rates"); /* the number that places of ini have */
    ini.sections = pool_copy(&problems.pool, ini.sections, ini.count * sizeof *ini.sections);
    for (size_t i = 0; ini.sections != NULL && i < ini.count; i++) {
        ini.sections[i].keys = pool_copy(&problems.pool, run->ini.sections[i].keys,
                                         ini.sections[i].count * sizeof *ini.sections[i].keys);
    }
    const bool held =
        ini.sections != NULL && !pool_failed(&problems.pool) &&
        rates_read_from(&rates, run->from == NULL ? "rates" : run->from, (struct place){0},
                        (struct rates_instead){.ini = &ini, .changes = &changes}, &texts,
                        &problems);
    for (size_t i = 0; held && i < problems.count && words == NULL; i++) {
        const struct problem *const p = &problems.list[i];
        const char *const name = problems_file_name(&problems, p->place.file);
        words = p->severity == SEVERITY_ERROR && strcmp(name, changes.lines_name) == 0
                    ? pool_words(&run->pool, "%s", p->text)
                    : NULL;
    }
    if (held) {
        rates_clear(&rates);
    }
    problems_clear(&problems);
    return words;
}

/* Makes the change, and names what is the shop's own by it. */
static bool put(struct rates_run *run, const struct rate_change *change) {
    const bool of_shop = text_same(change->section, "shop");
    const char *const name = of_shop ? change->key : change->section;
    bool number = !of_shop;
    for (size_t i = 0; i < COUNT_OF(asked); i++) {
        number = number || (of_shop && asked[i].number && text_same(asked[i].key, change->key));
    }
    if (number && !text_lists(run->own, name)) {
        run->own =
            pool_words(&run->pool, "%s%s%s", run->own, run->own[0] == '\0' ? "" : ", ", name);
    }
    if (of_shop && text_same(change->key, "invented")) {
        run->invented = text_same(text_or_empty(change->value), "yes");
    }
    const char *const value = change->value == NULL ? NULL : ini_value(change->value, &run->pool);
    const struct ini_change edit = {.section = change->section, .key = change->key, .value = value};
    return (value != NULL || change->value == NULL) && ini_edit(&run->lines, &edit, &run->pool);
}

/* --- what is set and asked for --- */

static enum status take_sets(struct rates_run *run) {
    const struct option_texts *const set = &run->request->set;
    for (size_t i = 0; i < set->count; i++) {
        struct rate_change change;
        const char *const line = set->texts[i];
        const char *fault = change_split(&change, line, "shop", &run->pool);
        if (pool_failed(&run->pool)) {
            return out_of_memory(run);
        }
        if (fault == NULL) {
            fault = change_fault(run, &change);
        }
        if (fault != NULL || !put(run, &change)) {
            text_print(run->streams.err, "doorcost: --set '%s': %s; nothing was written\n",
                       problem_quote(&run->problems, line),
                       fault == NULL ? "can stand in no line of a file" : fault);
            return STATUS_USE;
        }
    }
    return STATUS_DONE;
}

static const char *answer_fault(void *context, const char *answer) {
    struct rates_run *const run = context;
    const struct rate_change change = {.section = "shop", .key = run->key, .value = answer};
    const char *const words = ini_value(answer, &run->pool) == NULL
                                  ? "this can stand in no line of a file"
                                  : change_fault(run, &change);
    const size_t size = strlen(run->key);
    return words != NULL && strncmp(words, run->key, size) == 0 && words[size] == ' '
               ? pool_words(&run->pool, "%s%s", run->name, words + size)
               : words;
}

static bool is_set(struct rates_run *run, const char *key) {
    bool set = false;
    for (size_t i = 0; i < run->request->set.count && !set; i++) {
        struct rate_change change;
        set = change_split(&change, run->request->set.texts[i], "shop", &run->pool) == NULL &&
              !pool_failed(&run->pool) && text_same(change.section, "shop") &&
              text_same(change.key, key);
    }
    return set;
}

/* The key of [shop] as the file has it; NULL: it has none. */
static const struct ini_key *shop_key(const struct rates_run *run, const char *name) {
    const struct ini_section *const shop = section_find(&run->ini, "shop");
    for (size_t i = 0; i < shop->count; i++) {
        if (text_same(shop->keys[i].name, name)) {
            return &shop->keys[i];
        }
    }
    return NULL;
}

/* What is offered: what stands there; but words of the shop that ships are nobody's. key: NULL
 * where the file has none. */
static const char *offer_of(const struct rates_run *run, size_t question,
                            const struct ini_key *key) {
    const char *const value = key == NULL ? NULL : key->value;
    const char *const ships = text_before(&run->shipped, "shop", asked[question].key);
    return value != NULL && asked[question].may_lack && text_same(ships, value) ? NULL : value;
}

static enum status ask_one(struct rates_run *run, size_t question, const struct ini_key *key) {
    const char *const name = asked[question].key;
    const char *answer = NULL;
    /* what a number rests on is told beside it; of words that ship it is that they are invented */
    const char *const from =
        key == NULL || key->comment == NULL || !asked[question].number ? NULL : key->comment;
    run->key = name;
    run->name = text_same(name, "invented") ? "still as shipped" : name;
    const struct ask one = {
        .why = from == NULL ? asked[question].moves
                            : pool_words(&run->pool, "%s (%s)", asked[question].moves, from),
        .name = run->name,
        .offer = offer_of(run, question, key),
        .needed = !asked[question].may_lack,
    };
    const enum ask_result result =
        ask(&one, run->streams.in, run->streams.err, answer_fault, run, &run->pool, &answer);
    if (result != ASK_ANSWERED) {
        return result == ASK_ENDED ? STATUS_INPUTS : out_of_memory(run);
    }
    const struct rate_change change = {.section = "shop", .key = name, .value = answer};
    const bool same = key == NULL ? answer == NULL : answer == key->value;
    return same || put(run, &change) ? STATUS_DONE : out_of_memory(run);
}

/* Asks for all that is not set; Enter takes what is offered. */
static enum status ask_all(struct rates_run *run) {
    enum status status = STATUS_DONE;
    for (size_t i = 0; i < COUNT_OF(asked) && status == STATUS_DONE; i++) {
        const struct ini_key *const key = shop_key(run, asked[i].key);
        const bool there = key != NULL && key->value != NULL;
        if ((there || asked[i].may_lack) && !is_set(run, asked[i].key)) {
            status = ask_one(run, i, key);
        }
    }
    return status;
}

/* --- the file --- */

/* Names of files are said from the new folder; `own` has what was given. */
static bool finish_lines(struct rates_run *run) {
    static const char *const files[] = {"woods", "terms file", "logo", "stock"};
    for (size_t i = 0; run->from != NULL && i < COUNT_OF(files); i++) {
        const struct ini_key *const key = shop_key(run, files[i]);
        const char *const name = key == NULL || key->value == NULL
                                     ? NULL
                                     : draft_renamed(key->value, run->from, run->path, &run->pool);
        const struct ini_change edit = {.section = "shop",
                                        .key = files[i],
                                        .value = name == NULL ? NULL : ini_value(name, &run->pool)};
        if (edit.value != NULL && strcmp(name, key->value) != 0 &&
            !ini_edit(&run->lines, &edit, &run->pool)) {
            return false;
        }
    }
    const struct ini_change own = {.section = "shop",
                                   .key = "own",
                                   .value = run->invented ? run->own : NULL,
                                   .comment = "what is yours by now; the rest is as shipped"};
    return run->own[0] == '\0' || ini_edit(&run->lines, &own, &run->pool);
}

static enum status tell_next(struct rates_run *run) {
    const char *job = NULL;
    const enum status status = new_adopt(&run->folder, run->path, unit_before(&run->ini, "shop"),
                                         &run->pool, run->streams, &job);
    if (status != STATUS_DONE) {
        return status;
    }
    text_print(run->streams.out, "\nNext: doorcost %s %s\n", job == NULL ? "new" : "quote",
               job == NULL ? "JOB.ini" : new_files_typed(job, &run->pool));
    return command_flush(run->streams);
}

static enum status write_rates(struct rates_run *run) {
    const char *const path = run->path;
    struct problems problems;
    struct rates rates;
    const char *const text = finish_lines(run) ? ini_text(&run->lines, &run->pool) : NULL;
    if (text == NULL) {
        return out_of_memory(run);
    }
    if (run->from == NULL) {
        new_files_add_shipped(&run->files, path, text, &run->pool);
    } else {
        new_files_add(&run->files, path, text);
    }
    if (pool_failed(&run->pool)) {
        return out_of_memory(run);
    }
    const enum status status = new_files_write(&run->files, run->request, run->streams);
    if (status != STATUS_DONE) {
        return status;
    }
    problems_init(&problems);
    const bool held = rates_read(&rates, path, &problems);
    const bool good = held && problems_count(&problems, SEVERITY_ERROR) == 0;
    command_problems(run->request, &problems, run->streams);
    rates_clear(&rates);
    problems_clear(&problems);
    if (!good) {
        new_files_drop(&run->files);
        return held ? STATUS_INPUTS : out_of_memory(run);
    }
    new_files_keep(&run->files, run->streams);
    text_print(run->streams.out, "made of %s\n",
               run->from == NULL ? "the rates that ship" : run->from);
    return tell_next(run);
}

static enum status make(struct rates_run *run) {
    enum status status = find_source(run);
    status = status == STATUS_DONE ? read_source(run) : status;
    status = status == STATUS_DONE ? take_sets(run) : status;
    if (status == STATUS_DONE && ask_can(run->streams.in, run->streams.err)) {
        struct page page = {.out = run->streams.err};
        say_wrapped(
            &page, "", 0,
            "New rates, %s. Enter keeps what stands in brackets; what you type is yours, and "
            "is named in 'own'. Ctrl-C ends, and nothing is written.",
            run->path);
        status = ask_all(run);
    }
    return status == STATUS_DONE ? write_rates(run) : status;
}

enum status new_rates(const struct request *request, struct streams streams) {
    struct rates_run run = {.request = request, .streams = streams};
    pool_init(&run.pool);
    problems_init(&run.problems);
    run.path = new_files_named(request->rates, "a file of rates", &run.pool, streams);
    enum status status = run.path == NULL ? STATUS_USE : new_files_check(run.path, streams);
    if (status == STATUS_DONE) {
        status = folder_look(&run.folder, run.path) ? make(&run) : out_of_memory(&run);
        folder_clear(&run.folder);
    }
    problems_clear(&run.problems);
    pool_clear(&run.pool);
    return status;
}
