/* SPDX-License-Identifier: MIT */
#include "read/job/job_file.h"

#include "base/array.h"
#include "base/text.h"
#include "model/limits.h"
#include "read/file/ini.h"
#include "read/file/source.h"
#include "read/job/charge.h"
#include "read/job/job_keys.h"
#include "read/job/saved.h"
#include "read/rates/plausible.h"
#include "read/rates/rates_file.h"
#include "read/rates/rates_keys.h"

#include <string.h>

/* Reads the rates that the job names, before the job's own keys: those name what stands there. */
static bool read_rates(struct reader *reader, struct job_texts *texts, struct rates *rates,
                       struct rates_instead instead) {
    const struct ini_section *section = section_find(&texts->job, "job");
    struct rates_texts read;

    for (size_t i = 0; section != NULL && i < section->count; i++) {
        const struct ini_key *key = &section->keys[i];
        const char *path;

        if (!text_same(key->name, "rates") || key->value == NULL) {
            continue;
        }
        path = source_beside(&reader->problems->pool, reader->path, key->value);
        if (path == NULL ||
            !rates_read_from(rates, path, key->value_place, instead, &read, reader->problems)) {
            return false;
        }
        reader->names_known = read.ini.open;
        texts->rates = read.ini;
        texts->woods = read.woods;
        texts->rack = read.rack;
        return true;
    }
    return true;
}

/* Whether the file is one of rates, which a job would name. */
static bool is_rates(const struct ini *ini) {
    return section_find(ini, "shop") != NULL && section_find(ini, "job") == NULL;
}

/* Rates in the place of a job: read where they may stand there, else said in one line, in place of
 * one for each of their sections. */
static bool take_rates(struct rates *rates, const char *path, const struct ini *ini, bool may,
                       struct problems *problems) {
    struct rates_texts read;
    if (may) {
        return rates_read_from(rates, path, (struct place){0}, (struct rates_instead){.ini = ini},
                               &read, problems);
    }
    problem_add(
        problems, SEVERITY_ERROR, "missing-section", section_find(ini, "shop")->place,
        "this is a file of rates and has no section '[job]'; give the job file, which names "
        "the rates");
    return !problems->failed;
}

/* Whether the name is that of a list, which a job would name. */
static bool is_list(struct problems *problems, const char *path) {
    static const char *const endings[] = {".csv", ".xlsx", ".xlsm", ".ods"};
    const char *const file = source_list_file(&problems->pool, path);
    const char *const ending = file == NULL ? NULL : strrchr(file, '.');
    bool list = false;
    for (size_t i = 0; ending != NULL && i < COUNT_OF(endings); i++) {
        list = list || text_same(ending, endings[i]);
    }
    if (!list) {
        return false;
    }
    problem_add(problems, SEVERITY_ERROR, "missing-section",
                (struct place){.file = problems_file(problems, path)},
                "this is a list by its name; give the job file, which names the list as 'doors'");
    return true;
}

/* The job file that stands in texts, or is read into it. */
static bool read_file(struct job_texts *texts, const char *path, struct job_instead instead,
                      struct problems *problems) {
    *texts = (struct job_texts){.path = path};
    if (instead.saved && saved_is(path)) {
        return saved_read(texts, path, problems);
    }
    if (!source_begins(path, '{')) {
        return ini_read(&texts->job, path, (struct place){0}, problems);
    }
    problem_add(problems, SEVERITY_ERROR, "saved-quote",
                (struct place){.file = problems_file(problems, path)},
                "this is JSON, as of a quote that was saved, which 'bridge' alone takes; give the "
                "job file");
    return !problems->failed;
}

/* A hundred percent in days of a year, with as many decimals as a percent may have. */
#define DECIMALS  6
#define ALL_OF_IT (INT64_C(36500) * 1000000)

/* A price that falls by so much a year that nothing is left of it at the quote is no price. */
static void check_fallen(const struct rates *rates, const struct job *job,
                         struct problems *problems) {
    const int32_t quoted = job_quoted(job);
    for (size_t i = 0; job->date.s != NULL && i < rates->numbers.count; i++) {
        const struct rate_number *const number = &rates->numbers.list[i];
        const int64_t days = quoted - number->on.amount;
        if (number->on.set && number->yearly.set && days > 0 &&
            -value_at(&number->yearly, DECIMALS) * days >= ALL_OF_IT) {
            problem_add(problems, SEVERITY_ERROR, "price-fallen", number->value.place,
                        "nothing is left of the price at the quote of %s, as it falls each year; "
                        "ask for it anew and write it with that day",
                        job->date.s);
        }
    }
}

/* What a single key does not tell. */
static void check_sections(struct reader *reader, const struct rates *rates, struct job *job) {
    job_check_agreed(reader, job);
    job_check_planned(reader, rates, job);
    plausible_check_job(reader, rates, job);
    check_fallen(rates, job, reader->problems);
}

/* The list that the job names, without its own columns. */
static bool read_table(const struct job *job, struct table *table, struct problems *problems) {
    if (!door_list_table(table, job->doors_path.s, job->doors_path.place, problems)) {
        return false;
    }
    if (job->own_columns.s != NULL) {
        door_list_leave_out(table, job->own_columns.s, job->own_columns.place, problems);
    }
    return !problems->failed;
}

/* texts: of a whole job where given; else what is read is put there. */
static bool read_job(struct job *job, struct rates *rates, const char *path, bool given,
                     struct job_texts *texts, struct job_instead instead,
                     struct problems *problems) {
    struct reader reader = {.pool = &job->pool,
                            .problems = problems,
                            .path = path,
                            .rates = rates,
                            .numbers = &job->numbers,
                            .names_known = false};

    *job = (struct job){0};
    *rates = (struct rates){0};
    pool_init(&job->pool);
    pool_init(&rates->pool);
    construction_init(&job->construction);
    job->path = pool_text(&job->pool, path, strlen(path));
    if (is_list(problems, path)) {
        return !pool_failed(&job->pool) && !problems->failed;
    }
    if (!given && !read_file(texts, path, instead, problems)) {
        return false;
    }
    if (!texts->job.open) {
        return !pool_failed(&job->pool);
    }
    if (is_rates(&texts->job)) {
        return take_rates(rates, path, &texts->job, instead.visit, problems) &&
               !pool_failed(&job->pool);
    }
    given = given || texts->saved;
    if (!read_rates(&reader, texts, rates,
                    (struct rates_instead){.ini = given ? &texts->rates : NULL,
                                           .woods = given ? &texts->woods : NULL,
                                           .rack = given ? &texts->rack : NULL,
                                           .changes = instead.changes})) {
        return false;
    }
    settings_make(&reader, &texts->job, &job->settings);
    reader.unit = unit_before(&texts->job, "job");
    reader.money_decimals = rates->shop.money_decimals;
    sections_read(&reader, &texts->job, job_sections, job_section_count, job);
    job->unit = reader.unit;
    check_sections(&reader, rates, job);
    if (job->title.s == NULL) {
        job->title.s = "Cabinet doors"; /* every paper has a head */
    }
    if (pool_failed(&job->pool) || problems->failed) {
        return false;
    }
    job->doors_file =
        job->doors_path.s == NULL ? NULL : source_list_file(&job->pool, job->doors_path.s);
    if (instead.visit) {
        return true;
    }
    if (!given && job->doors_path.s != NULL && !read_table(job, &texts->list, problems)) {
        return false;
    }
    if (!door_list_read(&reader, job, &texts->list)) {
        return false;
    }
    charges_check(&reader, job);
    return !problems->failed;
}

bool job_read_keep(struct job *job, struct rates *rates, const char *path,
                   struct job_instead instead, struct job_texts *texts, struct problems *problems) {
    *texts = (struct job_texts){0};
    return read_job(job, rates, path, false, texts, instead, problems);
}

bool job_read(struct job *job, struct rates *rates, const char *path, struct problems *problems) {
    struct job_texts texts;
    return job_read_keep(job, rates, path, (struct job_instead){0}, &texts, problems);
}

bool job_read_changed(struct job *job, struct rates *rates, const char *path,
                      const struct rate_changes *changes, struct problems *problems) {
    struct job_texts texts;
    return job_read_keep(job, rates, path, (struct job_instead){.changes = changes}, &texts,
                         problems);
}

bool job_read_texts(struct job *job, struct rates *rates, const struct job_texts *texts,
                    struct problems *problems) {
    struct job_texts own = *texts;
    return read_job(job, rates, texts->path, true, &own, (struct job_instead){0}, problems);
}

void job_clear(struct job *job) {
    pool_clear(&job->pool);
    *job = (struct job){0};
}
