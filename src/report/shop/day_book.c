/* SPDX-License-Identifier: MIT */
/* Time is in whole minutes, so that what is summed is what stands above it; the hours of a day are
 * made of its minutes. */
#include "report/shop/day_book.h"

#include "base/int128.h"
#include "report/shop/own_sheet.h"
#include "report/words/day_words.h"
#include "together/joined_job.h"

enum { DONE, DAY, WHO, WHAT, AT, JOB, DOORS, MINUTES, HOURS };
#define MINUTES_LETTER 'H' /* of that column, for formulas */

/* The sheet as it grows. */
struct day_sheet {
    struct own_sheet on;
    const struct day_plan *plan;
    const struct day_rows *rows;
    const struct rates *rates;
};

static void put_text(const struct day_sheet *s, uint16_t column, enum look look, const char *text) {
    book_text(s->on.book, s->on.sheet, s->on.row, column, look, text);
}

static void put_number(const struct day_sheet *s, uint16_t column, int64_t value) {
    book_number(s->on.book, s->on.sheet, s->on.row, column, LOOK_PLAIN, UNIT_COUNT, 0, value);
}

static void put_entry(struct day_sheet *s, const struct day_entry *entry) {
    struct pool *const pool = &s->on.book->pool;
    const struct operation *const op = &s->rates->operations[entry->operation];
    put_text(s, DONE, LOOK_PLAIN, entry->waits ? NULL : "[  ]");
    put_text(s, DAY, LOOK_PLAIN, show_day(s->plan->work_days[entry->day]).text);
    put_text(s, WHO, LOOK_PLAIN, day_row_name(s->rates, &s->rows->rows[entry->row], pool));
    put_text(s, WHAT, LOOK_WRAP, day_entry_words(s->rates, s->rows, entry, pool));
    if (!entry->waits && op->machine >= 0) {
        put_text(s, AT, LOOK_PLAIN, s->rates->machines[op->machine].name.s);
    }
    put_text(s, JOB, LOOK_PLAIN,
             s->plan->job_count == 1 ? day_job_name(s->plan, entry->job)
                                     : pool_words(pool, "%s  %s", joined_letter(entry->job),
                                                  day_job_name(s->plan, entry->job)));
    put_number(s, DOORS, entry->doors);
    put_number(s, MINUTES, entry->minutes);
    s->on.row++;
}

/* The minutes of the lines from `first` on, sums among them left out, and the hours that they make.
 */
static void put_sum(struct day_sheet *s, const char *words, uint32_t first, int64_t minutes) {
    struct pool *const pool = &s->on.book->pool;
    for (uint16_t column = DONE; column < (uint16_t)MINUTES; column++) {
        put_text(s, column, LOOK_TOTAL, column == WHAT ? words : ""); /* under one line */
    }
    book_formula(s->on.book, s->on.sheet, s->on.row, MINUTES, LOOK_TOTAL, UNIT_COUNT, 0, minutes,
                 pool_words(pool, "SUBTOTAL(9,%c%u:%c%u)", MINUTES_LETTER, first + 1,
                            MINUTES_LETTER, s->on.row));
    book_formula(s->on.book, s->on.sheet, s->on.row, HOURS, LOOK_TOTAL, UNIT_HOUR, 2,
                 (int64_t)int128_round((int128)minutes * 100, 60),
                 pool_words(pool, "ROUND(%c%u/60,2)", MINUTES_LETTER, s->on.row + 1));
    s->on.row++;
}

/* What people do on a day, and its sum. */
static void put_day(struct day_sheet *s, size_t day) {
    struct pool *const pool = &s->on.book->pool;
    const uint32_t first = s->on.row;
    int64_t minutes = 0;
    for (size_t i = 0; i < s->rows->entry_count; i++) {
        const struct day_entry *const entry = &s->rows->entries[i];
        if (entry->day == day && s->rows->rows[entry->row].kind == ROW_PERSON) {
            minutes += entry->minutes;
            put_entry(s, entry);
        }
    }
    if (s->on.row == first) {
        put_text(s, DAY, LOOK_PLAIN, show_day(s->plan->work_days[day]).text);
        put_text(s, WHAT, LOOK_WRAP, day_idle_words(s->rates, s->rows, day, pool));
        s->on.row += 2;
        return;
    }
    put_sum(s, pool_words(pool, "%s together", show_day(s->plan->work_days[day]).text), first,
            minutes);
    book_keep(s->on.book, s->on.sheet, first, s->on.row - 1);
    s->on.row++;
}

/* The heads of a table, on each of its pages. */
static void put_heads(struct day_sheet *s, const char *const *heads, size_t count) {
    book_headings(s->on.book, s->on.sheet, s->on.row, s->on.row, 0);
    own_sheet_heads(&s->on, heads, count);
}

static void put_waits(struct day_sheet *s) {
    static const char *const heads[] = {"", "day", "where", "what waits",
                                        "", "job", "doors", "minutes"};
    book_text(s->on.book, s->on.sheet, s->on.row, DONE, LOOK_TITLE,
              "What dries, sets or is away while the shop is open");
    s->on.row += 2;
    put_heads(s, heads, sizeof heads / sizeof *heads);
    for (size_t day = 0; day < s->plan->work_day_count; day++) {
        for (size_t i = 0; i < s->rows->entry_count; i++) {
            if (s->rows->entries[i].day == day && s->rows->entries[i].waits) {
                put_entry(s, &s->rows->entries[i]);
            }
        }
    }
}

static void put_head(struct day_sheet *s) {
    struct pool *const pool = &s->on.book->pool;
    const struct day_plan *const plan = s->plan;
    if (plan->job_count == 1) {
        own_sheet_words(&s->on, LOOK_TITLE,
                        pool_words(pool, "Work by day: %s", plan->jobs[0].estimate->job->title.s));
    } else {
        own_sheet_words(&s->on, LOOK_TITLE,
                        pool_words(pool, "Work by day: %zu jobs together", plan->job_count));
    }
    for (size_t j = 0; j < plan->job_count; j++) {
        own_sheet_words(&s->on, LOOK_NOTE,
                        pool_words(pool, "%s%s%s: ready %s",
                                   plan->job_count > 1 ? joined_letter(j) : "",
                                   plan->job_count > 1 ? "  " : "", day_job_name(plan, j),
                                   show_day(plan->jobs[j].ready).text));
    }
    own_sheet_words(&s->on, LOOK_NOTE,
                    "Doors are all that a work is done to, whichever part of it falls on the day.");
    s->on.row++;
}

static void put_notes(struct day_sheet *s) {
    const char *notes[DAY_NOTES];
    const size_t count = day_notes(s->plan, notes, &s->on.book->pool);
    s->on.row++;
    for (size_t i = 0; i < count; i++) {
        own_sheet_words(&s->on, LOOK_NOTE, notes[i]);
    }
}

bool day_book_write(const struct day_plan *plan, const struct day_rows *rows, const char *path) {
    static const double widths[] = {5, 15, 13, 46, 16, 13, 7, 9, 8};
    static const char *const heads[] = {"done", "day",   "who",     "what", "machine",
                                        "job",  "doors", "minutes", "hours"};
    const struct estimate *const base = plan->jobs[0].estimate;
    struct book book;
    book_init(&book, NULL);
    const uint16_t columns = sizeof widths / sizeof *widths;
    struct day_sheet s = {
        .on = own_sheet_add(&book, base, "Days", "Work by day", widths, columns, HOURS),
        .plan = plan,
        .rows = rows,
        .rates = base->rates};
    put_head(&s);
    const uint32_t head = s.on.row;
    put_heads(&s, heads, sizeof heads / sizeof *heads);
    for (size_t day = 0; day < plan->work_day_count; day++) {
        put_day(&s, day);
    }
    put_sum(&s, "all days", head + 1, plan->minutes);
    put_notes(&s);
    s.on = own_sheet_add(&book, base, "Waits", "What waits", widths, HOURS, HOURS);
    put_waits(&s);
    return own_sheet_write(&book, base, path);
}
