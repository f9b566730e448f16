/* SPDX-License-Identifier: MIT */
/* `range`: what rates change when they are moved through their ranges, or as set. */
#include "trial/range.h"

#include "base/text.h"
#include "command/command.h"
#include "command/files.h"
#include "command/range_chance.h"
#include "command/work.h"
#include "read/rates/change.h"
#include "report/json/json.h"
#include "report/shop/range_book.h"
#include "report/text/print.h"

#include <string.h>

#define SET_NAME "--set"

/* What the command works with. */
struct ranging {
    const struct request *request;
    const struct work *work;
    struct trial_job job;
    struct ranges ranges;
    struct chance_request drawing;
    struct chance chance;
    bool drawn;
    struct output file; /* the workbook, where -o names one */
    struct pool pool;
    struct streams streams;
};

static enum status tell(struct ranging *g) {
    if (g->request->json) {
        struct json_paper paper = command_paper(g->request, g->work);
        paper.ranges = &g->ranges;
        paper.chance = g->drawn ? &g->chance : NULL;
        return command_send(&paper, g->streams);
    }
    struct page page = {.out = g->streams.out};
    range_print(&page, &g->work->estimates[0], &g->ranges);
    if (g->drawn) {
        chance_print(&page, &g->work->estimates[0], &g->chance);
    }
    return page.failed ? command_out_of_memory(g->streams) : command_flush(g->streams);
}

/* --- by a part --- */

static enum status move_by(struct ranging *g) {
    struct range_percent percent = {.text = g->request->by};
    if (!option_percent(percent.text, &percent.amount, &percent.decimals)) {
        text_print(g->streams.err,
                   "doorcost: --by takes a percentage above 0 and up to 100, as in --by 10%%\n");
        return STATUS_USE;
    }
    return ranges_by(&g->ranges, &g->work->estimates[0], &g->job, percent, &g->pool)
               ? tell(g)
               : command_out_of_memory(g->streams);
}

/* --- as set --- */

static enum status parse(struct ranging *g, struct rate_change *changes) {
    const struct option_texts *const set = &g->request->set;
    for (size_t i = 0; i < set->count; i++) {
        const char *const fault = change_parse(&changes[i], set->texts[i], &g->pool);
        if (fault != NULL) {
            text_print(g->streams.err,
                       "doorcost: " SET_NAME " '%s' %s; expected one like \"lumber poplar.price = "
                       "4.60 per bf\"\n",
                       set->texts[i], fault);
            return STATUS_USE;
        }
        for (size_t k = 0; k < i && !pool_failed(&g->pool); k++) {
            if (text_same(changes[k].section, changes[i].section) &&
                text_same(changes[k].key, changes[i].key)) {
                text_print(g->streams.err,
                           "doorcost: " SET_NAME " gives '%s' of [%s] twice; give it once\n",
                           changes[i].key, changes[i].section);
                return STATUS_USE;
            }
        }
    }
    return pool_failed(&g->pool) ? command_out_of_memory(g->streams) : STATUS_DONE;
}

/* What the changes bring, all at once: errors wherever they stand, and of warnings those that are
 * about a change, as the others were said before. */
static enum status say_problems(const struct ranging *g, const struct problems *found) {
    struct problems said;
    problems_init(&said);
    for (size_t i = 0; i < found->count; i++) {
        const struct problem *const p = &found->list[i];
        const char *const name = problems_file_name(found, p->place.file);
        struct place place = p->place;
        if (p->severity == SEVERITY_ERROR || strcmp(name, SET_NAME) == 0) {
            place.file = problems_file(&said, name);
            if (strcmp(name, SET_NAME) == 0) {
                problems_lines(&said, place.file, g->request->set.texts, g->request->set.count);
            }
            problem_add(&said, p->severity, p->id, place, "%s", p->text);
        }
    }
    problems_sort(&said);
    command_problems(g->request, &said, g->streams);
    const bool wrong = problems_count(&said, SEVERITY_ERROR) > 0;
    const bool failed = said.failed;
    problems_clear(&said);
    return failed ? command_out_of_memory(g->streams) : (wrong ? STATUS_USE : STATUS_DONE);
}

static enum status move_set(struct ranging *g) {
    const struct option_texts *const set = &g->request->set;
    struct rate_change *const list = pool_take(&g->pool, set->count, sizeof *list);
    const struct rate_changes changes = {list, set->count, set->texts, SET_NAME};
    struct problems found;
    struct outcome outcome;
    enum status status = list == NULL ? command_out_of_memory(g->streams) : parse(g, list);
    if (status != STATUS_DONE) {
        return status;
    }
    problems_init(&found);
    if (trial_try(&g->job, &changes, &outcome, &found) == TRIAL_MEMORY) {
        status = command_out_of_memory(g->streams);
    } else {
        status = say_problems(g, &found);
    }
    problems_clear(&found);
    if (status == STATUS_DONE) {
        status = ranges_set(&g->ranges, &g->work->estimates[0], &g->job, &changes, &g->pool)
                     ? tell(g)
                     : command_out_of_memory(g->streams);
    }
    return status;
}

/* --- through their ranges --- */

/* Draws are told where there is a range. */
static enum status move_ranges(struct ranging *g) {
    const struct estimate *const base = &g->work->estimates[0];
    if (!ranges_make(&g->ranges, base, &g->job, &g->pool)) {
        return command_out_of_memory(g->streams);
    }
    g->drawn = g->ranges.count > 0;
    enum status status =
        chance_open(&g->chance, base, &g->ranges, g->drawing, &g->pool, g->streams);
    if (status == STATUS_DONE) {
        status = tell(g);
    }
    if (status != STATUS_DONE || g->request->output == NULL) {
        return status;
    }
    status = files_begin(&g->file, 1, g->request, g->streams);
    if (status != STATUS_DONE) {
        return status;
    }
    return range_book_write(base, &g->ranges, &g->chance, g->file.name)
               ? files_finish(&g->file, 1, g->request, g->streams)
               : files_failed(&g->file, 1, 0, g->streams);
}

/* --- all --- */

enum status command_range(const struct request *request, struct work *work,
                          struct streams streams) {
    struct ranging g = {
        .request = request,
        .work = work,
        .job = {request->job, work->estimates[0].option, work->request.plans},
        .streams = streams,
    };
    enum status status;
    pool_init(&g.pool);
    if (request->set.count > 0 && request->by != NULL) {
        text_print(streams.err, "doorcost: " SET_NAME " and --by are two questions; ask one\n");
        status = STATUS_USE;
    } else if (request->output != NULL && (request->set.count > 0 || request->by != NULL)) {
        text_print(streams.err, "doorcost: -o is for the ranges of the rates; ask without " SET_NAME
                                " and --by\n");
        status = STATUS_USE;
    } else if (!chance_options(request, request->set.count == 0 && request->by == NULL, &g.drawing,
                               streams.err)) {
        status = STATUS_USE;
    } else if (request->set.count > 0) {
        status = move_set(&g);
    } else if (request->by != NULL) {
        status = move_by(&g);
    } else {
        g.file = (struct output){.path = files_target(request, work, &g.pool, ".xlsx"),
                                 .kind = OUTPUT_WORKBOOK};
        status = files_check(&g.file, request->output == NULL ? 0 : 1, request, work, streams);
        if (status == STATUS_DONE) {
            status = move_ranges(&g);
        }
    }
    pool_clear(&g.pool);
    return status;
}
