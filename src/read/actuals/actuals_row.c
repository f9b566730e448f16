/* SPDX-License-Identifier: MIT */
#include "read/actuals/actuals_row.h"

#include "base/text.h"
#include "read/key/day.h"
#include "read/key/quantity.h"
#include "read/key/rows.h"
#include "read/key/told_name.h"

#include <string.h>

static void read_day(struct reader *reader, const struct key *key, const struct entry *entry,
                     void *target) {
    struct date date;
    if (date_value(reader, entry, &date)) {
        *(struct text *)key_field(key, target) = entry_text(reader, entry);
    }
}

static const struct unit_form hours[] = {
    {"hour", UNIT_HOUR, 0, 0, 10000}, {"", UNIT_HOUR, 0, 0, 10000}, {0}};
static const struct unit_form minutes[] = {
    {"min", UNIT_MIN, 0, 0, 600000}, {"", UNIT_MIN, 0, 0, 600000}, {0}};

#define ROW(member)  FIELD(actual_said, row.member)
#define SAID(member) FIELD(actual_said, member)

const struct key actual_keys[] = {
    {"date", AS(read_day), ROW(date), "2026-03-20", .help = "when"},
    {"what", AS_TEXT, ROW(what), "sand", "making", .needed = true,
     .help = "an operation; `making`, `finishing`, `around it` or `all` for the work that is not "
             "noted by itself; a material, coating, additive, hardware or consumable; or `doors` "
             "for doors made again. A name that several have with its section before it: "
             "`coating clear`"},
    {"hours", AS_QUANTITY(hours), ROW(hours), "6.5", .help = "of each person"},
    {"minutes", AS_QUANTITY(minutes), ROW(minutes), "45", .help = "in place of hours"},
    {"people", AS_COUNT(1, 100, 1), ROW(people), "2", .help = "at it; absent: 1"},
    {"bought", AS_TEXT, SAID(bought), "100 bf", "2 gal",
     .help = "how much; of lumber, glass and banding in the unit that the rates price it in, of "
             "sheets, rolls and hardware the number, of liquids any volume"},
    {"paid", AS_MONEY, ROW(paid), "375.00", .help = "for all of that, as money is in the rates"},
    {"taken", AS_TEXT, SAID(taken), "90 bf", "3 gal",
     .help = "boards and sheets cut into, pieces of the rack too, cans opened; absent: all that "
             "was bought"},
    {"left", AS_TEXT, SAID(left), "12 bf", "0.5 gal",
     .help = "of that and of use; absent: nothing"},
    {"remade", AS_COUNT(0, 9999, 0), ROW(remade), "1", .help = "doors that were made again"},
    {"cause", AS_TEXT, ROW(cause), "panel too small", .help = "why"},
    {"note", AS_TEXT, ROW(note), "the planer was down", .help = "for yourself"},
};
const size_t actual_key_count = COUNT_OF(actual_keys);

/* --- what it is about --- */

#define MATERIAL_KINDS                                                                             \
    (1U << NAME_LUMBER | 1U << NAME_SHEET | 1U << NAME_GLASS | 1U << NAME_BANDING |                \
     1U << NAME_COATING | 1U << NAME_ADDITIVE | 1U << NAME_HARDWARE | 1U << NAME_CONSUMABLE)
#define KINDS (MATERIAL_KINDS | 1U << NAME_OPERATION)

/* Sections of that name, or of that kind and name. false: it has none. */
static bool find_section(struct reader *reader, struct actual *row) {
    const enum told_name told = told_name_find(reader, &row->what, KINDS, &row->kind, &row->index);
    if (told == TOLD_ONE) {
        row->about = row->kind == NAME_OPERATION ? ACTUAL_OPERATION : ACTUAL_MATERIAL;
    }
    return told != TOLD_NONE;
}

/* Work by its sort, all of it, or doors. */
static bool find_word(struct actual *row) {
    for (int sort = 0; sort < WORK_SORT_COUNT; sort++) {
        if (text_same_word(row->what.s, work_sort_name((enum work_sort)sort))) {
            row->about = ACTUAL_SORT;
            row->index = sort;
            return true;
        }
    }
    if (text_same(row->what.s, "all") || text_same(row->what.s, "doors")) {
        row->about = text_same(row->what.s, "all") ? ACTUAL_ALL : ACTUAL_DOORS;
        return true;
    }
    return false;
}

static void find_what(struct reader *reader, struct actual *row) {
    if (find_section(reader, row) || find_word(row)) {
        return;
    }
    const char *const near =
        name_nearest(reader->rates, KINDS, row->what.s, &reader->problems->pool);
    problem_add(reader->problems, SEVERITY_ERROR, "unknown-name", row->what.place,
                "the rates have no operation and no material '%s'; %s%s%s",
                problem_quote(reader->problems, row->what.s),
                near == NULL ? "write a name of theirs, making, finishing, around it, all or doors"
                             : "did you mean '",
                near == NULL ? "" : problem_quote(reader->problems, near),
                near == NULL ? "" : "'?");
}

/* --- amounts --- */

static const struct unit_form *forms_of(const struct rates *rates, const struct actual *row) {
    static const struct unit_form board_feet[] = {
        {"bf", UNIT_BF, 0, 0, 1000000}, {"", UNIT_BF, 0, 0, 1000000}, {0}};
    static const struct unit_form cubic_meters[] = {
        {"m3", UNIT_M3, 0, 0, 10000}, {"", UNIT_M3, 0, 0, 10000}, {0}};
    static const struct unit_form sheets[] = {
        {"sheet", UNIT_NUMBER, 0, 0, 100000}, {"", UNIT_NUMBER, 0, 0, 100000}, {0}};
    static const struct unit_form square_feet[] = {
        {"sqft", UNIT_SQFT, 0, 0, 1000000}, {"", UNIT_SQFT, 0, 0, 1000000}, {0}};
    static const struct unit_form square_meters[] = {
        {"m2", UNIT_M2, 0, 0, 100000}, {"", UNIT_M2, 0, 0, 100000}, {0}};
    static const struct unit_form feet[] = {
        {"ft", UNIT_FT, 0, 0, 1000000}, {"", UNIT_FT, 0, 0, 1000000}, {0}};
    static const struct unit_form meters[] = {
        {"m", UNIT_M, 0, 0, 1000000}, {"", UNIT_M, 0, 0, 1000000}, {0}};
    static const struct unit_form rolls[] = {{"roll", UNIT_NUMBER, 0, 0, 100000},
                                             {"rolls", UNIT_NUMBER, 0, 0, 100000},
                                             {"", UNIT_NUMBER, 0, 0, 100000},
                                             {0}};
    static const struct unit_form pieces[] = {{"piece", UNIT_NUMBER, 0, 0, 1000000},
                                              {"each", UNIT_NUMBER, 0, 0, 1000000},
                                              {"", UNIT_NUMBER, 0, 0, 1000000},
                                              {0}};
    switch (row->kind) {
    case NAME_LUMBER:
        return rates->lumber[row->index].price.unit == UNIT_MONEY_PER_M3 ? cubic_meters
                                                                         : board_feet;
    case NAME_SHEET:
        return sheets;
    case NAME_GLASS:
        return rates->glass[row->index].price.unit == UNIT_MONEY_PER_M2 ? square_meters
                                                                        : square_feet;
    case NAME_BANDING:
        if (rates->bandings[row->index].roll.set) {
            return rolls;
        }
        return rates->bandings[row->index].price.unit == UNIT_MONEY_PER_M ? meters : feet;
    default:
        return pieces;
    }
}

/* What an amount of that material looks like, for messages. */
static const char *example_of(const struct unit_form *forms, enum name_kind kind) {
    if (kind == NAME_COATING || kind == NAME_ADDITIVE) {
        return "2 gal";
    }
    return forms[0].unit == UNIT_M3     ? "0.25 m3"
           : forms[0].unit == UNIT_BF   ? "100 bf"
           : forms[0].unit == UNIT_SQFT ? "12 sqft"
           : forms[0].unit == UNIT_M2   ? "1.2 m2"
           : forms[0].unit == UNIT_FT   ? "40 ft"
           : forms[0].unit == UNIT_M    ? "12 m"
                                        : "3";
}

static void take_amount(struct reader *reader, const struct actual *row, const char *name,
                        const struct text *text, struct value *value) {
    if (text->s == NULL) {
        return;
    }
    const struct unit_form *const forms = forms_of(reader->rates, row);
    const struct key key = {.name = name, .example = example_of(forms, row->kind)};
    const struct entry entry = {.text = text->s, .place = text->place};
    if (row->kind == NAME_COATING || row->kind == NAME_ADDITIVE) {
        (void)volume_value(reader, &key, &entry, NULL, value);
    } else {
        (void)quantity_value(reader, &key, &entry, forms, value, NULL);
    }
    value->place = text->place;
}

/* --- what must hold --- */

static void refuse(struct reader *reader, struct place place, const char *about,
                   const char *column) {
    problem_add(reader->problems, SEVERITY_ERROR, "cell-unfit", place,
                "'%s' says nothing of %s; leave the cell empty, or give it a row of its own",
                column, about);
}

static bool is_work(const struct actual *row) {
    return row->about == ACTUAL_OPERATION || row->about == ACTUAL_SORT || row->about == ACTUAL_ALL;
}

/* Cells that say nothing of what the line is about. */
static void check_cells(struct reader *reader, const struct actual_said *said) {
    const struct actual *const row = &said->row;
    const bool work = is_work(row);
    const bool material = row->about == ACTUAL_MATERIAL;
    const bool money_alone = material && row->kind == NAME_CONSUMABLE;
    const char *const about = work ? "work" : material ? "a material" : "doors made again";
    const struct {
        const char *column;
        struct place place;
        bool set, fits;
    } cells[] = {
        {"hours", row->hours.place, row->hours.set, work},
        {"minutes", row->minutes.place, row->minutes.set, work},
        {"people", row->people.place, row->people.set, work},
        {"bought", said->bought.place, said->bought.s != NULL, material && !money_alone},
        {"paid", row->paid.place, row->paid.set, material},
        {"taken", said->taken.place, said->taken.s != NULL, material && !money_alone},
        {"left", said->left.place, said->left.s != NULL, material && !money_alone},
        {"remade", row->remade.place, row->remade.set, row->about == ACTUAL_DOORS},
        {"cause", row->cause.place, row->cause.s != NULL, row->about == ACTUAL_DOORS},
    };
    bool any = false;
    for (size_t i = 0; i < COUNT_OF(cells); i++) {
        if (cells[i].set && !cells[i].fits) {
            refuse(reader, cells[i].place, money_alone ? "a consumable" : about, cells[i].column);
        }
        any = any || (cells[i].set && strcmp(cells[i].column, "people") != 0 &&
                      strcmp(cells[i].column, "cause") != 0);
    }
    if (!any) {
        problem_add(reader->problems, SEVERITY_ERROR, "nothing-noted", row->place,
                    "the row says nothing of '%s'; expected %s",
                    problem_quote(reader->problems, row->what.s),
                    work       ? "hours or minutes"
                    : material ? "what was bought, paid, taken or left"
                               : "remade");
    }
}

/* A person at work for longer than this on one day has noted two. */
#define LONGEST_DAY_MINUTES ((int64_t)16 * 60)

static void check_work(struct reader *reader, const struct actual *row) {
    if (row->hours.set && row->minutes.set) {
        problem_add(reader->problems, SEVERITY_ERROR, "hours-twice", row->minutes.place,
                    "hours and minutes are both given; expected one of them");
    }
    const struct value most = {.amount = LONGEST_DAY_MINUTES / (row->hours.set ? 60 : 1)};
    const struct value *const noted = row->hours.set ? &row->hours : &row->minutes;
    if (row->date.s != NULL && noted->set && value_above(noted, &most)) {
        problem_add(reader->problems, SEVERITY_WARNING, "day-long", noted->place,
                    "a person is said to have worked more than 16 hours on one day; check it, or "
                    "leave the date out where it is the sum of several");
    }
}

static void check_material(struct reader *reader, const struct actual *row) {
    if (row->left.set && (!row->taken.set && !row->bought.set)) {
        problem_add(reader->problems, SEVERITY_ERROR, "left-of-what", row->left.place,
                    "the row says what is left, but not of what; expected taken or bought too");
    }
    const struct value *const of = row->taken.set ? &row->taken : &row->bought;
    if (row->left.set && of->set && value_above(&row->left, of)) {
        problem_add(reader->problems, SEVERITY_ERROR, "left-of-what", row->left.place,
                    "more is left than was %s; check both", row->taken.set ? "taken" : "bought");
    }
    if (row->paid.set && !row->bought.set && row->kind != NAME_CONSUMABLE) {
        problem_add(reader->problems, SEVERITY_ERROR, "paid-for-what", row->paid.place,
                    "the row says what was paid, but not for how much; expected bought too");
    }
}

void actual_complete(struct reader *reader, struct actual_said *said) {
    struct actual *const row = &said->row;
    find_what(reader, row);
    if (row->about == ACTUAL_NOTHING) {
        return;
    }
    check_cells(reader, said);
    if (row->about == ACTUAL_MATERIAL) {
        take_amount(reader, row, "bought", &said->bought, &row->bought);
        take_amount(reader, row, "taken", &said->taken, &row->taken);
        take_amount(reader, row, "left", &said->left, &row->left);
        check_material(reader, row);
    } else if (is_work(row)) {
        check_work(reader, row);
    }
}
