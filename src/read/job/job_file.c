/* SPDX-License-Identifier: MIT */
#include "read/job/job_file.h"

#include "base/text.h"
#include "read/file/ini.h"
#include "read/file/source.h"
#include "read/job/charge.h"
#include "read/job/job_keys.h"
#include "read/rates/plausible.h"
#include "read/rates/rates_file.h"
#include "read/rates/rates_keys.h"

#include <string.h>

/* Reads the rates that the job names, before the job's own keys: those name what stands there. */
static bool read_rates(struct reader *reader, const struct ini *ini, struct rates *rates,
                       struct rates_instead instead) {
    const struct ini_section *section = section_find(ini, "job");

    for (size_t i = 0; section != NULL && i < section->count; i++) {
        const struct ini_key *key = &section->keys[i];
        const char *path;

        if (!text_same(key->name, "rates") || key->value == NULL) {
            continue;
        }
        path = source_beside(&reader->problems->pool, reader->path, key->value);
        if (path == NULL) {
            return false;
        }
        return rates_read_from(rates, path, key->value_place, instead, reader->problems,
                               &reader->names_known);
    }
    return true;
}

/* Whether the file is one of rates, which a job would name: then one line says so, in place of one
 * for each of its sections. */
static bool is_rates(struct problems *problems, const struct ini *ini) {
    const struct ini_section *const shop = section_find(ini, "shop");
    if (shop == NULL || section_find(ini, "job") != NULL) {
        return false;
    }
    problem_add(
        problems, SEVERITY_ERROR, "missing-section", shop->place,
        "this is a file of rates and has no section '[job]'; give the job file, which names "
        "the rates");
    return true;
}

/* Whether the name is that of a list, which a job would name. */
static bool is_list(struct problems *problems, const char *path) {
    const size_t size = strlen(path);
    if (size < 4 || !text_same(path + size - 4, ".csv")) {
        return false;
    }
    problem_add(problems, SEVERITY_ERROR, "missing-section",
                (struct place){.file = problems_file(problems, path)},
                "this is a list by its name; give the job file, which names the list as 'doors'");
    return true;
}

/* texts: the files as they were read; NULL: they are read. changes: of the rates; NULL: none. */
static bool read_job(struct job *job, struct rates *rates, const char *path,
                     const struct job_texts *texts, const struct rate_changes *changes,
                     struct problems *problems) {
    struct reader reader = {.pool = &job->pool,
                            .problems = problems,
                            .path = path,
                            .rates = rates,
                            .names_known = false};
    struct ini ini;

    *job = (struct job){0};
    *rates = (struct rates){0};
    pool_init(&job->pool);
    pool_init(&rates->pool);
    construction_init(&job->construction);
    job->path = pool_text(&job->pool, path, strlen(path));
    if (is_list(problems, path)) {
        return !pool_failed(&job->pool) && !problems->failed;
    }
    if (texts != NULL) {
        ini = texts->job;
    } else if (!ini_read(&ini, path, (struct place){0}, problems)) {
        return false;
    }
    if (!ini.open) {
        return !pool_failed(&job->pool);
    }
    if (is_rates(problems, &ini)) {
        return !pool_failed(&job->pool) && !problems->failed;
    }
    if (!read_rates(&reader, &ini, rates,
                    (struct rates_instead){texts == NULL ? NULL : &texts->rates, changes})) {
        return false;
    }
    settings_make(&reader, &ini, &job->settings);
    reader.unit = unit_before(&ini, "job");
    reader.money_decimals = rates->shop.money_decimals;
    sections_read(&reader, &ini, job_sections, job_section_count, job);
    job->unit = reader.unit;
    job_check_agreed(&reader, job);
    plausible_check_job(&reader, rates, job);
    if (job->title.s == NULL) {
        job->title.s = "Cabinet doors"; /* every paper has a head */
    }
    if (pool_failed(&job->pool) || problems->failed) {
        return false;
    }
    if (!door_list_read(&reader, job, texts == NULL ? NULL : &texts->list)) {
        return false;
    }
    charges_check(&reader, job);
    return !problems->failed;
}

bool job_read(struct job *job, struct rates *rates, const char *path, struct problems *problems) {
    return read_job(job, rates, path, NULL, NULL, problems);
}

bool job_read_changed(struct job *job, struct rates *rates, const char *path,
                      const struct rate_changes *changes, struct problems *problems) {
    return read_job(job, rates, path, NULL, changes, problems);
}

bool job_read_texts(struct job *job, struct rates *rates, const struct job_texts *texts,
                    struct problems *problems) {
    return read_job(job, rates, texts->path, texts, NULL, problems);
}

void job_clear(struct job *job) {
    pool_clear(&job->pool);
    *job = (struct job){0};
}
