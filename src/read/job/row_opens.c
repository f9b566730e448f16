/* SPDX-License-Identifier: MIT */
/* How a row opens: the leaves that this takes, and cells that go with one way of opening alone. */
#include "read/job/job_keys.h"

#include "door/leaf.h"

/* What each way of opening asks for. */
static const struct way {
    const char *name;
    int32_t few, many; /* leaves: so many where none are given, or these */
    const char *edge;  /* where it hangs; NULL: at a side */
} ways[] = {
    [OPENS_HINGED] = {"hinged", 1, 2, NULL},
    [OPENS_LIFT_UP] = {"lift up", 1, 2, "upper"},
    [OPENS_TILT_OUT] = {"tilt out", 1, 2, "lower"},
    [OPENS_DROP_DOWN] = {"drop down", 1, 2, "lower"},
    [OPENS_BI_FOLD] = {"bi-fold", 2, 4, NULL},
    [OPENS_PIE_CUT] = {"pie cut", 2, 2, NULL},
};

/* Leaves follow from how the row opens and, hung at both sides, from that. */
static void check_leaves(struct reader *reader, struct row *row, const struct way *way) {
    const bool pair = row->hinge_side.choice == HINGE_SIDE_PAIR;
    if (!row->leaves.set && (pair || row->opens.set)) {
        row->leaves = (struct value){.amount = pair ? way->many : way->few,
                                     .place = pair ? row->hinge_side.place : row->opens.place,
                                     .unit = UNIT_COUNT,
                                     .set = true};
    }
    const int64_t leaves = row->leaves.amount;
    if (leaves != way->few && leaves != way->many) {
        problem_add(reader->problems, SEVERITY_ERROR, "opens-and-leaves", row->leaves.place,
                    way->few == way->many ? "leaves %d do not go with opens '%s'%s; expected %d"
                                          : "leaves %d do not go with opens '%s'%s; expected %d "
                                            "or %d",
                    (int)leaves, way->name, row->opens.set ? "" : ", as none is named",
                    (int)way->few, (int)way->many);
    } else if (pair && way->edge == NULL && leaves != way->many) {
        problem_add(reader->problems, SEVERITY_ERROR, "pair-of-one", row->hinge_side.place,
                    "hinge side 'pair' does not go with leaves %d; expected leaves %d, or a side",
                    (int)leaves, (int)way->many);
    }
}

static void check_side(struct reader *reader, const struct row *row, const struct way *way) {
    static const char *const sides[] = {
        [HINGE_SIDE_LEFT] = "left", [HINGE_SIDE_RIGHT] = "right", [HINGE_SIDE_PAIR] = "pair"};
    const int side = row->hinge_side.choice;
    if (side == HINGE_SIDE_OPEN) {
        return;
    }
    if (way->edge != NULL) {
        problem_add(reader->problems, SEVERITY_ERROR, "opens-and-side", row->hinge_side.place,
                    "hinge side '%s' does not go with opens '%s', which hangs at the %s edge; keep "
                    "one of them",
                    sides[side], way->name, way->edge);
    } else if (side == HINGE_SIDE_PAIR && row->opens.choice == OPENS_PIE_CUT) {
        problem_add(
            reader->problems, SEVERITY_ERROR, "opens-and-side", row->hinge_side.place,
            "hinge side 'pair' does not go with opens 'pie cut', of which one leaf hangs on "
            "the cabinet; expected left or right");
    }
}

static void check_use(struct reader *reader, const struct row *row, const struct way *way) {
    static const char *const uses[] = {[USE_DRAWER_FRONT] = "a drawer front",
                                       [USE_FALSE_FRONT] = "a false front",
                                       [USE_END_PANEL] = "an end panel"};
    if (row->opens.choice != OPENS_HINGED && !row_is_hinged(row)) {
        problem_add(reader->problems, SEVERITY_ERROR, "opens-and-use", row->opens.place,
                    "%s does not open as '%s'; expected use door, or another way to open",
                    uses[row->use.choice], way->name);
    }
}

static void check_second(struct reader *reader, const struct row *row) {
    const bool cut = row->opens.choice == OPENS_PIE_CUT;
    if (cut && row->second_width.place.line == 0) {
        problem_add(reader->problems, SEVERITY_ERROR, "second-width", row->opens.place,
                    "opens 'pie cut' needs a second width; expected in 'second width' that of the "
                    "right face of the corner");
    } else if (!cut && row->second_width.set) {
        problem_add(reader->problems, SEVERITY_ERROR, "second-width", row->second_width.place,
                    "a second width is of a pie-cut pair alone; expected opens 'pie cut', or no "
                    "second width");
    }
}

void row_check_opens(struct reader *reader, struct row *row) {
    if (!row->opens.set && row->opens.place.line != 0) {
        return; /* reported where it is given */
    }
    const struct way *const way = &ways[row->opens.choice];
    check_leaves(reader, row, way);
    check_side(reader, row, way);
    check_second(reader, row);
    if (row->use.set || row->use.place.line == 0) {
        check_use(reader, row, way);
    }
}

bool row_check_corner(struct reader *reader, const struct row *row,
                      const struct construction *construction, const struct option *option) {
    if (row->opens.choice != OPENS_PIE_CUT || !row->second_width.set || construction->corner.set ||
        construction->size_is.choice != MEASURE_OPENING) {
        return true;
    }
    problem_add(reader->problems, SEVERITY_ERROR, "no-corner", row->opens.place,
                "no corner is given%s, so the leaves of a pie-cut pair would stand in each other; "
                "add to [make] or to the row how far each ends before the corner of the openings, "
                "as in 'corner = %s'",
                option_words(reader, option), reader->unit == LENGTH_MM ? "22 mm" : "7/8 in");
    return false;
}
