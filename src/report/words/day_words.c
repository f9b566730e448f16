/* SPDX-License-Identifier: MIT */
#include "report/words/day_words.h"

#include "base/int128.h"

#include <stdio.h>

struct shown show_day(int32_t day) {
    static const char *const weekdays[] = {"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"};
    struct shown shown;
    char date[16];
    (void)snprintf(shown.text, sizeof shown.text, "%s %s", weekdays[date_weekday(day)],
                   date_text(date_of_number(day), date, sizeof date));
    return shown;
}

struct shown show_hours(int64_t minutes) {
    return show_number((int64_t)int128_round((int128)minutes * 10, 60), 1);
}

struct shown show_working_days(int64_t days) {
    return show_count((size_t)days, "working day");
}

const char *day_cause_words(const struct rates *rates, enum day_cause cause, int32_t machine) {
    switch (cause) {
    case CAUSE_WORK:
        return "the order of the work";
    case CAUSE_DRYING:
        return "drying and clamp time, in the order of the work";
    case CAUSE_PEOPLE:
        return "people";
    case CAUSE_RACKS:
        return "places on the racks";
    case CAUSE_CLAMPS:
        return "clamp sets";
    case CAUSE_MACHINE:
        break;
    }
    return rates->machines[machine].name.s;
}

const char *day_cause_reason(enum day_cause cause) {
    switch (cause) {
    case CAUSE_WORK:
        return "one operation can't begin before the other has ended";
    case CAUSE_DRYING:
        return "what dries or sets has to be waited for";
    case CAUSE_PEOPLE:
        return "there are only so many hands";
    case CAUSE_RACKS:
        return "no more doors can dry at once";
    case CAUSE_CLAMPS:
        return "no more can be in clamps at once";
    case CAUSE_MACHINE:
        break;
    }
    return "there is one of it, and it is never idle for long";
}

const char *day_more_words(const struct rates *rates, const struct day_more *more,
                           struct pool *pool) {
    switch (more->cause) {
    case CAUSE_PEOPLE:
        return "a person";
    case CAUSE_RACKS:
        return "a rack";
    case CAUSE_CLAMPS:
        return "a clamp set";
    case CAUSE_DRYING:
        return "nothing more, but with no drying and no clamp time";
    case CAUSE_WORK:
    case CAUSE_MACHINE:
        break;
    }
    return pool_words(pool, "a second %s", day_cause_words(rates, more->cause, more->machine));
}

const char *day_job_name(const struct day_plan *plan, size_t job) {
    const struct job *const j = plan->jobs[job].estimate->job;
    return j->number.s != NULL && j->number.s[0] != '\0' ? j->number.s : j->title.s;
}

const char *day_line_name(const struct day_plan *plan, const struct day_line *line) {
    return plan->jobs[line->job].estimate->rates->operations[line->operation].name.s;
}

const char *day_row_name(const struct rates *rates, const struct day_row *row, struct pool *pool) {
    switch (row->kind) {
    case ROW_PERSON:
        return pool_words(pool, "person %d", (int)row->of + 1);
    case ROW_RACKS:
        return "racks";
    case ROW_FINISHER:
        return "at the finisher";
    case ROW_MACHINE:
    case ROW_CLAMPS:
        break;
    }
    return rates->machines[row->of].name.s;
}

const char *day_entry_words(const struct rates *rates, const struct day_rows *rows,
                            const struct day_entry *entry, struct pool *pool) {
    static const char *const waits[] = {
        [ROW_CLAMPS] = ", in clamps", [ROW_RACKS] = ", dries", [ROW_FINISHER] = ", away"};
    const char *const name = rates->operations[entry->operation].name.s;
    const char *const wait = entry->waits ? waits[rows->rows[entry->row].kind] : "";
    return entry->what[0] == '\0' && wait[0] == '\0'
               ? name
               : pool_words(pool, "%s%s%s%s", name, entry->what[0] == '\0' ? "" : ": ", entry->what,
                            wait);
}

const char *day_idle_words(const struct rates *rates, const struct day_rows *rows, size_t day,
                           struct pool *pool) {
    const char *words = "";
    for (size_t i = 0; i < rows->entry_count; i++) {
        const struct day_entry *const entry = &rows->entries[i];
        if (entry->day == day && rows->rows[entry->row].kind == ROW_PERSON) {
            return "";
        }
        if (entry->day == day && entry->waits) {
            words = pool_words(pool, "%s%s%s", words, words[0] == '\0' ? "" : "; ",
                               day_entry_words(rates, rows, entry, pool));
        }
    }
    return words[0] == '\0' ? "nobody is at work: all waits for another day"
                            : pool_words(pool, "nobody is at work; waited for: %s", words);
}

/* How much of something there is, or that it is never scarce. */
static const char *supply(struct pool *pool, int32_t count, const char *one, const char *many) {
    return count >= NEVER_SCARCE ? pool_words(pool, "%s never scarce", many)
                                 : pool_words(pool, "%d %s", (int)count, count == 1 ? one : many);
}

size_t day_notes(const struct day_plan *plan, const char *notes[DAY_NOTES], struct pool *pool) {
    const struct rates *const rates = plan->jobs[0].estimate->rates;
    const struct day_rules *const days = &rates->days;
    size_t n = 0;
    notes[n++] = pool_words(
        pool, "Counted on: %s of %s hours a day, %s, %s; one of each machine.",
        supply(pool, plan->people, "person", "people"), show_hours(plan->day_minutes).text,
        supply(pool, plan->clamps, "clamp set", "clamp sets"),
        supply(pool, plan->places, "place on the racks", "places on the racks"));
    notes[n++] = "Minutes are those of the estimate, with the allowance, rounded up; nobody is "
                 "ill, all that is bought is there. A quoted day needs room beside it.";
    if (plan->few_hands) {
        notes[n++] = "Some operations want more hands than there are people: they take those that "
                     "there are longer, and some can't be done without help.";
    }
    for (size_t j = 0; j < plan->job_count && n < DAY_NOTES - 2; j++) {
        const struct day_job *const job = &plan->jobs[j];
        if (job->left[0] != '\0') {
            notes[n++] = pool_words(pool,
                                    "Not planned, as done before the job is taken: %s (%s "
                                    "hours).",
                                    job->left, show_hours(job->unplanned).text);
            break;
        }
    }
    for (size_t j = 0; j < plan->job_count; j++) {
        const struct estimate *const e = plan->jobs[j].estimate;
        for (size_t b = 0; b < e->finish.batch_count; b++) {
            if (e->rates->finishes[e->finish.batches[b].finish].put_out.set &&
                !days->finisher.set) {
                notes[n++] = "The rates do not say how long a finisher keeps doors (`finisher` of "
                             "[days]): no days are counted for it.";
                return n;
            }
        }
    }
    return n;
}
