/* SPDX-License-Identifier: MIT */
/* What is done, at which machine, and how long it takes. */
#include "read/key/quantity.h"
#include "read/key/rows.h"
#include "read/rates/rates_keys.h"

#include <string.h>

static const struct spelling drivers_inch[] = {
    {"job", DRIVER_JOB},
    {"door", DRIVER_DOOR},
    {"part", DRIVER_PART},
    {"stile", DRIVER_STILE},
    {"rail", DRIVER_RAIL},
    {"panel", DRIVER_PANEL},
    {"joint", DRIVER_JOINT},
    {"arch", DRIVER_ARCH},
    {"hinge", DRIVER_HINGE},
    {"pull", DRIVER_PULL},
    {"piece of hardware", DRIVER_HARDWARE},
    {"ft of frame", DRIVER_FRAME_RUN},
    {"ft of edge", DRIVER_EDGE_RUN},
    {"ft of door", DRIVER_DOOR_RUN},
    {"sqft of door", DRIVER_AREA},
    {"sqft", DRIVER_AREA},
    {"sqft sprayed", DRIVER_SPRAYED},
    {"sqft sprayed per coat", DRIVER_SPRAYED_PER_COAT},
    {"sqft per coat", DRIVER_SPRAYED_PER_COAT},
    {"sqft sprayed between coats", DRIVER_SPRAYED_BETWEEN},
    {"bf", DRIVER_LUMBER},
    {"m3", DRIVER_LUMBER},
    {"sheet", DRIVER_SHEET},
    {"board", DRIVER_BOARD},
    {"cut", DRIVER_CUT},
    {"pane", DRIVER_PANE},
    {"solid panel", DRIVER_SOLID_PANEL},
    {"ft of glue line", DRIVER_GLUE_LINE},
    {"sqft of solid panel", DRIVER_SOLID_AREA},
    {"ft of raised edge", DRIVER_RAISED_RUN},
    {"ft of banding", DRIVER_BANDED_RUN},
    {"bar", DRIVER_BAR},
    {"ft of bar", DRIVER_BAR_RUN},
    {0},
};
static const struct spelling drivers_mm[] = {
    {"job", DRIVER_JOB},
    {"door", DRIVER_DOOR},
    {"part", DRIVER_PART},
    {"stile", DRIVER_STILE},
    {"rail", DRIVER_RAIL},
    {"panel", DRIVER_PANEL},
    {"joint", DRIVER_JOINT},
    {"arch", DRIVER_ARCH},
    {"hinge", DRIVER_HINGE},
    {"pull", DRIVER_PULL},
    {"piece of hardware", DRIVER_HARDWARE},
    {"m of frame", DRIVER_FRAME_RUN},
    {"m of edge", DRIVER_EDGE_RUN},
    {"m of door", DRIVER_DOOR_RUN},
    {"m2 of door", DRIVER_AREA},
    {"m2", DRIVER_AREA},
    {"m2 sprayed", DRIVER_SPRAYED},
    {"m2 sprayed per coat", DRIVER_SPRAYED_PER_COAT},
    {"m2 per coat", DRIVER_SPRAYED_PER_COAT},
    {"m2 sprayed between coats", DRIVER_SPRAYED_BETWEEN},
    {"m3", DRIVER_LUMBER},
    {"bf", DRIVER_LUMBER},
    {"sheet", DRIVER_SHEET},
    {"board", DRIVER_BOARD},
    {"cut", DRIVER_CUT},
    {"pane", DRIVER_PANE},
    {"solid panel", DRIVER_SOLID_PANEL},
    {"m of glue line", DRIVER_GLUE_LINE},
    {"m2 of solid panel", DRIVER_SOLID_AREA},
    {"m of raised edge", DRIVER_RAISED_RUN},
    {"m of banding", DRIVER_BANDED_RUN},
    {"bar", DRIVER_BAR},
    {"m of bar", DRIVER_BAR_RUN},
    {0},
};
static const struct unit_form minutes[] = {
    {"", UNIT_MIN, 0, 0, 10000}, {"min", UNIT_MIN, 0, 0, 10000}, {0}};
static const struct unit_form feeds[] = {
    {"ft per min", UNIT_FT_PER_MIN, 0, 0, 1000},
    {"m per min", UNIT_M_PER_MIN, 0, 0, 300},
    {0},
};
static const struct unit_form handlings[] = {
    {"min per part", UNIT_MIN, DRIVER_PART, 0, 1000},
    {"min per door", UNIT_MIN, DRIVER_DOOR, 0, 1000},
    {"min per stile", UNIT_MIN, DRIVER_STILE, 0, 1000},
    {"min per rail", UNIT_MIN, DRIVER_RAIL, 0, 1000},
    {"min per panel", UNIT_MIN, DRIVER_PANEL, 0, 1000},
    {0},
};
static const struct unit_form setups[] = {
    {"min per job", UNIT_MIN, SETUP_PER_JOB, 0, 10000},
    {"min per material", UNIT_MIN, SETUP_PER_MATERIAL, 0, 10000},
    {"min per thickness", UNIT_MIN, SETUP_PER_THICKNESS, 0, 10000},
    {"min per width", UNIT_MIN, SETUP_PER_WIDTH, 0, 10000},
    {"min per length", UNIT_MIN, SETUP_PER_LENGTH, 0, 10000},
    {"min per style", UNIT_MIN, SETUP_PER_STYLE, 0, 10000},
    {"min per coat", UNIT_MIN, SETUP_PER_COAT, 0, 10000},
    {"min per color", UNIT_MIN, SETUP_PER_COLOR, 0, 10000},
    {0},
};

/* The words for runs and areas are those of the file's units. */
static void read_driver(struct reader *reader, const struct key *key, const struct entry *entry,
                        void *target) {
    struct key row = *key;

    row.kind.choices = reader->unit == LENGTH_INCH ? drivers_inch : drivers_mm;
    read_choice(reader, &row, entry, target);
}

/* `16 in, one side open` */
static void read_capacity(struct reader *reader, const struct key *key, const struct entry *entry,
                          void *target) {
    static const struct spelling words[] = {{"one side open", 1}, {0}};
    struct operation *operation = target;
    struct key row = *key;
    struct entry *items;
    size_t count;

    if (!list_split(reader, key, entry, true, &items, &count)) {
        return;
    }
    row.kind.choices = words;
    if (count > 2) {
        problem_add(reader->problems, SEVERITY_ERROR, "bad-item", entry->place,
                    "capacity '%s' cannot be read; expected %s", entry_quote(reader, entry),
                    key_expected(reader, key));
        return;
    }
    if (length_value(reader, key, &items[0], key->kind.range, &operation->capacity) && count == 2) {
        operation->one_side_open = choice_find(reader, &row, &items[1]) != NULL;
    }
}

static const struct spelling tasks[] = {
    {"boring", TASK_BORING},
    {"fitting hinges", TASK_HINGES},
    {"hanging", TASK_HANGING},
    {"fitting pulls", TASK_PULLS},
    {"fitting hardware", TASK_HARDWARE},
    {"delivery", TASK_DELIVERY},
    {0},
};

static const struct key operation_keys[] = {
    {"words", AS_TEXT, FIELD(operation, client_name), "hanging the doors, second fix",
     .help = "how the client reads that it is included; absent: not said, or as `does` has it"},
    {"does", AS_CHOICE(tasks), FIELD(operation, does), "boring", "hanging",
     .help = "boring, fitting hinges, hanging, fitting pulls, fitting hardware or delivery: what "
             "the client reads is included where it is done, and else is not"},
    {"machine", AS_INDEX(NAME_MACHINE), FIELDS(operation, machine, machine_name), "router table",
     .help = "a [machine NAME]; absent: handwork"},
    {"per", AS_OWN(read_driver, .choices = drivers_inch), FIELD(operation, per), "door",
     "ft of frame", .needed = true, .help = "what it is counted by"},
    {"minutes", AS_QUANTITY(minutes), FIELD(operation, minutes), "1.5", .help = "for each of them"},
    {"feed", AS_QUANTITY(feeds), FIELD(operation, feed), "12 ft per min", "4 m per min",
     .help = "instead of minutes, where it is counted by a run"},
    {"handling", AS_QUANTITY(handlings), FIELDS(operation, handling, handling_per),
     "0.20 min per part", .help = "added for each part, door, stile, rail or panel"},
    {"passes", AS_COUNT(1, 50, 1), FIELD(operation, passes), "2", .help = "how often; absent: 1"},
    {"together", AS_COUNT(1, 100, 1), FIELD(operation, together), "10",
     .help = "worked on at once, as parts sanded in a stack; handling stays for each; absent: 1"},
    {"by wood", AS_YES_NO, FIELD(operation, by_wood), "yes", "no",
     .help = "takes longer in wood whose `work` says so; absent: no"},
    {"setup", AS_QUANTITY(setups), FIELDS(operation, setup, setup_per), "15 min per thickness",
     .help = "before it starts: per job, material, thickness, width, length, style, coat or color"},
    {"hands", AS_COUNT(1, 20, 1), FIELD(operation, hands), "2", .help = "people at it; absent: 1"},
    {"capacity", AS_OWN(read_capacity, .range = RANGE(NM_PER_INCH, 240 * NM_PER_INCH)),
     FIELD(operation, capacity), "16 in, one side open", "25 in",
     .help = "width that the machine takes; one side open: up to twice it in two"},
    {"off the bench", AS_YES_NO, FIELD(operation, off_bench), "yes", "no",
     .help = "done elsewhere, as measuring and quoting: no hours at the bench; absent: no"},
    {"labor rate", AS_QUANTITY(forms_per_hour), FIELD(operation, labor_rate), "44.00 per hour",
     .help = "absent: the shop's"},
};

static bool is_run(const struct operation *operation) {
    const int driver = operation->per.choice;

    return driver == DRIVER_FRAME_RUN || driver == DRIVER_EDGE_RUN || driver == DRIVER_DOOR_RUN ||
           driver == DRIVER_GLUE_LINE || driver == DRIVER_RAISED_RUN ||
           driver == DRIVER_BANDED_RUN || driver == DRIVER_BAR_RUN;
}

static void check_operation(struct reader *reader, const struct ini_section *section,
                            void *target) {
    const struct operation *operation = target;

    if (operation->minutes.set && operation->feed.set) {
        problem_add(reader->problems, SEVERITY_ERROR, "both-given", operation->feed.place,
                    "minutes and feed are both given; keep the one that holds");
    }
    if (!section_has(section, "feed") && !section_has(section, "handling")) {
        section_lacks(reader, section, "minutes", "where no feed is given");
    }
    if (operation->feed.set && operation->feed.amount == 0) {
        problem_add(reader->problems, SEVERITY_ERROR, "out-of-range", operation->feed.place,
                    "feed '0' is out of range; expected a speed like '12 ft per min'");
    }
    if (operation->feed.set && operation->per.set && !operation->minutes.set &&
        !is_run(operation)) {
        problem_add(
            reader->problems, SEVERITY_ERROR, "feed-without-run", operation->feed.place,
            "feed is a speed along a run, but this operation is counted otherwise; expected "
            "per = %s, or minutes instead",
            reader->unit == LENGTH_INCH ? "ft of frame" : "m of frame");
    }
}

const struct section_kind section_operation = {
    "operation",
    operation_keys,
    COUNT_OF(operation_keys),
    SECTIONS(rates, operations, operation_count, operation),
    .check = check_operation,
    .help = "A step of the work and its minutes."};

static const struct spelling machine_kinds[] = {
    {"miter saw", MACHINE_MITER_SAW},   {"table saw", MACHINE_TABLE_SAW},
    {"band saw", MACHINE_BAND_SAW},     {"jointer", MACHINE_JOINTER},
    {"planer", MACHINE_PLANER},         {"shaper", MACHINE_SHAPER},
    {"router", MACHINE_ROUTER},         {"mortiser", MACHINE_MORTISER},
    {"boring machine", MACHINE_BORING}, {"sander", MACHINE_SANDER},
    {"clamps", MACHINE_CLAMPS},         {"spray booth", MACHINE_SPRAY_BOOTH},
    {"other", MACHINE_OTHER},           {0},
};

static const struct key machine_keys[] = {
    {"kind", AS_CHOICE(machine_kinds), FIELD(machine, kind), "miter saw", "other",
     .help = "miter saw, table saw, band saw, jointer, planer, shaper, router, mortiser, boring "
             "machine, sander, clamps, spray booth or other: for the cautions of a job that uses "
             "it; absent: the papers say that it is not told"},
    {"rate", AS_QUANTITY(forms_per_hour), FIELD(machine, rate), "4.00 per hour", .needed = true,
     .help = "what an hour of the machine costs, without the person"},
    {"shortest", AS_LENGTH(INCHES(1, 36)), FIELD(machine, shortest), "12 in", "300 mm",
     .help = "shorter rough parts of frames are milled several in one blank; absent: none are"},
};

const struct section_kind section_machine = {"machine", machine_keys, COUNT_OF(machine_keys),
                                             SECTIONS(rates, machines, machine_count, machine),
                                             .help = "A machine and its cost per hour."};
