/* SPDX-License-Identifier: MIT */
/* What a plan by day goes by. */
#include "model/limits.h"
#include "read/key/day.h"
#include "read/key/rows.h"
#include "read/rates/rates_keys.h"

#include <string.h>

static const struct spelling weekdays[] = {
    {"Monday", 0},   {"Tuesday", 1}, {"Wednesday", 2}, {"Thursday", 3}, {"Friday", 4},
    {"Saturday", 5}, {"Sunday", 6},  {"Mon", 0},       {"Tue", 1},      {"Wed", 2},
    {"Thu", 3},      {"Fri", 4},     {"Sat", 5},       {"Sun", 6},      {0},
};

/* `Mon, Tue, Wed` */
static void read_weekdays(struct reader *reader, const struct key *key, const struct entry *entry,
                          void *target) {
    struct entry *items;
    size_t count;
    unsigned bits = 0;

    if (!list_split(reader, key, entry, false, &items, &count)) {
        return;
    }
    for (size_t i = 0; i < count; i++) {
        const struct spelling *day = choice_find(reader, key, &items[i]);

        if (day == NULL) {
            return;
        }
        bits |= 1u << day->choice;
    }
    *(unsigned *)key_field(key, target) = bits;
}

/* `2026-05-25` or `2026-12-24 to 2026-12-31`. false: reported. */
static bool read_span(struct reader *reader, const struct key *key, const struct entry *entry,
                      struct day_span *span) {
    const char *to = strstr(entry->text, " to ");

    if (to == NULL) {
        const bool is_day = date_value(reader, entry, &span->first);

        span->last = span->first;
        return is_day;
    }
    const struct entry first = entry_part(reader, entry, entry->text, to);
    const struct entry last = entry_part(reader, entry, to + 4, to + strlen(to));

    if (!date_value(reader, &first, &span->first) || !date_value(reader, &last, &span->last)) {
        return false;
    }
    if (date_number(span->last) < date_number(span->first)) {
        problem_add(reader->problems, SEVERITY_ERROR, "bad-item", entry->place,
                    "%s: '%s' ends before it begins; expected one like '2026-12-24 to 2026-12-31'",
                    key->name, entry_quote(reader, entry));
        return false;
    }
    if (date_number(span->last) - date_number(span->first) >= MOST_DAYS_OFF) {
        problem_add(reader->problems, SEVERITY_ERROR, "bad-item", entry->place,
                    "%s: '%s' is more than %d days; expected one like '2026-12-24 to 2026-12-31'",
                    key->name, entry_quote(reader, entry), MOST_DAYS_OFF);
        return false;
    }
    return true;
}

/* `2026-05-25, 2026-12-24 to 2026-12-31` */
static void read_days_off(struct reader *reader, const struct key *key, const struct entry *entry,
                          void *target) {
    struct days_off *const off = key_field(key, target);
    struct entry *items;
    size_t count;

    if (!list_split(reader, key, entry, false, &items, &count)) {
        return;
    }
    off->spans = pool_take(reader->pool, count, sizeof *off->spans);
    for (size_t i = 0; i < count && off->spans != NULL; i++) {
        off->count += read_span(reader, key, &items[i], &off->spans[off->count]) ? 1 : 0;
    }
}

static const struct unit_form minutes[] = {{"min", UNIT_MIN, 0, 0, 10000}, {0}};
static const struct unit_form days_away[] = {{"day", UNIT_DAY, 0, 0, 365}, {0}};

static const struct key day_keys[] = {
    {"working days", AS_OWN(read_weekdays, .choices = weekdays), FIELD(day_rules, weekdays),
     "Mon, Tue, Wed, Thu",
     .help = "absent: Monday to Friday; how long they are is `hours per day`"},
    {"holidays", AS(read_days_off), FIELD(day_rules, off), "2026-05-25, 2026-12-24 to 2026-12-31",
     .help = "days that are not worked beside the other weekdays"},
    {"people", AS_COUNT(1, 100, 1), FIELD(day_rules, people), "2",
     .help = "at work at once; absent: 1"},
    {"clamp sets", AS_COUNT(1, 1000, 0), FIELD(day_rules, clamps), "6",
     .help = "doors or solid panels in clamps at once; absent: never scarce"},
    {"clamp time", AS_QUANTITY(minutes), FIELD(day_rules, clamped), "45 min",
     .help = "from gluing to taking the clamps off, by the glue's data sheet; absent: none"},
    {"racks", AS_COUNT(1, 1000, 0), FIELD(day_rules, racks), "2",
     .help = "on which doors dry; absent: never scarce"},
    {"rack places", AS_COUNT(1, 1000, 0), FIELD(day_rules, places), "20",
     .help = "doors that a rack takes"},
    {"both faces at once", AS_YES_NO, FIELD(day_rules, at_once), "yes", "no",
     .help = "a coat goes on both faces before it dries, as on hung doors; absent: no, the back "
             "dries, then the doors are turned"},
    {"finisher", AS_QUANTITY(days_away), FIELD(day_rules, finisher), "5 days",
     .help = "days that doors are away whose finish is put out; absent: none"},
    {"not planned", AS_NAMES(NAME_OPERATION), FIELD(day_rules, unplanned), "measure, quote",
     .help = "operations that are done before the job is taken"},
    {"first", AS_NAMES(NAME_OPERATION), FIELD(day_rules, first), "unload",
     .help = "operations that come before all others, in this order"},
    {"last", AS_NAMES(NAME_OPERATION), FIELD(day_rules, last), "glaze, check, pack, deliver",
     .help = "operations that come behind all others, in this order"},
};

/* An operation has one place in the order. */
static void check_places(struct reader *reader, const struct day_rules *days) {
    const struct references *const lists[] = {&days->unplanned, &days->first, &days->last};

    for (size_t later = 1; later < COUNT_OF(lists); later++) {
        for (size_t i = 0; i < lists[later]->count; i++) {
            const struct reference *const r = &lists[later]->r[i];

            for (size_t earlier = 0; earlier < later; earlier++) {
                if (r->index >= 0 && references_hold(lists[earlier], r->index)) {
                    problem_add(reader->problems, SEVERITY_ERROR, "bad-item", r->name.place,
                                "'%s' is named twice in [days]; name it in one of `not planned`, "
                                "`first` and `last`",
                                problem_quote(reader->problems, r->name.s));
                }
            }
        }
    }
}

static void check_days(struct reader *reader, const struct ini_section *section, void *target) {
    check_places(reader, target);
    if (section_has(section, "racks")) {
        section_lacks(reader, section, "rack places", "to tell how many doors the racks take");
    }
    if (section_has(section, "rack places")) {
        section_lacks(reader, section, "racks", "to tell how many doors can dry at once");
    }
    if (section_has(section, "clamp time")) {
        section_lacks(reader, section, "clamp sets", "to tell how many doors can be clamped");
    }
}

const struct section_kind section_days = {
    "days",
    day_keys,
    COUNT_OF(day_keys),
    SECTION(rates, days),
    .check = check_days,
    .help = "What a plan by day goes by: people, clamps, racks, working days."};
