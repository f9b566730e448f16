/* SPDX-License-Identifier: MIT */
/* The columns of the door list that are not of [make]. */
#include "door/leaf.h"
#include "read/job/job_keys.h"
#include "read/key/quantity.h"
#include "read/key/rows.h"
#include "read/rates/rates_keys.h"

#include <string.h>

/* A leaf is no smaller than a spice drawer's front and no larger than a barn door. */
#define SIDE_RANGE RANGE(NM_PER_INCH, 120 * NM_PER_INCH)
/* A pair in less than this would have leaves that nobody can reach through. */
#define NARROW_INCH (16 * NM_PER_INCH)
#define NARROW_MM   (400 * NM_PER_MM)

/* A word of use that no row keeps: a door with the hinge side `pair`. */
#define USE_PAIR (USE_END_PANEL + 1)

static const struct spelling uses[] = {
    {"door", USE_DOOR},
    {"drawer front", USE_DRAWER_FRONT},
    {"false front", USE_FALSE_FRONT},
    {"end panel", USE_END_PANEL},
    {"pair", USE_PAIR},
    {"doors", USE_DOOR},
    {"drawer", USE_DRAWER_FRONT},
    {"drawers", USE_DRAWER_FRONT},
    {"drawer fronts", USE_DRAWER_FRONT},
    {"false fronts", USE_FALSE_FRONT},
    {"end panels", USE_END_PANEL},
    {"pairs", USE_PAIR},
    {0},
};
static const struct spelling ways_to_open[] = {
    {"hinged", OPENS_HINGED},
    {"lift up", OPENS_LIFT_UP},
    {"tilt out", OPENS_TILT_OUT},
    {"drop down", OPENS_DROP_DOWN},
    {"bi-fold", OPENS_BI_FOLD},
    {"pie cut", OPENS_PIE_CUT},
    {0},
};
static const struct spelling hinge_sides[] = {
    {"left", HINGE_SIDE_LEFT}, {"right", HINGE_SIDE_RIGHT}, {"pair", HINGE_SIDE_PAIR},
    {"l", HINGE_SIDE_LEFT},    {"lh", HINGE_SIDE_LEFT},     {"left hand", HINGE_SIDE_LEFT},
    {"r", HINGE_SIDE_RIGHT},   {"rh", HINGE_SIDE_RIGHT},    {"right hand", HINGE_SIDE_RIGHT},
    {"l/r", HINGE_SIDE_PAIR},  {"r/l", HINGE_SIDE_PAIR},    {"lr", HINGE_SIDE_PAIR},
    {"rl", HINGE_SIDE_PAIR},   {"both", HINGE_SIDE_PAIR},   {0},
};

/* `10 | 12 1/2`: commas would part cells. */
static void read_places(struct reader *reader, const struct key *key, const struct entry *entry,
                        void *target) {
    const char *from = entry->text;
    struct value *sizes;
    size_t count = 1;

    for (const char *c = from; *c != '\0'; c++) {
        count += *c == '|' ? 1 : 0;
    }
    if (!list_fits(reader, key, entry, count)) {
        return;
    }
    if (count == 1 && strchr(from, ',') != NULL) {
        problem_add(reader->problems, SEVERITY_ERROR, "bad-item", entry->place,
                    "%s '%s' has a comma; expected '|' between sizes and a point in decimals, "
                    "like '%s'",
                    key->name, entry_quote(reader, entry), key->example);
        return;
    }
    sizes = pool_take(reader->pool, count, sizeof(*sizes));
    if (sizes == NULL) {
        return;
    }
    for (size_t i = 0; i < count; i++) {
        const char *to = from + strcspn(from, "|");
        struct entry part = entry_part(reader, entry, from, to);

        if (part.text[0] == '\0') {
            problem_add(reader->problems, SEVERITY_ERROR, "empty-item", entry->place,
                        "%s '%s' has nothing before or behind a '|'; expected sizes like '%s'",
                        key->name, entry_quote(reader, entry), key->example);
            return;
        }
        if (!length_value(reader, key, &part, key->kind.range, &sizes[i])) {
            return;
        }
        from = *to == '\0' ? to : to + 1;
    }
    *(struct values *)key_field(key, target) = (struct values){.v = sizes, .count = count};
}

/* One that cannot be read has its place all the same, so that nobody says that it lacks. */
static void read_second(struct reader *reader, const struct key *key, const struct entry *entry,
                        void *target) {
    struct value *width = key_field(key, target);

    width->place = entry->place;
    (void)length_value(reader, key, entry, key->kind.range, width);
}

/* `2 x 3`: lights wide and high. */
static void read_lights(struct reader *reader, const struct key *key, const struct entry *entry,
                        void *target) {
    struct row *row = target;
    const char *const end = entry->text + strlen(entry->text);
    const char *const x = entry->text + strcspn(entry->text, "xX");
    struct value wide;
    struct value high;

    if (x == end || strspn(entry->text, "0123456789 xX") < strlen(entry->text)) {
        problem_add(reader->problems, SEVERITY_ERROR, "bad-lights", entry->place,
                    "bars '%s' do not tell the lights of a pane; expected how many wide and how "
                    "many high, like '%s'",
                    entry_quote(reader, entry), key->example);
        return;
    }
    struct entry before = entry_part(reader, entry, entry->text, x);
    struct entry after = entry_part(reader, entry, x + 1, end);
    if (quantity_value(reader, key, &before, key->kind.forms, &wide, NULL) &&
        quantity_value(reader, key, &after, key->kind.forms, &high, NULL)) {
        row->lights_wide = wide;
        row->lights_wide.place = entry->place;
        row->lights_high = high;
    }
}

/* `15.00 arched top`: what follows the number is in the shop's own words. */
static void read_extra(struct reader *reader, const struct key *key, const struct entry *entry,
                       void *target) {
    struct row *row = target;
    size_t size = strspn(entry->text, "+-0123456789.,");
    struct entry number = *entry;
    struct entry words =
        entry_part(reader, entry, entry->text + size, entry->text + strlen(entry->text));

    if (size > 0) {
        number = entry_part(reader, entry, entry->text, entry->text + size);
    }
    if (quantity_value(reader, key, &number, key->kind.forms, &row->extra_charge, NULL) &&
        words.text[0] != '\0') {
        row->extra_words = entry_text(reader, &words);
    }
}

const struct key row_keys[] = {
    {"id", AS_TEXT, FIELD(row, id), "D01", .needed = true,
     .help = "the shop's name of the row, each once"},
    {"room", AS_TEXT, FIELD(row, room), "galley", .help = "the quote lists doors by room"},
    {"use", AS_CHOICE(uses), FIELD(row, use), "door", "drawer front",
     .help = "door, drawer front, false front or end panel; pair: door with the `hinge side` pair; "
             "absent: door"},
    {"count", AS_COUNT(1, MOST_OF_ROW, 1), FIELD(row, count), "2",
     .help = "of openings or doors; absent: 1"},
    {"width", AS_LENGTH(SIDE_RANGE), FIELD(row, width), "15 1/2", "394 mm", .needed = true,
     .help = "as measured"},
    {"height", AS_LENGTH(SIDE_RANGE), FIELD(row, height), "30", "762 mm", .needed = true,
     .help = "as measured"},
    {"second width", AS_OWN(read_second, .range = SIDE_RANGE), FIELD(row, second_width), "12",
     "305 mm",
     .help = "of a pie-cut pair: that of the right face, where `width` is that of the left"},
    {"leaves", AS_COUNT(1, 4, 1), FIELD(row, leaves), "2",
     .help = "1, or 2 for a pair; of a bi-fold 2 or 4; absent: 1, and 2 of what folds"},
    {"mid rails", AS_COUNT(0, 20, 0), FIELD(row, mid_rails), "1",
     .help = "rails between top and bottom; absent: 0"},
    {"mid stiles", AS_COUNT(0, 20, 0), FIELD(row, mid_stiles), "1",
     .help = "stiles between left and right; absent: 0"},
    {"rows", AS_OWN(read_places, .range = SIDE_RANGE, .most = MOST_HEIGHTS), FIELD(row, heights),
     "10 | 12 1/2", .help = "heights between the rails, top first; absent: equal"},
    {"arch", AS_LENGTH(INCHES(0, 24)), FIELD(row, arch), "2", "50 mm",
     .help = "rise of an arched top rail, over each opening of the top row; absent: straight"},
    {"bars", AS_OWN(read_lights, .forms = FORM("", UNIT_COUNT, 1, 20)), FIELD(row, lights_wide),
     "2 x 3", .help = "lights wide and high, by bars laid on each pane; absent: no bars"},
    {"opens", AS_CHOICE(ways_to_open), FIELD(row, opens), "lift up", "bi-fold",
     .help = "hinged at a side, lift up, tilt out, drop down, bi-fold or pie cut; absent: hinged"},
    {"hinge side", AS_CHOICE(hinge_sides), FIELD(row, hinge_side), "left", "pair",
     .help = "left, right or pair: where a door is hung that opens at a side, or folds"},
    {"hinges", AS_COUNT(1, MOST_HINGES, 0), FIELD(row, hinges), "3",
     .help = "how many of the `hinge` on each leaf that hangs on one; absent: as [hinges] says"},
    {"hinges at", AS_OWN(read_places, .range = INCHES(0, 240), .most = MOST_HINGES),
     FIELD(row, hinge_at), "3 | 15 1/2 | 27",
     .help =
         "middle of each hinge from the upper end of the finished door, of one that hangs level "
         "from its left end; absent: as [hinges] says"},
    {"pulls", AS_COUNT(0, 20, 1), FIELD(row, pulls), "2",
     .help = "how many of the `pull` on each leaf, of two that fold on one; absent: 1"},
    {"extra charge", AS_OWN(read_extra, .forms = forms_money), FIELD(row, extra_charge),
     "15.00 arched top", .help = "added to the price of each leaf, and what for"},
    {"also", AS_NAMES(NAME_OPERATION), FIELD(row, also), "hang, fit pulls",
     .help = "operations that the row has besides those of its style and finish"},
    {"note", AS_TEXT, FIELD(row, note), "over the sink",
     .help = "shown beside the door, to the client too"},
    {"remark", AS_TEXT, FIELD(row, remark), "bought in",
     .help = "the same for the shop alone: no paper of the client's has it"},
};
const size_t row_key_count = COUNT_OF(row_keys);

void row_take_pair(struct reader *reader, struct row *row) {
    if (row->use.choice != USE_PAIR) {
        return;
    }
    row->use.choice = USE_DOOR;
    if (row->hinge_side.place.line == 0) {
        row->hinge_side = row->use;
        row->hinge_side.choice = HINGE_SIDE_PAIR;
    } else if (row->hinge_side.set && row->hinge_side.choice != HINGE_SIDE_PAIR) {
        problem_add(reader->problems, SEVERITY_ERROR, "pair-and-side", row->use.place,
                    "use 'pair' does not go with hinge side '%s'; write 'door' under 'use', or "
                    "leave the hinge side blank",
                    row->hinge_side.choice == HINGE_SIDE_LEFT ? "left" : "right");
    }
}

/* Places of hinges tell their number. */
static void complete_hinges(struct reader *reader, struct row *row) {
    const struct values *const at = &row->hinge_at;
    if (at->count > 0 && !row->hinges.set) {
        row->hinges = (struct value){
            .amount = (int64_t)at->count, .place = at->v[0].place, .unit = UNIT_COUNT, .set = true};
    }
    if (at->count > 0 && row->hinges.amount != (int64_t)at->count) {
        problem_add(reader->problems, SEVERITY_ERROR, "hinges-and-places", at->v[0].place,
                    "hinges at tells %zu places, and hinges is %d; expected as many of both",
                    at->count, (int)row->hinges.amount);
    }
}

/* Counts that follow from another cell, and cells that contradict each other. */
static void complete(struct reader *reader, struct row *row) {
    row_check_opens(reader, row);
    complete_hinges(reader, row);
    if (row->heights.count > 0 && !row->mid_rails.set) {
        row->mid_rails = (struct value){.amount = (int64_t)row->heights.count - 1,
                                        .place = row->heights.v[0].place,
                                        .unit = UNIT_COUNT,
                                        .set = true};
    }
    if (row->heights.count > 0 && row->mid_rails.amount != (int64_t)row->heights.count - 1) {
        problem_add(reader->problems, SEVERITY_ERROR, "rows-and-rails", row->heights.v[0].place,
                    "rows gives %zu heights but mid rails is %d; expected one more row than mid "
                    "rails",
                    row->heights.count, (int)row->mid_rails.amount);
    }
}

/* Whether several leaves close one measured opening. */
static bool shares_opening(const struct row *row) {
    return row->make->whole.size_is.choice == MEASURE_OPENING && row->leaves.amount > 1 &&
           row->opens.choice != OPENS_PIE_CUT;
}

static void warn_of_shape(struct reader *reader, const struct job *job, const struct row *row) {
    length narrow = job->unit == LENGTH_MM ? NARROW_MM : NARROW_INCH;
    bool shared = shares_opening(row);
    length leaf = shared ? row->width.amount / row->leaves.amount : row->width.amount;

    /* what could not be read has its place all the same */
    if (!row->width.set || !row->height.set || (!row->use.set && row->use.place.line != 0) ||
        (!row->leaves.set && row->leaves.place.column != 0)) {
        return;
    }
    /* one that is nearly square is no sign of a slip */
    if (row->use.choice == USE_DOOR && leaf > row->height.amount * 11 / 10 &&
        !row_hangs_level(row)) {
        problem_add(reader->problems, SEVERITY_WARNING, "door-wide", row->width.place,
                    "the door is wider than high; check that width and height are not swapped");
    }
    if (row->leaves.amount == 2 && !row_folds(row) && leaf * 2 < narrow) {
        problem_add(reader->problems, SEVERITY_WARNING, "pair-narrow", row->width.place,
                    "a pair of doors in less than %s; check the width, or use one leaf%s",
                    job->unit == LENGTH_MM ? "400 mm" : "16 in",
                    row->hinge_side.choice == HINGE_SIDE_PAIR && row->count.amount > 1
                        ? "; of single doors give those hung left a row, and those hung right"
                        : "");
    }
}

static void warn_of_lacks(struct reader *reader, const struct row *row) {
    if (row->make->whole.size_is.choice == MEASURE_OPENING && !row->make->whole.fit.set) {
        problem_add(reader->problems, SEVERITY_WARNING, "no-overlay", row->place,
                    "neither overlay nor reveal is given for an opening, so the door is made as "
                    "large as the opening; add one of them, or measure = door");
    }
    if (shares_opening(row) && !row->make->whole.gap.set) {
        problem_add(reader->problems, SEVERITY_WARNING, "no-gap", row->place,
                    "no gap is given, so the two leaves of a pair touch; add one, as in 'gap = %s'",
                    reader->unit == LENGTH_MM ? "3 mm" : "1/8 in");
    }
    if (row_folds(row) && row_is_hinged(row) && row->make->whole.hinge.index >= 0 &&
        row->make->whole.fold_hinge.name.s == NULL) {
        problem_add(
            reader->problems, SEVERITY_WARNING, "no-fold-hinge", row->opens.place,
            "no fold hinge is named, so nothing joins the two leaves; name one in [make] or "
            "the row, or say 'fold hinge = none' if others join them");
    }
    if (row->make->whole.finish.name.s == NULL) {
        problem_add(reader->problems, SEVERITY_WARNING, "no-finish", row->place,
                    "no finish is named, so the door is left bare; add 'finish = none' if that is "
                    "meant");
    }
}

void row_check(struct reader *reader, const struct job *job, struct row *row) {
    complete(reader, row);
    if (reader->lacks_known) {
        warn_of_shape(reader, job, row);
        warn_of_lacks(reader, row);
    }
}
