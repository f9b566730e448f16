/* SPDX-License-Identifier: MIT */
/* Rates of a shop's own, made of others: what was given is named in `own`, and the rest stays as
 * shipped. */
#include "base/array.h"
#include "base/text.h"
#include "command/ask.h"
#include "command/new.h"
#include "command/new_run.h"
#include "command/rates_run.h"
#include "command/visit_file.h"
#include "draft/shipped_files.h"
#include "read/file/ini_edit.h"
#include "read/rates/change.h"
#include "read/rates/rates_file.h"

#include <string.h>

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
    const struct folder_rates *const found = folder_rates(&run->places[0], unit);
    run->metric = unit == LENGTH_MM;
    run->from = run->request->from;
    if (run->from == NULL && found != NULL && (!told || found->unit == unit)) {
        run->from = draft_renamed(found->name, run->path, "", &run->pool);
    }
    return STATUS_DONE;
}

static enum status read_source(struct rates_run *run) {
    struct problems *const problems = &run->problems;
    const bool read = run->from == NULL
                          ? source_text(&run->source, "rates", shipped_rates(run->metric), problems)
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
                               shipped_rates(unit_before(&run->ini, "shop") == LENGTH_MM),
                               &run->places[0].problems) &&
                   ini_read_lines(&run->shipped, &shipped, &run->places[0].problems)
               ? STATUS_DONE
               : out_of_memory(run);
}

const char *rates_change_fault(struct rates_run *run, const struct rate_change *change) {
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

bool rates_put(struct rates_run *run, const struct rate_change *change) {
    const bool of_shop = text_same(change->section, "shop");
    const char *const name = of_shop ? change->key : change->section;
    const bool number = !of_shop || rates_walk_number(change->key);
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
            fault = rates_change_fault(run, &change);
        }
        if (fault != NULL || !rates_put(run, &change)) {
            text_print(run->streams.err, "doorcost: --set '%s': %s; nothing was written\n",
                       problem_quote(&run->problems, line),
                       fault == NULL ? "can stand in no line of a file" : fault);
            return STATUS_USE;
        }
    }
    return STATUS_DONE;
}

/* --- the file --- */

/* Names of files are said from the new folder; `own` has what was given. */
static bool finish_lines(struct rates_run *run) {
    static const char *const files[] = {"woods", "terms file", "logo", "stock"};
    for (size_t i = 0; run->from != NULL && i < COUNT_OF(files); i++) {
        const struct ini_key *const key = ini_key_find(section_find(&run->ini, "shop"), files[i]);
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
    /* jobs of rates that are the shop's own stay with them */
    const bool example = text_same(text_before(&run->ini, "shop", "invented"), "yes");
    enum status status = STATUS_DONE;
    for (size_t i = 0; i < run->place_count && status == STATUS_DONE; i++) {
        status = new_adopt(&run->places[i], run->path, example ? run->from : NULL,
                           unit_before(&run->ini, "shop"), &run->pool, run->streams, &job);
    }
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
            "is named in 'own'. < goes back; Ctrl-C ends, and nothing is written.",
            run->path);
        status = rates_walk(run);
    }
    return status == STATUS_DONE ? write_rates(run) : status;
}

/* The folder that holds the one that path is in, where that is `rates`; in pool. NULL: it is not.
 */
static const char *above(const char *path, struct pool *pool) {
    static const char name[] = "rates/";
    const char *const slash = strrchr(path, '/');
    const size_t size = slash == NULL ? 0 : (size_t)(slash - path) + 1;
    const size_t up = size < sizeof name - 1 ? 0 : size - (sizeof name - 1);
    return size == 0 || strncmp(path + up, name, size - up) != 0 || (up > 0 && path[up - 1] != '/')
               ? NULL
               : pool_words(pool, "%.*s.", (int)up, path);
}

/* Looks round the file to be. false: out of memory. */
static bool look_round(struct rates_run *run) {
    const char *const from[] = {run->path, above(run->path, &run->pool)};
    bool held = !pool_failed(&run->pool);
    for (size_t i = 0; i < COUNT_OF(from) && from[i] != NULL && held; i++) {
        held = folder_look(&run->places[run->place_count++], from[i]);
    }
    return held;
}

enum status rates_ask_few(const struct request *request, struct streams streams, bool metric,
                          struct pool *pool, const char **text) {
    struct request bare = *request; /* what --set gives is the job's */
    bare.set.count = 0;
    bare.unit = NULL;
    struct rates_run run = {.request = &bare, .streams = streams, .metric = metric, .few = true};
    pool_init(&run.pool);
    problems_init(&run.problems);
    problems_init(&run.places[0].problems);
    run.place_count = 1; /* with nothing in it */
    enum status status = read_source(&run);
    status = status == STATUS_DONE ? rates_walk(&run) : status;
    const char *const made =
        status == STATUS_DONE && finish_lines(&run) ? ini_text(&run.lines, &run.pool) : NULL;
    *text = made == NULL ? NULL : pool_text(pool, made, strlen(made));
    if (status == STATUS_DONE && *text == NULL) {
        status = out_of_memory(&run);
    }
    folder_clear(&run.places[0]);
    problems_clear(&run.problems);
    pool_clear(&run.pool);
    return status;
}

enum status new_rates(const struct request *request, struct streams streams) {
    struct rates_run run = {.request = request, .streams = streams};
    pool_init(&run.pool);
    problems_init(&run.problems);
    run.path = new_files_named(request->rates, "a file of rates", &run.pool, streams);
    enum status status = run.path == NULL ? STATUS_USE : new_files_check(run.path, streams);
    if (status == STATUS_DONE) {
        status = look_round(&run) ? make(&run) : out_of_memory(&run);
    }
    for (size_t i = 0; i < run.place_count; i++) {
        folder_clear(&run.places[i]);
    }
    problems_clear(&run.problems);
    pool_clear(&run.pool);
    return status;
}
