/* SPDX-License-Identifier: MIT */
#include "trial/range.h"

#include "base/int128.h"
#include "base/text.h"
#include "price/setting_used.h"

#include <string.h>

struct maker {
    struct ranges *ranges;
    const struct estimate *base;
    const struct trial_job *job;
    struct pool *pool;
};

/* --- one estimate --- */

/* What is wrong with the job so. */
static const char *why_of(const struct problems *problems, struct pool *pool) {
    for (size_t i = 0; i < problems->count; i++) {
        if (problems->list[i].severity == SEVERITY_ERROR) {
            return pool_words(pool, "%s", problems->list[i].text);
        }
    }
    return "the job cannot be estimated so";
}

/* Estimates the job with the changes; false: out of memory. */
static bool take_end(const struct maker *m, const struct rate_changes *changes, const char *text,
                     struct range_end *end) {
    struct problems problems;
    struct outcome outcome;
    problems_init(&problems);
    const enum trial_result result = trial_try(m->job, changes, &outcome, &problems);
    *end = (struct range_end){.text = text, .has = result == TRIAL_DONE};
    if (end->has) {
        end->more = outcome_minus(outcome, m->ranges->job);
    } else if (result == TRIAL_WRONG) {
        end->why = why_of(&problems, m->pool);
    }
    problems_clear(&problems);
    return result != TRIAL_MEMORY && !pool_failed(m->pool);
}

/* --- order --- */

bool range_row_idle(const struct range_row *row) {
    static const struct outcome none = {0};
    const struct range_end *const ends[] = {&row->low, &row->high};
    for (size_t i = 0; i < 2; i++) {
        if (ends[i]->text != NULL &&
            (!ends[i]->has || memcmp(&ends[i]->more, &none, sizeof none) != 0)) {
            return false;
        }
    }
    return true;
}

static int64_t swing_of(const struct range_row *row) {
    int64_t least = 0;
    int64_t most = 0;
    const struct range_end *const ends[] = {&row->low, &row->high};
    for (size_t i = 0; i < 2; i++) {
        const int64_t more = ends[i]->has ? ends[i]->more.client : 0;
        least = more < least ? more : least;
        most = more > most ? more : most;
    }
    return most - least;
}

void ranges_sort(struct range_row *rows, size_t count) {
    for (size_t i = 0; i < count; i++) {
        const struct range_row row = rows[i];
        const int64_t swing = swing_of(&row);
        size_t at = i;
        for (; at > 0 && rows[at - 1].swing < swing; at--) {
            rows[at] = rows[at - 1];
        }
        rows[at] = row;
        rows[at].swing = swing;
    }
}

/* --- numbers of the rates --- */

static struct range_row row_of(const struct rate_number *number) {
    return (struct range_row){.number = number,
                              .section = number->section,
                              .key = number->key,
                              .lead = number->lead,
                              .likely = number->likely,
                              .reason = number->reason};
}

/* Moves a number to both ends. */
static bool take_number(const struct maker *m, const struct rate_number *number, const char *low,
                        const char *high) {
    struct range_row *const row = &m->ranges->rows[m->ranges->count++];
    const char *const texts[] = {low, high};
    struct range_end *const ends[] = {&row->low, &row->high};
    *row = row_of(number);
    for (size_t i = 0; i < 2; i++) {
        const struct rate_change change = {.section = number->section,
                                           .key = number->key,
                                           .value = rate_number_with(number, texts[i], m->pool)};
        const struct rate_changes changes = {.list = &change, .count = 1};
        if (pool_failed(m->pool) || !take_end(m, &changes, texts[i], ends[i])) {
            return false;
        }
    }
    return true;
}

/* Room for rows; false: out of memory. */
static bool begin(const struct maker *m, enum range_way way, size_t room) {
    *m->ranges = (struct ranges){
        .way = way,
        .job = outcome_of(m->base),
        .rows = pool_take(m->pool, room, sizeof *m->ranges->rows),
        .money_decimals = m->base->tape.money_decimals,
    };
    return m->ranges->rows != NULL;
}

bool ranges_make(struct ranges *ranges, const struct estimate *base, const struct trial_job *job,
                 struct pool *pool) {
    const struct rate_numbers *const numbers = &base->rates->numbers;
    const struct maker m = {ranges, base, job, pool};
    bool memory = begin(&m, RANGE_ENDS, numbers->count);
    for (size_t i = 0; memory && i < numbers->count; i++) {
        const struct rate_number *const number = &numbers->list[i];
        if (rate_number_ranged(number)) {
            memory = take_number(&m, number, number->low_text, number->high_text);
        }
    }
    if (memory) {
        ranges_sort(ranges->rows, ranges->count);
    }
    return memory;
}

/* --- all by one part --- */

/* A number times (1 + part / 10^decimals of a percent), as it would be written. */
static const char *moved(const struct rate_number *number, int64_t part, uint8_t decimals,
                         struct pool *pool) {
    int64_t hundred = 100;
    for (uint8_t d = 0; d < decimals; d++) {
        hundred *= 10;
    }
    const int128 amount = (int128)number->value.amount * (hundred + part);
    if (number->value.unit == UNIT_NM) {
        return rate_number_text(number, (int64_t)int128_round(amount, hundred), 0, pool);
    }
    return rate_number_text(number, (int64_t)amount,
                            (uint8_t)(number->value.decimals + decimals + 2), pool);
}

/* Whether a part more of it is another number that means something, and the job takes it. */
static bool is_moved(const struct estimate *base, const bool *used,
                     const struct rate_number *number) {
    const struct settings *const settings = &base->rates->settings;
    const struct setting *const s = setting_at(settings, number->value.place);
    return s != NULL && used[s - settings->list] && number->value.amount != 0 &&
           rate_number_may_differ(number);
}

bool ranges_by(struct ranges *ranges, const struct estimate *base, const struct trial_job *job,
               struct range_percent percent, struct pool *pool) {
    const struct rate_numbers *const numbers = &base->rates->numbers;
    const struct maker m = {ranges, base, job, pool};
    const bool *const used = settings_used(base, &base->rates->settings, pool);
    bool memory = used != NULL && begin(&m, RANGE_PERCENT, numbers->count);
    for (size_t i = 0; memory && i < numbers->count; i++) {
        const struct rate_number *const number = &numbers->list[i];
        if (is_moved(base, used, number)) {
            memory = take_number(&m, number, moved(number, -percent.amount, percent.decimals, pool),
                                 moved(number, percent.amount, percent.decimals, pool));
        }
    }
    if (memory) {
        ranges->percent = percent.text;
        ranges_sort(ranges->rows, ranges->count);
    }
    return memory;
}

/* --- as the user has it --- */

/* The number of that key; NULL: it holds none, or several. */
static const struct rate_number *only_number(const struct rate_numbers *numbers,
                                             const struct rate_change *change) {
    const struct rate_number *found = NULL;
    for (size_t i = 0; i < numbers->count; i++) {
        const struct rate_number *const n = &numbers->list[i];
        if (text_same(n->section, change->section) && text_same(n->key, change->key)) {
            if (found != NULL) {
                return NULL;
            }
            found = n;
        }
    }
    return found;
}

bool ranges_set(struct ranges *ranges, const struct estimate *base, const struct trial_job *job,
                const struct rate_changes *changes, struct pool *pool) {
    const struct maker m = {ranges, base, job, pool};
    bool memory = begin(&m, RANGE_SET, changes->count);
    for (size_t i = 0; memory && i < changes->count; i++) {
        const struct rate_change *const change = &changes->list[i];
        const struct rate_changes one = {.list = change, .count = 1};
        const struct rate_number *const number = only_number(&base->rates->numbers, change);
        struct range_row *const row = &ranges->rows[ranges->count++];
        *row = number == NULL
                   ? (struct range_row){.section = change->section, .key = change->key, .lead = ""}
                   : row_of(number);
        memory = take_end(&m, &one, change->value, &row->high);
    }
    if (memory && changes->count > 1) {
        memory = take_end(&m, changes, "all at once", &ranges->together);
    }
    if (memory) {
        ranges_sort(ranges->rows, ranges->count);
    }
    return memory;
}
